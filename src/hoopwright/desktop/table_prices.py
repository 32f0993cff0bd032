"""Everything that can be bought, with pack and price; both are typed in."""

from collections.abc import Iterator
from decimal import Decimal
from typing import Any

from PySide6.QtCore import (
    QT_TRANSLATE_NOOP,
    QCoreApplication,
    QModelIndex,
    QPersistentModelIndex,
    Qt,
)
from PySide6.QtGui import QValidator
from PySide6.QtWidgets import (
    QAbstractItemView,
    QLineEdit,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QWidget,
)

from hoopwright.desktop.field import refusal_words
from hoopwright.desktop.fields import write_length, write_money
from hoopwright.desktop.session import Session
from hoopwright.desktop.table_model import Index, RowsModel
from hoopwright.desktop.table_rows import MIXED, Cell, Column, Row
from hoopwright.desktop.table_tab import Tab
from hoopwright.farm import FilmRoll, Part
from hoopwright.farm.change import FieldPath, value_at, with_value
from hoopwright.quantity.money import read_money
from hoopwright.quantity.units import read_number, show

COLUMNS = (
    Column(QT_TRANSLATE_NOOP("Tables", "Group"), 15),
    Column(QT_TRANSLATE_NOOP("Tables", "Item"), 62),
    Column(QT_TRANSLATE_NOOP("Tables", "Sold as"), 10),
    Column(QT_TRANSLATE_NOOP("Tables", "Pack holds"), 12, MIXED),
    Column(QT_TRANSLATE_NOOP("Tables", "Price"), 10, "money"),
    Column(QT_TRANSLATE_NOOP("Tables", "Price is"), 12),
)
HOLDS, PRICE = 3, 4


def price_rows(session: Session) -> tuple[Row, ...]:
    """Return every stock size of film and every part of the catalogue."""
    return (*_film_rows(session), *_part_rows(session))


def _origin(origin: str) -> Cell:
    mine = QCoreApplication.translate("Tables", "your own")
    invented = QCoreApplication.translate("Tables", "invented")
    return Cell(invented if origin == "invented" else mine)


def _film_rows(session: Session) -> Iterator[Row]:
    group = QCoreApplication.translate("Tables", "Film")
    size = QCoreApplication.translate("Tables", "{film}, {width} × {length}")
    sold_as = QCoreApplication.translate("Tables", "roll")
    for f, film in enumerate(session.farm.catalogue.films):
        for r, roll in enumerate(film.rolls):
            width, length = (show(m, "m", session.units) for m in (roll.width_m, roll.length_m))
            yield Row(
                key=("catalogue", "films", f, "rolls", r),
                cells=(
                    Cell(group),
                    Cell(size.format(film=film.name, width=width, length=length)),
                    Cell(sold_as),
                    Cell(1, "count"),
                    Cell(roll.price, "money"),
                    _origin(roll.origin),
                ),
            )


def _part_rows(session: Session) -> Iterator[Row]:
    for n, part in enumerate(session.farm.catalogue.parts):
        yield Row(
            key=("catalogue", "parts", n),
            cells=(
                Cell(part.group),
                Cell(part.name),
                Cell(part.sold_as),
                Cell(part.holds, part.counted_in),
                Cell(part.price, "money"),
                _origin(part.origin),
            ),
        )


class PricesModel(RowsModel):
    """The catalogue's packs and prices, typed into its cells."""

    def __init__(self, session: Session) -> None:
        """Make the table without rows."""
        super().__init__(COLUMNS)
        self._session = session

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Let prices be typed, and what a pack of a part holds."""
        flags = super().flags(index)
        path = self.path(index.row())
        if index.column() == PRICE or (index.column() == HOLDS and path[1] == "parts"):
            return flags | Qt.ItemFlag.ItemIsEditable
        return flags

    def path(self, row: int) -> FieldPath:
        """Return where the thing of a row stands in the farm."""
        return tuple(step for step in self.rows[row].key if isinstance(step, str | int))

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return what is typed over as it can be typed back; else what any table shows."""
        if role != Qt.ItemDataRole.EditRole:
            return super().data(index, role)
        thing = value_at(self._session.farm, self.path(index.row()))
        if index.column() == PRICE:
            return write_money(thing.price)
        if thing.counted_in == "m":
            return write_length(thing.holds, self.units)
        return show(thing.holds, "ratio", self.units).replace(",", "")

    def setData(self, index: Index, value: Any, role: int = Qt.ItemDataRole.EditRole) -> bool:
        """Make one undo step of what was typed; a price that was typed is the user's own."""
        if role != Qt.ItemDataRole.EditRole or str(value) == self.data(index, role):
            return False
        session, path = self._session, self.path(index.row())
        thing = value_at(session.farm, path)
        try:
            changed = self._changed(thing, index.column(), str(value))
            farm = with_value(session.farm, path, changed)
        except ValueError as error:
            session.noticed.emit("caution", refusal_words(error, self.units))
            return False
        price = QCoreApplication.translate("Tables", "Change price: {item}")
        pack = QCoreApplication.translate("Tables", "Change pack: {item}")
        words = price if index.column() == PRICE else pack
        session.apply(farm, words.format(item=self.rows[index.row()].cells[1].value))
        return True

    def fault(self, index: Index, text: str) -> str:
        """Return why a text cannot be entered in a cell, or ""."""
        thing = value_at(self._session.farm, self.path(index.row()))
        try:
            self._changed(thing, index.column(), text)
        except ValueError as error:
            return refusal_words(error, self.units)
        return ""

    def _changed(self, thing: FilmRoll | Part, column: int, text: str) -> FilmRoll | Part:
        if column == PRICE:
            price: Decimal = read_money(text, self._session.farm.money.currency)
            return thing.but(price=price, origin="entered")
        assert isinstance(thing, Part)
        unit = "m" if thing.counted_in == "m" else "count"
        return thing.but(holds=read_number(text, unit, self._session.units))


class _Typed(QValidator):
    """Keeps the editor open while its text cannot be entered, and says why."""

    def __init__(self, model: PricesModel, index: Index, editor: QLineEdit) -> None:
        super().__init__(editor)
        self._model, self._index, self._editor = model, QPersistentModelIndex(index), editor

    def validate(self, text: str, at: int) -> tuple[QValidator.State, str, int]:
        """Return whether the text can be entered."""
        fault = self._model.fault(self._index, text) if self._index.isValid() else ""
        self._editor.setToolTip(fault)
        self._editor.setAccessibleDescription(fault)
        state = QValidator.State.Intermediate if fault else QValidator.State.Acceptable
        return state, text, at


class PriceDelegate(QStyledItemDelegate):
    """Opens a line to type into, which stays open until its text is right or Escape is pressed."""

    def createEditor(
        self,
        parent: QWidget,
        _option: QStyleOptionViewItem,
        index: QModelIndex | QPersistentModelIndex,
    ) -> QWidget:
        """Return the line for a cell."""
        editor = QLineEdit(parent)
        editor.setFrame(False)
        editor.setAlignment(Qt.AlignmentFlag.AlignRight)
        view = self.parent()
        assert isinstance(view, QAbstractItemView)
        source = view.model().mapToSource(index)  # type: ignore[attr-defined]  # a sorting model
        model = source.model()
        assert isinstance(model, PricesModel)
        heading = model.headerData(source.column(), Qt.Orientation.Horizontal)
        item = model.text(source.row(), 1)
        name = QCoreApplication.translate("Tables", "{item}: {heading}")
        editor.setAccessibleName(name.format(item=item, heading=heading))
        editor.setValidator(_Typed(model, source, editor))
        return editor


class PricesTab(Tab):
    """The catalogue's packs and prices."""

    def __init__(self, session: Session, title: str) -> None:
        """Make the table that can be typed into."""
        super().__init__(session, title, COLUMNS, price_rows, model=PricesModel(session))
        triggers = QAbstractItemView.EditTrigger
        self.view.setEditTriggers(
            triggers.DoubleClicked | triggers.EditKeyPressed | triggers.AnyKeyPressed
        )
        self.view.setItemDelegate(PriceDelegate(self.view))
