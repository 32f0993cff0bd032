"""Trailing, worked again by hand from its workings."""

import math
from dataclasses import replace

import pytest

from hanging import chosen, inputs_of, rolling
from hoopwright.curtain.bar import TORSION_RULE
from hoopwright.curtain.cranking import work_curtain

G_M_S2 = 9.80665


def test_twist_follows_from_its_working() -> None:
    work = work_curtain(chosen(rolling(), crank_end="middle"))
    given = inputs_of(work, "twist_rad")
    inside_m = given["outside of the bar"] - 2 * given["wall"]
    stiffness_nm2 = 77e9 * math.pi * (given["outside of the bar"] ** 4 - inside_m**4) / 32
    line_nm = given["torque of one metre of bar, open"]
    reach_m = given["reach from the crank"]
    assert work.twist_rad == pytest.approx(line_nm * reach_m**2 / (2 * stiffness_nm2))


def test_trailing_follows_from_its_workings() -> None:
    work = work_curtain(rolling())
    twist, play = inputs_of(work, "twist_trailing_m"), inputs_of(work, "play_trailing_m")
    uneven = inputs_of(work, "uneven_trailing_m")
    by_play_m = (
        play["joints up to there"]
        * play["play in a joint"]
        / play["outside of the bar"]
        * play["roll open"]
    )
    by_uneven_m = 2 * math.pi * uneven["turns of the bar"] * uneven["uneven winding"]
    by_twist_m = twist["twist"] * twist["roll open"] / 2
    assert work.trailing_m == pytest.approx(by_twist_m + by_play_m + by_uneven_m)
    assert work.trailing_m == pytest.approx(sum(inputs_of(work, "trailing_m").values()))


def test_twist_of_a_slit_bar_tells_that_it_is_slit() -> None:
    curtain = rolling()
    slit = work_curtain(replace(curtain, bar=curtain.bar.but(slit=True)))
    assert TORSION_RULE["round", True] in slit.working("twist_rad").rule
    assert TORSION_RULE["round", False] in work_curtain(curtain).working("twist_rad").rule
