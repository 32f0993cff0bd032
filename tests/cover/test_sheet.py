"""One sheet of film from its sizes."""

import pytest

from hoopwright.cover.cover import Area
from hoopwright.cover.sheet import Place, cut_piece
from hoopwright.cover.size import add_up
from samples import CLEAR, INSIDE, small_catalogue

FILMS = {film.key: film for film in small_catalogue().films}
AREA = Area("side1", 0.0, 1.5, 0.3, 1.5)
PLACE = Place("split strip", 1, 2, "Split strip 3, East side", (AREA,))
WIDTH = add_up("Up the side.", ("side", 1.2), ("tail", 0.3))
LENGTH = add_up("Along the side.", ("bay", 1.5), ("2 x tail", 0.5))


def test_sheet_carries_its_sizes_and_their_terms() -> None:
    piece = cut_piece(PLACE, ("single", CLEAR), WIDTH, LENGTH, FILMS)
    assert (piece.mark, piece.name) == (
        "piece/split-strip/single/1/2",
        "Split strip 3, East side",
    )
    assert (piece.width_m, piece.length_m) == (1.5, 2.0)
    assert [t.name for t in piece.width_terms] == ["side", "tail"]
    assert [t.name for t in piece.length_terms] == ["bay", "2 x tail"]
    assert piece.areas == (AREA,)


def test_layer_shows_in_name_mark_and_mass() -> None:
    # 3 m2 of 0.15 mm at 920 kg/m3.
    piece = cut_piece(PLACE, ("inner", INSIDE), WIDTH, LENGTH, FILMS)
    assert (piece.mark, piece.name) == (
        "piece/split-strip/inner/1/2",
        "Split strip 3, East side, inner",
    )
    assert piece.mass_kg == pytest.approx(3.0 * 0.00015 * 920)
    assert [t.unit for t in piece.working("mass_kg").inputs] == ["m2", "m_film", "kg/m3"]


def test_sheet_of_no_side_says_so_in_its_mark() -> None:
    roof = Place("roof sheet", None, 0, "Roof sheet", ())
    piece = cut_piece(roof, ("outer", CLEAR), WIDTH, LENGTH, FILMS)
    assert piece.mark == "piece/roof-sheet/outer/-/0"
