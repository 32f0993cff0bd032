"""What the rules of the takeoff look at, and how a need is written down.

Every rule is a function from the site to needs. Rules do not look at each other's needs, so that
each can be read, tested and explained alone.
"""

import math
from dataclasses import dataclass
from functools import lru_cache

from hoopwright.cover import own_sheets
from hoopwright.cover.cover import Cover, FixedSpan
from hoopwright.curtain.curtain import CurtainWork
from hoopwright.farm.air import Air
from hoopwright.farm.catalogue import Catalogue, Part
from hoopwright.farm.frame import Frame, SideBoards
from hoopwright.farm.side import Panel, Side
from hoopwright.farm.skin import End, Skin
from hoopwright.inflation.inflation import Inflation
from hoopwright.outfit.outfit import Outfit
from hoopwright.quantity.working import PRACTICE, Phrase, Term, Working
from hoopwright.survey.survey import Survey
from hoopwright.takeoff.need import Need, Place

SPACING_M = 0.6
TOUCH_M = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class Site:
    """One tunnel as the rules of the takeoff see it.

    Attributes:
        frame: The frame as measured.
        survey: The frame as built.
        skin: What goes on it.
        sides: First and second side.
        ends: Front and back end wall.
        air: Air between two layers.
        cover: The skin as laid, in the covering that is counted.
        curtains: How each curtain works.
        inflation: Seals, cells, jumpers.
        outfit: Gutters, shade cloth, insect screens.
        catalogue: What can be bought.
    """

    frame: Frame
    survey: Survey
    skin: Skin
    sides: tuple[Side, Side]
    ends: tuple[End, End]
    air: Air
    cover: Cover
    curtains: tuple[CurtainWork, ...]
    inflation: Inflation
    outfit: Outfit
    catalogue: Catalogue

    def own(self, side: int) -> bool:
        """Return whether a side has sheets of its own, so that the roof's ends at its hip."""
        return own_sheets(self.sides[side], self.cover.covering)

    def part(self, key: str) -> Part | None:
        """Return the part of that key, or None when the catalogue lacks it."""
        return parts_by_key(self.catalogue).get(key)

    def spacing_m(self, key: str) -> float:
        """Return the spacing at which a part is set, m.

        Source:
            `part_spacing`.
        """
        return part_spacing(self.catalogue, key)

    def end_m(self, end: int) -> float:
        """Return where an end bow stands, m from the first bow; end 0 is the front.

        Source:
            The survey of the frame.
        """
        return self.survey.bows_m[-1] if end else self.survey.bows_m[0]

    def fixed_at(self, side: int, at_m: float) -> FixedSpan | None:
        """Return the fixed film of a side that reaches the bow at a position, or None."""
        for span in self.cover.fixed:
            if span.side == side and min(abs(span.from_m - at_m), abs(span.to_m - at_m)) < TOUCH_M:
                return span
        return None


@dataclass(frozen=True, slots=True)
class CurtainSite:
    """One curtain as the rules of the takeoff see it.

    Attributes:
        panel: The choices made for it.
        boards: The boards of its side.
        catalogue: What can be bought.
    """

    panel: Panel
    boards: SideBoards
    catalogue: Catalogue

    def spacing_m(self, key: str) -> float:
        """Return the spacing at which a part is set, m.

        Source:
            `part_spacing`.
        """
        return part_spacing(self.catalogue, key)


def part_spacing(catalogue: Catalogue, key: str) -> float:
    """Return the spacing at which a part is set, m.

    Source:
        The catalogue's entry; 0.6 m where it gives none: common practice, no published source.
    """
    part = parts_by_key(catalogue).get(key)
    return part.spacing_m if part is not None and part.spacing_m > 0 else SPACING_M


@lru_cache(maxsize=16)
def parts_by_key(catalogue: Catalogue) -> dict[str, Part]:
    """Return the parts of a catalogue by key."""
    return {part.key: part for part in catalogue.parts}


def need(
    part: str,
    quantity: float,
    where: Phrase,
    mark: str,
    rule: str,
    *inputs: Term,
    source: str = PRACTICE,
    place: Place | None = None,
) -> Need:
    """Return a need at one mark with its working.

    Args:
        part: Catalogue key.
        quantity: Metres of run or number of pieces.
        where: Where it goes, in words.
        mark: Place on the canvas.
        rule: The rule in words.
        inputs: What went in.
        source: Where the rule comes from.
        place: Where it sits along the tunnel, when the mark does not tell it.
    """
    return Need(
        part=part,
        quantity=float(quantity),
        where=where,
        marks=(mark,),
        working=Working("quantity", rule, inputs, source),
        place=place,
    )


def count_spaced(length_m: float, spacing_m: float) -> int:
    """Return how many pieces stand along a run, one at each end and never farther than the spacing.

    Args:
        length_m: Length of the run, m, above zero.
        spacing_m: Greatest distance from one to the next, m, above zero.

    Raises:
        ValueError: The length or the spacing is not above zero.

    Source:
        Count of fence posts: n spaces take n + 1 posts.
    """
    if length_m <= 0 or spacing_m <= 0:
        raise ValueError(f"length and spacing must be above zero, not {length_m} and {spacing_m}")
    return math.ceil(length_m / spacing_m - 1e-9) + 1
