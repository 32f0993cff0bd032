"""Air and film of each space against polygons of a geometry library and a skin under pressure."""

import math
from collections.abc import Callable

import numpy as np
import pytest
import shapely
from scipy.sparse import csr_array
from scipy.sparse.linalg import spsolve
from shapely import LineString, Polygon

from hoopwright.farm import AcrossUp, Door, MeasuredBow, Tunnel
from hoopwright.farm.profile import Profile
from hoopwright.inflation import Cell
from hoopwright.survey import survey_frame
from hoopwright.survey.bow_curve import bow_curve
from laying import filled
from samples import (
    double_tunnel,
    gothic_profile,
    layers,
    rafter_profile,
    round_profile,
    tunnel,
    with_double_ends,
)

GAP_M = 0.15
PROFILES = [round_profile(), gothic_profile(), rafter_profile()]
NAMES = ["round", "gothic", "rafters"]


def _arc(half_m: float, rise_m: float, points: int = 4001) -> LineString:
    """Return an arc over a chord on the axis as a line of many points."""
    radius_m = (half_m**2 + rise_m**2) / (2 * rise_m)
    turn = 2 * math.atan2(rise_m, half_m)
    return LineString(
        (radius_m * math.sin(a), rise_m - radius_m * (1 - math.cos(a)))
        for a in np.linspace(-turn, turn, points)
    )


def _between(half_m: float, inner_m: float, outer_m: float) -> float:
    """Return the area between two arcs over one chord, or an arc and its chord, m2."""
    inner = _arc(half_m, inner_m).coords if inner_m > 0 else [(-half_m, 0.0), (half_m, 0.0)]
    return float(Polygon([*_arc(half_m, outer_m).coords, *reversed(inner)]).area)


def _outline(profile: Profile) -> LineString:
    return LineString(bow_curve(profile, 0.048).outline(0.001))


def _hips(profile: Profile, hip_m: float = 1.5) -> tuple[float, float, float]:
    """Return half the chord at the hips, the ridge above it and the bow between them, m."""
    above = _outline(profile).intersection(shapely.box(-20, hip_m, 20, 20))
    ridge_m = above.bounds[3]
    chord = _outline(profile).intersection(LineString([(-20, hip_m), (20, hip_m)]))
    return (chord.bounds[2] - chord.bounds[0]) / 2, ridge_m - hip_m, above.length


def _cell(made: Tunnel, mark: str) -> Cell:
    return next(cell for cell in filled(made).cells if cell.mark == mark)


@pytest.mark.parametrize("profile", PROFILES, ids=NAMES)
def test_roof_lies_between_two_arcs_from_hip_to_hip(profile: Profile) -> None:
    half_m, rise_m, over_m = _hips(profile)
    roof = _cell(tunnel(profile, roof_layers=2), "cell/roof/0")
    area_m2 = _between(half_m, rise_m, rise_m + GAP_M)
    assert roof.volume_m3 == pytest.approx(24.0 * area_m2, rel=1e-4)
    extra_m = _arc(half_m, rise_m + GAP_M).length - _arc(half_m, rise_m).length
    assert roof.area_m2 == pytest.approx(24.0 * (over_m + extra_m), rel=1e-4)


@pytest.mark.parametrize("profile", PROFILES, ids=NAMES)
def test_air_in_a_roof_lies_between_half_and_all_of_gap_times_cover(profile: Profile) -> None:
    made = tunnel(profile, roof_layers=2)
    box_m3 = GAP_M * survey_frame(made.frame).roof_girth_m * 24.0
    assert 0.5 * box_m3 < _cell(made, "cell/roof/0").volume_m3 < box_m3


def test_curtain_is_bowed_out_over_a_flat_inner_layer() -> None:
    # Upright legs: 1.5 - 0.25 = 1.25 m from hip seam to bar; the slack hangs as well.
    double = double_tunnel()
    slack_m = double.sides[0].slack_m
    cell = _cell(double, "cell/side/0/panel/0")
    length_m = cell.to_m - cell.from_m
    assert cell.volume_m3 == pytest.approx(length_m * _between(0.625, 0.0, GAP_M), rel=1e-3)
    bowed_m = _arc(0.625, GAP_M).length
    assert cell.area_m2 == pytest.approx(length_m * (bowed_m + slack_m), rel=1e-3)


@pytest.mark.parametrize("profile", PROFILES, ids=NAMES)
def test_end_wall_leaks_through_the_film_inside_its_bow(profile: Profile) -> None:
    double = with_double_ends(tunnel(profile, roof_layers=2))
    doors = (Door(width_m=1.0, height_m=2.0), Door(width_m=2.0, height_m=2.2))
    made = double.but(ends=(double.ends[0].but(doors=doors), double.ends[1]))
    whole_m2 = Polygon(_outline(profile).coords).area
    assert _cell(made, "cell/end/0").area_m2 == pytest.approx(whole_m2 - 2.0 - 4.4, rel=1e-4)
    assert _cell(made, "cell/end/1").area_m2 == pytest.approx(whole_m2, rel=1e-4)


def _held_share(shape: Polygon, step_m: float) -> float:
    """Return what a thin skin over a shape holds of area times rise under an even pressure.

    Its slopes are small, so its sag is what Poisson's equation gives, zero at the edge; solved on
    a square grid.
    """
    low_x, low_y, high_x, high_y = shape.bounds
    x, y = np.meshgrid(np.arange(low_x, high_x, step_m), np.arange(low_y, high_y, step_m))
    inside = shapely.contains_xy(shape, x, y)
    number = np.full(inside.shape, -1)
    number[inside] = np.arange(inside.sum())
    rows, columns, values = [number[inside]], [number[inside]], [np.full(inside.sum(), 4.0)]
    for axis in (0, 1):
        for shift in (1, -1):
            beside = np.roll(number, shift, axis)
            both = inside & (beside >= 0)
            rows.append(number[both])
            columns.append(beside[both])
            values.append(np.full(both.sum(), -1.0))
    entries = (np.concatenate(values), (np.concatenate(rows), np.concatenate(columns)))
    rise = spsolve(csr_array(entries).tocsc(), np.ones(inside.sum()))
    return float(rise.sum() * step_m**2 / (rise.max() * shape.area))


def test_skin_over_a_circle_is_a_paraboloid_and_over_a_square_holds_little_less() -> None:
    assert _held_share(shapely.Point(0, 0).buffer(1, 64), 0.02) == pytest.approx(0.5, abs=0.01)
    assert _held_share(shapely.box(-1, -1, 1, 1), 0.02) == pytest.approx(0.477, abs=0.01)


@pytest.mark.parametrize("profile", PROFILES, ids=NAMES)
def test_air_in_an_end_wall_is_what_a_skin_over_it_holds(profile: Profile) -> None:
    end = _cell(with_double_ends(tunnel(profile, roof_layers=2)), "cell/end/0")
    shape = Polygon(_outline(profile).coords)
    held_m3 = _held_share(shape, 0.05) * shape.area * GAP_M
    assert end.volume_m3 == pytest.approx(held_m3, rel=0.04)


@pytest.mark.parametrize(
    ("mark", "leak"), [("cell/roof/0", 3e-6), ("cell/side/1/panel/0", 5e-6), ("cell/end/1", 7e-6)]
)
def test_each_place_leaks_by_its_own_measure(mark: str, leak: float) -> None:
    double = with_double_ends(double_tunnel())
    air = double.air.but(leak_roof=3e-6, leak_curtain=5e-6, leak_end=7e-6)
    cell = _cell(double.but(air=air), mark)
    assert cell.unit_leak_m3_s == pytest.approx(leak * cell.area_m2)


@pytest.mark.parametrize(
    "part", [lambda c: c.volume_m3, lambda c: c.area_m2, lambda c: c.unit_leak_m3_s]
)
def test_cutting_the_roof_changes_neither_air_nor_film(part: Callable[[Cell], float]) -> None:
    whole = tunnel(roof_layers=2)
    cut = whole.but(skin=whole.skin.but(cross_seams_m=(7.0, 19.0)))
    assert sum(map(part, filled(cut).cells)) == pytest.approx(sum(map(part, filled(whole).cells)))


def test_without_a_gap_the_layers_lie_on_each_other() -> None:
    double = with_double_ends(double_tunnel())
    flat = filled(double.but(skin=double.skin.but(inflation_gap_m=0.0)))
    assert flat.volume_m3 == 0.0
    roof = flat.cells[0]
    assert roof.area_m2 == pytest.approx(24.0 * _hips(round_profile())[2], rel=1e-4)


def test_end_of_one_layer_has_no_space() -> None:
    double = with_double_ends(tunnel(roof_layers=2))
    single = double.but(ends=(double.ends[0].but(film=layers(1)), double.ends[1]))
    assert [c.mark for c in filled(single).cells] == ["cell/roof/0", "cell/end/1"]


def test_roof_over_an_unsymmetrical_bow_rises_to_its_ridge() -> None:
    # Hips at 1.5 m on plumb legs 8 m apart, the ridge 1.5 m off the middle and 2 m above them.
    points = tuple(AcrossUp(across_m=x, up_m=y) for x, y in ((0.0, 1.5), (2.5, 3.5), (8.0, 1.5)))
    leaning = tunnel(MeasuredBow(span_m=8.0, points=points, join="corners"), roof_layers=2)  # type: ignore[arg-type]
    bare = leaning.but(frame=leaning.frame.but(tube_diameter_m=0.0))
    inputs = filled(bare).cells[0].working("volume_m3").inputs
    found = {term.name: term.value for term in inputs}
    assert found["chord from hip to hip"] == pytest.approx(8.0)
    assert found["rise of the ridge over it"] == pytest.approx(2.0)
