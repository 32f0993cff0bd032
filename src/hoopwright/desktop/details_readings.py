"""What the readings of a frame come to, and where they hold instead of what the form says."""

from collections.abc import Iterator

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication

from hoopwright.desktop.details_items import (
    Figure,
    Heading,
    Hint,
    Item,
    explained,
    figure,
    figures,
)
from hoopwright.desktop.session import Session
from hoopwright.farm import Tape
from hoopwright.quantity.units import Units, show
from hoopwright.survey.taped import GirthSpread

Rows = tuple[tuple[str, str, object], ...]

SPREADS: tuple[tuple[str, object], ...] = (
    ("hips", QT_TRANSLATE_NOOP("Details", "Girths read, hip to hip")),
    ("baseboards", QT_TRANSLATE_NOOP("Details", "Girths read, baseboard to baseboard")),
)
SPREAD: Rows = (
    ("middle_m", "m", QT_TRANSLATE_NOOP("Details", "middle one")),
    ("spread_m", "m", QT_TRANSLATE_NOOP("Details", "spread, longest less shortest")),
    ("deviation_m", "m", QT_TRANSLATE_NOOP("Details", "standard deviation")),
    ("computed_m", "m", QT_TRANSLATE_NOOP("Details", "by the shape")),
    ("disagreement_share", "share", QT_TRANSLATE_NOOP("Details", "read against the shape")),
)
SKEW: Rows = (
    ("skew_m", "m", QT_TRANSLATE_NOOP("Details", "second side runs ahead")),
    ("skew_cost_m", "m", QT_TRANSLATE_NOOP("Details", "skew costs, film length")),
)
LEAN: Rows = (("lean_costs_m", "m", QT_TRANSLATE_NOOP("Details", "lean costs, front · back")),)
DIP: Rows = (
    ("dip_m", "m", QT_TRANSLATE_NOOP("Details", "deepest dip of the ridge")),
    ("dip_cost_m", "m", QT_TRANSLATE_NOOP("Details", "dip takes off the width")),
)
BEST_CIRCLE: Rows = (
    ("best_radius_m", "m", QT_TRANSLATE_NOOP("Details", "best circle through the points")),
    ("misfit_m", "m_thin", QT_TRANSLATE_NOOP("Details", "points off that circle")),
)
HEIGHTS: dict[str, object] = {
    "hip_m": QT_TRANSLATE_NOOP("Details", "Readings hold for the hip board: bow {bows}."),
    "baseboard_m": QT_TRANSLATE_NOOP("Details", "Readings hold for the baseboard: bow {bows}."),
}
"""What is said where heights were read, by the field of a reading."""
GIRTHS_HOLD = QT_TRANSLATE_NOOP(
    "Details", "Readings hold for the width of the film: bow {bows} governs."
)
LENGTHS_HOLD = QT_TRANSLATE_NOOP(
    "Details", "Readings hold for the length of the film: {length} along the sides."
)


def _say(words: object) -> str:
    return QCoreApplication.translate("Details", str(words))


def _said(rows: Rows) -> Iterator[tuple[str, str, str]]:
    return ((name, unit, _say(words)) for name, unit, words in rows)


def girth_hints(session: Session) -> Iterator[Hint]:
    """Give which bow's girth holds instead of the one that the shape would give."""
    survey = session.tunnel_plan.survey
    bows = dict.fromkeys(bow for bow in (survey.roof_bow, survey.whole_bow) if bow is not None)
    if bows:
        yield Hint(_say(GIRTHS_HOLD).format(bows=", ".join(map(str, bows))))


def length_hints(session: Session) -> Iterator[Hint]:
    """Give which length holds instead of the one from bow to bow."""
    tape, taped = session.tunnel.frame.tape, session.tunnel_plan.survey.taped
    if any(x is not None for x in (*tape.hip_lengths_m, *tape.base_lengths_m)):
        yield Hint(_say(LENGTHS_HOLD).format(length=show(taped.length_m, "m", session.units)))


def height_hints(tape: Tape, side: int, *names: str) -> Iterator[Hint]:
    """Give at which bows heights were read, which hold there instead of the one entered.

    Args:
        tape: The readings.
        side: 0 for the first side, 1 for the second.
        names: Fields of a side's reading, of `HEIGHTS`.
    """
    for name in names:
        bows = [r.bow for r in tape.bows if getattr(r.sides[side], name) is not None]
        if bows:
            yield Hint(_say(HEIGHTS[name]).format(bows=", ".join(map(str, bows))))


def circle_items(session: Session) -> Iterator[Item]:
    """Give the best circle through a measured bow; nothing for another shape."""
    survey = session.tunnel_plan.survey
    if survey.best_radius_m is not None:
        yield from figures(survey, _said(BEST_CIRCLE), session.units)


def reading_items(session: Session) -> Iterator[Item]:
    """Give what the readings come to; nothing where none was taken."""
    if session.tunnel.frame.tape.is_empty:
        return
    survey, units = session.tunnel_plan.survey, session.units
    for name, title in SPREADS:
        spread: GirthSpread | None = getattr(survey.taped, name)
        if spread is not None:
            yield Heading(_say(title))
            yield _governing(spread, units)
            yield from figures(spread, _said(SPREAD), units)
            yield from _outliers(spread, units)
    yield Heading(_say(QT_TRANSLATE_NOOP("Details", "What a bent frame costs")))
    yield from figures(survey.taped, _said(_bent(session)), units)
    length = _say(QT_TRANSLATE_NOOP("Details", "length a sheet must cover"))
    how = explained(survey, "sheet_length_m")
    yield figure(length, survey.sheet_length_m, "m", units, how)


def _bent(session: Session) -> Rows:
    """Return the figures of what was read of it: what was not read costs nothing yet."""
    tape = session.tunnel.frame.tape
    return (
        *(SKEW if session.tunnel_plan.survey.taped.skew_m is not None else ()),
        *(LEAN if any(lean_m is not None for lean_m in tape.leans_m) else ()),
        *(DIP if any(r.dip_m is not None for r in tape.bows) else ()),
    )


def _governing(spread: GirthSpread, units: Units) -> Figure:
    label = _say(QT_TRANSLATE_NOOP("Details", "governing girth"))
    words = _say(QT_TRANSLATE_NOOP("Details", "{girth} at bow {bow}"))
    text = words.format(girth=show(spread.governing_m, "m", units), bow=spread.governing_bow)
    return Figure(label, text, explained(spread, "governing_m"))


def _outliers(spread: GirthSpread, units: Units) -> Iterator[Hint]:
    """Give a line for each girth that is far from the middle one."""
    words = QT_TRANSLATE_NOOP("Details", "Outlier: {girth} at bow {bow}; measure it again.")
    for reading in spread.readings:
        if reading.outlier:
            girth = show(reading.length_m, "m", units)
            yield Hint(_say(words).format(girth=girth, bow=reading.bow))
