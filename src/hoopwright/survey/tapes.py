"""What a string, a tape and a few points tell of the bend of a bow."""

import math
from collections.abc import Sequence

from msgspec import Struct

from hoopwright.farm.entry_error import EntryError

Spot = tuple[float, float]

CLOSE = 1e-12
MOST_STEPS = 60


class Circle(Struct, frozen=True):
    """The circle that points lie on best.

    Attributes:
        x_m: Its centre across, m.
        y_m: Its centre up, m.
        radius_m: Radius, m.
        misfit_m: Root of the mean square of what the points are off it, m.
    """

    x_m: float
    y_m: float
    radius_m: float
    misfit_m: float


def string_radius(chord_m: float, offset_m: float) -> float:
    """Return the radius of a bend from a stretched string and the offset at its middle, m.

    Args:
        chord_m: Length of the string from tube to tube, m.
        offset_m: From the middle of the string to the tube, m.

    Raises:
        ValueError: There is no such bend; the field is named.

    Source:
        Circle geometry: R = c2 / 8m + m / 2.
    """
    if not (math.isfinite(chord_m) and chord_m > 0):
        raise ValueError("chord_m: the string must have a length; measure from tube to tube")
    if not (math.isfinite(offset_m) and offset_m > 0):
        raise ValueError(
            "offset_m: the tube must stand off the middle of the string; measure where it bends"
        )
    return chord_m**2 / (8 * offset_m) + offset_m / 2


def tape_radius(along_m: float, chord_m: float) -> float:
    """Return the radius of a bend from a tape along the tube and one straight across, m.

    Args:
        along_m: Along the tube, m.
        chord_m: Straight between the same two places, m.

    Raises:
        ValueError: There is no such bend; the field is named.

    Source:
        Circle geometry: sin(u) / u = c / L with half the angle u from 0 to pi, R = L / 2u; found by
        halving.
    """
    if not (math.isfinite(chord_m) and chord_m > 0):
        raise ValueError("chord_m: the way across must have a length; measure it straight")
    if not (math.isfinite(along_m) and along_m > chord_m):
        raise EntryError(
            "along_m",
            "the tape along the tube must read more than the {chord} straight across; measure both "
            "between the same two places",
            chord=(chord_m, "m"),
        )
    low, high = 0.0, math.pi
    while high - low > CLOSE * math.pi:
        middle = (low + high) / 2
        if math.sin(middle) / middle > chord_m / along_m:
            low = middle
        else:
            high = middle
    return along_m / (low + high)


def best_circle(spots: Sequence[Spot]) -> Circle:
    """Return the circle whose distance from the points has the least sum of squares.

    Args:
        spots: Across and up of each point, m.

    Raises:
        ValueError: There are fewer than three points, or they lie on a straight line.

    Source:
        Least squares of the distances by the steps of Gauss and Newton, from the circle that
        solves x2 + y2 + D x + E y + F = 0 best.
    """
    if len(spots) < 3:
        raise ValueError("points: a circle needs at least three points; enter more")
    middle_x = sum(x for x, _ in spots) / len(spots)
    middle_y = sum(y for _, y in spots) / len(spots)
    near = [(x - middle_x, y - middle_y) for x, y in spots]
    size_m = max(math.hypot(*spot) for spot in near)
    x, y = _first_centre(near, size_m)
    for _ in range(MOST_STEPS):
        step_x, step_y = _step(near, x, y)
        x, y = x + step_x, y + step_y
        if math.hypot(step_x, step_y) <= CLOSE * size_m:
            break
    far = [math.dist((x, y), spot) for spot in near]
    radius_m = sum(far) / len(far)
    misfit_m = math.sqrt(sum((r - radius_m) ** 2 for r in far) / len(far))
    return Circle(x + middle_x, y + middle_y, radius_m, misfit_m)


def _first_centre(near: Sequence[Spot], size_m: float) -> Spot:
    """Return the centre of the circle whose equation the points solve best."""
    xx = sum(x * x for x, _ in near)
    yy = sum(y * y for _, y in near)
    xy = sum(x * y for x, y in near)
    xr = sum(x * (x * x + y * y) for x, y in near) / 2
    yr = sum(y * (x * x + y * y) for x, y in near) / 2
    under = xx * yy - xy * xy
    if under <= CLOSE * size_m**4:
        raise ValueError("points: they lie on a straight line; enter one that stands off it")
    return (xr * yy - yr * xy) / under, (yr * xx - xr * xy) / under


def _step(near: Sequence[Spot], x: float, y: float) -> Spot:
    """Return the step of the centre; the best radius for a centre is the mean distance.

    With unit vectors (u, v) from the centre to the points, and their means taken off, the squares
    are least where the two normal equations hold.
    """
    rays = [(px - x, py - y, math.dist((x, y), (px, py))) for px, py in near]
    count = len(rays)
    radius = sum(r for _, _, r in rays) / count
    units = [(dx / r, dy / r) if r else (0.0, 0.0) for dx, dy, r in rays]
    mean_u, mean_v = sum(u for u, _ in units) / count, sum(v for _, v in units) / count
    uu = uv = vv = ur = vr = 0.0
    for (u, v), (_, _, r) in zip(units, rays, strict=True):
        du, dv, off = u - mean_u, v - mean_v, r - radius
        uu, uv, vv = uu + du * du, uv + du * dv, vv + dv * dv
        ur, vr = ur + du * off, vr + dv * off
    under = uu * vv - uv * uv
    if under <= 0:
        return 0.0, 0.0
    return (ur * vv - vr * uv) / under, (vr * uu - ur * uv) / under
