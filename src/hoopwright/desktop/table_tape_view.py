"""The grid of readings on the screen: typed row by row as the sheet lies, pasted in blocks."""

import csv
import io
from collections.abc import Iterable

from PySide6.QtCore import (
    QCoreApplication,
    QEvent,
    QItemSelection,
    QItemSelectionModel,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    Qt,
    Signal,
)
from PySide6.QtGui import QGuiApplication, QKeyEvent, QKeySequence
from PySide6.QtWidgets import (
    QAbstractItemDelegate,
    QAbstractItemView,
    QLineEdit,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QWidget,
)

from hoopwright.desktop.table_rows import Row
from hoopwright.desktop.table_tape_boxes import POSITION, Refusal, Spot, box_name, on_the_way
from hoopwright.desktop.table_tape_model import TapeModel
from hoopwright.desktop.table_view import CELL_PADDING_PX, HEAD_PADDING_PX, RowsView

KEYS = Qt.Key
ENTER = (KEYS.Key_Return, KEYS.Key_Enter)
TABS = (KEYS.Key_Tab, KEYS.Key_Backtab)
CLEAR = (KEYS.Key_Delete, KEYS.Key_Backspace)


class ReadingDelegate(QStyledItemDelegate):
    """Opens a line to type into; Tab and Enter take what is typed and go on.

    Signals:
        typing(str text): While somebody types.
        entered(int steps, bool by_tab): When what was typed is taken, to go on to the next box or
            back to the last one.
    """

    typing = Signal(str)
    entered = Signal(int, bool)

    def createEditor(
        self,
        parent: QWidget,
        _option: QStyleOptionViewItem,
        index: QModelIndex | QPersistentModelIndex,
    ) -> QWidget:
        """Return the line for a box."""
        editor = QLineEdit(parent)
        editor.setAlignment(Qt.AlignmentFlag.AlignRight)
        view = self.parent()
        assert isinstance(view, TapeView)
        editor.setAccessibleName(view.name_at(index))
        editor.textEdited.connect(self.typing)
        return editor

    def eventFilter(self, editor: QObject, event: QEvent) -> bool:
        """Take what is typed on Tab and Enter at once, so that the next key is for the next box."""
        if isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress:
            by_tab = event.key() in TABS
            if (by_tab or event.key() in ENTER) and isinstance(editor, QWidget):
                self.commitData.emit(editor)
                self.closeEditor.emit(editor, QAbstractItemDelegate.EndEditHint.NoHint)
                back = event.modifiers() & Qt.KeyboardModifier.ShiftModifier
                self.entered.emit(-1 if back else 1, by_tab)
                return True
        return super().eventFilter(editor, event)


class TapeView(RowsView):
    """The grid of readings; it is not sorted, so its rows are those of the model."""

    def __init__(self, model: TapeModel, name: str, parent: QWidget | None = None) -> None:
        """Show a model under a name for reading aloud."""
        self.tape_model = model
        super().__init__(model, name, parent)
        triggers = QAbstractItemView.EditTrigger
        self.setEditTriggers(
            triggers.DoubleClicked | triggers.EditKeyPressed | triggers.AnyKeyPressed
        )
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectItems)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ContiguousSelection)
        self.setSortingEnabled(False)
        self.setShowGrid(True)
        self.horizontalHeader().setSectionsMovable(False)
        self.delegate = ReadingDelegate(self)
        self.setItemDelegate(self.delegate)
        self.delegate.entered.connect(self.go_on)

    def fit_columns(self) -> None:
        """Make each column as wide as its letters and the longer line of its heading."""
        model, ink = self.tape_model, self.fontMetrics()
        for n, column in enumerate(model.columns):
            lines = str(model.headerData(n, Qt.Orientation.Horizontal)).splitlines()
            head_px = max(ink.horizontalAdvance(line) for line in lines) + HEAD_PADDING_PX
            text_px = column.letters * ink.horizontalAdvance("0") + CELL_PADDING_PX
            self.setColumnWidth(n, max(text_px, head_px))

    def name_at(self, index: QModelIndex | QPersistentModelIndex) -> str:
        """Return what a box is called."""
        return box_name(self.tape_model.spot(index), self.tape_model.tunnel)

    def chosen_rows(self) -> list[Row]:
        """Return the row of the current box when it is chosen."""
        at = self.currentIndex()
        if not at.isValid() or not self.selectionModel().hasSelection():
            return []
        return [self.tape_model.rows[at.row()]]

    def choose(self, keys: Iterable[tuple[object, ...]], reveal: bool) -> None:
        """Go to the first of some rows, in the same column, and tell nobody."""
        wanted = set(keys)
        rows = [n for n, row in enumerate(self.tape_model.rows) if row.key in wanted]
        flags = QItemSelectionModel.SelectionFlag
        self._following = True
        if rows:
            column = max(self.currentIndex().column(), POSITION + 1)
            at = self.model().index(rows[0], column)
            self.selectionModel().setCurrentIndex(at, flags.ClearAndSelect)
            if reveal:
                self.scrollTo(at)
        else:
            self.selectionModel().select(QItemSelection(), flags.Clear)
        self._following = False

    def begin(self) -> None:
        """Stand at the first box, unless a box is current already."""
        if not self.currentIndex().isValid() and self.tape_model.rows:
            at = self.model().index(0, POSITION + 1)
            flags = QItemSelectionModel.SelectionFlag
            self.selectionModel().setCurrentIndex(at, flags.NoUpdate)

    def step(self, steps: int) -> bool:
        """Go to the next or the last box in the order of the sheet; return whether there is one."""
        at, width = self.currentIndex(), self.model().columnCount()
        place = at.row() * width + at.column() if at.isValid() else -1
        end = self.model().rowCount() * width if steps > 0 else -1
        for n in range(place + steps, end, steps):
            index = self.model().index(n // width, n % width)
            if on_the_way(self.tape_model.spot(index), self.tape_model.tunnel):
                self.setCurrentIndex(index)
                return True
        return False

    def go_on(self, steps: int, may_leave: bool) -> None:
        """Go on after an entry; Tab in the last box leaves the grid."""
        if not self.step(steps) and may_leave:
            super().focusNextPrevChild(steps > 0)

    def focusNextPrevChild(self, onward: bool) -> bool:
        """Go on from box to box by Tab; from the last one, and back from the first, leave."""
        return self.step(1 if onward else -1) or super().focusNextPrevChild(onward)

    def event(self, event: QEvent) -> bool:
        """Keep the keys for pasting and clearing from the window's shortcuts."""
        if (
            isinstance(event, QKeyEvent)
            and event.type() == QEvent.Type.ShortcutOverride
            and (event.matches(QKeySequence.StandardKey.Paste) or event.key() in CLEAR)
        ):
            event.accept()
            return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Paste, clear, go on, let go of a text that waits; typing starts an entry."""
        at = self.currentIndex()
        if event.matches(QKeySequence.StandardKey.Paste):
            self.paste(QGuiApplication.clipboard().text())
        elif event.key() in CLEAR:
            self.clear_chosen()
        elif event.key() in ENTER and self.state() != QAbstractItemView.State.EditingState:
            back = event.modifiers() & Qt.KeyboardModifier.ShiftModifier
            self.step(-1 if back else 1)
        elif not (event.key() == KEYS.Key_Escape and at.isValid() and self.tape_model.let_go(at)):
            super().keyPressEvent(event)

    def copied_text(self) -> str:
        """Return several chosen boxes as they can be pasted back, else the whole table."""
        spots = [(at.row(), at.column()) for at in self.selectionModel().selectedIndexes()]
        if len(spots) < 2:
            return super().copied_text()
        rows, columns = ({spot[n] for spot in spots} for n in (0, 1))
        edit = Qt.ItemDataRole.EditRole
        lines = [
            [str(self.model().index(row, column).data(edit)) for column in sorted(columns)]
            for row in sorted(rows)
        ]
        made = io.StringIO()
        csv.writer(made, delimiter="\t", lineterminator="\n").writerows(lines)
        return made.getvalue()

    def clear_chosen(self) -> None:
        """Clear the chosen boxes, or the current one, as one undo step."""
        chosen = self.selectionModel().selectedIndexes() or [self.currentIndex()]
        typed = [at for at in chosen if at.flags() & Qt.ItemFlag.ItemIsEditable]
        texts = {self.tape_model.spot(at): "" for at in typed if at.column() != POSITION}
        if texts:
            self.tape_model.enter(texts, QCoreApplication.translate("Tables", "Clear readings"))

    def paste(self, text: str) -> None:
        """Enter a block of texts from the current box on, as one undo step.

        Empty cells of the block leave what stands; cells that cannot be wait in their boxes.
        """
        lines = list(csv.reader(io.StringIO(text), delimiter="\t"))
        at, model = self.currentIndex(), self.tape_model
        texts: dict[Spot, str] = {}
        outside = 0
        for down, line in enumerate(lines):
            for right, typed in enumerate(line):
                index = self.model().index(at.row() + down, at.column() + right)
                if typed.strip() and not index.isValid():
                    outside += 1
                elif typed.strip() and index.flags() & Qt.ItemFlag.ItemIsEditable:
                    texts[model.spot(index)] = typed.strip()
        if not texts:
            words = "There is no reading to paste here: copy rows and columns of lengths first."
            model.notice("caution", QCoreApplication.translate("Tables", words))
            return
        refused = model.enter(texts, QCoreApplication.translate("Tables", "Paste readings"))
        model.notice(*_pasted(model, len(texts), refused, outside))


def _pasted(
    model: TapeModel, count: int, refused: dict[Spot, Refusal], outside: int
) -> tuple[str, str]:
    """Return how severe it is and what became of a pasted block."""
    entered = QCoreApplication.translate("Tables", "Readings pasted: {count}.")
    told = [entered.format(count=count - len(refused))]
    if refused:
        words = QCoreApplication.translate(
            "Tables", "Cannot be, and wait in their boxes: {count}. The first is {first}"
        )
        first = model.refusal_told(*next(iter(refused.items())))
        told.append(words.format(count=len(refused), first=first))
    if outside:
        words = QCoreApplication.translate("Tables", "Beyond the last row or column: {count}.")
        told.append(words.format(count=outside))
    return "caution" if refused or outside else "note", " ".join(told)
