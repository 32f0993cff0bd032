"""The readings as a table that is typed into; what cannot be stays in its box to be mended."""

from collections.abc import Mapping
from typing import Any

from PySide6.QtCore import QCoreApplication, Qt
from PySide6.QtGui import QColor, QFont

from hoopwright.desktop.fields import write_length
from hoopwright.desktop.palette import COLOURS, colour
from hoopwright.desktop.session import Session
from hoopwright.desktop.signs import severity_icon
from hoopwright.desktop.table_model import Index, RowsModel
from hoopwright.desktop.table_rows import heading_text
from hoopwright.desktop.table_tape_boxes import (
    BOXES,
    Refusal,
    Spot,
    box_name,
    column_name,
    enter_texts,
    is_typed,
    value_in,
)
from hoopwright.desktop.table_tape_rows import BoxCell, tape_columns
from hoopwright.farm import Tunnel
from hoopwright.quantity.typed import ReadError
from hoopwright.quantity.units import read_signed_length

ROLES = Qt.ItemDataRole


class TapeModel(RowsModel):
    """Readings of the shown tunnel, a row for each bow."""

    def __init__(self, session: Session) -> None:
        """Make the table without rows."""
        super().__init__(tape_columns(session))
        self._session = session
        self._waiting: dict[str, dict[Spot, Refusal]] = {}

    @property
    def tunnel(self) -> Tunnel:
        """The tunnel whose readings are shown."""
        return self._session.tunnel

    def notice(self, severity: str, text: str) -> None:
        """Tell something in the line at the foot of the window."""
        self._session.noticed.emit(severity, text)

    @property
    def waiting(self) -> dict[Spot, Refusal]:
        """The texts of the shown tunnel that wait to be mended, by their boxes."""
        return self._waiting.setdefault(self.tunnel.name, {})

    def spot(self, index: Index) -> Spot:
        """Return which box a cell is."""
        bow = self.rows[index.row()].key[1]
        assert isinstance(bow, int)
        return bow, index.column()

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Let readings be typed."""
        flags = super().flags(index)
        if index.isValid() and is_typed(self.spot(index)):
            return flags | Qt.ItemFlag.ItemIsEditable
        return flags

    def text(self, row: int, column: int) -> str:
        """Return what was read, or typed, in a box; nothing for what lies between readings."""
        spot = self.spot(self.index(row, column))
        if spot in self.waiting:
            return self.waiting[spot].text
        cell = self.rows[row].cells[column]
        return "" if isinstance(cell, BoxCell) and cell.between else super().text(row, column)

    def told(self, index: Index) -> str:
        """Return what there is to say about a box, or ""."""
        refusal = self.waiting.get(self.spot(index))
        if refusal is not None:
            return refusal.why
        tip = self.rows[index.row()].cells[index.column()].tip
        return tip if isinstance(tip, str) else ""

    def echo(self, text: str) -> str:
        """Return how a text is read so far when that is in doubt, else ""."""
        try:
            found = read_signed_length(text, self.units)
        except ReadError:
            return ""
        words = QCoreApplication.translate("Field", "Read as {length}")
        return words.format(length=found.echo) if found.doubtful else ""

    def data(self, index: Index, role: int = ROLES.DisplayRole) -> Any:
        """Return a reading with its signs, as it can be typed back, or as it is read aloud."""
        if not index.isValid():
            return None
        if role == ROLES.DisplayRole:
            return self._shown(index)
        if role == ROLES.EditRole:
            return self._typed(index)
        if role in (ROLES.AccessibleTextRole, ROLES.ToolTipRole, ROLES.AccessibleDescriptionRole):
            return self._spoken(index, role)
        if role in (ROLES.DecorationRole, ROLES.ForegroundRole, ROLES.FontRole):
            return self._look(index, role)
        return super().data(index, role)

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = ROLES.DisplayRole
    ) -> Any:
        """Return a heading in two lines: the side, or the first words, above the rest."""
        if role != ROLES.DisplayRole or orientation != Qt.Orientation.Horizontal:
            return super().headerData(section, orientation, role)
        whole = heading_text(self.columns[section], self.units, self.currency)
        box = BOXES.get(section)
        if box is None:
            return whole
        if self.units == "imperial":
            # Feet and inches stand in every box; the column keeps its room for them.
            whole = column_name(section, self.tunnel)
        if box.side is None:
            return whole.replace(" ", "\n", 1)
        name = self.tunnel.sides[box.side].name
        return f"{name}\n{whole.removeprefix(name).lstrip(': ')}"

    def setData(self, index: Index, value: Any, role: int = ROLES.EditRole) -> bool:
        """Make one undo step of what was typed, or keep it in its box with the reason."""
        spot, text = self.spot(index), str(value).strip()
        if role != ROLES.EditRole or (
            text == self.data(index, ROLES.EditRole) and spot not in self.waiting
        ):
            return False
        enter = QCoreApplication.translate("Tables", "Enter reading: {box}")
        clear = QCoreApplication.translate("Tables", "Clear reading: {box}")
        words = enter if text else clear
        waited = tuple(self.waiting)
        refused = self.enter({spot: text}, words.format(box=box_name(spot, self.tunnel)))
        for at, refusal in refused.items():
            self.notice("caution", self.refusal_told(at, refusal))
        if not refused:
            self._tell_mended(waited)
        return not refused

    def _tell_mended(self, waited: tuple[Spot, ...]) -> None:
        """Say which boxes wait no longer, so that their refusal does not stand on."""
        mended = [box_name(spot, self.tunnel) for spot in waited if spot not in self.waiting]
        if mended:
            words = QCoreApplication.translate("Tables", "Entered: {boxes}")
            self.notice("note", words.format(boxes="; ".join(mended)))

    def enter(self, texts: Mapping[Spot, str], step: str) -> dict[Spot, Refusal]:
        """Enter texts as one undo step, with those that wait and now can be.

        Returns:
            Those of the texts that cannot be; they wait in their boxes.
        """
        session = self._session
        waiting = {spot: refusal.text for spot, refusal in self.waiting.items()}
        done = enter_texts(session.tunnel, {**waiting, **texts}, session.units)
        self._waiting[session.tunnel.name] = done.refused
        session.apply_tunnel(done.tunnel, step)
        self._tell_all()
        return {spot: refusal for spot, refusal in done.refused.items() if spot in texts}

    def let_go(self, index: Index) -> bool:
        """Forget a text that waits in a box; return whether there was one."""
        found = self.waiting.pop(self.spot(index), None)
        self._tell_all()
        return found is not None

    def refusal_told(self, spot: Spot, refusal: Refusal) -> str:
        """Return a refusal with the name of its box."""
        words = QCoreApplication.translate("Tables", "{box}: {why}")
        name = box_name(spot, self.tunnel)
        return words.format(box=name[:1].upper() + name[1:], why=refusal.why)

    def _tell_all(self) -> None:
        if self.rows:
            last = self.index(len(self.rows) - 1, len(self.columns) - 1)
            self.dataChanged.emit(self.index(0, 0), last)

    def _shown(self, index: Index) -> str:
        cell = self.rows[index.row()].cells[index.column()]
        text = self.text(index.row(), index.column())
        if self.spot(index) in self.waiting or not isinstance(cell, BoxCell):
            return text
        if cell.between:
            words = QCoreApplication.translate("Tables", "({height})")
            return words.format(height=super().text(index.row(), index.column()))
        words = QCoreApplication.translate("Tables", "max {girth}")
        return words.format(girth=text) if cell.governs else text

    def _typed(self, index: Index) -> str:
        spot = self.spot(index)
        if spot in self.waiting:
            return self.waiting[spot].text
        if not is_typed(spot):
            return self.text(*(index.row(), index.column()))
        value_m = value_in(self.tunnel, spot)
        return "" if value_m is None else write_length(value_m, self.units)

    def _spoken(self, index: Index, role: int) -> str:
        told = self.told(index)
        if role == ROLES.AccessibleDescriptionRole:
            return told
        if role == ROLES.ToolTipRole:
            return told or self.text(index.row(), index.column())
        name = column_name(index.column(), self.tunnel)
        shown = self._shown(index) or QCoreApplication.translate("Tables", "empty")
        words = QCoreApplication.translate("Tables", "{box}: {reading}. {told}")
        return words.format(box=name, reading=shown, told=told).strip()

    def _look(self, index: Index, role: int) -> Any:
        refused = self.spot(index) in self.waiting
        cell = self.rows[index.row()].cells[index.column()]
        between, governs, outlier = (
            (cell.between, cell.governs, cell.outlier)
            if isinstance(cell, BoxCell) and not refused
            else (False, False, False)
        )
        if role == ROLES.DecorationRole:
            sign = "fault" if refused else "caution" if outlier else None
            return severity_icon(sign, self.dark) if sign else None
        if role == ROLES.FontRole:
            font = QFont()
            font.setItalic(between)
            font.setBold(governs)
            return font if between or governs else None
        if refused:
            return QColor(COLOURS["fault"][self.dark])
        return colour("muted", self.dark) if between else None
