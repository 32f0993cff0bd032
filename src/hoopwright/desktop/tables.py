"""The tables below the drawing. The one that is seen is always fresh; the others when shown.

A tab is made, and the modules of its own are loaded, when it is seen first.
"""

from collections.abc import Callable
from itertools import pairwise

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication, Qt, Signal
from PySide6.QtWidgets import QComboBox, QTabWidget, QVBoxLayout, QWidget

from hoopwright.desktop.rest import Rest
from hoopwright.desktop.session import Session
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
from hoopwright.desktop.table_rows import Row, Total
from hoopwright.desktop.table_tab import Tab
from hoopwright.farm import Farm

DRAG_PAUSE_MS, DRAG_MOST_MS = 80, 500
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


AnyTab = Tab | PartedTab


def _readings(session: Session, title: str) -> AnyTab:
    from hoopwright.desktop.table_tape import TapeTab

    return TapeTab(session, title)


def _film(session: Session, title: str) -> AnyTab:
    return Tab(session, title, FILM_COLUMNS, film_rows, film_totals, of_order=True)


def _curtains(session: Session, title: str) -> AnyTab:
    from hoopwright.desktop.table_work import CURTAIN_COLUMNS, curtain_rows

    return Tab(session, title, CURTAIN_COLUMNS, curtain_rows)


def _travel(session: Session, title: str) -> AnyTab:
    from hoopwright.desktop.table_travel import TravelTab

    return TravelTab(session, title)


def _air(session: Session, title: str) -> AnyTab:
    from hoopwright.desktop.table_air import AirTab

    return AirTab(session, title)


def _rolls(session: Session, title: str) -> AnyTab:
    return Tab(session, title, ROLL_COLUMNS, roll_rows, roll_totals, of_order=True)


def _coverings(session: Session, title: str) -> AnyTab:
    from hoopwright.desktop.table_coverings import CoveringsTab

    return CoveringsTab(session, title)


def _checks(session: Session, title: str) -> AnyTab:
    from hoopwright.desktop.table_checks import ChecksTab

    return ChecksTab(session, title)


def _prices(session: Session, title: str) -> AnyTab:
    from hoopwright.desktop.table_prices import PricesTab

    return PricesTab(session, title)


TABS: dict[str, tuple[object, Callable[[Session, str], AnyTab]]] = {
    "readings": (QT_TRANSLATE_NOOP("Tables", "Readings"), _readings),
    "takeoff": (QT_TRANSLATE_NOOP("Tables", "Takeoff"), TakeoffTab),
    "film": (QT_TRANSLATE_NOOP("Tables", "Film"), _film),
    "curtains": (QT_TRANSLATE_NOOP("Tables", "Curtains"), _curtains),
    "travel": (QT_TRANSLATE_NOOP("Tables", "Travel"), _travel),
    "air": (QT_TRANSLATE_NOOP("Tables", "Air"), _air),
    "rolls": (QT_TRANSLATE_NOOP("Tables", "Rolls"), _rolls),
    "coverings": (QT_TRANSLATE_NOOP("Tables", "Coverings"), _coverings),
    "checks": (QT_TRANSLATE_NOOP("Tables", "Checks"), _checks),
    "prices": (QT_TRANSLATE_NOOP("Tables", "Prices"), _prices),
}
"""Every tab in its order: its title and what makes it."""


class _Page(QWidget):
    """The place of a tab, empty until it is seen first."""

    def __init__(self, title: str, make: Callable[[Session, str], AnyTab]) -> None:
        super().__init__()
        self.title, self._make = title, make
        self.made: AnyTab | None = None
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)

    def fill(self, session: Session) -> AnyTab:
        """Make the tab and show it on this page."""
        tab = self.made = self._make(session, self.title)
        box = self.layout()
        assert box is not None
        box.addWidget(tab)
        # At once and not with the next turn of the event loop: what is hidden takes no focus.
        tab.show()
        if isinstance(tab, PartedTab):
            tab.refresh()
        return tab

    def stops(self) -> list[QWidget]:
        """Return where Tab stops on this page, in order."""
        found: list[QWidget] = []
        at = self.nextInFocusChain()
        while at is not None and at is not self:
            if self.isAncestorOf(at) and at.focusPolicy() & Qt.FocusPolicy.TabFocus:
                found.append(at)
            at = at.nextInFocusChain()
        return found


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
        self._later = Rest(DRAG_PAUSE_MS, DRAG_MOST_MS, self)
        self._later.timeout.connect(self.refresh)
        self._pages: list[_Page] = []
        for words, make in TABS.values():
            page = _Page(QCoreApplication.translate("Tables", str(words)), make)
            self._pages.append(page)
            self.addTab(page, page.title)
        self.setCurrentIndex(list(TABS).index("takeoff"))
        self.setDocumentMode(True)
        self.setMinimumHeight(LEAST_HEIGHT_PX)
        self.tabBar().setAccessibleName(QCoreApplication.translate("Tables", "Tables"))
        self.currentChanged.connect(self.on_current_changed)
        session.farm_changed.connect(self.on_farm_changed)
        session.tunnel_shown.connect(self.on_tunnel_shown)
        session.stack.indexChanged.connect(self.on_step_made)
        session.mark_picked.connect(self.on_mark_picked)
        self.refresh()

    @property
    def shown(self) -> AnyTab:
        """The tab that is seen."""
        return self.tab(self.currentIndex())

    def tab(self, index: int) -> AnyTab:
        """Return a tab, made when it is wanted first."""
        page = self._pages[index]
        if page.made is not None:
            return page.made
        tab = page.fill(self._session)
        # Tab goes from the bar into the page, though the page was filled late.
        for first, second in pairwise([self.tabBar(), *page.stops()]):
            QWidget.setTabOrder(first, second)
        tab.row_chosen.connect(self.on_row_chosen)
        return tab

    def show_tab(self, key: str) -> AnyTab:
        """Bring a tab to the front by its key in `TABS`, and return it."""
        self.setCurrentIndex(list(TABS).index(key))
        return self.shown

    def on_farm_changed(self, _before: Farm, _after: Farm) -> None:
        """Fill the table that is seen: at once, or when a hand that drags rests."""
        self._all_stale()
        if not self._session.dragging:
            self.refresh()
        else:
            self._later.step()

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
        for page in self._pages:
            if page.made is not None:
                page.made.stale = True

    def _show_tunnel_of(self, row: Row) -> None:
        """Show the tunnel that a check or a cut belongs to."""
        named = {t.name: n for n, t in enumerate(self._session.farm.tunnels)}
        if row.key[0] in ("check", "cut"):
            index = named.get(str(row.key[2]))
            if index is not None:
                self._session.show_tunnel(index)
