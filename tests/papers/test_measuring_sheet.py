"""Whole sheets: everything on the paper, in order, big enough for a pencil in a glove."""

import pytest

from hoopwright.papers.form_page import LEAST_BOX_MM, Box, Page, Stroke, Text
from hoopwright.papers.measuring_head import cautions
from hoopwright.papers.measuring_sheet import measuring_pages
from hoopwright.papers.measuring_subject import MeasuringSubject
from papers.sheets_to_measure import LETTER, blank, bows, every_subject

PRINTABLE_MM = 6.0
"""What a printer leaves at each edge; common practice, no published source."""

SUBJECTS = every_subject()


def named(subject: MeasuringSubject) -> str:
    count = "blank"
    if subject.tunnel is not None:
        count = f"{subject.tunnel.name[:8]}-{subject.tunnel.frame.length_m:.0f}m"
    return f"{subject.paper.name}-{subject.units}-{count}"


@pytest.fixture(params=SUBJECTS, ids=named)
def pages(request: pytest.FixtureRequest) -> tuple[Page, ...]:
    return measuring_pages(request.param)


def test_all_of_it_can_be_printed(pages: tuple[Page, ...]) -> None:
    for page in pages:
        for shape in page.shapes:
            spots: tuple[tuple[float, float], ...]
            if isinstance(shape, Stroke):
                spots = shape.points
            elif isinstance(shape, Box | Text):
                right, bottom = shape.left + shape.width, shape.top + shape.height
                spots = ((shape.left, shape.top), (right, bottom))
            else:
                spots = (shape.centre,)
            for x, y in spots:
                assert PRINTABLE_MM <= x <= page.paper.width_mm - PRINTABLE_MM, shape
                assert PRINTABLE_MM <= y <= page.paper.height_mm - PRINTABLE_MM, shape


def test_boxes_have_room_for_a_pencil_and_lie_beside_each_other(pages: tuple[Page, ...]) -> None:
    for page in pages:
        boxes = page.boxes
        assert all(box.height >= LEAST_BOX_MM and box.width >= LEAST_BOX_MM for box in boxes)
        for n, one in enumerate(boxes):
            for other in boxes[n + 1 :]:
                across = min(one.left + one.width, other.left + other.width)
                across -= max(one.left, other.left)
                down = min(one.top + one.height, other.top + other.height)
                down -= max(one.top, other.top)
                assert across < 1e-6 or down < 1e-6, (one, other)


def test_words_are_large_enough_to_read(pages: tuple[Page, ...]) -> None:
    sizes = {s.size_pt for page in pages for s in page.shapes if isinstance(s, Text)}
    assert min(sizes) >= 10.0


def test_every_box_is_asked_once(pages: tuple[Page, ...]) -> None:
    known = [
        box.field
        for page in pages
        for box in page.boxes
        if box.field[0] != "paper"
        and box.field[:4] != ("frame", "tape", "bows", 0)
        and box.field != ("frame", "bows", "positions_m", 0)
    ]
    assert len(known) == len(set(known))


def test_parts_follow_each_other_as_in_the_window(pages: tuple[Page, ...]) -> None:
    parts = [
        box.field[:2] if box.field[0] == "frame" else box.field[:1]
        for page in pages
        for box in page.boxes
        if box.field[0] != "paper"
    ]
    firsts = [part for part in dict.fromkeys(parts) if part != ("frame", "bows")]
    assert firsts == [("frame", "tape"), ("frame", "profile"), ("ends",), ("condition",)]


def test_five_bows_the_drawing_and_the_cautions_share_the_first_page(
    pages: tuple[Page, ...],
) -> None:
    first = pages[0]
    words = {shape.words for shape in first.shapes if isinstance(shape, Text)}
    assert {caution.text for caution in cautions()} <= words
    assert "top of hip board" in words
    rows = {box.field[3] for box in first.boxes if box.field[:3] == ("frame", "tape", "bows")}
    girths = [box for box in first.boxes if box.field[-1] == "over_hips_m"]
    assert len(girths) == (5 if rows == {0} else len(rows))
    assert len(girths) in (2, 5)


def test_hundred_bows_go_on_over_pages_with_the_head_said_again() -> None:
    pages = measuring_pages(bows(100, LETTER, "imperial"))
    with_rows = [p for p in pages if any(b.field[-1] == "dip_m" for b in p.boxes)]
    assert len(with_rows) > 3
    for page in with_rows:
        assert "over\nhips" in {s.words for s in page.shapes if isinstance(s, Text)}


def test_blank_sheet_knows_nothing() -> None:
    assert not [box for page in measuring_pages(blank()) for box in page.boxes if box.entered]
