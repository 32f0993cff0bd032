"""Fields that take what people write and show it in the farm's units, ready to be typed back."""

import math
from collections.abc import Sequence
from decimal import Decimal
from functools import lru_cache

from PySide6.QtCore import QCoreApplication, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QCheckBox, QComboBox, QWidget

from hoopwright.desktop.field import UNLIMITED, Between, Field, LimitError, LineField, Reading
from hoopwright.quantity.money import read_money
from hoopwright.quantity.units import (
    Units,
    format_length,
    from_display,
    read_length,
    read_number,
    read_signed_length,
    show,
    to_display,
    unit_label,
)

FINEST_STEPS = (8, 16, 32, 64)
EXACT_M = 1e-6
TYPED_DIGITS = 4
LONGEST_M = 10_000.0


@lru_cache(maxsize=4096)
def write_length(value_m: float, units: Units) -> str:
    """Return a length in the coarsest step of an inch that is exact, else in eighths.

    Args:
        value_m: The length, m; negative below a line.
        units: The system to write it in.
    """
    for step in FINEST_STEPS:
        text = format_length(value_m, units, step=step)
        if abs(read_signed_length(text, units).value_m - value_m) < EXACT_M:
            return text
    return format_length(value_m, units)


def write_money(amount: Decimal) -> str:
    """Return an amount with two decimals, or with all it has, as it can be typed back."""
    return f"{amount:.2f}" if amount == round(amount, 2) else f"{amount.normalize():f}"


class TextField(LineField):
    """A field for a name or a remark."""


class LengthField(LineField):
    """A field for a length, in feet and inches or in metres, as people write them."""

    def __init__(
        self,
        name: str,
        units: Units,
        between: Between = UNLIMITED,
        optional: bool = False,
        parent: QWidget | None = None,
    ) -> None:
        """Make an empty field in a system of units, with limits in m."""
        super().__init__(name, optional, parent)
        self._units: Units = units
        self.between = between

    def read(self, text: str) -> Reading:
        """Return the length, m, and how it was read when that is in doubt."""
        signed = -math.inf < self.between.low < 0.0
        found = (read_signed_length if signed else read_length)(text, self._units)
        least_m = self.between.low if signed else max(0.0, self.between.low)
        low = format_length(least_m, self._units, rounding="up")
        high = format_length(min(LONGEST_M, self.between.high), self._units, rounding="down")
        _check_limits(found.value_m, self.between, low, high)
        words = QCoreApplication.translate("Field", "Read as {length}")
        return Reading(found.value_m, words.format(length=found.echo) if found.doubtful else "")

    def write(self, value: object) -> str:
        """Return the length as it can be typed back."""
        assert isinstance(value, float | int)
        return write_length(value, self._units)


class NumberField(LineField):
    """A field for a number with a unit; the unit stands beside it."""

    def __init__(
        self,
        name: str,
        unit: str,
        units: Units,
        between: Between = UNLIMITED,
        optional: bool = False,
        parent: QWidget | None = None,
    ) -> None:
        """Make an empty field for a unit code, with limits in the unit of the code."""
        super().__init__(name, optional, parent)
        self._code = unit
        self._units: Units = units
        self.between = between
        self.set_unit(unit_label(unit, units))

    def read(self, text: str) -> Reading:
        """Return the number in the unit of the code."""
        number = read_number(text, self._code, self._units)
        low, high = (
            "" if math.isinf(limit) else show(limit, self._code, self._units)
            for limit in (self.between.low, self.between.high)
        )
        _check_limits(number, self.between, low, high)
        return Reading(number)

    def write(self, value: object) -> str:
        """Return the number with the usual digits, or with a few more when those are exact."""
        assert isinstance(value, float | int)
        label = unit_label(self._code, self._units)
        text = show(value, self._code, self._units).removesuffix(label).strip().replace(",", "")
        exact = round(to_display(value, self._code, self._units), TYPED_DIGITS)
        back = from_display(exact, self._code, self._units)
        if float(text) != exact and math.isclose(back, value, rel_tol=1e-9):
            return f"{exact:.{TYPED_DIGITS}f}".rstrip("0").rstrip(".")
        return text


class CountField(NumberField):
    """A field for a whole number."""

    def __init__(
        self,
        name: str,
        units: Units,
        between: Between = UNLIMITED,
        optional: bool = False,
        parent: QWidget | None = None,
    ) -> None:
        """Make an empty field with limits."""
        super().__init__(name, "count", units, between, optional, parent)

    def read(self, text: str) -> Reading:
        """Return the whole number."""
        number = super().read(text).value
        assert isinstance(number, float)
        return Reading(int(number))


class MoneyField(LineField):
    """A field for an amount of money; the currency stands beside it."""

    def __init__(self, name: str, currency: str, parent: QWidget | None = None) -> None:
        """Make an empty field for a currency's three-letter code."""
        super().__init__(name, parent=parent)
        self._currency = currency
        self.set_unit(currency)

    def read(self, text: str) -> Reading:
        """Return the amount, exactly."""
        return Reading(read_money(text, self._currency))

    def write(self, value: object) -> str:
        """Return the amount with two decimals, or with all it has."""
        assert isinstance(value, Decimal)
        return write_money(value)


def _check_limits(value: float, between: Between, low: str, high: str) -> None:
    """Refuse a value outside its limits; they are named as they are shown."""
    if between.low <= value <= between.high:
        return
    if math.isinf(between.high):
        words = QCoreApplication.translate("Field", "Enter {low} or more.")
    elif math.isinf(between.low):
        words = QCoreApplication.translate("Field", "Enter {high} or less.")
    else:
        words = QCoreApplication.translate("Field", "Enter from {low} to {high}.")
    raise LimitError(words.format(low=low, high=high))


class _Box(QComboBox):
    """A list to choose from that the wheel does not change in passing."""

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Turn only what has the focus; else the panel scrolls."""
        if self.hasFocus():
            super().wheelEvent(event)
        else:
            event.ignore()


class ChoiceField(Field):
    """A field for one of a few values."""

    def __init__(
        self, name: str, choices: Sequence[tuple[object, str]], parent: QWidget | None = None
    ) -> None:
        """Offer values, each with the words it is shown with."""
        self.box = _Box()
        super().__init__(name, self.box, parent)
        self.box.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.box.setSizeAdjustPolicy(
            QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
        )
        self.box.setMinimumContentsLength(8)
        self._values = [value for value, _words in choices]
        for _value, words in choices:
            self.box.addItem(words)
        self._value: object = None
        self.box.activated.connect(self.on_activated)

    @property
    def value(self) -> object:
        """The value as last set or entered."""
        return self._value

    def set_value(self, value: object) -> None:
        """Show a value."""
        self._value = value
        self.box.setCurrentIndex(self._values.index(value) if value in self._values else -1)
        self.say("")
        self.box.setToolTip(self.box.currentText())

    def on_activated(self, index: int) -> None:
        """Enter what was chosen; what is refused is put back with the reason below."""
        before, chosen = self._value, self._values[index]
        if chosen == before:
            return
        self.refused = False
        self.entered.emit(chosen)
        if self.refused:
            self.box.setCurrentIndex(self._values.index(before) if before in self._values else -1)
        else:
            self.set_value(chosen)


class FlagField(Field):
    """A field for yes or no."""

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        """Make a box to tick."""
        self.tick = QCheckBox()
        super().__init__(name, self.tick, parent)
        self.tick.clicked.connect(self.on_clicked)

    @property
    def value(self) -> object:
        """Whether it is ticked."""
        return self.tick.isChecked()

    def set_value(self, value: object) -> None:
        """Show a value."""
        self.tick.setChecked(bool(value))
        self.say("")

    def on_clicked(self, ticked: bool) -> None:
        """Enter the answer; what is refused is put back with the reason below."""
        self.refused = False
        self.entered.emit(ticked)
        if self.refused:
            self.tick.setChecked(not ticked)
