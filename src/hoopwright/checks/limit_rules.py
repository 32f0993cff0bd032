"""Rules about how long a bar may be: hand force, trailing, what makers allow.

Each is mended by splits: the fewest curtains on the bows, as even as can be, within all of the
limits at once.
"""

from collections.abc import Iterator

from hoopwright.checks.case import Case
from hoopwright.curtain import CurtainWork
from hoopwright.curtain.bounds import REMEDY, end_bound, limit_words
from hoopwright.curtain.splitting import even_splits, side_opening, with_splits
from hoopwright.farm import Tunnel
from hoopwright.quantity.finding import Finding
from hoopwright.quantity.working import ENTERED, Phrase, phrase

Fault = tuple[str, str, Phrase, Phrase]
"""Mark, code, what is the matter and why it matters."""


def bars_too_long(case: Case) -> Iterator[Finding]:
    """Bars too long for hand force, trailing or a maker; one mend serves a whole side."""
    for n in range(len(case.tunnel.sides)):
        works = tuple(work for work in case.chosen.curtains if work.side == n)
        faults = [fault for work in works for fault in _faults(case, work)]
        if not faults:
            continue
        mended, mend = _evened(case, n, works)
        for mark, code, what, why in faults:
            yield case.finding(code, "caution", mark, what, why, mend, mended, ENTERED)


def _faults(case: Case, work: CurtainWork) -> Iterator[Fault]:
    limits, bar, drive = case.limits, work.hung.bar, work.hung.drive
    if work.hardest_n > limits.hand_force_n:
        yield _crank_hard(case, work)
    if work.trailing_m > limits.trailing_m:
        yield _bar_trails(case, work)
    if bar.max_length_m is not None and work.length_m > bar.max_length_m:
        yield _over_maker(case, work, "bar.over_maker", bar.name, bar.max_length_m)
    if drive.max_length_m is not None and work.length_m > drive.max_length_m:
        yield _over_maker(case, work, "drive.over_maker", drive.name, drive.max_length_m)


def _crank_hard(case: Case, work: CurtainWork) -> Fault:
    return (
        work.mark,
        "crank.force_high",
        phrase(
            "{side}, curtain {number}: the handle takes {force}, over your limit of {limit}.",
            side=case.tunnel.sides[work.side].name,
            number=work.index + 1,
            force=(work.hardest_n, "N"),
            limit=(case.limits.hand_force_n, "N"),
        ),
        phrase(
            "A hard crank slips from the hand, and a raised bar runs down by itself. By hand force "
            "this bar and drive manage {length}; {bound} sets the longest bar, {longest}.",
            length=(work.hand_length_m, "m"),
            bound=limit_words(work.bound_by),
            longest=(work.longest_m, "m"),
        ),
    )


def _bar_trails(case: Case, work: CurtainWork) -> Fault:
    return (
        work.mark,
        "bar.trailing",
        phrase(
            "{side}, curtain {number}: the bar hangs {trailing} behind the crank, over your limit "
            "of {limit}: {twist} by twist, {play} by play in the joints, {uneven} by uneven "
            "winding.",
            side=case.tunnel.sides[work.side].name,
            number=work.index + 1,
            trailing=(work.trailing_m, "m_thin"),
            limit=(case.limits.trailing_m, "m_thin"),
            twist=(work.twist_trailing_m, "m_thin"),
            play=(work.play_trailing_m, "m_thin"),
            uneven=(work.uneven_trailing_m, "m_thin"),
        ),
        phrase(
            "The roll runs askew and the film creases; {bound} sets the longest bar, {longest}.",
            bound=limit_words(work.bound_by),
            longest=(work.longest_m, "m"),
        ),
    )


def _over_maker(case: Case, work: CurtainWork, code: str, thing: str, most_m: float) -> Fault:
    return (
        work.mark,
        code,
        phrase(
            "{side}, curtain {number}: its bar of {length} is longer than the {most} that the "
            "maker of the {thing} allows.",
            side=case.tunnel.sides[work.side].name,
            number=work.index + 1,
            length=(work.length_m, "m"),
            most=(most_m, "m"),
            thing=thing,
        ),
        phrase("What the maker says comes before what is reckoned here."),
    )


def _evened(case: Case, side: int, works: tuple[CurtainWork, ...]) -> tuple[Tunnel | None, Phrase]:
    """Return the tunnel with even curtains within all limits, and what is done to it."""
    longest_m, bound = end_bound(works)
    spots_m = even_splits(side_opening(case.tunnel, side), longest_m)
    mended = None if spots_m is None else with_splits(case.tunnel, side, spots_m)
    if spots_m is None or mended == case.tunnel:
        return None, phrase(
            "No split on a bow mends it, {bound} is too tight: " + REMEDY[bound] + ".",
            bound=limit_words(bound),
        )
    if not spots_m:
        return mended, phrase("Hang one curtain without a split and crank it at an end.")
    spots = {f"at{n}": (at_m, "m") for n, at_m in enumerate(spots_m, start=1)}
    where = ("bow at " if len(spots) == 1 else "bows at ") + ", ".join(f"{{{n}}}" for n in spots)
    return mended, phrase(
        "Split the side on the " + where + " and crank the first curtain at the front, the "
        "last at the back; or take a bar and drive that manage more.",
        **spots,
    )
