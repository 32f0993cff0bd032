"""How sure it is that a stock width is wide enough for the bows as they stand."""

from hoopwright.fit.fit import Fit, Remeasured, SheetFit, WidthFit
from hoopwright.fit.telling import chance_words, tell_remeasured, tell_sheet, tell_widths
from hoopwright.fit.widths import fit_widths

__all__ = [
    "Fit",
    "Remeasured",
    "SheetFit",
    "WidthFit",
    "chance_words",
    "fit_widths",
    "tell_remeasured",
    "tell_sheet",
    "tell_widths",
]
