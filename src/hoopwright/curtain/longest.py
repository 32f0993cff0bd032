"""The longest bar that hand, trailing and the makers of bar and drive allow."""

from msgspec import Struct

from hoopwright.curtain.curtain import Bound
from hoopwright.curtain.hung import HungCurtain
from hoopwright.curtain.lift import Lift
from hoopwright.curtain.lifting import longest_by_force


class Longest(Struct, frozen=True):
    """The longest bar of a curtain.

    Attributes:
        by_hand_m: Within the hand force limit, m.
        by_trailing_m: Within the trailing limit, m.
        bar_m: Within all limits, m.
        bound: The limit that sets it.
    """

    by_hand_m: float
    by_trailing_m: float
    bar_m: float
    bound: Bound


def longest_bar(hung: HungCurtain, hardest: Lift, by_trailing_m: float) -> Longest:
    """Return the longest bar of a curtain.

    Args:
        hung: The curtain.
        hardest: The place where the handle is hardest.
        by_trailing_m: Longest bar within the trailing limit, m.

    Source:
        Derived here: the least of what the limits allow; of equal ones the first.
    """
    by_hand_m = _by_hand(hung, hardest)
    bounds: list[tuple[float, Bound]] = [(by_hand_m, "hand force"), (by_trailing_m, "trailing")]
    if hung.bar.max_length_m is not None:
        bounds.append((hung.bar.max_length_m, "maker of the bar"))
    if hung.drive.max_length_m is not None:
        bounds.append((hung.drive.max_length_m, "maker of the drive"))
    bar_m, bound = min(bounds, key=lambda one: one[0])
    return Longest(by_hand_m, by_trailing_m, bar_m, bound)


def _by_hand(hung: HungCurtain, hardest: Lift) -> float:
    drive = hung.drive
    most_nm = hung.limits.hand_force_n * drive.arm_m * drive.ratio * drive.efficiency
    return longest_by_force(most_nm, hardest.line_torque_n, hardest.extra_torque_nm)
