"""Lines about stock widths that stand beside the choice of a width: label, text, working."""

from collections.abc import Iterator
from typing import NamedTuple

from PySide6.QtCore import QCoreApplication

from hoopwright.fit import SheetFit, WidthFit, chance_words, tell_remeasured, tell_widths
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
    """Return what stands beside the width of a sheet over the bows, every stock width a line.

    Args:
        sheet: What is known of its widths.
        units: The farm's units.
    """
    return tuple(_lines(sheet, units))


def widths_words(sheet: SheetFit, units: Units) -> str:
    """Return the widths worth a word in one sentence."""
    return words(tell_widths(sheet.name, telling_widths(sheet)), units)


def _lines(sheet: SheetFit, units: Units) -> Iterator[FitLine]:
    yield FitLine(_tr("girths read"), _read_words(sheet, units), sheet.working("governing_m"))
    for width in sheet.widths:
        label = _tr("{width} stock, chosen") if width.chosen else _tr("{width} stock")
        yield FitLine(
            label.format(width=format_length(width.width_m, units)),
            _width_words(width, units),
            sheet.working("widths"),
        )
    if sheet.remeasured is not None:
        yield FitLine(
            _tr("if read again"),
            words(tell_remeasured(sheet.remeasured, sheet.chosen_m), units),
            sheet.working("remeasured"),
        )


def _read_words(sheet: SheetFit, units: Units) -> str:
    text = _tr("{read} of {bows} bows").format(read=sheet.read_count, bows=sheet.bow_count)
    if sheet.governing_bow is None:
        return text
    longest = _tr("longest {girth} at bow {bow}").format(
        girth=format_length(sheet.governing_m, units), bow=sheet.governing_bow
    )
    return f"{text}, {longest}"


def _width_words(width: WidthFit, units: Units) -> str:
    """Return what is spare or missing, and the chance."""
    spare, missing = _tr("{size} to spare"), _tr("{size} narrower than the sheet")
    size = format_length(abs(width.margin_m), units)
    said = words(chance_words(width.chance), units)
    return f"{(missing if width.margin_m < 0 else spare).format(size=size)}, {said}"


def _tr(text: str) -> str:
    return QCoreApplication.translate("Fit", text)
