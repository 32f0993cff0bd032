"""How each figure of a worked curtain was got."""

from hoopwright.curtain.drop_workings import explain_drop
from hoopwright.curtain.hung import HungCurtain
from hoopwright.curtain.longest import Longest
from hoopwright.curtain.moved import Moved
from hoopwright.curtain.roll_workings import HOLDS, RUN, explain_roll
from hoopwright.curtain.rope_workings import explain_rope
from hoopwright.curtain.roped import Roped
from hoopwright.curtain.terms import handle_terms, length_term, lift_terms, not_here
from hoopwright.curtain.trailing_workings import explain_trailing
from hoopwright.quantity.working import Term, Working


def explain_work(
    hung: HungCurtain, moved: Moved, longest: Longest, sticks: int, roped: Roped
) -> tuple[Working, ...]:
    """Return a working for each figure of a worked curtain.

    Args:
        hung: The curtain.
        moved: How it moves through its travel.
        longest: Its longest bar.
        sticks: Sticks that its bar is made of.
        roped: Its wind rope.
    """
    if hung.drops:
        own = explain_drop(hung, moved)
    else:
        own = (*explain_roll(hung, moved), *explain_trailing(hung, moved, sticks))
    return (
        *own,
        *_handle(hung, moved),
        *_runaway(hung, moved),
        _longest(hung, longest),
        *_bars(hung, sticks),
        *explain_rope(hung, roped),
    )


def _handle(hung: HungCurtain, moved: Moved) -> tuple[Working, ...]:
    _, torques = lift_terms(moved)
    handle = handle_terms(hung)
    ratio = handle[1]
    return (
        Working("length_m", "The bar is as long as its curtain.", (length_term(hung),)),
        Working(
            "hand_forces_n",
            "Torque over arm, ratio and efficiency. Shut, half way, open. A bent joint lets it "
            "swing about that.",
            (*torques, *handle),
        ),
        Working(
            "handle_turns",
            "Turns of the bar or drum times the ratio.",
            (Term("turns", moved.turns, "turns"), ratio),
        ),
        Working(
            "minutes",
            "Turns of the handle over the turns made in a minute, without a rest.",
            (
                Term("handle turns", moved.turns * hung.drive.ratio, "turns"),
                Term("in a minute", hung.limits.handle_rate_per_min, "1/min"),
            ),
            "derived here; rate at the handle: the user's entry",
        ),
    )


def _runaway(hung: HungCurtain, moved: Moved) -> tuple[Working, ...]:
    if hung.drive.holds:
        return not_here(("runaway_handle_m_s",), HOLDS)
    arm, ratio, _ = handle_terms(hung)
    speed = Term("speed of the bar", moved.runaway_m_s, "m/s")
    lever = Term("roll or drum", 2 * moved.low_radius_m, "m_thin")
    return (
        Working(
            "runaway_handle_m_s",
            "Speed of the bar over half the roll's or drum's diameter, times ratio and arm.",
            (speed, lever, ratio, arm),
            RUN,
        ),
    )


def _longest(hung: HungCurtain, longest: Longest) -> Working:
    bounds = (
        ("by the hand force limit", longest.by_hand_m),
        ("by the trailing limit", longest.by_trailing_m),
        ("maker of the bar", hung.bar.max_length_m),
        ("maker of the drive", hung.drive.max_length_m),
    )
    return Working(
        "longest_m",
        "The least of what hand, trailing and the makers of bar and drive allow.",
        tuple(Term(name, most_m, "m") for name, most_m in bounds if most_m is not None),
        "derived here; limits: the user's entry",
    )


def _bars(hung: HungCurtain, sticks: int) -> tuple[Working, ...]:
    stick = Term("stick", hung.stick_m, "m")
    overlap = Term("overlap at a joint", hung.bar.overlap_m, "m_thin")
    return (
        Working(
            "bar_sticks",
            "The first stick gives its whole length, each further one its length less the overlap; "
            "rounded up.",
            (length_term(hung), stick, overlap),
        ),
        Working("bar_joints", "One less than sticks.", (Term("sticks", sticks, "count"),)),
    )
