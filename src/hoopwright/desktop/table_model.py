"""Rows as the toolkit wants them: text, alignment, tooltip, and a value to sort by."""

from collections.abc import Sequence
from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt
from PySide6.QtGui import QFont

from hoopwright.desktop.signs import severity_icon
from hoopwright.desktop.table_rows import (
    PENDING,
    Column,
    Row,
    cell_text,
    heading_text,
    sort_value,
    tip_text,
)
from hoopwright.quantity.units import Units

SORT_ROLE = Qt.ItemDataRole.UserRole
Index = QModelIndex | QPersistentModelIndex
_NOWHERE = QModelIndex()
_RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
_LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter


class RowsModel(QAbstractTableModel):
    """A table of rows that others compute."""

    def __init__(self, columns: Sequence[Column], parent: QObject | None = None) -> None:
        """Make a table without rows."""
        super().__init__(parent)
        self.columns = tuple(columns)
        self.rows: tuple[Row, ...] = ()
        self.units: Units = "metric"
        self.currency = ""
        self.dark = False
        self.pending = False

    def show_rows(self, rows: Sequence[Row], units: Units, currency: str) -> bool:
        """Show rows; return whether other rows stand there now, not only other values."""
        same = [r.key for r in rows] == [r.key for r in self.rows]
        heads = (units, currency) != (self.units, self.currency)
        if not same:
            self.beginResetModel()
        self.rows, self.units, self.currency = tuple(rows), units, currency
        if not same:
            self.endResetModel()
        elif rows:
            last = self.index(len(rows) - 1, len(self.columns) - 1)
            self.dataChanged.emit(self.index(0, 0), last)
        if heads:
            across = Qt.Orientation.Horizontal
            self.headerDataChanged.emit(across, 0, len(self.columns) - 1)
        return not same

    def set_columns(self, columns: Sequence[Column]) -> None:
        """Change headings; their number stays."""
        if tuple(columns) != self.columns:
            self.columns = tuple(columns)
            self.headerDataChanged.emit(Qt.Orientation.Horizontal, 0, len(self.columns) - 1)

    def rowCount(self, parent: Index = _NOWHERE) -> int:
        """Return the number of rows."""
        return 0 if parent.isValid() else len(self.rows)

    def columnCount(self, parent: Index = _NOWHERE) -> int:
        """Return the number of columns."""
        return 0 if parent.isValid() else len(self.columns)

    def text(self, row: int, column: int) -> str:
        """Return what a cell reads; a figure that waits for the hand to rest reads as dots."""
        if self.pending and not self.columns[column].keeps:
            return PENDING
        return cell_text(self.rows[row].cells[column], self.columns[column], self.units)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return text, tooltip, alignment, sign or sorting value of a cell."""
        if not index.isValid():
            return None
        row, column = index.row(), index.column()
        if role == Qt.ItemDataRole.DisplayRole:
            return self.text(row, column)
        if role == SORT_ROLE:
            return sort_value(self.rows[row].cells[column])
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return _RIGHT if self.columns[column].is_number else _LEFT
        if role == Qt.ItemDataRole.ToolTipRole:
            tip = self.rows[row].cells[column].tip
            return tip_text(tip, self.units) or self.text(row, column)
        if role == Qt.ItemDataRole.FontRole and self.columns[column].strong:
            font = QFont()
            font.setBold(True)
            return font
        sign = self.rows[row].sign
        if role == Qt.ItemDataRole.DecorationRole and column == 0 and sign is not None:
            return severity_icon(sign, self.dark)
        return None

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> Any:
        """Return a heading with its unit."""
        if orientation != Qt.Orientation.Horizontal or section >= len(self.columns):
            return None
        if role == Qt.ItemDataRole.DisplayRole:
            return heading_text(self.columns[section], self.units, self.currency)
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return _RIGHT if self.columns[section].is_number else _LEFT
        return None
