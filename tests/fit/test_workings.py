"""Every figure of a fitted sheet says how it was got, and the model stands there in words."""

import statistics
from dataclasses import fields

import pytest

from fit.fitted import BENT, bent_tunnel, fitted, stocked
from hoopwright.farm import Film
from hoopwright.fit import SheetFit
from hoopwright.quantity.working import explain


@pytest.mark.parametrize("girths_m", [None, {}, {4: BENT[22]}])
def test_every_figure_has_a_working(girths_m: dict[int, float] | None) -> None:
    (sheet,) = fitted(bent_tunnel(girths_m)).sheets
    figures = {f.name for f in fields(SheetFit) if f.name.endswith(("_m", "_share"))}
    for figure in (*figures, "chance", "widths", "remeasured"):
        said = explain(sheet.working(figure), "imperial")
        assert "Source:" in said
        assert "{" not in said


def test_mean_and_deviation_follow_from_the_inputs_of_their_workings() -> None:
    (sheet,) = fitted(bent_tunnel(error_m=0.01)).sheets
    read_m = [
        float(term.value) for term in sheet.working("middle_m").inputs if term.name[:4] == "bow "
    ]
    assert sheet.middle_m == pytest.approx(statistics.mean(read_m))
    inputs = {term.name: float(term.value) for term in sheet.working("deviation_m").inputs}
    again_m = [x for name, x in inputs.items() if name[:4] == "bow "]
    # An error that is anything up to e either way has the variance e2 / 3.
    left_m2 = statistics.variance(again_m) - inputs["error of a reading"] ** 2 / 3
    assert sheet.deviation_m == pytest.approx(left_m2**0.5)
    assert sheet.governing_m == max(float(t.value) for t in sheet.working("governing_m").inputs)


def test_the_model_names_every_doubt_that_can_be_entered() -> None:
    films: tuple[Film, ...] = stocked(0.02)
    (sheet,) = fitted(bent_tunnel(error_m=0.01), films).sheets
    working = sheet.working("chance")
    inputs = {term.name: term.value for term in working.inputs}
    assert inputs["error of a reading"] == 0.01
    assert inputs["roll may be narrower by"] == 0.02
    assert inputs["deviation of the bows"] == sheet.deviation_m
    assert inputs["stock width"] == sheet.chosen_m
    assert "outlier counts like any other" in working.rule
    assert "Student" in working.source


def test_what_cannot_be_told_says_why() -> None:
    (one,) = fitted(bent_tunnel({4: BENT[22]})).sheets
    assert "One reading tells no spread" in one.working("chance").rule
    (narrow,) = fitted(bent_tunnel(), stocked(stocks_ft=(24, 28))).sheets
    assert "No stock width holds the sheet" in narrow.working("chance").rule
