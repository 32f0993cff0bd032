"""How each figure of a worked curtain was got."""

from hoopwright.curtain.bar import (
    DENSITY_SOURCE,
    SHEAR_PA,
    SHEAR_SOURCE,
    bar_mass,
    winding_radius,
)
from hoopwright.curtain.curtain import CurtainWork
from hoopwright.curtain.hung import HungCurtain
from hoopwright.curtain.rope import ROPE_END_M
from hoopwright.quantity.working import DERIVED, ENTERED, PRACTICE, Term, Working

LEVER = "derived here; rubbing: the user's entry"
NO_ROPE = "No wind rope is chosen."


def explain_work(hung: HungCurtain, work: CurtainWork, line_torque_n: float) -> tuple[Working, ...]:
    """Return a working for each figure of a worked curtain.

    Args:
        hung: The curtain.
        work: What working it yields.
        line_torque_n: Torque that each metre of bar takes at the top, N m/m.
    """
    length = Term("length of the bar", work.length_m, "m")
    travel = Term("climb of the bar", work.travel_m, "m")
    wound = _places("film on the bar", hung.wound_m, "m")
    rolls = _places("roll", work.diameters_m, "m_thin")
    line = Term("torque of one metre of bar, open", line_torque_n, "N m")
    return (
        *_rolls(hung, work, length, travel, wound, rolls),
        *_forces(hung, work, length, wound, rolls),
        *_twists(hung, work, length, line, rolls[2]),
        *_bars(hung, work, length),
        *_ropes(hung, work, length, travel),
    )


def _places(name: str, values: tuple[float, float, float], unit: str) -> tuple[Term, ...]:
    shut, half_way, high = values
    return (
        Term(f"{name} shut", shut, unit),
        Term(f"{name} half way", half_way, unit),
        Term(f"{name} open", high, unit),
    )


def _rolls(
    hung: HungCurtain,
    work: CurtainWork,
    length: Term,
    travel: Term,
    wound: tuple[Term, ...],
    rolls: tuple[Term, ...],
) -> tuple[Working, ...]:
    hang = Term("film from hip seam to bar", hung.span.hang_m, "m")
    film = Term("film, all layers", hung.span.thickness_m, "m_film")
    bare = Term("bare bar", 2 * winding_radius(hung.bar.section), "m_thin")
    turns = Term("turns of the bar", work.turns, "turns")
    ratio = Term("handle turns for one of the bar", hung.drive.ratio, "ratio")
    return (
        Working("length_m", "The bar is as long as its curtain.", (length,)),
        Working(
            "travel_m",
            "The bar climbs as far as film hangs from the hip seam, less the slack, which is "
            "wound before the bar lifts.",
            (hang, Term("slack", hung.slack_m, "m")),
        ),
        Working(
            "diameters_m",
            "Equal areas: the square of the roll's diameter grows by 4/pi times film thickness "
            "times film wound. Shut, half way, open.",
            (bare, film, *wound),
        ),
        Working(
            "turns",
            "Film wound over pi times the mean of the roll's diameters shut and open.",
            (hang, rolls[0], rolls[2]),
        ),
        Working("handle_turns", "Turns of the bar times the ratio.", (turns, ratio)),
        Working(
            "opening_m2",
            "Clear length times the clear height: what the bar climbs or the side is high along "
            "the bow, the lesser, less the roll under the hip board.",
            (
                Term("clear length", hung.span.open_to_m - hung.span.open_from_m, "m"),
                travel,
                Term("side along the bow", hung.side_m, "m"),
                rolls[2],
            ),
        ),
    )


def _forces(
    hung: HungCurtain,
    work: CurtainWork,
    length: Term,
    wound: tuple[Term, ...],
    rolls: tuple[Term, ...],
) -> tuple[Working, ...]:
    drive = hung.drive
    bar = Term("bar with cap", bar_mass(hung.bar), "kg/m")
    film = Term("film, all layers", hung.span.film_mass_kg_m2, "kg/m2")
    crank = Term("crank and joint on the bar", drive.mass_kg, "kg")
    handle = (
        Term("crank arm", drive.arm_m, "m_thin"),
        Term("ratio", drive.ratio, "ratio"),
        Term("efficiency", drive.efficiency, "share"),
    )
    weights = _places("weight", work.weights_n, "N")
    torques = _places("torque", work.torques_nm, "N m")
    rubbing = Term("rubbing", hung.limits.rubbing_share, "share")
    lifted = Term("film on the bar when it lifts", hung.wound_m[2] - work.travel_m, "m")
    climb = Term("climb of the bar", work.travel_m, "m")
    limit = Term("hand force limit", hung.limits.hand_force_n, "N")
    return (
        Working(
            "weights_n",
            "Bar, cap, film on the bar and what it carries of the crank, times gravity. Shut, "
            "half way, open.",
            (bar, film, *wound, length, crank),
            DENSITY_SOURCE,
        ),
        Working(
            "torques_nm",
            "Weight times half the roll's diameter, and rubbing on top. Shut, half way, open.",
            (*weights, *rolls, rubbing),
            LEVER,
        ),
        Working(
            "hand_forces_n",
            "Torque over arm, ratio and efficiency. Shut, half way, open.",
            (*torques, *handle),
        ),
        Working(
            "hardest_n",
            "Weight and roll only grow on the way up, so the handle is hardest at the top.",
            (torques[2], *handle),
        ),
        Working(
            "energy_j",
            "Gravity times climb times the mass that climbs: bar, crank and film on the bar all "
            "the way, hanging film half of it.",
            (bar, film, length, crank, lifted, climb),
        ),
        Working(
            "hand_length_m",
            "The length at which the handle takes the limit at the top.",
            (limit, *handle, bar, film, wound[2], rolls[2], rubbing, crank),
            "derived here; hand force limit and rubbing: the user's entry",
        ),
    )


def _twists(
    hung: HungCurtain, work: CurtainWork, length: Term, line: Term, open_roll: Term
) -> tuple[Working, ...]:
    bar = hung.bar
    tube = (
        Term("outside of the bar", bar.section.outside_m, "m_thin"),
        Term("wall", bar.section.wall_m, "m_thin"),
        Term("shear modulus", f"{SHEAR_PA[bar.material] / 1e9:g} GPa ({bar.material})", "text"),
    )
    limit = Term("trailing limit", hung.limits.trailing_m, "m_thin")
    return (
        Working(
            "twist_rad",
            "Cranked at one end, at the top: torque of a metre of bar times length squared over "
            "twice the torsional stiffness. Play in the joints is not counted.",
            (line, length, *tube),
            SHEAR_SOURCE,
        ),
        Working(
            "trailing_m",
            "Twist times half the roll's diameter at the top.",
            (Term("twist", work.twist_rad, "rad"), open_roll),
        ),
        Working(
            "trailing_length_m",
            "The length at which the free end hangs behind by the limit: the square root of twice "
            "the torsional stiffness times the limit over roll radius and torque of a metre.",
            (limit, line, open_roll, *tube),
            SHEAR_SOURCE,
        ),
    )


def _bars(hung: HungCurtain, work: CurtainWork, length: Term) -> tuple[Working, ...]:
    stick = Term("stick", hung.stick_m, "m")
    overlap = Term("overlap at a joint", hung.bar.overlap_m, "m_thin")
    return (
        Working(
            "bar_sticks",
            "The first stick gives its whole length, each further one its length less the overlap; "
            "rounded up.",
            (length, stick, overlap),
        ),
        Working("bar_joints", "One less than sticks.", (Term("sticks", work.bar_sticks, "count"),)),
    )


def _ropes(hung: HungCurtain, work: CurtainWork, length: Term, travel: Term) -> tuple[Working, ...]:
    if not work.rope_legs:
        return tuple(
            Working(figure, NO_ROPE, (), ENTERED) for figure in ("rope_m", "rope_legs", "eyes")
        )
    legs = Term("legs", work.rope_legs, "count")
    tail = Term("tail and knot at each end", ROPE_END_M, "m")
    return (
        Working(
            "rope_m",
            "Each leg runs slantwise from an eye in the hip board to one at the height of the "
            "shut bar; tail and knot at both ends.",
            (legs, length, travel, tail),
            f"{DERIVED}; tail and knot: {PRACTICE}",
        ),
        Working(
            "rope_legs",
            "Length over the step, rounded up.",
            (length, Term("step", hung.rope_step_m, "m")),
        ),
        Working("eyes", "One more than legs.", (legs,)),
    )
