"""The pull in each kind of film: textbook arcs by hand, general root finders, limits."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from hoopwright.farm import Film
from hoopwright.pressure.film_pulls import (
    arc_radius,
    bowed_rise,
    hang_slacks,
    pull_films,
    roof_radius,
    widest_bay,
)
from hoopwright.pressure.held import FilmPull
from hoopwright.survey import survey_frame
from inflated import Filled, filled, with_ends
from samples import double_tunnel, rafter_profile, small_catalogue, tunnel

FILM = small_catalogue().films[0]


def _pulls(made: Filled, **pressures: float) -> dict[str, FilmPull]:
    kinds = {kind.replace("_", "/"): pressure for kind, pressure in pressures.items()}
    found = pull_films(
        kinds,
        made.tunnel.skin,
        made.tunnel.sides,
        made.catalogue.films,
        made.survey,
        made.cover,
    )
    return {pull.mark: pull for pull in found}


# A half circle over 2 m is pi m long and has a radius of 1 m; three quarters of a circle of
# radius 1 are 1.5 pi long over a chord of the root of 2.
def test_radius_of_well_known_arcs() -> None:
    assert arc_radius(2.0, math.pi) == pytest.approx(1.0)
    assert arc_radius(math.sqrt(2), 1.5 * math.pi) == pytest.approx(1.0)
    assert arc_radius(3.0, 3.0) == math.inf


@given(chord_m=st.floats(0.5, 20.0), extra=st.floats(0.001, 2.0))
def test_radius_of_an_arc_agrees_with_a_root_finder(chord_m: float, extra: float) -> None:
    length_m = chord_m * (1 + extra)
    half = brentq(lambda u: math.sin(u) / u - chord_m / length_m, 1e-6, math.pi)
    assert arc_radius(chord_m, length_m) == pytest.approx(length_m / (2 * half), rel=1e-6)


# On a round bow the outer layer is an arc over the chord c between the hips with the rise f of the
# ridge and the gap g: R = (c^2 / 4 + (f + g)^2) / (2 (f + g)).
@given(gap_m=st.floats(0.0, 0.5))
def test_round_roof_has_the_radius_of_its_chord_and_rise(gap_m: float) -> None:
    survey = survey_frame(double_tunnel().frame)
    half_m = survey.hip_across_m[1]
    hip_height_m = survey.curve.point_at(survey.hip_at_m[1])[1]
    rise_m = survey.height_m - hip_height_m + gap_m
    chord_m, length_m, radius_m = roof_radius(survey, gap_m)
    assert chord_m == pytest.approx(2 * half_m)
    # Hips at the foot of the arc, whose outside leaves the leg a tube's half away.
    assert radius_m == pytest.approx((half_m**2 + rise_m**2) / (2 * rise_m), rel=2e-3)
    assert length_m > survey.roof_girth_m - 1e-9


def test_film_rests_on_the_ridge_of_straight_rafters() -> None:
    survey = survey_frame(tunnel(rafter_profile().but(peak_height_m=6.0)).frame)
    chord_m, length_m, radius_m = roof_radius(survey, 0.15)
    hip = survey.curve.point_at(survey.hip_at_m[0])
    assert chord_m == pytest.approx(math.dist(hip, (0.0, survey.height_m)))
    whole = arc_radius(2 * survey.hip_across_m[1], 2 * length_m)
    assert whole * (1 - math.cos(length_m / whole)) < survey.height_m - hip[1]
    assert radius_m == pytest.approx(arc_radius(chord_m, length_m))
    assert radius_m > whole


# T = p R with 60 Pa; over 0.2 mm the stress, over 9 MPa the share.
def test_pull_stress_and_share_by_hand() -> None:
    made = filled()
    pull = _pulls(made, roof=60.0)["pull/roof/outer"]
    assert pull.tension_n_m == pytest.approx(60.0 * pull.radius_m)
    assert pull.stress_pa == pytest.approx(pull.tension_n_m / 0.0002)
    assert pull.yield_share == pytest.approx(pull.stress_pa / 9e6)
    assert 4.0 < pull.radius_m < 5.0
    assert pull.extra_share > 0.05


def _stretched_radius(chord_m: float, pressure_pa: float, film: Film, slack: float) -> float:
    """Return a radius by a root finder over the half angle, the film stretching."""
    stiff = film.modulus_pa * film.thickness_m

    def spare(half: float) -> float:
        radius = chord_m / (2 * math.sin(half))
        cut = chord_m * (1 + slack)
        return 2 * radius * half - cut * (1 + pressure_pa * radius / stiff)

    return chord_m / (2 * math.sin(brentq(spare, 1e-3, math.pi / 2)))


def test_inner_roof_spans_the_widest_bay_and_stretches() -> None:
    made = filled()
    pull = _pulls(made, roof=60.0)["pull/roof/inner"]
    inner = made.catalogue.films[1]
    assert pull.chord_m == widest_bay(made.survey) == pytest.approx(1.5)
    assert pull.radius_m == pytest.approx(_stretched_radius(1.5, 60.0, inner, 0.0), rel=1e-6)
    assert pull.stress_pa == pytest.approx(60.0 * pull.radius_m / inner.thickness_m)


def test_curtains_span_from_hip_to_bar_with_slack_and_stretch() -> None:
    made = filled()
    pull = _pulls(made, side_0=60.0)["pull/side/0/outer"]
    span = made.cover.curtains[0]
    chord_m, outer_share, inner_share = hang_slacks(span, made.tunnel.sides[0], made.tunnel.skin)
    assert chord_m == pytest.approx(span.hang_m - 0.05)
    assert inner_share == pytest.approx(0.05 / chord_m)
    arc = arc_radius(chord_m, chord_m + (outer_share - inner_share) * chord_m)
    assert arc * (1 - math.cos(math.asin(chord_m / 2 / arc))) == pytest.approx(0.15)
    expected = _stretched_radius(chord_m, 60.0, FILM, outer_share)
    assert pull.radius_m == pytest.approx(expected, rel=1e-6)
    assert set(_pulls(made, side_0=60.0)) == {"pull/side/0/outer"}


def test_end_walls_span_the_lesser_way_flat_but_for_their_stretch() -> None:
    made = filled(with_ends(double_tunnel()))
    pull = _pulls(made, end_1=60.0)["pull/end/1/outer"]
    assert pull.chord_m == min(made.survey.width_m, made.survey.height_m)
    assert pull.radius_m == pytest.approx(
        _stretched_radius(pull.chord_m, 60.0, FILM, 0.0), rel=1e-6
    )


def test_more_gap_pulls_the_roof_less() -> None:
    loose = double_tunnel()
    loose = loose.but(skin=loose.skin.but(inflation_gap_m=0.4))
    narrow = _pulls(filled(), roof=60.0)["pull/roof/outer"]
    wide = _pulls(filled(loose), roof=60.0)["pull/roof/outer"]
    assert wide.tension_n_m < narrow.tension_n_m


def test_nothing_is_pulled_without_pressure() -> None:
    assert _pulls(filled(), roof=0.0, side_0=0.0) == {}
    assert _pulls(filled(tunnel()), roof=0.0) == {}


def test_a_film_without_slack_or_gap_still_carries_by_its_stretch() -> None:
    flat = double_tunnel()
    sides = tuple(side.but(slack_m=0.0) for side in flat.sides)
    flat = flat.but(skin=flat.skin.but(inflation_gap_m=0.0), sides=sides)
    pull = _pulls(filled(flat), side_0=60.0)["pull/side/0/outer"]
    assert pull.extra_share == 0.0
    expected = _stretched_radius(pull.chord_m, 60.0, FILM, 0.0)
    assert pull.radius_m == pytest.approx(expected, rel=1e-6)


def test_a_film_so_soft_that_it_passes_a_half_circle_is_told_there() -> None:
    soft = FILM.but(modulus_pa=1e7, thickness_m=1e-5)
    assert bowed_rise(soft, 500.0, 4.0, 0.5) == 2.0
