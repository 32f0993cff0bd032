"""How each figure of a curtain that rolls up was got."""

from hoopwright.curtain.bar import (
    DENSITY_SOURCE,
    SHEAR_PA,
    SHEAR_SOURCE,
    TORSION_RULE,
    bar_inertia,
    winding_radius,
)
from hoopwright.curtain.curtain import CurtainWork
from hoopwright.curtain.hung import HungCurtain
from hoopwright.curtain.lift import Lift
from hoopwright.curtain.roped import Roped
from hoopwright.curtain.trailing import far_joints
from hoopwright.curtain.workings import (
    LEVER,
    explain_common,
    handle_terms,
    mass_terms,
    not_here,
    places,
)
from hoopwright.farm import HandCrank
from hoopwright.farm.catalogue import GearedCrank, RoundTube
from hoopwright.quantity.working import PRACTICE, Term, Working

NO_JOINT = "This drive has no universal joint."
NO_GUIDE = "This drive has no guide pipe."
NO_LINES = "A curtain that rolls up has no lift lines."
HOLDS = "The drive holds the raised curtain by itself."
RUN = "derived here: energy; an upper bound and a warning, not a prediction"


def explain_roll(
    hung: HungCurtain, work: CurtainWork, high: Lift, roped: Roped
) -> tuple[Working, ...]:
    """Return a working for each figure of a curtain that rolls up.

    Args:
        hung: The curtain.
        work: What working it yields.
        high: Its place when open.
        roped: Its wind rope.
    """
    wound = places("film on the bar", hung.wound_m, "m")
    rolls = places("roll", work.diameters_m, "m_thin")
    return (
        *_rolls(hung, work, wound, rolls),
        *_forces(hung, work, wound, rolls),
        *_energies(hung, work, rolls[0]),
        *_trailings(hung, work, high, rolls[2]),
        *_joints(hung, work),
        *_gaps(hung, rolls[2]),
        *not_here(("lift_lines", "lift_line_m", "pulleys"), NO_LINES),
        *explain_common(hung, work, roped),
    )


def _rolls(
    hung: HungCurtain, work: CurtainWork, wound: tuple[Term, ...], rolls: tuple[Term, ...]
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
                Term("climb of the bar", work.travel_m, "m"),
                Term("hip to shut bar", hung.covered_m, "m"),
                Term("side along the bow", hung.side_m, "m"),
                rolls[2],
            ),
        ),
    )


def _forces(
    hung: HungCurtain, work: CurtainWork, wound: tuple[Term, ...], rolls: tuple[Term, ...]
) -> tuple[Working, ...]:
    weights = places("weight", work.weights_n, "N")
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
            (Term("torque open", work.torques_nm[2], "N m"), *handle),
        ),
        Working(
            "hand_length_m",
            "The length at which the handle takes the limit at the top.",
            (limit, *handle, *masses, wound[2], rolls[2], rubbing),
            "derived here; hand force limit and rubbing: the user's entry",
        ),
    )


def _energies(hung: HungCurtain, work: CurtainWork, shut_roll: Term) -> tuple[Working, ...]:
    masses, drive = mass_terms(hung), hung.drive
    lifted = Term("film on the bar when it lifts", hung.wrap_m + hung.side.slack_m, "m")
    energy = Working(
        "energy_j",
        "Gravity times climb times the mass that climbs: bar, crank and film on the bar all the "
        "way, film wound on the way half of it.",
        (*masses, lifted, Term("climb of the bar", work.travel_m, "m")),
    )
    if drive.holds:
        return (energy, *not_here(("runaway_m_s", "runaway_handle_m_s"), HOLDS))
    turning = (
        Term("inertia of a metre of bar", bar_inertia(hung.bar), "kg m2"),
        Term("inertia of the crank", drive.inertia_kg_m2, "kg m2"),
        Term("ratio", drive.ratio, "ratio"),
    )
    return (
        energy,
        Working(
            "runaway_m_s",
            "Let go at the top with nothing to rub: all energy becomes speed of bar and crank, "
            "which turn as they come down; film is left out of what moves.",
            (Term("energy", work.energy_j, "J"), *masses, *turning, shut_roll, lifted),
            RUN,
        ),
        Working(
            "runaway_handle_m_s",
            "Speed of the bar over the radius of the roll, times ratio and arm.",
            (
                Term("speed of the bar", work.runaway_m_s, "m/s"),
                shut_roll,
                Term("ratio", drive.ratio, "ratio"),
                Term("crank arm", drive.arm_m, "m_thin"),
            ),
            RUN,
        ),
    )


def _trailings(hung: HungCurtain, work: CurtainWork, high: Lift, roll: Term) -> tuple[Working, ...]:
    bar, limits = hung.bar, hung.limits
    middle = hung.panel.crank_end == "middle"
    outside = Term("outside of the bar", bar.section.outside_m, "m_thin")
    tube = (
        outside,
        Term("wall", bar.section.wall_m, "m_thin"),
        Term("shear modulus", f"{SHEAR_PA[bar.material] / 1e9:g} GPa ({bar.material})", "text"),
    )
    shape = "round" if isinstance(bar.section, RoundTube) else "square"
    line = Term("torque of one metre of bar, open", high.line_torque_n, "N m")
    reach = Term("from the crank to the farthest place", hung.reach_m, "m")
    joints = Term("joints up to there", far_joints(work.bar_joints, middle), "count")
    play = Term("play in a joint", bar.joint_play_m, "m_thin")
    turns = Term("turns of the bar", work.turns, "turns")
    uneven = Term("uneven winding", limits.uneven_winding_m, "m_thin")
    three = (
        Term("by twist", work.twist_trailing_m, "m_thin"),
        Term("by play in the joints", work.play_trailing_m, "m_thin"),
        Term("by uneven winding", work.uneven_trailing_m, "m_thin"),
    )
    return (
        Working(
            "twist_rad",
            "At the top: torque of a metre of bar times the square of the reach from the crank, "
            f"over twice the torsional stiffness. {TORSION_RULE[shape, bar.slit]}",
            (line, reach, *tube),
            SHEAR_SOURCE,
        ),
        Working(
            "twist_trailing_m",
            "Twist times half the roll's diameter at the top.",
            (Term("twist", work.twist_rad, "rad"), roll),
        ),
        Working(
            "play_trailing_m",
            "Each joint turns by its play over half the outside of the tube; times half the roll's "
            "diameter at the top."
            + (" Cranked in the middle, half the joints count." if middle else ""),
            (joints, play, outside, roll),
            "derived here; play: the user's entry",
        ),
        Working(
            "uneven_trailing_m",
            "2 pi times turns times the difference of the winding radius.",
            (turns, uneven),
            "derived here; uneven winding: the user's entry",
        ),
        Working("trailing_m", "The three together, as if all went the same way.", three),
        Working(
            "trailing_length_m",
            "The length at which the three together reach the limit: twist grows with the square "
            "of the length, play with each joint, uneven winding not at all.",
            (
                Term("trailing limit", limits.trailing_m, "m_thin"),
                line,
                roll,
                *tube,
                Term("stick", hung.stick_m, "m"),
                play,
                turns,
                uneven,
            ),
            SHEAR_SOURCE,
        ),
    )


def _joints(hung: HungCurtain, work: CurtainWork) -> tuple[Working, ...]:
    drive = hung.drive
    if isinstance(drive, GearedCrank):
        top_m = hung.height_m(hung.covered_m - work.travel_m)
        return (
            *not_here(("joint_angles_rad", "joint_swing"), NO_JOINT),
            Working(
                "guide_m",
                "From the ground up to the open bar, and what stands in the ground. Nothing is "
                "added above the bar.",
                (
                    Term("height of the open bar", top_m, "m"),
                    Term("in the ground", drive.guide_buried_m, "m"),
                ),
                f"derived here; depth in the ground: {PRACTICE}",
            ),
        )
    extension_m = drive.extension_m if isinstance(drive, HandCrank) else 0.0
    return (
        Working(
            "joint_angles_rad",
            "The pipe slants from the bar to the handle: its angle has the difference of heights "
            "over the length of the pipe for its sine, a right angle where the pipe is too short. "
            "Shut, half way, open.",
            (
                Term("height of the shut bar", hung.height_m(hung.covered_m), "m"),
                Term("climb of the bar", work.travel_m, "m"),
                Term("height of the handle", hung.limits.handle_height_m, "m"),
                Term("extension pipe", extension_m, "m"),
            ),
        ),
        Working(
            "joint_swing",
            "One over the cosine of the greatest angle, at most 10.",
            (Term("greatest angle", max(work.joint_angles_rad), "rad"),),
            "single universal joint (textbook)",
        ),
        *not_here(("guide_m",), NO_GUIDE),
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
        return (pocket, *not_here(("gutter_gap_m",), "There is no gutter on the hip board."))
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
