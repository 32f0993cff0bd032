"""The lines of what may be added to a tunnel: rain gutters, shade cloth, insect screen."""

from collections.abc import Iterator

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication

from hoopwright.desktop.details_items import Entry, Hint, Item, Special, entries
from hoopwright.desktop.details_outfit import rain_figures, screen_figures, shade_figures
from hoopwright.desktop.session import Session
from hoopwright.farm import SideBoards

GUTTERS = QT_TRANSLATE_NOOP("Details", "A side has a gutter where it says how far it hangs.")


def rain_items(session: Session) -> Iterator[Item]:
    """Give the lines of the rain that gutters carry away."""
    yield Special("rain", 0, QCoreApplication.translate("Details", "rain is gathered"))
    rain = session.tunnel.rain
    if rain is None:
        return
    yield from entries("tunnel", ("rain",), rain)
    yield Hint(QCoreApplication.translate("Details", str(GUTTERS)))
    for n, side in enumerate(session.tunnel.sides):
        words = QCoreApplication.translate("Details", "gutter below the hip, {side}")
        path = ("frame", "boards", n, "gutter_drop_m")
        yield Entry("tunnel", path, SideBoards, "gutter_drop_m", words.format(side=side.name))
    yield from rain_figures(session)


def shade_items(session: Session) -> Iterator[Item]:
    """Give the lines of the shade cloth."""
    yield Special("shade", 0, QCoreApplication.translate("Details", "shade cloth"))
    shade = session.tunnel.shade
    if shade is not None:
        yield from entries("tunnel", ("shade",), shade)
        yield from shade_figures(session)


def screen_items(session: Session, n: int) -> Iterator[Item]:
    """Give the lines of the insect screen in the opening of one side."""
    yield Special("screen", n, QCoreApplication.translate("Details", "insect screen"))
    screen = session.tunnel.sides[n].screen
    if screen is not None:
        yield from entries("tunnel", ("sides", n, "screen"), screen)
        yield from screen_figures(session, n)
