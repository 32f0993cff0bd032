"""Every check of what stays: found, told, mended, and silent where all is well.

The tunnel has 17 bows, 1.5 m apart, and opens between bows 2 and 16.
"""

import pytest

from checks.looked import assert_mended, assert_told, found
from hoopwright.farm import Farm, PartState
from hoopwright.plan import plan
from hoopwright.quantity.working import words
from samples import small_farm, tunnel
from takeoff.counted import whole_catalogue

FILM = PartState(family="Film", state="keep")
FIXING = PartState(family="Film fixing", state="keep")
BOARDS = PartState(family="Boards", state="keep")
CODES = (
    "condition.film_in_part",
    "condition.film_off_channel",
    "condition.channel_on_new_board",
    "condition.nothing_there",
)


def keeping(*lines: PartState) -> Farm:
    """Return a farm with all parts in its catalogue, whose tunnel keeps something."""
    return small_farm().but(tunnels=(tunnel().but(condition=lines),), catalogue=whole_catalogue())


def codes(farm: Farm) -> set[str]:
    return {f.code for f in plan(farm).findings if f.code in CODES}


def test_nothing_is_found_where_all_is_new_or_all_stays() -> None:
    assert codes(keeping()) == set()
    assert codes(keeping(FILM, FIXING, BOARDS)) == set()
    assert codes(keeping(*(line.but(state="replace") for line in (FILM, FIXING, BOARDS)))) == set()


def test_film_kept_in_part() -> None:
    farm = keeping(FIXING, BOARDS, FILM.but(where="first_side", from_bow=3, to_bow=16))
    findings = found(farm, "condition.film_in_part")
    assert_told(findings, "caution")
    assert [f.where for f in findings] == ["piece/curtain/single/0/0"]
    # 3 m to 22.5 m of an opening from 1.5 m: 19.5 / 21 = 92.9 %.
    assert "92.86%" in words(findings[0].what, "metric")
    assert_mended(farm, "condition.film_in_part")


def test_film_kept_from_end_to_end_of_a_sheet_is_not_kept_in_part() -> None:
    farm = keeping(FIXING, BOARDS, FILM.but(where="first_side", from_bow=2, to_bow=16))
    assert codes(farm) == set()


def test_one_sheet_kept_on_the_roof_alone_is_kept_in_part() -> None:
    farm = keeping(FIXING, BOARDS, FILM.but(where="roof"))
    (made,) = farm.tunnels
    whole = farm.but(tunnels=(made.but(skin=made.skin.but(covering="one_sheet")),))
    assert [f.where for f in found(whole, "condition.film_in_part")] == [
        "piece/whole-sheet/single/-/0"
    ]
    assert_mended(whole, "condition.film_in_part")


@pytest.mark.parametrize("state", ["keep", "repair"])
def test_kept_film_in_channel_that_is_replaced(state: str) -> None:
    farm = keeping(FILM.but(where="roof", state=state))
    findings = found(farm, "condition.film_off_channel")
    assert_told(findings, "caution")
    assert [f.where for f in findings] == ["piece/roof-sheet/single/-/0"]
    assert_mended(farm, "condition.film_off_channel")


def test_roof_hangs_in_the_channel_of_both_sides_and_ends() -> None:
    roof = FILM.but(where="roof")
    four = [
        FIXING.but(where=where) for where in ("first_side", "second_side", "front_end", "back_end")
    ]
    assert not found(keeping(roof, *four), "condition.film_off_channel")
    for left_out in four:
        rest = [line for line in four if line is not left_out]
        assert found(keeping(roof, *rest), "condition.film_off_channel")


def test_curtain_stays_where_its_channel_is_kept_over_its_own_length() -> None:
    # The curtain between bows 2 and 16; beside it the channel is new.
    curtain = FILM.but(where="first_side", from_bow=2, to_bow=16)
    channel = FIXING.but(where="first_side", from_bow=2, to_bow=16)
    assert not found(keeping(curtain, channel), "condition.film_off_channel")
    short = channel.but(to_bow=15)
    assert found(keeping(curtain, short), "condition.film_off_channel")
    repaired = channel.but(state="repair")
    assert not found(keeping(curtain, repaired), "condition.film_off_channel")


def test_channel_kept_on_boards_that_are_replaced() -> None:
    farm = keeping(
        FIXING, BOARDS.but(where="second_side"), BOARDS.but(where="first_side", to_bow=9)
    )
    findings = found(farm, "condition.channel_on_new_board")
    assert_told(findings, "caution")
    assert [f.where for f in findings] == ["side/0/hip"]
    # The boards are new from 12 m to 24 m.
    assert words(findings[0].what, "metric").startswith(
        "West side: channel is kept over 12.000 m where"
    )
    assert_mended(farm, "condition.channel_on_new_board")


def test_channel_renewed_with_the_boards_or_kept_on_kept_ones() -> None:
    first = (BOARDS.but(where="first_side", to_bow=9), BOARDS.but(where="second_side"))
    channel = (FIXING, FIXING.but(where="first_side", from_bow=9, state="replace"))
    assert not found(keeping(*first, *channel), "condition.channel_on_new_board")
    assert not found(
        keeping(*first, FIXING.but(where="second_side")), "condition.channel_on_new_board"
    )


def test_line_about_what_is_not_there() -> None:
    # There is no blower, no hose, and no board on the roof.
    farm = keeping(
        BOARDS,
        BOARDS.but(where="roof"),
        PartState(family="Air", state="repair"),
        FIXING.but(where="front_end", from_bow=2),
    )
    findings = found(farm, "condition.nothing_there")
    assert_told(findings, "note")
    told = [words(f.what, "metric").split(":")[0] for f in findings]
    assert told == [
        "Line 2 of the condition, Boards",
        "Line 3 of the condition, Air",
        "Line 4 of the condition, Film fixing",
    ]
    assert_mended(farm, "condition.nothing_there")


def test_line_that_replaces_is_about_nothing_in_peace() -> None:
    assert codes(keeping(BOARDS.but(where="roof", state="replace"))) == set()
    assert codes(keeping(FIXING.but(where="front_end", to_bow=2))) == set()


def test_catalogue_without_channel_or_boards_raises_no_question() -> None:
    farm = small_farm(tunnel().but(condition=(FILM,)))
    assert codes(farm) == set()
