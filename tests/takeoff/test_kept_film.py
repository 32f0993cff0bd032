"""Which sheets stay. The tunnel has 17 bows, 1.5 m apart; it opens between bows 2 and 16."""

import pytest

from hoopwright.farm import PartState, Tunnel
from hoopwright.farm.skin import Covering
from hoopwright.takeoff import Sheets, keep_film, mend_film
from samples import double_tunnel, tunnel, with_double_ends
from takeoff.counted import site

FILM = PartState(family="Film", state="keep")


def sheets(
    *lines: PartState, of: Tunnel | None = None, covering: Covering = "roof_and_sides"
) -> Sheets:
    laid = site(of or tunnel(), covering)
    return keep_film(laid.cover, lines, laid.survey, laid.skin.allowances)


def stays(found: Sheets) -> list[str]:
    return [one.piece.mark for one in found.kept]


ROOF = "piece/roof-sheet/single/-/0"
CURTAIN = "piece/curtain/single/0/0"


def test_without_lines_about_film_every_sheet_is_cut() -> None:
    laid = site(tunnel())
    for lines in ((), (PartState(family="Boards", state="keep"),)):
        found = keep_film(laid.cover, lines, laid.survey, laid.skin.allowances)
        assert found == Sheets(ordered=laid.cover.pieces)


def test_lines_keep_the_sheets_of_their_part_of_the_tunnel() -> None:
    assert stays(sheets(FILM.but(where="roof"))) == [ROOF]
    assert stays(sheets(FILM.but(where="back_end"))) == ["piece/end-wall/single/-/1"]
    assert stays(sheets(FILM.but(where="first_side"))) == [
        CURTAIN,
        "piece/pocket/single/0/0",
        "piece/pocket/single/0/1",
    ]
    found = sheets(FILM)
    assert (found.ordered, found.in_part) == ((), ())


def test_kept_and_cut_sheets_are_all_the_sheets() -> None:
    found = sheets(FILM.but(where="first_side"), FILM.but(where="roof", state="replace"))
    laid = site(tunnel()).cover
    both = {p.mark for p in found.ordered} | set(stays(found))
    assert both == {p.mark for p in laid.pieces}
    assert len(found.ordered) + len(found.kept) == len(laid.pieces)


def test_laps_of_a_curtain_are_not_asked_for() -> None:
    # The curtain hangs between bows 2 and 16 and laps over both pockets by a foot.
    first = FILM.but(where="first_side")
    assert stays(sheets(first.but(from_bow=2, to_bow=16))) == [CURTAIN]


def test_sheet_kept_in_part_is_cut_and_named() -> None:
    # Bows 3 to 16 are 3 m to 22.5 m: 19.5 m of the 21 m of the opening.
    found = sheets(FILM.but(where="first_side", from_bow=3, to_bow=16))
    assert stays(found) == []
    assert len(found.ordered) == len(site(tunnel()).cover.pieces)
    (one,) = found.in_part
    assert one.piece.mark == CURTAIN
    assert one.share == pytest.approx(19.5 / 21)


def test_one_sheet_over_roof_and_sides_needs_a_line_about_each() -> None:
    # The roof alone is one of the three parts that the sheet covers.
    found = sheets(FILM.but(where="roof"), covering="one_sheet")
    assert [one.share for one in found.in_part] == [pytest.approx(1 / 3)]
    assert stays(found) == []
    three = (FILM.but(where=where) for where in ("roof", "first_side", "second_side"))
    assert stays(sheets(*three, covering="one_sheet")) == ["piece/whole-sheet/single/-/0"]


def test_two_sheets_stay_apart_at_a_cross_seam() -> None:
    plain = tunnel()
    seamed = plain.but(skin=plain.skin.but(cross_seams_m=(12.0,)))
    found = sheets(FILM.but(where="roof", to_bow=9), of=seamed)
    assert (stays(found), found.in_part) == ([ROOF], ())


def test_repair_keeps_the_sheet_and_takes_tape_on_both_faces() -> None:
    # A quarter of the length of the sheet, taped twice: half its length.
    found = sheets(FILM.but(where="roof", state="repair", replace_share=0.25))
    (one,) = found.kept
    assert (one.state, one.repair_share) == ("repair", 0.25)
    assert one.tape_m == pytest.approx(one.piece.length_m / 2)
    (tape,) = mend_film(found)
    assert (tape.part, tape.quantity, tape.marks) == ("repair_tape", one.tape_m, (ROOF,))


def test_kept_sheet_takes_no_tape() -> None:
    assert mend_film(sheets(FILM)) == ()


def test_repair_that_replaces_all_is_new_film() -> None:
    found = sheets(FILM.but(state="repair", replace_share=1.0))
    assert (found.kept, found.in_part) == ((), ())


def test_sheet_that_is_kept_here_and_repaired_there_stays() -> None:
    # From bow 9 on, half of the length, two tenths are repaired: a tenth of the sheet.
    roof = FILM.but(where="roof")
    found = sheets(roof, roof.but(from_bow=9, state="repair", replace_share=0.2))
    (one,) = found.kept
    assert (one.state, one.repair_share) == ("repair", pytest.approx(0.1))


def test_places_whose_film_stays_keep_their_seals() -> None:
    # The second side is split with a strip from 9 m to 10.5 m: its curtains end at bow 7 and
    # start at bow 8.
    double = with_double_ends(double_tunnel())
    found = sheets(FILM.but(where="second_side", to_bow=7), FILM.but(where="front_end"), of=double)
    assert found.old_places == {"side/1/panel/0", "end/0"}
    assert sheets(FILM.but(where="roof"), of=double).old_places == set()


def test_curtain_in_one_sheet_keeps_its_seals_with_the_whole_sheet() -> None:
    found = sheets(FILM, of=double_tunnel(), covering="one_sheet")
    assert {"side/0/panel/0", "side/0/panel/1"} <= found.old_places
    assert sheets(FILM.but(where="roof"), covering="one_sheet").old_places == set()
