"""The longest bar that hand, trailing and the makers of bar and drive allow."""

from hoopwright.curtain.curtain import Bound
from hoopwright.curtain.hung import HungCurtain
from hoopwright.curtain.lift import Lift
from hoopwright.curtain.lifting import longest_by_force


def hand_length(hung: HungCurtain, hardest: Lift) -> float:
    """Return the longest bar that the drive turns within the hand force limit, m.

    Args:
        hung: The curtain.
        hardest: The place where the handle is hardest.

    Source:
        Derived here: torque of that hand force at the bar or drum, see `longest_by_force`.
    """
    drive = hung.drive
    most_nm = hung.limits.hand_force_n * drive.arm_m * drive.ratio * drive.efficiency
    return longest_by_force(most_nm, hardest.line_torque_n, hardest.extra_torque_nm)


def longest_bar(hung: HungCurtain, hand_m: float, trailing_m: float) -> tuple[float, Bound]:
    """Return the longest bar that all limits allow, m, and the limit that sets it.

    Args:
        hung: The curtain.
        hand_m: Longest bar within the hand force limit, m.
        trailing_m: Longest bar within the trailing limit, m.

    Source:
        Derived here: the least of them; of equal ones the first.
    """
    bounds: list[tuple[float, Bound]] = [(hand_m, "hand force"), (trailing_m, "trailing")]
    if hung.bar.max_length_m is not None:
        bounds.append((hung.bar.max_length_m, "maker of the bar"))
    if hung.drive.max_length_m is not None:
        bounds.append((hung.drive.max_length_m, "maker of the drive"))
    return min(bounds, key=lambda bound: bound[0])
