"""A tab that is a row of parts, each a table of its own."""

from functools import cached_property

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QStackedWidget, QTabBar, QVBoxLayout, QWidget

from hoopwright.desktop.session import Session
from hoopwright.desktop.table_tab import Tab
from hoopwright.desktop.table_view import RowsView


class PartedTab(QWidget):
    """The parts of a tab, made when the tab is seen first; the one that is seen is fresh.

    Signals:
        row_chosen(Row row): When somebody chose a row of a part.
    """

    row_chosen = Signal(object)

    def __init__(self, session: Session, title: str, spoken: str) -> None:
        """Make an empty tab; its parts together are called what is spoken."""
        super().__init__()
        self.session, self.title = session, title
        self.row = QTabBar()
        self.row.setDrawBase(False)
        self.row.setExpanding(False)
        self.row.setAccessibleName(spoken)
        self.stack = QStackedWidget()
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(0)
        box.addWidget(self.row)
        box.addWidget(self.stack, 1)

    @cached_property
    def parts(self) -> tuple[Tab, ...]:
        """The parts, made when they are needed first and filled when they are seen."""
        parts = self.make_parts()
        for part in parts:
            self.row.addTab(part.title)
            self.stack.addWidget(part)
            part.row_chosen.connect(self.row_chosen)
        self.row.currentChanged.connect(self.on_part_changed)
        return parts

    def make_parts(self) -> tuple[Tab, ...]:
        """Return the parts in their order."""
        raise NotImplementedError

    @property
    def shown(self) -> Tab:
        """The part that is seen."""
        parts = self.parts
        return parts[self.row.currentIndex()]

    @property
    def view(self) -> RowsView:
        """The table that is seen."""
        return self.shown.view

    @property
    def stale(self) -> bool:
        """Whether the part that is seen waits to be filled."""
        return "parts" not in self.__dict__ or self.shown.stale

    @stale.setter
    def stale(self, stale: bool) -> None:
        """Mark every part; those that are not made yet wait anyway."""
        for part in self.__dict__.get("parts", ()):
            part.stale = stale

    def refresh(self) -> None:
        """Fill the part that is seen."""
        self.shown.refresh()

    def follow(self, mark: str) -> None:
        """Choose the rows that a mark on the canvas belongs to."""
        self.shown.follow(mark)

    def on_part_changed(self, index: int) -> None:
        """Show another part, filled when it is stale."""
        self.stack.setCurrentIndex(index)
        if self.shown.stale:
            self.shown.refresh()
        self.shown.follow(self.session.mark)
