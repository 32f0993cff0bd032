"""The tables below the drawing. The one that is seen is always fresh; the others when shown."""

from PySide6.QtCore import QCoreApplication, QTimer, Signal
from PySide6.QtWidgets import QComboBox, QTabWidget, QWidget

from hoopwright.desktop.session import Session
from hoopwright.desktop.table_air import AirTab
from hoopwright.desktop.table_checks import ChecksTab
from hoopwright.desktop.table_coverings import CoveringsTab
from hoopwright.desktop.table_order import (
    FILM_COLUMNS,
    ROLL_COLUMNS,
    TAKEOFF_COLUMNS,
    cost_totals,
    film_rows,
    film_totals,
    roll_rows,
    roll_totals,
    takeoff_rows,
)
from hoopwright.desktop.table_parts import PartedTab
from hoopwright.desktop.table_prices import PricesTab
from hoopwright.desktop.table_rows import Row, Total
from hoopwright.desktop.table_tab import Tab
from hoopwright.desktop.table_tape import TapeTab
from hoopwright.desktop.table_travel import TravelTab
from hoopwright.desktop.table_work import CURTAIN_COLUMNS, curtain_rows
from hoopwright.farm import Farm

DRAG_PAUSE_MS = 80
LEAST_HEIGHT_PX = 120


class TakeoffTab(Tab):
    """The lines to buy, for the whole farm or for the shown tunnel alone."""

    def __init__(self, session: Session, title: str) -> None:
        """Make the takeoff of the whole farm."""
        self.scope = QComboBox()
        self.scope.addItem(QCoreApplication.translate("Tables", "Whole farm"))
        self.scope.addItem(QCoreApplication.translate("Tables", "Shown tunnel, without freight"))
        self.scope.setAccessibleName(QCoreApplication.translate("Tables", "Takeoff of"))
        super().__init__(session, title, TAKEOFF_COLUMNS, self._lines, self._sums, of_order=True)
        self.bar.addWidget(self.scope)
        self.scope.activated.connect(lambda _at: self.refresh())

    @property
    def of_farm(self) -> bool:
        """Whether the lines of the whole farm are shown."""
        return self.scope.currentIndex() == 0

    @property
    def pending(self) -> bool:
        """Whether the farm's order is shown and not settled."""
        return self.of_farm and not self.session.plan.settled

    def _lines(self, session: Session) -> tuple[Row, ...]:
        whole, shown = session.plan.order, session.tunnel_plan.chosen.order
        order = whole if self.of_farm else shown
        return takeoff_rows(order, session.units, session.farm.money.currency)

    def _sums(self, session: Session) -> tuple[Total, ...]:
        cost = session.plan.cost if self.of_farm else session.tunnel_plan.chosen.cost
        return cost_totals(cost, session.farm.money.currency, not self.pending)


class Tables(QTabWidget):
    """All tables of the plan.

    Signals:
        lit(tuple[str, ...] marks): When a row was chosen: the places on the canvas it means.
    """

    lit = Signal(tuple)

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        """Make the tables of what a session shows; each is filled when it is seen first."""
        super().__init__(parent)
        self._session = session
        self._choosing = False
        self._later = QTimer(self, singleShot=True, interval=DRAG_PAUSE_MS)
        self._later.timeout.connect(self.refresh)
        self.tabs = self._make_tabs()
        for tab in self.tabs:
            self.addTab(tab, tab.title)
            tab.row_chosen.connect(self.on_row_chosen)
        self.setCurrentWidget(next(tab for tab in self.tabs if isinstance(tab, TakeoffTab)))
        self.setDocumentMode(True)
        self.setMinimumHeight(LEAST_HEIGHT_PX)
        self.tabBar().setAccessibleName(QCoreApplication.translate("Tables", "Tables"))
        self.currentChanged.connect(self.on_current_changed)
        session.farm_changed.connect(self.on_farm_changed)
        session.tunnel_shown.connect(self.on_tunnel_shown)
        session.stack.indexChanged.connect(self.on_step_made)
        session.mark_picked.connect(self.on_mark_picked)
        self.refresh()

    def _make_tabs(self) -> tuple[Tab | PartedTab, ...]:
        session = self._session
        film = QCoreApplication.translate("Tables", "Film")
        rolls = QCoreApplication.translate("Tables", "Rolls")
        curtains = QCoreApplication.translate("Tables", "Curtains")
        air = QCoreApplication.translate("Tables", "Air")
        readings = QCoreApplication.translate("Tables", "Readings")
        return (
            TapeTab(session, readings),
            TakeoffTab(session, QCoreApplication.translate("Tables", "Takeoff")),
            Tab(session, film, FILM_COLUMNS, film_rows, film_totals, of_order=True),
            Tab(session, curtains, CURTAIN_COLUMNS, curtain_rows),
            TravelTab(session, QCoreApplication.translate("Tables", "Travel")),
            AirTab(session, air),
            Tab(session, rolls, ROLL_COLUMNS, roll_rows, roll_totals, of_order=True),
            CoveringsTab(session, QCoreApplication.translate("Tables", "Coverings")),
            ChecksTab(session, QCoreApplication.translate("Tables", "Checks")),
            PricesTab(session, QCoreApplication.translate("Tables", "Prices")),
        )

    @property
    def shown(self) -> Tab | PartedTab:
        """The tab that is seen."""
        tab = self.currentWidget()
        assert isinstance(tab, Tab | PartedTab)
        return tab

    def on_farm_changed(self, _before: Farm, _after: Farm) -> None:
        """Fill the table that is seen: at once, or shortly while a hand is dragging."""
        self._all_stale()
        if not self._session.dragging:
            self.refresh()
        elif not self._later.isActive():
            self._later.start()

    def on_step_made(self, _index: int) -> None:
        """Catch up at once when the hand lets go."""
        if self._later.isActive():
            self.refresh()

    def on_tunnel_shown(self, _index: int) -> None:
        """Show the tables of another tunnel."""
        self._all_stale()
        self.refresh()

    def on_current_changed(self, _index: int) -> None:
        """Fill the table that comes to the front when it is stale."""
        if self.shown.stale:
            self.shown.refresh()
        self.shown.follow(self._session.mark)

    def on_mark_picked(self, mark: str) -> None:
        """Choose the rows of what was picked elsewhere."""
        if not self._choosing:
            self.shown.follow(mark)

    def on_row_chosen(self, row: Row) -> None:
        """Light up what a row means, on its own tunnel, and pick the first of it."""
        self._choosing = True
        self._show_tunnel_of(row)
        self.lit.emit(row.marks)
        if row.marks:
            self._session.pick(row.marks[0])
        self._choosing = False

    def refresh(self) -> None:
        """Fill the table that is seen."""
        self._later.stop()
        self.shown.refresh()

    def _all_stale(self) -> None:
        for tab in self.tabs:
            tab.stale = True

    def _show_tunnel_of(self, row: Row) -> None:
        """Show the tunnel that a check or a cut belongs to."""
        named = {t.name: n for n, t in enumerate(self._session.farm.tunnels)}
        if row.key[0] in ("check", "cut"):
            index = named.get(str(row.key[2]))
            if index is not None:
                self._session.show_tunnel(index)
