"""Paper sizes, shapes that move and lines that are counted."""

import textwrap

import pytest

from hoopwright.papers.form_page import (
    LETTER_MM,
    PAPERS,
    Badge,
    Box,
    Page,
    Stroke,
    Text,
    lines_of,
    moved,
)


def test_a4_is_the_fourth_half_of_a_square_metre() -> None:
    # ISO 216: A0 is 1 m2 with sides as 1 to the root of 2, each next size is the half, whole mm.
    a4 = PAPERS["a4"]
    assert a4.width_mm * a4.height_mm == pytest.approx(1e6 / 2**4, rel=0.003)
    assert a4.height_mm / a4.width_mm == pytest.approx(2**0.5, rel=0.001)


def test_letter_is_eight_and_a_half_by_eleven_inches() -> None:
    letter = PAPERS["letter"]
    assert (letter.width_mm, letter.height_mm) == pytest.approx((8.5 * 25.4, 11 * 25.4))


def test_room_between_the_margins_is_left_for_writing() -> None:
    assert PAPERS["a4"].inner_mm == 190.0


def test_shapes_move_whole() -> None:
    shapes = (
        Text(1, 2, 30, 4, "words"),
        Box(("paper", "date"), 1, 2, 30, 9),
        Stroke(((0, 0), (1, 5))),
        Badge(7, (3, 4)),
    )
    text, box, stroke, badge = moved(shapes, 10, 20)
    assert (text.left, text.top, text.width) == (11, 22, 30)
    assert (box.left, box.top, box.field) == (11, 22, ("paper", "date"))
    assert stroke.points == ((10, 20), (11, 25))
    assert badge == Badge(7, (13, 24))


def test_page_gives_its_boxes_in_order() -> None:
    boxes = tuple(Box(("paper", str(n)), n, 0, 1, 8) for n in range(3))
    page = Page(PAPERS["a4"], (boxes[0], Text(0, 0, 1, 1, ""), boxes[1], boxes[2]))
    assert page.boxes == boxes


@pytest.mark.parametrize("letters", [8, 20, 47, 200])
def test_lines_are_counted_as_another_wrapper_breaks_them(letters: int) -> None:
    words = "A bent, rusty or leaning frame is a question for a qualified engineer. Do not climb."
    broken = textwrap.wrap(words, letters, break_long_words=False, break_on_hyphens=False)
    assert lines_of(words, letters * LETTER_MM + 0.01) == len(broken)
    assert lines_of(f"{words}\n{words}", letters * LETTER_MM + 0.01) == 2 * len(broken)
