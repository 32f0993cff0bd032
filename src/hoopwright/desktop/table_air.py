"""The tab of the air between two layers: a row of parts, each a table, with pictures where apt."""

from PySide6.QtCore import QCoreApplication

from hoopwright.desktop.session import Session
from hoopwright.desktop.table_air_rows import (
    BLOWER_COLUMNS,
    CELL_COLUMNS,
    FILM_COLUMNS,
    HOSE_COLUMNS,
    blower_rows,
    cell_rows,
    cell_totals,
    film_rows,
    film_totals,
    hose_rows,
    hose_totals,
)
from hoopwright.desktop.table_filling import FillingTab
from hoopwright.desktop.table_heat import HeatTab
from hoopwright.desktop.table_parts import PartedTab
from hoopwright.desktop.table_readings import ReadingsTab
from hoopwright.desktop.table_seals import SealsTab
from hoopwright.desktop.table_tab import Tab
from hoopwright.pressure import BlowerTry


class BlowersTab(Tab):
    """The blowers of the catalogue as they would do here; Enter or the button takes one."""

    def __init__(self, session: Session, title: str) -> None:
        """Make an empty tab."""
        super().__init__(session, title, BLOWER_COLUMNS, blower_rows)
        words = QCoreApplication.translate("Tables", "Take this blower")
        self.take_button = self.add_act(words, self.take_chosen)
        self.view.row_entered.connect(lambda _row: self.take_chosen())
        self.view.selectionModel().selectionChanged.connect(self.on_selection_changed)

    def refresh(self) -> None:
        """Show the blowers as they would do now."""
        super().refresh()
        self.on_selection_changed()

    def on_selection_changed(self) -> None:
        """Offer a blower that is not taken yet."""
        tried = self._chosen()
        self.take_button.setEnabled(tried is not None and not self._is_taken(tried))

    def take_chosen(self) -> None:
        """Take the chosen blower with its damper as tried, as one undo step."""
        tried = self._chosen()
        if tried is None or self._is_taken(tried):
            return
        tunnel = self.session.tunnel
        air = tunnel.air.but(blower=tried.key, open_share=tried.open_share)
        words = QCoreApplication.translate("Tables", "Take blower: {name}")
        self.session.apply_tunnel(tunnel.but(air=air), words.format(name=tried.name))

    def _is_taken(self, tried: BlowerTry) -> bool:
        air = self.session.tunnel.air
        return (air.blower, air.open_share) == (tried.key, tried.open_share)

    def _chosen(self) -> BlowerTry | None:
        keys = [row.key[1] for row in self.view.chosen_rows()]
        tries = self.session.tunnel_plan.held.tries
        return next((tried for tried in tries if tried.key in keys), None)


class AirTab(PartedTab):
    """The parts of the air between two layers."""

    def __init__(self, session: Session, title: str) -> None:
        """Make an empty tab."""
        super().__init__(session, title, QCoreApplication.translate("Tables", "Parts of the air"))

    def make_parts(self) -> tuple[Tab, ...]:
        """Return the parts in their order."""
        session = self.session

        def said(words: str) -> str:
            return QCoreApplication.translate("Tables", words)

        return (
            Tab(session, said("Cells"), CELL_COLUMNS, cell_rows, cell_totals),
            Tab(session, said("Hoses"), HOSE_COLUMNS, hose_rows, hose_totals),
            FillingTab(session, said("Filling")),
            BlowersTab(session, said("Blowers")),
            SealsTab(session, said("Seals")),
            Tab(session, said("Pull in the film"), FILM_COLUMNS, film_rows, film_totals),
            ReadingsTab(session, said("Readings")),
            HeatTab(session, said("Heat")),
        )
