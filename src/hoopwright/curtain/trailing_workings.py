"""How the trailing of a curtain that rolls up was got."""

from hoopwright.curtain.bar import SHEAR_PA, SHEAR_SOURCE, TORSION_RULE
from hoopwright.curtain.hung import HungCurtain
from hoopwright.curtain.moved import Moved
from hoopwright.curtain.trailing import far_joints
from hoopwright.farm.bar import RoundTube
from hoopwright.quantity.working import Term, Working


def explain_trailing(hung: HungCurtain, moved: Moved, sticks: int) -> tuple[Working, ...]:
    """Return a working for each part of a curtain's trailing.

    Args:
        hung: The curtain.
        moved: How it moves through its travel.
        sticks: Sticks that its bar is made of.
    """
    high, lag = moved.places[2], moved.lag
    line = Term("torque of one metre of bar, open", high.line_torque_n, "N m")
    roll = Term("roll open", 2 * high.radius_m, "m_thin")
    turns = Term("turns of the bar", moved.turns, "turns")
    three = (
        Term("by twist", lag.twist_m, "m_thin"),
        Term("by play in the joints", lag.play_m, "m_thin"),
        Term("by uneven winding", lag.uneven_m, "m_thin"),
    )
    return (
        *_twist(hung, line, Term("twist", lag.twist_rad, "rad"), roll),
        _play(hung, sticks, roll),
        _uneven(hung, turns),
        Working("trailing_m", "The three together, as if all went the same way.", three),
        _longest(hung, line, roll, turns),
    )


def _twist(hung: HungCurtain, line: Term, twist: Term, roll: Term) -> tuple[Working, ...]:
    bar = hung.bar
    shape = "round" if isinstance(bar.section, RoundTube) else "square"
    return (
        Working(
            "twist_rad",
            "At the top: torque of a metre of bar times the square of the reach from the crank, "
            f"over twice the torsional stiffness. {TORSION_RULE[shape, bar.slit]}",
            (line, Term("reach from the crank", hung.reach_m, "m"), *_tube(hung)),
            SHEAR_SOURCE,
        ),
        Working("twist_trailing_m", "Twist times half the roll's diameter.", (twist, roll)),
    )


def _play(hung: HungCurtain, sticks: int, roll: Term) -> Working:
    middle = hung.panel.crank_end == "middle"
    return Working(
        "play_trailing_m",
        "Each joint between the crank and the farthest place turns by its play over half the "
        "outside of the tube; times half the roll's diameter."
        + (" Cranked in the middle, half the joints count, rounded up." if middle else ""),
        (
            Term("joints up to there", far_joints(sticks - 1, middle), "count"),
            _joint_play(hung),
            _tube(hung)[0],
            roll,
        ),
        "derived here; play: the user's entry",
    )


def _uneven(hung: HungCurtain, turns: Term) -> Working:
    return Working(
        "uneven_trailing_m",
        "2 pi times turns times the difference of the winding radius.",
        (turns, _uneven_winding(hung)),
        "derived here; uneven winding: the user's entry",
    )


def _longest(hung: HungCurtain, line: Term, roll: Term, turns: Term) -> Working:
    return Working(
        "trailing_length_m",
        "The length at which the three together reach the limit: twist grows with the square of "
        "the length, play with each joint, uneven winding not at all.",
        (
            Term("trailing limit", hung.limits.trailing_m, "m_thin"),
            line,
            roll,
            *_tube(hung),
            Term("stick", hung.stick_m, "m"),
            Term("overlap at a joint", hung.bar.overlap_m, "m_thin"),
            _joint_play(hung),
            turns,
            _uneven_winding(hung),
        ),
        SHEAR_SOURCE,
    )


def _tube(hung: HungCurtain) -> tuple[Term, ...]:
    bar = hung.bar
    shear = f"{SHEAR_PA[bar.material] / 1e9:g} GPa ({bar.material})"
    return (
        Term("outside of the bar", bar.section.outside_m, "m_thin"),
        Term("wall", bar.section.wall_m, "m_thin"),
        Term("shear modulus", shear, "text"),
    )


def _joint_play(hung: HungCurtain) -> Term:
    return Term("play in a joint", hung.bar.joint_play_m, "m_thin")


def _uneven_winding(hung: HungCurtain) -> Term:
    return Term("uneven winding", hung.limits.uneven_winding_m, "m_thin")
