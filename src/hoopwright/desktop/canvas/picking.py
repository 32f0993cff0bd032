"""What lies under the pointer: the nearest handle, the nearest or topmost mark.

Sizes are in metres but for the reach of a hit, which is in pixels, so that a hand hits as easily
at every scale.
"""

import math
from collections.abc import Iterable, Iterator
from itertools import pairwise

from hoopwright.papers.scene import (
    Handle,
    Line,
    Point,
    Polygon,
    Polyline,
    Segment,
    Shape,
    Symbol,
    View,
)

GRIP_REACH_PX = 12.0
LINE_REACH_PX = 4.0
HANDLE_LINE_PX = 6.0
SYMBOL_REACH_PX = 11.0
SYMBOL_SHIFT_PX = {"crank": (13.0, 0.0), "roll into": (0.0, 0.0), "roll out": (0.0, 0.0)}
SIDE_MARKS = 2


def symbol_shift(symbol: Symbol) -> Point:
    """Return how far right and up of its place a symbol is drawn, px."""
    right_px, up_px = SYMBOL_SHIFT_PX.get(symbol.kind, (0.0, 0.0))
    return symbol.facing * right_px, up_px


def handles_of(view: View) -> Iterator[Handle]:
    """Give the handles of a view, in the order they are drawn."""
    return (shape for shape in view.shapes if isinstance(shape, Handle))


def nearest_handle(view: View, at: Point, px_per_m: float) -> Handle | None:
    """Return the handle nearest to a point within its reach: the nearest, not the topmost.

    A grip is hit within 12 px, the line of a handle within 6; a grip goes before a line.

    Args:
        view: The view.
        at: The point, m.
        px_per_m: Scale of the view.
    """
    best: Handle | None = None
    least_px = GRIP_REACH_PX
    for handle in handles_of(view):
        grip_px = math.dist(handle.grip, at) * px_per_m
        line_px = _from_segment(handle.ends, at) * px_per_m + GRIP_REACH_PX - HANDLE_LINE_PX
        if min(grip_px, line_px) <= least_px:
            best, least_px = handle, min(grip_px, line_px)
    return best


def nearest_mark(view: View, at: Point, px_per_m: float) -> str:
    """Return the mark at a point: a symbol or line close by, else the topmost area, else "".

    Args:
        view: The view.
        at: The point, m.
        px_per_m: Scale of the view.
    """
    best, least_px = "", math.inf
    area = ""
    for shape in view.shapes:
        if not shape.mark:
            continue
        if isinstance(shape, Polygon):
            if _holds(shape.points, at):
                area = shape.mark
            continue
        away_px, reach_px = _away_px(shape, at, px_per_m)
        if away_px <= reach_px and away_px <= least_px:
            best, least_px = shape.mark, away_px
    return best or area


def _away_px(shape: Shape, at: Point, px_per_m: float) -> tuple[float, float]:
    """Return how far a shape is from a point, and how near it has to be, px."""
    if isinstance(shape, Symbol):
        right_px, up_px = symbol_shift(shape)
        centre = (shape.at[0] + right_px / px_per_m, shape.at[1] + up_px / px_per_m)
        away_px = math.dist(centre, at) * px_per_m
        # The whole of a symbol counts as near, before every line that crosses it.
        return max(0.0, away_px - SYMBOL_REACH_PX), 0.0
    if isinstance(shape, Line):
        return _from_segment(shape.ends, at) * px_per_m, LINE_REACH_PX
    if isinstance(shape, Polyline):
        points = shape.points
        legs = ((*a, *b) for a, b in pairwise(points))
        away_m = min((_from_segment(leg, at) for leg in legs), default=math.inf)
        return away_m * px_per_m, LINE_REACH_PX
    return math.inf, 0.0


def _from_segment(ends: Segment, at: Point) -> float:
    """Return the distance of a point from a straight line between two points, m."""
    x1, y1, x2, y2 = ends
    run, rise = x2 - x1, y2 - y1
    size = run * run + rise * rise
    share = 0.0 if size == 0 else ((at[0] - x1) * run + (at[1] - y1) * rise) / size
    share = min(1.0, max(0.0, share))
    return math.hypot(at[0] - x1 - share * run, at[1] - y1 - share * rise)


def _holds(points: tuple[Point, ...], at: Point) -> bool:
    """Return whether a point lies in an area.

    Source:
        Even number of crossings of a ray: a textbook rule.
    """
    x, y = at
    inside = False
    previous = points[-1]
    for point in points:
        (x1, y1), (x2, y2) = previous, point
        if (y1 > y) != (y2 > y) and x < x1 + (y - y1) * (x2 - x1) / (y2 - y1):
            inside = not inside
        previous = point
    return inside


def is_lit(mark: str, shown: Iterable[str]) -> bool:
    """Return whether a shape of a mark is lit when some marks are shown.

    A whole side lights all that is on it, the roof its sheets, the frame its bows.
    """
    return any(mark == wanted or _belongs(mark, wanted) for wanted in shown if wanted)


def _belongs(mark: str, wanted: str) -> bool:
    parts = wanted.split("/")
    if parts[0] == "side" and len(parts) == SIDE_MARKS:
        return mark.startswith(wanted + "/") and not mark.endswith("/crank")
    if wanted == "roof":
        return mark.startswith(("piece/roof", "piece/whole"))
    return mark.startswith("bow/") if wanted == "frame" else False
