"""A blower's curve: what pressure it holds at a flow, and what flow it gives at a pressure.

Two points make a straight line, three a parabola through all of them. A curve falls: more air
means less pressure. It says nothing outside the points given, so it is held there: the first
pressure up to the first flow, and never more than the last flow.
"""

import math
from dataclasses import dataclass, field

FEWEST, MOST = 2, 3
LEVEL = 1e-9


@dataclass(frozen=True, slots=True)
class FanCurve:
    """A falling curve through two or three points.

    Attributes:
        points: Flow in m3/s and pressure in Pa of each point, in any order; no flow twice.
    """

    points: tuple[tuple[float, float], ...]
    _bend: float = field(init=False, repr=False, compare=False)
    _tilt: float = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        """Refuse points that make no falling curve.

        Raises:
            ValueError: Too few or many points, equal flows, or a curve that rises; the message
                names the field and the mend.
        """
        points = tuple(sorted(self.points))
        _check_points(points)
        bend, tilt = _through(points)
        object.__setattr__(self, "points", points)
        object.__setattr__(self, "_bend", bend)
        object.__setattr__(self, "_tilt", tilt)
        run = self._last[0] - self._first[0]
        chord = (self._last[1] - self._first[1]) / run
        # A parabola may be level at one end, to the last digits.
        if chord >= 0 or max(tilt, tilt + 2 * bend * run) > -LEVEL * chord:
            raise ValueError(
                "points: the curve rises; a blower's pressure falls as its flow grows. Enter "
                "points further apart on the falling part, or two points for a straight line."
            )

    @property
    def _first(self) -> tuple[float, float]:
        return self.points[0]

    @property
    def _last(self) -> tuple[float, float]:
        return self.points[-1]

    @property
    def most_pa(self) -> float:
        """Pressure at the smallest flow given, the most the blower holds, Pa."""
        return self._first[1]

    @property
    def most_m3_s(self) -> float:
        """Greatest flow given, m3/s."""
        return self._last[0]

    @property
    def least_m3_s(self) -> float:
        """Smallest flow given, m3/s."""
        return self._first[0]

    def pressure_pa(self, flow_m3_s: float) -> float:
        """Return the pressure the blower holds at a flow, Pa, never outside the points.

        Source:
            Line or parabola through the points entered.
        """
        beyond = min(max(flow_m3_s, self.least_m3_s), self.most_m3_s) - self.least_m3_s
        return self.most_pa + (self._tilt + self._bend * beyond) * beyond

    def slope(self, flow_m3_s: float) -> float:
        """Return how the pressure changes with the flow, Pa s/m3, zero or less.

        Source:
            Derived here: the line's or parabola's slope, held outside the points.
        """
        beyond = min(max(flow_m3_s, self.least_m3_s), self.most_m3_s) - self.least_m3_s
        return min(0.0, self._tilt + 2 * self._bend * beyond)

    def flow_m3_s(self, pressure_pa: float) -> float:
        """Return the flow the blower gives against a pressure, m3/s, never outside the points.

        Source:
            The same line or parabola, solved for the flow.
        """
        if pressure_pa >= self.most_pa:
            return self.least_m3_s
        if pressure_pa <= self._last[1]:
            return self.most_m3_s
        under = self.most_pa - pressure_pa
        # Stable for a bend of either sign and of zero: the root nearest to the first point.
        root = math.sqrt(max(0.0, self._tilt**2 - 4 * self._bend * under))
        return self.least_m3_s + 2 * under / (root - self._tilt)


def _check_points(points: tuple[tuple[float, float], ...]) -> None:
    if not FEWEST <= len(points) <= MOST:
        raise ValueError(
            f"points: a curve takes two or three points, not {len(points)}. Enter flow and "
            "pressure at two or three places of the maker's curve."
        )
    if not all(0 <= number < math.inf for point in points for number in point):
        raise ValueError("points: every flow and pressure must be zero or more. Mend the points.")
    if len({flow for flow, _ in points}) < len(points):
        raise ValueError("points: two points have the same flow. Enter another flow for one.")


def _through(points: tuple[tuple[float, float], ...]) -> tuple[float, float]:
    """Return bend and tilt of the curve, counted from its first point."""
    first, *rest = points
    chords = [(q - first[0], (p - first[1]) / (q - first[0])) for q, p in rest]
    if len(chords) == 1:
        return 0.0, chords[0][1]
    (near, steep), (far, steeper) = chords
    bend = (steeper - steep) / (far - near)
    return bend, steep - bend * near
