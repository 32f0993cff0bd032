"""How widths and heights add up, by hand on plumb legs."""

import pytest
from shapely import LineString

from hoopwright.cover import sizes
from hoopwright.cover.cover import LayerName
from hoopwright.cover.size import add_up
from hoopwright.farm import Allowances, Side, SideBoards, Tunnel
from hoopwright.farm.profile import Profile
from hoopwright.survey import survey_frame
from laying import laid, of_role
from samples import (
    double_tunnel,
    drop_side,
    gothic_profile,
    layers,
    rafter_profile,
    rafter_tunnel,
    round_profile,
    side,
    tunnel,
    woven_side,
)

# The hip board is at the top of legs of 1.5 m and the baseboard at 0.3 m, so all ways along the
# bow below the hip are differences of heights.
SIDE_M = 1.2


def _height(first: Side, layer: LayerName = "single", inflated: bool = False) -> sizes.Size:
    one = tunnel(sides=(first, side("East side")))
    survey = survey_frame(one.frame)
    return sizes.curtain_height(survey, one.skin, 0, first, layer, inflated)


def test_terms_that_add_nothing_are_left_out() -> None:
    size = add_up("As measured.", ("length", 2.0), ("slack", 0.0), ("tail", 0.5))
    assert [t.name for t in size.terms] == ["length", "tail"]
    assert size.total_m == 2.5
    assert size.working("width_m").inputs == size.terms
    assert [t.value for t in add_up("Nothing.", ("length", 0.0)).terms] == [0.0]


def test_curtain_height_is_hang_tail_slack_and_wrap() -> None:
    # 1.5 - 0.25 to the bar, 0.1524 above the hip, 0.05 slack, 0.3048 round the bar.
    assert _height(side()).total_m == pytest.approx(1.25 + 0.1524 + 0.05 + 0.3048)
    assert sizes.curtain_hang(survey_frame(tunnel().frame), 0, side()).total_m == pytest.approx(1.3)


def test_outer_of_two_inflated_curtain_layers_is_higher() -> None:
    # Chord 1.25, rise 0.15: R = (0.390625 + 0.0225)/0.3 = 1.377083, arc = 4 R atan(0.24) =
    # 1.297460; 0.0475 m more than the chord.
    flat = _height(side(), "outer", inflated=False).total_m
    assert _height(side(), "outer", inflated=True).total_m - flat == pytest.approx(
        0.04746, abs=1e-5
    )
    assert _height(side(), "inner", inflated=True).total_m == flat


def test_pocket_is_as_high_as_the_curtain() -> None:
    survey, one = survey_frame(tunnel().frame), tunnel()
    pocket = sizes.pocket_height(survey, one.skin, 0, side())
    assert pocket.total_m == _height(side()).total_m


def test_pocket_reaches_the_baseboard_under_a_short_curtain() -> None:
    # A bar that stops at 0.9 m asks for 0.6 + 0.1524 + 0.05 + 0.3048 = 1.1072 m only; the pocket
    # needs 1.2 + 0.1524 + 0.3048 = 1.6572 m.
    high = side(shut_height_m=0.9)
    one = tunnel(sides=(high, side("East side")))
    pocket = sizes.pocket_height(survey_frame(one.frame), one.skin, 0, high)
    assert pocket.total_m == pytest.approx(1.6572)
    assert [p.width_m for p in of_role(laid(one), "pocket")][:2] == pytest.approx([1.6572] * 2)


def test_side_sheet_reaches_from_hip_to_baseboard_as_long_as_the_roof() -> None:
    one = tunnel(sides=(side(kind="fixed"), side("East side")))
    (sheet,) = of_role(laid(one), "side sheet")
    (roof,) = of_role(laid(one), "roof sheet")
    assert sheet.width_m == pytest.approx(SIDE_M + 0.1524 + 0.3048)
    assert sheet.length_m == roof.length_m == pytest.approx(24 + 2 * 0.6096)
    assert laid(one).side_height_m[0] == sheet.width_m


def _sheet_beyond_roof(one: Tunnel) -> float:
    """Return what the whole sheet has more than the way over the roof."""
    (sheet,) = of_role(laid(one, "one_sheet"), "whole sheet")
    return sheet.width_m - survey_frame(one.frame).roof_girth_m


def test_whole_sheet_runs_to_the_bar_or_the_baseboard() -> None:
    fixed = tunnel(sides=(side(kind="fixed"), side("East side")))
    # Fixed: 1.2 + 0.3048. Rolled up: 1.25 + 0.05 + 0.3048.
    assert _sheet_beyond_roof(fixed) == pytest.approx(SIDE_M + 0.3048 + 1.25 + 0.05 + 0.3048)


def test_whole_sheet_reaches_the_baseboard_in_pockets_under_a_short_curtain() -> None:
    # A bar that stops at 0.9 m asks for 0.6 + 0.05 + 0.3048, a pocket for 1.2 + 0.3048.
    for bays, need_m in (((1, 1), 1.2 + 0.3048), ((0, 0), 0.6 + 0.05 + 0.3048)):
        high = side(shut_height_m=0.9, pocket_bays=bays)
        one = tunnel(sides=(high, high.but(name="East side")))
        assert _sheet_beyond_roof(one) == pytest.approx(2 * need_m)


def test_whole_double_sheet_bulges_over_roof_and_inflated_sides() -> None:
    one = tunnel(roof_layers=2)
    for inflated, sides_m in (((False, False), 0.0), ((True, True), 2 * 0.04746)):
        airy = one.but(air=one.air.but(inflated_sides=inflated))
        outer, inner = of_role(laid(airy, "one_sheet"), "whole sheet")
        # The roof's share is worked by hand in the test of two layers: 0.2037 m.
        assert outer.width_m - inner.width_m == pytest.approx(0.2037 + sides_m, abs=2e-4)


def test_whole_double_sheet_bulges_from_baseboard_to_baseboard_over_fixed_sides() -> None:
    one = tunnel(sides=(side(kind="fixed"), side("East side", kind="fixed")), roof_layers=2)
    outer, inner = of_role(laid(one, "one_sheet"), "whole sheet")
    # Held at 0.3 m: chord 8.048, rise 3.724 - 0.3 = 3.424, with the gap 3.574 m.
    # R = 4.07657, arc 11.49614; R = 4.05233, arc 11.77187: 0.27573 m.
    assert outer.width_m - inner.width_m == pytest.approx(0.27573, abs=1e-5)


def test_unequal_hips_keep_the_ridge_above_a_slanting_chord() -> None:
    # A mirrored frame needs the same film: the bulge must not depend on which hip is lower.
    plain = tunnel(roof_layers=2)
    low = SideBoards(hip_height_m=1.0, baseboard_height_m=0.3)
    high = plain.frame.boards[0]
    widths = [
        of_role(laid(plain.but(frame=plain.frame.but(boards=pair))), "roof sheet")[0].width_m
        for pair in ((low, high), (high, low))
    ]
    assert widths[0] == pytest.approx(widths[1])
    # Lower by 0.5 m of plumb leg on one side: so much more film, and a little more bulge.
    (equal, _) = of_role(laid(plain), "roof sheet")
    assert widths[0] - equal.width_m == pytest.approx(0.5, abs=0.02)


def test_bulge_of_other_shapes_says_that_a_circle_arc_is_used() -> None:
    one = rafter_tunnel()
    one = one.but(skin=one.skin.but(roof=layers(2)))
    outer, inner = of_role(laid(one), "roof sheet")
    assert "circle arcs whatever the shape" in outer.working("width_m").rule
    assert "circle arcs" not in inner.working("width_m").rule


@pytest.mark.parametrize("hip_tail_m", [0.0, 0.4])
def test_roof_reaches_past_both_hip_boards(hip_tail_m: float) -> None:
    one = tunnel()
    skin = one.skin.but(allowances=Allowances(hip_tail_m=hip_tail_m))
    one = one.but(frame=one.frame.but(profile=round_profile(), tube_diameter_m=0.0), skin=skin)
    (roof,) = of_role(laid(one), "roof sheet")
    # R = (16 + 4.84)/4.4 = 4.736364, arc = 4 R atan(2.2/4) = 9.526593 from hip to hip.
    assert roof.width_m == pytest.approx(9.526593 + 2 * hip_tail_m, abs=1e-6)


def test_woven_curtain_has_film_for_bead_and_hem() -> None:
    # 1.5 - 0.25 to the bar, 0.05 slack, 0.1524 over the bead, 0.3048 for the hem.
    size = _height(woven_side())
    assert size.total_m == pytest.approx(1.25 + 0.05 + 0.1524 + 0.3048)
    assert [t.name for t in size.terms] == [
        "hip seam to shut bar",
        "slack",
        "turned over the bead at the hip",
        "hem for the roll bar",
    ]


def test_drop_down_curtain_reaches_from_below_the_baseboard_round_the_rod() -> None:
    # 1.2 from the baseboard to the rod at the hip, 0.05 slack, 0.3048 round the rod and 0.3048
    # below the baseboard channel; at which height its rod would hang as a bar does not matter.
    size = _height(drop_side())
    assert size.total_m == pytest.approx(1.2 + 0.05 + 0.3048 + 0.3048)
    assert [t.name for t in size.terms] == [
        "baseboard to the rod at the hip",
        "slack",
        "wrap on the rod",
        "tail at the baseboard",
    ]
    assert _height(drop_side().but(shut_height_m=0.9)).total_m == size.total_m


@pytest.mark.parametrize("profile", [round_profile(), gothic_profile(), rafter_profile()])
def test_drop_down_curtain_follows_the_bow_from_baseboard_to_hip(profile: Profile) -> None:
    boards = SideBoards(hip_height_m=2.4, baseboard_height_m=0.2)
    plain = tunnel(profile, (drop_side(), side("East side")))
    survey = survey_frame(plain.frame.but(boards=(boards, boards)))
    base_m, hip_m = survey.base_at_m[0], survey.hip_at_m[0]
    steps = 4000
    bow = LineString(
        [survey.curve.point_at(base_m + (hip_m - base_m) * n / steps) for n in range(steps + 1)]
    )
    hang = sizes.curtain_hang(survey, 0, plain.sides[0])
    assert hang.total_m == pytest.approx(bow.length + 0.05, abs=1e-5)
    heights_m = [y for _, y in bow.coords]
    assert (heights_m[0], heights_m[-1]) == pytest.approx((0.2, 2.4))


@pytest.mark.parametrize("first", [woven_side(), drop_side()], ids=["woven", "drop_down"])
def test_whole_sheet_ends_at_the_hip_of_a_side_with_its_own_curtains(first: Side) -> None:
    # A tail of 0.2286 m there; on the other side 1.25 to the bar, 0.05 slack, 0.3048 wrap.
    one = tunnel(sides=(first, side("East side")))
    assert _sheet_beyond_roof(one) == pytest.approx(0.2286 + 1.25 + 0.05 + 0.3048)
    (sheet,) = of_role(laid(one, "one_sheet"), "whole sheet")
    assert "ends at the hip" in sheet.working("width_m").rule
    (plain,) = of_role(laid(tunnel(), "one_sheet"), "whole sheet")
    assert "ends at the hip" not in plain.working("width_m").rule


def test_whole_sheet_between_two_such_sides_is_as_wide_as_a_roof_sheet() -> None:
    one = tunnel(sides=(woven_side(), drop_side("East side")), roof_layers=2)
    whole = [p.width_m for p in of_role(laid(one, "one_sheet"), "whole sheet")]
    assert whole == pytest.approx([p.width_m for p in of_role(laid(one), "roof sheet")])


def test_curtains_of_one_layer_are_never_cut_for_air() -> None:
    # Both sides are to be inflated, but there is no second layer to lift.
    double = double_tunnel()
    one = double.but(sides=(woven_side(), side("East side", film="inside")))
    flat = one.but(air=one.air.but(inflated_sides=(False, False)))
    for covering in ("roof_and_sides", "one_sheet"):
        widths = [
            [p.width_m for p in laid(t, covering).pieces if p.areas[0].surface == "side0"]
            for t in (one, flat)
        ]
        assert widths[0] == widths[1] != []
    assert [p.width_m for p in of_role(laid(one), "curtain")] == [
        p.width_m for p in of_role(laid(flat), "curtain")
    ]
    # In one sheet the roll-up side has the sheet's two layers: 0.04746 m as worked above.
    outer, still = (of_role(laid(t, "one_sheet"), "whole sheet")[0].width_m for t in (one, flat))
    assert outer - still == pytest.approx(0.04746, abs=1e-5)


@pytest.mark.parametrize(
    "first", [woven_side(), drop_side(), side(film="inside")], ids=["woven", "drop_down", "film"]
)
def test_pocket_beside_another_film_is_cut_to_the_baseboard(first: Side) -> None:
    # 1.2 + 0.1524 + 0.3048.
    one = tunnel(sides=(first, side("East side")))
    assert [p.width_m for p in of_role(laid(one), "pocket")][:2] == pytest.approx([1.6572] * 2)
