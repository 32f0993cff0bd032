"""The frame in the panel: measured points, what the readings come to, and where they hold.

1 ft = 0.3048 m exactly (NIST Special Publication 811, appendix B).
"""

from statistics import median, stdev

import pytest
from pytestqt.qtbot import QtBot

from forms import choose, figure_of, line_named, names_in, open_panel, press, said_by, type_into
from hoopwright.desktop.details_edits import with_entered
from hoopwright.desktop.details_form import FigureLine
from hoopwright.desktop.details_items import Special
from hoopwright.desktop.details_readings import HEIGHTS
from hoopwright.desktop.session import Session
from hoopwright.farm import (
    AcrossUp,
    BowReading,
    Farm,
    MeasuredBow,
    RoundBow,
    SideReading,
    Tape,
    Tunnel,
    TwoTapes,
)
from hoopwright.farm.entered import describe
from hoopwright.survey.bow_curve import bow_curve
from samples import gothic_tunnel, rafter_tunnel, small_farm, tunnel

GIRTHS = {1: 9.60, 5: 9.64, 9: 9.62, 13: 9.61, 17: 9.75}
SPAN = "Frame: span, tube centre to tube centre"


def read_farm(**changes: object) -> Farm:
    """Return a farm whose tunnel was read at five bows, one of them far from the others."""
    rows = tuple(BowReading(bow=bow, over_hips_m=girth_m) for bow, girth_m in GIRTHS.items())
    plain = tunnel()
    tape = Tape(bows=rows).but(**changes)
    return small_farm(plain.but(frame=plain.frame.but(tape=tape)))


def measured_farm() -> Farm:
    """Return a farm with a bow of three points."""
    points = ((0.3, 1.0), (4.2, 3.7), (7.8, 1.1))
    bow = MeasuredBow(span_m=8.0, points=tuple(AcrossUp(across_m=x, up_m=y) for x, y in points))
    plain = tunnel()
    boards = tuple(b.but(hip_height_m=1.2) for b in plain.frame.boards)
    return small_farm(plain.but(frame=plain.frame.but(profile=bow, boards=boards)))


def bow_of(session: Session) -> MeasuredBow:
    profile = session.tunnel.frame.profile
    assert isinstance(profile, MeasuredBow)
    return profile


@pytest.mark.parametrize("plain", [tunnel(), gothic_tunnel(), rafter_tunnel()])
def test_bow_of_a_shape_becomes_measured_points_and_keeps_its_girth(plain: Tunnel) -> None:
    session = Session(small_farm(plain))
    girth_m = session.tunnel_plan.survey.roof_girth_m
    shape = Special("shape", 0, "shape")
    session.apply(with_entered(shape, session.farm, 0, "measured"), "Change shape")
    assert session.tunnel_plan.survey.roof_girth_m == pytest.approx(girth_m, rel=1.5e-3)
    session.deleteLater()


def test_shape_goes_to_measured_points_and_back(qtbot: QtBot) -> None:
    session, panel = open_panel(qtbot, small_farm(tunnel()), "Frame")
    choose(qtbot, panel, "Frame: shape of the bows", "measured points")
    assert line_named(panel, SPAN).text() == "8.000 m"
    assert "Frame: leg height" not in names_in(panel, "Frame")
    choose(qtbot, panel, "Frame: shape of the bows", "round bow")
    round_bow = session.tunnel.frame.profile
    assert isinstance(round_bow, RoundBow)
    sizes = (round_bow.span_m, round_bow.leg_height_m, round_bow.peak_height_m)
    assert sizes == pytest.approx((8.0, 1.5, 3.7))


def test_points_are_typed_added_and_taken_away(qtbot: QtBot) -> None:
    session, panel = open_panel(qtbot, measured_farm(), "Frame")
    type_into(qtbot, line_named(panel, "Frame: point 2, up"), "3.9")
    assert bow_of(session).points[1] == AcrossUp(across_m=4.2, up_m=3.9)
    choose(qtbot, panel, "Frame: between the points", "straight from point to point")
    assert bow_of(session).join == "corners"
    press(qtbot, panel, "Frame: Add a point")
    assert len(bow_of(session).points) == 4
    press(qtbot, panel, "Frame: Remove point 2")
    assert len(bow_of(session).points) == 3
    session.stack.undo()
    assert len(bow_of(session).points) == 4


def test_point_by_two_tapes_that_do_not_meet_is_refused(qtbot: QtBot) -> None:
    session, panel = open_panel(qtbot, measured_farm(), "Frame")
    choose(qtbot, panel, "Frame: point 2, taken by", "two tapes from the feet")
    assert isinstance(bow_of(session).points[1], TwoTapes)
    before = session.farm
    type_into(qtbot, line_named(panel, "Frame: point 2, tape from the first foot"), "1.5")
    assert session.farm is before
    assert "do not meet above a span of 8.000 m" in said_by(panel)
    assert line_named(panel, "Frame: point 2, tape from the first foot").text() == "1.5"


def test_last_three_points_stay(qtbot: QtBot) -> None:
    session, panel = open_panel(qtbot, measured_farm(), "Frame")
    told: list[str] = []
    session.noticed.connect(lambda _severity, text: told.append(text))
    press(qtbot, panel, "Frame: Remove point 1")
    assert told == ["Enter at least three points on the bow"]
    assert session.stack.count() == 0


def test_heights_that_can_hold_are_fields_of_a_reading() -> None:
    assert set(HEIGHTS) < {known.name for known in describe(SideReading)}


def test_spread_of_the_girths_is_shown_with_its_working(qtbot: QtBot) -> None:
    _session, panel = open_panel(qtbot, read_farm(), "Figures of the frame")
    lengths = list(GIRTHS.values())
    assert figure_of(panel, "governing girth") == "9.750 m at bow 17"
    assert figure_of(panel, "middle one") == f"{median(lengths):.3f} m"
    assert figure_of(panel, "spread, longest less shortest") == "0.150 m"
    assert figure_of(panel, "standard deviation") == f"{stdev(lengths):.3f} m"
    # 0.13 m from the middle one, and 0.05 m is allowed.
    assert "Outlier: 9.750 m at bow 17; measure it again." in said_by(panel)
    line = next(
        f
        for f in panel.findChildren(FigureLine)
        if f.button.accessibleName().startswith("governing girth")
    )
    line.button.click()
    assert "an outlier too, until it is measured again" in line.told.text()


def test_bent_frame_says_what_it_costs(qtbot: QtBot) -> None:
    farm = read_farm(base_lengths_m=(24.0, 24.0), diagonals_m=(25.4, 25.2), leans_m=(0.05, -0.02))
    _session, panel = open_panel(qtbot, farm, "Figures of the frame")
    # (25.4² - 25.2²) / (4 · 24) = 10.12 / 96 = 0.105 m, all of which a square sheet must cover.
    assert figure_of(panel, "second side runs ahead") == "0.105 m"
    assert figure_of(panel, "skew costs, film length") == "0.105 m"
    assert figure_of(panel, "lean costs, front · back") == "0.050 · 0.000 m"
    # 24 m, the skew and the lean of the front end: the back end leans in.
    assert figure_of(panel, "length a sheet must cover") == "24.155 m"


def test_without_readings_nothing_is_said_of_them(qtbot: QtBot) -> None:
    _session, panel = open_panel(qtbot, small_farm(), "Figures of the frame")
    assert "What a bent frame costs" not in said_by(panel)
    _session, panel = open_panel(qtbot, small_farm(), "Frame")
    assert "Readings hold" not in said_by(panel)


def test_frame_says_where_readings_hold(qtbot: QtBot) -> None:
    farm = read_farm(hip_lengths_m=(24.1, None))
    rows = farm.tunnels[0].frame.tape.bows
    read = SideReading(hip_m=1.45)
    rows = (rows[0].but(sides=(SideReading(), read)), *rows[1:])
    frame = farm.tunnels[0].frame
    frame = frame.but(tape=frame.tape.but(bows=rows))
    _session, panel = open_panel(
        qtbot, small_farm(farm.tunnels[0].but(frame=frame)), "Frame", "side/1/hip"
    )
    said = said_by(panel)
    assert "Readings hold for the width of the film: bow 17 governs." in said
    assert "Readings hold for the length of the film: 24.100 m along the sides." in said
    # Once with the boards of the second side, once with its hip board that is picked.
    assert said.count("Readings hold for the hip board: bow 1.") == 2
    assert "Readings hold for the baseboard" not in said


def test_girth_shorter_than_the_straight_line_is_refused_by_the_span(qtbot: QtBot) -> None:
    session, panel = open_panel(qtbot, read_farm(), "Frame")
    type_into(qtbot, line_named(panel, SPAN), "12")
    assert "shorter than the straight line from hip to hip" in said_by(panel)
    assert session.tunnel.frame.profile.span_m == 8.0


def test_best_circle_through_points_of_a_circle_is_that_circle(qtbot: QtBot) -> None:
    # Seven points of a circle of 4.736 m, on a bow without legs.
    arc = bow_curve(RoundBow(span_m=8.0, leg_height_m=0.0, peak_height_m=2.2), 0.0)
    spots = arc.outline(arc.length_m / 8)[1:-1]
    points = tuple(AcrossUp(across_m=x + 4.0, up_m=y) for x, y in spots)
    plain = tunnel(MeasuredBow(span_m=8.0, points=points))
    _session, panel = open_panel(qtbot, small_farm(plain), "Figures of the frame")
    radius_m = (16 + 2.2**2) / 4.4
    assert figure_of(panel, "best circle through the points") == f"{radius_m:.3f} m"
    assert figure_of(panel, "points off that circle") == "0.0 mm"
