"""The rows of a sheet as the XML of an XLSX file, with a result beside every formula.

Previews, phones and programs that do not calculate show what stands beside a formula. The library
that writes the book has no way to put it there, and takes most of an export's time for cells; so it
writes the book, its looks and its pages, and the rows are put into its empty sheets.

Source:
    Rows, cells and texts that stand in their cell: ECMA-376 part 1, 18.3.1.73 (row), 18.3.1.4 (c),
    18.3.1.40 (f), 18.3.1.96 (v) and 18.3.1.53 (is). The clauses: from memory, to be confirmed.
"""

import re
import zipfile
from collections.abc import Callable, Sequence
from datetime import date
from decimal import Decimal
from io import BytesIO
from xml.sax.saxutils import escape

from hoopwright.papers.sheet import Entry, Formula, Look, Row, Sheet, column_letters
from hoopwright.papers.sheet_looks import PLAIN_ROW, STYLES, row_height
from hoopwright.papers.sheet_text import safe_text

StyleNumber = Callable[[Look, bool], int]
"""Returns the number of a look in the file; whether the text would else be calculated."""

_CALCULATED_STARTS = ("=", "+", "-", "@", "\t", "\r")
_EMPTY_SHEET = re.compile(
    r'(?P<head><dimension ref=")[^"]*(?P<top>".*<sheetData)(?: ?/>|></sheetData>)', re.DOTALL
)
_CHANGED_AT = re.compile(r"(<dcterms:modified[^>]*>)[^<]*(</dcterms:modified>)")


def rows_xml(sheet: Sheet, style_number: StyleNumber) -> str:
    """Return the rows of a sheet: text is stored as text whatever it begins with.

    Args:
        sheet: The sheet.
        style_number: Numbers of the looks.

    Raises:
        ValueError: A number, or the result of a formula, is not finite.
    """
    return "".join(
        _row_xml(number, row, sheet.widths, style_number)
        for number, row in enumerate(sheet.rows, start=1)
    )


def _row_xml(number: int, row: Row, widths: tuple[float, ...], style_number: StyleNumber) -> str:
    height = row_height(row, widths)
    tall = f' ht="{height:.16g}" customHeight="1"' if height > PLAIN_ROW else ""
    cells = [
        _cell_xml(f"{column_letters(column)}{number}", entry, style_number)
        for column, entry in enumerate(_with_joined(row), start=1)
        if entry is not None
    ]
    return f'<row r="{number}"{tall}>{"".join(cells)}</row>' if cells or tall else ""


def _with_joined(row: Row) -> Sequence[Entry | None]:
    """Return the cells of a row; framed ones that are joined to another have its look."""
    if not row.spans:
        return row.entries
    cells = list(row.entries)
    for first, last in row.spans:
        entry = cells[first - 1]
        if entry is not None and STYLES[entry.look.kind].framed:
            cells += [None] * (last - len(cells))
            cells[first:last] = [Entry(None, entry.look)] * (last - first)
    return cells


def _cell_xml(place: str, entry: Entry, style_number: StyleNumber) -> str:
    value, look = entry
    if value is None or value == "":
        return f'<c r="{place}" s="{style_number(look, False)}"/>'
    if isinstance(value, str):
        style = style_number(look, value.startswith(_CALCULATED_STARTS))
        text = _text_xml(value)
        space = ' xml:space="preserve"' if text != text.strip() else ""
        return f'<c r="{place}" s="{style}" t="inlineStr"><is><t{space}>{text}</t></is></c>'
    style = style_number(look, False)
    if not isinstance(value, Formula):
        return f'<c r="{place}" s="{style}"><v>{_number_xml(value)}</v></c>'
    formula, result = escape(value.text[1:]), value.result
    if isinstance(result, str):
        return f'<c r="{place}" s="{style}" t="str"><f>{formula}</f><v>{_text_xml(result)}</v></c>'
    return f'<c r="{place}" s="{style}"><f>{formula}</f><v>{_number_xml(result)}</v></c>'


def _text_xml(text: str) -> str:
    return escape(safe_text(text))


def _number_xml(value: int | Decimal) -> str:
    if isinstance(value, Decimal) and not value.is_finite():
        raise ValueError(f"a number in a cell must be finite, not {value}")
    return repr(float(value)).removesuffix(".0")


def with_rows(saved: bytes, sheets: Sequence[Sheet], rows: Sequence[str], plan_date: date) -> bytes:
    """Return the file with the rows of every sheet, and with the day of the plan.

    Args:
        saved: The file as the library wrote it, its sheets empty.
        sheets: Its sheets.
        rows: Their rows as XML.
        plan_date: Day the plan is made for.

    Raises:
        ValueError: There is no place for the rows of a sheet.
    """
    stamp = (max(plan_date.year, 1980), plan_date.month, plan_date.day, 0, 0, 0)
    parts = {
        f"xl/worksheets/sheet{number}.xml": filling
        for number, filling in enumerate(zip(sheets, rows, strict=True), start=1)
    }
    filled = BytesIO()
    with (
        zipfile.ZipFile(BytesIO(saved)) as source,
        zipfile.ZipFile(filled, "w", zipfile.ZIP_DEFLATED) as target,
    ):
        for part in source.infolist():
            content = source.read(part)
            if part.filename in parts:
                content = _filled(content.decode(), *parts.pop(part.filename)).encode()
            elif part.filename == "docProps/core.xml":
                made_at = f"{plan_date.isoformat()}T00:00:00Z"
                content = _CHANGED_AT.sub(rf"\g<1>{made_at}\g<2>", content.decode()).encode()
            kept = zipfile.ZipInfo(part.filename, stamp)
            kept.compress_type = zipfile.ZIP_DEFLATED
            target.writestr(kept, content)
    if parts:
        raise ValueError(f"there is no place for the rows of {', '.join(parts)}")
    return filled.getvalue()


def _filled(xml: str, sheet: Sheet, rows: str) -> str:
    """Return the XML of an empty sheet with its rows, and with its size."""
    found = _EMPTY_SHEET.search(xml)
    if found is None:
        raise ValueError(f"{sheet.name}: there is no place for its rows")
    columns = max([len(sheet.widths), *(len(row.entries) for row in sheet.rows)])
    size = f"A1:{column_letters(columns)}{len(sheet.rows)}"
    return (
        f"{xml[: found.start()]}{found['head']}{size}{found['top']}>{rows}</sheetData>"
        f"{xml[found.end() :]}"
    )
