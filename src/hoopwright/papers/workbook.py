"""The takeoff workbook: sheets as values turned into the bytes of an XLSX file.

The library writes the book, its looks and its pages; the rows, with a result beside every formula,
come from `hoopwright.papers.sheet_rows`. The same plan gives the same bytes.
"""

import zipfile
from datetime import date, datetime
from io import BytesIO
from typing import TYPE_CHECKING

from hoopwright.farm.farm import Farm
from hoopwright.papers.sheet import Alert, Chart, Limit, Look, Sheet, column_letters
from hoopwright.papers.sheet_looks import STYLES
from hoopwright.papers.sheet_rows import rows_xml, with_rows
from hoopwright.papers.sheet_text import header_text, safe_text
from hoopwright.papers.sheets_air import air_sheet
from hoopwright.papers.sheets_airing import airing_sheet
from hoopwright.papers.sheets_curtains import cranks_sheet, curtains_sheet, travel_sheet
from hoopwright.papers.sheets_ends import ends_sheet
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
PAPER = {"imperial": 1, "metric": 9}


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
        ends_sheet(farm, plan),
        outfit_sheet(farm, plan),
        checks_sheet(farm, plan),
        cautions_sheet(),
        working_sheet(farm, plan),
    )
    footer = f"Plan of {plan_date.isoformat()}, Hoopwright {program_version}"
    book = _empty_book(farm, program_version, plan_date)
    looks = _Looks(book)
    for sheet in sheets:
        page = book.create_sheet(sheet.name)
        _join_cells(page, sheet)
        _set_up_page(page, sheet, farm, footer)
        _add_limits(page, sheet.limits)
        _add_alerts(page, sheet.alerts)
        _add_charts(page, sheet.charts)
    rows = [rows_xml(sheet, looks.number) for sheet in sheets]
    return with_rows(_saved(book), sheets, rows, plan_date)


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
    """Return the file as the library writes it, without rows and not yet compressed."""
    from openpyxl.writer.excel import ExcelWriter

    target = BytesIO()
    ExcelWriter(book, zipfile.ZipFile(target, "w", zipfile.ZIP_STORED)).save()
    return target.getvalue()


class _Looks:
    """Numbers of the looks in the file; one cell of each, on a sheet that is not saved, has it."""

    def __init__(self, book: "Workbook") -> None:
        """Start with no looks."""
        from openpyxl.worksheet.worksheet import Worksheet

        self._page = Worksheet(book)
        self._numbers: dict[tuple[Look, bool], int] = {}

    def number(self, look: Look, quoted: bool) -> int:
        """Return the number of a look.

        Args:
            look: The look.
            quoted: Whether the text of the cell would be calculated if it were typed again.
        """
        number = self._numbers.get((look, quoted))
        if number is None:
            cell = self._page.cell(1, len(self._numbers) + 1)
            _style(cell, look)
            cell.quotePrefix = quoted
            number = self._numbers[look, quoted] = cell.style_id
        return number


def _style(cell: "Cell | MergedCell", look: Look) -> None:
    from openpyxl.styles import Alignment, Border, Font, PatternFill, Protection, Side

    style = STYLES[look.kind]
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


def _join_cells(page: "Worksheet", sheet: Sheet) -> None:
    """Join cells; the library's own way makes new borders for each and takes very long."""
    from openpyxl.worksheet.cell_range import CellRange

    for row_number, row in enumerate(sheet.rows, start=1):
        for first, last in row.spans:
            page.merged_cells.add(
                CellRange(min_row=row_number, max_row=row_number, min_col=first, max_col=last)
            )


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
        look = DifferentialStyle(fill=PatternFill(bgColor=STYLES[alert.kind].fill))
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
