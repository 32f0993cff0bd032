"""How each figure of a curtain that opens downward was got."""

from hoopwright.curtain.bar import DENSITY_SOURCE
from hoopwright.curtain.hung import HungCurtain
from hoopwright.curtain.lines import DRUM_WRAPS, KNOT_M, REACH_M, LiftLines
from hoopwright.curtain.moved import Moved
from hoopwright.curtain.roll_workings import HOLDS, LEVER, LIMIT, NO_GUTTER, RUN
from hoopwright.curtain.terms import handle_terms, lift_terms, mass_terms, not_here
from hoopwright.quantity.working import DERIVED, PRACTICE, Term, Working

NOTHING_ROLLS = "Nothing is rolled: the rod hangs on its lines and the film bunches."
NO_TWIST = (
    "The rod hangs on its lines and is not twisted. How far it sags between them and how the lines "
    "stretch is not worked out."
)
NO_BOUND = "Trailing of a rod on lines is not worked out: the longest side that can be entered."
ROLL_FIGURES = ("diameters_m", "joint_angles_rad", "joint_swing", "guide_m")
TRAILING_FIGURES = (
    "twist_rad",
    "twist_trailing_m",
    "play_trailing_m",
    "uneven_trailing_m",
    "trailing_m",
)


def explain_drop(hung: HungCurtain, moved: Moved) -> tuple[Working, ...]:
    """Return a working for each figure of a curtain that opens downward.

    Args:
        hung: The curtain.
        moved: How it moves through its travel.
    """
    drum = Term("drum", 2 * moved.low_radius_m, "m_thin")
    way = Term("way of the rod", hung.travel_m, "m")
    return (
        *not_here(ROLL_FIGURES, NOTHING_ROLLS),
        *not_here(TRAILING_FIGURES, NO_TWIST),
        *not_here(("trailing_length_m",), NO_BOUND),
        *_way(hung, way, drum),
        _gutter(hung, way),
        *_forces(hung, moved, way, drum),
        *_energies(hung, moved, way, drum),
        *_lines(hung, moved.lines, way),
    )


def _way(hung: HungCurtain, way: Term, drum: Term) -> tuple[Working, ...]:
    return (
        Working(
            "travel_m",
            "From the hip down to the bunch that the film keeps above the baseboard.",
            (
                Term("side along the bow", hung.side_m, "m"),
                Term("bunch at the bottom", hung.side.bunch_m, "m"),
            ),
        ),
        Working("turns", "Way of the rod over the outline of the drum.", (way, drum)),
        Working(
            "opening_m2",
            "Clear length times the way of the rod less half the rod: open above the rod.",
            (
                Term("clear length", hung.span.open_to_m - hung.span.open_from_m, "m"),
                way,
                _rod(hung),
            ),
        ),
        Working(
            "pocket_gap_m",
            "The rod hangs in the plane of the film: what the hip board stands off less half the "
            "rod.",
            (Term("hip board stands off", hung.boards.stand_off_m, "m_thin"), _rod(hung)),
        ),
    )


def _gutter(hung: HungCurtain, way: Term) -> Working:
    drop_m = hung.boards.gutter_drop_m
    if drop_m is None:
        return not_here(("gutter_gap_m",), NO_GUTTER)[0]
    return Working(
        "gutter_gap_m",
        "The rod is down when the curtain is open: its way less half the rod and what the gutter "
        "hangs down.",
        (way, _rod(hung), Term("gutter below the hip", drop_m, "m")),
    )


def _forces(hung: HungCurtain, moved: Moved, way: Term, drum: Term) -> tuple[Working, ...]:
    rubbing = Term("rubbing and pulleys", hung.limits.rubbing_share, "share")
    limit = Term("hand force limit", hung.limits.hand_force_n, "N")
    masses, handle, film = mass_terms(hung), handle_terms(hung), _film(hung)
    weights, torques = lift_terms(moved)
    return (
        Working(
            "weights_n",
            "Rod with what grips the film, the film wrapped on it and that which hangs from it, "
            "times gravity; what the rod comes down is laid off at the bottom. Shut, half way, "
            "open.",
            (*masses, *film, way),
            DENSITY_SOURCE,
        ),
        Working(
            "torques_nm",
            "The cable carries the whole weight on half the drum; rubbing on top. Shut, half way, "
            "open.",
            (*weights, drum, rubbing),
            LEVER,
        ),
        Working(
            "hardest_n",
            "Most film hangs when the rod is up, so the handle is hardest with the curtain shut.",
            (torques[0], *handle),
        ),
        Working(
            "hand_length_m",
            "The length at which the handle takes the limit when the curtain is shut.",
            (limit, *handle, *masses, *film, drum, rubbing),
            LIMIT,
        ),
    )


def _energies(hung: HungCurtain, moved: Moved, way: Term, drum: Term) -> tuple[Working, ...]:
    masses, drive = mass_terms(hung), hung.drive
    energy = Working(
        "energy_j",
        "Of the rod up and shut: gravity times its way times rod and film still carried when it "
        "is down, and half of the film lifted on the way.",
        (*masses, *_film(hung), way),
    )
    if drive.holds:
        return (energy, *not_here(("runaway_m_s",), HOLDS))
    runaway = Working(
        "runaway_m_s",
        "Let go with the rod up and nothing to rub: all energy becomes speed of rod and crank; "
        "film is left out of what moves.",
        (
            Term("energy", moved.energy_j, "J"),
            *masses,
            Term("inertia of the crank", drive.inertia_kg_m2, "kg m2"),
            Term("ratio", drive.ratio, "ratio"),
            drum,
        ),
        RUN,
    )
    return (energy, runaway)


def _film(hung: HungCurtain) -> tuple[Term, ...]:
    return (
        Term("film hanging from the rod when shut", hung.span.hang_m, "m"),
        Term("film wrapped on the rod", hung.wrap_m, "m"),
    )


def _rod(hung: HungCurtain) -> Term:
    return Term("rod", hung.bar.section.outside_m, "m_thin")


def _lines(hung: HungCurtain, lines: LiftLines, way: Term) -> tuple[Working, ...]:
    count = Term("lift lines", lines.count, "count")
    runs = Term("runs of cable from the drum", lines.runs, "count")
    return (
        Working(
            "lift_lines",
            "One at each bow within the curtain and one at both its ends.",
            (Term("bows between the ends", hung.inner_bows(), "count"),),
            PRACTICE,
        ),
        Working(
            "lift_line_m",
            "Each line: the way of the rod, the reach to the cable and two knots. The cable: the "
            "length of the curtain, and for each run the way, down to the drum and "
            f"{DRUM_WRAPS} turns that stay on it.",
            (
                count,
                way,
                Term("reach to the cable", REACH_M, "m"),
                Term("knot", KNOT_M, "m"),
                Term("length of the curtain", hung.span.length_m, "m"),
                runs,
                Term("down to the drum", lines.down_m, "m"),
                Term("turns left on the drum", lines.wraps_m, "m"),
            ),
            f"{DERIVED}; reach, knots and turns left: {PRACTICE}",
        ),
        Working(
            "pulleys",
            "One for each lift line and one for each run of cable, where it turns to the drum.",
            (count, runs),
            PRACTICE,
        ),
    )
