"""The condition of the old skin on the measuring sheet: families of parts by place."""

from typing import get_args

from hoopwright.farm import PartState
from hoopwright.farm.condition import State, Where
from hoopwright.papers.form_flow import Block, Table, stacked
from hoopwright.papers.form_page import LEAST_BOX_MM, Box, FieldPath, Shape, Stroke, Text
from hoopwright.papers.measuring_grid import Cell, Column, Row, grid
from hoopwright.papers.measuring_head import heading_block, text_block
from hoopwright.papers.measuring_subject import MeasuringSubject
from hoopwright.quantity.units import show

STATES: tuple[State, ...] = get_args(State)
PLACES: tuple[Where, ...] = get_args(Where)
PLACE_WORDS: dict[Where, str] = {
    "everywhere": "every-\nwhere",
    "roof": "roof",
    "first_side": "first\nside",
    "second_side": "second\nside",
    "front_end": "front\nend",
    "back_end": "back\nend",
}
FIELD: FieldPath = ("condition",)
FAMILY_MM = 34.0
TICK_MM = LEAST_BOX_MM
WORD_MM = 9.5
TURNED_MM = 15.0
STRETCH_ROWS = 8
NOTES_MM = 50.0


def condition_parts(subject: MeasuringSubject) -> tuple[Block | Table, ...]:
    """Return tick boxes for families and places, then rows for stretches from bow to bow."""
    words = (
        "Tick one at each place; under it the share to replace of what is repaired. No tick: new."
    )
    lines = () if subject.tunnel is None else subject.tunnel.condition
    whole = {
        (line.family, line.where): line
        for line in lines
        if line.from_bow is None and line.to_bow is None
    }
    stretches = [line for line in lines if line.from_bow is not None or line.to_bow is not None]
    return (
        heading_block("Condition of the old skin", begins_page=True),
        text_block(words, subject.inner_mm),
        Table(
            _places_head(subject.inner_mm),
            tuple(_family(subject, family, whole) for family in subject.families),
        ),
        heading_block("Condition of some bows only"),
        grid(subject.inner_mm, _stretch_columns(), _stretch_rows(subject, stretches)),
        stacked((heading_block("Notes"), _notes(subject.inner_mm))),
    )


def _notes(inner_mm: float) -> Block:
    return Block(NOTES_MM, (Box(("paper", "notes"), 0, 0, inner_mm, NOTES_MM - 1),))


def _place_mm(inner_mm: float) -> float:
    return (inner_mm - FAMILY_MM) / len(PLACES)


def _places_head(inner_mm: float) -> Block:
    width = _place_mm(inner_mm)
    tick = width / len(STATES)
    shapes: list[Shape] = []
    for n, place in enumerate(PLACES):
        left = FAMILY_MM + n * width
        text = Text(left, 0, width, WORD_MM, PLACE_WORDS[place], bold=True, align="centre")
        shapes.append(text)
        shapes += [
            Text(left + k * tick, WORD_MM, tick, TURNED_MM, state, align="left", turned=True)
            for k, state in enumerate(STATES)
        ]
        shapes.append(_edge(left, WORD_MM + TURNED_MM))
    return Block(WORD_MM + TURNED_MM, tuple(shapes))


def _edge(left: float, height: float) -> Stroke:
    return Stroke(((left, 0), (left, height)), 0.6)


def _family(
    subject: MeasuringSubject, family: str, known: dict[tuple[str, Where], PartState]
) -> Block:
    width = _place_mm(subject.inner_mm)
    tick = width / len(STATES)
    shapes: list[Shape] = [Text(0, 0, FAMILY_MM - 1, 2 * TICK_MM, family)]
    for n, place in enumerate(PLACES):
        left = FAMILY_MM + n * width
        line = known.get((family, place))
        for k, state in enumerate(STATES):
            field = (*FIELD, family, place, "state", state)
            mark = _ticked(line, state)
            shapes.append(Box(field, left + k * tick, 0, tick, TICK_MM, mark))
        field = (*FIELD, family, place, "replace_share")
        shapes.append(Box(field, left, TICK_MM, width, TICK_MM, _share(subject, line)))
        shapes.append(Text(left + 0.8, TICK_MM, 6, TICK_MM, "%", ink="grey"))
        shapes.append(_edge(left, 2 * TICK_MM))
    return Block(2 * TICK_MM, tuple(shapes))


def _ticked(line: PartState | None, state: State) -> str:
    return "x" if line is not None and line.state == state else ""


def _share(subject: MeasuringSubject, line: PartState | None) -> str:
    if line is None or line.state != "repair":
        return ""
    return show(line.replace_share, "share", subject.units)


def _stretch_columns() -> tuple[Column, ...]:
    return (
        Column("family", 42),
        Column("place", 34),
        Column("from\nbow", 19),
        Column("to\nbow", 19),
        *(Column(state, 18) for state in STATES),
        Column("share to\nreplace, %", 22),
    )


def _stretch_rows(subject: MeasuringSubject, lines: list[PartState]) -> tuple[Row, ...]:
    padded = (*lines, *(None,) * max(1, STRETCH_ROWS - len(lines)))
    return tuple(_stretch(subject, n, line) for n, line in enumerate(padded))


def _stretch(subject: MeasuringSubject, n: int, line: PartState | None) -> Row:
    def known(name: str) -> str:
        value = None if line is None else getattr(line, name)
        return "" if value is None else str(value).replace("_", " ")

    return Row(
        (
            *(
                Cell((*FIELD, n, name), known(name))
                for name in ("family", "where", "from_bow", "to_bow")
            ),
            *(Cell((*FIELD, n, "state", state), _ticked(line, state)) for state in STATES),
            Cell((*FIELD, n, "replace_share"), _share(subject, line)),
        )
    )
