"""The choices behind a plan in words."""

import samples
from hoopwright.farm import (
    AcrossUp,
    Cut,
    Door,
    Farm,
    Heating,
    MeasuredBow,
    PlacedJumper,
    RigidSheet,
)
from hoopwright.papers.sheet import Row
from hoopwright.papers.sheets_choices import choice_rows
from papers.every_kind import drop_side, farm_of, tunnel_of, woven_side
from papers.invented_plan import invented_farm, invented_tunnel


def told(farm: Farm) -> dict[str, str]:
    """Return the text beside each label."""
    pairs = [[e.value for e in row.entries if e] for row in choice_rows(farm, 8)]
    return {str(pair[0]): str(pair[1]) for pair in pairs if len(pair) == 2}


def titles(rows: list[Row]) -> list[str]:
    firsts = [row.entries[0].value for row in rows if len(row.entries) == 1 and row.entries[0]]
    return [str(first) for first in firsts]


def test_allowances_stand_in_the_units_of_the_farm() -> None:
    # The roof tail at the hip is 0.2286 m, which is 9 in.
    assert told(invented_farm("imperial"))["Roof tail at the hip"] == '9"'
    assert told(invented_farm("metric"))["Roof tail at the hip"] == "0.229 m"


def test_layers_films_and_sides_are_named() -> None:
    words = told(invented_farm("metric"))
    assert words["Roof"].startswith("two layers: clear film, four seasons outside")
    assert "split at 12.802 m (the curtains lap)" in words["West side"]
    assert words["West side, curtain 2"].startswith(
        "cranked at the back; hand crank with extension"
    )
    assert "roll lies outside the film" in words["West side, curtain 2"]
    assert words["East side"].startswith("fixed film")
    assert words["Back end"] == "not covered with film"
    assert words["Sealed and inflated sides"] == "West side"


def test_tunnels_that_share_all_choices_share_the_words() -> None:
    alike = invented_farm(tunnels=("North", "South"))
    assert "What was chosen for North, South" in titles(choice_rows(alike, 8))
    tunnel = invented_tunnel("South")
    longer = tunnel.but(skin=tunnel.skin.but(inflation_gap_m=0.2))
    unlike = alike.but(tunnels=(alike.tunnels[0], longer))
    found = titles(choice_rows(unlike, 8))
    assert "What was chosen for North" in found
    assert "What was chosen for South" in found


def test_tax_and_freight_are_said() -> None:
    words = told(invented_farm("imperial"))
    assert words["Sales tax"] == "6.25%, rounded once for the whole order"
    assert words["Freight"] == "$85.00, taxed"


def test_what_a_kind_does_not_use_is_not_told() -> None:
    rolling = told(farm_of(tunnel_of(woven_side(), drop_side())))
    assert "woven, rolls up" in rolling["West side"]
    assert "curtains of inner film" in rolling["West side"]
    assert "bunch" not in rolling["West side"]
    assert "drops down" in rolling["East side"]
    assert "bunch at the bottom 0.300 m" in rolling["East side"]
    assert "slack" not in rolling["East side"]
    assert "roll lies" not in rolling["East side, curtain 1"]


def test_single_curtains_are_not_called_inflated() -> None:
    double = samples.double_tunnel()
    mixed = double.but(sides=(double.sides[0], drop_side()))
    assert told(farm_of(mixed))["Sealed and inflated sides"] == "West side"


def test_weather_stands_with_the_choices() -> None:
    words = told(invented_farm("metric"))
    assert words["Wind while airing"] == "1.0 m/s"
    assert words["Ground around"] == "C, open land"


def test_blower_hoses_and_what_is_inflated_are_named() -> None:
    words = told(invented_farm("metric"))
    assert words["Blower"] == "inflation blower"
    assert words["Blower takes air"] == "from outdoors"
    assert words["Jumper hoses hang"] == "where worked out"
    assert words["Sealed and inflated end walls"] == "none"
    ends = samples.with_double_ends(samples.double_tunnel())
    assert told(farm_of(ends))["Sealed and inflated end walls"] == "Front end, Back end"


def test_placed_jumpers_are_told() -> None:
    double = samples.double_tunnel()
    placed = (PlacedJumper(surface="first_side", at_m=9.0),)
    by_hand = double.but(air=double.air.but(jumpers=placed))
    assert told(farm_of(by_hand))["Jumper hoses hang"] == "where placed by hand"


def test_heating_stands_with_its_fuel_or_there_is_none() -> None:
    cold = invented_farm("metric")
    assert told(cold)["Heating"] == "none"
    warm = cold.but(tunnels=(cold.tunnels[0].but(heating=Heating()),))
    words = told(warm)
    assert words["Heating"] == "propane at $2.40 for one gallon"
    # 283.15 K are 10 degrees Celsius.
    assert words["Kept inside"] == "10.0 °C"


def test_bench_and_winter_stand_with_the_farm() -> None:
    words = told(invented_farm("metric"))
    assert words["Sealer"] == "runs on along the edge"
    assert words["Price of one kWh"] == "$0.16"
    assert words["Degree-days"] == "900 K·day"


def test_end_walls_are_told_with_openings_rails_and_seams() -> None:
    plain = samples.tunnel()
    cut = Cut(kind="fan", left_m=-0.5, sill_m=1.5, width_m=0.9, height_m=0.8)
    front = plain.ends[0].but(
        doors=(Door(width_m=1.2, height_m=2.0), Door(width_m=0.9, height_m=2.0, left_m=-3.0)),
        cuts=(cut,),
        rails_m=(1.0, 2.2),
        seams_m=(2.2,),
    )
    sheet = RigidSheet(part="crank", cover_width_m=1.2, sheet_height_m=3.6, lap_m=0.1)
    back = plain.ends[1].but(film=None, rigid=sheet)
    words = told(farm_of(plain.but(ends=(front, back))))
    assert words["Front end"].split("; ")[1:] == [
        "door 1.200 m wide, 2.000 m high",
        "door 0.900 m wide, 2.000 m high, left edge -3.000 m",
        "fan 0.900 m wide, 0.800 m high, left edge -0.500 m, sill 1.500 m above the ground",
        "rails at 1.000 m, 2.200 m",
        "seams at 2.200 m",
    ]
    assert words["Back end"].endswith("each covers 1.200 m and is 3.600 m high, laps 0.100 m")


def test_every_shape_of_bow_has_its_own_name() -> None:
    points = tuple(AcrossUp(across_m=x, up_m=y) for x, y in ((0.5, 2.0), (4.0, 3.6), (7.4, 2.1)))
    measured = samples.tunnel(MeasuredBow(span_m=8.0, points=points))
    made = (samples.tunnel(), samples.gothic_tunnel(), samples.rafter_tunnel(), measured)
    firsts = [told(farm_of(one))["Frame"].split(";")[0] for one in made]
    assert firsts == ["round bow", "gothic bow", "straight rafters", "bow as measured"]
