"""The readings of a frame put together, and a working for each figure."""

import pytest

from files.varied import standing_tunnel
from hoopwright.farm import Frame, Tape
from hoopwright.quantity.working import explain
from hoopwright.survey import survey_frame
from samples import tunnel

FIGURES = (
    "length_m",
    "skew_m",
    "skew_cost_m",
    "lean_costs_m",
    "lean_cost_m",
    "dip_m",
    "dip_cost_m",
)


def frame_of(**readings: object) -> Frame:
    return tunnel().frame.but(tape=Tape(**readings))  # type: ignore[arg-type]


def test_longest_length_governs_and_names_its_line() -> None:
    taped = survey_frame(frame_of(hip_lengths_m=(24.02, None), base_lengths_m=(24.0, 24.07))).taped
    assert (taped.length_m, taped.length_line) == (24.07, "baseboard of the second side")


def test_without_lengths_the_bows_give_it() -> None:
    taped = survey_frame(frame_of()).taped
    assert (taped.length_m, taped.length_line) == (24.0, "")
    assert (taped.skew_m, taped.skew_cost_m, taped.lean_cost_m, taped.dip_m) == (None, 0, 0, 0)
    assert (taped.hips, taped.baseboards) == (None, None)


def test_sheet_covers_length_skew_and_lean() -> None:
    # (25.5^2 - 25.3^2) / (4 x 24) = 10.16 / 96 = 0.10583 m; the front bow leans out by 0.08 m.
    survey = survey_frame(frame_of(diagonals_m=(25.5, 25.3), leans_m=(0.08, -0.05)))
    assert survey.taped.skew_m == pytest.approx(0.105833, abs=1e-6)
    assert survey.sheet_length_m == pytest.approx(24.0 + 0.105833 + 0.08, abs=1e-6)


@pytest.mark.parametrize("frame", [frame_of(), standing_tunnel().frame], ids=["plain", "standing"])
def test_every_figure_says_how_it_was_got(frame: Frame) -> None:
    taped = survey_frame(frame).taped
    for figure in FIGURES:
        for units in ("imperial", "metric"):
            assert "Source:" in explain(taped.working(figure), units)  # type: ignore[arg-type]
