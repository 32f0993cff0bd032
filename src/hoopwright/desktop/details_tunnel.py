"""The groups of the panel that shows all that was entered of a tunnel and of its farm."""

from collections.abc import Callable, Iterator

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication

from hoopwright.desktop.details_air import air_items, climate_items, heating_items
from hoopwright.desktop.details_condition import condition_items
from hoopwright.desktop.details_ends import end_items
from hoopwright.desktop.details_extras import rain_items, screen_items, shade_items
from hoopwright.desktop.details_frame import frame_items, survey_items
from hoopwright.desktop.details_items import (
    Act,
    Entry,
    Heading,
    Item,
    entries,
    figures,
)
from hoopwright.desktop.session import Session
from hoopwright.farm import Side, Skin
from hoopwright.farm.side import MOVING, SideKind

AIRING_FIGURES: tuple[tuple[str, str, object], ...] = (
    ("openings_m2", "m2", QT_TRANSLATE_NOOP("Details", "opening, first · second side")),
    ("side_shares", "share", QT_TRANSLATE_NOOP("Details", "share of the floor, each side")),
    ("opening_m2", "m2", QT_TRANSLATE_NOOP("Details", "opening together")),
    ("floor_share", "share", QT_TRANSLATE_NOOP("Details", "share of the floor")),
    ("wind_m3_s", "m3/s", QT_TRANSLATE_NOOP("Details", "air by wind")),
    ("warmth_m3_s", "m3/s", QT_TRANSLATE_NOOP("Details", "air by warmth")),
    ("flow_m3_s", "m3/s", QT_TRANSLATE_NOOP("Details", "air together")),
    ("changes_per_h", "1/h", QT_TRANSLATE_NOOP("Details", "air changes")),
    ("per_floor_m3_s_m2", "m3/s/m2", QT_TRANSLATE_NOOP("Details", "air on the floor")),
)
EVERY_CURTAIN = ("slack_m", "rope_step_m", "film", "top")
USED: dict[SideKind, tuple[str, ...]] = {
    "fixed": ("top",),
    "roll_up": (*EVERY_CURTAIN, "shut_height_m", "stop_m"),
    "woven": (*EVERY_CURTAIN, "shut_height_m", "stop_m"),
    "drop_down": (*EVERY_CURTAIN, "bunch_m"),
}
"""What has a meaning for each kind of side."""
SKIN_PARTS: tuple[tuple[str, object], ...] = (
    ("roof", QT_TRANSLATE_NOOP("Details", "Roof")),
    ("sides", QT_TRANSLATE_NOOP("Details", "Curtains")),
    ("pockets", QT_TRANSLATE_NOOP("Details", "Pockets and strips")),
)


def _say(words: object) -> str:
    return QCoreApplication.translate("Details", str(words))


def skin_items(session: Session) -> Iterator[Item]:
    """Give the lines of the skin: covering, films, cross seams."""
    skin = session.tunnel.skin
    yield from entries("tunnel", ("skin",), skin, "covering", "inflation_gap_m")
    for name, words in SKIN_PARTS:
        yield Heading(_say(words))
        yield from entries("tunnel", ("skin", name), getattr(skin, name))
    yield Heading(QCoreApplication.translate("Details", "Cross seams of the roof"))
    for n in range(len(skin.cross_seams_m)):
        yield from seam_items(n)
    yield Act("add seam", (), QCoreApplication.translate("Details", "Add a cross seam"))


def seam_items(n: int) -> Iterator[Item]:
    """Give the lines of one cross seam."""
    label = QCoreApplication.translate("Details", "cross seam {number}, from the front")
    path = ("skin", "cross_seams_m", n)
    yield Entry("tunnel", path, Skin, "cross_seams_m", label.format(number=n + 1))
    words = QCoreApplication.translate("Details", "Remove cross seam {number}")
    yield Act("remove seam", (n,), words.format(number=n + 1))


def allowance_items(session: Session) -> Iterator[Item]:
    """Give the lines of tails, laps and wraps."""
    yield from entries("tunnel", ("skin", "allowances"), session.tunnel.skin.allowances)


def side_items(session: Session) -> Iterator[Item]:
    """Give the lines of both sides, without their curtains, which are picked one by one."""
    for n, side in enumerate(session.tunnel.sides):
        yield Heading(side.name)
        yield from one_side_items(session, n)


def one_side_items(session: Session, n: int) -> Iterator[Item]:
    """Give the lines of one side; what its kind has no use for is left out."""
    side = session.tunnel.sides[n]
    path = ("sides", n)
    yield from entries("tunnel", path, side, "name", "kind")
    yield from pocket_items(n, 0)
    yield from pocket_items(n, 1)
    yield from entries("tunnel", path, side, *USED[side.kind])
    if side.kind not in MOVING:
        return
    for index in range(len(side.splits)):
        yield from split_items(session, n, index)
    yield Act("add split", (n,), QCoreApplication.translate("Details", "Add a split"))
    yield from proposal_items(n)
    yield from screen_items(session, n)


def proposal_items(n: int) -> Iterator[Item]:
    """Give the acts that propose splits of a side."""
    even = QCoreApplication.translate("Details", "Propose even splits")
    film = QCoreApplication.translate("Details", "Propose splits, least film")
    yield Act("propose even", (n,), even)
    yield Act("propose least film", (n,), film)


def keep_items(session: Session, n: int) -> Iterator[Item]:
    """Give the act that proposes splits of a side round the split or the bow that is picked."""
    side = session.tunnel.sides[n]
    if side.kind in MOVING:
        words = QCoreApplication.translate("Details", "Propose splits with it, {side}")
        yield Act("propose keep bow", (n,), words.format(side=side.name))


def pocket_items(n: int, end: int) -> Iterator[Item]:
    """Give the line for the bays of one pocket; end 0 is the front."""
    front = QCoreApplication.translate("Details", "pocket bays at the front")
    back = QCoreApplication.translate("Details", "pocket bays at the back")
    path = ("sides", n, "pocket_bays", end)
    yield Entry("tunnel", path, Side, "pocket_bays", back if end else front)


def split_items(session: Session, n: int, index: int) -> Iterator[Item]:
    """Give the lines of one split."""
    split = session.tunnel.sides[n].splits[index]
    path = ("sides", n, "splits", index)
    for entry in entries("tunnel", path, split):
        at = QCoreApplication.translate("Details", "split {number}, from the front")
        made = QCoreApplication.translate("Details", "split {number} made with")
        words = at if entry.name == "at_m" else made
        label = words.format(number=index + 1)
        yield Entry("tunnel", entry.path, entry.owner, entry.name, label)
    words = QCoreApplication.translate("Details", "Remove split {number}")
    yield Act("remove split", (n, index), words.format(number=index + 1))


def farm_items(session: Session) -> Iterator[Item]:
    """Give the lines of the farm: name, units, money, limits, bench."""
    farm = session.farm
    yield from entries("farm", (), farm, "name", "units", "note")
    yield Heading(QCoreApplication.translate("Details", "Money"))
    yield from entries("farm", ("money",), farm.money)
    yield Heading(QCoreApplication.translate("Details", "Limits"))
    yield from entries("farm", ("limits",), farm.limits)
    yield Heading(QCoreApplication.translate("Details", "Sealing bench"))
    yield from entries("farm", ("bench",), farm.bench)


def weather_items(session: Session) -> Iterator[Item]:
    """Give the lines of wind and warmth, and how the shown tunnel is aired by them."""
    yield from entries("farm", ("weather",), session.farm.weather)
    words = QCoreApplication.translate("Details", "Airing of {tunnel}")
    yield Heading(words.format(tunnel=session.tunnel.name))
    rows = [(name, unit, _say(words)) for name, unit, words in AIRING_FIGURES]
    yield from figures(session.tunnel_plan.chosen.airing, rows, session.units)


GROUPS: tuple[tuple[object, Callable[[Session], Iterator[Item]]], ...] = (
    (QT_TRANSLATE_NOOP("Details", "Frame"), frame_items),
    (QT_TRANSLATE_NOOP("Details", "Figures of the frame"), survey_items),
    (QT_TRANSLATE_NOOP("Details", "Skin"), skin_items),
    (QT_TRANSLATE_NOOP("Details", "Allowances"), allowance_items),
    (QT_TRANSLATE_NOOP("Details", "Sides"), side_items),
    (QT_TRANSLATE_NOOP("Details", "Ends"), end_items),
    (QT_TRANSLATE_NOOP("Details", "Condition"), condition_items),
    (QT_TRANSLATE_NOOP("Details", "Rain"), rain_items),
    (QT_TRANSLATE_NOOP("Details", "Shade"), shade_items),
    (QT_TRANSLATE_NOOP("Details", "Air"), air_items),
    (QT_TRANSLATE_NOOP("Details", "Heating"), heating_items),
    (QT_TRANSLATE_NOOP("Details", "Winter and power"), climate_items),
    (QT_TRANSLATE_NOOP("Details", "Weather"), weather_items),
    (QT_TRANSLATE_NOOP("Details", "Farm"), farm_items),
)
