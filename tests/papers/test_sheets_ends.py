"""End walls in the workbook, in the units of the farm."""

import pytest

from hoopwright.farm import Allowances, Cut, Door, Farm, RigidSheet, RoundBow
from hoopwright.papers.sheet import Row, Value
from hoopwright.papers.sheets_ends import LAST, ends_explained, ends_sheet
from hoopwright.plan import plan
from hoopwright.quantity.units import Units
from samples import small_farm, tunnel

HALF_CIRCLE = RoundBow(span_m=8.0, leg_height_m=0.0, peak_height_m=4.0)
FOOT_M = 0.3048


def _farm(units: Units = "metric") -> Farm:
    """Return half circles of 4 m: in front film joined at 2.4 m, rigid sheets at the back."""
    plain = tunnel(HALF_CIRCLE)
    front, back = plain.ends
    vent = Cut(left_m=-0.3, sill_m=2.6, width_m=0.6, height_m=0.5)
    joined = front.but(
        doors=(Door(width_m=2.4, height_m=2.1, left_m=-3.0),),
        cuts=(vent,),
        rails_m=(2.4,),
        seams_m=(2.4,),
    )
    sheet = RigidSheet(part="crank", cover_width_m=2.0, sheet_height_m=3.0, lap_m=0.1)
    allowances = Allowances(end_wall_tail_m=0.3, seam_lap_m=0.2)
    made = plain.but(
        frame=plain.frame.but(tube_diameter_m=0.0),
        skin=plain.skin.but(allowances=allowances),
        ends=(joined, back.but(film=None, rigid=sheet)),
    )
    return small_farm(made).but(units=units)


def _lines(farm: Farm, title: str) -> list[dict[str, Value]]:
    """Return the lines of a list by their headings."""
    rows: tuple[Row, ...] = ends_sheet(farm, plan(farm)).rows
    texts = [[None if e is None else e.value for e in row.entries] for row in rows]
    places = [n for n, row in enumerate(texts) if row[:1] == [title]]
    at = places[-1] + 1
    found = []
    for line in texts[at + 1 :]:
        if len(line) != len(texts[at]):
            break
        found.append({str(h): v for h, v in zip(texts[at], line, strict=True)})
    return found


@pytest.mark.parametrize("units", ["metric", "imperial"])
def test_areas_and_openings_are_listed(units: Units) -> None:
    farm = _farm(units)
    front, back = _lines(farm, "End walls")
    assert (front["Closed with"], back["Closed with"]) == ("film", "rigid sheets")
    unit, area = ("m", "m²") if units == "metric" else ("ft", "ft²")
    square = 1.0 if units == "metric" else FOOT_M**2
    # 8 pi = 25.1327 m2 less the door's 5.04 and the vent's 0.3 m2.
    assert float(str(front[f"Closed ({area})"])) == pytest.approx(19.7927 / square, abs=0.06)
    door, vent = _lines(farm, "Doors, vents and fan openings")
    assert (door["Opening"], vent["Opening"]) == ("door 1", "vent 1")
    # The door, 2.1 m high from -3.0 m: at 2.1 m the bow reaches 3.4044 m.
    assert door["Lies in the wall"] == "yes"
    length = 1.0 if units == "metric" else FOOT_M
    assert float(str(door[f"Left edge ({unit})"])) == pytest.approx(-3.0 / length, abs=0.006)


def test_sheets_rails_and_seams_are_listed() -> None:
    farm = _farm()
    low, high = _lines(farm, "Sheets of film")
    # From the ground to 2.5 m and 0.3 m of tail; from 2.3 to 4 m and 0.3 m.
    across = [float(str(line["Across the roll (m)"])) for line in (low, high)]
    assert across == pytest.approx([2.8, 2.0])
    # 8 + 0.6 m; at 2.3 m 2 sqrt(16 - 5.29) + 0.6 = 7.1453 m, rounded up.
    assert float(str(high["Along the roll (m)"])) == pytest.approx(7.146, abs=1e-9)
    assert low["Tail at each edge"] == "0.300 m"
    rail, seam = _lines(farm, "Rails and seams")
    assert [rail["What"], seam["What"]] == ["rail", "seam"]
    assert float(str(seam["Free of openings (m)"])) == pytest.approx(6.4)


def test_rigid_sheets_are_listed_column_by_column() -> None:
    farm = _farm()
    (wall,) = _lines(farm, "Rigid sheets")
    assert wall["Sheets"] == 6
    columns = _lines(farm, "Columns of rigid sheets")
    assert [c["Sheets"] for c in columns] == [2, 2, 2, 2]
    assert float(str(columns[1]["Sheet above (m)"])) == pytest.approx(1.1)


def test_a_farm_without_anything_says_so() -> None:
    plain = tunnel()
    bare = small_farm(plain.but(ends=tuple(end.but(film=None) for end in plain.ends)))
    sheet = ends_sheet(bare, plan(bare))
    said = [e.value for row in sheet.rows for e in row.entries if e is not None]
    assert said.count("No end wall has one.") == 5
    assert max(len(row.entries) for row in sheet.rows) <= LAST


def test_every_result_is_explained_by_name() -> None:
    farm = _farm()
    (made,) = plan(farm).tunnels
    names = [name for name, _ in ends_explained(farm.tunnels[0], made)]
    assert names == [
        "Meadow tunnel, Front end",
        "Meadow tunnel, Back end",
        "Meadow tunnel, Back end: rigid sheets",
    ]
