"""The frame as entered: profile of the bow, where the bows stand, boards on each side.

All sizes of a profile are to the centre line of the tube, heights from the ground line.
A frame that cannot exist is refused here, so that every stage after may rely on it.
"""

import itertools
import math
from typing import Annotated, Literal

from hoopwright.farm.entered import Entered, choice, measure
from hoopwright.farm.entry_error import EntryError
from hoopwright.farm.half_width import half_width
from hoopwright.farm.profile import Profile, ridge_height
from hoopwright.farm.tape import BowReading, Tape

Board = Literal["wood", "metal"]

SHORT_M = 0.01
SpacingM = Annotated[float, measure("bow spacing", "m", 0.2, 10.0)]
BowCount = Annotated[int, measure("number of bows", "count", 2, 1000)]


class EvenBows(Entered, frozen=True, tag="even", tag_field="layout"):
    """Bows at one spacing.

    Attributes:
        count: Number of bows; n bows make n - 1 bays.
        spacing_m: From bow to bow, m.
    """

    count: BowCount
    spacing_m: SpacingM


class ListedBows(Entered, frozen=True, tag="listed", tag_field="layout"):
    """Bows where a tape from the front end found them.

    Attributes:
        positions_m: Running positions from the first bow, which is at 0, m.
    """

    positions_m: tuple[float, ...]

    def __post_init__(self) -> None:
        """Refuse positions that do not run away from 0."""
        Entered.__post_init__(self)
        spots = self.positions_m
        if len(spots) < 2 or len(spots) > 1000:
            raise ValueError("positions_m: enter from 2 to 1000 bow positions")
        if not all(math.isfinite(x) and x <= 1000 for x in spots):
            raise ValueError("positions_m: every position must be a number up to 1000 m")
        if spots[0] != 0:
            raise ValueError("positions_m: the first bow is the datum, its position must be 0")
        for a, b in itertools.pairwise(spots):
            if b - a < 0.2:
                raise EntryError(
                    "positions_m",
                    "{after} must be at least {least} after {before}; running positions only grow",
                    after=(b, "m"),
                    least=(0.2, "m"),
                    before=(a, "m"),
                )


Bows = EvenBows | ListedBows


def bow_positions(bows: Bows) -> tuple[float, ...]:
    """Return where the bows stand, m from the first one.

    Source:
        Count of fence posts: n bows make n - 1 bays.
    """
    if isinstance(bows, ListedBows):
        return bows.positions_m
    return tuple(i * bows.spacing_m for i in range(bows.count))


class SideBoards(Entered, frozen=True):
    """The lengthwise boards of one side, which hold the film.

    Attributes:
        hip_height_m: Top of the side opening: the hip board, where the roof film ends and the
            side film starts (the hip seam), m above the ground.
        baseboard_height_m: Top of the baseboard, m above the ground.
        hip_board: What the hip board is made of.
        baseboard: What the baseboard is made of.
        stand_off_m: How far the hip board holds the film off the bow, m.
        gutter_drop_m: How far a gutter on the hip board hangs below it, m; None without a gutter.
    """

    hip_height_m: Annotated[float, measure("hip board height", "m", 0.1, 20.0)]
    baseboard_height_m: Annotated[float, measure("baseboard top height", "m", 0.0, 5.0)]
    hip_board: Annotated[Board, choice("hip board")] = "wood"
    baseboard: Annotated[Board, choice("baseboard")] = "wood"
    stand_off_m: Annotated[float, measure("hip board stands off", "m_thin", 0.0, 0.5)] = 0.0381
    gutter_drop_m: Annotated[float, measure("gutter below the hip", "m", 0.0, 1.0)] | None = None

    def __post_init__(self) -> None:
        """Refuse a side with no opening."""
        Entered.__post_init__(self)
        if self.hip_height_m <= self.baseboard_height_m:
            raise ValueError(
                "hip_height_m: the hip board must be above the baseboard; "
                "raise the hip board or lower the baseboard"
            )


class Frame(Entered, frozen=True):
    """The frame of one tunnel.

    Attributes:
        profile: Shape of a bow.
        tube_diameter_m: Outside diameter of the bow tube, m. Film lies on the outside.
        length_m: First to last bow as read off the tape, m; checked against the bows.
        bows: Where the bows stand.
        boards: Boards of the first and of the second side.
        tape: What was read on the frame as it stands; it goes before what the profile gives.
    """

    profile: Profile
    tube_diameter_m: Annotated[float, measure("bow tube diameter", "m", 0.0, 0.5)]
    length_m: Annotated[float, measure("length, first to last bow", "m", 0.2, 1000.0)]
    bows: Bows
    boards: tuple[SideBoards, SideBoards]
    tape: Tape = Tape()

    def __post_init__(self) -> None:
        """Refuse a hip board on or above the ridge, and readings that this frame cannot give."""
        Entered.__post_init__(self)
        top = ridge_height(self.profile)
        for boards in self.boards:
            if boards.hip_height_m >= top:
                raise EntryError(
                    "hip_height_m",
                    "the hip board at {hip} must be below the ridge at {ridge}; lower the hip "
                    "board or raise the peak",
                    hip=(boards.hip_height_m, "m"),
                    ridge=(top, "m"),
                )
        _check_tape(self, top)


def _check_tape(frame: Frame, top_m: float) -> None:
    """Refuse readings of bows that are not there, and girths that no line over the bow can have."""
    count = len(bow_positions(frame.bows))
    for reading in frame.tape.bows:
        if reading.bow > count:
            raise EntryError(
                "tape.bows",
                "there is no bow {bow}; this tunnel has {count} bows, which make {bays} bays. "
                "Clear the readings of that bow first, or set more bows",
                bow=reading.bow,
                count=count,
                bays=count - 1,
            )
        _check_girth(frame, top_m, reading, "over_hips_m")
        _check_girth(frame, top_m, reading, "over_baseboards_m")


def _check_girth(frame: Frame, top_m: float, reading: BowReading, name: str) -> None:
    girth_m, hips = getattr(reading, name), name == "over_hips_m"
    if girth_m is None:
        return
    least_m = 0.0
    for n, (boards, side) in enumerate(zip(frame.boards, reading.sides, strict=True)):
        read_m = side.hip_m if hips else side.baseboard_m
        entered_m = boards.hip_height_m if hips else boards.baseboard_height_m
        height_m = entered_m if read_m is None else max(entered_m, read_m)
        least_m += math.hypot(half_width(frame.profile, height_m, n), max(0.0, top_m - height_m))
    if girth_m < least_m - SHORT_M:
        way = "hip to hip" if hips else "baseboard to baseboard"
        raise EntryError(
            name,
            "{girth} at bow {bow} is shorter than the straight line from {way} over the ridge "
            "({least}); measure over the outside of the bow, or correct span, peak or board "
            "heights",
            girth=(girth_m, "m"),
            bow=reading.bow,
            way=way,
            least=(least_m, "m"),
        )
