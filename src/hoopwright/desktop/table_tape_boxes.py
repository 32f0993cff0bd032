"""The boxes of the measuring sheet: where each reading stands, and how a typed text gets there.

Columns stand in the order of the sheet: bow, position, both girths, three heights of the first
side, three of the second, ridge.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication

from hoopwright.desktop.field import refusal_words
from hoopwright.farm import ListedBows, Tunnel, bow_positions
from hoopwright.farm.change import value_at, with_listed_bows, with_tunnel_value
from hoopwright.farm.change_tape import BowField, with_bow_value
from hoopwright.quantity.units import Units, read_signed_length

BOW, POSITION = 0, 1

Spot = tuple[int, int]
"""Number of the bow and column of the box."""


@dataclass(frozen=True, slots=True)
class Box:
    """One column that is typed into.

    Attributes:
        field: Path inside the row of a bow.
        title: What it is called, still to be translated.
        side: Which side it is on, or None.
    """

    field: BowField
    title: object
    side: int | None = None


HEIGHTS: tuple[tuple[str, object], ...] = (
    ("hip_m", QT_TRANSLATE_NOOP("Tables", "hip")),
    ("baseboard_m", QT_TRANSLATE_NOOP("Tables", "baseboard")),
    ("ground_m", QT_TRANSLATE_NOOP("Tables", "ground")),
)
BOXES: dict[int, Box] = dict(
    enumerate(
        (
            Box(("over_hips_m",), QT_TRANSLATE_NOOP("Tables", "Over hips")),
            Box(("over_baseboards_m",), QT_TRANSLATE_NOOP("Tables", "Over baseboards")),
            *(
                Box(("sides", side, name), title, side)
                for side in range(2)
                for name, title in HEIGHTS
            ),
            Box(("dip_m",), QT_TRANSLATE_NOOP("Tables", "Ridge below string")),
        ),
        start=POSITION + 1,
    )
)
"""The boxes of a bow by their columns."""


@dataclass(frozen=True, slots=True)
class Refusal:
    """A text that cannot be a reading.

    Attributes:
        text: What was typed.
        why: Why it cannot be, and the mend.
    """

    text: str
    why: str


@dataclass(frozen=True, slots=True)
class Entering:
    """What became of typed texts.

    Attributes:
        tunnel: The tunnel with all readings that can be.
        refused: The texts that cannot, each with its reason.
    """

    tunnel: Tunnel
    refused: dict[Spot, Refusal]


def box_name(spot: Spot, tunnel: Tunnel) -> str:
    """Return what a box is called where its row and column are not seen."""
    bow, column = spot
    words = QCoreApplication.translate("Tables", "bow {bow}, {box}")
    return words.format(bow=bow, box=column_name(column, tunnel).lower())


def column_name(column: int, tunnel: Tunnel) -> str:
    """Return what a column is called, with its side."""
    if column not in BOXES:
        title = {BOW: "Bow", POSITION: "Position"}[column]
        return QCoreApplication.translate("Tables", title)
    box = BOXES[column]
    title = QCoreApplication.translate("Tables", str(box.title))
    if box.side is None:
        return title
    words = QCoreApplication.translate("Tables", "{side}: {height}")
    return words.format(side=tunnel.sides[box.side].name, height=title)


def is_typed(spot: Spot) -> bool:
    """Return whether a box is typed into; the first bow is the datum of the positions."""
    bow, column = spot
    return column in BOXES or (column == POSITION and bow > 1)


def on_the_way(spot: Spot, tunnel: Tunnel) -> bool:
    """Return whether Tab stops at a box; at positions only where the bows are listed."""
    listed = isinstance(tunnel.frame.bows, ListedBows)
    return is_typed(spot) and (listed or spot[1] != POSITION)


def value_in(tunnel: Tunnel, spot: Spot) -> float | None:
    """Return the reading that stands in a box, m, or None."""
    bow, column = spot
    if column == POSITION:
        return bow_positions(tunnel.frame.bows)[bow - 1]
    value: float | None = value_at(tunnel.frame.tape.at(bow), BOXES[column].field)
    return value


def with_text(tunnel: Tunnel, spot: Spot, text: str, units: Units) -> Tunnel:
    """Return the tunnel with a typed reading in a box; empty text takes the reading away.

    Another position lists the bows where they stood at one spacing.

    Raises:
        ValueError: The text cannot be read, or the reading cannot be.
    """
    bow, column = spot
    value_m = read_signed_length(text, units).value_m if text.strip() else None
    if column != POSITION:
        return with_bow_value(tunnel, bow, BOXES[column].field, value_m)
    if value_m is None:
        words = "A bow that stands has a position; enter the running length from the first bow."
        raise ValueError(QCoreApplication.translate("Tables", words))
    path = ("frame", "bows", "positions_m", bow - 1)
    return with_tunnel_value(with_listed_bows(tunnel), path, value_m)


def enter_texts(tunnel: Tunnel, texts: Mapping[Spot, str], units: Units) -> Entering:
    """Enter all texts that can be readings, whatever their order, and keep the others.

    A text that is refused is tried again as long as others go in: both girths of a bow may have
    to change before either is right.
    """
    left, refused = dict(texts), dict[Spot, Refusal]()
    going = True
    while left and going:
        going = False
        for spot, text in tuple(left.items()):
            try:
                tunnel = with_text(tunnel, spot, text, units)
            except ValueError as error:
                refused[spot] = Refusal(text, refusal_words(error, units))
            else:
                del left[spot]
                refused.pop(spot, None)
                going = True
    return Entering(tunnel, refused)
