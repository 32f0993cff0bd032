"""Rules about where curtains hang: splits, pockets, slack."""

from collections.abc import Iterator

from hoopwright.checks.case import Case
from hoopwright.farm import Tunnel, bow_positions
from hoopwright.farm.change import is_close, move_split, nearest_bow, with_tunnel_value
from hoopwright.farm.side import MOVING, ROLLING
from hoopwright.quantity.finding import Finding
from hoopwright.quantity.working import PRACTICE, phrase

LEAST_SLACK_M = 0.02
FAIR_SLACK_M = 0.05


def split_off_bow(case: Case) -> Iterator[Finding]:
    """A split between two bows: nothing holds the curtain ends."""
    for n, side in enumerate(case.tunnel.sides):
        if side.kind not in MOVING:
            continue
        for i, split in enumerate(side.splits):
            bow_m = nearest_bow(case.tunnel, split.at_m)
            if is_close(bow_m, split.at_m):
                continue
            snapped = move_split(case.tunnel, n, i, bow_m)
            lands = is_close(snapped.sides[n].splits[i].at_m, bow_m)
            yield case.finding(
                "split.off_bow",
                "caution",
                f"side/{n}/split/{i}",
                phrase(
                    "{side}: split {number} at {at} is {off} off the nearest bow at {bow}.",
                    side=side.name,
                    number=i + 1,
                    at=(split.at_m, "m"),
                    off=(abs(split.at_m - bow_m), "m"),
                    bow=(bow_m, "m"),
                ),
                phrase("Between bows the ends of both curtains flap and tear."),
                phrase("Move the split to the bow at {bow}.", bow=(bow_m, "m")),
                snapped if lands else None,
                PRACTICE,
            )


def strip_without_bay(case: Case) -> Iterator[Finding]:
    """A fixed strip behind a split that has no whole bay left before the pocket."""
    bows = bow_positions(case.tunnel.frame.bows)
    for n, side in enumerate(case.tunnel.sides):
        if side.kind not in MOVING:
            continue
        high_m = bows[len(bows) - 1 - side.pocket_bays[1]]
        for i, split in enumerate(side.splits):
            following = side.splits[i + 1].at_m if i + 1 < len(side.splits) else high_m
            ahead = [x for x in bows if x > split.at_m + 1e-4]
            if split.join != "strip" or (ahead and ahead[0] < following - 1e-4):
                continue
            yield case.finding(
                "split.strip_without_bay",
                "fault",
                f"side/{n}/split/{i}",
                phrase(
                    "{side}: the fixed strip behind split {number} needs the bay after {at}, and "
                    "no curtain is left beyond it.",
                    side=side.name,
                    number=i + 1,
                    at=(split.at_m, "m"),
                ),
                phrase("The curtain behind the strip would have no length."),
                phrase("Lap the curtains instead, or move the split towards the front."),
                with_tunnel_value(case.tunnel, ("sides", n, "splits", i, "join"), "lap"),
            )


def pocket_short(case: Case) -> Iterator[Finding]:
    """An end pocket shorter than the curtain laps over it."""
    bows = bow_positions(case.tunnel.frame.bows)
    lap_m = case.tunnel.skin.allowances.curtain_lap_m
    for n, side in enumerate(case.tunnel.sides):
        if side.kind not in MOVING:
            continue
        front, back = side.pocket_bays
        lengths = (bows[front], bows[-1] - bows[len(bows) - 1 - back])
        for end, (name, length_m) in enumerate(zip(("front", "back"), lengths, strict=True)):
            if side.pocket_bays[end] == 0 or length_m >= lap_m:
                continue
            yield case.finding(
                "pocket.shorter_than_lap",
                "fault",
                f"side/{n}/pocket/{name}",
                phrase(
                    "{side}: the {end} pocket is {length} long and the curtain laps {lap}.",
                    side=side.name,
                    end=name,
                    length=(length_m, "m"),
                    lap=(lap_m, "m"),
                ),
                phrase("The curtain's end would stand past the end wall and catch the wind."),
                phrase("Take one more bay into the pocket, or lap less."),
                _more_pocket(case.tunnel, n, end),
            )


def _more_pocket(tunnel: Tunnel, side: int, end: int) -> Tunnel | None:
    bays = list(tunnel.sides[side].pocket_bays)
    bays[end] += 1
    try:
        return with_tunnel_value(tunnel, ("sides", side, "pocket_bays"), tuple(bays))
    except ValueError:
        return None


def pocket_missing(case: Case) -> Iterator[Finding]:
    """A side whose curtain has nothing to lap at an end."""
    for n, side in enumerate(case.tunnel.sides):
        if side.kind not in MOVING:
            continue
        for end, name in enumerate(("front", "back")):
            if side.pocket_bays[end] > 0:
                continue
            yield case.finding(
                "pocket.missing",
                "caution",
                f"side/{n}",
                phrase(
                    "{side}: there is no fixed pocket at the {end} end.", side=side.name, end=name
                ),
                phrase("The curtain's end has nothing to lap; wind gets behind it there."),
                phrase("Fix the film of the first bay as a pocket."),
                _more_pocket(case.tunnel, n, end),
                PRACTICE,
            )


def slack_short(case: Case) -> Iterator[Finding]:
    """A curtain fixed tight lifts its bar off the baseboard."""
    for n, side in enumerate(case.tunnel.sides):
        if side.kind not in ROLLING or side.slack_m >= LEAST_SLACK_M:
            continue
        yield case.finding(
            "slack.short",
            "caution",
            f"side/{n}",
            phrase(
                "{side}: only {slack} of slack at the bar.",
                side=side.name,
                slack=(side.slack_m, "m"),
            ),
            phrase(
                "A curtain fixed tight lifts the bar off the baseboard when it shrinks in cold."
            ),
            phrase("Leave {slack} of slack.", slack=(FAIR_SLACK_M, "m")),
            with_tunnel_value(case.tunnel, ("sides", n, "slack_m"), FAIR_SLACK_M),
            PRACTICE,
        )


def curtain_tiny(case: Case) -> Iterator[Finding]:
    """A curtain with next to no opening."""
    for span in case.chosen.cover.curtains:
        open_m = span.open_to_m - span.open_from_m
        if open_m >= 0.5:
            continue
        yield case.finding(
            "curtain.no_opening",
            "fault",
            span.mark,
            phrase(
                "{side}, curtain {number} opens only {open}.",
                side=case.tunnel.sides[span.side].name,
                number=span.index + 1,
                open=(max(open_m, 0.0), "m"),
            ),
            phrase("It needs a bar, a crank and film, and airs nothing."),
            phrase("Move or remove the split beside it."),
        )
