"""Checks and working in words."""

import dataclasses
from decimal import Decimal

import pytest

import samples
from hoopwright.farm import Farm
from hoopwright.papers.sheets_words import figure_name, figure_text, figure_unit
from hoopwright.plan import plan
from papers.invented_plan import invented_plan
from papers.spreadsheet import made, open_book, texts


def test_working_shows_rule_inputs_and_source(farm: Farm) -> None:
    found = texts(open_book(made(farm, invented_plan(farm)))["Working"])
    assert "Over the bow from hip to hip, and a tail at each hip." in found
    assert "common practice, no published source" in found
    assert ("28' 0 3/8\"" if farm.units == "imperial" else "8.543 m") in found


@pytest.mark.parametrize(
    ("figure", "name", "unit"),
    [
        ("width_m", "width", "m"),
        ("film_mass_kg_m2", "film mass", "kg/m2"),
        ("volume_m3", "volume", "m3"),
        ("hand_forces_n", "hand forces", "N"),
        ("torques_nm", "torques", "N m"),
        ("diameters_m", "diameters", "m_thin"),
        ("trailing_length_m", "trailing length", "m"),
        ("bench_min", "bench", "min"),
        ("waste_share", "waste share", "share"),
        ("handle_turns", "handle turns", "turns"),
        ("twist_rad", "twist", "rad"),
        ("twist_trailing_m", "twist trailing", "m_thin"),
        ("pocket_gap_m", "pocket gap", "m_thin"),
        ("changes_per_h", "changes", "1/h"),
        ("per_floor_m3_s_m2", "per floor", "m3/s/m2"),
        ("side_shares", "side shares", "share"),
        ("minutes", "minutes", "min"),
        ("loss_one_w_k", "loss one", "W/K"),
        ("seal_need_n_m", "seal need", "N/m"),
        ("yearly_kwh", "yearly", "kWh"),
        ("stress_pa", "stress", "Pa_film"),
        ("low_pa", "low", "Pa"),
        ("peak_w", "peak", "W_heat"),
        ("power_w", "power", "W"),
        ("degree_days", "degree days", "K day"),
        ("season_j", "season", "J_heat"),
        ("hole_m2", "hole", "m2_thin"),
        ("hole_m", "hole", "m_film"),
        ("section_m2", "section", "m2_thin"),
        ("water_m3", "water", "m3_water"),
        ("rain_m3_s", "rain", "m3/s_water"),
        ("slack_m", "slack", "m_thin"),
        ("payback_years", "payback", "year"),
    ],
)
def test_name_of_a_figure_tells_its_unit(figure: str, name: str, unit: str) -> None:
    assert (figure_name(figure), figure_unit(figure)) == (name, unit)


def test_values_stand_in_the_units_of_the_farm() -> None:
    assert figure_text(3.048, "m", "imperial", "USD") == "10' 0\""
    assert figure_text((1.0, 2.0), "m", "metric", "EUR") == "1.000 m / 2.000 m"
    assert figure_text(Decimal("12.5"), "ratio", "metric", "EUR") == "12.50 EUR"
    assert figure_text(7, "ratio", "metric", "EUR") == "7"
    assert figure_text("outer", "ratio", "metric", "EUR") == "outer"
    assert figure_text(True, "ratio", "metric", "EUR") == "yes"
    assert figure_text(None, "ratio", "metric", "EUR") == ""


def test_working_explains_air_under_pressure_and_heat(farm: Farm) -> None:
    sheet = open_book(made(farm, invented_plan(farm)))["Working"]
    found = {(row[0].value, row[1].value): row[2].value for row in sheet.iter_rows()}
    low = "0.200 in w.c." if farm.units == "imperial" else "49.8 Pa"
    assert found["North, air under pressure", "low"] == low
    assert ("North, West side, curtain 1", "pressure") in found
    assert found["North, heat", "saved share"] == "35.3%"


def test_every_figure_of_a_real_plan_is_shown_in_its_own_unit() -> None:
    farm = samples.small_farm(samples.with_double_ends(samples.double_tunnel()))
    sheet = open_book(made(farm, plan(farm)))["Working"]
    found = {(row[0].value, row[1].value): str(row[2].value) for row in sheet.iter_rows()}
    name = farm.tunnels[0].name
    ends = {
        (f"{name}, heat", "loss now"): "W/K",
        (f"{name}, air under pressure", "seal need"): "N/m",
        (f"{name}, air under pressure", "slack"): "mm",
        (f"{name}, air under pressure", "yearly"): "kWh",
        (f"{name}, air under pressure", "power"): "W",
    }
    for figure, unit in ends.items():
        assert found[figure].endswith(f" {unit}"), figure
    assert not [figure for figure in found if figure[1] == "power per area"]


def test_amount_for_a_floor_is_for_a_unit_of_the_farm() -> None:
    # 1 ft2 = 0.09290304 m2: NIST Special Publication 811, appendix B. 10.76391 x 0.09290304 = 1.
    assert figure_text(Decimal("10.76391"), "m2", "imperial", "USD") == "$1.00 for one ft²"
    assert figure_text(Decimal("10.76391"), "m2", "metric", "EUR") == "10.76 EUR for one m²"


def test_faults_are_marked_by_word_and_fill(farm: Farm) -> None:
    plan = invented_plan(farm)
    fault = dataclasses.replace(plan.findings[0], severity="fault", tunnel="")
    sheet = open_book(made(farm, dataclasses.replace(plan, findings=(fault,))))["Checks"]
    (row,) = (r for r in sheet.iter_rows() if r[1].value == "whole farm")
    assert row[0].value == "Fault: mend before ordering"
    assert row[0].fill.fgColor.rgb == "FFF6CFC8"
