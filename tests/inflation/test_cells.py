"""The whole stage: which cells a skin has, how much air they hold, what they are fed by."""

from dataclasses import fields

import pytest

from hoopwright.farm import Bench, Door, PlacedJumper, Side, Split, Tunnel
from hoopwright.farm.skin import Covering
from hoopwright.inflation import Inflation
from hoopwright.quantity.working import Explained, explain
from laying import filled as _filled
from samples import double_tunnel, drop_side, layers, side, tunnel, with_double_ends, woven_side


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


def test_inflated_ends_are_cells_fed_by_the_roof_cell_next_to_them() -> None:
    inflation = _filled(_with_seams(with_double_ends(tunnel(roof_layers=2)), 9.0))
    assert _marks(inflation) == ["cell/roof/0", "cell/roof/1", "cell/end/0", "cell/end/1"]
    assert [(c.place, c.from_m, c.to_m) for c in inflation.cells[2:]] == [
        ("end/0", 0.0, 0.0),
        ("end/1", 24.0, 24.0),
    ]
    assert [(j.from_cell, j.to_cell, j.at_m) for j in inflation.jumpers[1:]] == [
        ("cell/roof/0", "cell/end/0", 0.0),
        ("cell/roof/1", "cell/end/1", 24.0),
    ]
    assert inflation.no_feed == ()


def test_ends_are_cells_only_with_two_layers_and_when_chosen() -> None:
    double = with_double_ends(tunnel(roof_layers=2))
    front, back = double.ends
    for ends, chosen, cells in (
        ((front, back), (False, True), ["cell/end/1"]),
        ((front, back.but(film=layers(1))), (True, True), ["cell/end/0"]),
        ((front.but(film=None), back), (True, True), ["cell/end/1"]),
        ((front, back), (False, False), []),
    ):
        made = double.but(ends=ends, air=double.air.but(inflated_ends=chosen))
        assert _marks(_filled(made))[1:] == cells


def test_end_that_is_all_door_holds_no_air() -> None:
    double = with_double_ends(tunnel(roof_layers=2))
    gate = Door(width_m=8.0, height_m=3.7)
    wide = _filled(double.but(ends=(double.ends[0].but(doors=(gate,)), double.ends[1])))
    assert _marks(wide) == ["cell/roof/0", "cell/end/1"]
    assert {seal.mark for seal in wide.seals} == {"end/1"}


def test_curtain_that_strips_leave_no_room_for_is_no_cell() -> None:
    # Both splits in one bay: the strip behind the first takes all that lies before the second.
    crowded = side("West side", (Split(at_m=12.0, join="strip"), Split(at_m=12.6, join="strip")))
    double = double_tunnel()
    bare = double.skin.allowances.but(curtain_lap_m=0.0)
    inflation = _filled(
        double.but(
            sides=(crowded, double.sides[1]),
            skin=double.skin.but(allowances=bare),
            air=double.air.but(inflated_sides=(True, False)),
        )
    )
    assert _marks(inflation) == ["cell/roof/0", "cell/side/0/panel/0", "cell/side/0/panel/2"]
    assert {seal.mark for seal in inflation.seals} == {"side/0/panel/0", "side/0/panel/2"}


def test_cells_that_no_hose_reaches_are_told() -> None:
    double = double_tunnel()
    one = (PlacedJumper(surface="second_side", at_m=5.0), PlacedJumper(surface="roof", at_m=5.0))
    inflation = _filled(double.but(air=double.air.but(jumpers=one)))
    assert [j.to_cell for j in inflation.jumpers] == ["cell/side/1/panel/0"]
    assert inflation.no_feed == (
        "cell/side/0/panel/0",
        "cell/side/0/panel/1",
        "cell/side/1/panel/1",
    )
    assert inflation.idle == (1,)


def test_no_jumper_is_worked_out_when_the_list_placed_by_hand_is_empty() -> None:
    double = double_tunnel()
    inflation = _filled(double.but(air=double.air.but(jumpers=())))
    assert inflation.jumpers == ()
    assert len(inflation.no_feed) == 4


def test_nothing_reaches_any_cell_without_a_blower() -> None:
    double = double_tunnel()
    inflation = _filled(double.but(air=double.air.but(blower=None)))
    assert list(inflation.no_feed) == _marks(inflation)


def test_heating_elements_last_for_their_length_of_seal() -> None:
    # One curtain of two layers on one side, sealed once all round; the element is made to last
    # for exactly half of that, and for a little less.
    double = double_tunnel()
    air = double.air.but(inflated_sides=(True, False), seals_per_edge=1)
    one = double.but(sides=(side("West side"), double.sides[1]), air=air)
    seal_m = _filled(one).seal_m
    for element_m, elements in ((seal_m, 1), (seal_m / 2, 2), (seal_m / 2 - 0.01, 3)):
        assert _filled(one, bench=Bench(element_m=element_m)).elements == elements


def test_totals_are_the_sums_of_what_is_listed() -> None:
    inflation = _filled(double_tunnel())
    assert inflation.seal_m == pytest.approx(sum(s.length_m * s.passes for s in inflation.seals))
    assert inflation.bench_min == pytest.approx(inflation.seal_m / 1.5 + 5.0 * 16)
    assert inflation.volume_m3 == pytest.approx(sum(c.volume_m3 for c in inflation.cells))
    assert inflation.strokes == 0


def test_bench_time_of_a_bar_is_that_of_its_strokes() -> None:
    bench = Bench(sealer="bar", stroke_s=30.0, set_up_min=4.0)
    inflation = _filled(double_tunnel(), bench=bench)
    assert inflation.strokes == sum(s.strokes for s in inflation.seals) > 0
    assert inflation.bench_min == pytest.approx(inflation.strokes / 2 + 4.0 * 16)


def _figures(result: Explained) -> set[str]:
    kinds = (float, int)
    found = {f.name for f in fields(result) if type(getattr(result, f.name)) in kinds}
    return found - {"side", "index"}


@pytest.mark.parametrize("bench", [Bench(), Bench(sealer="bar")], ids=["running", "bar"])
@pytest.mark.parametrize("covering", ["roof_and_sides", "one_sheet"])
def test_every_figure_says_how_it_was_got(covering: Covering, bench: Bench) -> None:
    inflation = _filled(_with_seams(with_double_ends(double_tunnel()), 9.0), covering, bench)
    for result in (inflation, *inflation.cells, *inflation.seals):
        assert {w.figure for w in result.workings} == _figures(result)
        for working in result.workings:
            assert "From:" in explain(working, "imperial")
            assert "From:" in explain(working, "metric")


def test_seals_of_film_that_stays_are_there_already() -> None:
    double = double_tunnel()
    all_new = _filled(double)
    kept = _filled(double, old_places=frozenset({"side/0/panel/0", "roof"}))
    assert [(s.mark, s.edge, s.total_m) for s in kept.seals] == [
        (s.mark, s.edge, s.total_m) for s in all_new.seals
    ]
    there = [s for s in kept.seals if s.there]
    assert {s.mark for s in there} == {"side/0/panel/0"}
    assert all((s.minutes, s.strokes) == (0.0, 0) for s in there)
    saved = [s for s in all_new.seals if s.mark == "side/0/panel/0"]
    assert kept.seal_m == pytest.approx(all_new.seal_m - sum(s.total_m for s in saved))
    assert kept.bench_min == pytest.approx(all_new.bench_min - sum(s.minutes for s in saved))
    assert kept.cells == all_new.cells
    assert "stays" in there[0].working("minutes").rule
