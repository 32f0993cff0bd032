"""Rows of the air between two layers: cells, hoses, blowers tried, film."""

from collections.abc import Iterable

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication

from hoopwright.desktop.details_items import explained
from hoopwright.desktop.details_words import choice_words
from hoopwright.desktop.session import Session
from hoopwright.desktop.table_order import figure_cell
from hoopwright.desktop.table_rows import Cell, Column, Row, Total
from hoopwright.inflation import Cell as AirCell
from hoopwright.inflation import Jumper
from hoopwright.pressure import BlowerTry, CellAir, FilmPull, HoseAir
from hoopwright.pressure.held import AirState
from hoopwright.quantity.finding import Severity
from hoopwright.quantity.money import format_money
from hoopwright.quantity.units import show
from hoopwright.quantity.working import Explained

CELL_COLUMNS = (
    Column(QT_TRANSLATE_NOOP("Tables", "Cell"), 26),
    Column(QT_TRANSLATE_NOOP("Tables", "Pressure"), 7, "Pa"),
    Column(QT_TRANSLATE_NOOP("Tables", "State"), 9),
    Column(QT_TRANSLATE_NOOP("Tables", "Leak"), 6, "m3/s"),
    Column(QT_TRANSLATE_NOOP("Tables", "Filled after"), 6, "min"),
    Column(QT_TRANSLATE_NOOP("Tables", "Air in it"), 7, "m3"),
    Column(QT_TRANSLATE_NOOP("Tables", "Film that leaks"), 7, "m2"),
    Column(QT_TRANSLATE_NOOP("Tables", "Air comes"), 24),
)
HOSE_COLUMNS = (
    Column(QT_TRANSLATE_NOOP("Tables", "No."), 3, "count"),
    Column(QT_TRANSLATE_NOOP("Tables", "From"), 24),
    Column(QT_TRANSLATE_NOOP("Tables", "Fills"), 24),
    Column(QT_TRANSLATE_NOOP("Tables", "Hangs at"), 9, "m"),
    Column(QT_TRANSLATE_NOOP("Tables", "Air"), 6, "m3/s"),
    Column(QT_TRANSLATE_NOOP("Tables", "Loss"), 6, "Pa"),
    Column(QT_TRANSLATE_NOOP("Tables", "Placed"), 11),
    Column(QT_TRANSLATE_NOOP("Tables", "Only way to"), 26),
)
BLOWER_COLUMNS = (
    Column(QT_TRANSLATE_NOOP("Tables", "Blower"), 30),
    Column(QT_TRANSLATE_NOOP("Tables", "Chosen"), 7),
    Column(QT_TRANSLATE_NOOP("Tables", "Verdict"), 23),
    Column(QT_TRANSLATE_NOOP("Tables", "Lowest"), 7, "Pa"),
    Column(QT_TRANSLATE_NOOP("Tables", "Highest"), 7, "Pa"),
    Column(QT_TRANSLATE_NOOP("Tables", "Air"), 6, "m3/s"),
    Column(QT_TRANSLATE_NOOP("Tables", "Damper open"), 6, "share"),
    Column(QT_TRANSLATE_NOOP("Tables", "Power in a year"), 8, "money"),
)
FILM_COLUMNS = (
    Column(QT_TRANSLATE_NOOP("Tables", "Film"), 40),
    Column(QT_TRANSLATE_NOOP("Tables", "Pressure"), 7, "Pa"),
    Column(QT_TRANSLATE_NOOP("Tables", "Held every"), 9, "m"),
    Column(QT_TRANSLATE_NOOP("Tables", "Longer than flat"), 6, "share"),
    Column(QT_TRANSLATE_NOOP("Tables", "Radius"), 9, "m"),
    Column(QT_TRANSLATE_NOOP("Tables", "Pull"), 7, "N/m"),
    Column(QT_TRANSLATE_NOOP("Tables", "Stress"), 7, "Pa_film"),
    Column(QT_TRANSLATE_NOOP("Tables", "Of its yield"), 6, "share"),
)
STATES: dict[AirState, object] = {
    "not fed": QT_TRANSLATE_NOOP("Tables", "not fed"),
    "flat": QT_TRANSLATE_NOOP("Tables", "flat"),
    "low": QT_TRANSLATE_NOOP("Tables", "low"),
    "in range": QT_TRANSLATE_NOOP("Tables", "in range"),
    "high": QT_TRANSLATE_NOOP("Tables", "high"),
}
SIGNS: dict[AirState, Severity] = {
    "not fed": "fault",
    "flat": "fault",
    "low": "caution",
    "high": "caution",
}
Sums = Iterable[tuple[str, str, object]]


def _say(text: object) -> str:
    return QCoreApplication.translate("Tables", str(text))


def state_words(state: AirState) -> str:
    """Return how a cell stands, in words."""
    return _say(STATES[state])


def sum_figures(thing: Explained, sums: Sums, session: Session) -> tuple[Total, ...]:
    """Return figures of a result for the line below a table: field, unit code, label."""
    return tuple(
        Total(_say(label), show(getattr(thing, name), unit, session.units), explained(thing, name))
        for name, unit, label in sums
    )


def cell_rows(session: Session) -> tuple[Row, ...]:
    """Return the cells with what is held in them."""
    airs = {air.mark: air for air in session.tunnel_plan.held.cells}
    cells = session.tunnel_plan.chosen.inflation.cells
    return tuple(_cell(cell, airs[cell.mark], session) for cell in cells)


def _cell(cell: AirCell, air: CellAir, session: Session) -> Row:
    fed = _say(QT_TRANSLATE_NOOP("Tables", "straight from the blower"))
    unfed = _say(QT_TRANSLATE_NOOP("Tables", "through a jumper"))
    blown = session.tunnel.air.blower is not None
    return Row(
        key=("cell", cell.mark),
        cells=(
            Cell(cell.name),
            figure_cell(air, "pressure_pa", "Pa"),
            Cell(state_words(air.state), tip=explained(air, "state")),
            figure_cell(air, "leak_m3_s", "m3/s"),
            figure_cell(air, "minutes", "min"),
            figure_cell(cell, "volume_m3", "m3"),
            figure_cell(cell, "area_m2", "m2"),
            Cell(fed if cell.fed else unfed),
        ),
        marks=(cell.mark, cell.place),
        sign=SIGNS.get(air.state) if blown else None,
    )


def cell_totals(session: Session) -> tuple[Total, ...]:
    """Return the figures of the blower and of all cells together."""
    held = session.tunnel_plan.held
    currency = session.farm.money.currency
    sums = (
        ("low_pa", "Pa", QT_TRANSLATE_NOOP("Tables", "Lowest")),
        ("high_pa", "Pa", QT_TRANSLATE_NOOP("Tables", "Highest")),
        ("fan_flow_m3_s", "m3/s", QT_TRANSLATE_NOOP("Tables", "Blower gives")),
        ("fan_pressure_pa", "Pa", QT_TRANSLATE_NOOP("Tables", "at")),
        ("leak_m3_s", "m3/s", QT_TRANSLATE_NOOP("Tables", "Leaks")),
        ("yearly_kwh", "kWh", QT_TRANSLATE_NOOP("Tables", "Power in a year")),
    )
    cost = format_money(held.yearly_cost, currency)
    label = _say(QT_TRANSLATE_NOOP("Tables", "for"))
    paid = Total(label, cost, explained(held, "yearly_cost"))
    return (*sum_figures(held, sums, session), paid)


def hose_rows(session: Session) -> tuple[Row, ...]:
    """Return the jumper hoses with what flows along them."""
    hoses = {hose.mark: hose for hose in session.tunnel_plan.held.hoses}
    jumpers = session.tunnel_plan.chosen.inflation.jumpers
    return tuple(_hose(jumper, hoses[jumper.mark], session) for jumper in jumpers)


def _hose(jumper: Jumper, hose: HoseAir, session: Session) -> Row:
    names = {cell.mark: cell.name for cell in session.tunnel_plan.chosen.inflation.cells}
    by_hand = _say(QT_TRANSLATE_NOOP("Tables", "by hand"))
    worked = _say(QT_TRANSLATE_NOOP("Tables", "worked out"))
    return Row(
        key=("jumper", jumper.mark),
        cells=(
            Cell(int(jumper.mark.split("/")[1]) + 1, "count"),
            Cell(names.get(jumper.from_cell, "")),
            Cell(names.get(jumper.to_cell, "")),
            Cell(jumper.at_m, "m"),
            figure_cell(hose, "flow_m3_s", "m3/s"),
            figure_cell(hose, "loss_pa", "Pa"),
            Cell(by_hand if jumper.placed else worked),
            Cell(", ".join(names.get(mark, "") for mark in hose.cuts_off)),
        ),
        marks=(jumper.mark,),
    )


def hose_totals(session: Session) -> tuple[Total, ...]:
    """Return how many jumpers there are, and what the blower's own hose takes."""
    count = len(session.tunnel_plan.chosen.inflation.jumpers)
    only = sum(1 for hose in session.tunnel_plan.held.hoses if hose.critical)
    sums = (
        (
            "feed_loss_pa",
            "Pa",
            QT_TRANSLATE_NOOP("Tables", "Hose and damper of the blower take"),
        ),
    )
    return (
        Total(_say(QT_TRANSLATE_NOOP("Tables", "Jumpers")), show(count, "count", session.units)),
        Total(
            _say(QT_TRANSLATE_NOOP("Tables", "the only way to a cell")),
            show(only, "count", session.units),
        ),
        *sum_figures(session.tunnel_plan.held, sums, session),
    )


def blower_rows(session: Session) -> tuple[Row, ...]:
    """Return the blowers of the catalogue as they would do here."""
    return tuple(_blower(tried) for tried in session.tunnel_plan.held.tries)


def _blower(tried: BlowerTry) -> Row:
    chosen = _say(QT_TRANSLATE_NOOP("Tables", "chosen"))
    return Row(
        key=("blower", tried.key),
        cells=(
            Cell(tried.name),
            Cell(chosen if tried.chosen else None),
            Cell(choice_words(tried.verdict), tip=explained(tried, "verdict")),
            figure_cell(tried, "low_pa", "Pa"),
            figure_cell(tried, "high_pa", "Pa"),
            figure_cell(tried, "flow_m3_s", "m3/s"),
            figure_cell(tried, "open_share", "share"),
            figure_cell(tried, "yearly_cost", "money"),
        ),
        marks=("air/blower",),
    )


def film_rows(session: Session) -> tuple[Row, ...]:
    """Return what the air does to the layers of film."""
    return tuple(_film(pull) for pull in session.tunnel_plan.held.pulls)


def _film(pull: FilmPull) -> Row:
    kind, number = pull.mark.split("/")[1:3]
    return Row(
        key=("film", pull.mark),
        cells=(
            Cell(pull.name),
            figure_cell(pull, "pressure_pa", "Pa"),
            figure_cell(pull, "chord_m", "m"),
            figure_cell(pull, "extra_share", "share"),
            figure_cell(pull, "radius_m", "m"),
            figure_cell(pull, "tension_n_m", "N/m"),
            figure_cell(pull, "stress_pa", "Pa_film"),
            figure_cell(pull, "yield_share", "share"),
        ),
        marks=("roof",) if kind == "roof" else (f"{kind}/{number}",),
    )


def film_totals(session: Session) -> tuple[Total, ...]:
    """Return the slack to leave in the roof film, and what the seals hold."""
    sums = (
        ("slack_m", "m_thin", QT_TRANSLATE_NOOP("Tables", "Leave the roof film loose by")),
        ("sag_m", "m_thin", QT_TRANSLATE_NOOP("Tables", "it then hangs in a bay by")),
    )
    return sum_figures(session.tunnel_plan.held, sums, session)
