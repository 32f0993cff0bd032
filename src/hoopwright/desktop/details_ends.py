"""The lines of the end walls: what closes them, doors, vents, fan openings, rails and seams."""

from collections.abc import Iterator

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication

from hoopwright.desktop.details_items import (
    Act,
    Entry,
    Figure,
    Heading,
    Hint,
    Item,
    Special,
    entries,
    figure,
    figures,
)
from hoopwright.desktop.session import Session
from hoopwright.farm import End
from hoopwright.farm.change_ends import opening_place

DOOR_LABELS: dict[str, object] = {
    "width_m": QT_TRANSLATE_NOOP("Details", "door {number}, width"),
    "height_m": QT_TRANSLATE_NOOP("Details", "door {number}, height"),
    "left_m": QT_TRANSLATE_NOOP("Details", "door {number}, left edge from the middle"),
}
CUT_LABELS: dict[str, object] = {
    "kind": QT_TRANSLATE_NOOP("Details", "opening {number} for"),
    "left_m": QT_TRANSLATE_NOOP("Details", "opening {number}, left edge from the middle"),
    "sill_m": QT_TRANSLATE_NOOP("Details", "opening {number}, sill above the ground"),
    "width_m": QT_TRANSLATE_NOOP("Details", "opening {number}, width"),
    "height_m": QT_TRANSLATE_NOOP("Details", "opening {number}, height"),
}


WALL: tuple[tuple[str, str, object], ...] = (
    ("gross_m2", "m2", QT_TRANSLATE_NOOP("Details", "whole wall")),
    ("openings_m2", "m2", QT_TRANSLATE_NOOP("Details", "doors and openings")),
    ("net_m2", "m2", QT_TRANSLATE_NOOP("Details", "left to close")),
    ("foot_m", "m", QT_TRANSLATE_NOOP("Details", "foot of the wall, doors left out")),
)
RIGID: tuple[tuple[str, str, object], ...] = (
    ("sheet_count", "count", QT_TRANSLATE_NOOP("Details", "rigid sheets")),
    ("waste_m2", "m2", QT_TRANSLATE_NOOP("Details", "of them not on the wall")),
)


def _say(words: object, number: int = 0) -> str:
    return QCoreApplication.translate("Details", str(words)).format(number=number)


def end_items(session: Session) -> Iterator[Item]:
    """Give the lines of both end walls."""
    for n, end in enumerate(session.tunnel.ends):
        yield Heading(end.name)
        yield from one_end_items(session, n)


def one_end_items(session: Session, n: int) -> Iterator[Item]:
    """Give the lines of one end wall: its covering, its openings, its rails and seams."""
    end = session.tunnel.ends[n]
    path = ("ends", n)
    yield from entries("tunnel", path, end, "name")
    yield Special("end_cover", n, QCoreApplication.translate("Details", "closed with"))
    if end.film is not None:
        yield from entries("tunnel", (*path, "film"), end.film)
    if end.rigid is not None:
        yield from entries("tunnel", (*path, "rigid"), end.rigid)
    for index in range(len(end.doors)):
        yield from door_items(session, n, index)
    for index in range(len(end.cuts)):
        yield from cut_items(session, n, index)
    yield Act("add door", (n,), QCoreApplication.translate("Details", "Add a door"))
    yield Act("add cut", (n, 0), QCoreApplication.translate("Details", "Add a vent"))
    yield Act("add cut", (n, 1), QCoreApplication.translate("Details", "Add a fan opening"))
    for index in range(len(end.rails_m)):
        yield from rail_items(n, index)
    yield Act("add rail", (n,), QCoreApplication.translate("Details", "Add a rail"))
    for index in range(len(end.seams_m)):
        yield from end_seam_items(n, index)
    if end.film is not None:
        yield Act("add end seam", (n,), QCoreApplication.translate("Details", "Add a seam"))
    yield from _wall_figures(session, n)


def _wall_figures(session: Session, n: int) -> Iterator[Figure]:
    """Give the areas of one end wall, and its rigid sheets where it has any."""
    laid = session.tunnel_plan.chosen.cover.ends[n]
    yield from figures(
        laid, ((name, unit, _say(label)) for name, unit, label in WALL), session.units
    )
    if laid.rigid is not None:
        rows = ((name, unit, _say(label)) for name, unit, label in RIGID)
        yield from figures(laid.rigid, rows, session.units)


def door_items(session: Session, n: int, index: int) -> Iterator[Item]:
    """Give the lines of one door; where it is spread with the others, its place is a figure."""
    door, number = session.tunnel.ends[n].doors[index], index + 1
    for entry in entries("tunnel", ("ends", n, "doors", index), door):
        label = _say(DOOR_LABELS[entry.name], number)
        yield Entry("tunnel", entry.path, entry.owner, entry.name, label)
    if door.left_m is None:
        left_m, _sill_m = opening_place(session.tunnel, n, "door", index)
        stands = _say(QT_TRANSLATE_NOOP("Details", "door {number}, left edge as spread"), number)
        yield figure(stands, left_m, "m", session.units, None)
    yield from _stands(session, n, f"end/{n}/door/{index}")
    words = _say(QT_TRANSLATE_NOOP("Details", "Remove door {number}"), number)
    yield Act("remove door", (n, index), words)


def cut_items(session: Session, n: int, index: int) -> Iterator[Item]:
    """Give the lines of one vent or fan opening."""
    cut, number = session.tunnel.ends[n].cuts[index], index + 1
    for entry in entries("tunnel", ("ends", n, "cuts", index), cut):
        label = _say(CUT_LABELS[entry.name], number)
        yield Entry("tunnel", entry.path, entry.owner, entry.name, label)
    yield from _stands(session, n, f"end/{n}/cut/{index}")
    words = _say(QT_TRANSLATE_NOOP("Details", "Remove opening {number}"), number)
    yield Act("remove cut", (n, index), words)


def _stands(session: Session, n: int, mark: str) -> Iterator[Hint]:
    """Tell of an opening that has no room where it stands."""
    openings = session.tunnel_plan.chosen.cover.ends[n].openings
    opening = next(opening for opening in openings if opening.mark == mark)
    if not opening.inside:
        yield Hint(_say(QT_TRANSLATE_NOOP("Details", "It does not lie inside the bow.")))
    if opening.meets:
        yield Hint(_say(QT_TRANSLATE_NOOP("Details", "It meets another door or opening.")))


def rail_items(n: int, index: int) -> Iterator[Item]:
    """Give the lines of one rail; a seam on it goes along when it is moved."""
    number = index + 1
    label = _say(QT_TRANSLATE_NOOP("Details", "rail {number}, height"), number)
    yield Entry("tunnel", ("ends", n, "rails_m", index), End, "rails_m", label)
    words = _say(QT_TRANSLATE_NOOP("Details", "Remove rail {number}"), number)
    yield Act("remove rail", (n, index), words)


def end_seam_items(n: int, index: int) -> Iterator[Item]:
    """Give the lines of one seam of an end wall's film."""
    number = index + 1
    label = _say(QT_TRANSLATE_NOOP("Details", "seam {number} lies"), number)
    yield Entry("tunnel", ("ends", n, "seams_m", index), End, "seams_m", label)
    words = _say(QT_TRANSLATE_NOOP("Details", "Remove seam {number}"), number)
    yield Act("remove end seam", (n, index), words)
