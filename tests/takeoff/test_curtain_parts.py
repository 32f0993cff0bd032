"""What curtains take. The small tunnel has one curtain on each side: 21 m of opening and a lap of
0.3048 m at each end, so a bar of 21.6096 m."""

import pytest

from hoopwright.farm import Panel, SideBoards, Split, Tunnel
from hoopwright.takeoff.curtain_parts import count_curtains
from samples import drop_side, side, tunnel, woven_side
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
    needs = count(with_panel(rope="none"))
    assert total(needs, "rope", PANEL) == 0
    assert total(needs, "eye_wood", PANEL) == 0
    assert total(needs, "rope", "side/1/panel/0") > 0


def test_each_strap_hangs_between_two_eyes() -> None:
    # Eyes in a metal hip board above and in a wooden baseboard below.
    metal = SideBoards(hip_height_m=1.5, baseboard_height_m=0.3, hip_board="metal")
    plain = with_panel(rope="straps")
    made = plain.but(frame=plain.frame.but(boards=(metal, plain.frame.boards[1])))
    needs = count(made)
    work = site(made).curtains[0]
    assert total(needs, "strap", PANEL) == work.rope_m > 0
    assert total(needs, "rope", PANEL) == 0
    assert total(needs, "eye_metal", PANEL) == total(needs, "eye_wood", PANEL) == work.rope_legs
    assert total(needs, "rope", "side/1/panel/0") > 0


def test_bottom_seal_hangs_along_the_whole_bar_where_it_is_chosen() -> None:
    # 21.6096 m at 0.3048 m: 70.9, so 71 spaces and 72 screws.
    needs = count(with_panel(bottom="none"))
    assert total(needs, "bottom_seal", PANEL) == 0
    assert total(needs, "bottom_seal_screw", PANEL) == 0
    assert total(needs, "bottom_seal", "side/1/panel/0") == pytest.approx(BAR_M)
    assert total(needs, "bottom_seal_screw", "side/1/panel/0") == 72


@pytest.mark.parametrize(
    ("bottom", "part", "fastener", "pieces"),
    [
        # 21.6096 m at 0.6096 m: 35.45, so 37 screws; at 0.3048 m: 70.9, so 72.
        ("hat_purlin", "hat_purlin", "hat_purlin_screw", 37),
        ("skirt", "skirt", "skirt_fastener", 72),
    ],
)
def test_hat_purlin_or_skirt_takes_the_place_of_the_seal(
    bottom: str, part: str, fastener: str, pieces: int
) -> None:
    needs = count(with_panel(bottom=bottom))
    assert total(needs, part, PANEL) == pytest.approx(BAR_M)
    assert total(needs, fastener, PANEL) == pieces
    assert total(needs, "bottom_seal", PANEL) == total(needs, "bottom_seal_screw", PANEL) == 0


@pytest.mark.parametrize(
    ("bar", "part", "pieces"),
    [
        # 21.6096 m at 0.4572 m: 47.3, so 49 screws; at 0.9144 m: 23.6, so 25 bolts.
        ("two_piece_1375_058", "bar_close_screw", 49),
        ("two_piece_1660_065", "bar_close_bolt", 25),
    ],
)
def test_two_piece_bar_is_closed_along_its_length(bar: str, part: str, pieces: int) -> None:
    needs = count(with_panel(bar=bar))
    assert total(needs, part, PANEL) == pieces
    assert {n.part for n in needs if n.part.startswith("bar_close") and PANEL in n.marks} == {part}
    assert total(needs, "bar_cap", PANEL) == total(needs, "spring_wire", PANEL) == 0


def test_joint_takes_what_the_bar_is_joined_by() -> None:
    # Swaged: sticks of 6.4008 m lose 0.1016 m, (21.6096 - 0.1016) / 6.2992 = 3.41, 4 sticks.
    # Spliced: nothing is lost, 21.6096 / 6.4008 = 3.38, 4 sticks too; so 3 joints each.
    swaged, spliced = (
        count(with_panel(bar=key)) for key in ("two_piece_1375_058", "two_piece_1660_065")
    )
    assert total(swaged, "bar_joint_screw", PANEL) == 3 * 2
    assert total(spliced, "bar_joint_screw", PANEL) == 3 * 4
    assert total(swaged, "bar_splice", PANEL) == 0
    assert total(spliced, "bar_splice", PANEL) == 3


def test_bar_in_a_hem_takes_nothing_to_hold_the_film() -> None:
    woven = woven_side()
    panel = woven.panels[0].but(bar="hem_1375_058")
    needs = count(tunnel(sides=(woven.but(panels=(panel,)), side("East side"))))
    assert total(needs, "bar_steel_1375_058", PANEL) == pytest.approx(4 * 6.4008)
    assert not {n.part for n in needs if PANEL in n.marks} & {
        "bar_cap",
        "bar_cap_screw",
        "spring_wire",
        "bar_close_screw",
        "bar_close_bolt",
    }


def test_rod_of_a_drop_down_curtain_is_capped_at_both_ends_and_has_no_bottom_edge() -> None:
    drop = drop_side()
    panel = drop.panels[0].but(drive="drum_direct")
    needs = count(tunnel(sides=(drop.but(panels=(panel,)), side("East side"))))
    assert total(needs, "bar_stick", PANEL) == 24.0
    assert total(needs, "bar_end_cap", PANEL) == 2
    assert total(needs, "bar_end_cap", "side/1/panel/0") == 1
    assert total(needs, "bar_cap", PANEL) == pytest.approx(BAR_M)
    assert total(needs, "bottom_seal", PANEL) == 0
    assert total(needs, "bottom_seal", "side/1/panel/0") > 0


def test_bar_cranked_in_the_middle_is_capped_at_both_ends() -> None:
    assert total(count(with_panel(crank_end="middle")), "bar_end_cap", PANEL) == 2


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
