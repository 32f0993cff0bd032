"""Lines about stock widths that stand beside the choice of a width: label, text, working."""

from collections.abc import Iterator
from typing import NamedTuple

from PySide6.QtCore import QCoreApplication

from hoopwright.fit import SheetFit, WidthFit, chance_words, tell_widths
from hoopwright.fit.fit import Remeasured
from hoopwright.fit.telling import telling_widths
from hoopwright.quantity.units import Units, format_length
from hoopwright.quantity.working import Working, words


class FitLine(NamedTuple):
    """One line.

    Attributes:
        label: What it is about.
        text: What is said of it, in the farm's units.
        working: How it was got.
    """

    label: str
    text: str
    working: Working


def fit_lines(sheet: SheetFit, units: Units) -> tuple[FitLine, ...]:
    """Return what stands beside the width of a sheet over the bows, short enough for a panel.

    Args:
        sheet: What is known of its widths.
        units: The farm's units.
    """
    return tuple(_lines(sheet, units))


def widths_words(sheet: SheetFit, units: Units) -> str:
    """Return the widths worth a word in one sentence."""
    return words(tell_widths(sheet.name, telling_widths(sheet)), units)


def _lines(sheet: SheetFit, units: Units) -> Iterator[FitLine]:
    read = _tr("{read} of {bows} bows").format(read=sheet.read_count, bows=sheet.bow_count)
    yield FitLine(_tr("girths read"), read, sheet.working("governing_m"))
    if sheet.governing_bow is not None:
        longest = _tr("{girth} at bow {bow}").format(
            girth=format_length(sheet.governing_m, units), bow=sheet.governing_bow
        )
        yield FitLine(_tr("longest girth"), longest, sheet.working("governing_m"))
    for width in telling_widths(sheet):
        label = _tr("{width} stock, chosen") if width.chosen else _tr("{width} stock")
        yield FitLine(
            label.format(width=format_length(width.width_m, units)),
            _width_words(width, units),
            sheet.working("widths"),
        )
    if sheet.remeasured is not None:
        bow = sheet.remeasured.bow
        yield FitLine(
            _tr("if bow {bow} is read again").format(bow=bow),
            _again_words(sheet.remeasured, units),
            sheet.working("remeasured"),
        )


def _width_words(width: WidthFit, units: Units) -> str:
    """Return the chance, or what is spare or missing where there is none to tell."""
    size = format_length(abs(width.margin_m), units)
    if width.margin_m < 0:
        return _tr("too narrow by {size}").format(size=size)
    if width.chance is None:
        return _tr("{size} to spare").format(size=size)
    return words(chance_words(width.chance), units)


def _again_words(again: Remeasured, units: Units) -> str:
    """Return what another reading of the longest girth could change."""
    if not again.changes:
        return _tr("same stock width")
    if again.stock_width_m is None:
        return _tr("no stock holds it")
    size = format_length(again.stock_width_m, units)
    return _tr("{width} may do").format(width=size)


def _tr(text: str) -> str:
    return QCoreApplication.translate("Fit", text)
