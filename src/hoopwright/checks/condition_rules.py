"""Rules about what of the old skin stays: whether it can stay where other parts are renewed."""

from collections.abc import Iterable, Iterator
from itertools import pairwise

from hoopwright.checks.case import Case
from hoopwright.farm import Tunnel
from hoopwright.farm.change_condition import remove_state
from hoopwright.farm.condition import FILM, PartState, State, Where
from hoopwright.quantity.finding import Finding
from hoopwright.quantity.working import PRACTICE, phrase
from hoopwright.takeoff.condition import lost_share, numbered, told_stretches, what_is_said
from hoopwright.takeoff.kept_film import KeptSheet, sheet_places
from hoopwright.takeoff.need import Place
from hoopwright.takeoff.places import ENDS, SIDES, place_of, stretches_by_mark

TOUCH_M = 1e-6
CHANNEL = "channel"
BOARDS = ("hip_board_", "baseboard_")
MARKS: dict[Where, str] = {
    "everywhere": "roof",
    "roof": "roof",
    "first_side": "side/0/hip",
    "second_side": "side/1/hip",
    "front_end": "end/0",
    "back_end": "end/1",
}


def film_in_part(case: Case) -> Iterator[Finding]:
    """A sheet of which the lines keep a part only."""
    for one in case.chosen.sheets.in_part:
        yield case.finding(
            "condition.film_in_part",
            "caution",
            one.piece.mark,
            phrase(
                "{sheet}: the lines of the condition keep {share} of it.",
                sheet=one.piece.name,
                share=(one.share, "share"),
            ),
            phrase("A sheet cannot stay in part, so the whole of it is cut new and paid for."),
            phrase("Keep all of it, or replace all of it."),
            _with_lines(case, one.places, FILM, "replace"),
            PRACTICE,
        )


def line_about_nothing(case: Case) -> Iterator[Finding]:
    """A line that keeps or repairs what this tunnel does not have there."""
    condition = case.tunnel.condition
    for index, line in enumerate(condition):
        if lost_share(line) >= 1.0 or any(
            what_is_said(place, ((index, line),), case.survey.bows_m)
            for place in _places_of(case, line.family)
        ):
            continue
        yield case.finding(
            "condition.nothing_there",
            "note",
            MARKS[line.where],
            phrase(
                "Line {number} of the condition, {family}: this tunnel takes no such part there.",
                number=index + 1,
                family=line.family,
            ),
            phrase("The line keeps nothing; perhaps another place or family was meant."),
            phrase("Take the line away, or say where the parts are."),
            remove_state(case.tunnel, index),
        )


def channel_on_new_board(case: Case) -> Iterator[Finding]:
    """Channel that is to stay on boards that are replaced."""
    channel = _group_of(case, (CHANNEL,))
    boards = _group_of(case, BOARDS)
    if channel is None or boards is None or channel == boards:
        return
    for n, side in enumerate(SIDES):
        place = Place(side, case.survey.bows_m[0], case.survey.bows_m[-1])
        staying = _staying(case, place, channel)
        clash = [s for old in staying for s in _renewed(case, old, boards)]
        if not clash or not _has(case, side, BOARDS) or not _has(case, side, (CHANNEL,)):
            continue
        yield case.finding(
            "condition.channel_on_new_board",
            "caution",
            f"side/{n}/hip",
            phrase(
                "{side}: channel is kept over {length} where the boards under it are replaced.",
                side=case.tunnel.sides[n].name,
                length=(sum(s.to_m - s.from_m for s in clash), "m"),
            ),
            phrase(
                "Channel has to come off an old board, is bent and loses its hold; screws do not "
                "go back into their holes."
            ),
            phrase("Keep the boards there too, or replace the channel with them."),
            _with_lines(case, clash, channel, "replace"),
            PRACTICE,
        )


def film_off_new_channel(case: Case) -> Iterator[Finding]:
    """Film that is to stay while the channel that grips it is replaced."""
    channel = _group_of(case, (CHANNEL,))
    if channel is None:
        return
    for sheet in case.chosen.sheets.kept:
        clash = [
            s
            for place in _grips(case, sheet)
            if _has(case, place.part, (CHANNEL,))
            for s in _renewed(case, place, channel)
        ]
        if not clash:
            continue
        yield case.finding(
            "condition.film_off_channel",
            "caution",
            sheet.piece.mark,
            phrase(
                "{sheet} is kept, but channel that grips it is replaced.", sheet=sheet.piece.name
            ),
            phrase("The film must come off there, and old film tears when it is gripped again."),
            phrase("Keep the channel there too, or replace the sheet."),
            _with_lines(case, clash, channel, "keep"),
            PRACTICE,
        )


def _places_of(case: Case, family: str) -> Iterator[Place]:
    """Yield the places of all sheets, or of all needs of a group."""
    if family == FILM:
        allowances = case.tunnel.skin.allowances
        for piece in case.chosen.cover.pieces:
            yield from sheet_places(piece, case.survey, allowances)
        return
    groups = _groups(case)
    stretches = stretches_by_mark(case.chosen.cover)
    for need in case.chosen.needs:
        if groups.get(need.part) == family:
            yield place_of(need, case.survey, stretches)


def _groups(case: Case) -> dict[str, str]:
    return {part.key: part.group for part in case.catalogue.parts}


def _group_of(case: Case, keys: tuple[str, ...]) -> str | None:
    """Return the group of the first part that is needed and whose key starts so."""
    groups = _groups(case)
    needed = (n.part for n in case.chosen.needs if n.part.startswith(keys))
    return next((groups[key] for key in needed if key in groups), None)


def _has(case: Case, part: Where, keys: tuple[str, ...]) -> bool:
    """Return whether a part of the tunnel takes a part whose key starts so."""
    stretches = stretches_by_mark(case.chosen.cover)
    return any(
        place_of(need, case.survey, stretches).part == part
        for need in case.chosen.needs
        if need.part.startswith(keys)
    )


def _staying(case: Case, place: Place, family: str) -> list[Place]:
    """Return the stretches of a place where lines keep or repair a family."""
    lines = numbered(case.tunnel.condition, family)
    return [
        Place(place.part, one.from_m, one.to_m)
        for one in told_stretches(place, lines, case.survey.bows_m)
        if lost_share(one.line) < 1.0
    ]


def _renewed(case: Case, place: Place, family: str) -> list[Place]:
    """Return the stretches of a place where nothing of a family stays."""
    kept = _staying(case, place, family)
    if place.from_m >= place.to_m:
        return [] if kept else [place]
    edges = [place.from_m, *(x for one in kept for x in (one.from_m, one.to_m)), place.to_m]
    gaps = list(pairwise(edges))[::2]
    return [Place(place.part, a, b) for a, b in gaps if b - a > TOUCH_M]


def _grips(case: Case, sheet: KeptSheet) -> Iterator[Place]:
    """Yield where a sheet is gripped; the edges of a roof lie on both hips and on the end bows."""
    ends_m = (case.survey.bows_m[0], case.survey.bows_m[-1])
    for place in sheet_places(sheet.piece, case.survey, case.tunnel.skin.allowances):
        if place.part != "roof":
            yield place
            continue
        for side in SIDES:
            yield Place(side, place.from_m, place.to_m)
        for end, at_m in zip(ENDS, ends_m, strict=True):
            if place.from_m - TOUCH_M <= at_m <= place.to_m + TOUCH_M:
                yield Place(end, at_m, at_m)


def _with_lines(case: Case, places: Iterable[Place], family: str, state: State) -> Tunnel:
    """Return the tunnel with a line about a family at each place, from bow to bow."""
    lines = dict.fromkeys(_line(case, place, family, state) for place in places)
    return case.tunnel.but(condition=(*case.tunnel.condition, *lines))


def _line(case: Case, place: Place, family: str, state: State) -> PartState:
    """Return a line about a place; a bow at an end of the tunnel is left open."""
    bows_m = case.survey.bows_m
    plain = PartState(family=family, where=place.part, state=state)
    if place.part in ENDS:
        return plain
    before = [n for n, at_m in enumerate(bows_m, 1) if at_m <= place.from_m + TOUCH_M]
    behind = [n for n, at_m in enumerate(bows_m, 1) if at_m >= place.to_m - TOUCH_M]
    first, last = max(before, default=1), min(behind, default=len(bows_m))
    return plain.but(
        from_bow=None if first == 1 else first, to_bow=None if last == len(bows_m) else last
    )
