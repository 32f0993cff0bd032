"""Air between layers: pressures, hoses, blowers, seals, film and readings, in the farm's units."""

import dataclasses

import pytest

import samples
from hoopwright.farm import AirReading, Farm, PartState, PlacedJumper
from hoopwright.plan import Plan, plan
from papers.invented_plan import invented_farm, invented_plan
from papers.spreadsheet import made, open_book, texts


def _rows(farm: Farm, whole: Plan) -> list[list[object]]:
    sheet = open_book(made(farm, whole))["Air"]
    return [[c.value for c in row] for row in sheet.iter_rows()]


def _table(rows: list[list[object]], title: str) -> list[dict[str, object]]:
    """Return the lines of the table under a title, by heading without its unit."""
    start = next(k for k, row in enumerate(rows) if row[0] == title) + 1
    heads = [str(head).split(" (")[0] for head in rows[start] if head is not None]
    lines = []
    for row in rows[start + 1 :]:
        if row[0] is None or row[2] is None:
            break
        lines.append(dict(zip(heads, row, strict=False)))
    return lines


def _without_air(whole: Plan) -> Plan:
    (tunnel,) = whole.tunnels
    bare = dataclasses.replace(tunnel.chosen.inflation, seals=(), cells=(), jumpers=(), blower=None)
    held = dataclasses.replace(
        tunnel.held, cells=(), hoses=(), tries_made=tuple, pulls=(), leaks=()
    )
    chosen = dataclasses.replace(tunnel.chosen, inflation=bare)
    tunnel = dataclasses.replace(tunnel, chosen=chosen, held=held)
    return dataclasses.replace(whole, tunnels=(tunnel,), findings=())


def test_places_are_named_as_people_call_them(farm: Farm) -> None:
    air = texts(open_book(made(farm, invented_plan(farm)))["Air"])
    assert "West side, curtain 1" in air
    assert "side/0" not in air
    assert "cell/" not in air


def test_plan_without_air_or_checks_says_so(farm: Farm) -> None:
    book = open_book(made(farm, _without_air(invented_plan(farm))))
    for said in (
        "No two layers have air between them.",
        "No jumper hose is needed.",
        "No blower is chosen.",
        "No blower of the catalogue could be tried.",
        "No edge has to be sealed.",
        "No pressure has been read yet.",
    ):
        assert said in texts(book["Air"])
    assert "Every check passed." in texts(book["Checks"])


def test_cells_show_their_pressure_and_how_it_stands(farm: Farm) -> None:
    roof, curtain = _table(_rows(farm, invented_plan(farm)), "Cells")
    imperial = farm.units == "imperial"
    # 249.089 Pa are one inch of water column, 0.471947 l/s one cfm, and 0.0283168 m3 a cubic foot
    # (NIST Special Publication 811): 58 Pa are 0.233 in, 12.5 l/s 26 cfm, 21.5 m3 759.3 ft3.
    assert (roof["Pressure"], roof["State"]) == (0.233 if imperial else 58, "in range")
    assert (curtain["Pressure"], curtain["State"]) == (0.2 if imperial else 49.8, "low")
    assert (roof["Leaks"], roof["Volume"]) == ((26, 759.3) if imperial else (45, 21.5))
    assert (roof["Full after"], curtain["Full after"]) == (30, None)
    assert roof["Air comes"] == "from the blower"


def test_a_hose_says_which_cells_hang_on_it_alone(farm: Farm) -> None:
    whole = invented_plan(farm)
    (hose,) = _table(_rows(farm, whole), "Jumper hoses")
    assert hose["Hose"] == "Roof to West side, curtain 1"
    assert hose["Only way to"] == "West side, curtain 1"
    assert (hose["Hangs on"], hose["Place"]) == ("West side", "worked out")
    # 0.0015 m3/s are 5.4 m3/h, or 3.18 cfm.
    assert hose["Air in it"] == (3 if farm.units == "imperial" else 5)


def test_hoses_that_stand_in_for_each_other_are_no_only_way() -> None:
    double = samples.double_tunnel()
    placed = tuple(PlacedJumper(surface="first_side", at_m=at_m) for at_m in (14.0, 18.0))
    farm = samples.small_farm(double.but(air=double.air.but(jumpers=placed)))
    hoses = _table(_rows(farm, plan(farm)), "Jumper hoses")
    assert {h["Only way to"] for h in hoses} == {"no cell, another hose helps"}
    assert {h["Place"] for h in hoses} == {"by hand"}


def test_every_blower_that_was_tried_has_its_yearly_cost(farm: Farm) -> None:
    small, large = _table(_rows(farm, invented_plan(farm)), "Blowers of the catalogue, tried")
    assert (small["Blower"], large["Blower"]) == ("inflation blower, chosen", "larger blower")
    assert (small["What comes of it"], large["What comes of it"]) == (
        "too weak",
        "fits with the damper",
    )
    assert (small["Power for a year"], large["Power for a year"]) == (84.1, 126.14)
    assert large["Damper open"] == 0.625


def test_seals_stand_edge_by_edge_and_add_up_at_the_bench(farm: Farm) -> None:
    rows = _rows(farm, invented_plan(farm))
    edges = _table(rows, "Seals, edge by edge")
    assert [e["Edge"] for e in edges] == ["top", "bottom", "front", "back"]
    assert [e["Seals on it"] for e in edges] == [2, 2, 2, 2]
    # 25.4 mm are one inch.
    assert {e["Apart"] for e in edges} == {1 if farm.units == "imperial" else 25.4}
    (bench,) = _table(rows, "At the bench")
    # 42 + 42 + 8 + 8 strokes; 4 x 21.3 minutes; 145.939 N/m are 10 lbf/ft (NIST SP 811).
    assert bench["Strokes in all"] == sum(e["Strokes in all"] for e in edges) == 100
    assert bench["Bench"] == pytest.approx(sum(e["Bench"] for e in edges)) == 85.2
    assert bench["Seals are asked for"] == (10 if farm.units == "imperial" else 145.9)
    assert "Test strip held" not in bench


def test_a_test_strip_is_set_against_what_seals_are_asked_for() -> None:
    farm = invented_farm()
    farm = farm.but(bench=farm.bench.but(coupon_n_m=583.756))
    whole = invented_plan(farm)
    (tunnel,) = whole.tunnels
    # A quarter of 583.756 N/m, which are 40 lbf/ft.
    held = dataclasses.replace(tunnel.held, seal_share=0.25)
    whole = dataclasses.replace(whole, tunnels=(dataclasses.replace(tunnel, held=held),))
    (bench,) = _table(_rows(farm, whole), "At the bench")
    assert (bench["Test strip held"], bench["Asked, of the strip"]) == (40, 0.25)


def test_film_is_set_against_its_yield(farm: Farm) -> None:
    (roof,) = _table(_rows(farm, invented_plan(farm)), "Film under pressure")
    imperial = farm.units == "imperial"
    # 6894.757 Pa are one psi: 1.94 MPa are 281 psi; 291.878 N/m are 20 lbf/ft.
    assert (roof["Stress"], roof["Pull"]) == ((281, 20) if imperial else (1.94, 291.9))
    assert roof["Of its yield"] == 0.216


def test_slack_for_the_coldest_day_is_told(farm: Farm) -> None:
    rows = _rows(farm, invented_plan(farm))
    start = next(k for k, row in enumerate(rows) if row[0] == "Film for the coldest day")
    # 0.1778 m are 7 inches.
    assert rows[start + 2][1] == (7 if farm.units == "imperial" else 177.8)


def test_readings_and_what_they_say_stand_together(farm: Farm) -> None:
    air = texts(open_book(made(farm, invented_plan(farm)))["Air"])
    assert "2030-10-01: look at the seams." in air


def test_the_cell_that_leaks_is_named_when_two_were_read_on_a_day() -> None:
    double = samples.double_tunnel()
    cells = plan(samples.small_farm(double)).tunnels[0].held.cells
    read = tuple(
        AirReading(
            taken_on="2031-01-05",
            cell=cell.mark,
            pressure_pa=cell.pressure_pa * (0.6 if cell.mark == "cell/side/0/panel/1" else 0.95),
        )
        for cell in cells[:3]
    )
    farm = samples.small_farm(double.but(air=double.air.but(readings=read)))
    air = texts(open_book(made(farm, plan(farm)))["Air"])
    assert "2031-01-05: look for a hole" in air
    assert "West side, curtain 2" in air.split("look for a hole")[1]


def test_both_published_bands_of_pressure_are_told_with_where_they_come_from() -> None:
    farm = samples.small_farm(samples.double_tunnel()).but(units="metric")
    air = texts(open_book(made(farm, plan(farm)))["Air"])
    # 40 to 60 Pa: Castilla, Greenhouse Technology and Management, section 7.3.1. 50 to 75 Pa:
    # common practice, no published source.
    assert "no published source, is 50.0 Pa to 75.0 Pa" in air
    assert "40.0 Pa to 60.0 Pa" in air
    single = samples.small_farm().but(units="metric")
    assert "no published source" not in texts(open_book(made(single, plan(single)))["Air"])


def test_cautions_stand_in_full_where_they_belong(farm: Farm) -> None:
    rows = [row[0] for row in _rows(farm, invented_plan(farm))]
    places = [rows.index(x) for x in ("Cells", "Air off before rolling", "Jumper hoses")]
    assert places == sorted(places)
    places = [
        rows.index(x)
        for x in ("Blowers of the catalogue, tried", "Electricity", "Seals, edge by edge")
    ]
    assert places == sorted(places)
    places = [rows.index(x) for x in ("At the bench", "Hot sealer", "Film under pressure")]
    assert places == sorted(places)
    air = texts(open_book(made(farm, invented_plan(farm)))["Air"])
    assert "licensed electrician under the local code" in air
    assert "go flat first" in air
    assert "keep the cord clear of water and film" in air


def test_sheet_that_stays_is_not_counted_among_those_to_seal() -> None:
    # The double tunnel has two curtains on each side; the film of the first side stays.
    stays = PartState(family="Film", where="first_side", state="keep")
    farm = samples.small_farm(samples.double_tunnel().but(condition=(stays,)))
    rows = _rows(farm, plan(farm))
    states = [edge["State"] for edge in _table(rows, "Seals, edge by edge")]
    assert states == ["stays, sealed"] * 8 + ["to seal"] * 8
    (bench,) = _table(rows, "At the bench")
    assert bench["All sheets"] == "2 to seal"
