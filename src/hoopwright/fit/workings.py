"""How each figure of a fitted sheet was got, and the model it rests on in words."""

from dataclasses import replace

from hoopwright.fit.fit import SheetFit
from hoopwright.quantity.working import (
    DERIVED,
    ENTERED,
    PRACTICE,
    LaterWorkings,
    Term,
    Value,
    Working,
)
from hoopwright.survey.taped import GirthReading

MODEL = (
    "The sheet is too short when the longest of all bows and what the sheet takes beyond it are "
    "more than the roll has. A bow that was read has its reading, give or take the error of the "
    "tape, each value as likely; a reading called an outlier counts like any other. Bows that were "
    "not read are taken from the bell curve that the readings show, and how little a few readings "
    "tell of its middle and its width is reckoned with. A roll is narrower than its stock width by "
    "anything up to the minus tolerance of the film, each as likely. The chance is summed over all "
    "of these."
)
SOURCE = (
    f"{DERIVED}; bows not read: Student (1908), The probable error of a mean, for the longest of "
    "several"
)
NO_CHANCE = {
    "no girth": " No girth was read that this width rests on, so no chance can be told.",
    "one girth": " One reading tells no spread, so no chance can be told.",
    "no stock": " No stock width holds the sheet as cut.",
    "": "",
}


def explain_sheet(
    sheet: SheetFit, readings: tuple[GirthReading, ...], tolerance_m: float, error_m: float
) -> SheetFit:
    """Return the sheet with a working for each of its figures.

    Args:
        sheet: What is known of its widths.
        readings: Girths that its width rests on.
        tolerance_m: Measuring tolerance in its cut width, m.
        error_m: What one reading may be wrong by, m.
    """
    return replace(
        sheet,
        workings=LaterWorkings(
            lambda: (
                *_sizes(sheet, tolerance_m),
                *_spread(sheet, readings, error_m),
                *_chances(sheet, error_m),
            )
        ),
    )


def _spread(
    sheet: SheetFit, readings: tuple[GirthReading, ...], error_m: float
) -> tuple[Working, ...]:
    read = tuple(Term(f"bow {r.bow}", r.length_m, "m") for r in readings)
    mean = Term("mean", sheet.middle_m, "m")
    return (
        Working("governing_m", "The longest girth that was read.", read, ENTERED),
        Working("middle_m", "Mean of the girths read.", read),
        Working(
            "deviation_m",
            "Standard deviation of the girths read, n less one in the divisor, with the variance "
            "of the tape's error, a third of its square, taken out; never less than that variance, "
            "for a spread that the tape cannot see is not none. None below two readings.",
            (*read, mean, Term("error of a reading", error_m, "m_thin")),
            f"{DERIVED}; variances: handbook formulas",
        ),
    )


def _sizes(sheet: SheetFit, tolerance_m: float) -> tuple[Working, ...]:
    cut = Term("cut width", sheet.cut_width_m, "m")
    governing = Term(_governing_name(sheet), sheet.governing_m, "m")
    return (
        Working("cut_width_m", "As the width of the sheet adds up.", (cut,)),
        Working(
            "fixed_m",
            "Cut width less the governing girth and less the measuring tolerance: tails, wraps "
            "and slack. The tolerance is left out because the error of the tape is reckoned with.",
            (cut, governing, Term("measuring tolerance", tolerance_m, "m_thin")),
        ),
        Working("minus_share", "As entered for the film.", (), ENTERED),
        Working(
            "chosen_m",
            "The narrowest stock width that holds the sheet as cut, of rolls that are long enough.",
            (cut,),
        ),
    )


def _chances(sheet: SheetFit, error_m: float) -> tuple[Working, ...]:
    rule = MODEL + NO_CHANCE[sheet.untold]
    inputs = (
        Term("bows", sheet.bow_count, "count"),
        Term("of them read", sheet.read_count, "count"),
        Term("mean of the girths read", sheet.middle_m, "m"),
        Term("deviation of the bows", *_or_untold(sheet.deviation_m)),
        Term(_governing_name(sheet), sheet.governing_m, "m"),
        Term("what the sheet takes beyond", sheet.fixed_m, "m"),
        Term("error of a reading", error_m, "m_thin"),
        Term("roll may be narrower by", sheet.minus_share, "share"),
    )
    return (
        Working("chance", rule, (*inputs, Term("stock width", *_stock(sheet.chosen_m))), SOURCE),
        Working("widths", rule, inputs, SOURCE),
        Working(
            "remeasured",
            "The longest girth is put down to the next longest; all else stays.",
            (Term(_governing_name(sheet), sheet.governing_m, "m"),),
            PRACTICE,
        ),
    )


def _governing_name(sheet: SheetFit) -> str:
    if sheet.governing_bow is None:
        return "longest girth, none read"
    return f"longest girth, bow {sheet.governing_bow}"


def _or_untold(deviation_m: float | None) -> tuple[Value, str]:
    return ("not told", "text") if deviation_m is None else (deviation_m, "m_thin")


def _stock(width_m: float | None) -> tuple[Value, str]:
    return ("none wide enough", "text") if width_m is None else (width_m, "m")
