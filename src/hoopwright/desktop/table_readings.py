"""Pressures that were measured, what they say of the leaks, and a line to add one."""

from typing import Any

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication, QDate, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from hoopwright.desktop.field import Between, Field, refusal_words
from hoopwright.desktop.fields import ChoiceField, FlagField, NumberField, TextField
from hoopwright.desktop.session import Session
from hoopwright.desktop.table_order import figure_cell
from hoopwright.desktop.table_rows import Cell, Column, Row
from hoopwright.desktop.table_tab import Tab
from hoopwright.farm import AirReading
from hoopwright.farm.change_air import add_reading, remove_reading
from hoopwright.farm.entered import describe
from hoopwright.pressure import LeakHint, leaking_cell
from hoopwright.quantity.units import Units
from hoopwright.quantity.working import words

COLUMNS = (
    Column(QT_TRANSLATE_NOOP("Tables", "Date"), 11),
    Column(QT_TRANSLATE_NOOP("Tables", "Cell"), 20),
    Column(QT_TRANSLATE_NOOP("Tables", "Measured"), 6, "Pa"),
    Column(QT_TRANSLATE_NOOP("Tables", "Planned"), 6, "Pa"),
    Column(QT_TRANSLATE_NOOP("Tables", "Fallen by"), 6, "Pa"),
    Column(QT_TRANSLATE_NOOP("Tables", "Leaks as a hole of"), 7, "m2_thin"),
    Column(QT_TRANSLATE_NOOP("Tables", "grown by"), 7, "m2_thin"),
    Column(QT_TRANSLATE_NOOP("Tables", "What it says"), 60),
)
DATE_FORMAT = "yyyy-MM-dd"
FIELD_PX, NUMBER_PX, GAP_PX = 150, 52, 4
ROOM_FOR_WORDS_PX = 150
SHORT: dict[str, object] = {
    "taken_on": QT_TRANSLATE_NOOP("Tables", "Date"),
    "cell": QT_TRANSLATE_NOOP("Tables", "Cell"),
    "pressure_pa": QT_TRANSLATE_NOOP("Tables", "Pressure"),
    "flow_m3_s": QT_TRANSLATE_NOOP("Tables", "Air"),
    "baseline": QT_TRANSLATE_NOOP("Tables", "Baseline"),
}
"""What the fields are called where there is little room; aloud they have their full names."""


def reading_rows(session: Session) -> tuple[Row, ...]:
    """Return the readings, oldest first, with what they tell."""
    names = {cell.mark: cell.name for cell in session.tunnel_plan.chosen.inflation.cells}
    hints = session.tunnel_plan.held.leaks
    return tuple(_row(n, hint, names, session.units) for n, hint in enumerate(hints))


def _row(n: int, hint: LeakHint, names: dict[str, str], units: Units) -> Row:
    told = words(hint.told, units)
    return Row(
        key=("reading", n),
        cells=(
            Cell(hint.taken_on),
            Cell(names.get(hint.cell, hint.cell)),
            figure_cell(hint, "pressure_pa", "Pa"),
            figure_cell(hint, "planned_pa", "Pa"),
            figure_cell(hint, "fallen_pa", "Pa"),
            figure_cell(hint, "hole_m2", "m2_thin"),
            figure_cell(hint, "grown_m2", "m2_thin"),
            Cell(told, tip=told),
        ),
        marks=(hint.cell,),
    )


class AddLine(QWidget):
    """Date, cell, pressure, air, baseline: one reading to add."""

    def __init__(self, session: Session, more: QPushButton, parent: QWidget | None = None) -> None:
        """Make a line for the cells of the shown tunnel, with one more button at its end."""
        super().__init__(parent)
        self._more = more
        more.setParent(self)
        self._session = session
        self._cells: tuple[tuple[str, str], ...] = ()
        self._units: Units | None = None
        self._row = QHBoxLayout(self)
        self._row.setContentsMargins(6, 2, 6, 0)
        self._row.setSpacing(GAP_PX)
        self.fields: dict[str, Field] = {}
        self.button = QPushButton(self.tr("Add"), self)
        self.button.setAccessibleName(self.tr("Add reading"))
        self.button.setAutoDefault(False)
        self.button.clicked.connect(self.add)

    def refresh(self) -> None:
        """Offer the cells there are, in the farm's units."""
        inflation, units = self._session.tunnel_plan.chosen.inflation, self._session.units
        cells = tuple((cell.mark, cell.name) for cell in inflation.cells)
        if (cells, units) == (self._cells, self._units):
            return
        self._cells, self._units = cells, units
        self._make_fields(units)
        self.setEnabled(bool(cells))

    def add(self) -> None:
        """Add the reading as one undo step, or say at its field what is wrong."""
        session, fields = self._session, self.fields
        if any(field.editor.property("faulty") for field in fields.values()):
            return
        values: dict[str, Any] = {name: getattr(f, "value", None) for name, f in fields.items()}
        if values["pressure_pa"] is None:
            fields["pressure_pa"].show_refusal(self.tr("Enter the measured pressure."))
            fields["pressure_pa"].editor.setFocus()
            return
        try:
            reading = AirReading(**values)
        except ValueError as error:
            fields["taken_on"].show_refusal(refusal_words(error, session.units))
            fields["taken_on"].editor.setFocus()
            return
        session.apply_tunnel(add_reading(session.tunnel, reading), self.tr("Add reading"))
        fields["pressure_pa"].set_value(None)
        fields["flow_m3_s"].set_value(None)

    def _make_fields(self, units: Units) -> None:
        while (item := self._row.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None and widget not in (self.button, self._more):
                widget.hide()
                widget.deleteLater()
        known = {entry.name: entry for entry in describe(AirReading)}
        labels = {name: QCoreApplication.translate("Farm", e.label) for name, e in known.items()}
        between = {
            name: Between(entry.low, entry.high)
            for name, entry in known.items()
            if entry.low is not None and entry.high is not None
        }
        pressure, air = labels["pressure_pa"], labels["flow_m3_s"]
        self.fields = {
            "taken_on": TextField(labels["taken_on"]),
            "cell": ChoiceField(labels["cell"], self._cells),
            "pressure_pa": NumberField(pressure, "Pa", units, between["pressure_pa"], True),
            "flow_m3_s": NumberField(air, "m3/s", units, between["flow_m3_s"], True),
            "baseline": FlagField(labels["baseline"]),
        }
        self.fields["taken_on"].set_value(QDate.currentDate().toString(DATE_FORMAT))
        self.fields["cell"].set_value(self._cells[0][0] if self._cells else None)
        for name, field in self.fields.items():
            label = QLabel(QCoreApplication.translate("Tables", str(SHORT[name])))
            label.setBuddy(field.editor)
            field.setMaximumWidth(FIELD_PX)
            if isinstance(field, NumberField):
                field.line.setMinimumWidth(NUMBER_PX)
            for widget in (label, field):
                self._row.addWidget(widget)
                # At once and not with the next turn of the event loop, so that it takes the focus.
                widget.show()
        self._row.addStretch(1)
        self._row.addWidget(self.button)
        self._row.addWidget(self._more)


class ReadingsTab(Tab):
    """The readings; one more is added in the line below, the chosen one is removed by its act."""

    def __init__(self, session: Session, title: str) -> None:
        """Make an empty tab."""
        super().__init__(session, title, COLUMNS, reading_rows)
        self.told = QLabel()
        self.told.setWordWrap(True)
        self.told.setTextFormat(Qt.TextFormat.PlainText)
        self.told.setContentsMargins(6, 2, 6, 2)
        self.remove_button = QPushButton(QCoreApplication.translate("Tables", "Remove"))
        spoken = QCoreApplication.translate("Tables", "Remove reading")
        self.remove_button.setAccessibleName(spoken)
        self.remove_button.setAutoDefault(False)
        self.remove_button.clicked.connect(self.remove_chosen)
        self.line = AddLine(session, self.remove_button)
        box = self.layout()
        assert isinstance(box, QVBoxLayout)
        box.insertWidget(1, self.told)
        box.insertWidget(2, self.line)
        self.view.selectionModel().selectionChanged.connect(self.on_selection_changed)

    def refresh(self) -> None:
        """Show the readings as they are now, and which cell they point to."""
        super().refresh()
        self.line.refresh()
        self.on_selection_changed()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Leave the height to the table where there is little of it."""
        super().resizeEvent(event)
        self.told.setVisible(self.height() >= ROOM_FOR_WORDS_PX)

    def on_selection_changed(self) -> None:
        """Let a chosen reading be removed, and say all it tells; else what all of them tell."""
        rows = self.view.chosen_rows()
        self.remove_button.setEnabled(bool(rows))
        if rows:
            self.told.setText(str(rows[0].cells[-1].value))
        elif not self.session.dragging:
            self.told.setText(self._told())

    def remove_chosen(self) -> None:
        """Remove the chosen reading as one undo step."""
        rows = self.view.chosen_rows()
        if rows and isinstance(rows[0].key[1], int):
            tunnel = remove_reading(self.session.tunnel, rows[0].key[1])
            text = QCoreApplication.translate("Tables", "Remove reading")
            self.session.apply_tunnel(tunnel, text)

    def _told(self) -> str:
        found = leaking_cell(self.session.tunnel_plan.held)
        if found is not None:
            return words(found.told, self.session.units)
        hint = "Read two cells or more on one day, and the cell that leaks can be told."
        return QCoreApplication.translate("Tables", hint)
