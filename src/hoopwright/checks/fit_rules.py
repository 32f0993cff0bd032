"""Rules about stock widths: whether the one that is chosen reaches over every bow."""

from collections.abc import Iterator

from hoopwright.checks.case import Case
from hoopwright.fit import SheetFit, WidthFit, chance_words, tell_widths
from hoopwright.quantity.finding import Finding
from hoopwright.quantity.working import PRACTICE, Phrase, Term, phrase

DOUBTFUL = 1 / 20
LIKELY = 1 / 2


def sheet_may_be_short(case: Case) -> Iterator[Finding]:
    """A stock width that holds the sheet as cut and may yet be too narrow for the longest bow.

    Source:
        Bounds 1 in 20 and 1 in 2: common practice, no published source.
    """
    for sheet in case.fit.sheets:
        if sheet.chance is None or sheet.chance <= DOUBTFUL:
            continue
        yield case.finding(
            "sheet.may_be_short",
            "fault" if sheet.chance > LIKELY else "caution",
            sheet.marks[0],
            tell_widths(sheet.name, [width for width in sheet.widths if width.chosen]),
            phrase(
                "{read} of {bows} bows were read and scatter by {deviation}, and a roll may be "
                "{minus} narrower than it is called. A sheet that comes up short on the roof "
                "cannot be gripped, and a roll that was cut is not taken back.",
                read=sheet.read_count,
                bows=sheet.bow_count,
                deviation=(sheet.deviation_m or 0.0, "m_thin"),
                minus=(sheet.minus_share, "share"),
            ),
            _mend(sheet),
            None,
            PRACTICE,
        )


def _mend(sheet: SheetFit) -> Phrase:
    """Return what makes it sure: a wider stock, more bows read, the longest one read again."""
    ways: list[str] = []
    terms: list[Term] = []
    wider = _wider(sheet)
    if wider is not None:
        said = chance_words(wider.chance)
        ways.append(f"take the stock {{wider}} wide, {said.template}")
        terms += [Term("wider", wider.width_m, "m"), *said.terms]
    if sheet.read_count < sheet.bow_count:
        ways.append("read the girths of the other {unread} bows")
        terms.append(Term("unread", sheet.bow_count - sheet.read_count, "count"))
    ways.append("measure bow {longest} again, the longest")
    terms.append(Term("longest", sheet.governing_bow or 0, "count"))
    text = "; or ".join(ways)
    return Phrase(text[0].upper() + text[1:] + ".", tuple(terms))


def _wider(sheet: SheetFit) -> WidthFit | None:
    """Return the next stock width that is not doubtful, or the widest; None when none is wider."""
    wider = [w for w in sheet.widths if sheet.chosen_m is not None and w.width_m > sheet.chosen_m]
    sure = [w for w in wider if w.chance is not None and w.chance <= DOUBTFUL]
    return next(iter((*sure, *wider[-1:])), None)
