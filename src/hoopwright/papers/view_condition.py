"""What of the old skin stays, as bands along the tunnel: one row for each family of parts.

A kept stretch and a repaired one differ in colour, in the slant of their hatch and in their
outline. A text at the bands names the families from the top down. On a side the bands lie on the
foot of the roof, in the plan below the first hip; what stays at an end lies inside its bow.
"""

from collections.abc import Iterator, Sequence, Set
from typing import Literal

from hoopwright.checks.variant import Variant
from hoopwright.farm.condition import FILM, PartState, State, Where
from hoopwright.papers.scene import Hatch, Label, Polygon, Shape, Style, rectangle
from hoopwright.papers.subject import Subject
from hoopwright.quantity.remembered import Remembered
from hoopwright.survey import Survey
from hoopwright.takeoff.condition import lost_share, numbered, told_stretches
from hoopwright.takeoff.need import Place
from hoopwright.takeoff.places import ENDS, SIDES, place_of, stretches_by_mark

Strip = Literal["first_side", "plan", "second_side"]
Stretches = tuple[tuple[float, float, State], ...]
Row = tuple[str, Stretches]

BAND_M, APART_M, EDGE_M = 0.22, 0.06, 0.08
BANDS: dict[State, tuple[Style, Literal[1, -1]]] = {"keep": ("kept", 1), "repair": ("repaired", -1)}
SURFACES: dict[Where, str] = {
    "first_side": "side0",
    "second_side": "side1",
    "roof": "roof",
    "front_end": "end0",
    "back_end": "end1",
}
MARKS: dict[Where, str] = {
    "first_side": "side/0/hip",
    "second_side": "side/1/hip",
    "roof": "roof",
    "front_end": "end/0",
    "back_end": "end/1",
}


def condition_shapes(
    subject: Subject, strip: Strip, low_m: float, high_m: float
) -> Iterator[Shape]:
    """Yield the bands of one strip; none where all is bought new.

    Args:
        subject: What is drawn.
        strip: Elevation of a side, or the plan.
        low_m: Height on the paper above which the bands lie, m.
        high_m: Height below which they lie, m.
    """
    if not subject.tunnel.condition:
        return
    length_m = subject.survey.length_m
    part: Where = "roof" if strip == "plan" else SIDES[strip == "second_side"]
    rows = family_rows(subject, Place(part, 0.0, length_m))
    yield from _along(rows, MARKS[part], (low_m, high_m))
    if rows:
        top_m = high_m if strip != "plan" else high_m - _depth(rows, (low_m, high_m))
        at = (length_m / 2, top_m)
        yield Label(MARKS[part], "label", at, _names(rows), length_m)
    for end, at_m in zip(ENDS, (0.0, length_m), strict=True) if strip == "plan" else ():
        found = family_rows(subject, Place(end, at_m, at_m))
        yield from _at_end(found, MARKS[end], at_m, (low_m, high_m))


def family_rows(subject: Subject, place: Place) -> tuple[Row, ...]:
    """Return each family of which something stays at a place, with its stretches and states.

    Args:
        subject: What is drawn.
        place: One part of the tunnel over its whole length, or one end.
    """
    staying: Set[str] = _staying(subject.chosen, subject.survey).get(place.part, frozenset())
    rows = []
    for family in dict.fromkeys(line.family for line in subject.tunnel.condition):
        stretches: Stretches = ()
        if family == FILM:
            stretches = _sheets(subject, place)
        elif family in staying:
            lines = numbered(subject.tunnel.condition, family)
            stretches = _told(lines, place, subject.survey.bows_m)
        if stretches:
            rows.append((family, stretches))
    return tuple(rows)


def _find_staying(chosen: Variant, survey: Survey) -> dict[Where, set[str]]:
    """Return the families of parts of which something stays, by part of the tunnel."""
    groups = {line.key: line.group for line in chosen.order.reused}
    stretches = stretches_by_mark(chosen.cover)
    found: dict[Where, set[str]] = {}
    for need in chosen.needs:
        if need.kept > 0:
            part = place_of(need, survey, stretches).part
            found.setdefault(part, set()).add(groups[need.part])
    return found


_staying = Remembered(_find_staying, limit=2)


def _sheets(subject: Subject, place: Place) -> Stretches:
    """Return where kept sheets lie at a place; layers lie on one another."""
    found = {
        _stretch(place, area.from_m, area.to_m, sheet.state): None
        for sheet in subject.chosen.sheets.kept
        for area in sheet.piece.areas
        if area.surface == SURFACES[place.part]
    }
    return tuple(found)


def _told(
    lines: Sequence[tuple[int, PartState]], place: Place, bows_m: Sequence[float]
) -> Stretches:
    return tuple(
        (one.from_m, one.to_m, one.line.state)
        for one in told_stretches(place, lines, bows_m)
        if lost_share(one.line) < 1.0
    )


def _stretch(place: Place, from_m: float, to_m: float, state: State) -> tuple[float, float, State]:
    """Return a stretch of film; what lies on an end wall lies at its bow."""
    if place.part in ENDS:
        return place.from_m, place.to_m, state
    return from_m, to_m, state


def _along(rows: Sequence[Row], mark: str, room_m: tuple[float, float]) -> Iterator[Shape]:
    """Yield one band below the other."""
    high_m = room_m[1] - EDGE_M
    step_m = (_depth(rows, room_m) - EDGE_M) / max(1, len(rows))
    band_m = step_m * BAND_M / (BAND_M + APART_M)
    for number, (_, stretches) in enumerate(rows):
        top_m = high_m - number * step_m
        for from_m, to_m, state in stretches:
            yield from _band(mark, (from_m, top_m - band_m, to_m, top_m), state)


def _depth(rows: Sequence[Row], room_m: tuple[float, float]) -> float:
    """Return how far down from the top of their room the bands reach, m; many are drawn thinner."""
    wanted_m = EDGE_M + len(rows) * (BAND_M + APART_M)
    return min(wanted_m, room_m[1] - room_m[0] - EDGE_M)


def _at_end(
    rows: Sequence[Row], mark: str, at_m: float, room_m: tuple[float, float]
) -> Iterator[Shape]:
    """Yield one upright band after the other, from the end bow inwards."""
    inwards = 1 if mark == MARKS["front_end"] else -1
    for number, (_, stretches) in enumerate(rows):
        near_m = at_m + inwards * (EDGE_M + number * (BAND_M + APART_M))
        left_m, right_m = sorted((near_m, near_m + inwards * BAND_M))
        for *_, state in stretches:
            yield from _band(mark, (left_m, -room_m[1], right_m, -room_m[0]), state)


def _band(mark: str, box: tuple[float, float, float, float], state: State) -> Iterator[Shape]:
    style, slant = BANDS[state]
    yield Polygon(mark, style, rectangle(*box))
    yield Hatch(mark, style, box, slant)


def _names(rows: Sequence[Row]) -> str:
    """Return the families from the top band down, each with what was said of it."""
    told = []
    for family, stretches in rows:
        states = {state for *_, state in stretches}
        word = (
            "repaired" if states == {"repair"} else "kept, repaired" if len(states) > 1 else "kept"
        )
        told.append(f"{family} {word}")
    return "From the top: " + " · ".join(told) if len(told) > 1 else told[0]
