"""The whole stage: which cells a skin has, how much air they hold, what they are fed by."""

import math
from dataclasses import fields
from typing import Any

import pytest
from scipy.integrate import quad

from hoopwright.farm import Bench, Side, Tunnel
from hoopwright.farm.skin import Covering
from hoopwright.inflation import Inflation, fill_cells
from hoopwright.quantity.working import Explained, explain
from hoopwright.survey import survey_frame
from laying import laid
from samples import (
    double_tunnel,
    drop_side,
    gothic_profile,
    layers,
    rafter_profile,
    side,
    tunnel,
    woven_side,
)


def _filled(filled: Tunnel, covering: Covering = "roof_and_sides") -> Inflation:
    return fill_cells(
        survey_frame(filled.frame),
        filled.skin,
        filled.sides,
        filled.air,
        laid(filled, covering),
        Bench(),
    )


def _with_seams(plain: Tunnel, *seams_m: float) -> Tunnel:
    return plain.but(skin=plain.skin.but(cross_seams_m=seams_m))


def _marks(inflation: Inflation) -> list[str]:
    return [cell.mark for cell in inflation.cells]


def test_one_layer_holds_no_air() -> None:
    inflation = _filled(tunnel())
    assert (inflation.cells, inflation.seals, inflation.jumpers) == ((), (), ())
    assert (inflation.volume_m3, inflation.seal_m, inflation.bench_min) == (0.0, 0.0, 0.0)
    assert inflation.blower is None


def test_blower_is_not_kept_for_one_layer() -> None:
    plain = tunnel()
    assert _filled(plain.but(air=plain.air.but(blower="blower"))).blower is None


def test_roof_of_two_layers_is_one_fed_cell() -> None:
    inflation = _filled(tunnel(roof_layers=2))
    (roof,) = inflation.cells
    assert (roof.mark, roof.place, roof.name, roof.fed) == ("cell/roof/0", "roof", "Roof", True)
    assert (roof.from_m, roof.to_m) == (0.0, 24.0)
    assert inflation.blower == "blower"
    assert inflation.jumpers == ()


def test_roof_edges_are_gripped_and_not_sealed() -> None:
    assert _filled(_with_seams(tunnel(roof_layers=2), 9.0)).seals == ()


def test_air_in_a_round_roof_is_the_integral_between_its_arcs() -> None:
    # Round bow of 8 m with a rise of 2.2 m from legs of 1.5 m, hip board at the top of the leg, no
    # tube: chord 8 m. The outer layer stands 0.15 m higher at the ridge.
    plain = tunnel(roof_layers=2)
    bare = plain.but(frame=plain.frame.but(tube_diameter_m=0.0))

    def between(across_m: float) -> float:
        heights = []
        for rise_m in (2.2, 2.35):
            radius_m = (16 + rise_m**2) / (2 * rise_m)
            heights.append(math.sqrt(radius_m**2 - across_m**2) - radius_m + rise_m)
        return heights[1] - heights[0]

    area_m2, _ = quad(between, -4, 4)
    assert _filled(bare).volume_m3 == pytest.approx(24.0 * area_m2, rel=1e-6)


@pytest.mark.parametrize("profile", [None, gothic_profile(), rafter_profile()])
def test_air_in_a_roof_lies_between_half_and_all_of_gap_times_cover(profile: Any) -> None:
    inflation = _filled(tunnel(profile, roof_layers=2))
    box_m3 = 0.15 * survey_frame(tunnel(profile).frame).roof_girth_m * 24.0
    assert 0.5 * box_m3 < inflation.volume_m3 < box_m3


def test_cross_seams_cut_the_roof_into_cells_that_hold_the_same_air() -> None:
    whole = _filled(tunnel(roof_layers=2))
    cut = _filled(_with_seams(tunnel(roof_layers=2), 9.0, 15.0))
    assert _marks(cut) == ["cell/roof/0", "cell/roof/1", "cell/roof/2"]
    assert [(c.from_m, c.to_m) for c in cut.cells] == [(0.0, 9.0), (9.0, 15.0), (15.0, 24.0)]
    assert [c.fed for c in cut.cells] == [True, False, False]
    assert [(j.from_cell, j.to_cell, j.at_m) for j in cut.jumpers] == [
        ("cell/roof/0", "cell/roof/1", 9.0),
        ("cell/roof/1", "cell/roof/2", 15.0),
    ]
    assert cut.volume_m3 == pytest.approx(whole.volume_m3)


def test_nothing_is_fed_before_a_blower_is_chosen() -> None:
    double = double_tunnel()
    inflation = _filled(double.but(air=double.air.but(blower=None)))
    assert inflation.blower is None
    assert not any(cell.fed for cell in inflation.cells)
    assert len(inflation.jumpers) == len(_filled(double).jumpers)


def test_inflated_curtains_are_cells_with_all_edges_sealed() -> None:
    inflation = _filled(double_tunnel())
    assert _marks(inflation) == [
        "cell/roof/0",
        "cell/side/0/panel/0",
        "cell/side/0/panel/1",
        "cell/side/1/panel/0",
        "cell/side/1/panel/1",
    ]
    assert len(inflation.seals) == 4 * 4
    assert [j.to_cell for j in inflation.jumpers] == _marks(inflation)[1:]
    assert [j.side for j in inflation.jumpers] == [0, 0, 1, 1]


def test_one_sheet_of_two_layers_has_its_curtains_as_cells_of_their_own() -> None:
    inflation = _filled(double_tunnel(), "one_sheet")
    assert len(inflation.cells) == 5
    assert len(inflation.seals) == 4 * 3
    assert len(inflation.jumpers) == 4


@pytest.mark.parametrize("covering", ["roof_and_sides", "one_sheet"])
def test_only_the_sides_that_are_chosen_are_inflated(covering: Covering) -> None:
    double = double_tunnel()
    inflation = _filled(double.but(air=double.air.but(inflated_sides=(False, True))), covering)
    assert _marks(inflation) == ["cell/roof/0", "cell/side/1/panel/0", "cell/side/1/panel/1"]
    assert {seal.mark for seal in inflation.seals} == {"side/1/panel/0", "side/1/panel/1"}


def test_curtain_of_one_layer_is_not_inflated() -> None:
    double = double_tunnel()
    inflation = _filled(double.but(skin=double.skin.but(sides=layers(1))))
    assert _marks(inflation) == ["cell/roof/0"]


def test_curtains_under_a_roof_of_one_layer_are_not_fed() -> None:
    double = double_tunnel()
    inflation = _filled(double.but(skin=double.skin.but(roof=layers(1))))
    assert len(inflation.cells) == 4
    assert not any(cell.fed for cell in inflation.cells)
    assert inflation.jumpers == ()


def test_fixed_sides_are_not_inflated() -> None:
    double = double_tunnel()
    fixed = (side("West side", kind="fixed"), side("East side", kind="fixed"))
    assert _marks(_filled(double.but(sides=fixed))) == ["cell/roof/0"]


@pytest.mark.parametrize(
    ("covering", "cells"),
    [
        ("roof_and_sides", ["cell/roof/0"]),
        # The tail of a sheet of two layers holds air; a film for the curtains alone is not cut.
        ("one_sheet", ["cell/roof/0", "cell/side/1/panel/0"]),
    ],
)
@pytest.mark.parametrize("first", [woven_side(), drop_side()], ids=["woven", "drop_down"])
def test_curtains_of_one_layer_hold_no_air(
    first: Side, covering: Covering, cells: list[str]
) -> None:
    # Every layer is double and both sides are to be inflated.
    plain = double_tunnel().but(sides=(first, side("East side", film="inside")))
    inflation = _filled(plain, covering)
    assert _marks(inflation) == cells
    assert {s.mark for s in inflation.seals} == {c.removeprefix("cell/") for c in cells[1:]}
    assert [j.to_cell for j in inflation.jumpers] == cells[1:]


def test_air_in_a_curtain_is_the_integral_under_its_bow() -> None:
    # On upright legs 1.5 - 0.25 = 1.25 m from hip seam to bar, bowed out by 0.15 m.
    inflation = _filled(double_tunnel())
    cell = inflation.cells[1]
    radius_m = (1.25**2 / 4 + 0.15**2) / (2 * 0.15)
    area_m2, _ = quad(
        lambda up_m: math.sqrt(radius_m**2 - up_m**2) - radius_m + 0.15, -0.625, 0.625
    )
    assert cell.volume_m3 == pytest.approx(area_m2 * (cell.to_m - cell.from_m), rel=5e-3)


def test_totals_are_the_sums_of_what_is_listed() -> None:
    inflation = _filled(double_tunnel())
    assert inflation.seal_m == pytest.approx(sum(s.length_m * s.passes for s in inflation.seals))
    assert inflation.bench_min == pytest.approx(inflation.seal_m / 1.5 + 5.0 * 16)
    assert inflation.volume_m3 == pytest.approx(sum(c.volume_m3 for c in inflation.cells))


def _figures(result: Explained) -> set[str]:
    kinds = (float, int)
    found = {f.name for f in fields(result) if type(getattr(result, f.name)) in kinds}
    return found - {"side", "index"}


@pytest.mark.parametrize("covering", ["roof_and_sides", "one_sheet"])
def test_every_figure_says_how_it_was_got(covering: Covering) -> None:
    inflation = _filled(_with_seams(double_tunnel(), 9.0), covering)
    for result in (inflation, *inflation.cells, *inflation.seals):
        assert {w.figure for w in result.workings} == _figures(result)
        for working in result.workings:
            assert "From:" in explain(working, "imperial")
            assert "From:" in explain(working, "metric")
