"""The end walls on the measuring sheet: doors, vents and fans, rails."""

from hoopwright.farm import Cut, Door, End
from hoopwright.papers.form_flow import Block, Table
from hoopwright.papers.form_page import Badge, Box, FieldPath, Shape, Spot, Stroke, Text
from hoopwright.papers.measuring_drawing import centred
from hoopwright.papers.measuring_grid import ROW_MM, Cell, Column, Row, grid
from hoopwright.papers.measuring_head import heading_block, text_block
from hoopwright.papers.measuring_subject import MeasuringSubject

DOOR_ROWS, CUT_ROWS, RAIL_BOXES = 4, 6, 5
DOOR_FIELDS = ("left_m", "width_m", "height_m")
CUT_FIELDS = ("left_m", "sill_m", "width_m", "height_m")
KINDS = ("vent", "fan")
FIRST_NUMBER = 20
"""Number of the left edge of a door; the others follow in the order of the boxes."""
RAIL_NUMBER = FIRST_NUMBER + len(DOOR_FIELDS) + len(CUT_FIELDS)
DRAWING_MM = 46.0


def ends_parts(subject: MeasuringSubject) -> tuple[Block | Table, ...]:
    """Return the drawing of an end wall and the boxes of both ends."""
    words = (
        "Seen from outside. Left edges from the middle of the wall: to the left of it with a "
        "minus. Heights from the ground line."
    )
    return tuple(
        part
        for number in (0, 1)
        for part in (
            heading_block(f"End wall, {subject.end_name(number)}", begins_page=True),
            text_block(words, subject.inner_mm, 0.0),
            Block(DRAWING_MM, centred(_end_drawing(), subject.inner_mm)),
            *_end(subject, number),
        )
    )


def _end(subject: MeasuringSubject, number: int) -> tuple[Block | Table, ...]:
    end = None if subject.tunnel is None else subject.tunnel.ends[number]
    field: FieldPath = ("ends", number)
    doors = () if end is None else end.doors
    cuts = () if end is None else end.cuts
    return (
        _doors(subject, field, doors),
        Block(3.0),
        _cuts(subject, field, cuts),
        Block(3.0),
        *_rails(subject, field, end),
    )


def _doors(subject: MeasuringSubject, field: FieldPath, doors: tuple[Door, ...]) -> Table:
    unit = subject.long_unit
    words = ("left edge", "width", "height")
    columns = (
        Column("door", 30),
        *(Column(text, 53, FIRST_NUMBER + n, unit) for n, text in enumerate(words)),
    )
    rows = []
    for n in range(max(DOOR_ROWS, len(doors) + 1)):
        known = [
            subject.size(getattr(doors[n], name)) if n < len(doors) else "" for name in DOOR_FIELDS
        ]
        cells = (
            Cell((*field, "doors", n, name), text)
            for name, text in zip(DOOR_FIELDS, known, strict=True)
        )
        rows.append(Row((Cell((), str(n + 1)), *cells)))
    return grid(subject.inner_mm, columns, rows)


def _cuts(subject: MeasuringSubject, field: FieldPath, cuts: tuple[Cut, ...]) -> Table:
    unit, first = subject.long_unit, FIRST_NUMBER + len(DOOR_FIELDS)
    words = ("left edge", "sill", "width", "height")
    columns = (
        *(Column(kind, 15) for kind in KINDS),
        *(Column(text, 39.75, first + n, unit) for n, text in enumerate(words)),
    )
    rows = []
    for n in range(max(CUT_ROWS, len(cuts) + 1)):
        cut = cuts[n] if n < len(cuts) else None
        ticks = (
            Cell((*field, "cuts", n, "kind", kind), "x" if cut and cut.kind == kind else "")
            for kind in KINDS
        )
        cells = (
            Cell((*field, "cuts", n, name), "" if cut is None else subject.size(getattr(cut, name)))
            for name in CUT_FIELDS
        )
        rows.append(Row((*ticks, *cells)))
    return grid(subject.inner_mm, columns, rows)


def _rails(subject: MeasuringSubject, field: FieldPath, end: End | None) -> tuple[Block, ...]:
    rails = () if end is None else end.rails_m
    count = max(RAIL_BOXES, len(rails) + 1)
    lines = -(-count // RAIL_BOXES)
    label_mm = 48.0
    width = (subject.inner_mm - label_mm) / RAIL_BOXES
    blocks = []
    for line in range(lines):
        shapes: list[Shape] = []
        if line == 0:
            shapes.append(Badge(RAIL_NUMBER, (3, ROW_MM / 2)))
            words = f"rails, from below, {subject.long_unit}"
            shapes.append(Text(6.5, 0, label_mm - 7, ROW_MM, words))
        for place in range(RAIL_BOXES):
            n = line * RAIL_BOXES + place
            known = subject.size(rails[n]) if n < len(rails) else ""
            left = label_mm + place * width
            shapes.append(Box((*field, "rails_m", n), left, 0, width, ROW_MM, known))
        blocks.append(Block(ROW_MM, tuple(shapes)))
    return tuple(blocks)


def _end_drawing() -> tuple[Shape, ...]:
    """Return an end wall with one door, one vent and one rail, 190 mm wide, not to scale."""
    middle, ground, rail = 95.0, 42.0, 17.0
    wall = ((58.0, ground), (58.0, 24.0), (66.0, 12.0), (80.0, 4.5), (95.0, 2.0))
    mirrored = tuple((2 * middle - x, y) for x, y in reversed(wall[:-1]))
    door, vent = (74.0, 89.0, 22.0), (108.0, 120.0, 27.0, 20.5)
    first = FIRST_NUMBER
    return (
        Stroke(((40, ground), (150, ground)), 0.5),
        Stroke((*wall, *mirrored), 1.0, "grey"),
        Stroke(((middle, 1), (middle, ground + 2)), 0.2, "grey", dashed=True),
        Stroke(((62.5, rail), (127.5, rail)), 0.7),
        Stroke(_rectangle(door[0], door[2], door[1], ground), 0.5),
        Stroke(_rectangle(vent[0], vent[3], vent[1], vent[2]), 0.5),
        *_measured((door[0], 32.0), (middle, 32.0), first, (81.5, 36.0)),
        *_measured((door[0], 19.5), (door[1], 19.5), first + 1, (81.5, 25.3)),
        *_measured((70.5, ground), (70.5, door[2]), first + 2, (66.5, 32.0)),
        *_measured((middle, 31.5), (vent[0], 31.5), first + 3, (101.5, 35.0)),
        *_measured((112.0, ground), (112.0, vent[2]), first + 4, (115.8, 36.5)),
        *_measured((vent[0], 11.5), (vent[1], 11.5), first + 5, (114.0, 8.3)),
        *_measured((122.5, vent[2]), (122.5, vent[3]), first + 6, (127.5, 25.0)),
        *_measured((140.0, ground), (140.0, rail), RAIL_NUMBER, (144.5, 30.0)),
        Stroke(((128.5, rail), (141.5, rail)), 0.2),
        Text(12, 36.5, 28, 4.4, "ground line", align="right"),
        Text(96.5, 5.2, 20, 4.4, "middle"),
    )


def _rectangle(left: float, top: float, right: float, bottom: float) -> tuple[Spot, ...]:
    return ((left, top), (right, top), (right, bottom), (left, bottom), (left, top))


def _measured(start: Spot, end: Spot, number: int, badge: Spot) -> tuple[Shape, ...]:
    return (Stroke((start, end), head="both"), Badge(number, badge))
