"""Title, day and weather, the way of measuring, and the cautions at the foot."""

import pytest

from hoopwright.papers.cautions import CAUTIONS
from hoopwright.papers.form_page import Box, Text
from hoopwright.papers.measuring_head import (
    caution_block,
    cautions,
    drawing_block,
    heading_block,
    title_line,
    way_block,
    who_block,
)
from papers.sheets_to_measure import blank, bows, measured


def words_of(shapes: object) -> list[str]:
    return [shape.words for shape in shapes if isinstance(shape, Text)]


def test_cautions_of_measuring_stand_word_for_word() -> None:
    said = {c.id for c in cautions()}
    assert {"ladder", "wind", "power_line", "law"} <= said
    words = words_of(caution_block(measured()).shapes)
    for caution in CAUTIONS:
        assert (caution.text in words) == (caution.id in said)
        assert (caution.title in words) == (caution.id in said)


def test_title_names_tunnel_farm_and_page() -> None:
    subject = measured()
    assert subject.tunnel is not None
    words = words_of(title_line(subject, 2, 7))
    assert words == [
        "Measuring sheet",
        f"{subject.tunnel.name}, {subject.farm_name}",
        "page 2 of 7",
    ]


def test_day_people_weather_and_blower_are_asked_for() -> None:
    fields = [shape.field for shape in who_block().shapes if isinstance(shape, Box)]
    assert fields == [("paper", n) for n in ("date", "measured_by", "weather", "blower_off")]


def test_every_page_of_a_blank_sheet_asks_for_the_tunnel() -> None:
    shapes = title_line(blank(), 3, 7)
    assert [shape.field for shape in shapes if isinstance(shape, Box)] == [("paper", "tunnel")]
    assert words_of(shapes)[-1] == "page 3 of 7"


@pytest.mark.parametrize(("units", "example"), [("imperial", "5-6-1/2"), ("metric", "1.684")])
def test_way_shows_how_to_write_and_where_zero_is(units: str, example: str) -> None:
    (words,) = words_of(way_block(bows(5, units=units)).shapes)
    assert example in words
    assert "tube middle to tube middle" in words
    assert "one level line" in words
    assert "n bows make n − 1 bays" in words


def test_way_says_which_bows_to_measure() -> None:
    (known,) = words_of(way_block(bows(30)).shapes)
    assert "Heavy frames: measure these bows at least." in known
    (unknown,) = words_of(way_block(blank()).shapes)
    assert "Measure 5 bows at least: both ends" in unknown
    assert "Heavy frames" not in unknown


def test_drawing_says_that_the_line_goes_over_the_outside() -> None:
    words = " ".join(words_of(drawing_block(measured()).shapes)).replace("\n", " ")
    assert "over the outside of the bow, fixing to fixing" in words


def test_heading_keeps_room_for_what_it_stands_over() -> None:
    assert heading_block("Notes").room_mm > 0
    assert heading_block("Notes", begins_page=True).begins_page
