"""How widths and heights add up where the frame was read, by hand on plumb legs.

The hip boards are at 1.5 m, at the top of the legs, and the baseboards at 0.3 m.
"""

import pytest

from hoopwright.cover import sizes
from hoopwright.cover.bulge import bulge_extra
from hoopwright.cover.size import Size
from hoopwright.farm import AcrossUp, BowReading, MeasuredBow, Side, SideReading, Split, Tape
from hoopwright.survey import Survey, survey_frame
from laying import laid
from samples import side, tunnel, woven_side


def read_survey(*rows: BowReading) -> Survey:
    return survey_frame(tunnel().frame.but(tape=Tape(bows=rows)))


def test_roof_width_names_the_bow_whose_girth_governs() -> None:
    survey = read_survey(BowReading(bow=3, over_hips_m=9.6), BowReading(bow=9, over_hips_m=9.7))
    size = sizes.roof_width(survey, tunnel().skin, "single")
    assert size.parts[0] == ("over bow 9, hip to hip, as read", 9.7)
    # Two tails of 9 in.
    assert size.total_m == pytest.approx(9.7 + 0.4572)
    assert "longest girth that was read governs" in size.rule


def test_roof_width_from_a_girth_over_the_baseboards_says_so() -> None:
    survey = read_survey(BowReading(bow=4, over_baseboards_m=12.3))
    name, over_m = sizes.roof_width(survey, tunnel().skin, "single").parts[0]
    assert name == "over bow 4, hip to hip, from its girth over the baseboards"
    # 1.2 m of plumb leg on each side.
    assert over_m == pytest.approx(12.3 - 2.4)


def one_sheet(survey: Survey, *kinds: Side) -> Size:
    return sizes.whole_width(survey, tunnel().skin, kinds, (False, False), "single")  # type: ignore[arg-type]


def test_girth_over_the_baseboards_governs_a_whole_sheet() -> None:
    survey = read_survey(BowReading(bow=4, over_baseboards_m=12.3))
    fixed = one_sheet(survey, side("West", kind="fixed"), side("East", kind="fixed"))
    assert fixed.parts[0] == ("over bow 4, baseboard to baseboard, as read", 12.3)
    # A tail of 12 in below each baseboard.
    assert fixed.total_m == pytest.approx(12.3 + 2 * 0.3048)
    rolled = one_sheet(survey, side("West"), side("East"))
    # The bar shuts 0.05 m below the baseboard: with slack of 0.05 and a wrap of 12 in on each side.
    assert rolled.total_m == pytest.approx(12.3 + 2 * (0.05 + 0.05 + 0.3048))
    apart = one_sheet(survey, woven_side("West"), woven_side("East"))
    assert apart.total_m == pytest.approx(12.3 - 2.4 + 2 * 0.2286)


def test_longer_girth_over_the_hips_governs_a_whole_sheet_before_a_short_one_below() -> None:
    survey = read_survey(BowReading(bow=4, over_hips_m=9.8, over_baseboards_m=12.0))
    fixed = one_sheet(survey, side("West", kind="fixed"), side("East", kind="fixed"))
    assert fixed.parts[0] == ("over bow 4, hip to hip, as read", 9.8)
    assert fixed.total_m == pytest.approx(9.8 + 2.4 + 2 * 0.3048)


def test_curtain_is_as_high_as_its_own_bows_need() -> None:
    # Plumb legs: 1.3 m at the front, 1.5 m at bow 9, which stands at 12 m; the bar shuts at 0.25 m.
    rows = tuple(
        BowReading(bow=bow, sides=(SideReading(hip_m=y), SideReading()))
        for bow, y in ((1, 1.3), (9, 1.5), (17, 1.5))
    )
    survey = read_survey(*rows)
    front = sizes.curtain_hang(survey, 0, side(), (1.5, 6.0))
    assert front.parts[0] == ("hip seam to shut bar, bow 5", pytest.approx(1.15))
    whole = sizes.curtain_hang(survey, 0, side())
    assert whole.parts[0] == ("hip seam to shut bar, bow 9", pytest.approx(1.25))
    fixed = sizes.fixed_height(survey, tunnel().skin, 0)
    assert fixed.parts[0] == ("hip seam to baseboard, bow 9", pytest.approx(1.2))
    drop = sizes.curtain_hang(survey, 0, side(kind="drop_down"))
    assert drop.parts[0] == ("baseboard to the rod at the hip, bow 9", pytest.approx(1.2))


def test_bulge_over_an_unsymmetrical_bow_is_reckoned_from_its_ridge() -> None:
    # Ridge 1.5 m off the middle: hips at 1.5 m on plumb legs 8 m apart, 2 m below the ridge.
    points = tuple(AcrossUp(across_m=x, up_m=y) for x, y in ((0.0, 1.5), (2.5, 3.5), (8.0, 1.5)))
    frame = tunnel().frame.but(
        profile=MeasuredBow(span_m=8.0, points=points, join="corners"), tube_diameter_m=0.0
    )
    survey = survey_frame(frame)
    skin = tunnel(roof_layers=2).skin
    outer, inner = (sizes.roof_width(survey, skin, layer).total_m for layer in ("outer", "inner"))
    # Chord 8 m, rise 2 m, gap 0.15 m.
    assert outer - inner == pytest.approx(bulge_extra(8.0, 2.0, 0.15))


def test_every_curtain_knows_the_gap_it_leaves() -> None:
    rows = tuple(
        BowReading(bow=bow, sides=(SideReading(ground_m=y, baseboard_m=b), SideReading()))
        for bow, y, b in ((1, 0.0, 0.3), (9, -0.2, 0.2), (17, -0.2, 0.3))
    )
    plain = tunnel()
    made = plain.but(frame=plain.frame.but(tape=Tape(bows=rows)))
    first, second = laid(made).curtains
    # The bar shuts at 0.25 m: 0.45 m over the lowest ground, 0.05 m over the lowest board.
    assert (first.gap_m, first.board_gap_m) == pytest.approx((0.45, 0.05))
    assert (second.gap_m, second.board_gap_m) == pytest.approx((0.25, 0.0))
    named = {term.name: term.value for term in first.working("gap_m").inputs}
    assert named["lowest ground, bow 9"] == pytest.approx(-0.2)


def test_a_curtain_held_at_the_baseboard_leaves_no_gap() -> None:
    (first, _second) = laid(tunnel(sides=(side("West", kind="drop_down"), side("East")))).curtains
    assert (first.gap_m, first.board_gap_m) == (0.0, 0.0)
    assert "held at the baseboard" in first.working("gap_m").rule


def test_curtains_of_one_side_are_cut_each_to_its_own_bows() -> None:
    rows = tuple(
        BowReading(bow=bow, sides=(SideReading(hip_m=y), SideReading()))
        for bow, y in ((1, 1.3), (9, 1.3), (17, 1.5))
    )
    plain = tunnel(sides=(side("West", (Split(at_m=12.0),)), side("East")))
    cover = laid(plain.but(frame=plain.frame.but(tape=Tape(bows=rows))))
    front, back = (span for span in cover.curtains if span.side == 0)
    # Bow 16, at the pocket, lies 10.5 m of 12 m on the way from 1.3 m to 1.5 m: 1.475 m.
    assert back.cut_height_m - front.cut_height_m == pytest.approx(0.175)
    widths = [piece.width_m for piece in cover.pieces if piece.mark.startswith("piece/curtain")]
    assert widths[:2] == pytest.approx([front.cut_height_m, back.cut_height_m])
    assert cover.side_height_m[0] == pytest.approx(back.cut_height_m)
