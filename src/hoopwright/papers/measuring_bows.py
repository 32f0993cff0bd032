"""The table of the bows: one row for each, rows and columns in the order of the window."""

from hoopwright.farm import BowReading, bow_positions
from hoopwright.farm.change_tape import LEAST_BOWS, suggested_bows
from hoopwright.papers.form_flow import Block, Table
from hoopwright.papers.form_page import FieldPath
from hoopwright.papers.measuring_grid import Cell, Column, Row, grid
from hoopwright.papers.measuring_head import heading_block
from hoopwright.papers.measuring_subject import MeasuringSubject

BOWS: FieldPath = ("frame", "tape", "bows")
POSITIONS: FieldPath = ("frame", "bows", "positions_m")
SIDE_FIELDS = ("hip_m", "baseboard_m", "ground_m")
SPARE_ROWS = 2
"""Rows without a number after the last bow, for bows that nobody counted."""
BLANK_ROWS = 16
"""Rows of a sheet for any tunnel after those it begins with; as many as the page has room for."""


def first_bows(subject: MeasuringSubject) -> Table:
    """Return the rows the window begins with: suggested bows, marked, and those with readings."""
    return grid(subject.inner_mm, _columns(subject), _rows(subject)[0])


def other_bows(subject: MeasuringSubject) -> tuple[Block | Table, ...]:
    """Return the rows of all other bows under their heading."""
    rows = _rows(subject)[1]
    return heading_block("The other bows"), grid(subject.inner_mm, _columns(subject), rows)


def _rows(subject: MeasuringSubject) -> tuple[tuple[Row, ...], tuple[Row, ...]]:
    tunnel = subject.tunnel
    if tunnel is None:
        return (_unknown(),) * LEAST_BOWS, (_unknown(),) * BLANK_ROWS
    tape, suggested = tunnel.frame.tape, suggested_bows(tunnel)
    chosen = {*suggested, *(reading.bow for reading in tape.bows)}
    rows = {
        bow: _known(subject, tape.at(bow), at_m, bow in suggested)
        for bow, at_m in enumerate(bow_positions(tunnel.frame.bows), 1)
    }
    others = tuple(row for bow, row in rows.items() if bow not in chosen)
    return (
        tuple(row for bow, row in rows.items() if bow in chosen),
        (*others, *(_unknown(),) * SPARE_ROWS),
    )


def _columns(subject: MeasuringSubject) -> tuple[Column, ...]:
    unit = subject.long_unit
    first, second = subject.side_name(0), subject.side_name(1)
    return (
        Column("bow", 10, 1),
        Column("position", 19.5, 2, unit),
        Column("over\nhips", 22, 3, unit, "girth"),
        Column("over base-\nboards", 22, 4, unit, "girth"),
        Column("hip", 19, 5, unit, first),
        Column("base-\nboard", 17, 6, unit, first),
        Column("ground", 15, 7, unit, first),
        Column("hip", 19, 8, unit, second),
        Column("base-\nboard", 17, 9, unit, second),
        Column("ground", 15, 10, unit, second),
        Column("below\nstring", 15, 11, unit, "ridge"),
    )


def _known(subject: MeasuringSubject, reading: BowReading, at_m: float, first: bool) -> Row:
    bow = reading.bow
    sides = (
        Cell((*BOWS, bow, "sides", n, name), subject.size(getattr(side, name)))
        for n, side in enumerate(reading.sides)
        for name in SIDE_FIELDS
    )
    cells = (
        Cell((), str(bow)),
        Cell((*POSITIONS, bow), subject.size(at_m)),
        Cell((*BOWS, bow, "over_hips_m"), subject.size(reading.over_hips_m)),
        Cell((*BOWS, bow, "over_baseboards_m"), subject.size(reading.over_baseboards_m)),
        *sides,
        Cell((*BOWS, bow, "dip_m"), subject.size(reading.dip_m)),
    )
    return Row(cells, first)


def _unknown() -> Row:
    sides = (Cell((*BOWS, 0, "sides", n, name)) for n in (0, 1) for name in SIDE_FIELDS)
    girths = (Cell((*BOWS, 0, name)) for name in ("over_hips_m", "over_baseboards_m"))
    numbered = (Cell((*BOWS, 0, "bow")), Cell((*POSITIONS, 0)))
    return Row((*numbered, *girths, *sides, Cell((*BOWS, 0, "dip_m"))))
