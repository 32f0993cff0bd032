"""The results of formulas, put into a workbook after it was written.

Previews, phones and programs that do not calculate show what stands beside a formula. The library
that writes the file has no way to put it there.
"""

import re
import zipfile
from datetime import date
from decimal import Decimal
from io import BytesIO
from xml.sax.saxutils import escape

from hoopwright.papers.sheet import Formula, Result, Sheet, column_letters
from hoopwright.papers.sheet_text import safe_text

_FORMULA_CELL = re.compile(
    r'<c r="([A-Z]+\d+)"((?: [a-z]+="[^"]*")*)><f>(.*?)</f><v ?(?:/>|></v>)</c>', re.DOTALL
)
_CHANGED_AT = re.compile(r"(<dcterms:modified[^>]*>)[^<]*(</dcterms:modified>)")


def with_results(saved: bytes, sheets: tuple[Sheet, ...], plan_date: date) -> bytes:
    """Return the file with the result of every formula, and with the day of the plan.

    Args:
        saved: The file as the library wrote it.
        sheets: Its sheets.
        plan_date: Day the plan is made for.

    Raises:
        ValueError: A formula got no result.
    """
    stamp = (max(plan_date.year, 1980), plan_date.month, plan_date.day, 0, 0, 0)
    filled = BytesIO()
    with (
        zipfile.ZipFile(BytesIO(saved)) as source,
        zipfile.ZipFile(filled, "w", zipfile.ZIP_DEFLATED) as target,
    ):
        parts = {f"xl/worksheets/sheet{n}.xml": s for n, s in enumerate(sheets, start=1)}
        for part in source.infolist():
            content = source.read(part)
            if part.filename in parts:
                content = _fill_part(content.decode(), parts[part.filename]).encode()
            elif part.filename == "docProps/core.xml":
                made_at = f"{plan_date.isoformat()}T00:00:00Z"
                content = _CHANGED_AT.sub(rf"\g<1>{made_at}\g<2>", content.decode()).encode()
            kept = zipfile.ZipInfo(part.filename, stamp)
            kept.compress_type = zipfile.ZIP_DEFLATED
            target.writestr(kept, content)
    return filled.getvalue()


def _fill_part(xml: str, sheet: Sheet) -> str:
    """Return the XML of one sheet with a result in every formula cell."""
    results = _results(sheet)

    def filled(found: re.Match[str]) -> str:
        result = results[found[1]]
        kind, text = _stored(result)
        return f'<c r="{found[1]}"{found[2]}{kind}><f>{found[3]}</f><v>{text}</v></c>'

    made, count = _FORMULA_CELL.subn(filled, xml)
    if count != len(results):
        raise ValueError(f"{sheet.name}: {len(results)} formulas, but {count} got their result")
    return made


def _results(sheet: Sheet) -> dict[str, Result]:
    """Return the result of every formula of a sheet by its cell."""
    return {
        f"{column_letters(column)}{row}": entry.value.result
        for row, cells in enumerate(sheet.rows, start=1)
        for column, entry in enumerate(cells.entries, start=1)
        if entry is not None and isinstance(entry.value, Formula)
    }


def _stored(result: Result) -> tuple[str, str]:
    if isinstance(result, str):
        return ' t="str"', escape(safe_text(result))
    if isinstance(result, Decimal) and not result.is_finite():
        raise ValueError(f"the result of a formula must be finite, not {result}")
    return "", repr(float(result))
