"""The lines of the frame: shape, sizes, bows and boards, what was read, and the figures of it."""

from collections.abc import Iterator

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication

from hoopwright.desktop.details_items import (
    Act,
    Entry,
    Heading,
    Item,
    Special,
    entries,
    figures,
)
from hoopwright.desktop.details_readings import (
    circle_items,
    girth_hints,
    height_hints,
    length_hints,
    reading_items,
)
from hoopwright.desktop.session import Session
from hoopwright.farm import ListedBows, MeasuredBow

SURVEY_FIGURES: tuple[tuple[str, str, object], ...] = (
    ("girth_m", "m", QT_TRANSLATE_NOOP("Details", "girth, ground to ground")),
    ("roof_girth_m", "m", QT_TRANSLATE_NOOP("Details", "roof girth, hip to hip")),
    ("side_m", "m", QT_TRANSLATE_NOOP("Details", "sides, hip to baseboard")),
    ("width_m", "m", QT_TRANSLATE_NOOP("Details", "width outside")),
    ("height_m", "m", QT_TRANSLATE_NOOP("Details", "height outside")),
    ("length_m", "m", QT_TRANSLATE_NOOP("Details", "length, first to last bow")),
    ("bay_count", "count", QT_TRANSLATE_NOOP("Details", "bays")),
    ("floor_area_m2", "m2", QT_TRANSLATE_NOOP("Details", "floor")),
    ("cover_area_m2", "m2", QT_TRANSLATE_NOOP("Details", "area to cover")),
    ("volume_m3", "m3", QT_TRANSLATE_NOOP("Details", "volume")),
)
POINT_LABELS: dict[str, object] = {
    "across_m": QT_TRANSLATE_NOOP("Details", "point {number}, across from the first foot"),
    "up_m": QT_TRANSLATE_NOOP("Details", "point {number}, up"),
    "first_m": QT_TRANSLATE_NOOP("Details", "point {number}, tape from the first foot"),
    "second_m": QT_TRANSLATE_NOOP("Details", "point {number}, tape from the second foot"),
}


def _say(words: object) -> str:
    return QCoreApplication.translate("Details", str(words))


def survey_items(session: Session) -> Iterator[Item]:
    """Give the figures of the frame as built."""
    rows = [(name, unit, _say(words)) for name, unit, words in SURVEY_FIGURES]
    yield from figures(session.tunnel_plan.survey, rows, session.units)
    yield from circle_items(session)
    yield from reading_items(session)


def frame_items(session: Session) -> Iterator[Item]:
    """Give the lines of the frame: shape, sizes, bows, boards of each side."""
    frame = session.tunnel.frame
    yield from entries("tunnel", (), session.tunnel, "name")
    yield Special("shape", 0, QCoreApplication.translate("Details", "shape of the bows"))
    yield from entries("tunnel", ("frame", "profile"), frame.profile)
    if isinstance(frame.profile, MeasuredBow):
        yield from _points(frame.profile)
    yield from girth_hints(session)
    yield from entries("tunnel", ("frame",), frame, "tube_diameter_m", "length_m")
    yield from length_hints(session)
    if isinstance(frame.bows, ListedBows):
        yield Special("positions", 0, QCoreApplication.translate("Details", "bow positions"))
        yield Act("even bows", (), QCoreApplication.translate("Details", "Space bows evenly"))
    else:
        yield from entries("tunnel", ("frame", "bows"), frame.bows)
        yield Act("list bows", (), QCoreApplication.translate("Details", "List the bows"))
    for n, boards in enumerate(frame.boards):
        words = QCoreApplication.translate("Details", "Boards, {side}")
        yield Heading(words.format(side=session.tunnel.sides[n].name))
        yield from entries("tunnel", ("frame", "boards", n), boards)
        yield from height_hints(frame.tape, n, "hip_m", "baseboard_m")


def _points(bow: MeasuredBow) -> Iterator[Item]:
    """Give the points of a measured bow, from the first side over the ridge to the second."""
    for index, point in enumerate(bow.points):
        number = index + 1
        taken = QCoreApplication.translate("Details", "point {number}, taken by")
        yield Special("taken", index, taken.format(number=number))
        for entry in entries("tunnel", ("frame", "profile", "points", index), point):
            label = _say(POINT_LABELS[entry.name]).format(number=number)
            yield Entry("tunnel", entry.path, entry.owner, entry.name, label)
        words = QCoreApplication.translate("Details", "Remove point {number}")
        yield Act("remove point", (index,), words.format(number=number))
    yield Act("add point", (), QCoreApplication.translate("Details", "Add a point"))
