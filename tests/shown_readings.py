"""The tables with the tab of readings in front."""

from pytestqt.qtbot import QtBot

from hoopwright.desktop.session import Session
from hoopwright.desktop.table_tape import BowsTab, TapeTab
from hoopwright.desktop.tables import Tables
from hoopwright.farm import Farm
from samples import small_farm


def show_readings(qtbot: QtBot, farm: Farm | None = None) -> tuple[Tables, Session, BowsTab]:
    """Show the readings of a farm, or of the small one; the caller keeps the tables alive."""
    session = Session(farm or small_farm())
    tables = Tables(session)
    session.setParent(tables)
    qtbot.addWidget(tables)
    tables.resize(1046, 330)
    tables.show()
    tab = tables.show_tab("readings")
    assert isinstance(tab, TapeTab)
    bows = tab.shown
    assert isinstance(bows, BowsTab)
    return tables, session, bows
