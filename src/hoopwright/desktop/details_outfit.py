"""What is added to a tunnel comes to: gutters and water, shade cloth, insect screen."""

from collections.abc import Iterator

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication

from hoopwright.desktop.details_items import Figure, Heading, Hint, Item, explained, figures
from hoopwright.desktop.session import Session
from hoopwright.outfit import SideScreen, told_rain, told_screen, told_shade
from hoopwright.quantity.working import Explained
from hoopwright.quantity.working import words as in_words

Rows = tuple[tuple[str, str, object], ...]

WATER: Rows = (
    ("plan_area_m2", "m2", QT_TRANSLATE_NOOP("Details", "roof that drains")),
    ("water_m3", "m3_water", QT_TRANSLATE_NOOP("Details", "water of one rain")),
    ("rain_m3_s", "m3/s_water", QT_TRANSLATE_NOOP("Details", "water in the heaviest rain")),
    ("rains_to_fill", "ratio", QT_TRANSLATE_NOOP("Details", "rains that fill the tank")),
    ("overflow_m3", "m3_water", QT_TRANSLATE_NOOP("Details", "one rain beyond the tank")),
)
GUTTER: Rows = (
    ("length_m", "m", QT_TRANSLATE_NOOP("Details", "gutter")),
    ("water_m3", "m3_water", QT_TRANSLATE_NOOP("Details", "water of one rain")),
    ("rain_m3_s", "m3/s_water", QT_TRANSLATE_NOOP("Details", "water in the heaviest rain")),
    ("outlet_m3_s", "m3/s_water", QT_TRANSLATE_NOOP("Details", "one outlet takes")),
    ("outlets_needed", "count", QT_TRANSLATE_NOOP("Details", "outlets that it takes")),
    ("outlets", "count", QT_TRANSLATE_NOOP("Details", "outlets that it has")),
    ("run_m", "m", QT_TRANSLATE_NOOP("Details", "run to one outlet")),
    ("fall_m", "m", QT_TRANSLATE_NOOP("Details", "fall of that run")),
    ("section_m2", "m2_thin", QT_TRANSLATE_NOOP("Details", "least section, half round")),
    ("downpipe_m", "m", QT_TRANSLATE_NOOP("Details", "downpipe")),
)
CLOTH: Rows = (
    ("along_m", "m", QT_TRANSLATE_NOOP("Details", "size along the tunnel")),
    ("across_m", "m", QT_TRANSLATE_NOOP("Details", "size over the tunnel")),
    ("widths", "count", QT_TRANSLATE_NOOP("Details", "widths")),
    ("cut_m", "m", QT_TRANSLATE_NOOP("Details", "length of each")),
    ("cloth_m", "m", QT_TRANSLATE_NOOP("Details", "off the roll")),
    ("area_m2", "m2", QT_TRANSLATE_NOOP("Details", "area of the cloth")),
    ("edge_ties", "count", QT_TRANSLATE_NOOP("Details", "ties around the edge")),
    ("hooks", "count", QT_TRANSLATE_NOOP("Details", "hooks along the sides")),
    ("seam_ties", "count", QT_TRANSLATE_NOOP("Details", "ties where widths lap")),
    ("floor_share", "share", QT_TRANSLATE_NOOP("Details", "floor under it")),
)
SCREEN: Rows = (
    ("length_m", "m", QT_TRANSLATE_NOOP("Details", "screen, length")),
    ("height_m", "m", QT_TRANSLATE_NOOP("Details", "screen, height")),
    ("widths", "count", QT_TRANSLATE_NOOP("Details", "screen, widths")),
    ("screen_m", "m", QT_TRANSLATE_NOOP("Details", "screen off the roll")),
    ("opening_m2", "m2", QT_TRANSLATE_NOOP("Details", "opening without it")),
    ("free_m2", "m2", QT_TRANSLATE_NOOP("Details", "worth behind it")),
    ("free_share", "share", QT_TRANSLATE_NOOP("Details", "share of the floor")),
)
INSECTS: tuple[tuple[str, object], ...] = (
    ("keeps_out", QT_TRANSLATE_NOOP("Details", "keeps out")),
    ("lets_in", QT_TRANSLATE_NOOP("Details", "lets in")),
)


def _say(words: object) -> str:
    return QCoreApplication.translate("Details", str(words))


def _rows(thing: Explained, rows: Rows, session: Session) -> Iterator[Figure]:
    """Give the figures of a result, those left out that it does not have."""
    known = ((n, unit, _say(words)) for n, unit, words in rows if getattr(thing, n) is not None)
    return figures(thing, known, session.units)


def rain_figures(session: Session) -> Iterator[Item]:
    """Give what the rain brings, all gutters together and each."""
    work = session.tunnel_plan.chosen.outfit.rain
    if work is None or not work.gutters:
        return
    yield Heading(_say(QT_TRANSLATE_NOOP("Details", "Water")))
    yield from _rows(work, WATER, session)
    for gutter in work.gutters:
        words = QCoreApplication.translate("Details", "Gutter, {side}")
        yield Heading(words.format(side=session.tunnel.sides[gutter.side].name))
        yield from _rows(gutter, GUTTER, session)
    yield Hint(in_words(told_rain(work), session.units))


def shade_figures(session: Session) -> Iterator[Item]:
    """Give how the shade cloth lies and what it takes."""
    laid = session.tunnel_plan.chosen.outfit.shade
    if laid is None:
        return
    yield Heading(_say(QT_TRANSLATE_NOOP("Details", "Cloth")))
    along = QT_TRANSLATE_NOOP("Details", "along the tunnel")
    across = QT_TRANSLATE_NOOP("Details", "across the tunnel")
    lie = _say(QT_TRANSLATE_NOOP("Details", "widths lie"))
    yield Figure(lie, _say(along if laid.laid == "along" else across), explained(laid, "widths"))
    yield from _rows(laid, CLOTH, session)
    yield Hint(in_words(told_shade(laid), session.units))


def screen_figures(session: Session, n: int) -> Iterator[Item]:
    """Give the size of the insect screen of one side and what it does to its opening."""
    screens = session.tunnel_plan.chosen.outfit.screens
    hung = next((screen for screen in screens if screen.side == n), None)
    if hung is None:
        return
    yield from _rows(hung, SCREEN, session)
    yield from _insects(hung)
    yield Hint(in_words(told_screen(hung), session.units))


def _insects(hung: SideScreen) -> Iterator[Figure]:
    nothing = _say(QT_TRANSLATE_NOOP("Details", "none of the table"))
    for name, words in INSECTS:
        insects: tuple[str, ...] = getattr(hung, name)
        yield Figure(_say(words), ", ".join(insects) or nothing, explained(hung, name))
