"""The whole stage: every curtain of a skin from where it hangs to what the hand feels."""

from dataclasses import replace

import pytest

from hanging import (
    FOOT_M,
    FREE,
    INCH_M,
    LBF_IN_NM,
    LBF_N,
    MIL_M,
    bar,
    crank,
    drum,
    geared,
    hung,
    round_tube,
    sided,
    span,
)
from hoopwright.cover import lay_skin
from hoopwright.curtain import CurtainWork, work_curtains
from hoopwright.curtain.cranking import work_curtain
from hoopwright.farm import (
    EvenBows,
    Frame,
    Limits,
    Panel,
    RoundBow,
    Side,
    SideBoards,
    Split,
    Tunnel,
    Weather,
)
from hoopwright.farm.skin import Covering
from hoopwright.survey import survey_frame
from samples import (
    double_tunnel,
    drop_side,
    layers,
    side,
    small_catalogue,
    small_farm,
    tunnel,
    woven_side,
)


def _worked(
    worked: Tunnel, covering: Covering = "roof_and_sides", limits: Limits | None = None
) -> tuple[CurtainWork, ...]:
    """Return the curtains of a tunnel, on a 1.66 in bar with cap, cranked by a 12 in arm."""
    catalogue = small_catalogue()
    survey = survey_frame(worked.frame)
    films = tuple(f.but(thickness_m=6 * MIL_M) for f in catalogue.films)
    cover = lay_skin(
        covering, survey, worked.skin, worked.sides, worked.ends, films, worked.air.inflated_sides
    )
    return work_curtains(
        worked.frame.boards,
        survey,
        worked.sides,
        cover,
        (bar(round_tube(1.66, 0.065), cap_lb_ft=0.25),),
        (crank(12), drum(12, 3)),
        tuple(p.but(counted_in="m", holds=21 * FOOT_M) for p in catalogue.parts),
        limits or FREE,
        Weather(),
        worked.skin.allowances.bar_wrap_m,
    )


def _long_tunnel(bows: int, splits: tuple[Split, ...], lap_ft: float) -> Tunnel:
    """Return a tunnel with bows at 4 ft, upright 5 ft sides and a baseboard of 1 ft.

    The first side rolls up, its first curtain cranked at the front and its last at the back.
    """
    ends = ("front",) if not splits else ("front", "back")
    rolling = Side(
        name="East side",
        kind="roll_up",
        shut_height_m=1 * FOOT_M,
        pocket_bays=(1, 1),
        splits=splits,
        panels=tuple(Panel(crank_end=end, bar="bar", drive="crank") for end in ends),
        slack_m=0.0,
    )
    boards = SideBoards(hip_height_m=5 * FOOT_M, baseboard_height_m=1 * FOOT_M)
    plain = tunnel()
    return plain.but(
        frame=Frame(
            profile=RoundBow(
                span_m=26 * FOOT_M, leg_height_m=5 * FOOT_M, peak_height_m=12 * FOOT_M
            ),
            tube_diameter_m=0.0,
            length_m=4 * (bows - 1) * FOOT_M,
            bows=EvenBows(count=bows, spacing_m=4 * FOOT_M),
            boards=(boards, boards),
        ),
        skin=plain.skin.but(
            sides=layers(2),
            allowances=plain.skin.allowances.but(
                bar_wrap_m=1 * FOOT_M, curtain_lap_m=lap_ft * FOOT_M
            ),
        ),
        sides=(rolling, side("West side", kind="fixed")),
    )


# Worked by hand for 84 ft with bows at 4 ft and a pocket bay at each end, so an opening of 76 ft;
# a lap of 6 in at each end of a curtain; a 4 ft opening, 12 in of wrap on the shut bar; two 6 mil
# layers of 0.0287 lb/ft2 each. At the top the bar carries pipe 1.108 + cap 0.25 + 5 ft of film
# 0.287 = 1.645 lb/ft; diameter sqrt(1.66^2 + 4 x 60 x 0.012 / pi) = 1.916 in, shut 1.714 in;
# 33 ft: 54.3 lb x 1.916 / 2 = 52.0 lbf in; 45 ft: 74.1 lb, 71.0; 77 ft: 126.7 lb, 121.4;
# on a 12 in handle 4.3, 5.9, 10.1 lbf; turns (1.916 - 1.714) / (2 x 0.012) = 8.4.
def test_split_at_thirty_six_feet_agrees_with_the_hand_sum() -> None:
    front, back = _worked(_long_tunnel(22, (Split(at_m=36 * FOOT_M),), 0.5))
    for work, length_ft, weight_lbf, torque, force_lbf in (
        (front, 33, 54.3, 52.0, 4.3),
        (back, 45, 74.1, 71.0, 5.9),
    ):
        assert work.length_m / FOOT_M == pytest.approx(length_ft)
        assert work.weights_n[2] / LBF_N == pytest.approx(weight_lbf, abs=0.06)
        assert work.torques_nm[2] / LBF_IN_NM == pytest.approx(torque, abs=0.06)
        assert work.hardest_n / LBF_N == pytest.approx(force_lbf, abs=0.05)
        assert work.diameters_m[0] / INCH_M == pytest.approx(1.714, abs=5e-4)
        assert work.diameters_m[2] / INCH_M == pytest.approx(1.916, abs=5e-4)
        assert work.turns == pytest.approx(8.4, abs=0.05)


def test_bar_half_way_up_has_wound_half_its_climb() -> None:
    # 12 in of wrap, 3 in of slack, half of 48 in: sqrt(1.66^2 + 4 x 39 x 0.012 / pi) = 1.8307 in.
    curtain = hung(
        span(40, 4.25, layers=2), bar(round_tube(1.66, 0.065)), crank(12), wrap_ft=1, slack_ft=0.25
    )
    assert work_curtain(curtain).diameters_m[1] / INCH_M == pytest.approx(1.8307, abs=5e-5)


def test_same_side_on_one_bar_agrees_with_the_hand_sum() -> None:
    (work,) = _worked(_long_tunnel(22, (), 0.5))
    assert work.length_m / FOOT_M == pytest.approx(77)
    assert work.weights_n[2] / LBF_N == pytest.approx(126.7, abs=0.06)
    assert work.torques_nm[2] / LBF_IN_NM == pytest.approx(121.4, abs=0.06)
    assert work.hardest_n / LBF_N == pytest.approx(10.1, abs=0.05)


def test_side_of_144_feet_cranked_from_both_ends_has_two_panels_of_72() -> None:
    # Common practice, no published source.
    whole = _worked(_long_tunnel(39, (), 0.0))
    halves = _worked(_long_tunnel(39, (Split(at_m=76 * FOOT_M),), 0.0))
    assert [w.length_m / FOOT_M for w in whole] == pytest.approx([144])
    assert [w.length_m / FOOT_M for w in halves] == pytest.approx([72, 72])
    for half in halves:
        assert half.hardest_n == pytest.approx(whole[0].hardest_n / 2)
        assert half.trailing_m == pytest.approx(whole[0].trailing_m / 4)


@pytest.mark.parametrize("kind", ["roof_and_sides", "one_sheet"])
def test_crank_at_either_end_turns_alike(kind: Covering) -> None:
    plain = tunnel()

    def cranked(end: str) -> tuple[CurtainWork, ...]:
        sides = tuple(s.but(panels=(s.panels[0].but(crank_end=end),)) for s in plain.sides)
        return _worked(plain.but(sides=sides), kind)

    back = (replace(work, cranked="front") for work in cranked("back"))
    assert cranked("front") == tuple(back)


def test_fixed_sides_have_no_curtain_to_work() -> None:
    fixed = (side("West side", kind="fixed"), side("East side", kind="fixed"))
    assert _worked(tunnel(sides=fixed)) == ()


def test_every_curtain_of_the_cover_is_worked_in_its_order() -> None:
    marks = [work.mark for work in _worked(double_tunnel())]
    assert marks == ["side/0/panel/0", "side/0/panel/1", "side/1/panel/0", "side/1/panel/1"]


@pytest.mark.parametrize("covering", ["roof_and_sides", "one_sheet"])
def test_woven_and_drop_down_sides_are_worked_in_both_coverings(covering: Covering) -> None:
    drops = drop_side("East side", (Split(at_m=9.0),))
    panels = tuple(p.but(drive="drum") for p in drops.panels)
    plain = tunnel(sides=(woven_side(), drops.but(panels=panels)))
    woven, *dropped = _worked(plain, covering)
    assert (woven.kind, woven.lift_lines) == ("woven", 0)
    assert woven.turns > 0
    for work in dropped:
        assert (work.kind, work.bar_joints) == ("drop_down", work.bar_sticks - 1)
        assert work.travel_m == pytest.approx(1.2 - 0.3)
        assert work.lift_lines >= 2


def test_minutes_are_handle_turns_over_their_rate() -> None:
    # Worked by hand: 13.14 turns of 5 ft of 6 mil film on 1-3/8 in rail, geared 5 to 1, at 30 turns
    # a minute: 2.19 minutes.
    roll_bar = bar(round_tube(1.375, 0.058))
    work = work_curtain(hung(span(100, 5), roll_bar, geared(7), FREE.but(handle_rate_per_min=30)))
    assert work.minutes == pytest.approx(2.19, abs=1e-3)


def test_stop_above_the_shut_bar_leaves_a_curtain_that_cannot_climb() -> None:
    roll_bar = bar(round_tube(1.375, 0.058))
    work = work_curtain(sided(hung(span(40, 1), roll_bar, crank(7)), stop_m=0.5))
    assert (work.travel_m, work.opening_m2, work.energy_j) == (0.0, 0.0, 0.0)


def test_slack_is_wound_but_not_climbed() -> None:
    roll_bar = bar(round_tube(1.66, 0.065))
    tight = work_curtain(hung(span(40, 4), roll_bar, crank(12), wrap_ft=1))
    loose = work_curtain(hung(span(40, 4.25), roll_bar, crank(12), wrap_ft=1, slack_ft=0.25))
    assert loose.travel_m == pytest.approx(tight.travel_m)
    assert loose.turns > tight.turns
    assert loose.diameters_m[2] > tight.diameters_m[2]


def test_zero_slack_climbs_all_that_hangs() -> None:
    work = work_curtain(hung(span(40, 4), bar(round_tube(1.66, 0.065)), crank(12)))
    assert work.travel_m == pytest.approx(4 * FOOT_M)


def test_two_layers_roll_thicker_and_heavier_than_one() -> None:
    one, two = (
        work_curtain(hung(span(40, 4, layers=n), bar(round_tube(1.66, 0.065)), crank(12)))
        for n in (1, 2)
    )
    assert two.diameters_m[2] > one.diameters_m[2]
    assert two.hardest_n > one.hardest_n
    assert two.turns < one.turns


def test_opening_is_clear_under_the_roll() -> None:
    # 4 ft up to the axis of the open bar, less half a roll of 1.916 in, over 32 ft of clear
    # length: 125.4 ft2.
    front, _ = _worked(_long_tunnel(22, (Split(at_m=36 * FOOT_M),), 0.5))
    assert front.opening_m2 / FOOT_M**2 == pytest.approx(32 * (4 - 1.916 / 24), abs=0.01)


def test_bar_that_shuts_below_the_baseboard_opens_no_more_than_the_side() -> None:
    low, level = (
        work
        for shut_m in (0.1, 0.3)
        for work in _worked(tunnel(sides=(side(shut_height_m=shut_m), side(kind="fixed"))))
    )
    assert low.travel_m == pytest.approx(level.travel_m + 0.2)
    assert low.opening_m2 == pytest.approx(level.opening_m2, rel=2e-3)


def test_catalogue_refuses_a_stick_shorter_than_its_joint() -> None:
    catalogue = small_farm().catalogue
    parts = tuple(p.but(holds=0.1) if p.key == "bar_stick" else p for p in catalogue.parts)
    with pytest.raises(ValueError, match="longer stick or a shorter overlap"):
        catalogue.but(parts=parts)
