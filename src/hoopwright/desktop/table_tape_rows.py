"""Rows of the readings, one for each bow: what was read, what lies between, what stands out."""

from collections.abc import Sequence

from PySide6.QtCore import QCoreApplication

from hoopwright.desktop.session import Session
from hoopwright.desktop.table_rows import Cell, Column, Row
from hoopwright.desktop.table_tape_boxes import (
    BOW,
    BOXES,
    POSITION,
    Spot,
    column_name,
    value_in,
)
from hoopwright.farm import Tunnel
from hoopwright.farm.change_tape import suggested_bows
from hoopwright.quantity.units import Units, show
from hoopwright.survey.taped import GirthSpread, HeightLine, Taped

GIRTHS = {("over_hips_m",): "hips", ("over_baseboards_m",): "baseboards"}


class BoxCell(Cell, frozen=True):
    """A cell of the readings.

    Attributes:
        between: Whether its height was not read here.
        governs: Whether the film is planned by this girth.
        outlier: Whether this girth is far from the middle one.
    """

    between: bool = False
    governs: bool = False
    outlier: bool = False


def tape_columns(session: Session) -> tuple[Column, ...]:
    """Return the columns in the order of the measuring sheet."""
    tunnel = session.tunnel
    girth_letters = 17 if session.units == "imperial" else 13
    return (
        Column(column_name(BOW, tunnel), 2, "count"),
        Column(column_name(POSITION, tunnel), 8, "m"),
        *(
            Column(column_name(n, tunnel), girth_letters if box.field in GIRTHS else 7, "m")
            for n, box in BOXES.items()
        ),
    )


def bows_to_measure(tunnel: Tunnel, also: Sequence[int] = ()) -> tuple[int, ...]:
    """Return the bows that are suggested, those with readings, and some more, in order."""
    read = (reading.bow for reading in tunnel.frame.tape.bows)
    return tuple(sorted({*suggested_bows(tunnel), *read, *also}))


def tape_rows(session: Session, bows: Sequence[int]) -> tuple[Row, ...]:
    """Return the rows of some bows."""
    spots, taped = session.tunnel_plan.survey.bows_m, session.tunnel_plan.survey.taped
    tunnel, units = session.tunnel, session.units
    return tuple(
        Row(
            key=("bow", bow),
            cells=(
                Cell(bow, "count"),
                Cell(spots[bow - 1], "m"),
                *(_cell(tunnel, taped, (bow, column), units) for column in BOXES),
            ),
            marks=(f"bow/{bow - 1}",),
        )
        for bow in bows
    )


def _cell(tunnel: Tunnel, taped: Taped, spot: Spot, units: Units) -> Cell:
    bow, column = spot
    box, value_m = BOXES[column], value_in(tunnel, spot)
    if box.field in GIRTHS and value_m is not None:
        spread: GirthSpread | None = getattr(taped, GIRTHS[box.field])
        return Cell(value_m, "m") if spread is None else _girth(spread, bow, value_m, units)
    if box.side is not None and value_m is None:
        name = str(box.field[-1]).removesuffix("_m")
        return _between(getattr(taped.lines[box.side], name), bow)
    return Cell(value_m, "m")


def _girth(spread: GirthSpread, bow: int, value_m: float, units: Units) -> Cell:
    outlier = any(r.outlier for r in spread.readings if r.bow == bow)
    governs = bow == spread.governing_bow
    said = [_governing(spread)] if governs else []
    if outlier:
        said.append(_outlying(value_m, spread.middle_m, units))
    return BoxCell(value_m, "m", " ".join(said), governs=governs, outlier=outlier)


def _governing(spread: GirthSpread) -> str:
    count = len(spread.readings)
    if count == 1:
        words = "The only girth read here: the film is planned by it. Measure at five bows or more."
        return QCoreApplication.translate("Tables", words)
    words = QCoreApplication.translate("Tables", "Longest of {count}: the film is planned by it.")
    return words.format(count=count)


def _outlying(value_m: float, middle_m: float, units: Units) -> str:
    away = show(abs(value_m - middle_m), "m", units)
    longer = "Outlier: {away} longer than the middle one, {middle}. Measure it again."
    shorter = "Outlier: {away} shorter than the middle one, {middle}. Measure it again."
    words = QCoreApplication.translate("Tables", longer if value_m > middle_m else shorter)
    return words.format(away=away, middle=show(middle_m, "m", units))


def _between(line: HeightLine, bow: int) -> Cell:
    """Return a height that was read at other bows; nothing where none was read at all."""
    read = [n for n, was_read in enumerate(line.read, start=1) if was_read]
    if not read:
        return Cell(None, "m")
    before = max((n for n in read if n < bow), default=None)
    after = min((n for n in read if n > bow), default=None)
    if before is None or after is None:
        words = QCoreApplication.translate("Tables", "As at bow {bow}, the nearest one read.")
        told = words.format(bow=after if before is None else before)
    else:
        words = QCoreApplication.translate("Tables", "Between bows {first} and {last}, not read.")
        told = words.format(first=before, last=after)
    return BoxCell(line.heights_m[bow - 1], "m", told, between=True)


def girths_told(taped: Taped, units: Units) -> str:
    """Return what the girths come to, or how to begin."""
    told = [
        _spread_told(title, spread, units)
        for title, spread in (("Over hips", taped.hips), ("Over baseboards", taped.baseboards))
        if spread is not None
    ]
    begin = (
        "Type readings as 30' 9 1/2\" or 9.14 m. Tab and Enter go to the next box; an empty text "
        "takes a reading away."
    )
    return "  ".join(told) or QCoreApplication.translate("Tables", begin)


def _spread_told(title: str, spread: GirthSpread, units: Units) -> str:
    words = QCoreApplication.translate(
        "Tables",
        "{title}: middle {middle}, spread {spread}; bow {bow} governs with {most}; computed "
        "{computed}.",
    )
    return words.format(
        title=QCoreApplication.translate("Tables", title),
        middle=show(spread.middle_m, "m", units),
        spread=show(spread.spread_m, "m", units),
        bow=spread.governing_bow,
        most=show(spread.governing_m, "m", units),
        computed=show(spread.computed_m, "m", units),
    )
