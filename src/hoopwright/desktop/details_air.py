"""The lines of the air between two layers, of heating, and of the winter and power."""

from collections.abc import Iterator

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication

from hoopwright.desktop.details_items import (
    Act,
    Entry,
    Figure,
    Heading,
    Item,
    Special,
    entries,
)
from hoopwright.desktop.session import Session
from hoopwright.farm import Air, Blower, FanPoint, Hose, PlacedJumper
from hoopwright.inflation import feed_hose, jumper_hose
from hoopwright.papers.cautions import CAUTIONS, Caution
from hoopwright.quantity.working import words as in_words

WINDOW_LINES = ("low_pa", "high_pa", "open_share", "outside_air")
HOSE_LINES = ("feed_hose", "feed_hose_m", "jumper_hose", "jumper_hose_m")
LEAKS: dict[str, object] = {
    "leak_roof": QT_TRANSLATE_NOOP("Details", "leak of the roof film"),
    "leak_curtain": QT_TRANSLATE_NOOP("Details", "leak of the curtains"),
    "leak_end": QT_TRANSLATE_NOOP("Details", "leak of the end walls"),
}
AIR_CAUTIONS = ("air_off", "electricity")
PATH = ("air",)
SURFACES: tuple[tuple[str, object], ...] = (
    ("first_side", QT_TRANSLATE_NOOP("Details", "Add a jumper to {first}")),
    ("second_side", QT_TRANSLATE_NOOP("Details", "Add a jumper to {second}")),
    ("roof", QT_TRANSLATE_NOOP("Details", "Add a jumper over a cross seam")),
    ("front_end", QT_TRANSLATE_NOOP("Details", "Add a jumper to {front}")),
    ("back_end", QT_TRANSLATE_NOOP("Details", "Add a jumper to {back}")),
)
"""What a jumper can join the roof with, in the order of the acts that add one."""
POINT_LABELS: dict[str, object] = {
    "flow_m3_s": QT_TRANSLATE_NOOP("Details", "point {number}, air"),
    "pressure_pa": QT_TRANSLATE_NOOP("Details", "point {number}, against"),
}


def _say(words: object) -> str:
    return QCoreApplication.translate("Details", str(words))


def air_cautions() -> Iterator[Caution]:
    """Give the cautions that stand where a blower or an inflated curtain is shown."""
    return (caution for caution in CAUTIONS if caution.id in AIR_CAUTIONS)


def air_items(session: Session) -> Iterator[Item]:
    """Give the lines of the air between two layers."""
    tunnel = session.tunnel
    air = tunnel.air
    yield from entries("tunnel", PATH, air, "blower")
    if air.blower is not None:
        yield from air_cautions()
    held = session.tunnel_plan.held
    if held.cells:
        stands = _say(QT_TRANSLATE_NOOP("Details", "how it stands"))
        yield Figure(stands, in_words(held.told, session.units))
        written = _say(QT_TRANSLATE_NOOP("Details", "what is written"))
        yield Figure(written, in_words(held.told_window, session.units))
    yield from entries("tunnel", PATH, air, *WINDOW_LINES)
    yield Heading(_say(QT_TRANSLATE_NOOP("Details", "What is inflated")))
    sides, ends = [side.name for side in tunnel.sides], [end.name for end in tunnel.ends]
    for name, parts in (("inflated_sides", sides), ("inflated_ends", ends)):
        for n, part in enumerate(parts):
            words = QCoreApplication.translate("Details", "inflate {part}")
            yield Entry("tunnel", (*PATH, name, n), Air, name, words.format(part=part))
    yield Heading(_say(QT_TRANSLATE_NOOP("Details", "Seals and leaks")))
    yield from entries("tunnel", PATH, air, "seals_per_edge")
    for name, label in LEAKS.items():
        yield Entry("tunnel", (*PATH, name), Air, name, _say(label))
    yield from entries("tunnel", PATH, air, "leak_exponent")
    yield Heading(_say(QT_TRANSLATE_NOOP("Details", "Hoses")))
    yield from entries("tunnel", PATH, air, *HOSE_LINES)
    yield from jumper_acts(session)
    yield from _sizes(session)


def jumper_acts(session: Session) -> Iterator[Item]:
    """Give what is done to all jumpers: how many there are, more of them, worked-out ones."""
    tunnel = session.tunnel
    yield Heading(QCoreApplication.translate("Details", "Jumpers"))
    count = len(session.tunnel_plan.chosen.inflation.jumpers)
    by_hand = QCoreApplication.translate("Details", "{count}, placed by hand")
    worked = QCoreApplication.translate("Details", "{count}, worked out")
    words = worked if tunnel.air.jumpers is None else by_hand
    yield Figure(QCoreApplication.translate("Details", "jumpers"), words.format(count=count))
    if tunnel.air.jumpers is None:
        yield from entries("tunnel", PATH, tunnel.air, "long_cell_m")
    for n in range(len(SURFACES)):
        yield Act("add jumper", (n,), add_jumper_text(session, n))
    if tunnel.air.jumpers is not None:
        out = QCoreApplication.translate("Details", "Work out the jumpers")
        yield Act("work out jumpers", (), out)


def add_jumper_text(session: Session, n: int) -> str:
    """Return what adding a jumper to one of the surfaces is called."""
    (first, second), (front, back) = session.tunnel.sides, session.tunnel.ends
    names = {"first": first.name, "second": second.name, "front": front.name, "back": back.name}
    return _say(SURFACES[n][1]).format(**names)


def jumper_items(n: int) -> Iterator[Item]:
    """Give the lines of one jumper; a change places all of them by hand."""
    for name in ("surface", "at_m"):
        yield Entry("tunnel", (*PATH, "jumpers", n, name), PlacedJumper, name)
    words = QCoreApplication.translate("Details", "Remove jumper {number}")
    yield Act("remove jumper", (n,), words.format(number=n + 1))


def _sizes(session: Session) -> Iterator[Item]:
    """Give the sizes of the blower and the hoses in use as they stand in the catalogue."""
    air, catalogue = session.tunnel.air, session.farm.catalogue
    for n, blower in enumerate(catalogue.blowers):
        if blower.key == air.blower:
            yield from _blower(n, blower)
    hoses = (feed_hose(air, catalogue.hoses), jumper_hose(air, catalogue.hoses))
    used = {hose.key for hose in hoses if hose is not None}
    for n, hose in enumerate(catalogue.hoses):
        if hose.key in used:
            yield from _hose(n, hose)


def _blower(n: int, blower: Blower) -> Iterator[Item]:
    title = QCoreApplication.translate("Details", "Blower, wherever it is used: {name}")
    yield Heading(title.format(name=blower.name))
    path = ("catalogue", "blowers", n)
    yield from entries("farm", path, blower, "power_w")
    for number in range(len(blower.curve)):
        for name, words in POINT_LABELS.items():
            label = _say(words).format(number=number + 1)
            yield Entry("farm", (*path, "curve", number, name), FanPoint, name, label)


def _hose(n: int, hose: Hose) -> Iterator[Item]:
    title = QCoreApplication.translate("Details", "Hose, wherever it is used: {name}")
    yield Heading(title.format(name=hose.name))
    yield from entries("farm", ("catalogue", "hoses", n), hose, "bore_m", "roughness_m")


def heating_items(session: Session) -> Iterator[Item]:
    """Give the lines of how the tunnel is heated."""
    yield Special("heated", 0, QCoreApplication.translate("Details", "heated"))
    heating = session.tunnel.heating
    if heating is not None:
        yield from entries("tunnel", ("heating",), heating)


def climate_items(session: Session) -> Iterator[Item]:
    """Give the lines of the winter at the farm, and of what power costs."""
    yield from entries("farm", ("climate",), session.farm.climate)
