"""Each figure of a warm tunnel says what went in, and what was published stands beside it."""

import pytest

from hoopwright.farm import Heating, Tunnel
from hoopwright.quantity.units import Units
from hoopwright.quantity.working import explain
from samples import double_tunnel, layers, tunnel
from warmed import BLOWER_YEAR, warmed


def test_each_figure_tells_how_it_was_got() -> None:
    chosen = double_tunnel()
    chosen = chosen.but(
        air=chosen.air.but(inflated_ends=(True, True)),
        ends=tuple(end.but(film=layers(2)) for end in chosen.ends),
    )
    found = warmed(chosen, Heating())
    for figure in (
        "loss_one_w_k",
        "loss_two_w_k",
        "loss_now_w_k",
        "peak_w",
        "degree_days",
        "season_j",
        "fuel_units",
        "fuel_cost",
        "saved_share",
        "saved_units",
        "saved_cost",
        "second_layer_cost",
        "payback_years",
    ):
        assert found.working(figure).inputs, figure
    now = found.working("loss_now_w_k")
    assert "Sanford" in now.source
    names = [term.name for term in now.inputs]
    assert "roof, two layers" in names
    assert "front end wall, two layers" in names
    assert "published for single film, from" in names
    assert "licensed" in found.working("peak_w").rule


def test_saving_tells_the_blower_and_the_published_share() -> None:
    found = warmed(double_tunnel(), Heating())
    saved = {term.name: term.value for term in found.working("saved_cost").inputs}
    assert saved["power of the blower"] == BLOWER_YEAR
    assert "Bartok" in found.working("saved_share").source


@pytest.mark.parametrize("units", ["metric", "imperial"])
@pytest.mark.parametrize("heating", [None, Heating(inside_k=290.15)])
@pytest.mark.parametrize("chosen", [tunnel(), double_tunnel()])
def test_every_working_can_be_read(chosen: Tunnel, heating: Heating | None, units: Units) -> None:
    for working in warmed(chosen, heating).workings:
        assert "Source: " in explain(working, units)
