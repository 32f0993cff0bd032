"""Channel, wire, screws and boards. The small tunnel: 16 bays of 1.5 m make 24 m with 17 bows;
straight legs of 1.5 m, hip boards at 1.5 m, baseboards at 0.3 m, so 1.2 m along the bow between
them; a pocket of one bay at each end of each side; end walls of film without doors."""

import pytest

from hoopwright.farm import Door, Side, SideBoards, Split, Tunnel
from hoopwright.takeoff.runs import count_boards, count_channel
from samples import double_tunnel, drop_side, side, tunnel, woven_side
from takeoff.counted import count, places, site, total

END_BOW = "Front end: end bow"


def fixed_tunnel() -> Tunnel:
    return tunnel(sides=(side("West side", kind="fixed"), side("East side")))


def first(one_side: Side) -> Tunnel:
    """Return the tunnel with a side whose bar and drive are those of its kind."""
    changes = {
        "woven": {"bar": "hem_1375_058"},
        "drop_down": {"drive": "drum_direct"},
    }.get(one_side.kind, {})
    panels = tuple(p.but(**changes) for p in one_side.panels)
    return tunnel(sides=(one_side.but(panels=panels), side("East side")))


def bare_ends(plain: Tunnel) -> Tunnel:
    return plain.but(ends=tuple(end.but(film=None) for end in plain.ends))


def at(plain: Tunnel, covering: str, where: str) -> float:
    return dict(places(count(plain, covering), "channel"))[where]


def test_roof_and_sides_apart_have_two_runs_on_each_hip_board() -> None:
    needs = count(tunnel())
    assert total(needs, "channel", "side/0/hip") == 48.0
    assert total(needs, "channel", "side/1/hip") == 48.0


def test_one_sheet_has_one_run_on_each_hip_board() -> None:
    assert total(count(tunnel(), "one_sheet"), "channel", "side/0/hip") == 24.0


def test_one_sheet_runs_past_the_hip_of_a_fixed_side() -> None:
    needs = count(fixed_tunnel(), "one_sheet")
    assert total(needs, "channel", "side/0/hip") == 0.0
    assert total(needs, "hip_board_wood", "side/0/hip") == 0.0
    assert total(needs, "channel", "side/1/hip") == 24.0
    assert total(count(fixed_tunnel()), "channel", "side/0/hip") == 48.0


def test_baseboard_has_channel_under_fixed_film_alone() -> None:
    # Two pockets of 1.5 m; the 21 m of opening between them have none.
    found = dict(places(count(tunnel()), "channel"))
    assert found["West side: front pocket, baseboard"] == 1.5
    assert found["West side: back pocket, baseboard"] == 1.5
    assert [w for w in found if "baseboard" in w and "West" in w] == [
        "West side: front pocket, baseboard",
        "West side: back pocket, baseboard",
    ]


def test_fixed_side_has_channel_along_the_whole_baseboard() -> None:
    # 24 m along the baseboard and 1.2 m down each end bow.
    assert total(count(fixed_tunnel()), "channel", "side/0/fixed") == pytest.approx(26.4)


def test_pocket_apart_is_held_on_both_its_bows() -> None:
    # 2 x 1.2 m up the bows and 1.5 m at the baseboard; its hip edge is in the hip board's run.
    needs = count(tunnel())
    assert total(needs, "channel", "side/0/pocket/front") == pytest.approx(3.9)


def test_pocket_of_one_sheet_shares_the_end_bow() -> None:
    # 1.2 m up the inner bow and 1.5 m at the baseboard; the end bow's run comes down to it.
    needs = count(tunnel(), "one_sheet")
    assert total(needs, "channel", "side/0/pocket/front") == pytest.approx(2.7)


@pytest.mark.parametrize(
    ("covering", "walled", "legs"),
    [
        # Apart: the pockets' own runs hold the end wall below the hip.
        ("roof_and_sides", True, 0),
        ("roof_and_sides", False, 0),
        # One sheet: the run goes down to both baseboards.
        ("one_sheet", True, 2),
        ("one_sheet", False, 2),
    ],
)
def test_end_bow_run_with_pockets(covering: str, walled: bool, legs: int) -> None:
    plain = tunnel() if walled else bare_ends(tunnel())
    roof_m = site(plain).survey.roof_girth_m
    assert at(plain, covering, END_BOW) == pytest.approx(roof_m + legs * 1.2, abs=1e-3)


@pytest.mark.parametrize(("walled", "legs"), [(True, 2), (False, 0)])
@pytest.mark.parametrize("covering", ["roof_and_sides", "one_sheet"])
def test_end_bow_run_without_pockets_goes_down_for_the_end_wall(
    covering: str, walled: bool, legs: int
) -> None:
    open_sides = (side("West side", pocket_bays=(0, 0)), side("East side", pocket_bays=(0, 0)))
    plain = tunnel(sides=open_sides)
    plain = plain if walled else bare_ends(plain)
    roof_m = site(plain).survey.roof_girth_m
    assert at(plain, covering, END_BOW) == pytest.approx(roof_m + legs * 1.2, abs=1e-3)


def test_whole_end_bow_of_one_sheet_reaches_from_base_to_base() -> None:
    survey = site(tunnel()).survey
    base_to_base_m = survey.base_at_m[1] - survey.base_at_m[0]
    assert at(tunnel(), "one_sheet", END_BOW) == pytest.approx(base_to_base_m, abs=1e-3)


def test_strip_behind_a_split_is_held_on_both_its_bows() -> None:
    # East side splits at 9 m before a strip of one bay of 1.5 m: 2 x 1.2 + 1.5 = 3.9 m.
    needs = count(double_tunnel())
    assert total(needs, "channel", "side/1/strip/0") == pytest.approx(3.9)
    assert "East side: strip behind split 1, baseboard" in dict(places(needs, "channel"))


def test_strip_behind_one_sheet_has_a_hip_run_of_its_own() -> None:
    plain = tunnel(sides=(side(splits=(Split(at_m=12.0),)), side("East side")))
    # 2 x 1.2 + 1.5 at the baseboard + 1.5 at the hip.
    assert total(count(plain, "one_sheet"), "channel", "side/0/strip/0") == pytest.approx(5.4)


def test_cross_seam_is_held_over_a_bow() -> None:
    plain = tunnel()
    seamed = plain.but(skin=plain.skin.but(cross_seams_m=(6.0, 15.0)))
    roof_m = site(plain).survey.roof_girth_m
    assert total(count(seamed), "channel") - total(count(plain), "channel") == pytest.approx(
        2 * roof_m
    )


def test_door_is_framed_on_three_sides_when_the_end_is_of_film() -> None:
    # 2 x 2.1 + 3.0 = 7.2 m.
    door = Door(width_m=3.0, height_m=2.1)
    plain = tunnel()
    front, back = plain.ends
    walled = plain.but(ends=(front.but(doors=(door,)), back))
    assert at(walled, "roof_and_sides", "Front end: door frame") == pytest.approx(7.2)
    assert "Front end: door frame" not in dict(places(count(bare_ends(walled)), "channel"))


def test_each_run_of_channel_has_one_run_of_wire_for_all_layers() -> None:
    for plain in (tunnel(), double_tunnel(), first(drop_side())):
        needs = tuple(count_channel(site(plain)))
        assert places(needs, "spring_wire") == places(needs, "channel")


def test_screws_go_into_what_the_channel_sits_on() -> None:
    # 24 m at 0.4572 m: 52.5, so 53 spaces and 54 screws in each of the two runs.
    boards = SideBoards(hip_height_m=1.5, baseboard_height_m=0.3, hip_board="metal")
    plain = tunnel()
    mixed = plain.but(frame=plain.frame.but(boards=(plain.frame.boards[0], boards)))
    needs = count(mixed)
    assert total(needs, "channel_screw_wood", "side/0/hip") == 108
    assert total(needs, "channel_screw_metal", "side/0/hip") == 0
    assert total(needs, "channel_screw_metal", "side/1/hip") == 108
    assert total(needs, "channel_screw_wood", "end/0") == 0


def test_boards_run_the_whole_length_with_a_fastener_on_each_bow() -> None:
    metal = SideBoards(
        hip_height_m=1.5, baseboard_height_m=0.3, hip_board="metal", baseboard="metal"
    )
    plain = tunnel()
    mixed = plain.but(frame=plain.frame.but(boards=(plain.frame.boards[0], metal)))
    needs = tuple(count_boards(site(mixed)))
    assert places(needs, "hip_board_wood") == [("West side: hip board", 24.0)]
    assert places(needs, "baseboard_wood") == [("West side: baseboard", 24.0)]
    assert places(needs, "hip_board_metal") == [("East side: hip board", 24.0)]
    assert places(needs, "baseboard_metal") == [("East side: baseboard", 24.0)]
    assert total(needs, "board_bolt") == total(needs, "board_bracket") == 2 * 17


def test_name_of_a_side_is_shown_as_typed() -> None:
    needs = count(tunnel(sides=(side("{side}"), side("East side"))))
    assert "{side}: hip board, roof film" in dict(places(needs, "channel"))


@pytest.mark.parametrize("kind", ["roll_up", "fixed"])
def test_side_film_can_share_the_run_of_the_roof(kind: str) -> None:
    shared = first(side(kind=kind, top="shared_channel"))
    needs = count(shared)
    assert total(needs, "channel", "side/0/hip") == 24.0
    assert "West side: hip board, roof and side film" in dict(places(needs, "channel"))
    assert total(needs, "channel", "side/1/hip") == 48.0
    # One sheet has one run anyway, and none where it runs on to a fixed side.
    one_sheet_m = 0.0 if kind == "fixed" else 24.0
    assert total(count(shared, "one_sheet"), "channel", "side/0/hip") == one_sheet_m


@pytest.mark.parametrize("covering", ["roof_and_sides", "one_sheet"])
def test_woven_curtain_slides_into_a_profile_beside_the_run_of_the_roof(covering: str) -> None:
    # The curtain is 21 m and two laps of 0.3048 m; pockets of 1.5 m at both ends.
    needs = count(first(woven_side()), covering)
    assert places(needs, "top_profile") == [("West side: curtain 1, top profile", 21.61)]
    assert total(needs, "channel", "side/0/hip") == 24.0
    assert "West side: curtain 1, top profile" not in dict(places(needs, "spring_wire"))
    # 21.6096 m at 0.4572 m: 47.3, so 48 spaces and 49 screws.
    assert total(needs, "channel_screw_wood", "side/0/panel/0") == 49
    # Each pocket: 2 x 1.2 m up its bows, 1.5 m at the baseboard and 1.5 m at the hip.
    assert total(needs, "channel", "side/0/pocket/front") == pytest.approx(5.4)
    assert total(needs, "channel", "side/0/pocket/back") == pytest.approx(5.4)
    # Nothing holds the film under a curtain that winds up.
    assert total(needs, "channel", "side/0/panel/0") == 0.0


def test_profile_is_no_longer_than_the_hip_board() -> None:
    needs = count(first(woven_side().but(pocket_bays=(0, 0))))
    assert places(needs, "top_profile") == [("West side: curtain 1, top profile", 24.0)]


@pytest.mark.parametrize("one_side", [woven_side(), drop_side()], ids=["woven", "drop_down"])
def test_pocket_beside_such_a_curtain_can_share_the_run_of_the_roof(one_side: Side) -> None:
    needs = count(first(one_side.but(top="shared_channel")))
    assert total(needs, "channel", "side/0/hip") == 24.0
    assert total(needs, "channel", "side/0/pocket/front") == pytest.approx(3.9)


@pytest.mark.parametrize("covering", ["roof_and_sides", "one_sheet"])
def test_drop_down_curtain_is_held_at_the_baseboard(covering: str) -> None:
    # Two curtains lapping at 9 m: 1.5 to 9 and 9 to 22.5 m; with the pockets the whole 24 m.
    needs = count(first(drop_side(splits=(Split(at_m=9.0),))), covering)
    found = dict(places(needs, "channel"))
    assert found["West side: curtain 1, baseboard"] == 7.5
    assert found["West side: curtain 2, baseboard"] == 13.5
    boards_m = sum(m for name, m in found.items() if "West" in name and "baseboard" in name)
    assert boards_m == 24.0
    # At the hip the roof's run and those of both pockets.
    hips_m = sum(m for name, m in found.items() if "West" in name and "hip" in name)
    assert hips_m == 24.0 + 2 * 1.5
    assert total(needs, "top_profile") == 0.0


def test_one_sheet_with_a_side_of_its_own_is_counted_side_by_side() -> None:
    # First side woven: its pockets have runs of their own, so the end bow's run stays above the
    # hip there; on the second side the sheet comes down to the baseboard, 1.2 m.
    plain = first(woven_side())
    roof_m = site(plain).survey.roof_girth_m
    assert at(plain, "one_sheet", END_BOW) == pytest.approx(roof_m + 1.2, abs=1e-3)
    needs = count(plain, "one_sheet")
    assert total(needs, "channel", "side/1/hip") == 24.0
    # The inner bow and the baseboard only.
    assert total(needs, "channel", "side/1/pocket/front") == pytest.approx(2.7)
