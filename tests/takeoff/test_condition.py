"""What stays of each need. The tunnel has 17 bows, 1.5 m apart: bow 3 stands at 3 m, bow 9 at 12 m.

Its openings run from 1.5 m to 22.5 m, so a curtain and its bar are looked at over 21 m.
"""

import pytest

from hoopwright.farm import PartState, Tunnel
from hoopwright.quantity.working import Working, phrase
from hoopwright.takeoff import Need, keep_parts
from hoopwright.takeoff.condition import what_is_said
from hoopwright.takeoff.need import Place
from samples import tunnel
from takeoff.counted import count, site, whole_catalogue

BOWS_M = tuple(1.5 * n for n in range(17))


def need(part: str, quantity: float, mark: str = "side/0/hip", place: Place | None = None) -> Need:
    return Need(
        part=part,
        quantity=quantity,
        where=phrase("here"),
        marks=(mark,),
        working=Working("quantity", "As entered for a test."),
        place=place,
    )


def kept(needs: tuple[Need, ...], *lines: PartState, of: Tunnel | None = None) -> tuple[Need, ...]:
    laid = site(of or tunnel())
    return keep_parts(needs, lines, laid.survey, laid.cover, laid.catalogue)


def amounts(needs: tuple[Need, ...]) -> list[tuple[float, float]]:
    return [(round(n.kept, 9), round(n.bought, 9)) for n in needs]


FIXING = PartState(family="Film fixing", state="keep")


def test_without_lines_the_needs_are_the_very_same() -> None:
    needs = count(tunnel())
    assert kept(needs) is needs
    assert kept(needs, PartState(family="Film", state="keep")) is needs


def test_run_stays_by_the_length_between_the_bows() -> None:
    # 3 m to 12 m of a run of 24 m: 9 m stay, 15 m are bought.
    (one,) = kept((need("channel", 24.0),), FIXING.but(from_bow=3, to_bow=9))
    assert amounts((one,)) == [(9.0, 15.0)]
    assert one.state == "keep"
    # Half of it repaired: 4.5 m more are bought.
    half = FIXING.but(from_bow=3, to_bow=9, state="repair", replace_share=0.5)
    (one,) = kept((need("channel", 24.0),), half)
    assert amounts((one,)) == [(4.5, 19.5)]
    assert one.state == "repair"


def test_later_line_holds_where_two_overlap() -> None:
    # Kept from 0 to 12 m, then 6 m to 18 m replaced, then 9 m to 10.5 m kept again: 6 + 1.5 m.
    lines = (
        FIXING.but(to_bow=9),
        FIXING.but(from_bow=5, to_bow=13, state="replace"),
        FIXING.but(from_bow=7, to_bow=8),
    )
    assert amounts(kept((need("channel", 24.0),), *lines)) == [(7.5, 16.5)]
    # The other way round the first line comes last and keeps 0 to 12 m.
    assert amounts(kept((need("channel", 24.0),), *lines[::-1])) == [(12.0, 12.0)]


def test_line_speaks_of_its_family_and_its_part_of_the_tunnel_alone() -> None:
    needs = (
        need("channel", 24.0, "side/0/hip"),
        need("channel", 24.0, "side/1/hip"),
        need("channel", 7.0, "end/0"),
        need("channel", 9.0, "roof"),
        need("baseboard_wood", 24.0, "side/0/baseboard"),
        need("nobody_sells_this", 3.0, "side/0/hip"),
    )
    for where, stays in (
        ("first_side", [24.0, 0.0, 0.0, 0.0, 0.0, 0.0]),
        ("second_side", [0.0, 24.0, 0.0, 0.0, 0.0, 0.0]),
        ("front_end", [0.0, 0.0, 7.0, 0.0, 0.0, 0.0]),
        ("back_end", [0.0, 0.0, 0.0, 0.0, 0.0, 0.0]),
        ("roof", [0.0, 0.0, 0.0, 9.0, 0.0, 0.0]),
        ("everywhere", [24.0, 24.0, 7.0, 9.0, 0.0, 0.0]),
    ):
        assert [n.kept for n in kept(needs, FIXING.but(where=where))] == stays


def test_run_at_a_bow_belongs_to_every_stretch_that_has_the_bow() -> None:
    front, back = need("channel", 7.0, "end/0"), need("channel", 7.0, "end/1")
    seam = need("channel", 9.0, "roof", Place("roof", 12.0, 12.0))
    runs = (front, back, seam)
    assert amounts(kept(runs, FIXING.but(to_bow=9))) == [(7.0, 0.0), (0.0, 7.0), (9.0, 0.0)]
    assert amounts(kept(runs, FIXING.but(from_bow=9))) == [(0.0, 7.0), (7.0, 0.0), (9.0, 0.0)]
    assert amounts(kept(runs, FIXING.but(to_bow=8))) == [(7.0, 0.0), (0.0, 7.0), (0.0, 9.0)]


def test_pieces_beside_a_kept_stretch_are_rounded_up_run_by_run() -> None:
    # 41 screws along 24 m, 9 m of them kept: 41 x 15 / 24 = 25.625, so 26 are bought.
    screws = (need("channel_screw_wood", 41.0),) * 2
    assert amounts(kept(screws, FIXING.but(from_bow=3, to_bow=9))) == [(15.0, 26.0)] * 2


def test_share_of_repaired_pieces_is_rounded_up_over_all_runs_together() -> None:
    # A quarter of four cranks is one crank; of five it is 1.25, so two.
    line = PartState(family="Cranks", state="repair", replace_share=0.25)
    cranks = tuple(need("crank_hand_7in", 1.0, f"side/{n}/panel/0") for n in (0, 1, 0, 1, 0))
    assert sum(n.bought for n in kept(cranks[:4], line)) == 1.0
    assert sum(n.bought for n in kept(cranks, line)) == 2.0


def test_kept_stretch_and_repairs_of_one_run_add_up() -> None:
    # 40 eyes: the first half kept, a tenth of the other half replaced: 40 x 0.5 x 0.1 = 2.
    lines = (
        PartState(family="Wind rope", state="repair", replace_share=0.1),
        PartState(family="Wind rope", to_bow=9, state="keep"),
    )
    assert amounts(kept((need("eye_wood", 40.0),), *lines)) == [(38.0, 2.0)]


def test_bar_is_bought_by_the_whole_stick_and_a_guide_pipe_whole() -> None:
    # Four sticks of 6.4008 m over 21 m of opening; kept from 3 m to 12 m: 9 / 21 of them. Of four
    # sticks 4 x 12 / 21 = 2.29 are bought, so three.
    bar = need("bar_steel_1375_058", 4 * 6.4008, "side/0/panel/0")
    line = PartState(family="Roll bars", from_bow=3, to_bow=9, state="keep")
    assert amounts(kept((bar,), line)) == [(6.4008, pytest.approx(19.2024))]
    # A guide pipe of half a stick that is kept in part is bought; kept whole it stays.
    guide = need("guide_pipe", 3.2004, "side/0/panel/0")
    cranks = PartState(family="Cranks", state="keep")
    assert amounts(kept((guide,), cranks.but(from_bow=3))) == [(0.0, 3.2004)]
    assert amounts(kept((guide,), cranks.but(from_bow=2, to_bow=16))) == [(3.2004, 0.0)]


def test_curtain_counts_over_its_opening() -> None:
    # The opening from 1.5 m to 22.5 m lies between bows 2 and 16.
    rope = need("rope", 60.0, "side/0/panel/0")
    line = PartState(family="Wind rope", from_bow=2, to_bow=9, state="keep")
    # From 1.5 m to 12 m: 10.5 of 21 m, half.
    assert amounts(kept((rope,), line)) == [(30.0, 30.0)]


def test_blower_stays_with_a_line_about_the_whole_tunnel_alone() -> None:
    blower = need("blower", 1.0, "air/blower")
    line = PartState(family="Air", state="keep")
    found = whole_catalogue().part("blower").group
    assert found == "Air"
    assert amounts(kept((blower,), line)) == [(1.0, 0.0)]
    assert amounts(kept((blower,), line.but(where="roof"))) == [(0.0, 1.0)]
    assert amounts(kept((blower,), line.but(from_bow=2))) == [(0.0, 1.0)]


def test_runs_up_the_bows_of_a_pocket_are_looked_at_bow_by_bow() -> None:
    # The front pocket of the first side has uprights at bows 1 and 2; from bow 2 on one stays.
    uprights = [
        n
        for n in kept(count(tunnel()), FIXING.but(where="first_side", from_bow=2))
        if n.part == "channel" and n.marks == ("side/0/pocket/front",) and "upright" in str(n.where)
    ]
    assert [n.kept > 0 for n in uprights] == [False, True]
    assert uprights[1].bought == 0.0


def test_working_names_the_line() -> None:
    other = PartState(family="Boards", state="keep")
    (one,) = kept((need("channel", 24.0),), other, FIXING.but(from_bow=3, to_bow=9))
    assert one.kept_working is not None
    assert [(t.name, t.value) for t in one.kept_working.inputs] == [
        ("needed", 24.0),
        ("line 2, keep", 0.375),
    ]


def test_shares_that_lines_hold() -> None:
    lines = ((1, FIXING), (2, FIXING.but(where="roof", from_bow=3, to_bow=9, state="repair")))
    said = what_is_said(Place("roof", 0.0, 24.0), lines, BOWS_M)
    assert [(s.number, s.share) for s in said] == [(1, 0.625), (2, 0.375)]
    assert said[1].lost == pytest.approx(0.375 * 0.25)
    assert what_is_said(Place("first_side", 0.0, 24.0), lines[1:], BOWS_M) == ()
