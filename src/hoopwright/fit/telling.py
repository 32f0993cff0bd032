"""What is said of stock widths and their chances, in whole sentences."""

import math
from collections.abc import Iterator, Sequence

from hoopwright.fit.fit import Remeasured, SheetFit, WidthFit
from hoopwright.quantity.working import Phrase, Term, Value, phrase
from hoopwright.survey.taped import Over

NEVER = 1e-4
EVEN = 0.35
OVER_WORDS: dict[Over, str] = {
    "hips": "from hip to hip",
    "baseboards": "from baseboard to baseboard",
}


def chance_words(chance: float | None) -> Phrase:
    """Return a chance in words: 1 in so many rolls of that width is too short."""
    if chance is None:
        return phrase("no chance can be told")
    if chance < NEVER:
        return phrase("never in this spread")
    if chance > 1 - NEVER:
        return phrase("as good as always too short")
    if chance > EVEN:
        return phrase("{many} in 10 too short", many=min(9, round(10 * chance)))
    return phrase("1 in {many} too short", many=_rounded(1 / chance))


def _rounded(many: float) -> int:
    """Return a number to two digits: no more is known of a chance."""
    digits = max(0, math.floor(math.log10(many)) - 1)
    return int(round(many / 10**digits) * 10**digits)


def tell_sheet(sheet: SheetFit) -> Iterator[Phrase]:
    """Yield what is said of one sheet over the bows, in whole sentences."""
    yield tell_readings(sheet)
    if sheet.read_count > 1:
        yield tell_widths(sheet.name, telling_widths(sheet))
    if sheet.remeasured is not None:
        yield tell_remeasured(sheet.remeasured, sheet.chosen_m)


def tell_readings(sheet: SheetFit) -> Phrase:
    """Return what the width of a sheet rests on."""
    if sheet.over is None:
        return phrase(
            "{sheet}: no girth was read that its width rests on, so no chance can be told that a "
            "stock width is too short.",
            sheet=sheet.name,
        )
    terms: dict[str, tuple[Value, str] | Value] = {
        "sheet": sheet.name,
        "girth": (sheet.governing_m, "m"),
        "bow": sheet.governing_bow or 0,
        "bows": sheet.bow_count,
        "lines": OVER_WORDS[sheet.over],
    }
    if sheet.read_count == 1:
        return phrase(
            "{sheet}: rests on one girth, {girth} {lines} at bow {bow} of {bows}; one reading "
            "tells no spread, so no chance can be told that a stock width is too short.",
            **terms,
        )
    return phrase(
        "{sheet}: rests on the longest of {read} girths {lines}, {girth} at bow {bow}; "
        "{bows} bows stand there.",
        read=sheet.read_count,
        **terms,
    )


def telling_widths(sheet: SheetFit) -> tuple[WidthFit, ...]:
    """Return the stock widths worth a word, the narrowest first.

    From one below the chosen width to the first that is never too short, or to the widest; where no
    chance can be told, to one above the chosen width.
    """
    widths = sheet.widths
    chosen = next((n for n, width in enumerate(widths) if width.chosen), len(widths))
    told: list[WidthFit] = []
    for n, width in enumerate(widths[max(0, chosen - 1) :], max(0, chosen - 1)):
        told.append(width)
        never = width.chance is not None and width.chance < NEVER
        if width.margin_m >= 0 and (never or (width.chance is None and n > chosen)):
            break
    return tuple(told)


def tell_widths(name: str, widths: Sequence[WidthFit]) -> Phrase:
    """Return widths with their chances: "34': 1 in 40 too short; 36': never in this spread."."""
    parts: list[str] = []
    terms: list[Term] = [Term("sheet", name, "text")]
    for n, width in enumerate(widths):
        said = chance_words(width.chance)
        parts.append(f"{{width{n}}}: " + said.template.replace("{many}", f"{{many{n}}}"))
        terms.append(Term(f"width{n}", width.width_m, "m"))
        terms += [Term(f"many{n}", term.value, term.unit) for term in said.terms]
    return Phrase("{sheet}: " + "; ".join(parts) + ".", tuple(terms))


def tell_remeasured(again: Remeasured, chosen_m: float | None) -> Phrase:
    """Return what reading the longest girth again could change of the order."""
    told = (
        "Bow {bow} governs. If it is measured again and comes out as the next longest, {to} "
        "instead of {girth}, the need is {need} and "
    )
    terms: dict[str, tuple[Value, str] | Value] = {
        "bow": again.bow,
        "girth": (again.from_m, "m"),
        "to": (again.to_m, "m"),
        "need": (again.cut_width_m, "m"),
    }
    if again.stock_width_m is None:
        return phrase(told + "still no stock is wide enough.", **terms)
    if not again.changes:
        return phrase(
            told + "the order does not change: the stock stays {stock} wide.",
            stock=(again.stock_width_m, "m"),
            **terms,
        )
    if chosen_m is None:
        now = "now none is wide enough"
    else:
        now = "now it is {now}"
        terms["now"] = (chosen_m, "m")
    return phrase(
        told + f"a stock {{stock}} wide is enough; {now}.",
        stock=(again.stock_width_m, "m"),
        **terms,
    )
