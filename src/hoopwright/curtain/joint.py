"""The universal joint between a bar and the handle that turns it from the ground.

A joint bent by beta turns its output unevenly: over a turn the speed swings between cos(beta) and
1 / cos(beta) of that of the handle, and the torque at the handle the other way round.
"""

import math

MOST_SWING = 10.0
"""Above this (beyond some 84 degrees) the joint cannot turn, and a larger number says no more."""


def joint_angle(bar_height_m: float, handle_height_m: float, extension_m: float) -> float:
    """Return the angle between the bar and the pipe that slants from it to the handle, rad.

    Args:
        bar_height_m: Height of the bar above the ground, m.
        handle_height_m: Height of the handle, m.
        extension_m: From the joint at the bar to the handle, m.

    Returns:
        From 0 up to a right angle, which also stands for a pipe too short to reach.

    Source:
        Derived here: the pipe is the long side of a right-angled triangle.
    """
    return math.asin(min(1.0, abs(bar_height_m - handle_height_m) / extension_m))


def joint_swing(angle_rad: float) -> float:
    """Return the peak of the handle's torque over its mean through a turn, at most 10.

    Args:
        angle_rad: Angle of the joint, rad, from 0 to a right angle.

    Source:
        Single universal joint (textbook): speeds between cos(beta) and 1 / cos(beta).
    """
    return min(MOST_SWING, 1 / max(math.cos(angle_rad), 1 / MOST_SWING))
