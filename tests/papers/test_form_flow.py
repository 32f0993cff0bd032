"""Blocks and tables follow each other down the pages and nothing is lost or torn apart."""

import pytest

from hoopwright.papers.form_flow import HEAD_MM, Block, Table, fill_pages, stacked
from hoopwright.papers.form_page import MARGIN_MM, PAPERS, Page, Text

A4 = PAPERS["a4"]
ROOM_MM = A4.height_mm - 2 * MARGIN_MM - HEAD_MM


def block(words: str, height_mm: float = 10.0, **others: object) -> Block:
    return Block(height_mm, (Text(0, 0, 50, height_mm, words),), **others)


def titled(number: int, count: int) -> tuple[Text]:
    return (Text(0, 0, 50, 5, f"{number} of {count}"),)


def filled(*parts: Block | Table, foot: Block | None = None) -> tuple[Page, ...]:
    return fill_pages(parts, A4, titled, foot or Block(0.0))


def words_on(page: Page) -> list[str]:
    return [shape.words for shape in page.shapes if isinstance(shape, Text)]


def test_blocks_stand_below_each_other_between_the_margins() -> None:
    (page,) = filled(block("one"), block("two", 7.0), block("three"))
    tops = [s.top for s in page.shapes]
    start = MARGIN_MM + HEAD_MM
    assert tops == [MARGIN_MM, start, start + 10, start + 17]
    assert {s.left for s in page.shapes} == {MARGIN_MM}


def test_every_page_says_which_of_how_many_it_is() -> None:
    pages = filled(*(block(str(n), 100.0) for n in range(5)))
    # 267 mm have room for two blocks of 100 mm.
    assert [words_on(p) for p in pages] == [
        ["1 of 3", "0", "1"],
        ["2 of 3", "2", "3"],
        ["3 of 3", "4"],
    ]


def test_foot_of_the_first_page_takes_its_room() -> None:
    foot = block("careful", 50.0)
    pages = filled(block("a", ROOM_MM - 50.0), block("b", 50.0), foot=foot)
    assert [words_on(p) for p in pages] == [["1 of 2", "a", "careful"], ["2 of 2", "b"]]
    (last,) = (s for s in pages[0].shapes if s.words == "careful")
    assert last.top + 50.0 == pytest.approx(A4.height_mm - MARGIN_MM)


def test_head_of_a_table_is_said_again_on_each_page() -> None:
    rows = tuple(block(f"r{n}", 100.0) for n in range(4))
    pages = filled(block("first", 30.0), Table(block("head", 20.0), rows))
    assert [words_on(p)[1:] for p in pages] == [
        ["first", "head", "r0", "r1"],
        ["head", "r2", "r3"],
    ]


def test_head_never_stands_without_a_row() -> None:
    rows = (block("r0", 20.0), block("r1", 20.0))
    pages = filled(block("first", ROOM_MM - 30.0), Table(block("head", 20.0), rows))
    assert [words_on(p)[1:] for p in pages] == [["first"], ["head", "r0", "r1"]]


def test_heading_goes_with_what_it_stands_over() -> None:
    pages = filled(block("a", ROOM_MM - 30.0), block("heading", room_mm=40.0), block("b"))
    assert [words_on(p)[1:] for p in pages] == [["a"], ["heading", "b"]]


def test_block_may_begin_a_page_but_leaves_none_empty() -> None:
    pages = filled(block("a", begins_page=True), block("b", begins_page=True))
    assert [words_on(p)[1:] for p in pages] == [["a"], ["b"]]


def test_stacked_blocks_are_as_high_as_all_of_them() -> None:
    whole = stacked((block("a", 10.0), block("b", 5.0)))
    assert whole.height_mm == 15.0
    assert [s.top for s in whole.shapes] == [0.0, 10.0]


def test_block_higher_than_a_page_is_refused() -> None:
    with pytest.raises(ValueError, match="higher than a page"):
        filled(block("a", ROOM_MM + 1.0))
