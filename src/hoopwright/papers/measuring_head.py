"""What stands around the boxes of a measuring sheet: title, who and when, the way, cautions."""

from collections.abc import Sequence

from hoopwright.farm.change_tape import LEAST_BOWS
from hoopwright.papers.cautions import CAUTIONS, Caution
from hoopwright.papers.form_flow import Block
from hoopwright.papers.form_page import LEAST_BOX_MM, LINE_MM, Box, Shape, Stroke, Text, lines_of
from hoopwright.papers.measuring_drawing import HEIGHT_MM, centred, frame_drawing
from hoopwright.papers.measuring_subject import MeasuringSubject, shortened

CAUTION_IDS = ("wind", "ladder", "power_line", "frame", "law")
"""What can hurt whoever measures, in this order at the foot of the first page."""
TITLE = "Measuring sheet"
TITLE_MM = 51.0
BOX_MM = 9.0
ROOM_MM = 45.0
"""Room under a heading for the first boxes it stands over."""
CAUTION_TITLE_MM = 37.0
NAME_LETTERS = 21


def title_line(subject: MeasuringSubject, number: int, count: int) -> Sequence[Shape]:
    """Return the title of one page of so many."""
    width = subject.inner_mm
    return (
        Text(0, 0, TITLE_MM, 7, TITLE, size_pt=14, bold=True),
        *_named(subject, width - TITLE_MM - 28),
        Text(width - 28, 0, 28, 7, f"page {number} of {count}", align="right"),
        Stroke(((0, 7.8), (width, 7.8)), 0.4),
    )


def _named(subject: MeasuringSubject, width: float) -> tuple[Shape, ...]:
    """Return the names of tunnel and farm, or the box for them, which every loose page needs."""
    if subject.tunnel is None:
        words = Text(TITLE_MM, 0, 26, 7, "Farm, tunnel")
        field = ("paper", "tunnel")
        return words, Box(field, TITLE_MM + 27, -0.8, width - 30, LEAST_BOX_MM)
    names = (subject.tunnel.name, subject.farm_name)
    named = ", ".join(shortened(name, NAME_LETTERS) for name in names)
    return (Text(TITLE_MM, 0, width, 7, named, bold=True),)


def who_block() -> Block:
    """Return the boxes for day, people and weather."""
    shapes: list[Shape] = []
    top = 0.0
    for words, label_mm, name, left, width in (
        ("Date", 10, "date", 0.0, 38.0),
        ("Measured by", 25, "measured_by", 40.0, 66.0),
        ("Weather", 16, "weather", 108.0, 48.0),
    ):
        shapes += _labelled(words, label_mm, ("paper", name), left, width, top)
    shapes.append(Box(("paper", "blower_off"), 158, top, BOX_MM, BOX_MM))
    shapes.append(Text(158 + BOX_MM + 1.5, top, 22, BOX_MM, "blower off"))
    return Block(top + BOX_MM + 2, tuple(shapes))


def _labelled(
    words: str, label_mm: float, field: tuple[str, ...], left: float, width: float, top: float
) -> tuple[Shape, ...]:
    return (
        Text(left, top, label_mm, BOX_MM, words),
        Box(field, left + label_mm, top, width - label_mm, BOX_MM),
    )


def drawing_block(subject: MeasuringSubject) -> Block:
    """Return the drawing of the whole frame."""
    return Block(HEIGHT_MM, centred(frame_drawing(), subject.inner_mm))


def way_block(subject: MeasuringSubject) -> Block:
    """Return how it is measured and written."""
    bows = "Heavy frames: measure these bows at least. Small print in a box: entered so far."
    if subject.tunnel is None:
        bows = f"Measure {LEAST_BOWS} bows at least: both ends, the others spread between."
    written = "5' 6 1/2\" or 5-6-1/2" if subject.units == "imperial" else "1.684"
    words = (
        f"Write {written}. Along the tunnel: tube middle to tube middle, all from bow 1. Heights: "
        "from one level line at the ground of bow 1; below it, and a ridge above the string, with "
        f"a minus. n bows make n \u2212 1 bays. {bows}"
    )
    return text_block(words, subject.inner_mm)


def text_block(words: str, width_mm: float, after_mm: float = 1.5) -> Block:
    """Return a paragraph over the whole width."""
    height = lines_of(words, width_mm) * LINE_MM
    return Block(height + after_mm, (Text(0, 0, width_mm, height, words, raised=True),))


def heading_block(words: str, begins_page: bool = False) -> Block:
    """Return the heading of a part of the sheet."""
    text = Text(0, 2, 190, 6, words, size_pt=12, bold=True)
    return Block(9.5, (text,), begins_page, ROOM_MM)


def caution_block(subject: MeasuringSubject) -> Block:
    """Return the cautions of the foot of the first page."""
    width = subject.inner_mm - CAUTION_TITLE_MM
    shapes: list[Shape] = [Stroke(((0, 1), (subject.inner_mm, 1)), 0.4)]
    top = 2.0
    for caution in cautions():
        height = lines_of(caution.text, width) * LINE_MM
        title_mm = CAUTION_TITLE_MM - 1
        shapes += [
            Text(0, top, title_mm, LINE_MM, caution.title, bold=True, raised=True),
            Text(CAUTION_TITLE_MM, top, width, height, caution.text, raised=True),
        ]
        top += height + 0.4
    return Block(top, tuple(shapes))


def cautions() -> tuple[Caution, ...]:
    """Return the cautions for whoever measures."""
    by_id = {caution.id: caution for caution in CAUTIONS}
    return tuple(by_id[name] for name in CAUTION_IDS)
