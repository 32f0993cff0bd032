"""Points of a bow to type in, a line for each; one empty line stands always at the end."""

from typing import Literal

from PySide6.QtCore import QCoreApplication, Signal
from PySide6.QtWidgets import QGridLayout, QLabel, QWidget

from hoopwright.desktop.field import Between, refusal_words
from hoopwright.desktop.fields import LengthField
from hoopwright.farm.entered import describe
from hoopwright.farm.measured_bow import AcrossUp, TwoTapes
from hoopwright.quantity.units import Units

Taken = Literal["across_up", "two_tapes"]
Point = AcrossUp | TwoTapes
CLASSES: dict[Taken, type[AcrossUp] | type[TwoTapes]] = {
    "across_up": AcrossUp,
    "two_tapes": TwoTapes,
}
MOST_POINTS = 60


def _said(text: str) -> str:
    return QCoreApplication.translate("Measuring", text)


class PointError(ValueError):
    """A point cannot be; its field says why already."""


class PointsForm(QWidget):
    """Points, all taken in one way.

    Signals:
        changed(): When a length was entered.
    """

    changed = Signal()

    def __init__(
        self, taken: Taken, points: tuple[Point, ...], units: Units, parent: QWidget | None = None
    ) -> None:
        """Show points, which are taken in this way, and an empty line."""
        super().__init__(parent)
        self._kind, self._units = CLASSES[taken], units
        self._known = [known for known in describe(self._kind) if known.low is not None]
        self.lines: list[tuple[LengthField, ...]] = []
        self._grid = QGridLayout(self)
        self._grid.setColumnStretch(1, 1)
        self._grid.setColumnStretch(2, 1)
        for column, known in enumerate(self._known, start=1):
            words = QCoreApplication.translate("Farm", known.label)
            head = QLabel(words[:1].upper() + words[1:])
            head.setWordWrap(True)
            self._grid.addWidget(head, 0, column)
        for point in points:
            self._add_line(tuple(getattr(point, known.name) for known in self._known))
        self._keep_a_line()

    def points(self, finished: bool) -> tuple[Point, ...]:
        """Return the points of all lines that are filled.

        Args:
            finished: Whether a line with one length alone is refused, not passed over.

        Raises:
            ValueError: A line is half filled, or its point cannot be; its field says why.
        """
        found = []
        for n, line in enumerate(self.lines, start=1):
            values = [field.value for field in line]
            if None not in values:
                found.append(self._point(line, values))
            elif finished and any(value is not None for value in values):
                words = _said("Enter both lengths of point {number}.").format(number=n)
                line[values.index(None)].show_refusal(words)
                raise PointError(words)
        return tuple(found)

    def refuse(self, index: int, words: str) -> None:
        """Say at a point that is filled in why it cannot be."""
        filled = [line for line in self.lines if all(f.value is not None for f in line)]
        filled[min(index, len(filled) - 1)][0].show_refusal(words)

    def fields(self) -> list[LengthField]:
        """Return all fields in reading order."""
        return [field for line in self.lines for field in line]

    def on_entered(self) -> None:
        """Keep an empty line at the end and tell of the change."""
        self._keep_a_line()
        self.changed.emit()

    def _point(self, line: tuple[LengthField, ...], values: list[object]) -> Point:
        named = {known.name: value for known, value in zip(self._known, values, strict=True)}
        try:
            return self._kind(**named)  # type: ignore[arg-type]  # checked by the class
        except ValueError as error:
            line[0].show_refusal(refusal_words(error, self._units))
            raise PointError(refusal_words(error, self._units)) from error

    def _keep_a_line(self) -> None:
        last = self.lines[-1] if self.lines else None
        full = last is None or any(field.value is not None for field in last)
        if full and len(self.lines) < MOST_POINTS:
            self._add_line((None,) * len(self._known))

    def _add_line(self, values: tuple[float | None, ...]) -> None:
        number = len(self.lines) + 1
        name = _said("Point {number}: {length}")
        line = []
        for known, value in zip(self._known, values, strict=True):
            assert known.low is not None
            assert known.high is not None
            words = QCoreApplication.translate("Farm", known.label)
            field = LengthField(
                name.format(number=number, length=words),
                self._units,
                Between(known.low, known.high),
                optional=True,
            )
            field.set_value(value)
            field.entered.connect(self.on_entered)
            line.append(field)
            self._grid.addWidget(field, number, len(line))
            # At once and not with the next turn of the event loop, so that it takes the focus.
            field.show()
        self._grid.addWidget(QLabel(str(number)), number, 0)
        self.lines.append(tuple(line))
