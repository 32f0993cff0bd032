"""Rulers in the user's units: feet and inches, or metres, at steps that people read at a glance."""

from collections.abc import Sequence
from typing import Literal

import pyqtgraph as pg
from PySide6.QtCore import Qt
from PySide6.QtGui import QFont, QPen

from hoopwright.desktop.palette import colour
from hoopwright.quantity.units import FOOT_M, Units, format_length

STEPS_M: dict[Units, tuple[tuple[float, float], ...]] = {
    "imperial": tuple(
        (major * FOOT_M, minor * FOOT_M)
        for major, minor in (
            (1 / 12, 1 / 48),
            (1 / 4, 1 / 12),
            (1 / 2, 1 / 12),
            (1, 1 / 4),
            (2, 1),
            (5, 1),
            (10, 2),
            (20, 10),
            (50, 10),
            (100, 20),
            (200, 100),
            (500, 100),
            (1000, 500),
        )
    ),
    "metric": (
        (0.02, 0.01),
        (0.05, 0.01),
        (0.1, 0.05),
        (0.2, 0.1),
        (0.5, 0.1),
        (1, 0.5),
        (2, 1),
        (5, 1),
        (10, 5),
        (20, 10),
        (50, 10),
        (100, 50),
        (200, 100),
        (500, 100),
    ),
}
"""Steps with and without a number, m."""

LEAST_STEP_PX = {"bottom": 58.0, "left": 24.0}
TICK_PX = 4

Low = Literal["signed", "mirrored", "none"]


def ruler_steps(px_per_m: float, units: Units, least_px: float) -> tuple[float, float]:
    """Return the smallest steps of a ruler that keep its numbers apart.

    Args:
        px_per_m: Scale.
        units: Units of the ruler.
        least_px: Least distance of two numbers.

    Returns:
        Step with a number and step without, m.
    """
    for major_m, minor_m in STEPS_M[units]:
        if major_m * px_per_m >= least_px:
            return major_m, minor_m
    return STEPS_M[units][-1]


def ruler_text(place_m: float, step_m: float, units: Units) -> str:
    """Return a number of a ruler, without needless inches or decimals.

    Args:
        place_m: Place on the ruler, m.
        step_m: From one number to the next, m.
        units: Units of the ruler.
    """
    if units == "metric":
        return f"{round(place_m, 3):g} m"
    feet = place_m / FOOT_M
    if step_m >= FOOT_M or abs(feet - round(feet)) < 1e-6:
        return f"{round(feet)}'"
    return format_length(place_m, units)


class Ruler(pg.AxisItem):  # type: ignore[misc]  # untyped library
    """One ruler beside a view."""

    def __init__(self, edge: str, box: pg.ViewBox, font: QFont, low: Low = "signed") -> None:
        """Stand at an edge of a view box and follow its range.

        Args:
            edge: "bottom" or "left".
            box: The view box.
            font: Font of the numbers.
            low: What numbers below zero show: their sign, their distance from zero, or nothing.
        """
        super().__init__(edge, showValues=True)
        self._edge, self._low = edge, low
        self._units: Units = "metric"
        self.enableAutoSIPrefix(False)
        self.setStyle(tickLength=TICK_PX, tickTextOffset=2, maxTickLevel=1, tickFont=font)
        self.setStyle(hideOverlappingLabels=True, autoExpandTextSpace=False)
        self.setAcceptedMouseButtons(Qt.MouseButton.NoButton)
        self.linkToView(box)

    def set_look(self, units: Units, dark: bool) -> None:
        """Take the user's units and the colours of a light or dark window."""
        self._units = units
        pen = QPen(colour("muted", dark), 1.0)
        self.setPen(pen)
        self.setTextPen(pen)
        self.picture = None
        self.update()

    def tickSpacing(self, low: float, high: float, size_px: float) -> list[tuple[float, float]]:
        """Return the steps of the ruler for a range, the coarse one first."""
        if high <= low or size_px <= 0:
            return []
        least_px = LEAST_STEP_PX[self._edge]
        major_m, minor_m = ruler_steps(size_px / (high - low), self._units, least_px)
        return [(major_m, 0.0), (minor_m, 0.0)]

    def tickStrings(self, values: Sequence[float], _scale: float, spacing: float) -> list[str]:
        """Return the numbers at the coarse steps."""
        length_px = self.size().height() if self._edge == "left" else self.size().width()
        low, high = self.range
        steps = ruler_steps(
            max(1.0, length_px) / max(1e-9, high - low), self._units, LEAST_STEP_PX[self._edge]
        )
        if spacing < steps[0] - 1e-9:
            return [""] * len(values)
        return [self._number(value, spacing) for value in values]

    def _number(self, place_m: float, step_m: float) -> str:
        """Return a number; across the plan both ways count from the ridge, below ground none."""
        if place_m < -1e-9 and self._low == "none":
            return ""
        return ruler_text(abs(place_m) if self._low == "mirrored" else place_m, step_m, self._units)
