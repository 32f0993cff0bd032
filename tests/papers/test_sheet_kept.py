"""What stays, below the list of the takeoff."""

import dataclasses
from decimal import Decimal

import pytest
from openpyxl import Workbook
from openpyxl.worksheet.worksheet import Worksheet

from hoopwright.farm import Farm, PartState
from hoopwright.plan import Plan, plan
from papers.spreadsheet import list_end, made, open_book, takeoff_rows
from samples import small_farm, tunnel
from takeoff.counted import whole_catalogue

KEPT = (
    PartState(family="Film", where="roof", state="repair", replace_share=0.1),
    PartState(family="Boards", where="first_side", state="keep"),
    PartState(family="Film fixing", where="first_side", to_bow=9, state="keep"),
)


@pytest.fixture(params=["imperial", "metric"])
def keeping(request: pytest.FixtureRequest) -> Farm:
    """Return a farm whose tunnel keeps some of its old skin, in each system of units."""
    kept = tunnel().but(condition=KEPT)
    return small_farm().but(units=request.param, tunnels=(kept,), catalogue=whole_catalogue())


def opened(farm: Farm, planned: Plan | None = None) -> Workbook:
    return open_book(made(farm, planned or plan(farm)), results=True)


def stays(sheet: Worksheet) -> list[dict[str, object]]:
    """Return the rows below the list by their headings, the sum last."""
    rows = list(sheet.iter_rows(min_row=list_end(sheet), values_only=True))
    start = next(n for n, row in enumerate(rows) if "Item that stays" in row)
    return [dict(zip(rows[start], row, strict=True)) for row in rows[start + 1 :]]


def test_each_line_that_stays_has_a_row_with_what_it_would_cost(keeping: Farm) -> None:
    planned = plan(keeping)
    rows = stays(opened(keeping, planned)["Takeoff"])
    reused = planned.order.reused
    assert [row["Item that stays"] for row in rows] == [*(r.name for r in reused), "All that stays"]
    cost = [Decimal(repr(row["Would cost (USD)"])).quantize(Decimal("0.01")) for row in rows]
    assert cost == [*(line.saved for line in reused), planned.order.saved]
    assert planned.cost.saved == planned.order.saved > 0
    assert {row["State"] for row in rows[:-1]} == {"kept", "repaired"}


def test_needed_less_kept_is_to_buy(keeping: Farm) -> None:
    rows = stays(opened(keeping)["Takeoff"])[:-1]
    assert rows
    for row in rows:
        assert row["To buy"] == pytest.approx(row["Needed"] - row["Kept"])


def test_line_of_the_list_shows_what_is_kept_of_it(keeping: Farm) -> None:
    # Film fixing of the first side stays from 0 to 12 m of 24 m. Of channel there are two runs on
    # the hip board, 24 m; one of 1.5 m under each pocket, of which the front one; the uprights of
    # the front pocket on both its bows. The runs over the end bows belong to the ends.
    planned = plan(keeping)
    side_m = planned.tunnels[0].survey.side_m[0]
    metres = 24.0 + 1.5 + 2 * side_m
    (row,) = (
        r for r in takeoff_rows(opened(keeping, planned)) if r["Item"] == "Attachment channel"
    )
    unit_m, step = (0.3048, 0.01) if keeping.units == "imperial" else (1.0, 0.001)
    assert row["Kept"] == pytest.approx(metres / unit_m, abs=step)
    assert row["Kept"] <= metres / unit_m + 1e-9
    assert row["To buy"] == pytest.approx(row["Needed"] - row["Kept"] + row["Spares"], abs=1e-6)


def test_workbook_of_a_farm_that_buys_all_new_says_nothing_of_keeping(keeping: Farm) -> None:
    plain = keeping.but(tunnels=(tunnel(),))
    sheet = opened(plain)["Takeoff"]
    assert sheet.max_row == list_end(sheet)
    assert {row["Kept"] for row in takeoff_rows(opened(plain))} == {None}


def test_working_sheet_tells_of_what_stays(keeping: Farm) -> None:
    told = {str(row[0].value) for row in opened(keeping)["Working"].iter_rows()}
    assert "stays, Attachment channel" in told
    assert "Meadow tunnel, Roof sheet, stays" in told


def test_hand_typed_amounts_of_what_stays_are_rounded_once(keeping: Farm) -> None:
    planned = plan(keeping)
    line = dataclasses.replace(
        planned.order.reused[0], spared=0.3333, price=Decimal("10.05"), saved=Decimal("3.35")
    )
    order = dataclasses.replace(planned.order, reused=(line,), saved=line.saved)
    rows = stays(opened(keeping, dataclasses.replace(planned, order=order))["Takeoff"])
    # 0.3333 x 10.05 = 3.349665, to the cent 3.35.
    assert [row["Would cost (USD)"] for row in rows] == [3.35, 3.35]
