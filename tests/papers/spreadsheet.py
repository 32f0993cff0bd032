"""A second program that calculates: workbooks are recalculated by LibreOffice and read again.

Formulas go in without any saved result, and the profile of its own says "always recalculate", so
that nothing that comes back can be what the workbook brought along.
"""

import datetime
import os
import shutil
import subprocess
import warnings
from collections.abc import Sequence
from decimal import Decimal
from io import BytesIO
from pathlib import Path

import pytest
from openpyxl import Workbook, load_workbook
from openpyxl.worksheet.worksheet import Worksheet

from hoopwright.farm import Farm
from hoopwright.papers.workbook import workbook_bytes
from hoopwright.plan import Plan

ALWAYS_RECALCULATE = """<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load">
<prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>
"""
LONGEST_S = 300
DAY = datetime.date(2031, 2, 3)


def made(farm: Farm, plan: Plan) -> bytes:
    """Return the workbook of a plan."""
    return workbook_bytes(farm, plan, "9.8.7", DAY)


def open_book(content: bytes, *, results: bool = False) -> Workbook:
    """Open a workbook with its formulas, or with the results saved beside them."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        return load_workbook(BytesIO(content), data_only=results)


def saved_book(book: Workbook) -> bytes:
    """Return the bytes of a workbook; formulas are saved without results."""
    target = BytesIO()
    book.save(target)
    return target.getvalue()


def recalculated(books: Sequence[Workbook], folder: Path) -> list[Workbook]:
    """Return the workbooks with every formula calculated by LibreOffice.

    Without LibreOffice the test is skipped, and fails where everything has to run.
    """
    program = shutil.which("soffice") or shutil.which("libreoffice")
    if program is None:
        reason = "LibreOffice (soffice) is not installed: NO FORMULA WAS RECALCULATED"
        if os.environ.get("CI"):
            pytest.fail(reason)
        pytest.skip(reason)
    profile, out = folder / "profile", folder / "out"
    (profile / "user").mkdir(parents=True)
    (profile / "user" / "registrymodifications.xcu").write_text(ALWAYS_RECALCULATE, "utf-8")
    paths = []
    for number, book in enumerate(books):
        paths.append(folder / f"book{number}.xlsx")
        paths[-1].write_bytes(saved_book(book))
    subprocess.run(
        [
            program,
            f"-env:UserInstallation={profile.as_uri()}",
            "--headless",
            "--convert-to",
            "xlsx:Calc MS Excel 2007 XML",
            "--outdir",
            str(out),
            *map(str, paths),
        ],
        check=True,
        capture_output=True,
        timeout=LONGEST_S,
    )
    return [open_book((out / path.name).read_bytes(), results=True) for path in paths]


def texts(sheet: Worksheet) -> str:
    """Return all texts and numbers of a sheet, one a line."""
    return "\n".join(str(c.value) for row in sheet.iter_rows() for c in row if c.value is not None)


def headings(sheet: Worksheet, first: str) -> dict[str, int]:
    """Return the columns of the row whose first cell is `first`, by their heading."""
    row = next(r for r in sheet.iter_rows() if r[0].value == first)
    return {str(c.value): c.column for c in row if c.value is not None}


def list_end(sheet: Worksheet) -> int:
    """Return the row of the takeoff that says where its list ends."""
    return next(
        r[0].row for r in sheet.iter_rows() if str(r[0].value).startswith("End of the list")
    )


def takeoff_rows(book: Workbook) -> list[dict[str, object]]:
    """Return the lines of the takeoff that hold an item, by heading without its unit."""
    sheet = book["Takeoff"]
    columns = headings(sheet, "No.")
    start = next(r[0].row for r in sheet.iter_rows() if r[0].value == "No.")
    rows = [
        {name: sheet.cell(row, column).value for name, column in columns.items()}
        for row in range(start + 1, list_end(sheet))
    ]
    return [row for row in rows if row["Item"] is not None]


def amount(sheet: Worksheet, label: str) -> Decimal:
    """Return the number beside a label in the first column."""
    cell = next(r for r in sheet.iter_rows() if r[0].value == label)[1]
    return Decimal(repr(cell.value))
