"""How long sheets along the tunnel are cut, on a frame that stands straight and on a bent one."""

import pytest

from hoopwright.cover.lengths import seam_length, side_length, whole_length
from hoopwright.farm import Tape
from hoopwright.survey import Survey, survey_frame
from samples import tunnel

SKIN = tunnel().skin
# Two tails of 2 ft.
TAILS_M = 1.2192


def survey_of(**readings: object) -> Survey:
    tape = Tape(**readings)  # type: ignore[arg-type]
    return survey_frame(tunnel().frame.but(tape=tape))


BENT = survey_of(hip_lengths_m=(24.0, 24.06), diagonals_m=(25.5, 25.3), leans_m=(0.08, 0.04))


def test_straight_frame_is_as_long_as_its_bows() -> None:
    size = whole_length(survey_of(), SKIN)
    assert size.total_m == pytest.approx(24.0 + TAILS_M)
    assert size.parts[0] == ("first to last bow", 24.0)
    assert side_length(survey_of(), SKIN) == size


def test_longest_length_read_governs_and_is_named() -> None:
    size = whole_length(survey_of(base_lengths_m=(24.02, 23.98)), SKIN)
    assert size.parts[0] == ("along the baseboard of the first side, as read", 24.02)
    assert size.total_m == pytest.approx(24.02 + TAILS_M)


def test_bent_frame_adds_skew_and_lean_by_name() -> None:
    parts = dict(whole_length(BENT, SKIN).parts)
    # Squares 650.25 and 640.09, sides 48.06 m: 10.16 / 96.12 = 0.1057 m ahead on the average; the
    # second side is 0.06 m longer, so 0.0757 m at the front, 0.1357 at the back, and a square
    # sheet reaches from 0 to 24 + 0.1357: 0.0757 m more than the longer side.
    assert parts["ends out of square"] == pytest.approx(0.0757, abs=1e-4)
    assert parts["front end bow out of plumb"] == 0.08
    assert parts["back end bow out of plumb"] == 0.04
    assert whole_length(BENT, SKIN).total_m == pytest.approx(BENT.sheet_length_m + TAILS_M)
    assert "cut square" in whole_length(BENT, SKIN).rule


def test_sheet_of_a_side_is_not_shortened_by_skew() -> None:
    assert side_length(BENT, SKIN).total_m == pytest.approx(24.06 + 0.12 + TAILS_M)


def test_sheets_between_seams_cover_the_whole() -> None:
    survey, lap_m = survey_of(), SKIN.allowances.seam_lap_m
    first, middle, last = (
        seam_length(survey, SKIN, *ends) for ends in ((0.0, 9.0), (9.0, 15.0), (15.0, 24.0))
    )
    assert middle.total_m == pytest.approx(6.0 + lap_m)
    assert first.total_m == last.total_m == pytest.approx(9.0 + lap_m / 2 + TAILS_M / 2)


def test_each_sheet_between_seams_bears_the_skew_and_its_own_end() -> None:
    ends = ((0.0, 9.0), (9.0, 15.0), (15.0, 24.0))
    first, middle, last = (dict(seam_length(BENT, SKIN, *spots).parts) for spots in ends)
    for parts in (first, middle, last):
        assert parts["ends out of square"] == pytest.approx(0.0757, abs=1e-4)
    more_m = "its share of what the length read is more"
    assert first[more_m] + middle[more_m] + last[more_m] == pytest.approx(0.06)
    assert first["front end bow out of plumb"] == 0.08
    assert last["back end bow out of plumb"] == 0.04
    assert not any("plumb" in name for name in middle)
