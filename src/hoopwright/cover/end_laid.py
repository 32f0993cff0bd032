"""What laying an end wall yields: its outline, openings, bands of film or columns of sheets.

Everything is seen from outside and measured from the middle between the feet of the end bow: at
the front end the first side is at the left, at the back end the second side is.
"""

from dataclasses import dataclass
from typing import Literal

from hoopwright.farm.change_ends import EndCover
from hoopwright.farm.end_places import Box
from hoopwright.quantity.working import Explained

OpeningUse = Literal["door", "vent", "fan"]
Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Opening:
    """A door, a vent or the place of a fan.

    Attributes:
        mark: `end/0/door/0`, `end/0/cut/1`.
        use: What it is for.
        number: Its number among all doors, or among all vents and fan openings, from 0.
        box: Where it lies.
        inside: Whether it lies in the outline of the wall.
        meets: Marks of the openings before it that it overlaps.
    """

    mark: str
    use: OpeningUse
    number: int
    box: Box
    inside: bool
    meets: tuple[str, ...]

    @property
    def width_m(self) -> float:
        """Return the clear width, m."""
        return self.box.right_m - self.box.left_m

    @property
    def height_m(self) -> float:
        """Return the clear height, m."""
        return self.box.high_m - self.box.low_m


@dataclass(frozen=True, slots=True)
class Band:
    """What one sheet of film covers, without tails, its half of the laps at seams included.

    Attributes:
        low_m: Lower edge, m.
        high_m: Upper edge, m.
        left_m: Farthest to the left that the outline reaches between them, m.
        right_m: Farthest to the right, m.
        seams: How many of its edges, 0 to 2, lie on a seam.
    """

    low_m: float
    high_m: float
    left_m: float
    right_m: float
    seams: int


@dataclass(frozen=True, slots=True)
class Crossing:
    """A rail, a seam of the film, or a lap of sheets, from one side of the end bow to the other.

    Attributes:
        mark: `end/0/rail/1`, `end/0/seam/0`; of a lap that of the wall.
        at_m: Its height, m.
        left_m: Its left end, m.
        right_m: Its right end, m.
        free_m: Its length less the openings it meets, m; 0 on and above the ridge.
    """

    mark: str
    at_m: float
    left_m: float
    right_m: float
    free_m: float


@dataclass(frozen=True, slots=True)
class Column:
    """Rigid sheets above each other, as wide as one sheet covers.

    Attributes:
        left_m: Left edge, m.
        right_m: Right edge, m.
        height_m: Greatest height of the outline over it, m.
        left_high_m: Height of the outline at its left edge, m.
        cuts_m: Heights of its sheets from below, laps included, m.
    """

    left_m: float
    right_m: float
    height_m: float
    left_high_m: float
    cuts_m: tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RigidWall(Explained):
    """An end wall of rigid sheets.

    Attributes:
        part: Catalogue key of a sheet.
        columns: From the left.
        laps: Where one sheet laps over the one below it, from below.
        sheet_count: Sheets to buy.
        sheet_area_m2: All of them, m2.
        waste_m2: What does not stay on the wall: laps, off-cuts and openings, m2.
    """

    part: str
    columns: tuple[Column, ...]
    laps: tuple[Crossing, ...]
    sheet_count: int
    sheet_area_m2: float
    waste_m2: float


@dataclass(frozen=True, slots=True, kw_only=True)
class EndLaid(Explained):
    """One end wall.

    Attributes:
        mark: `end/0` at the front, `end/1` at the back.
        closed: With film, with rigid sheets, or open.
        outline_m: From the left foot over the ridge to the right foot, m.
        openings: Doors, then vents and fan openings.
        widest_m: Greatest outside width, m.
        widest_at_m: Height at which it is first that wide, m.
        height_m: Outside height at the ridge, m.
        gross_m2: Inside the outline, m2.
        openings_m2: Openings, as far as they lie in the outline, overlaps once, m2.
        net_m2: What is closed, m2.
        foot_m: Along the ground between the feet, less what stands open there, m.
        rails: Rails, from below.
        seams: Seams of the film, from below; none without film.
        bands: What each sheet of film covers, from below; none without film.
        rigid: The rigid sheets, or None.
    """

    mark: str
    closed: EndCover
    outline_m: tuple[Point, ...]
    openings: tuple[Opening, ...]
    widest_m: float
    widest_at_m: float
    height_m: float
    gross_m2: float
    openings_m2: float
    net_m2: float
    foot_m: float
    rails: tuple[Crossing, ...]
    seams: tuple[Crossing, ...]
    bands: tuple[Band, ...]
    rigid: RigidWall | None
