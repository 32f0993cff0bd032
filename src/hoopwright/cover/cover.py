"""What laying the skin yields: sheets, how each size adds up, where each lies.

The stage function is `lay_skin` in `pieces`.
"""

from dataclasses import dataclass
from typing import Literal

from hoopwright.cover.end_laid import EndLaid
from hoopwright.farm.skin import Covering
from hoopwright.quantity.working import Explained, Term

Surface = Literal["roof", "side0", "side1", "end0", "end1"]
Role = Literal[
    "roof sheet", "whole sheet", "curtain", "side sheet", "pocket", "split strip", "end wall"
]
LayerName = Literal["single", "outer", "inner"]


@dataclass(frozen=True, slots=True)
class Area:
    """Where film lies, with laps and without tails: a rectangle on one surface.

    Attributes:
        surface: Roof, one side or one end.
        from_m: Along the tunnel from the first bow (on an end: across, from the centre line), m.
        to_m: End of it, m.
        low_m: Height above the ground (on the roof: across from the centre line), m.
        high_m: End of it, m.
    """

    surface: Surface
    from_m: float
    to_m: float
    low_m: float
    high_m: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece(Explained):
    """One sheet of film to be cut.

    Attributes:
        mark: Unique in the tunnel: `piece/<role>/<layer>/<side or ->/<number>`, for example
            `piece/split-strip/single/1/0`; of an end wall the number is that of the end, and in
            place of the side stands the number of the sheet where there are several.
        name: What people call it.
        role: What it is for.
        layer: Single, outer or inner.
        film: Catalogue key of the film.
        width_m: Across the roll, m.
        length_m: Along the roll, m.
        width_terms: What the width adds up from.
        length_terms: What the length adds up from.
        area_m2: Width times length, m2.
        mass_kg: Mass, kg.
        areas: Where it lies.
    """

    mark: str
    name: str
    role: Role
    layer: LayerName
    film: str
    width_m: float
    length_m: float
    width_terms: tuple[Term, ...]
    length_terms: tuple[Term, ...]
    area_m2: float
    mass_kg: float
    areas: tuple[Area, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CurtainSpan(Explained):
    """Where one curtain hangs.

    Attributes:
        mark: `side/0/panel/1`.
        side: 0 for the first side, 1 for the second.
        index: Its number from the front, from 0.
        open_from_m: Opening from the front, m.
        open_to_m: End of the opening, m.
        from_m: Front edge of the curtain with its lap, m; cut in the tail of one sheet the slit in
            front of it, which lies before the opening when a strip stands behind the curtain.
        to_m: Back edge with its lap, m; in one sheet the slit behind it.
        length_m: Length of curtain and bar, m.
        hang_m: Film from the hip seam to the bar when shut, along the bow, slack included, m; of a
            drop-down curtain from the baseboard to the rod at the hip.
        cut_height_m: Height the film is cut to, of two layers the outer, m (in one sheet: what it
            adds to the sheet).
        layers: Layers wound together.
        thickness_m: All layers together, m.
        film_mass_kg_m2: All layers together, kg/m2.
        gap_m: From the shut bar down to the ground where it is deepest under the curtain, m; 0 of
            a drop-down curtain, which is held at the baseboard.
        board_gap_m: From the shut bar down to the top of the baseboard where it is lowest, m; 0
            where the bar hangs below it.
    """

    mark: str
    side: int
    index: int
    open_from_m: float
    open_to_m: float
    from_m: float
    to_m: float
    length_m: float
    hang_m: float
    cut_height_m: float
    layers: int
    thickness_m: float
    film_mass_kg_m2: float
    gap_m: float
    board_gap_m: float


@dataclass(frozen=True, slots=True, kw_only=True)
class FixedSpan:
    """Fixed film on a side: a pocket, or the strip behind a split.

    Attributes:
        mark: `side/0/pocket/front`, `side/0/pocket/back`, `side/0/strip/0`; a side that is fixed
            all along is `side/0/fixed`.
        side: 0 or 1.
        from_m: First bow that holds it, m.
        to_m: Last bow that holds it, m.
    """

    mark: str
    side: int
    from_m: float
    to_m: float


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetWidth(Explained):
    """How wide the sheet over the bows is in one covering.

    Attributes:
        covering: One sheet, or roof and sides apart.
        sheet_width_m: Width of the outer roof sheet, or of the outer whole sheet, m.
    """

    covering: Covering
    sheet_width_m: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Cover(Explained):
    """The skin laid one way.

    Attributes:
        covering: One sheet, or roof and sides apart.
        pieces: All sheets.
        curtains: Where curtains hang.
        fixed: Fixed film on the sides.
        ends: Front and back end wall.
        sheet_width_m: Width of the outer roof sheet, or of the outer whole sheet, m.
        side_height_m: On each side, cut height of the side film, m; 0 where the sheet of the roof
            covers the side.
        film_area_m2: All sheets together, m2.
        film_mass_kg: All sheets together, kg.
    """

    covering: Covering
    pieces: tuple[Piece, ...]
    curtains: tuple[CurtainSpan, ...]
    fixed: tuple[FixedSpan, ...]
    ends: tuple[EndLaid, EndLaid]
    sheet_width_m: float
    side_height_m: tuple[float, float]
    film_area_m2: float
    film_mass_kg: float
