"""The girths that were read over several bows: the middle one, their spread, the one that governs.

The longest governs: a sheet that is too short at one bow is short. An outlier is named, and governs
all the same until it is measured again.
"""

import math
from collections.abc import Sequence

from hoopwright.farm.tape import Tape
from hoopwright.quantity.working import DERIVED, ENTERED, PRACTICE, LaterWorkings, Term, Working
from hoopwright.survey.heights import Along
from hoopwright.survey.taped import GirthReading, GirthSpread, Over

WAYS: dict[Over, str] = {"hips": "hip to hip", "baseboards": "baseboard to baseboard"}


def girth_spread(tape: Tape, over: Over, along: tuple[Along, Along]) -> GirthSpread | None:
    """Return all girths read between the same two lines; None when none was read.

    Args:
        tape: What was read.
        over: Between the hip boards, or between the baseboards.
        along: Where the boards lie on each bow, by the profile.

    Source:
        The longest of several governs: common practice, no published source. Median and standard
        deviation of a sample: textbook.
    """
    read = [(r.bow, r.over_hips_m if over == "hips" else r.over_baseboards_m) for r in tape.bows]
    girths = [(bow, girth_m) for bow, girth_m in read if girth_m is not None]
    if not girths:
        return None
    lengths_m = [girth_m for _, girth_m in girths]
    middle_m = _median(lengths_m)
    governing_bow, governing_m = max(girths, key=lambda one: one[1])
    by_profile = [(bow, _computed(over, along, bow)) for bow, _ in girths]
    computed_m = _median([length_m for _, length_m in by_profile])
    readings = tuple(
        GirthReading(bow, girth_m, girth_m - middle_m, abs(girth_m - middle_m) > tape.outlier_m)
        for bow, girth_m in girths
    )
    return GirthSpread(
        over=over,
        readings=readings,
        middle_m=middle_m,
        spread_m=max(lengths_m) - min(lengths_m),
        deviation_m=_deviation(lengths_m),
        governing_bow=governing_bow,
        governing_m=governing_m,
        computed_m=computed_m,
        disagreement_share=(middle_m - computed_m) / computed_m,
        workings=LaterWorkings(lambda: _workings(over, readings, by_profile, middle_m, computed_m)),
    )


def _computed(over: Over, along: tuple[Along, Along], bow: int) -> float:
    """Return the girth of the profile over one bow, m."""
    lines = [side.hips_m if over == "hips" else side.bases_m for side in along]
    return lines[1][bow - 1] - lines[0][bow - 1]


def _median(lengths_m: Sequence[float]) -> float:
    """Return the middle one, or the mean of both in the middle, m."""
    ranked, half = sorted(lengths_m), len(lengths_m) // 2
    return ranked[half] if len(ranked) % 2 else (ranked[half - 1] + ranked[half]) / 2


def _deviation(lengths_m: Sequence[float]) -> float:
    """Return the standard deviation of a sample, m; 0 of one reading."""
    if len(lengths_m) < 2:
        return 0.0
    mean_m = sum(lengths_m) / len(lengths_m)
    return math.sqrt(sum((x - mean_m) ** 2 for x in lengths_m) / (len(lengths_m) - 1))


def _workings(
    over: Over,
    readings: tuple[GirthReading, ...],
    by_profile: Sequence[tuple[int, float]],
    middle_m: float,
    computed_m: float,
) -> tuple[Working, ...]:
    read = tuple(Term(f"bow {r.bow}", r.length_m, "m") for r in readings)
    way = WAYS[over]
    middle, computed = Term("median", middle_m, "m"), Term("computed", computed_m, "m")
    return (
        Working("middle_m", f"Median of the girths read {way}.", read, ENTERED),
        Working("spread_m", f"Longest girth less the shortest, {way}.", read),
        Working(
            "deviation_m",
            "Standard deviation of the sample: the root of the squares of what each girth is off "
            "the mean, over one less than their number; nothing of one girth.",
            read,
            "textbook statistics",
        ),
        Working("governing_bow", f"Bow with the longest girth {way}.", read, PRACTICE),
        Working(
            "governing_m",
            f"The longest girth read {way} governs, an outlier too, until it is measured again: a "
            "sheet that is short at one bow is short.",
            read,
            PRACTICE,
        ),
        Working(
            "computed_m",
            f"Over the outside of the tube {way} by the profile, at the bows that were read; "
            "the median of them.",
            tuple(Term(f"bow {bow} by the profile", x, "m") for bow, x in by_profile),
        ),
        Working(
            "disagreement_share",
            "Median less computed girth, over the computed one.",
            (middle, computed),
            DERIVED,
        ),
    )
