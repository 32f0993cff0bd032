"""Every check of curtains, bars and drives: found, told, mended, and silent where all is well."""

import math
from collections.abc import Callable

import pytest

from checks.looked import (
    assert_mended,
    assert_told,
    drop_side,
    found,
    rich_farm,
    sound_tunnel,
    with_panel,
    woven_side,
)
from hoopwright.farm import EvenBows, Farm, SideBoards, Split
from hoopwright.farm.change import with_tunnel_value
from hoopwright.plan import plan
from hoopwright.quantity.working import words
from samples import side


def long_farm(**limits: float) -> Farm:
    made = sound_tunnel()
    frame = made.frame.but(bows=EvenBows(count=29, spacing_m=1.5), length_m=42.0)
    return rich_farm(made.but(frame=frame), **limits)


def crank_over_the_hand() -> Farm:
    return long_farm(hand_force_n=20.0)


def bar_behind_the_crank() -> Farm:
    return long_farm(trailing_m=0.015)


def _made_for(bar_m: float | None = None, drive_m: float | None = None) -> Farm:
    farm = rich_farm()
    bars, drives = farm.catalogue.bars, farm.catalogue.drives
    bars = (bars[0].but(max_length_m=bar_m), *bars[1:])
    drives = (drives[0].but(max_length_m=drive_m), *drives[1:])
    return farm.but(catalogue=farm.catalogue.but(bars=bars, drives=drives))


def bar_over_its_maker() -> Farm:
    return _made_for(bar_m=12.0)


def bar_over_the_drives_maker() -> Farm:
    return _made_for(drive_m=9.0)


def hand_crank_in_the_middle() -> Farm:
    return rich_farm(sound_tunnel(with_panel(crank_end="middle")))


def hand_crank_in_the_middle_without_gears() -> Farm:
    farm = hand_crank_in_the_middle()
    return farm.but(catalogue=farm.catalogue.but(drives=farm.catalogue.drives[:2]))


def crank_that_runs_back() -> Farm:
    return rich_farm(sound_tunnel(with_panel(drive="loose")))


def drum_that_runs_back() -> Farm:
    return rich_farm(sound_tunnel(drop_side(drive="loose_drum")))


def slit_bar_that_twists() -> Farm:
    return rich_farm(sound_tunnel(with_panel(bar="slit")), trailing_m=0.05)


def heavier_wall_that_trails() -> Farm:
    return rich_farm(sound_tunnel(with_panel(bar="heavy")), trailing_m=0.01)


def gutter_in_the_way() -> Farm:
    farm = rich_farm()
    return farm.but(
        tunnels=(with_tunnel_value(farm.tunnels[0], ("frame", "boards", 0, "gutter_drop_m"), 0.08),)
    )


def roll_without_room() -> Farm:
    farm = rich_farm()
    tunnel = with_tunnel_value(farm.tunnels[0], ("frame", "boards", 0, "stand_off_m"), 0.038)
    return farm.but(tunnels=(tunnel,))


def roll_in_the_rain() -> Farm:
    return rich_farm(sound_tunnel(with_panel(winding="out")))


def nothing_holds_the_curtain() -> Farm:
    return rich_farm(sound_tunnel(with_panel(rope="none", bottom="none")))


def woven_side_of_plain_film() -> Farm:
    return rich_farm(sound_tunnel(woven_side(film="clear")))


def side_in_the_roofs_channel() -> Farm:
    return rich_farm(sound_tunnel(with_panel().but(top="shared_channel")))


def air_for_one_layer() -> Farm:
    made = sound_tunnel(woven_side())
    return rich_farm(made.but(air=made.air.but(inflated_sides=(True, True))))


def joint_bent_too_far() -> Farm:
    farm = rich_farm()
    drives = (farm.catalogue.drives[0].but(extension_m=0.8), *farm.catalogue.drives[1:])
    return farm.but(catalogue=farm.catalogue.but(drives=drives))


def doubtful_gears() -> Farm:
    return rich_farm(sound_tunnel(with_panel(drive="doubtful")))


def one_sheet_beside_woven_sides() -> Farm:
    made = sound_tunnel(woven_side())
    return rich_farm(made.but(skin=made.skin.but(covering="one_sheet")))


Maker = Callable[[], Farm]

MENDED: tuple[tuple[str, str, Maker], ...] = (
    ("crank.force_high", "caution", crank_over_the_hand),
    ("bar.trailing", "caution", bar_behind_the_crank),
    ("bar.over_maker", "caution", bar_over_its_maker),
    ("drive.over_maker", "caution", bar_over_the_drives_maker),
    ("crank.hand_in_the_middle", "fault", hand_crank_in_the_middle),
    ("crank.hand_in_the_middle", "fault", hand_crank_in_the_middle_without_gears),
    ("crank.runs_back", "caution", crank_that_runs_back),
    ("crank.runs_back", "caution", drum_that_runs_back),
    ("bar.slit", "caution", slit_bar_that_twists),
    ("bar.wall_heavier", "note", heavier_wall_that_trails),
    ("roll.meets_gutter", "caution", gutter_in_the_way),
    ("roll.rubs", "note", roll_without_room),
    ("roll.rain", "note", roll_in_the_rain),
    ("curtain.loose", "caution", nothing_holds_the_curtain),
    ("film.not_woven", "caution", woven_side_of_plain_film),
    ("hip.channel_shared", "note", side_in_the_roofs_channel),
    ("air.one_layer", "caution", air_for_one_layer),
)
TOLD: tuple[tuple[str, str, Maker], ...] = (
    ("joint.angle", "caution", joint_bent_too_far),
    ("drive.hold_doubtful", "note", doubtful_gears),
    ("one_sheet.own_sheet", "note", one_sheet_beside_woven_sides),
)


@pytest.mark.parametrize(("code", "severity", "make"), MENDED + TOLD)
def test_fault_is_found_with_its_reason(code: str, severity: str, make: Maker) -> None:
    assert_told(found(make(), code), severity)


@pytest.mark.parametrize(("code", "severity", "make"), MENDED)
def test_mend_takes_the_fault_away(code: str, severity: str, make: Maker) -> None:
    assert_mended(make(), code)


@pytest.mark.parametrize("code", [code for code, _, _ in MENDED + TOLD])
def test_sound_tunnel_has_none_of_it(code: str) -> None:
    assert found(rich_farm(), code) == []


@pytest.mark.parametrize("make", [woven_side, drop_side])
def test_sound_sides_of_other_kinds_have_none_of_it(make: Callable[..., object]) -> None:
    made = sound_tunnel(make("West side"), make("East side"))  # type: ignore[arg-type]
    codes = {f.code for f in plan(rich_farm(made)).tunnels[0].findings}
    assert codes <= {"airing.share", "sheet.heavy"}


@pytest.mark.parametrize("make", [crank_over_the_hand, bar_behind_the_crank])
def test_curtains_over_a_limit_are_evened_within_all_limits(make: Maker) -> None:
    farm = make()
    tight = farm.limits
    (first, _) = found(farm, "crank.force_high") or found(farm, "bar.trailing")
    mended = plan(farm.but(tunnels=(first.mended,))).tunnels[0].chosen.curtains
    works = [w for w in mended if w.side == 0]
    assert (works[0].cranked, works[-1].cranked) == ("front", "back")
    assert max(w.hardest_n for w in works) <= tight.hand_force_n
    assert max(w.trailing_m for w in works) <= tight.trailing_m
    open_m = [w.length_m for w in works]
    assert max(open_m) - min(open_m) <= 1.5 + 1e-6


def test_limit_that_sets_the_bar_is_named() -> None:
    (first, _) = found(crank_over_the_hand(), "crank.force_high")
    assert "your limit of hand force sets the longest bar" in words(first.why, "metric")
    (first, _) = found(bar_behind_the_crank(), "bar.trailing")
    assert "your limit of trailing sets the longest bar" in words(first.why, "metric")
    assert all(part in words(first.what, "metric") for part in ("twist", "play", "uneven"))


def test_limit_that_no_split_keeps_says_what_else_helps() -> None:
    # Uneven winding alone: nine or so turns by 2 pi by 5 mm are over any centimetre.
    farm = rich_farm(trailing_m=0.01, uneven_winding_m=0.005)
    hits = found(farm, "bar.trailing")
    assert [f.mended for f in hits] == [None, None]
    assert "bar of larger diameter" in words(hits[0].mend, "metric")


def test_heavier_wall_is_told_of_the_heavier_one_alone() -> None:
    light = rich_farm(sound_tunnel(), trailing_m=0.01)
    assert found(light, "bar.trailing")
    assert found(light, "bar.wall_heavier") == []


def test_letting_go_is_told_as_an_upper_bound_with_what_to_do() -> None:
    (finding,) = found(crank_that_runs_back(), "crank.runs_back")
    assert "upper bound" in words(finding.why, "metric")
    assert "Keep hold until the lock is in" in words(finding.mend, "metric")
    work = plan(crank_that_runs_back()).tunnels[0].chosen.curtains[0]
    assert f"{work.runaway_handle_m_s:.1f} m/s" in words(finding.what, "metric")


def test_joint_is_told_with_its_angle() -> None:
    # Handle at 1 m and the open bar at 1.5 m less nothing: asin(0.5 / 0.8) = 38.7 degrees; shut
    # at 0.25 m: asin(0.75 / 0.8) = 69.6 degrees, over the limit of 45.
    hits = found(joint_bent_too_far(), "joint.angle")
    angle = math.degrees(math.asin(0.75 / 0.8))
    assert f"{angle:.1f}\u00b0" in words(hits[0].what, "metric")


def test_gutter_clears_the_roll_after_the_mend() -> None:
    (finding,) = found(gutter_in_the_way(), "roll.meets_gutter")
    farm = gutter_in_the_way().but(tunnels=(finding.mended,))
    gap_m = plan(farm).tunnels[0].chosen.curtains[0].gutter_gap_m
    assert gap_m is not None
    assert 0 <= gap_m < 0.02


def test_opening_is_told_without_a_verdict() -> None:
    (finding,) = found(rich_farm(), "airing.share")
    assert (finding.severity, finding.mended) == ("note", None)
    airing = plan(rich_farm()).tunnels[0].chosen.airing
    said = words(finding.what, "metric")
    assert f"{airing.floor_share:.2%}" in said or f"{airing.floor_share:.1%}" in said
    assert "roof vents and for side vents each" in said
    closed = sound_tunnel(side("West", kind="fixed"), side("East", kind="fixed"))
    assert found(rich_farm(closed), "airing.share") == []


def test_rules_of_splits_and_pockets_hold_for_every_moving_kind() -> None:
    for made in (woven_side(), drop_side()):
        cut = made.but(splits=(Split(at_m=12.7),), panels=made.panels * 2, pocket_bays=(0, 1))
        farm = rich_farm(sound_tunnel(cut))
        assert len(found(farm, "split.off_bow")) == 1
        assert len(found(farm, "pocket.missing")) == 1


def test_board_that_stands_low_is_no_matter_of_a_drop_down_curtain() -> None:
    boards = SideBoards(hip_height_m=1.5, baseboard_height_m=0.1)
    for made, count in ((with_panel(), 1), (drop_side(), 0)):
        tunnel = sound_tunnel(made.but(shut_height_m=0.3))
        low = tunnel.but(frame=tunnel.frame.but(boards=(boards, tunnel.frame.boards[1])))
        assert len(found(rich_farm(low), "bar.above_baseboard")) == count
