"""The summary: sums of the plan, both coverings, what the price leaves out."""

import dataclasses
from decimal import Decimal

import pytest

from hoopwright.farm import Farm, Heating, Money, PartState
from hoopwright.order.order import Unplaced
from hoopwright.plan import plan as plan_of
from papers.invented_plan import invented_farm, invented_lines, invented_plan
from papers.spreadsheet import amount, made, open_book, texts
from samples import small_farm, tunnel


def test_saved_sums_are_those_of_the_plan(farm: Farm) -> None:
    # Worked by hand: 483.50 + 477.75 + 36.00 + 84.30 + 32.45 = 1114.00 goods; with 85.00 freight
    # 1199.00 are taxed, 6.25 % of it are 74.9375; 1114.00 + 85.00 + 74.94 = 1273.94.
    plan = invented_plan(farm)
    sheet = open_book(made(farm, plan), results=True)["Summary"]
    found = [amount(sheet, label) for label in ("Goods", "Freight", "Tax", "To pay")]
    assert found == [Decimal(x) for x in ("1114.0", "85.0", "74.94", "1273.94")]
    cost = plan.cost
    assert found == [cost.goods, cost.freight, cost.tax, cost.to_pay]


def test_groups_add_up_to_the_goods(farm: Farm) -> None:
    plan = invented_plan(farm)
    sheet = open_book(made(farm, plan), results=True)["Summary"]
    found = {group.group: amount(sheet, group.group) for group in plan.cost.groups}
    assert found == {group.group: group.amount for group in plan.cost.groups}
    assert amount(sheet, "Your own lines and groups") == 0


@pytest.mark.parametrize(
    ("money", "tax"),
    [
        # 6.25 % of 1114.00 are 69.625, half a cent goes up.
        (Money(tax_share=0.0625, freight=Decimal("85.00")), "69.63"),
        (Money(), "0"),
    ],
)
def test_tax_leaves_out_freight_that_is_not_taxed(money: Money, tax: str) -> None:
    farm = invented_farm(money=money)
    sheet = open_book(made(farm, invented_plan(farm)), results=True)["Summary"]
    assert amount(sheet, "Tax") == Decimal(tax)


def test_summary_says_whether_it_is_the_whole_price(farm: Farm) -> None:
    lines = invented_lines()
    priced = tuple(line for line in lines if line.price)
    entered = tuple(line for line in priced if not line.invented)
    said = []
    for some in (lines, priced, entered):
        content = made(farm, invented_plan(farm, some))
        said.append(texts(open_book(content, results=True)["Summary"]))
    assert "Not the whole price. Lines without a price: 1." in said[0]
    assert "Lines with an invented price: 4." in said[1]
    assert "Every line to buy has a price that was entered." in said[2]


def test_summary_tells_what_both_coverings_leave_out_because_it_stays() -> None:
    kept = tunnel().but(condition=(PartState(family="Film", where="roof", state="keep"),))
    farm = small_farm(kept)
    # A roof sheet of its own stays; the one sheet hangs down both sides, and is cut new.
    # 10.059 m by 25.219 m of a roll of 12 m by 50 m, or 600 m2, for $390: a share of 0.4228.
    found = texts(open_book(made(farm, plan_of(farm)))["Summary"])
    (told,) = [line for line in found.splitlines() if "what stays of the old skin" in line]
    assert told.startswith("Meadow tunnel: ")
    assert "$164.89 new for roof and sides apart" in told
    assert "$0.00 new for one sheet" in told
    new = small_farm(tunnel())
    assert "what stays" not in texts(open_book(made(new, plan_of(new)))["Summary"])


def test_summary_names_sheets_that_no_roll_yields(farm: Farm) -> None:
    plan = invented_plan(farm)
    missing = Unplaced(
        tunnel="North",
        piece="piece/roof/outer/0",
        name="Roof, outer",
        over_width_m=0.3,
        over_length_m=0.0,
        stock_m=9.1,
    )
    order = dataclasses.replace(plan.order, unplaced=(missing,))
    found = texts(open_book(made(farm, dataclasses.replace(plan, order=order)))["Summary"])
    assert "Roof, outer (North): no roll of the film is large enough" in found


def test_summary_tells_pressure_power_and_saving(farm: Farm) -> None:
    sheet = open_book(made(farm, invented_plan(farm)))["Summary"]
    rows = [[c.value for c in row] for row in sheet.iter_rows()]
    start = next(k for k, row in enumerate(rows) if row[0] == "Air between layers, and heat")
    # It begins a page, so that its title stands with its lines.
    assert [b.id for b in sheet.row_breaks.brk] == [start - 1]
    line = rows[start + 2]
    # 249.089 Pa are one inch of water column (NIST Special Publication 811).
    pressures = [0.2, 0.233] if farm.units == "imperial" else [49.8, 58]
    assert line == ["North", "inflation blower", *pressures, 84.1, 980, 2819.9, "not heated"]
    assert rows[start + 3][:2] == ["North", "The second layer is soon paid back."]


def test_summary_says_after_how_long_a_heated_tunnel_is_paid_back() -> None:
    farm = invented_farm("metric")
    farm = farm.but(tunnels=(farm.tunnels[0].but(heating=Heating()),))
    plan = invented_plan(farm)
    (tunnel,) = plan.tunnels
    for years, text in ((2.5, "2.5 yr"), (None, "never")):
        warmth = dataclasses.replace(tunnel.warmth, payback_years=years)
        whole = dataclasses.replace(plan, tunnels=(dataclasses.replace(tunnel, warmth=warmth),))
        sheet = open_book(made(farm, whole))["Summary"]
        paid = [row[7].value for row in sheet.iter_rows() if row[1].value == "inflation blower"]
        assert paid[0] == text
