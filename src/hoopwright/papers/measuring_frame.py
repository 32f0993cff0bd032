"""Lengths, diagonals and end bows of the frame, then the points measured on one bow."""

from hoopwright.farm import AcrossUp, MeasuredBow, Tape, TwoTapes
from hoopwright.papers.form_flow import Block, Table, stacked
from hoopwright.papers.form_page import (
    LINE_MM,
    Badge,
    Box,
    FieldPath,
    Shape,
    Stroke,
    Text,
)
from hoopwright.papers.measuring_drawing import centred
from hoopwright.papers.measuring_grid import ROW_MM, Cell, Column, Row, grid
from hoopwright.papers.measuring_head import heading_block, text_block
from hoopwright.papers.measuring_subject import MeasuringSubject

TAPE: FieldPath = ("frame", "tape")
PROFILE: FieldPath = ("frame", "profile")
PAIR_MM = 11.0
LABEL_MM, SIDE_MM = 62.0, 32.0
POINT_ROWS = 13
SPARE_POINTS = 3
PAIRS: tuple[tuple[str, str, int, tuple[str, str]], ...] = (
    ("Length along the hip boards", "hip_lengths_m", 12, ("first side", "second side")),
    ("Length along the baseboards", "base_lengths_m", 14, ("first side", "second side")),
    (
        "Diagonal at the ground, corner to corner",
        "diagonals_m",
        16,
        ("front first,\nback second", "front second,\nback first"),
    ),
    (
        "End bow out of plumb at the ridge; leaning in: minus",
        "leans_m",
        18,
        ("front end", "back end"),
    ),
)


def frame_block(subject: MeasuringSubject) -> Block:
    """Return the boxes of lengths, diagonals and end bows."""
    tape = Tape() if subject.tunnel is None else subject.tunnel.frame.tape
    rows = (
        _pair(subject, words, (*TAPE, name), number, sides, getattr(tape, name))
        for words, name, number, sides in PAIRS
    )
    heading = heading_block(f"The whole frame, in {subject.long_unit}")
    return stacked((heading, *rows, _error(subject, tape)))


def _pair(
    subject: MeasuringSubject,
    words: str,
    field: FieldPath,
    number: int,
    sides: tuple[str, str],
    known: tuple[float | None, float | None],
) -> Block:
    each = (subject.inner_mm - LABEL_MM) / 2
    top = (PAIR_MM - ROW_MM) / 2
    shapes: list[Shape] = [Text(0, 0, LABEL_MM - 1, PAIR_MM, words)]
    for n, side in enumerate(sides):
        left = LABEL_MM + n * each
        shapes.append(Badge(number + n, (left + 3, PAIR_MM / 2)))
        shapes.append(Text(left + 6.5, top, 25.5, ROW_MM, side))
        width = each - SIDE_MM
        entered = subject.size(known[n])
        shapes.append(Box((*field, n), left + SIDE_MM, top, width - 1, ROW_MM, entered))
    return Block(PAIR_MM, tuple(shapes))


def _error(subject: MeasuringSubject, tape: Tape) -> Block:
    words = f"A reading may be wrong by, either way, {subject.thin_unit}"
    known = subject.thin(tape.error_m) if subject.tunnel is not None else ""
    left = LABEL_MM + SIDE_MM
    width = (subject.inner_mm - LABEL_MM) / 2 - SIDE_MM - 1
    box = Box((*TAPE, "error_m"), left, 0, width, ROW_MM, known)
    return Block(PAIR_MM, (Text(0, 0, left - 2, ROW_MM, words), box))


def points_parts(subject: MeasuringSubject) -> tuple[Block | Table, ...]:
    """Return the boxes of the points measured on one bow."""
    bow = _measured(subject)
    words = (
        "Only where no closed shape fits the bow. All to the middle of the tube, from the foot of "
        "the first side over the ridge to the second. Take each point with a tape across and a "
        "tape up, or with two tapes from the two feet; at least three points, best at every bend."
    )
    return (
        heading_block("Measured points of a bow", begins_page=True),
        text_block(words, subject.inner_mm),
        Block(44.0, centred(_points_drawing(), subject.inner_mm)),
        _span(subject, bow),
        grid(subject.inner_mm, _point_columns(subject), _point_rows(subject, bow)),
    )


def _measured(subject: MeasuringSubject) -> MeasuredBow | None:
    profile = None if subject.tunnel is None else subject.tunnel.frame.profile
    return profile if isinstance(profile, MeasuredBow) else None


def _span(subject: MeasuringSubject, bow: MeasuredBow | None) -> Block:
    span = "" if bow is None else subject.size(bow.span_m)
    joins = (("corners", "straight"), ("curve", "smooth curve"))
    shapes: list[Shape] = [
        Text(0, 0, 16, ROW_MM, "Bow no."),
        Box(("paper", "bow"), 16, 0, 18, ROW_MM),
        Text(38, 0, 22, ROW_MM, f"Span S,\n{subject.long_unit}"),
        Box((*PROFILE, "span_m"), 55, 0, 36, ROW_MM, span),
        Text(96, 0, 25, ROW_MM, "Between the\npoints"),
    ]
    left = 122.0
    for join, words in joins:
        known = "x" if bow is not None and bow.join == join else ""
        shapes.append(Box((*PROFILE, "join", join), left, 0, ROW_MM, ROW_MM, known))
        shapes.append(Text(left + ROW_MM + 1.5, 0, 26, ROW_MM, words))
        left += 31.0
    return Block(ROW_MM + 3, tuple(shapes))


def _point_columns(subject: MeasuringSubject) -> tuple[Column, ...]:
    unit = subject.long_unit
    return (
        Column("point", 14),
        Column("A: across from\nthe first foot", 44, unit=unit, group="across and up"),
        Column("B: height above\nthe ground line", 44, unit=unit, group="across and up"),
        Column("C: from the\nfirst foot", 44, unit=unit, group="or two tapes"),
        Column("D: from the\nsecond foot", 44, unit=unit, group="or two tapes"),
    )


def _point_rows(subject: MeasuringSubject, bow: MeasuredBow | None) -> tuple[Row, ...]:
    points = () if bow is None else bow.points
    count = max(POINT_ROWS, len(points) + SPARE_POINTS)
    padded = (*points, *(None,) * (count - len(points)))
    return tuple(_point(subject, n, point) for n, point in enumerate(padded))


def _point(subject: MeasuringSubject, n: int, point: AcrossUp | TwoTapes | None) -> Row:
    known = dict.fromkeys(("across_m", "up_m", "first_m", "second_m"), "")
    for name in known:
        known[name] = subject.size(getattr(point, name, None))
    fields = (Cell((*PROFILE, "points", n, name), text) for name, text in known.items())
    return Row((Cell((), str(n + 1)), *fields))


def _points_drawing() -> tuple[Shape, ...]:
    """Return two bows of one measured point each, 190 mm wide, not to scale."""
    return (*_bow_with_point(45.0, False), *_bow_with_point(140.0, True))


def _bow_with_point(middle: float, two_tapes: bool) -> tuple[Shape, ...]:
    half, ground = 34.0, 33.0
    spots = (
        (-half, ground),
        (-half, 24.0),
        (-29.0, 13.0),
        (-18.0, 5.5),
        (0.0, 2.0),
        (17.0, 7.0),
        (28.0, 14.0),
        (half, 25.0),
        (half, ground),
    )
    outline = tuple((middle + x, y) for x, y in spots)
    first, second, point = outline[0], outline[-1], outline[3]
    shapes: list[Shape] = [
        Stroke(((first[0] - 8, ground), (second[0] + 8, ground)), 0.4),
        Stroke(outline, 1.0, "grey"),
        Stroke((_aside(first, 0, 5.5), _aside(second, 0, 5.5)), head="both"),
        Text(middle - 10, ground + 5.7, 20, LINE_MM, "S", align="centre"),
        *(_dot(spot) for spot in outline[1:-1]),
    ]
    if two_tapes:
        shapes += [Stroke((first, point), head="both"), Stroke((second, point), head="both")]
        shapes += [_letter("C", middle - 21.5, 19.0), _letter("D", middle + 13.0, 19.0)]
    else:
        across = (point[0], 27.0)
        shapes += [Stroke(((first[0], 27.0), across), head="both")]
        shapes += [Stroke(((point[0], ground), point), head="both")]
        shapes += [_letter("A", middle - 27.0, 22.0), _letter("B", middle - 14.0, 16.0)]
    return tuple(shapes)


def _aside(spot: tuple[float, float], right: float, down: float) -> tuple[float, float]:
    return spot[0] + right, spot[1] + down


def _dot(spot: tuple[float, float]) -> Stroke:
    x, y = spot
    return Stroke(((x - 1, y), (x, y - 1), (x + 1, y), (x, y + 1)), filled=True)


def _letter(letter: str, x: float, y: float) -> Text:
    return Text(x - 3, y - LINE_MM / 2, 6, LINE_MM, letter, bold=True, align="centre")
