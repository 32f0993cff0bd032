"""The sheets of one side and where they lie."""

import pytest

from hoopwright.cover import Area
from hoopwright.cover.side_pieces import LaidSide, SideCase, lay_side
from hoopwright.farm import Side, Split
from hoopwright.farm.skin import Covering
from hoopwright.survey import survey_frame
from samples import drop_side, layers, side, small_catalogue, tunnel, woven_side

BOTH: tuple[Covering, Covering] = ("one_sheet", "roof_and_sides")
FILMS = {film.key: film for film in small_catalogue().films}


def _laid(first: Side, covering: Covering = "roof_and_sides", inflated: bool = False) -> LaidSide:
    one = tunnel()
    skin = one.skin.but(sides=layers(2))
    case = SideCase(1, first, covering, survey_frame(one.frame), skin, FILMS, inflated)
    return lay_side(case)


def _where(laid: LaidSide, role: str) -> list[Area]:
    return [area for piece in laid.pieces if piece.role == role for area in piece.areas]


def test_curtain_lies_from_the_shut_bar_to_the_hip_with_its_laps() -> None:
    outer, inner = _where(_laid(side()), "curtain")
    assert outer == inner
    assert outer.surface == "side1"
    assert (outer.from_m, outer.to_m) == pytest.approx((1.5 - 0.3048, 22.5 + 0.3048))
    assert (outer.low_m, outer.high_m) == pytest.approx((0.25, 1.5))


def test_pockets_lie_from_the_baseboard_to_the_hip() -> None:
    front, back = _where(_laid(side()), "pocket")
    assert (front.from_m, front.to_m, front.low_m) == pytest.approx((0.0, 1.5, 0.3))
    assert (back.from_m, back.to_m, back.high_m) == pytest.approx((22.5, 24.0, 1.5))


def test_film_past_an_end_bow_does_not_lie_on_the_side() -> None:
    area = _where(_laid(side(pocket_bays=(0, 0))), "curtain")[0]
    assert (area.from_m, area.to_m) == (0.0, 24.0)


def test_each_layer_of_each_curtain_is_a_sheet() -> None:
    laid = _laid(side(splits=(Split(at_m=9.0), Split(at_m=15.0))))
    marks = [p.mark for p in laid.pieces if p.role == "curtain"]
    assert marks == [f"piece/curtain/{x}/1/{n}" for x in ("outer", "inner") for n in range(3)]


def test_height_of_the_side_is_that_of_the_outer_layer() -> None:
    laid = _laid(side(), inflated=True)
    widths = [p.width_m for p in laid.pieces if p.role == "curtain"]
    assert laid.height is not None
    assert laid.height.total_m == widths[0] > widths[1]
    assert laid.curtains[0].cut_height_m == widths[0]
    assert laid.curtains[0].layers == 2


def test_fixed_side_of_two_layers_holds_no_air_of_its_own() -> None:
    outer, inner = _laid(side(kind="fixed"), inflated=True).pieces
    assert (outer.layer, inner.layer) == ("outer", "inner")
    assert outer.width_m == inner.width_m


def test_side_covered_by_the_roof_sheet_has_no_height_of_its_own() -> None:
    laid = _laid(side(splits=(Split(at_m=9.0),)), "one_sheet")
    assert laid.height is None
    assert [p.role for p in laid.pieces] == ["split strip"]
    assert len(laid.curtains) == 2


def test_drop_down_curtain_lies_from_the_baseboard_to_the_hip() -> None:
    (area,) = _where(_laid(drop_side()), "curtain")
    assert (area.from_m, area.to_m) == pytest.approx((1.5 - 0.3048, 22.5 + 0.3048))
    assert (area.low_m, area.high_m) == pytest.approx((0.3, 1.5))


@pytest.mark.parametrize("first", [woven_side(), drop_side()], ids=["woven", "drop_down"])
def test_side_with_its_own_curtains_is_laid_the_same_both_ways(first: Side) -> None:
    split = first.but(splits=(Split(at_m=9.0),), panels=first.panels * 2)
    whole, apart = (_laid(split, covering, inflated=True) for covering in BOTH)
    assert whole == apart
    assert [p.role for p in whole.pieces] == ["curtain", "curtain", "pocket", "pocket"]
    assert {p.layer for p in whole.pieces} == {"single"}
    assert whole.height is not None


def test_film_of_its_own_is_what_the_curtains_are_cut_from() -> None:
    laid = _laid(side(film="inside"))
    assert [(p.role, p.film) for p in laid.pieces] == [
        ("curtain", "inside"),
        ("pocket", "clear"),
        ("pocket", "clear"),
    ]
    assert _laid(side(film="inside"), "one_sheet").height is None
