"""Wind rope and straps, worked again by hand from their workings."""

import math

import pytest

from hanging import FOOT_M, chosen, inputs_of, rolling, sided
from hoopwright.curtain.cranking import work_curtain
from hoopwright.curtain.rope_workings import NO_ROPE, ROPE_FIGURES

G_M_S2 = 9.80665


def test_pull_on_rope_and_eye_follows_from_its_working() -> None:
    work = work_curtain(chosen(rolling(), rope="straps"))
    given = inputs_of(work, "rope_tension_n")
    load_n = given["pressure of the storm"] * given["share taken"] * given["step"]
    load_n *= given["between the rows of eyes"]
    along_n = load_n * given["leg"] / (8 * given["bow"])
    assert work.rope_tension_n == pytest.approx(math.hypot(along_n, load_n / 2))
    assert work.eye_load_n == pytest.approx(load_n / 2)
    assert inputs_of(work, "rope_m")["between the rows of eyes"] == pytest.approx(4.75 * FOOT_M)


def test_rope_in_each_bay_counts_bows_and_one_by_steps_the_length() -> None:
    bays = work_curtain(sided(rolling(), rope_step_m=None))
    assert bays.rope_legs == inputs_of(bays, "rope_legs")["bows between the ends"] + 1
    steps = work_curtain(rolling())
    given = inputs_of(steps, "rope_legs")
    assert steps.rope_legs == math.ceil(given["length of the curtain"] / given["step"] - 1e-9)


def test_curtain_without_rope_says_so() -> None:
    work = work_curtain(chosen(rolling(), rope="none"))
    assert {work.working(figure).rule for figure in ROPE_FIGURES} == {NO_ROPE}
