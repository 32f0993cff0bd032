"""How far the farthest place of a bar hangs behind the crank when the curtain is rolled up.

Three things add up:

Twist. A bar carries at each place the torque of all film beyond it. With q the torque of one
metre and b the reach from the crank to the free end, the torque at x is q (b - x) and the twist

    phi = integral of q (b - x) / (G J) dx = q b**2 / (2 G J)

so the end hangs behind by phi times the radius of the roll. Cranked in the middle, the reach is
half the bar and the twist a quarter.

Play. The screws of a joint have a clearance at the outside of the tube; each joint turns by
clearance over that radius before it takes the torque. Of a bar cranked in the middle half the
joints count, rounded up.

Uneven winding. Where the film lies thicker by dr, a bar of N turns climbs 2 pi N dr further.
"""

import math
from bisect import bisect_left

from msgspec import Struct

from hoopwright.curtain.bar import SHEAR_PA, bar_torsion_constant, stick_count
from hoopwright.curtain.hung import HungCurtain
from hoopwright.curtain.lift import Lift


class Lag(Struct, frozen=True):
    """What a bar of a length hangs behind.

    Attributes:
        twist_rad: Twist from the crank to the farthest place, rad.
        twist_m: Trailing by it, m.
        play_m: Trailing by play in the joints, m.
        uneven_m: Trailing by uneven winding, m.
    """

    twist_rad: float
    twist_m: float
    play_m: float
    uneven_m: float

    @property
    def all_m(self) -> float:
        """The three together, m."""
        return self.twist_m + self.play_m + self.uneven_m


NO_LAG = Lag(0.0, 0.0, 0.0, 0.0)


def bar_twist(
    line_torque_n: float, reach_m: float, shear_pa: float, torsion_constant_m4: float
) -> float:
    """Return the twist between the crank and the farthest place of a bar, rad.

    Args:
        line_torque_n: Torque that each metre of the bar takes, N m/m.
        reach_m: From the crank to the farthest place, m.
        shear_pa: Shear modulus of the metal, Pa.
        torsion_constant_m4: Torsion constant of the tube, m4.

    Source:
        Derived here from the torsion of a shaft (textbook), see the module.
    """
    return line_torque_n * reach_m**2 / (2 * shear_pa * torsion_constant_m4)


def joint_play(joints: int, play_m: float, outside_m: float, radius_m: float) -> float:
    """Return the trailing by the play of joints, m.

    Args:
        joints: Joints between the crank and the farthest place.
        play_m: Clearance in one at the outside of the tube, m.
        outside_m: Outside of the tube, m.
        radius_m: Radius of the roll, m.

    Source:
        Derived here, see the module.
    """
    return joints * play_m / (outside_m / 2) * radius_m


def uneven_climb(turns: float, uneven_m: float) -> float:
    """Return how far two places of one bar climb apart that wind on different radii, m.

    Args:
        turns: Turns of the bar.
        uneven_m: Difference of the winding radius, m.

    Source:
        Derived here: a turn winds 2 pi times the radius.
    """
    return 2 * math.pi * turns * uneven_m


def far_joints(joints: int, middle: bool) -> int:
    """Return the joints between the crank and the farthest place: all, or half of them."""
    return math.ceil(joints / 2) if middle else joints


def lag_of(hung: HungCurtain, lift: Lift, turns: float) -> Lag:
    """Return how far the bar hangs behind at one place of its way.

    Args:
        hung: The curtain.
        lift: The place.
        turns: Turns of the bar since it was shut.

    Source:
        See the module.
    """
    bar, middle = hung.bar, hung.panel.crank_end == "middle"
    twist_rad = bar_twist(
        lift.line_torque_n, hung.reach_m, SHEAR_PA[bar.material], bar_torsion_constant(bar)
    )
    sticks = stick_count(hung.span.length_m, hung.stick_m, bar.overlap_m)
    joints = far_joints(sticks - 1, middle)
    return Lag(
        twist_rad=twist_rad,
        twist_m=twist_rad * lift.radius_m,
        play_m=joint_play(joints, bar.joint_play_m, bar.section.outside_m, lift.radius_m),
        uneven_m=uneven_climb(turns, hung.limits.uneven_winding_m),
    )


def longest_by_trailing(hung: HungCurtain, lift: Lift, turns: float) -> float:
    """Return the longest bar whose farthest place stays within the trailing limit, m.

    Trailing grows with the square of the length and steps up at each joint, so it only grows.
    First the greatest number of joints is sought whose play still leaves room for the twist of
    the shortest bar that needs them; then the bar may grow until twist uses up that room, or the
    sticks end.

    Args:
        hung: The curtain.
        lift: Its place when open.
        turns: Turns of the bar from shut to open.

    Returns:
        Metres; 0 when uneven winding alone passes the limit.

    Source:
        Derived here: `lag_of` solved for the length.
    """
    bar, middle = hung.bar, hung.panel.crank_end == "middle"
    step_m = hung.stick_m - bar.overlap_m
    room_m = hung.limits.trailing_m - uneven_climb(turns, hung.limits.uneven_winding_m)
    if room_m <= 0:
        return 0.0
    stiffness_nm2 = SHEAR_PA[bar.material] * bar_torsion_constant(bar)
    twist_per_m = lift.radius_m * lift.line_torque_n / (2 * stiffness_nm2)
    halves = 2 if middle else 1

    def left_m(joints: int) -> float:
        far = far_joints(joints, middle)
        return room_m - joint_play(far, bar.joint_play_m, bar.section.outside_m, lift.radius_m)

    def is_over(joints: int) -> bool:
        shortest_m = (bar.overlap_m + joints * step_m) / halves
        return left_m(joints) < twist_per_m * shortest_m**2

    most = math.ceil(halves * math.sqrt(room_m / twist_per_m) / step_m) + 1
    joints = bisect_left(range(1, most), True, key=is_over)
    reach_m = math.sqrt(left_m(joints) / twist_per_m)
    return min(halves * reach_m, bar.overlap_m + (joints + 1) * step_m)
