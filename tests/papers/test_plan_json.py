"""The plan as JSON: whole, in SI, and the same each time."""

import json
from dataclasses import fields, is_dataclass
from typing import Any

import pytest

from files.varied import standing_tunnel, varied_catalogue
from hoopwright.papers.plan_json import PLAN_FORMAT, plan_to_json
from hoopwright.plan import plan
from samples import double_tunnel, small_farm

PLAIN = (str, int, float)
STANDING = ("cover", "outfit", "sheets")
"""Results of the chosen covering with sizes of a frame as it stands."""
TOLD = ("workings", "width_terms", "length_terms")
"""Terms have a unit of their own."""


def told() -> Any:
    farm = small_farm(double_tunnel())
    return json.loads(plan_to_json(farm, plan(farm)))


def test_every_field_of_the_plan_is_there() -> None:
    farm = small_farm(double_tunnel())

    def check(value: object, plain: Any) -> None:
        if is_dataclass(value) and "template" not in repr(value)[:20]:
            for field in fields(value):
                inside = getattr(value, field.name)
                if not field.compare:
                    continue
                assert field.name in plain
                if isinstance(inside, tuple) and inside and type(inside[0]) not in PLAIN:
                    assert len(plain[field.name]) == len(inside)

    check(plan(farm), told()["plan"])
    check(plan(farm).tunnels[0].chosen.cover, told()["plan"]["tunnels"][0]["chosen"]["cover"])


def test_sizes_are_in_metres_under_keys_that_say_so() -> None:
    survey = told()["plan"]["tunnels"][0]["survey"]
    # 16 bays of 1.5 m.
    assert survey["length_m"] == 24.0
    assert survey["bay_count"] == 16
    assert survey["curve"]["outline_m"][0][1] == 0.0


def test_money_is_text_and_texts_are_words() -> None:
    whole = told()
    assert isinstance(whole["plan"]["cost"]["to_pay"], str)
    first = whole["plan"]["findings"][0]
    assert isinstance(first["what"], str)
    assert "{" not in first["what"]
    assert isinstance(first["mended"], bool)


def test_same_farm_gives_the_same_text() -> None:
    farm = small_farm()
    assert plan_to_json(farm, plan(farm)) == plan_to_json(farm, plan(farm))
    assert told()["plan_format"] == PLAN_FORMAT


def test_curtains_and_airing_stand_in_si_without_what_they_were_worked_from() -> None:
    chosen = told()["plan"]["tunnels"][0]["chosen"]
    curtain = chosen["curtains"][0]
    assert "hung" not in curtain
    assert curtain["kind"] == "roll_up"
    keys = ("twist_trailing_m", "play_trailing_m", "uneven_trailing_m")
    assert sum(curtain[key] for key in keys) == pytest.approx(curtain["trailing_m"])
    assert len(curtain["joint_angles_rad"]) == 3
    airing = chosen["airing"]
    assert airing["opening_m2"] == pytest.approx(sum(airing["openings_m2"]))
    assert airing["course"][-1][2] == pytest.approx(airing["flow_m3_s"])


def test_air_under_pressure_and_heat_stand_in_si_without_what_they_were_worked_from() -> None:
    planned = told()["plan"]["tunnels"][0]
    held, warmth = planned["held"], planned["warmth"]
    assert {"net", "volumes_m3", "full_pa", "readings"}.isdisjoint(held)
    pressures = [cell["pressure_pa"] for cell in held["cells"]]
    assert (min(pressures), max(pressures)) == (held["low_pa"], held["high_pa"])
    assert len(held["hoses"]) == len(planned["chosen"]["inflation"]["jumpers"])
    assert all(isinstance(hose["critical"], bool) for hose in held["hoses"])
    assert isinstance(held["yearly_cost"], str)
    assert isinstance(held["told"], str)
    assert warmth["loss_one_w_k"] > warmth["loss_now_w_k"] >= warmth["loss_two_w_k"]
    assert warmth["payback_years"] is None
    assert "not heated" in warmth["told"]
    assert {working["figure"] for working in warmth["workings"]} <= set(warmth)


def test_every_field_with_a_size_says_its_unit() -> None:
    ends = ("_m", "_m2", "_m3", "_m3_s", "_pa", "_w", "_w_k", "_w_m2", "_kwh", "_min", "_n_m", "_j")
    plain = ("_share", "_units", "_years", "_days", "minutes", "chance", "share", "rains_to_fill")
    film = ("_kg", "_kg_m2")

    def floats(value: Any, key: str = "") -> set[str]:
        """Return the keys of numbers with a fraction; those of a list have the key of the list."""
        if isinstance(value, float):
            return {key}
        if isinstance(value, list):
            return set().union(*(floats(one, key) for one in value))
        if not isinstance(value, dict):
            return set()
        return set().union(*(floats(inside, k) for k, inside in value.items() if k not in TOLD))

    planned = told()["plan"]["tunnels"][0]
    keys = floats(planned["held"]) | floats(planned["warmth"])
    assert "stress_pa" in keys
    made = standing_tunnel()
    farm = small_farm().but(tunnels=(made,), catalogue=varied_catalogue())
    standing = json.loads(plan_to_json(farm, plan(farm)))["plan"]["tunnels"][0]
    parts = (standing["survey"], standing["fit"], *map(standing["chosen"].get, STANDING))
    keys |= set().union(*map(floats, parts))
    assert {"outline_m", "heights_m", "cloth_m", "governing_m"} <= keys
    assert sorted(key for key in keys if not key.endswith((*ends, *plain, *film))) == []


def test_a_tunnel_without_any_air_is_told_too() -> None:
    farm = small_farm()
    whole = json.loads(plan_to_json(farm, plan(farm)))["plan"]["tunnels"][0]["held"]
    assert (whole["cells"], whole["tries"], whole["fill_min"]) == ([], [], None)
