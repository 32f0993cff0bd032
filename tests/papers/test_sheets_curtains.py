"""The curtains on paper: what they are made of, what it takes, the way, and what to mind."""

import dataclasses
import zipfile
from io import BytesIO

import pytest
from openpyxl.worksheet.worksheet import Worksheet

import samples
from hoopwright.farm import Farm
from hoopwright.papers.cautions import caution_texts
from hoopwright.plan import plan
from papers.every_kind import drop_side, farm_of, geared_side, tunnel_of, woven_side
from papers.invented_plan import invented_plan
from papers.spreadsheet import headings, made, open_book, texts


def block(sheet: Worksheet, title: str) -> dict[str, list[object]]:
    """Return the columns of a list of a sheet by their heading, the unit left out."""
    start = next(r[0].row for r in sheet.iter_rows() if r[0].value == title) + 1
    columns: dict[str, list[object]] = {}
    for cell in sheet[start]:
        if cell.value is None:
            continue
        values, row = [], start + 1
        while sheet.cell(row, 2).value is not None:
            values.append(sheet.cell(row, cell.column).value)
            row += 1
        columns[str(cell.value).split(" (")[0]] = values
    return columns


@pytest.mark.parametrize("title", ["Curtains", "Cranks", "Travel"])
def test_runaway_and_air_off_stand_in_full_with_the_curtains(farm: Farm, title: str) -> None:
    told = texts(open_book(made(farm, invented_plan(farm)))[title])
    for caution in caution_texts("crank"):
        assert caution.text in told


def test_curtains_tell_kind_place_of_crank_and_edges(farm: Farm) -> None:
    sheet = open_book(made(farm, invented_plan(farm)))["Curtains"]
    columns = headings(sheet, "Tunnel")
    rows = [r[0].row for r in sheet.iter_rows() if r[0].value == "North"]
    told = {
        name: [sheet.cell(row, columns[name]).value for row in rows]
        for name in ("Curtain", "Kind", "Crank at", "Roll lies", "Bottom edge", "Against the wind")
    }
    assert told == {
        "Curtain": ["West side, curtain 1", "West side, curtain 2"],
        "Kind": ["rolls up"] * 2,
        "Crank at": ["front", "back"],
        "Roll lies": ["outside the film"] * 2,
        "Bottom edge": ["seal profile"] * 2,
        "Against the wind": ["rope in a zigzag"] * 2,
    }
    assert "Lift lines" not in columns


def test_handle_bar_and_gaps_stand_in_the_units_of_the_farm(farm: Farm) -> None:
    sheet = open_book(made(farm, invented_plan(farm)))["Cranks"]
    hand, bar = block(sheet, "At the handle"), block(sheet, "Along the bar")
    imperial = farm.units == "imperial"
    # A pound-force is 4.44822 N, an inch 25.4 mm (NIST Special Publication 811): 13.0 N are
    # 2.92 lbf; 1, 2, 5 and 8 mm are 0.04, 0.08, 0.20 and 0.31 in.
    assert hand["Hand force shut"][0] == (2.9 if imperial else 13)
    assert hand["Time to open"][0] == 0.3
    parts = ("Behind by twist", "Behind by play in joints", "Behind by uneven winding")
    behind = [bar[words][0] for words in (*parts, "Farthest place behind")]
    assert behind == ([0.04, 0.08, 0.2, 0.31] if imperial else [1, 2, 5, 8])
    assert bar["Which limit that is"][0] == "trailing"
    # 0.6, 0.1 and 0.3 rad are 34.4, 5.7 and 17.2 degrees.
    assert [hand[f"Joint angle {place}"][0] for place in ("shut", "half way", "open")] == [
        34,
        6,
        17,
    ]


def test_speeds_are_called_an_upper_bound_and_ropes_a_reference(farm: Farm) -> None:
    told = texts(open_book(made(farm, invented_plan(farm)))["Cranks"])
    assert "upper bound" in told
    assert "Keep hold of the handle until the lock is in." in told
    assert "Pull of the wind on ropes and straps, for reference only" in told
    assert "licensed practice" in told


def test_figures_that_a_kind_has_not_stay_empty() -> None:
    kinds = farm_of(tunnel_of(woven_side(), drop_side()))
    book = open_book(made(kinds, plan(kinds)))
    bar = block(book["Cranks"], "Along the bar")
    # First two woven curtains, which roll, then two drop-down ones, which do not.
    assert [value is None for value in bar["Roll diameter open"]] == [False, False, True, True]
    columns = headings(book["Curtains"], "Tunnel")
    assert {"Lift lines", "Pulleys", "Roll lies"} <= set(columns)
    assert "Guide pipe (m)" not in columns


def test_travel_has_eleven_rows_and_a_chart_for_each_different_way() -> None:
    unlike = farm_of(tunnel_of(geared_side(), drop_side()))
    whole = plan(unlike)
    content = made(unlike, whole)
    sheet = open_book(content)["Travel"]
    shares = [r[0].value for r in sheet.iter_rows() if r[0].number_format == "0.0%"]
    steps = [k / 10 for k in range(11)]
    ways = len(sheet._charts)
    assert shares == pytest.approx(steps * ways)
    # Both halves of a side are alike, the sides are not.
    assert ways == 2
    work = whole.tunnels[0].chosen.curtains[0]
    forces = [r[2].value for r in sheet.iter_rows() if r[0].number_format == "0.0%"]
    assert forces[0] == pytest.approx(work.hand_forces_n[0], abs=0.05)
    assert forces[10] == pytest.approx(work.hand_forces_n[2], abs=0.05)
    with zipfile.ZipFile(BytesIO(content)) as parts:
        charts = sorted(name for name in parts.namelist() if "charts/chart" in name)
        xml = parts.read(charts[0]).decode()
    assert len(charts) == ways
    heading = next(r[0].row for r in sheet.iter_rows() if r[0].value == "Share of the way")
    for letter in "BC":
        assert f"'Travel'!${letter}${heading + 1}:${letter}${heading + 11}" in xml


def test_curtains_of_many_alike_tunnels_share_a_table() -> None:
    tunnels = tuple(samples.tunnel().but(name=f"Tunnel {n}") for n in range(1, 5))
    alike = farm_of(tunnels[0]).but(tunnels=tunnels)
    told = texts(open_book(made(alike, plan(alike)))["Travel"])
    assert "Tunnel 1: West side, curtain 1; Tunnel 1: East side, curtain 1" in told
    assert "and 5 more that are alike" in told


def test_a_farm_without_curtains_says_so(farm: Farm) -> None:
    whole = invented_plan(farm)
    (tunnel,) = whole.tunnels
    chosen = dataclasses.replace(tunnel.chosen, curtains=())
    bare = dataclasses.replace(whole, tunnels=(dataclasses.replace(tunnel, chosen=chosen),))
    book = open_book(made(farm, bare))
    for title in ("Curtains", "Cranks", "Travel"):
        assert "No side opens." in texts(book[title])
