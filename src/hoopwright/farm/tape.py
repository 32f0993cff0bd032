"""What the tape found on the frame as it stands, bow by bow, and how far a tape is believed.

Bows are counted from 1 at the front end. Heights are from one level line whose zero is the ground
line of the profile; ground that falls away from it is negative. A girth is taken with a line over
the outside of the bow, from fixing to fixing. What was not read is None; nothing is filled in here.
"""

import itertools
import math
from typing import Annotated

from hoopwright.farm.entered import Entered, measure
from hoopwright.farm.entry_error import EntryError

GirthM = Annotated[float, measure("girth", "m", 0.5, 120.0)]
RunM = Annotated[float, measure("length along the tunnel", "m", 0.2, 1100.0)]
LeanM = Annotated[float, measure("end bow out of plumb", "m", -2.0, 2.0)]

LongPair = tuple[RunM | None, RunM | None]


class SideReading(Entered, frozen=True):
    """Heights read at one bow on one side, from the level line.

    Attributes:
        hip_m: Top of the hip board, m.
        baseboard_m: Top of the baseboard, m.
        ground_m: Ground under the curtain, m; below the line it is negative.
    """

    hip_m: Annotated[float, measure("hip board height", "m", 0.1, 20.0)] | None = None
    baseboard_m: Annotated[float, measure("baseboard top height", "m", -3.0, 5.0)] | None = None
    ground_m: Annotated[float, measure("ground height", "m", -3.0, 3.0)] | None = None

    def __post_init__(self) -> None:
        """Refuse a hip board that is not above the baseboard and the ground."""
        Entered.__post_init__(self)
        for low_m, label in ((self.baseboard_m, "baseboard"), (self.ground_m, "ground")):
            if self.hip_m is not None and low_m is not None and self.hip_m <= low_m:
                raise EntryError(
                    "hip_m",
                    "the hip board must be above the {low} at the same bow; correct one of the two "
                    "heights",
                    low=label,
                )


class BowReading(Entered, frozen=True):
    """What was read at one bow.

    Attributes:
        bow: Number of the bow, 1 at the front end.
        over_hips_m: Girth from hip board to hip board over the ridge, m.
        over_baseboards_m: Girth from baseboard top to baseboard top over the ridge, m.
        dip_m: How far the ridge hangs below a string from end bow to end bow, m; a ridge above the
            string is negative.
        sides: Heights on the first and on the second side.
    """

    bow: Annotated[int, measure("bow", "count", 1, 1000)]
    over_hips_m: GirthM | None = None
    over_baseboards_m: GirthM | None = None
    dip_m: Annotated[float, measure("ridge below the string", "m", -2.0, 2.0)] | None = None
    sides: tuple[SideReading, SideReading] = (SideReading(), SideReading())

    def __post_init__(self) -> None:
        """Refuse a girth of the whole bow that is not longer than that of its roof."""
        Entered.__post_init__(self)
        hips_m, whole_m = self.over_hips_m, self.over_baseboards_m
        if hips_m is not None and whole_m is not None and whole_m <= hips_m:
            raise EntryError(
                "over_baseboards_m",
                "the girth from baseboard to baseboard at bow {bow} must be longer than that from "
                "hip to hip; correct one of the two",
                bow=self.bow,
            )

    @property
    def is_empty(self) -> bool:
        """Return whether nothing at all was read here."""
        return self == BowReading(bow=self.bow)


class Tape(Entered, frozen=True):
    """All readings of one frame, and what the tape itself may be wrong by.

    Attributes:
        bows: Readings at bows, in the order of the bows.
        hip_lengths_m: First to last bow along the hip board of each side, tube middle to tube
            middle, m.
        base_lengths_m: The same along the baseboards, m.
        diagonals_m: From the front corner of the first side to the back corner of the second, and
            from the front corner of the second side to the back corner of the first, at the ground,
            m.
        leans_m: How far the ridge of the front and of the back end bow stands outside its feet, m;
            leaning into the tunnel is negative.
        error_m: What one reading may be wrong by, either way, m.
        agreement_share: How far the measured girth may be from the one computed from the profile.
        outlier_m: A girth this far from the middle one is called an outlier, m.
    """

    bows: tuple[BowReading, ...] = ()
    hip_lengths_m: LongPair = (None, None)
    base_lengths_m: LongPair = (None, None)
    diagonals_m: LongPair = (None, None)
    leans_m: tuple[LeanM | None, LeanM | None] = (None, None)
    error_m: Annotated[float, measure("error of a reading", "m_thin", 0.0, 0.5)] = 0.006
    agreement_share: Annotated[float, measure("girth may disagree by", "share", 0.001, 0.5)] = 0.02
    outlier_m: Annotated[float, measure("outlier from the middle girth", "m_thin", 0.005, 2.0)] = (
        0.05
    )

    def __post_init__(self) -> None:
        """Refuse bows out of order or twice, and lengths no tunnel has."""
        Entered.__post_init__(self)
        for first, second in itertools.pairwise(self.bows):
            if second.bow <= first.bow:
                raise ValueError(
                    f"bows: the readings of bow {second.bow} come after those of bow {first.bow}; "
                    "enter each bow once, from the front to the back"
                )
        for name, low_m, high_m in (
            ("hip_lengths_m", 0.2, 1100.0),
            ("base_lengths_m", 0.2, 1100.0),
            ("diagonals_m", 0.2, 1100.0),
            ("leans_m", -2.0, 2.0),
        ):
            for value in getattr(self, name):
                if value is not None and not (math.isfinite(value) and low_m <= value <= high_m):
                    raise EntryError(
                        name,
                        "each must be from {low} to {high}, not {value}",
                        low=(low_m, "m"),
                        high=(high_m, "m"),
                        value=(value, "m") if math.isfinite(value) else repr(value),
                    )

    @property
    def is_empty(self) -> bool:
        """Return whether no reading was taken."""
        pairs = (self.hip_lengths_m, self.base_lengths_m, self.diagonals_m, self.leans_m)
        return not self.bows and all(value is None for pair in pairs for value in pair)

    def at(self, bow: int) -> BowReading:
        """Return what was read at a bow; a row without readings when nothing was."""
        return next((r for r in self.bows if r.bow == bow), BowReading(bow=bow))
