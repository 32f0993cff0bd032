"""What curtains take. The small tunnel has one curtain on each side: 21 m of opening and a lap of
0.3048 m at each end, so a bar of 21.6096 m."""

import pytest

from hoopwright.farm import Panel, SideBoards, Split, Tunnel
from hoopwright.takeoff.curtain_parts import count_curtains
from samples import side, tunnel
from takeoff.counted import count, places, site, total

BAR_M = 21.6096
PANEL = "side/0/panel/0"


def with_panel(**changes: object) -> Tunnel:
    plain = side()
    return tunnel(sides=(plain.but(panels=(plain.panels[0].but(**changes),)), side("East side")))


def test_bar_is_made_of_whole_sticks_of_its_own() -> None:
    # Sticks of 6 m lose 0.1 m at a joint: (21.6096 - 0.1) / 5.9 = 3.65, so 4 sticks and 3 joints,
    # though both bars together, 43.2 m, would come out of 8 sticks as well as out of 4 and 4.
    needs = count(tunnel())
    assert places(needs, "bar_stick") == [
        ("West side: curtain 1", 24.0),
        ("East side: curtain 1", 24.0),
    ]
    assert total(needs, "bar_joint_screw", PANEL) == 3 * 2
    assert total(needs, "bar_splice") == 0
    assert total(needs, "bar_end_cap", PANEL) == 1


def test_stick_counted_by_the_piece_is_bought_by_the_piece() -> None:
    whole = site(tunnel()).catalogue
    pieces = tuple(
        p.but(counted_in="count", holds=30.0) if p.key == "bar_stick" else p for p in whole.parts
    )
    # A stick longer than the bar: one stick, and one pack of it.
    stick = whole.but(parts=pieces).part("bar_stick")
    needs = count(tunnel(), catalogue=whole.but(parts=pieces))
    assert total(needs, "bar_stick", PANEL) / stick.holds == 1.0
    assert total(needs, "bar_joint_screw") == 0


def test_round_bar_takes_cap_and_screws_along_the_bar() -> None:
    # 21.6096 m at 0.6096 m: 35.45, so 36 spaces and 37 screws.
    needs = count(tunnel())
    assert total(needs, "bar_cap", PANEL) == pytest.approx(BAR_M)
    assert total(needs, "bar_cap_screw", PANEL) == 37
    assert total(needs, "spring_wire", PANEL) == 0


def test_channel_bar_takes_wire_and_splices() -> None:
    # Sticks of 20 ft = 6.096 m without overlap: 21.6096 / 6.096 = 3.54, so 4 sticks, 3 splices with
    # four screws each.
    needs = count(with_panel(bar="aluminium_1500_063"))
    assert total(needs, "bar_aluminium_1500_063", PANEL) == pytest.approx(4 * 6.096)
    assert total(needs, "spring_wire", PANEL) == pytest.approx(BAR_M)
    assert total(needs, "bar_cap", PANEL) == 0
    assert total(needs, "bar_splice", PANEL) == 3
    assert total(needs, "bar_joint_screw", PANEL) == 12


def test_each_curtain_has_a_crank_with_extension_and_joint() -> None:
    split = tunnel(sides=(side(splits=(Split(at_m=9.0), Split(at_m=15.0))), side("East side")))
    needs = count(split)
    for key in ("crank", "crank_pipe", "joint"):
        assert total(needs, key) == 4
        assert total(needs, key, "side/0/panel/2") == 1


def test_eyes_stand_at_top_and_bottom_by_turns() -> None:
    # Steps of 1.2192 m: 21.6096 / 1.2192 = 17.7, so 18 legs between 19 eyes, 10 of them at the top.
    metal = SideBoards(hip_height_m=1.5, baseboard_height_m=0.3, hip_board="metal")
    plain = tunnel()
    needs = count(plain.but(frame=plain.frame.but(boards=(metal, plain.frame.boards[1]))))
    assert total(needs, "eye_metal", PANEL) == 10
    assert total(needs, "eye_wood", PANEL) == 9
    work = site(plain).curtains[0]
    assert total(needs, "rope", PANEL) == work.rope_m
    assert (work.rope_legs, work.eyes) == (18, 19)


def test_curtain_without_rope_needs_neither_rope_nor_eyes() -> None:
    needs = count(with_panel(rope=False))
    assert total(needs, "rope", PANEL) == 0
    assert total(needs, "eye_wood", PANEL) == 0
    assert total(needs, "rope", "side/1/panel/0") > 0


def test_bottom_seal_hangs_along_the_whole_bar_where_it_is_chosen() -> None:
    # 21.6096 m at 0.3048 m: 70.9, so 71 spaces and 72 screws.
    needs = count(with_panel(bottom_seal=False))
    assert total(needs, "bottom_seal", PANEL) == 0
    assert total(needs, "bottom_seal_screw", PANEL) == 0
    assert total(needs, "bottom_seal", "side/1/panel/0") == pytest.approx(BAR_M)
    assert total(needs, "bottom_seal_screw", "side/1/panel/0") == 72


def test_fixed_side_takes_nothing_of_a_curtain() -> None:
    fixed = tunnel(sides=(side(kind="fixed"), side("East side", kind="fixed")))
    assert tuple(count_curtains(site(fixed))) == ()


def test_curtain_that_strips_leave_no_room_for_takes_nothing() -> None:
    # Splits at 9 and 10.5 m, each with a strip in the bay after it: nothing is left between the
    # first strip's end and the second split, and there is no lap either.
    panel = Panel(crank_end="front", bar="bar", drive="crank")
    splits = (Split(at_m=9.0, join="strip"), Split(at_m=10.5, join="strip"))
    plain = tunnel(sides=(side(splits=splits, panels=(panel,) * 3), side("East side")))
    no_lap = plain.skin.allowances.but(curtain_lap_m=0.0)
    needs = count(plain.but(skin=plain.skin.but(allowances=no_lap)))
    assert total(needs, "crank", "side/0/panel/1") == 0
    assert total(needs, "crank", "side/0/panel/2") == 1
