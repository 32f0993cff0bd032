"""Rope and straps of one curtain: drawn over it and pulled by the wind of the standard."""

import pytest
import shapely

from hanging import FOOT_M, FREE, bar, chosen, crank, drum, hung, round_tube, sided, span
from hoopwright.curtain.cranking import work_curtain
from hoopwright.curtain.hung import HungCurtain
from hoopwright.curtain.rope import ROPE_END_M, STRAP_END_M

RAIL = bar(round_tube(1.375, 0.058))


def _roped(step_ft: float | None, **changes: object) -> HungCurtain:
    """Return 40 ft of curtain over a side 5 ft high, bows at 4 ft."""
    curtain = chosen(hung(span(40, 5), RAIL, crank(7)), **changes)
    return sided(curtain, rope_step_m=step_ft * FOOT_M if step_ft else None)


# Worked by hand: 40 ft at 3 ft take 14 legs of 2.857 ft; one a bay takes 10 of 4 ft.
@pytest.mark.parametrize(("step_ft", "legs"), [(3.0, 14), (None, 10)])
def test_zigzag_is_as_long_as_it_is_drawn(step_ft: float | None, legs: int) -> None:
    work = work_curtain(_roped(step_ft, rope="zigzag"))
    drawn = shapely.LineString(
        [(40 * FOOT_M * k / legs, 5 * FOOT_M * (k % 2)) for k in range(legs + 1)]
    )
    assert (work.rope_legs, work.eyes) == (legs, legs + 1)
    assert work.rope_m == pytest.approx(drawn.length + 2 * ROPE_END_M)


# Worked by hand: 40 ft at 3 ft take 15 straps; one at each of 9 bows within and at both ends, 11.
@pytest.mark.parametrize(("step_ft", "straps"), [(3.0, 15), (None, 11)])
def test_straps_hang_straight_down_with_two_eyes_each(step_ft: float | None, straps: int) -> None:
    work = work_curtain(_roped(step_ft, rope="straps"))
    assert (work.rope_legs, work.eyes) == (straps, 2 * straps)
    assert work.rope_m == pytest.approx(straps * (5 * FOOT_M + 2 * STRAP_END_M))


def test_without_rope_nothing_is_counted_or_pulled() -> None:
    work = work_curtain(_roped(3.0, rope="none"))
    assert (work.rope_m, work.rope_legs, work.eyes) == (0.0, 0, 0)
    assert (work.rope_tension_n, work.eye_load_n) == (0.0, 0.0)


# Worked by hand after ASCE 7-05 to 7-16: open ground C below 15 ft has Kz = 0.849, Kd 0.85, gust
# 40 m/s: 0.613 x 0.849 x 0.85 x 1600 = 707.8 Pa. Half of it on a strap of 4 ft x 5 ft, 1.858 m2, is
# 657.5 N; half of that at each eye, 328.8 N. Bowed 0.1 m over 1.524 m the strap pulls 657.5 x 1.524
# / 0.8 = 1252.6 N along and 328.8 N across: 1295.0 N.
def test_storm_pulls_a_strap_as_worked_by_hand() -> None:
    work = work_curtain(_roped(None, rope="straps"))
    assert work.eye_load_n == pytest.approx(328.8, rel=1e-3)
    assert work.rope_tension_n == pytest.approx(1295.0, rel=1e-3)


def test_eye_inside_a_zigzag_holds_two_legs() -> None:
    # An eye of a zigzag takes the whole patch of one step, that of a strap half a patch.
    zigzag = work_curtain(_roped(None, rope="zigzag"))
    strap = work_curtain(_roped(None, rope="straps"))
    assert zigzag.eye_load_n == pytest.approx(2 * strap.eye_load_n)


def test_rope_over_a_drop_down_curtain_reaches_the_baseboard() -> None:
    curtain = hung(span(40, 5), RAIL, drum(12, 3), FREE, kind="drop_down")
    roped = sided(chosen(curtain, rope="straps"), bunch_m=0.3)
    work = work_curtain(roped)
    assert work.rope_m == pytest.approx(11 * (5 * FOOT_M + 2 * STRAP_END_M))
