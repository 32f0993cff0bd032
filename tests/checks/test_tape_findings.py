"""What was read on the frame: found where it does not agree, silent where it does."""

from collections.abc import Mapping
from decimal import Decimal

import pytest

from checks.looked import assert_mended, assert_told, found
from fit.fitted import BENT, bent_tunnel, stocked
from hoopwright.farm import (
    AcrossUp,
    BowReading,
    Farm,
    FilmRoll,
    MeasuredBow,
    RoundBow,
    SideReading,
    Tape,
    Tunnel,
)
from hoopwright.farm.measured_bow import BowJoin
from hoopwright.quantity.units import FOOT_M, INCH_M
from hoopwright.quantity.working import words
from samples import small_farm, tunnel

ROOF_M = 9.602
"""Girth of the small tunnel over its hips, to the nearest millimetre."""


def taped(made: Tunnel | None = None, **readings: object) -> Farm:
    plain = made or tunnel()
    frame = plain.frame.but(tape=Tape(**readings))  # type: ignore[arg-type]
    return small_farm(plain.but(frame=frame))


def girths(read_m: Mapping[int, float], **tape: float) -> Farm:
    rows = tuple(BowReading(bow=bow, over_hips_m=x) for bow, x in read_m.items())
    return taped(bows=rows, **tape)


def heights(*read: tuple[int, SideReading, SideReading]) -> Farm:
    rows = tuple(BowReading(bow=bow, sides=(first, second)) for bow, first, second in read)
    return taped(bows=rows)


def grounds(*read_m: tuple[int, float]) -> Farm:
    rows = ((bow, SideReading(ground_m=y), SideReading()) for bow, y in read_m)
    return heights(*rows)


def measured(*points: tuple[float, float], join: BowJoin = "curve") -> Tunnel:
    taken = tuple(AcrossUp(across_m=x, up_m=y) for x, y in points)
    return tunnel(MeasuredBow(span_m=8.0, points=taken, join=join))  # type: ignore[arg-type]


def even(count: int, girth_m: float = ROOF_M) -> dict[int, float]:
    return {1 + 4 * n: girth_m + 0.001 * n for n in range(count)}


def test_fewer_than_five_girths_are_told() -> None:
    for count in (1, 4):
        findings = found(girths(even(count)), "tape.one_girth")
        assert_told(findings, "caution")
        assert f"over {count} of 17 bows" in words(findings[0].what, "metric")
    assert not found(girths(even(5)), "tape.one_girth")
    assert not found(taped(), "tape.one_girth")


def test_outlier_is_told_with_widths_that_are_long_enough() -> None:
    # 32.67 ft are needed over 84 ft and two tails; the 33 ft film is sold in rolls of 50 ft.
    short = FilmRoll(width_m=33 * FOOT_M, length_m=50 * FOOT_M, price=Decimal(100))
    films = tuple(film.but(rolls=(*film.rolls, short)) for film in stocked())
    plain = small_farm(bent_tunnel())
    farm = plain.but(catalogue=plain.catalogue.but(films=films))
    mend = words(found(farm, "tape.outlier")[0].mend, "imperial")
    assert mend.endswith("the stock width stays at 34' 0\".")


def test_outlier_names_its_bow_and_governs() -> None:
    findings = found(girths({1: 9.6, 5: 9.6, 9: 9.61, 13: 9.61, 17: 9.70}), "tape.outlier")
    assert_told(findings, "caution")
    said = words(findings[0].what, "metric")
    # The middle of five is 9.61 m, so bow 17 is 90 mm over it.
    assert "Over bow 17" in said
    assert "0.090 m more" in said
    assert "governs until it is measured again" in said
    # 9.70 m and two tails of 0.2286 m, or 9.61 m and the same: wider than 10 m both times.
    mend = words(findings[0].mend, "metric")
    assert "10.067 m wide instead of 10.157 m" in mend
    assert "the stock width stays at 12.000 m" in mend


def test_outlier_that_takes_a_wider_roll_says_which_would_do() -> None:
    findings = found(girths({1: 9.5, 5: 9.5, 9: 9.5, 13: 9.51, 17: 9.6}), "tape.outlier")
    # 9.6 + 0.4572 = 10.057 m wants 12 m; 9.51 + 0.4572 = 9.967 m would go into 10 m.
    mend = words(findings[0].mend, "metric")
    assert "a stock width of 10.000 m would do instead of 12.000 m" in mend


def test_outlier_that_is_short_does_not_govern() -> None:
    findings = found(girths({1: 9.6, 5: 9.6, 9: 9.61, 13: 9.61, 17: 9.5}), "tape.outlier")
    assert_told(findings, "caution")
    assert "less than the middle girth" in words(findings[0].what, "metric")
    assert "does not govern" in words(findings[0].what, "metric")


def test_reading_just_within_the_band_is_no_outlier() -> None:
    near = {1: 9.6, 5: 9.6, 9: 9.6, 13: 9.6, 17: 9.649}
    assert not found(girths(near), "tape.outlier")
    assert found(girths(near, outlier_m=0.04), "tape.outlier")


def test_bent_bow_measured_again_is_no_outlier_and_changes_nothing() -> None:
    # 31 ft 2 in and 18 in of tails are 32.67 ft; 30 ft 10 in and the same 32.33 ft: 34 ft stock.
    farm = small_farm(bent_tunnel())
    farm = farm.but(catalogue=farm.catalogue.but(films=stocked()))
    findings = found(farm, "tape.outlier")
    assert '4 1/2" more' in words(findings[0].what, "imperial")
    mend = words(findings[0].mend, "imperial")
    assert "30' 10\" over bow 11" in mend
    assert "32' 4\" wide instead of 32' 8\": the stock width stays at 34' 0\"" in mend
    again = bent_tunnel(BENT | {22: 30 * FOOT_M + 10 * INCH_M})
    assert not found(farm.but(tunnels=(again,)), "tape.outlier")


def test_girth_beyond_the_band_disagrees_with_the_profile() -> None:
    # 2 % of 9.602 m are 0.192 m.
    assert not found(girths(even(5, ROOF_M + 0.18)), "tape.girth_disagrees")
    findings = found(girths(even(5, ROOF_M + 0.25)), "tape.girth_disagrees")
    assert_told(findings, "caution")
    assert "more" in words(findings[0].what, "metric")
    assert "Measure span and peak" in words(findings[0].mend, "metric")
    assert not found(girths(even(5, ROOF_M + 0.25), agreement_share=0.03), "tape.girth_disagrees")


def test_girth_along_the_inside_of_the_tube_is_guessed() -> None:
    # A half circle of 4 m on a tube of 100 mm: over the outside pi x 2.05, along the inside
    # pi x 1.95 m, which is 314 mm less.
    plain = tunnel(RoundBow(span_m=4.0, leg_height_m=1.5, peak_height_m=3.5))
    plain = plain.but(frame=plain.frame.but(tube_diameter_m=0.1))
    rows = tuple(BowReading(bow=bow, over_hips_m=6.126) for bow in (1, 5, 9, 13, 17))
    findings = found(taped(plain, bows=rows), "tape.girth_disagrees")
    assert_told(findings, "caution")
    assert "reads about 0.314 m less" in words(findings[0].mend, "metric")


def test_length_that_is_not_that_of_the_bows_is_told() -> None:
    assert not found(taped(hip_lengths_m=(24.04, None)), "tape.lengths_disagree")
    findings = found(taped(hip_lengths_m=(24.1, None)), "tape.lengths_disagree")
    assert_told(findings, "caution")
    assert "West side: along the hip" in words(findings[0].what, "metric")
    assert "Measure again" in words(findings[0].mend, "metric")


def test_length_off_by_a_bay_asks_to_count_the_bows() -> None:
    (finding,) = found(taped(base_lengths_m=(None, 22.5)), "tape.lengths_disagree")
    assert "East side: along the baseboard" in words(finding.what, "metric")
    assert "count the bows again" in words(finding.mend, "metric")


def test_skew_is_told_with_what_it_costs() -> None:
    # s = (25.35^2 - 25.25^2) / (4 x 24) = 5.06 / 96 = 0.0527 m; with 25.34 m it is 0.0474 m.
    findings = found(taped(diagonals_m=(25.35, 25.25)), "tape.skew")
    assert_told(findings, "caution")
    assert "East side stands 0.053 m ahead" in words(findings[0].what, "metric")
    assert not found(taped(diagonals_m=(25.34, 25.25)), "tape.skew")
    (other,) = found(taped(diagonals_m=(25.25, 25.35)), "tape.skew")
    assert "West side" in words(other.what, "metric")


def test_diagonals_of_no_such_frame_are_told() -> None:
    # Square with 24 by 8 m: root of 640 = 25.298 m. With 25.25 m both, 7.846 m lie across the ends.
    assert not found(taped(diagonals_m=(25.298, 25.298)), "tape.diagonals_disagree")
    assert not found(taped(diagonals_m=(25.26, 25.26)), "tape.diagonals_disagree")
    findings = found(taped(diagonals_m=(25.2, 25.2)), "tape.diagonals_disagree")
    assert_told(findings, "caution")
    assert "7.684 m across the ends" in words(findings[0].what, "metric")


def test_end_bow_out_of_plumb_is_told() -> None:
    findings = found(taped(leans_m=(0.06, -0.06)), "tape.lean")
    assert_told(findings, "caution")
    said = [words(finding.what, "metric") for finding in findings]
    assert "0.060 m outside its feet" in said[0]
    assert "0.060 m inside its feet" in said[1]
    assert not found(taped(leans_m=(0.04, None)), "tape.lean")


def test_heights_that_cross_are_a_fault() -> None:
    low, high = SideReading(hip_m=1.0), SideReading(baseboard_m=1.1)
    findings = found(heights((1, low, low), (5, high, SideReading())), "tape.heights_crossed")
    assert_told(findings, "fault")
    assert "West side, bow 1" in words(findings[0].what, "metric")
    assert len(findings) == 1
    above = heights((3, SideReading(), SideReading(hip_m=3.8)))
    assert_told(found(above, "tape.heights_crossed"), "fault")
    assert not found(heights((1, low, low)), "tape.heights_crossed")


def test_ground_that_falls_away_leaves_a_gap() -> None:
    findings = found(grounds((1, 0.0), (9, -0.12), (17, 0.0)), "tape.gap")
    assert_told(findings, "caution")
    # The bar shuts at 0.25 m; at bow 9 the ground lies 0.12 m below the line.
    assert "0.370 m stand open" in words(findings[0].what, "metric")
    assert not found(grounds((1, 0.0), (9, -0.09), (17, 0.0)), "tape.gap")


def test_ground_under_a_pocket_leaves_no_gap_under_the_curtain() -> None:
    # The pocket is the first bay, so the curtain starts on bow 2.
    assert not found(grounds((1, -0.5), (2, 0.0)), "tape.gap")


def test_bar_on_the_ground_is_told_and_mended() -> None:
    farm = grounds((1, 0.0), (9, 0.27), (17, 0.0))
    findings = found(farm, "tape.bar_on_ground")
    assert_told(findings, "caution")
    assert "ground at bow 9 stands 0.020 m above" in words(findings[0].what, "metric")
    assert_mended(farm, "tape.bar_on_ground")
    assert not found(grounds((9, 0.24)), "tape.bar_on_ground")


def test_measured_bow_that_is_no_arc_is_told() -> None:
    pointed = ((1.0, 1.5), (4.0, 4.5), (7.0, 1.5))
    findings = found(small_farm(measured(*pointed, join="corners")), "tape.not_a_circle")
    assert_told(findings, "note")
    # A circle of 5 m round (4, -3): 3, 4, 5 and 1.4, 4.8, 5.
    arc = ((1.0, 1.0), (2.6, 1.8), (4.0, 2.0), (5.4, 1.8), (7.0, 1.0))
    assert not found(small_farm(measured(*arc)), "tape.not_a_circle")


def test_sides_that_were_measured_and_differ_are_told() -> None:
    hip, lower = SideReading(hip_m=1.5), SideReading(hip_m=1.44)
    assert_told(found(heights((1, hip, lower)), "tape.unequal_sides"), "note")
    assert not found(heights((1, hip, SideReading(hip_m=1.46))), "tape.unequal_sides")
    assert not found(small_farm(), "tape.unequal_sides")


@pytest.mark.parametrize(("lean_m", "told"), [(0.0, False), (0.3, True)])
def test_measured_bow_is_told_where_it_leans_in(lean_m: float, told: bool) -> None:
    leg = ((lean_m, 1.8), (4.0, 3.7), (8.0, 1.8))
    farm = small_farm(measured(*leg, join="corners"))
    findings = found(farm, "hip.bow_leans_in")
    if told:
        assert_told(findings, "caution")
        assert [finding.where for finding in findings] == ["side/0/hip"]
    else:
        assert not findings
    assert not found(farm, "hip.above_shoulder")


def test_bar_above_a_baseboard_that_was_read_lower_is_told_and_mended() -> None:
    sunk = SideReading(baseboard_m=0.2)
    farm = heights((9, sunk, SideReading()))
    findings = found(farm, "bar.above_baseboard")
    assert_told(findings, "caution")
    assert "0.050 m above" in words(findings[0].what, "metric")
    assert_mended(farm, "bar.above_baseboard")
