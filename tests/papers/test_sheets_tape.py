"""Readings on paper: girths with the one that governs, lengths, and heights bow by bow."""

from typing import Any

import pytest

from fit.fitted import bent_tunnel
from hoopwright.farm import AcrossUp, BowReading, MeasuredBow, SideReading, Tape, Tunnel
from hoopwright.papers.sheets_tape import tape_sheet
from hoopwright.plan import plan
from hoopwright.quantity.units import Units
from samples import small_farm, tunnel

Rows = list[list[Any]]


def rows_of(units: Units, made: Tunnel) -> Rows:
    farm = small_farm(made).but(units=units)
    sheet = tape_sheet(farm, plan(farm))
    return [[None if e is None else e.value for e in row.entries] for row in sheet.rows]


def below(rows: Rows, heading: str) -> tuple[list[Any], Rows]:
    """Return the headings under a title, and the lines under them up to a free row."""
    start = next(n for n, row in enumerate(rows) if row and row[0] == heading)
    lines = rows[start + 2 :]
    end = next((n for n, row in enumerate(lines) if not row), len(lines))
    return rows[start + 1], lines[:end]


@pytest.mark.parametrize("units", ["imperial", "metric"])
def test_girths_stand_with_the_one_that_governs_and_the_outlier(units: Units) -> None:
    head, lines = below(rows_of(units, bent_tunnel()), "Girths read")
    told = head.index("Told")
    assert [line[told] for line in lines] == ["", "", "", "", "governs, outlier, measure again"]
    assert [line[head.index("Bow")] for line in lines] == [1, 6, 11, 17, 22]
    # 31 ft 2 in are 31.17 ft or 9.500 m; the median is 30 ft 9 1/2 in, 4 1/2 in or 114.3 mm less.
    imperial = units == "imperial"
    girth = next(n for n, words in enumerate(head) if words.startswith("Girth"))
    off = next(n for n, words in enumerate(head) if words.startswith("From the median"))
    assert float(lines[-1][girth]) == (31.17 if imperial else 9.5)
    assert float(lines[-1][off]) == (4.5 if imperial else 114.3)


def test_spread_names_the_bow_and_the_profile() -> None:
    head, lines = below(rows_of("imperial", bent_tunnel()), "What the girths come to")
    (line,) = lines
    found = dict(zip(head, line, strict=True))
    assert found["Over the ridge"] == "hip to hip"
    assert (found["Bows read"], found["At bow"]) == (5, 22)
    # 31 ft 2 in less 30 ft 8 3/4 in.
    assert float(found["Longest less shortest (in)"]) == 5.25


def test_length_with_what_the_bent_frame_takes() -> None:
    plain = tunnel()
    tape = Tape(hip_lengths_m=(24.05, 24.03), diagonals_m=(25.5, 25.2), leans_m=(0.1, -0.2))
    made = plain.but(frame=plain.frame.but(tape=tape))
    head, lines = below(rows_of("metric", made), "Length, skew, lean and dip")
    found = dict(zip(head, lines[0], strict=True))
    assert float(found["Longest length (m)"]) == 24.05
    assert float(found["Lean costs in length (mm)"]) == 100.0
    total = 24.05 + (float(found["Skew costs in length (mm)"]) + 100.0) / 1000
    assert float(found["A sheet must cover (m)"]) == pytest.approx(total, abs=2e-3)
    assert not any(words.startswith("Radius") for words in head)


def test_measured_bow_shows_its_best_circle() -> None:
    arc = ((1.0, 1.0), (2.6, 1.8), (4.0, 2.0), (5.4, 1.8), (7.0, 1.0))
    taken = tuple(AcrossUp(across_m=x, up_m=y) for x, y in arc)
    made = tunnel(MeasuredBow(span_m=8.0, points=taken))  # type: ignore[arg-type]
    head, lines = below(rows_of("metric", made), "Length, skew, lean and dip")
    found = dict(zip(head, lines[0], strict=True))
    # The points lie on a circle of 5 m round (4, -3), which meets the ground at the feet too.
    assert float(found["Radius of the best circle (m)"]) == 5.0
    assert float(found["Bow off that circle (mm)"]) == 0.0


def test_heights_say_how_they_are_known() -> None:
    plain = tunnel()
    rows = tuple(
        BowReading(bow=bow, sides=(SideReading(), SideReading(ground_m=ground_m)))
        for bow, ground_m in ((5, 0.0), (9, -0.2))
    )
    made = plain.but(frame=plain.frame.but(tape=Tape(bows=rows)))
    head, lines = below(rows_of("metric", made), "Heights along the sides")
    assert {line[head.index("Side")] for line in lines} == {"East side"}
    assert len(lines) == 17
    ground, known = head.index("Ground (m)"), head.index("Ground is")
    assert [(float(lines[n][ground]), lines[n][known]) for n in (0, 4, 6, 8, 16)] == [
        (0.0, "as at the nearest read"),
        (0.0, "read"),
        (-0.1, "interpolated"),
        (-0.2, "read"),
        (-0.2, "as at the nearest read"),
    ]
    assert {line[head.index("Hip is")] for line in lines} == {"as entered"}
    head, lines = below(rows_of("metric", made), "Under shut curtains")
    # The bar shuts at 0.25 m.
    gaps = [float(line[head.index("Bar to ground, at most (m)")]) for line in lines]
    assert gaps == [0.25, 0.45]


def test_without_readings_it_is_said() -> None:
    rows = rows_of("metric", tunnel())
    told = {row[0] for row in rows if row}
    assert "No girth was read; the film is planned by the profile." in told
    assert "No height was read." in told


def test_lengths_diagonals_and_leans_stand_as_they_were_read() -> None:
    plain = tunnel()
    tape = Tape(hip_lengths_m=(24.05, None), diagonals_m=(25.5, 25.2), leans_m=(0.1, -0.2))
    made = plain.but(frame=plain.frame.but(tape=tape))
    head, (line,) = below(rows_of("metric", made), "Lengths, diagonals and leans read")
    assert [None if cell is None else str(cell) for cell in line] == [
        "Meadow tunnel",
        "24.050",
        "25.500",
        "25.200",
        "100.0",
        "-200.0",
    ]
    # What nobody read has no column.
    assert not any("second side (m)" in words for words in head if words.startswith("Along"))
