"""Sizes of tunnels against published ones, and against sums worked by hand.

Where a source gives a whole tunnel but no drawing, only what it states is checked, within the band
named beside it. Sums worked by hand show the steps.
"""

import math

import pytest
from scipy.integrate import quad

from hoopwright.cover.bulge import bulge_extra
from hoopwright.farm import EvenBows, Frame, GothicBow, RoundBow, SideBoards, StraightRafters
from hoopwright.farm.profile import Profile
from hoopwright.survey import survey_frame
from hoopwright.survey.arc import arc_over_chord
from hoopwright.survey.bow_curve import bow_curve

FOOT_M = 0.3048


def _feet_frame(profile: Profile, bows: int, spacing_ft: float, tube_in: float = 0.0) -> Frame:
    boards = SideBoards(hip_height_m=2.0 * FOOT_M, baseboard_height_m=0.5 * FOOT_M)
    return Frame(
        profile=profile,
        tube_diameter_m=tube_in * FOOT_M / 12,
        length_m=(bows - 1) * spacing_ft * FOOT_M,
        bows=EvenBows(count=bows, spacing_m=spacing_ft * FOOT_M),
        boards=(boards, boards),
    )


def _round_ft(span_ft: float, leg_ft: float, peak_ft: float) -> RoundBow:
    return RoundBow(
        span_m=span_ft * FOOT_M, leg_height_m=leg_ft * FOOT_M, peak_height_m=peak_ft * FOOT_M
    )


def test_ten_bows_stand_on_thirty_six_feet() -> None:
    # Rutgers Horticultural Engineering, High tunnel photo pages: a house of 17 x 36 ft with
    # bows 4 ft apart has 10 bows and 20 ground posts.
    survey = survey_frame(_feet_frame(_round_ft(17, 0, 8.5), 10, 4.0))
    assert survey.length_m == pytest.approx(36 * FOOT_M)
    assert survey.bay_count == 9
    assert 2 * len(survey.bows_m) == 20


def test_eighteen_hoops_make_seventeen_bays() -> None:
    # Harris, W., How to Build a Low-Cost Hoop House, Kerr Center for Sustainable Agriculture,
    # 2009, p. 1: 18 hoops for each 100 ft. 100/17 = 5.88 ft from hoop to hoop.
    survey = survey_frame(_feet_frame(_round_ft(17, 0, 7.5), 18, 100 / 17))
    assert survey.bay_count == 17
    assert survey.bows_m[1] / FOOT_M == pytest.approx(5.88, abs=0.005)


def test_hand_bent_hoop_is_near_a_circle_arc() -> None:
    # The same source: hoops bent from 24-ft tubes stand 17 ft wide and 7 1/2 ft high. Bent by
    # hand they are no true arc, so the band is 5 %.
    # Worked by hand: R = (8.5^2 + 7.5^2)/(2 x 7.5) = 8.567 ft,
    # arc = 4 R atan(7.5/8.5) = 4 x 8.567 x 0.7230 = 24.77 ft.
    curve = bow_curve(_round_ft(17, 0, 7.5), 0.0)
    assert curve.length_m / FOOT_M == pytest.approx(24.0, rel=0.05)
    assert curve.length_m / FOOT_M == pytest.approx(24.77, abs=0.01)


def test_film_of_forty_eight_feet_covers_a_half_circle_of_thirty() -> None:
    # Dawling, P., Mother Earth News, Oct./Nov. 2015: a film of 48 x 100 ft goes over a house of
    # 30 x 96 ft down to the ground. A half circle of that width takes 15 pi = 47.12 ft, which
    # leaves less than half a foot on each edge.
    curve = bow_curve(_round_ft(30, 0, 15), 0.0)
    assert curve.length_m / FOOT_M == pytest.approx(15 * math.pi)
    assert 0.0 < (48 - curve.length_m / FOOT_M) / 2 < 0.5


def test_tall_narrow_house_is_more_than_a_half_circle() -> None:
    # Lamont et al., Design and construction of the Penn State high tunnel, HortTechnology
    # 12(3):447-453 (2002): 17 ft wide and 9 ft high. Worked by hand for an arc without legs:
    # R = (8.5^2 + 9^2)/18 = 8.514 ft, half angle 2 atan(9/8.5) = 1.6279 rad,
    # arc = 2 R x 1.6279 = 27.72 ft, area = R^2 (1.6279 - sin 1.6279 cos 1.6279) = 122.1 ft2.
    curve = bow_curve(_round_ft(17, 0, 9), 0.0)
    assert curve.length_m / FOOT_M == pytest.approx(27.72, abs=0.01)
    assert curve.area_m2 / FOOT_M**2 == pytest.approx(122.1, abs=0.1)
    assert curve.width_m / FOOT_M == pytest.approx(2 * 8.514, abs=0.001)


@pytest.mark.parametrize(("width_ft", "length_ft"), [(30, 96), (20, 48), (17, 36)])
def test_cover_of_a_half_round_house_is_under_twice_its_floor(
    width_ft: float, length_ft: float
) -> None:
    # Acta Horticulturae 107, paper 17 (1980; author and year from memory): cover area over floor
    # area of small single-span houses is 1.8 to 2.0.
    # Worked by hand for a half circle: pi/2 + (pi/4) x width/length.
    survey = survey_frame(_feet_frame(_round_ft(width_ft, 0, width_ft / 2), 13, length_ft / 12))
    ratio = survey.cover_area_m2 / survey.floor_area_m2
    assert 1.8 <= ratio <= 2.0
    assert ratio == pytest.approx(math.pi / 2 + math.pi / 4 * width_ft / length_ft)


def test_round_bow_on_legs_as_worked_by_hand() -> None:
    # Span 28, rise 9, legs 4 ft: R = (14^2 + 9^2)/18 = 15.389, half angle 2 atan(9/14) = 1.14267,
    # base to base 2 R x 1.14267 + 8 = 43.169; area 28 x 4 + R^2 (1.14267 - sin cos) = 293.16.
    # At 5 ft: 2 R acos((5 + 2.389)/15.389) = 32.932, since the centre lies at 13 - R = -2.389.
    # From 1/2 ft to 5 ft: (43.169 - 32.932)/2 - 0.5 = 4.619. 84 ft x 293.16 = 24626 ft3.
    frame = _feet_frame(_round_ft(28, 4, 13), 22, 4.0)
    boards = SideBoards(hip_height_m=5 * FOOT_M, baseboard_height_m=0.5 * FOOT_M)
    survey = survey_frame(frame.but(boards=(boards, boards)))
    assert survey.girth_m / FOOT_M == pytest.approx(43.169, abs=0.001)
    assert survey.roof_girth_m / FOOT_M == pytest.approx(32.932, abs=0.001)
    assert survey.side_m[0] / FOOT_M == pytest.approx(4.619, abs=0.001)
    assert survey.section_area_m2 / FOOT_M**2 == pytest.approx(293.16, abs=0.01)
    assert survey.volume_m3 / FOOT_M**3 == pytest.approx(24626, abs=1)


def test_film_on_the_outside_is_longer_as_worked_by_hand() -> None:
    # Between plumb legs the direction turns by pi: pi x 1.9/2 = 2.985 in.
    profile = _round_ft(28, 4, 13)
    extra_m = bow_curve(profile, 1.9 * FOOT_M / 12).length_m - bow_curve(profile, 0.0).length_m
    assert extra_m / FOOT_M * 12 == pytest.approx(2.985, abs=0.001)


def test_gothic_bow_that_leaves_its_legs_straight_as_worked_by_hand() -> None:
    # Span 22, legs 5, peak 17 ft: a = 11, f = 12, R = (121 + 144)/22 = 12.045; half the arc's turn
    # is asin(16.279/24.091) = 0.74195, so each arc is 2 x 0.74195 R = 17.874 and the whole
    # 2 x (17.874 + 5) = 45.748. Area 22 x 5 + 11 x 12 + 2 R^2 (d - sin d cos d) = 312.76.
    profile = GothicBow(span_m=22 * FOOT_M, leg_height_m=5 * FOOT_M, peak_height_m=17 * FOOT_M)
    curve = bow_curve(profile, 0.0)
    assert curve.length_m / FOOT_M == pytest.approx(45.748, abs=0.001)
    assert curve.area_m2 / FOOT_M**2 == pytest.approx(312.76, abs=0.01)


def test_gothic_bow_of_a_given_radius_as_worked_by_hand() -> None:
    # Span 26, legs 4, peak 12.5, R 20 ft: c = hypot(13, 8.5) = 15.532, d = asin(15.532/40) =
    # 0.39879, each arc 2 d R = 15.952, whole 2 x (15.952 + 4) = 39.903.
    half_turn_rad = math.asin(math.hypot(13, 8.5) / 40)
    profile = GothicBow(
        span_m=26 * FOOT_M,
        leg_height_m=4 * FOOT_M,
        peak_height_m=12.5 * FOOT_M,
        arc_radius_m=20 * FOOT_M,
    )
    curve = bow_curve(profile, 0.0)
    assert curve.length_m / FOOT_M == pytest.approx(2 * (40 * half_turn_rad + 4))
    assert curve.area_m2 / FOOT_M**2 == pytest.approx(247.27, abs=0.01)


def test_bent_rafters_as_worked_by_hand() -> None:
    # Span 20, legs to 6.5, peak 10.5, corner radius 1.5 ft: pitch atan(4/10) = 0.38051, turn
    # pi/2 - pitch = 1.19029, t = 1.5 tan(0.59514) = 1.0155, straight leg 5.4845, bend 1.7854,
    # rafter hypot(10, 4) = 10.7703. Half: 5.4845 + 1.7854 + 10.7703 - 1.0155 = 17.0247; whole
    # twice that, 34.049.
    profile = StraightRafters(
        span_m=20 * FOOT_M,
        leg_height_m=6.5 * FOOT_M,
        peak_height_m=10.5 * FOOT_M,
        corner_radius_m=1.5 * FOOT_M,
    )
    curve = bow_curve(profile, 0.0)
    assert curve.length_m / FOOT_M == pytest.approx(34.049, abs=0.001)
    # Area: 20 x 6.5 + 10 x 4 less twice what a bend cuts off its corner, r t - r^2 turn/2.
    turn_rad = math.pi / 2 - math.atan(0.4)
    cut_ft2 = 1.5**2 * (math.tan(turn_rad / 2) - turn_rad / 2)
    assert curve.area_m2 / FOOT_M**2 == pytest.approx(170 - 2 * cut_ft2)


def test_low_arc_agrees_with_integration() -> None:
    # Length over the ridge of y = sqrt(R2 - x2), an independent way to the same arc.
    radius_ft = (14**2 + 9**2) / 18
    over_ft = quad(lambda x: radius_ft / math.sqrt(radius_ft**2 - x**2), -14, 14)[0]
    assert arc_over_chord(28, 9) == pytest.approx(over_ft, rel=1e-8)
    assert bow_curve(_round_ft(28, 0, 9), 0.0).length_m / FOOT_M == pytest.approx(over_ft, rel=1e-8)


def test_outer_layer_over_the_whole_arch_as_worked_by_hand() -> None:
    # Chord 9, rise 3, gap 0.15 m. arc(9, 3.00): R = (20.25 + 9)/6 = 4.875, 4 R atan(6/9) =
    # 11.4661; arc(9, 3.15): R = (20.25 + 9.9225)/6.3 = 4.78929, 4 R atan(6.3/9) = 11.6998.
    assert bulge_extra(9.0, 3.0, 0.15) == pytest.approx(0.2337, abs=0.0001)


def test_billow_of_one_bay_as_worked_by_hand() -> None:
    # Bay 4 ft, rise 3 in: R = (0.6096^2 + 0.0762^2)/(2 x 0.0762) = 2.4765 m,
    # arc = 4 R atan(0.125) = 1.23186 m, 1.0384 % over the bay of 1.2192 m.
    assert bulge_extra(1.2192, 0.0, 0.0762) / 1.2192 == pytest.approx(0.010384, abs=1e-6)
