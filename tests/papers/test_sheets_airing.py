"""Air through open sides: openings, shares and flows, in the units of the farm."""

from hoopwright.farm import Farm
from hoopwright.plan import plan
from papers.every_kind import drop_side, farm_of, tunnel_of, woven_side
from papers.invented_plan import invented_plan
from papers.spreadsheet import made, open_book, texts


def test_airing_tells_openings_shares_and_flows_in_the_units_of_the_farm(farm: Farm) -> None:
    sheet = open_book(made(farm, invented_plan(farm)))["Airing"]
    rows = [[c.value for c in row] for row in sheet.iter_rows()]
    west = next(row for row in rows if row[1] == "West side")
    imperial = farm.units == "imperial"
    # A square metre is 10.7639 ft2, a cubic metre 35.3147 ft3 (NIST Special Publication 811): 30 m2
    # are 322.9 ft2; 2.5 m3/s are 9000 m3/h or 5297 cfm; 0.0133 m3/s on each m2 is 47.88 m3/h.
    assert west[2:5] == ["rolls up", 322.9 if imperial else 30, 0.16]
    heading = next(k for k, row in enumerate(rows) if "Air changes" in str(row[6]))
    assert rows[heading + 1][5:8] == ([5297, 17, 2.6] if imperial else [9000, 17, 48])


def test_airing_names_the_day_and_gives_no_verdict(farm: Farm) -> None:
    told = texts(open_book(made(farm, invented_plan(farm)))["Airing"])
    # 298.15 K are 25 degrees Celsius or 77 degrees Fahrenheit.
    assert ("77 °F outside" if farm.units == "imperial" else "25.0 °C outside") in told
    assert "no figure was found for a tunnel with open sides alone" in told
    for verdict in ("enough", "too little", "too low", "insufficient", "sufficient"):
        assert verdict not in told


def test_airing_tells_the_way_of_every_kind_of_side() -> None:
    kinds = farm_of(tunnel_of(woven_side(), drop_side()))
    whole = plan(kinds)
    sheet = open_book(made(kinds, whole))["Airing"]
    airing = whole.tunnels[0].chosen.airing
    rows = [[c.value for c in row] for row in sheet.iter_rows()]
    assert [row[2] for row in rows if row[1] in ("West side", "East side")] == [
        "woven, rolls up",
        "drops down",
    ]
    start = next(k for k, row in enumerate(rows) if row[1] == "Share of the way") + 1
    assert [row[1] for row in rows[start : start + len(airing.course)]] == [
        round(step[0], 3) for step in airing.course
    ]
