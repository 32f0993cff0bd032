"""How each figure of a curtain that opens downward was got."""

from hoopwright.curtain.bar import DENSITY_SOURCE
from hoopwright.curtain.curtain import CurtainWork
from hoopwright.curtain.hung import HungCurtain
from hoopwright.curtain.lift import Lift
from hoopwright.curtain.lines import DRUM_WRAPS, KNOT_M, REACH_M, LiftLines
from hoopwright.curtain.roll_workings import HOLDS, RUN
from hoopwright.curtain.roped import Roped
from hoopwright.curtain.workings import (
    LEVER,
    explain_common,
    handle_terms,
    mass_terms,
    not_here,
    places,
)
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


def explain_drop(
    hung: HungCurtain, work: CurtainWork, shut: Lift, roped: Roped, lines: LiftLines
) -> tuple[Working, ...]:
    """Return a working for each figure of a curtain that opens downward.

    Args:
        hung: The curtain.
        work: What working it yields.
        shut: Its place with the rod at the hip.
        roped: Its wind rope.
        lines: Its lift lines.
    """
    drum = Term("drum", 2 * shut.radius_m, "m_thin")
    return (
        *not_here(ROLL_FIGURES, NOTHING_ROLLS),
        *not_here(TRAILING_FIGURES, NO_TWIST),
        *not_here(("trailing_length_m",), NO_BOUND),
        *_way(hung, work, drum),
        *_forces(hung, work, drum),
        *_energies(hung, work, drum),
        *_lines(hung, lines),
        *explain_common(hung, work, roped),
    )


def _way(hung: HungCurtain, work: CurtainWork, drum: Term) -> tuple[Working, ...]:
    travel = Term("way of the rod", work.travel_m, "m")
    rod = Term("rod", hung.bar.section.outside_m, "m_thin")
    stand_off = Term("hip board stands off", hung.boards.stand_off_m, "m_thin")
    drop_m = hung.boards.gutter_drop_m
    return (
        Working(
            "travel_m",
            "From the hip down to the bunch that the film keeps above the baseboard.",
            (
                Term("side along the bow", hung.side_m, "m"),
                Term("bunch at the bottom", hung.side.bunch_m, "m"),
            ),
        ),
        Working("turns", "Way of the rod over the outline of the drum.", (travel, drum)),
        Working(
            "opening_m2",
            "Clear length times the way of the rod less half the rod: open above the rod.",
            (Term("clear length", hung.span.open_to_m - hung.span.open_from_m, "m"), travel, rod),
        ),
        Working(
            "pocket_gap_m",
            "The rod hangs in the plane of the film: what the hip board stands off less half the "
            "rod.",
            (stand_off, rod),
        ),
        *(
            not_here(("gutter_gap_m",), "There is no gutter on the hip board.")
            if drop_m is None
            else (
                Working(
                    "gutter_gap_m",
                    "The rod is down when the curtain is open: its way less half the rod and what "
                    "the gutter hangs down.",
                    (travel, rod, Term("gutter below the hip", drop_m, "m")),
                ),
            )
        ),
    )


def _forces(hung: HungCurtain, work: CurtainWork, drum: Term) -> tuple[Working, ...]:
    film = Term("film hanging from the rod when shut", hung.span.hang_m, "m")
    rubbing = Term("rubbing and pulleys", hung.limits.rubbing_share, "share")
    masses, handle = mass_terms(hung), handle_terms(hung)
    limit = Term("hand force limit", hung.limits.hand_force_n, "N")
    return (
        Working(
            "weights_n",
            "Rod with what grips the film and the film that hangs from it, times gravity; what the "
            "rod comes down is laid off at the bottom. Shut, half way, open.",
            (*masses, film, Term("way of the rod", work.travel_m, "m")),
            DENSITY_SOURCE,
        ),
        Working(
            "torques_nm",
            "The cable carries the whole weight on half the drum; rubbing on top. Shut, half way, "
            "open.",
            (*places("weight", work.weights_n, "N"), drum, rubbing),
            LEVER,
        ),
        Working(
            "hardest_n",
            "Most film hangs when the rod is up, so the handle is hardest with the curtain shut.",
            (Term("torque shut", work.torques_nm[0], "N m"), *handle),
        ),
        Working(
            "hand_length_m",
            "The length at which the handle takes the limit when the curtain is shut.",
            (limit, *handle, *masses, film, drum, rubbing),
            "derived here; hand force limit and rubbing: the user's entry",
        ),
    )


def _energies(hung: HungCurtain, work: CurtainWork, drum: Term) -> tuple[Working, ...]:
    masses, drive = mass_terms(hung), hung.drive
    film = Term("film hanging from the rod when shut", hung.span.hang_m, "m")
    energy = Working(
        "energy_j",
        "Of the rod up and shut: gravity times its way times rod and film still hanging when it is "
        "down, and half of the film lifted on the way.",
        (*masses, film, Term("way of the rod", work.travel_m, "m")),
    )
    if drive.holds:
        return (energy, *not_here(("runaway_m_s", "runaway_handle_m_s"), HOLDS))
    ratio = Term("ratio", drive.ratio, "ratio")
    return (
        energy,
        Working(
            "runaway_m_s",
            "Let go with the rod up and nothing to rub: all energy becomes speed of rod and crank; "
            "film is left out of what moves.",
            (
                Term("energy", work.energy_j, "J"),
                *masses,
                Term("inertia of the crank", drive.inertia_kg_m2, "kg m2"),
                ratio,
                drum,
            ),
            RUN,
        ),
        Working(
            "runaway_handle_m_s",
            "Speed of the rod over the radius of the drum, times ratio and arm.",
            (
                Term("speed of the rod", work.runaway_m_s, "m/s"),
                drum,
                ratio,
                Term("crank arm", drive.arm_m, "m_thin"),
            ),
            RUN,
        ),
    )


def _lines(hung: HungCurtain, lines: LiftLines) -> tuple[Working, ...]:
    count = Term("lift lines", lines.count, "count")
    travel = Term("way of the rod", hung.travel_m, "m")
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
                travel,
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
