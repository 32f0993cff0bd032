"""The takeoff workbook: sheets as values turned into the bytes of an XLSX file.

Every formula is written with the result it has, so that previews, phones and programs that do
not calculate show the same figures as those that do; see `hoopwright.papers.sheet_results`. The
same plan gives the same bytes.
"""

import zipfile
from copy import copy
from datetime import date, datetime
from io import BytesIO
from typing import TYPE_CHECKING, Any, NamedTuple, Protocol, cast

from hoopwright.farm.farm import Farm
from hoopwright.papers.sheet import (
    Alert,
    Chart,
    Entry,
    Formula,
    Kind,
    Limit,
    Look,
    Row,
    Sheet,
    column_letters,
)
from hoopwright.papers.sheet_results import with_results
from hoopwright.papers.sheet_text import header_text, line_count, safe_text
from hoopwright.papers.sheets_air import air_sheet
from hoopwright.papers.sheets_airing import airing_sheet
from hoopwright.papers.sheets_curtains import cranks_sheet, curtains_sheet, travel_sheet
from hoopwright.papers.sheets_film import film_sheet, rolls_sheet
from hoopwright.papers.sheets_fit import fit_sheet
from hoopwright.papers.sheets_heat import heat_sheet
from hoopwright.papers.sheets_outfit import outfit_sheet
from hoopwright.papers.sheets_summary import summary_sheet
from hoopwright.papers.sheets_takeoff import takeoff_sheet
from hoopwright.papers.sheets_tape import tape_sheet
from hoopwright.papers.sheets_words import cautions_sheet, checks_sheet, working_sheet
from hoopwright.plan import Plan

if TYPE_CHECKING:
    from openpyxl import Workbook
    from openpyxl.cell.cell import Cell, MergedCell
    from openpyxl.worksheet.worksheet import Worksheet

FONT = "Arial"
INK = "FF1C2730"
LINE = "FFC3CBD1"
BODY_POINTS = 10
LINE_POINTS = 13.0
PLAIN_ROW = 16.0
TALLEST_ROW = 400.0
PLAIN_SIGNS = 1.22
BOLD_SIGNS = 1.08
PAPER = {"imperial": 1, "metric": 9}

_CALCULATED_STARTS = ("=", "+", "-", "@", "\t", "\r")


class _Style(NamedTuple):
    """What a role looks like.

    Attributes:
        size: Points.
        bold: Whether the letters are bold.
        fill: Colour behind them, or "".
        framed: Whether thin lines stand around it.
        wrapped: Whether long text goes on in the next line.
    """

    size: float = BODY_POINTS
    bold: bool = False
    fill: str = ""
    framed: bool = True
    wrapped: bool = True


_STYLES: dict[Kind, _Style] = {
    "title": _Style(size=15, bold=True, framed=False),
    "note": _Style(framed=False),
    "section": _Style(size=12, bold=True, framed=False),
    "head": _Style(bold=True, fill="FFDDE5EA"),
    "cell": _Style(),
    "total": _Style(bold=True),
    "input": _Style(fill="FFFFF4C2"),
    "key": _Style(bold=True),
    "fault": _Style(bold=True, fill="FFF6CFC8"),
    "caution": _Style(fill="FFFCE1BD"),
}


def workbook_bytes(farm: Farm, plan: Plan, program_version: str, plan_date: date) -> bytes:
    """Return the takeoff workbook of a farm as the bytes of an XLSX file.

    Args:
        farm: The farm.
        plan: Its plan.
        program_version: Version of the program, printed on every page.
        plan_date: Day the plan is made for, printed on every page.
    """
    sheets = (
        summary_sheet(farm, plan, program_version, plan_date),
        takeoff_sheet(farm, plan, program_version, plan_date),
        film_sheet(farm, plan),
        rolls_sheet(farm, plan),
        tape_sheet(farm, plan),
        fit_sheet(farm, plan),
        curtains_sheet(farm, plan),
        cranks_sheet(farm, plan),
        travel_sheet(farm, plan),
        air_sheet(farm, plan),
        heat_sheet(farm, plan),
        airing_sheet(farm, plan),
        outfit_sheet(farm, plan),
        checks_sheet(farm, plan),
        cautions_sheet(),
        working_sheet(farm, plan),
    )
    footer = f"Plan of {plan_date.isoformat()}, Hoopwright {program_version}"
    book = _empty_book(farm, program_version, plan_date)
    brush = _Brush(book)
    for sheet in sheets:
        page = book.create_sheet(sheet.name)
        _write_rows(page, sheet, brush)
        _set_up_page(page, sheet, farm, footer)
        _add_limits(page, sheet.limits)
        _add_alerts(page, sheet.alerts)
        _add_charts(page, sheet.charts)
    return with_results(_saved(book), sheets, plan_date)


def _empty_book(farm: Farm, program_version: str, plan_date: date) -> "Workbook":
    from openpyxl import Workbook

    book = Workbook()
    book.remove(book.worksheets[0])
    made_at = datetime(plan_date.year, plan_date.month, plan_date.day)
    book.properties.title = safe_text(f"Takeoff: {farm.name}")
    book.properties.creator = f"Hoopwright {program_version}"
    book.properties.created = made_at
    book.calculation.fullCalcOnLoad = True
    return book


def _saved(book: "Workbook") -> bytes:
    """Return the file as the library writes it, not yet compressed."""
    from openpyxl.writer.excel import ExcelWriter

    target = BytesIO()
    ExcelWriter(book, zipfile.ZipFile(target, "w", zipfile.ZIP_STORED)).save()
    return target.getvalue()


class _Styled(Protocol):
    """A cell with the numbers of its style, which the library's annotations leave out."""

    _style: Any
    quotePrefix: bool  # noqa: N815  # the library's name


class _Brush:
    """Gives cells their looks; one cell of each look is styled, all others share its style."""

    def __init__(self, book: "Workbook") -> None:
        """Start with no looks; the prototypes stand on a sheet that is never saved."""
        from openpyxl.worksheet.worksheet import Worksheet

        self._page = Worksheet(book)
        self._prototypes: dict[Look, _Styled] = {}

    def paint(self, cell: "Cell | MergedCell", look: Look) -> _Styled:
        """Give a cell a look."""
        if look not in self._prototypes:
            prototype = self._page.cell(1, len(self._prototypes) + 1)
            _style(prototype, look)
            self._prototypes[look] = cast("_Styled", prototype)
        painted = cast("_Styled", cell)
        painted._style = self._prototypes[look]._style
        return painted


def _style(cell: "Cell | MergedCell", look: Look) -> None:
    from openpyxl.styles import Alignment, Border, Font, PatternFill, Protection, Side

    style = _STYLES[look.kind]
    cell.font = Font(name=FONT, size=style.size, bold=style.bold, color=INK)
    if style.fill:
        cell.fill = PatternFill("solid", fgColor=style.fill)
    if style.framed:
        edge = Side(style="thin", color=LINE)
        cell.border = Border(left=edge, right=edge, top=edge, bottom=edge)
    is_text = not look.number
    cell.alignment = Alignment(
        horizontal="left" if is_text else "right",
        vertical="center",
        wrap_text=style.wrapped and is_text,
        indent=1 if is_text and style.framed else 0,
    )
    if look.number:
        cell.number_format = look.number
    cell.protection = Protection(locked=look.kind != "input")


def _write_rows(page: "Worksheet", sheet: Sheet, brush: _Brush) -> None:
    for row_number, row in enumerate(sheet.rows, start=1):
        for column, entry in enumerate(row.entries, start=1):
            if entry is not None:
                _write_cell(page.cell(row_number, column), entry, brush)
        for first, last in row.spans:
            _join_cells(page, row, (row_number, first, last), brush)
        height = _row_height(row, sheet.widths)
        if height > PLAIN_ROW:
            page.row_dimensions[row_number].height = height


def _join_cells(page: "Worksheet", row: Row, place: tuple[int, int, int], brush: _Brush) -> None:
    """Join the cells of a row from a first to a last column, each with the look of the first.

    The library's own way makes new borders for every joined cell and takes longer than all else.
    """
    from openpyxl.worksheet.cell_range import CellRange

    row_number, first, last = place
    page.merged_cells.add(
        CellRange(min_row=row_number, max_row=row_number, min_col=first, max_col=last)
    )
    entry = row.entries[first - 1]
    if entry is not None and _STYLES[entry.look.kind].framed:
        for column in range(first + 1, last + 1):
            brush.paint(page.cell(row_number, column), entry.look)


def _write_cell(cell: "Cell | MergedCell", entry: Entry, brush: _Brush) -> None:
    """Write one entry: text is stored as text whatever it begins with."""
    value = entry.value
    painted = brush.paint(cell, entry.look)
    if isinstance(value, Formula):
        cell.value = value.text
    elif isinstance(value, str):
        cell.value = safe_text(value)
        cell.data_type = "s"
        if value.startswith(_CALCULATED_STARTS):
            painted._style = copy(painted._style)
            painted.quotePrefix = True
    elif value is not None:
        cell.value = value


def _row_height(row: Row, widths: tuple[float, ...]) -> float:
    """Return the height that a row's longest text needs, points.

    Not every program finds the height of wrapped text by itself, and none does for joined cells.
    """
    ends = dict(row.spans)
    tallest = LINE_POINTS
    for column, entry in enumerate(row.entries, start=1):
        if entry is None or entry.look.number or entry.value is None:
            continue
        value = entry.value.result if isinstance(entry.value, Formula) else entry.value
        style = _STYLES[entry.look.kind]
        width = sum(widths[column - 1 : ends.get(column, column)]) - 1.3 * style.framed
        signs = int(width * (BOLD_SIGNS if style.bold else PLAIN_SIGNS) * BODY_POINTS / style.size)
        lines = line_count(str(value), max(signs, 1))
        tallest = max(tallest, lines * LINE_POINTS * style.size / BODY_POINTS)
    return min(tallest + 3, TALLEST_ROW)


def _set_up_page(page: "Worksheet", sheet: Sheet, farm: Farm, footer: str) -> None:
    from openpyxl.worksheet.header_footer import HeaderFooterItem, _HeaderFooterPart
    from openpyxl.worksheet.pagebreak import Break
    from openpyxl.worksheet.properties import PageSetupProperties

    for number, width in enumerate(sheet.widths, start=1):
        page.column_dimensions[column_letters(number)].width = width
    if sheet.header_row:
        below = f"{column_letters(sheet.frozen_columns + 1)}{sheet.header_row + 1}"
        page.freeze_panes = below
        page.print_title_rows = f"{sheet.header_row}:{sheet.header_row}"
    if sheet.filtered:
        first, last = sheet.filtered
        page.auto_filter.ref = f"A{first}:{column_letters(len(sheet.widths))}{last}"
    page.sheet_view.showGridLines = False
    page.page_setup.orientation = "landscape"
    page.page_setup.paperSize = PAPER[farm.units]
    page.page_setup.fitToWidth = 1
    page.page_setup.fitToHeight = 0
    page.sheet_properties.pageSetUpPr = PageSetupProperties(fitToPage=True)
    margins = page.page_margins
    margins.left = margins.right = 0.4
    margins.top = margins.bottom = 0.7
    margins.header = margins.footer = 0.3
    page.oddHeader = HeaderFooterItem(
        left=_HeaderFooterPart(header_text(farm.name)), right=_HeaderFooterPart(sheet.name)
    )
    page.oddFooter = HeaderFooterItem(
        left=_HeaderFooterPart(header_text(footer)), right=_HeaderFooterPart("Page &P of &N")
    )
    for row in sheet.breaks:
        page.row_breaks.append(Break(id=row))
    page.protection.sheet = sheet.protected


def _add_limits(page: "Worksheet", limits: tuple[Limit, ...]) -> None:
    from openpyxl.worksheet.datavalidation import DataValidation

    for limit in limits:
        if limit.allows == "list":
            rule = DataValidation(type="list", formula1=limit.choices)
            says = "Pick one of the list."
        elif limit.allows == "share":
            rule = DataValidation(type="decimal", operator="between", formula1="0", formula2="1")
            says = "Type a share from 0% to 100%."
        else:
            above = limit.allows == "above_zero"
            rule = DataValidation(
                type="decimal",
                operator="greaterThan" if above else "greaterThanOrEqual",
                formula1="0",
            )
            says = f"Type a number {'above zero' if above else 'from zero up'}, without a unit."
        rule.allow_blank = True
        rule.showErrorMessage = limit.strict
        rule.error = says
        if limit.prompt:
            rule.showInputMessage = True
            rule.prompt = limit.prompt
        rule.add(limit.cells.replace("$", ""))
        page.add_data_validation(rule)


def _add_alerts(page: "Worksheet", alerts: tuple[Alert, ...]) -> None:
    from openpyxl.formatting.rule import Rule
    from openpyxl.styles import PatternFill
    from openpyxl.styles.differential import DifferentialStyle

    for alert in alerts:
        look = DifferentialStyle(fill=PatternFill(bgColor=_STYLES[alert.kind].fill))
        rule = Rule(type="expression", dxf=look, formula=[alert.formula])
        page.conditional_formatting.add(alert.cells.replace("$", ""), rule)


def _add_charts(page: "Worksheet", charts: tuple[Chart, ...]) -> None:
    """Draw each chart as a line with a mark at every row; it has one series and so no legend."""
    from openpyxl.chart import Reference, ScatterChart, Series

    for chart in charts:
        drawn = ScatterChart()
        drawn.scatterStyle, drawn.style, drawn.legend = "lineMarker", 2, None
        for axis, title in ((drawn.x_axis, chart.across_title), (drawn.y_axis, chart.up_title)):
            axis.title, axis.delete, axis.number_format = title, False, "General"
        drawn.y_axis.scaling.min = 0
        across, up = (
            Reference(page, min_col=column, min_row=chart.first, max_row=chart.last)
            for column in (chart.across, chart.up)
        )
        series = Series(up, across)
        series.marker.symbol, series.smooth = "circle", False
        series.graphicalProperties.line.solidFill = INK[2:]
        drawn.series.append(series)
        drawn.width, drawn.height = chart.size_cm
        row, column = chart.at
        page.add_chart(drawn, f"{column_letters(column)}{row}")
