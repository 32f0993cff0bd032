"""What the tunnel loses in heat, what a season burns, and whether the second layer pays."""

from collections.abc import Iterator

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication
from PySide6.QtWidgets import QLabel, QVBoxLayout

from hoopwright.desktop.details_items import explained
from hoopwright.desktop.session import Session
from hoopwright.desktop.table_rows import MIXED, Cell, Column, Row
from hoopwright.desktop.table_tab import Tab
from hoopwright.farm import Heating
from hoopwright.quantity.money import format_money
from hoopwright.quantity.units import show
from hoopwright.quantity.working import words

COLUMNS = (
    Column(QT_TRANSLATE_NOOP("Tables", "Figure"), 44),
    Column(QT_TRANSLATE_NOOP("Tables", "Here"), 26, MIXED),
)
LOSSES: tuple[tuple[str, str, object], ...] = (
    ("loss_one_w_k", "W/K", QT_TRANSLATE_NOOP("Tables", "Loss with one layer everywhere")),
    ("loss_two_w_k", "W/K", QT_TRANSLATE_NOOP("Tables", "Loss with two layers everywhere")),
    ("loss_now_w_k", "W/K", QT_TRANSLATE_NOOP("Tables", "Loss as chosen")),
    ("saved_share", "share", QT_TRANSLATE_NOOP("Tables", "The second layer saves, of one")),
)
SEASON: tuple[tuple[str, str, object], ...] = (
    ("peak_w", "W_heat", QT_TRANSLATE_NOOP("Tables", "Heat in the coldest hour")),
    ("degree_days", "K day", QT_TRANSLATE_NOOP("Tables", "Degree-days of this heater")),
    ("season_j", "J_heat", QT_TRANSLATE_NOOP("Tables", "Heat of a season")),
)
FUEL: tuple[tuple[str, str, object], ...] = (
    ("fuel_units", "fuel_cost", QT_TRANSLATE_NOOP("Tables", "Fuel of a season")),
    ("saved_units", "saved_cost", QT_TRANSLATE_NOOP("Tables", "Saved by the second layer")),
)


def heat_rows(session: Session) -> tuple[Row, ...]:
    """Return the figures of heat; those of fuel only where there is a heater."""
    return tuple(_rows(session))


def _rows(session: Session) -> Iterator[Row]:
    warmth, heating = session.tunnel_plan.warmth, session.tunnel.heating
    shown = LOSSES if heating is None else (*LOSSES, *SEASON)
    for name, unit, label in shown:
        yield _row(name, label, Cell(getattr(warmth, name), unit, explained(warmth, name)))
    if heating is not None:
        yield from _fuel(session, heating)
    label = QT_TRANSLATE_NOOP("Tables", "The second layer costs")
    cost = format_money(warmth.second_layer_cost, session.farm.money.currency)
    yield _row("second_layer_cost", label, Cell(cost, tip=explained(warmth, "second_layer_cost")))
    if heating is not None:
        yield _payback(session)


def _fuel(session: Session, heating: Heating) -> Iterator[Row]:
    warmth, currency = session.tunnel_plan.warmth, session.farm.money.currency
    quantity = QCoreApplication.translate("Tables", "{amount} {unit} of {fuel}")
    for amount, cost, label in FUEL:
        text = quantity.format(
            amount=show(getattr(warmth, amount), "count", session.units),
            unit=heating.fuel_unit,
            fuel=heating.fuel,
        )
        yield _row(amount, label, Cell(text, tip=explained(warmth, amount)))
        paid = format_money(getattr(warmth, cost), currency)
        yield _row(cost, _MONEY[cost], Cell(paid, tip=explained(warmth, cost)))


_MONEY: dict[str, object] = {
    "fuel_cost": QT_TRANSLATE_NOOP("Tables", "Fuel of a season costs"),
    "saved_cost": QT_TRANSLATE_NOOP("Tables", "Saved in a season, less the blower's power"),
}


def _payback(session: Session) -> Row:
    warmth = session.tunnel_plan.warmth
    label = QT_TRANSLATE_NOOP("Tables", "Paid back after")
    never = QCoreApplication.translate("Tables", "never")
    how = explained(warmth, "payback_years")
    if warmth.payback_years is None:
        return _row("payback_years", label, Cell(never, tip=how))
    return _row("payback_years", label, Cell(warmth.payback_years, "year", how))


def _row(name: str, label: object, cell: Cell) -> Row:
    return Row(
        key=("heat", name),
        cells=(Cell(QCoreApplication.translate("Tables", str(label))), cell),
    )


class HeatTab(Tab):
    """The figures of heat, and what they mean in a sentence."""

    def __init__(self, session: Session, title: str) -> None:
        """Make an empty tab."""
        super().__init__(session, title, COLUMNS, heat_rows)
        self.told = QLabel()
        self.told.setWordWrap(True)
        self.told.setContentsMargins(6, 2, 6, 4)
        box = self.layout()
        assert isinstance(box, QVBoxLayout)
        box.insertWidget(1, self.told)

    def refresh(self) -> None:
        """Show the figures as they are now."""
        super().refresh()
        warmth, units = self.session.tunnel_plan.warmth, self.session.units
        self.told.setText(words(warmth.told, units))
        self.told.setToolTip("\n\n".join(words(note, units) for note in warmth.notes))
