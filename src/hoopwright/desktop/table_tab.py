"""One tab: a table, figures below it that are always seen, and room for acts above or below."""

from collections.abc import Callable, Sequence

from PySide6.QtCore import QCoreApplication, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from hoopwright.desktop.palette import is_dark
from hoopwright.desktop.session import Session
from hoopwright.desktop.table_model import RowsModel
from hoopwright.desktop.table_rows import Column, Row, Total, tip_text
from hoopwright.desktop.table_view import RowsView


class Tab(QWidget):
    """A table of the plan; what a tab of its own shows is told by the functions it is made with.

    Signals:
        row_chosen(Row row): When somebody chose a row.
    """

    row_chosen = Signal(object)

    def __init__(
        self,
        session: Session,
        title: str,
        columns: Sequence[Column],
        rows: Callable[[Session], Sequence[Row]],
        totals: Callable[[Session], Sequence[Total]] | None = None,
        of_order: bool = False,
        model: RowsModel | None = None,
        parent: QWidget | None = None,
    ) -> None:
        """Make an empty table.

        Args:
            session: What is shown.
            title: Name of the tab.
            columns: The columns.
            rows: Gives the rows.
            totals: Gives the figures below.
            of_order: Whether its figures wait for the farm's order to settle.
            model: A model that can be typed into, else one that only shows.
            parent: Widget that owns it.
        """
        super().__init__(parent)
        self.session, self.title = session, title
        self._rows, self._totals, self._of_order = rows, totals, of_order
        self.stale = True
        self.model = model or RowsModel(columns)
        self.model.setParent(self)
        self.view = self.make_view()
        self.bar = QHBoxLayout()
        self.bar.setContentsMargins(6, 2, 6, 2)
        self.bar.setSpacing(18)
        self._figures: list[QLabel] = []
        self.acts: list[QPushButton] = []
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(0)
        box.addWidget(self.view, 1)
        box.addLayout(self.bar)
        self.bar.addStretch(1)
        self.view.row_chosen.connect(self.row_chosen)

    def make_view(self) -> RowsView:
        """Return the table on the screen."""
        return RowsView(self.model, self.title, self)

    @property
    def pending(self) -> bool:
        """Whether its figures wait for the farm's order to settle."""
        return self._of_order and not self.session.plan.settled

    def refresh(self) -> None:
        """Show the plan as it is now; what was chosen stays chosen."""
        self.stale = False
        session = self.session
        held = [row.key for row in self.view.chosen_rows()]
        self.model.dark = is_dark(self.palette())
        self.model.pending = self.pending
        other = self.model.show_rows(
            self._rows(session), session.units, session.farm.money.currency
        )
        if other and held:
            self.view.choose(held, reveal=False)
        if self._totals is not None:
            self._show_totals(self._totals(session))

    def follow(self, mark: str) -> None:
        """Choose the rows that a mark on the canvas belongs to."""
        place = mark.removesuffix("/crank")
        keys = [row.key for row in self.model.rows if place and place in row.marks]
        if mark == "" or keys:
            self.view.choose(keys, reveal=True)

    def add_act(self, text: str, act: Callable[[], None]) -> QPushButton:
        """Put a button at the end of the bar below the table."""
        button = QPushButton(text)
        button.setAutoDefault(False)
        button.clicked.connect(lambda: act())
        self.bar.addWidget(button)
        self.acts.append(button)
        return button

    def _show_totals(self, totals: Sequence[Total]) -> None:
        while len(self._figures) < len(totals):
            label = QLabel()
            self.bar.insertWidget(len(self._figures), label)
            self._figures.append(label)
        while len(self._figures) > len(totals):
            label = self._figures.pop()
            self.bar.removeWidget(label)
            label.deleteLater()
        words = QCoreApplication.translate("Tables", "{label} {figure}")
        for label, total in zip(self._figures, totals, strict=True):
            label.setText(words.format(label=total.label, figure=total.text))
            label.setToolTip(tip_text(total.tip, self.session.units))
