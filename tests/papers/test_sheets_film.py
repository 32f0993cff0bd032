"""Film and rolls: sizes that add up and are never short, marks from the roll's end."""

from hoopwright.farm import Farm
from papers.invented_plan import invented_plan
from papers.spreadsheet import headings, made, open_book


def test_film_says_how_sizes_add_up_and_never_cuts_short(farm: Farm) -> None:
    sheet = open_book(made(farm, invented_plan(farm)))["Film"]
    columns = headings(sheet, "Tunnel")
    row = next(r for r in sheet.iter_rows() if r[1].value == "Roof, outer")[0].row
    unit = "ft" if farm.units == "imperial" else "m"
    width = sheet.cell(row, columns[f"Width ({unit})"]).value
    # 9 m are 29.5276 ft.
    assert width == (29.53 if unit == "ft" else 9)
    added = sheet.cell(row, columns["The width adds up from"]).value
    assert "over the bow" in added
    assert "tails at the hip" in added


def test_rolls_mark_cuts_and_what_stays(farm: Farm) -> None:
    sheet = open_book(made(farm, invented_plan(farm)))["Rolls"]
    columns = headings(sheet, "Roll")
    unit = "ft" if farm.units == "imperial" else "m"
    marks = [
        [sheet.cell(r[0].row, columns[f"{end} mark ({unit})"]).value for end in ("From", "To")]
        for r in sheet.iter_rows()
        if r[0].value == 1
    ]
    # Worked by hand: 26.8224 m are 88 ft; 30 m are 98.4252 ft, rounded up.
    assert marks == ([[0, 88], [88, 98.43]] if unit == "ft" else [[0, 26.823], [26.823, 30]])
