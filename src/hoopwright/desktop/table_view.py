"""A table on the screen: sorted by value, copied with its headings, rows chosen whole."""

from collections.abc import Iterable

from PySide6.QtCore import (
    QEvent,
    QItemSelection,
    QItemSelectionModel,
    QSortFilterProxyModel,
    Qt,
    Signal,
)
from PySide6.QtGui import QGuiApplication, QKeyEvent, QKeySequence
from PySide6.QtWidgets import (
    QAbstractItemView,
    QApplication,
    QProxyStyle,
    QStyle,
    QStyleOption,
    QTableView,
    QWidget,
)

from hoopwright.desktop.palette import is_dark
from hoopwright.desktop.table_model import SORT_ROLE, RowsModel
from hoopwright.desktop.table_rows import Row

CELL_PADDING_PX = 21
HEAD_PADDING_PX = 12
CELL_MARGIN_PX = 6
ROW_PADDING_PX = 6


class _Padded(QProxyStyle):
    """The program's style with room beside the words of a cell.

    A style sheet would do it too, but keeps the colours it was first polished with.
    """

    def pixelMetric(
        self,
        metric: QStyle.PixelMetric,
        option: QStyleOption | None = None,
        widget: QWidget | None = None,
    ) -> int:
        """Return the size of a detail, px."""
        if metric == QStyle.PixelMetric.PM_FocusFrameHMargin:
            return CELL_MARGIN_PX
        return super().pixelMetric(metric, option, widget)


class RowsView(QTableView):
    """A table of rows.

    Signals:
        row_chosen(Row row): When somebody chose a row; not when the table chose it to follow.
        row_entered(Row row): When Enter was pressed on a row, or it was clicked twice.
    """

    row_chosen = Signal(object)
    row_entered = Signal(object)

    def __init__(self, model: RowsModel, name: str, parent: QWidget | None = None) -> None:
        """Show a model under a name for reading aloud."""
        super().__init__(parent)
        self.rows_model = model
        self._following = False
        self.sorted_rows = QSortFilterProxyModel(self)
        self.sorted_rows.setSortRole(SORT_ROLE)
        self.sorted_rows.setSourceModel(model)
        self.setModel(self.sorted_rows)
        self.setAccessibleName(name)
        self._set_manners()
        self.selectionModel().selectionChanged.connect(self.on_selection_changed)
        self.activated.connect(lambda at: self.row_entered.emit(self._row_at(at.row())))
        model.headerDataChanged.connect(self.fit_columns)

    def _set_manners(self) -> None:
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setAlternatingRowColors(True)
        self.setTabKeyNavigation(False)
        self.setWordWrap(False)
        self.setShowGrid(False)
        style = _Padded(QApplication.style().name())
        style.setParent(self)
        self.setStyle(style)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        rows = self.verticalHeader()
        rows.hide()
        rows.setDefaultSectionSize(self.fontMetrics().height() + ROW_PADDING_PX)
        heads = self.horizontalHeader()
        heads.setHighlightSections(False)
        heads.setSectionsMovable(True)
        heads.setStretchLastSection(not self.rows_model.columns[-1].is_number)
        heads.setSortIndicatorClearable(True)
        self.setSortingEnabled(True)
        heads.setSortIndicator(-1, Qt.SortOrder.AscendingOrder)
        self.fit_columns()

    def fit_columns(self) -> None:
        """Make each column as wide as its letters and its heading need."""
        model, ink = self.rows_model, self.fontMetrics()
        letter_px, digit_px = ink.averageCharWidth(), ink.horizontalAdvance("0")
        across = Qt.Orientation.Horizontal
        for n, column in enumerate(model.columns):
            head_px = ink.horizontalAdvance(str(model.headerData(n, across)))
            text_px = column.letters * (digit_px if column.is_number else letter_px)
            self.setColumnWidth(n, max(text_px + CELL_PADDING_PX, head_px + HEAD_PADDING_PX))

    def chosen_rows(self) -> list[Row]:
        """Return the rows that are chosen, as they stand."""
        spots = sorted(i.row() for i in self.selectionModel().selectedRows())
        return [self._row_at(spot) for spot in spots]

    def choose(self, keys: Iterable[tuple[object, ...]], reveal: bool) -> None:
        """Choose rows by their keys, and tell nobody.

        Args:
            keys: Keys of the rows.
            reveal: Whether to scroll to the first of them.
        """
        wanted = set(keys)
        picked = QItemSelection()
        first = None
        for spot in range(self.sorted_rows.rowCount()):
            if self._row_at(spot).key in wanted:
                at = self.sorted_rows.index(spot, 0)
                picked.select(at, at)
                first = at if first is None else first
        flags = QItemSelectionModel.SelectionFlag
        self._following = True
        how = flags.ClearAndSelect | flags.Rows
        self.selectionModel().select(picked, how)
        if first is not None:
            self.selectionModel().setCurrentIndex(first, flags.NoUpdate)
            if reveal:
                self.scrollTo(first)
        self._following = False

    def on_selection_changed(self, _chosen: QItemSelection, _left: QItemSelection) -> None:
        """Tell which row somebody chose."""
        rows = self.chosen_rows()
        if rows and not self._following:
            self.row_chosen.emit(rows[0])

    def copied_text(self) -> str:
        """Return the chosen rows, or all of them, as tab separated text with headings."""
        model, across = self.rows_model, Qt.Orientation.Horizontal
        header = self.horizontalHeader()
        columns = sorted(range(len(model.columns)), key=header.visualIndex)
        spots = sorted(i.row() for i in self.selectionModel().selectedRows())
        spots = spots or list(range(self.sorted_rows.rowCount()))
        lines = [[str(model.headerData(c, across)) for c in columns]]
        for spot in spots:
            row = self.sorted_rows.mapToSource(self.sorted_rows.index(spot, 0)).row()
            lines.append([" ".join(model.text(row, c).split()) for c in columns])
        return "\n".join("\t".join(line) for line in lines) + "\n"

    def event(self, event: QEvent) -> bool:
        """Keep the keys for copying from the window's shortcuts."""
        if (
            isinstance(event, QKeyEvent)
            and event.type() == QEvent.Type.ShortcutOverride
            and event.matches(QKeySequence.StandardKey.Copy)
        ):
            event.accept()
            return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Copy on the keys for it."""
        if event.matches(QKeySequence.StandardKey.Copy):
            QGuiApplication.clipboard().setText(self.copied_text())
            return
        super().keyPressEvent(event)

    def changeEvent(self, event: QEvent) -> None:
        """Follow the window's palette."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange:
            self.rows_model.dark = is_dark(self.palette())

    def _row_at(self, spot: int) -> Row:
        at = self.sorted_rows.mapToSource(self.sorted_rows.index(spot, 0))
        return self.rows_model.rows[at.row()]
