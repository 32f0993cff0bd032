"""A working carries what its figure is got from: the figures worked again from it by hand."""

from dataclasses import fields

import pytest

from hanging import (
    boarded,
    chosen,
    dropping,
    geared,
    inputs_of,
    rolling,
    sided,
)
from hoopwright.curtain.cranking import work_curtain
from hoopwright.curtain.hung import HungCurtain
from hoopwright.quantity.working import ENTERED, Units, explain

UNEXPLAINED = {"mark", "side", "index", "kind", "cranked", "bound_by", "hung", "workings"}


CASES = {
    "hand crank": rolling(),
    "geared crank": rolling(geared(12)),
    "in the middle": chosen(rolling(geared(12, holds=False)), crank_end="middle"),
    "winding into": chosen(rolling(), winding="into", rope="none"),
    "straps": chosen(rolling(), rope="straps"),
    "a leg in each bay": sided(rolling(), rope_step_m=None),
    "a strap at each bow": sided(chosen(rolling(), rope="straps"), rope_step_m=None),
    "drop-down": dropping(),
    "drop-down that holds": boarded(chosen(dropping(True), rope="straps"), gutter_drop_m=0.1),
}


@pytest.mark.parametrize("curtain", CASES.values(), ids=CASES)
@pytest.mark.parametrize("units", ["imperial", "metric"])
def test_every_figure_says_how_it_was_got(curtain: HungCurtain, units: Units) -> None:
    work = work_curtain(curtain)
    figures = {field.name for field in fields(work)} - UNEXPLAINED
    assert sorted(w.figure for w in work.workings) == sorted(figures)
    for working in work.workings:
        assert working.source in explain(working, units)
        assert working.inputs or working.source == ENTERED


@pytest.mark.parametrize("curtain", CASES.values(), ids=CASES)
def test_figure_without_inputs_is_one_that_this_curtain_has_not(curtain: HungCurtain) -> None:
    work = work_curtain(curtain)
    for working in work.workings:
        if working.inputs or working.figure == "trailing_length_m":
            continue
        figure = getattr(work, working.figure)
        plain = 1.0 if working.figure == "joint_swing" else 0
        assert figure in (None, plain, (0.0, 0.0, 0.0))


def test_longest_bar_is_the_least_of_itsinputs_of() -> None:
    for curtain in CASES.values():
        work = work_curtain(curtain)
        assert work.longest_m == min(inputs_of(work, "longest_m").values())
