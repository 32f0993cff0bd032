"""How each figure of a curtain that rolls up was got."""

from hoopwright.curtain.bar import DENSITY_SOURCE, bar_inertia, winding_radius
from hoopwright.curtain.hung import HungCurtain
from hoopwright.curtain.moved import Moved
from hoopwright.curtain.terms import handle_terms, lift_terms, mass_terms, not_here, places
from hoopwright.farm.drive import GearedCrank, HandCrank
from hoopwright.quantity.working import PRACTICE, Term, Working

LEVER = "derived here; rubbing: the user's entry"
LIMIT = "derived here; hand force limit and rubbing: the user's entry"
NO_JOINT = "This drive has no universal joint."
NO_GUIDE = "This drive has no guide pipe."
NO_GUTTER = "There is no gutter on the hip board."
NO_LINES = "A curtain that rolls up has no lift lines."
HOLDS = "The drive holds the raised curtain by itself."
RUN = "derived here: energy; an upper bound and a warning, not a prediction"


def explain_roll(hung: HungCurtain, moved: Moved) -> tuple[Working, ...]:
    """Return a working for each figure of a curtain that rolls up, its trailing left out.

    Args:
        hung: The curtain.
        moved: How it moves through its travel.
    """
    wound = places("film on the bar", hung.wound_m, "m")
    rolls = places("roll", moved.diameters_m, "m_thin")
    return (
        *_rolls(hung, wound, rolls),
        *_forces(hung, moved, wound, rolls),
        *_energies(hung, moved),
        *_joints(hung, moved),
        *_gaps(hung, rolls[2]),
        *not_here(("lift_lines", "lift_line_m", "pulleys"), NO_LINES),
    )


def _rolls(
    hung: HungCurtain, wound: tuple[Term, ...], rolls: tuple[Term, ...]
) -> tuple[Working, ...]:
    hang = Term("film from hip seam to bar", hung.span.hang_m, "m")
    film = Term("film, all layers", hung.span.thickness_m, "m_film")
    bare = Term("bare bar", 2 * winding_radius(hung.bar.section), "m_thin")
    slack = Term("slack", hung.side.slack_m, "m")
    stop = Term("bar stops below the hip", hung.side.stop_m, "m")
    return (
        Working(
            "travel_m",
            "The bar climbs as far as film hangs from the hip seam, less the slack, which is "
            "wound before the bar lifts, and less what it stops below the hip.",
            (hang, slack, stop),
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
            (wound[0], wound[2], rolls[0], rolls[2]),
        ),
        Working(
            "opening_m2",
            "Clear length times the clear height: what the bar climbs above its shut place or "
            "above the baseboard, whichever is higher, less half the roll.",
            (
                Term("clear length", hung.span.open_to_m - hung.span.open_from_m, "m"),
                Term("climb of the bar", hung.travel_m, "m"),
                Term("hip to shut bar", hung.covered_m, "m"),
                Term("side along the bow", hung.side_m, "m"),
                rolls[2],
            ),
        ),
    )


def _forces(
    hung: HungCurtain, moved: Moved, wound: tuple[Term, ...], rolls: tuple[Term, ...]
) -> tuple[Working, ...]:
    weights, torques = lift_terms(moved)
    rubbing = Term("rubbing", hung.limits.rubbing_share, "share")
    handle, masses = handle_terms(hung), mass_terms(hung)
    limit = Term("hand force limit", hung.limits.hand_force_n, "N")
    return (
        Working(
            "weights_n",
            "Bar with what grips the film, film on the bar and what it carries of the crank, times "
            "gravity. Shut, half way, open.",
            (*masses, *wound),
            DENSITY_SOURCE,
        ),
        Working(
            "torques_nm",
            "Weight times half the roll's diameter, and rubbing on top. Shut, half way, open.",
            (*weights, *rolls, rubbing),
            LEVER,
        ),
        Working(
            "hardest_n",
            "Weight and roll only grow on the way up, so the handle is hardest at the top.",
            (torques[2], *handle),
        ),
        Working(
            "hand_length_m",
            "The length at which the handle takes the limit at the top.",
            (limit, *handle, *masses, wound[2], rolls[2], rubbing),
            LIMIT,
        ),
    )


def _energies(hung: HungCurtain, moved: Moved) -> tuple[Working, ...]:
    masses, drive = mass_terms(hung), hung.drive
    lifted = Term("film on the bar when it lifts", hung.wrap_m + hung.side.slack_m, "m")
    energy = Working(
        "energy_j",
        "Gravity times climb times the mass that climbs: bar, crank and film on the bar all the "
        "way, film wound on the way half of it.",
        (*masses, lifted, Term("climb of the bar", hung.travel_m, "m")),
    )
    if drive.holds:
        return (energy, *not_here(("runaway_m_s",), HOLDS))
    runaway = Working(
        "runaway_m_s",
        "Let go at the top with nothing to rub: all energy becomes speed of bar and crank, which "
        "turn as they come down; film is left out of what moves.",
        (
            Term("energy", moved.energy_j, "J"),
            *masses,
            Term("inertia of a metre of bar", bar_inertia(hung.bar), "kg m2"),
            Term("inertia of the crank", drive.inertia_kg_m2, "kg m2"),
            Term("ratio", drive.ratio, "ratio"),
            Term("roll when the bar lifts", 2 * moved.low_radius_m, "m_thin"),
        ),
        RUN,
    )
    return (energy, runaway)


def _joints(hung: HungCurtain, moved: Moved) -> tuple[Working, ...]:
    if isinstance(hung.drive, HandCrank):
        return (
            *_bent_joint(hung, hung.drive.extension_m, max(moved.joint_angles_rad)),
            *not_here(("guide_m",), NO_GUIDE),
        )
    no_joint = not_here(("joint_angles_rad", "joint_swing"), NO_JOINT)
    if not isinstance(hung.drive, GearedCrank):
        return no_joint
    top_m = hung.height_m(hung.covered_m - hung.travel_m)
    guide = Working(
        "guide_m",
        "From the ground up to the open bar, and what stands in the ground. Nothing is added "
        "above the bar.",
        (
            Term("height of the open bar", top_m, "m"),
            Term("in the ground", hung.drive.guide_buried_m, "m"),
        ),
        f"derived here; depth in the ground: {PRACTICE}",
    )
    return (*no_joint, guide)


def _bent_joint(hung: HungCurtain, extension_m: float, greatest_rad: float) -> tuple[Working, ...]:
    return (
        Working(
            "joint_angles_rad",
            "The pipe slants from the bar to the handle: its angle has the difference of heights "
            "over the length of the pipe for its sine, a right angle where the pipe is too short. "
            "Shut, half way, open.",
            (
                Term("height of the shut bar", hung.height_m(hung.covered_m), "m"),
                Term("climb of the bar", hung.travel_m, "m"),
                Term("height of the handle", hung.limits.handle_height_m, "m"),
                Term("extension pipe", extension_m, "m"),
            ),
        ),
        Working(
            "joint_swing",
            "One over the cosine of the greatest angle, at most 10.",
            (Term("greatest angle", greatest_rad, "rad"),),
            "single universal joint (textbook)",
        ),
    )


def _gaps(hung: HungCurtain, roll: Term) -> tuple[Working, ...]:
    drop_m = hung.boards.gutter_drop_m
    stand_off = Term("hip board stands off", hung.boards.stand_off_m, "m_thin")
    if hung.panel.winding == "into":
        pocket = Working(
            "pocket_gap_m",
            "The roll lies inside the film: what the hip board stands off, less the roll.",
            (stand_off, roll),
        )
    else:
        pocket = Working(
            "pocket_gap_m",
            "The roll lies outside the film, so all that the hip board stands off is left.",
            (stand_off,),
        )
    if drop_m is None:
        return (pocket, *not_here(("gutter_gap_m",), NO_GUTTER))
    gutter = Working(
        "gutter_gap_m",
        "From the lower edge of the gutter down to the upper edge of the roll: what the bar stops "
        "below the hip, less half the roll and what the gutter hangs down.",
        (
            Term("bar stops below the hip", hung.side.stop_m, "m"),
            roll,
            Term("gutter below the hip", drop_m, "m"),
        ),
    )
    return (pocket, gutter)
