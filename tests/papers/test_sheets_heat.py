"""Heat: what is lost part by part, a season, the saving, and the published figures beside."""

import dataclasses

import pytest

import samples
from hoopwright.farm import Farm, Heating
from hoopwright.plan import Plan, plan
from papers.invented_plan import invented_farm, invented_plan
from papers.spreadsheet import made, open_book, texts


def _rows(farm: Farm, whole: Plan) -> list[list[object]]:
    sheet = open_book(made(farm, whole))["Heat"]
    return [[c.value for c in row] for row in sheet.iter_rows()]


def _table(rows: list[list[object]], title: str) -> list[dict[str, object]]:
    """Return the lines of the table under a title, by heading without its unit."""
    start = next(k for k, row in enumerate(rows) if row[0] == title) + 1
    heads = [str(head).split(" (")[0] for head in rows[start] if head is not None]
    lines = []
    for row in rows[start + 1 :]:
        if row[0] is None:
            break
        lines.append(dict(zip(heads, row, strict=False)))
    return lines


def _warm(farm: Farm) -> Farm:
    return farm.but(tunnels=tuple(t.but(heating=Heating()) for t in farm.tunnels))


def test_losses_of_a_tunnel_stand_in_the_units_of_the_farm(farm: Farm) -> None:
    (whole,) = _table(_rows(farm, invented_plan(farm)), "Lost for one degree")
    # One Btu/h for a degree Fahrenheit is 0.5275279 W/K (NIST Special Publication 811).
    imperial = farm.units == "imperial"
    found = [whole[f"Lost{x}"] for x in (", one layer", ", two layers", " as chosen")]
    assert found == ([6445, 3981, 4170] if imperial else [3400, 2100, 2200])
    assert (whole["Second layer saves"], whole["Second layer costs"]) == (0.353, 980)
    assert whole["Heated"] == "no"
    assert whole["Air changes an hour, two layers"] == 0.75


def test_parts_of_the_cover_and_leaking_air_add_up_to_the_loss() -> None:
    farm = samples.small_farm(samples.with_double_ends(samples.double_tunnel()))
    whole = plan(farm)
    rows = _rows(farm, whole)
    parts = _table(rows, "Lost for one degree, by the parts")
    assert [p["Part of the cover"] for p in parts][0::5] == ["roof", "air that leaks"]
    warmth = whole.tunnels[0].warmth
    for heading, loss_w_k in (
        ("Lost, one layer", warmth.loss_one_w_k),
        ("Lost, two layers", warmth.loss_two_w_k),
        ("Lost as chosen", warmth.loss_now_w_k),
    ):
        # Each of six lines is rounded to a watt.
        assert sum(p[heading] for p in parts) == pytest.approx(loss_w_k, abs=3.1)
    # U times A for the roof, by hand.
    roof = parts[0]
    assert roof["Lost, one layer"] == pytest.approx(roof["Area"] * 6.3, abs=1)
    assert (roof["One layer lets through"], roof["Two layers let through"]) == (6.3, 4)


def test_season_fuel_saving_and_pay_back_stand_for_a_heated_tunnel(farm: Farm) -> None:
    warm = _warm(farm)
    (season,) = _table(_rows(warm, invented_plan(warm)), "A season")
    imperial = farm.units == "imperial"
    # 1055.056 J are one Btu: 171 GJ are 162.1 million Btu; 900 K d are 1620 degF d.
    assert season["Heat of a season"] == (162.1 if imperial else 171)
    assert season["Degree-days"] == (1620 if imperial else 900)
    assert (season["Fuel burnt"], season["That costs"]) == (2218, 5323.2)
    assert (season["Fuel saved"], season["Saved, blower's power off"]) == (1210, 2819.9)
    assert season["Fuel"] == "propane, sold by the gallon"
    assert season["Paid back after"] == "0.4 yr"


def test_what_never_pays_is_said(farm: Farm) -> None:
    warm = _warm(farm)
    whole = invented_plan(warm)
    (tunnel,) = whole.tunnels
    warmth = dataclasses.replace(tunnel.warmth, payback_years=None)
    whole = dataclasses.replace(whole, tunnels=(dataclasses.replace(tunnel, warmth=warmth),))
    (season,) = _table(_rows(warm, whole), "A season")
    assert season["Paid back after"] == "never"


def test_a_farm_without_heating_has_no_season_but_a_plain_sentence() -> None:
    farm = samples.small_farm(samples.double_tunnel())
    heat = texts(open_book(made(farm, plan(farm)))["Heat"])
    assert "No tunnel is heated, so no fuel is burnt and none is saved." in heat
    assert "The tunnel is not heated, so the second layer saves no fuel" in heat
    assert "Paid back after" not in heat


def test_plain_sentence_and_what_was_assumed_stand_on_top(farm: Farm) -> None:
    rows = _rows(farm, invented_plan(farm))
    told = [row[1] for row in rows if row[0] == "North"][:2]
    assert told == [
        "The second layer is soon paid back.",
        "The back end wall counts as one layer.",
    ]


def test_published_figures_stand_with_their_sources() -> None:
    farm = invented_farm("imperial")
    heat = texts(open_book(made(farm, invented_plan(farm)))["Heat"])
    # Btu/(h ft2 degF): single film 1.0 to 1.2, inflated double 0.6 to 0.7, as the sources print.
    rows = _rows(farm, invented_plan(farm))
    lines = [row[2:4] for row in rows if row[0] in ("single film", "two films, air between")]
    assert [1, 1.2] in lines
    assert [0.6, 0.7] in lines
    assert "Bartok, Greenhouse glazing tips" in heat
    assert "licensed installer" in heat
