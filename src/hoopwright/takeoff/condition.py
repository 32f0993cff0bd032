"""What of the old parts stays, and what of each need is bought new.

A line of the condition speaks of one family of parts, of one part of the tunnel and of a stretch
from bow to bow. Of a run between two bows the share of its length counts; what sits at one bow
belongs to every stretch that has that bow. Where lines overlap the later one holds, and where no
line speaks all is bought new.

Pieces are bought whole. Where a line covers part of a run, the pieces beside it are rounded up run
by run, as nobody knows which of them stand there. The share to replace of what is repaired is
rounded up over all runs together: a quarter of four cranks is one crank. Sticks of a roll bar and
a guide pipe are never shared between curtains, so they are whole as well.
"""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from itertools import pairwise

from hoopwright.cover.cover import Cover
from hoopwright.farm.catalogue import Catalogue, Part
from hoopwright.farm.condition import FILM, PartState, State
from hoopwright.farm.drive import GearedCrank
from hoopwright.quantity.working import ENTERED, PRACTICE, Term, Working
from hoopwright.survey.survey import Survey
from hoopwright.takeoff.need import Need, Place
from hoopwright.takeoff.places import Stretch, place_of, stretches_by_mark
from hoopwright.takeoff.site import parts_by_key

EXACT = 1e-9
RULE = "Share of its length that a line of the condition keeps; the later line holds"
WHOLE_RULE = f"{RULE}; what is bought is whole, rounded up, repairs over all places together"
SOURCE = f"{ENTERED}; whole pieces: {PRACTICE}"


@dataclass(frozen=True, slots=True)
class Said:
    """What one line says of a stretch.

    Attributes:
        number: Number of the line as entered, from 1.
        line: The line.
        share: Share of the stretch for which it holds.
    """

    number: int
    line: PartState
    share: float

    @property
    def lost(self) -> float:
        """Share of the stretch that is bought new by this line."""
        return self.share * lost_share(self.line)


def lost_share(line: PartState) -> float:
    """Return the share that is bought new of what a line speaks of.

    Source:
        The user's entry.
    """
    if line.state == "keep":
        return 0.0
    return line.replace_share if line.state == "repair" else 1.0


@dataclass(frozen=True, slots=True)
class Told:
    """A stretch and the one line that holds there.

    Attributes:
        from_m: Start along the tunnel, m.
        to_m: End of it, m; the same for what sits at one bow.
        number: Number of the line as entered, from 1.
        line: The line.
    """

    from_m: float
    to_m: float
    number: int
    line: PartState


def told_stretches(
    place: Place, lines: Sequence[tuple[int, PartState]], bows_m: Sequence[float]
) -> tuple[Told, ...]:
    """Return which line holds where along a place, from the front; the later line holds.

    Args:
        place: Part of the tunnel and stretch along it.
        lines: Lines of one family with their numbers, in the order as entered.
        bows_m: Where the bows stand, m.
    """
    about = [
        (number, line, *reach(line, bows_m))
        for number, line in lines
        if line.where in ("everywhere", place.part)
    ]
    found: list[Told] = []
    for from_m, to_m in _between(
        place, (r for *_, low_m, high_m in about for r in (low_m, high_m))
    ):
        middle_m = (from_m + to_m) / 2
        holds = [(n, line) for n, line, a, b in about if a <= middle_m <= b]
        if not holds:
            continue
        number, line = holds[-1]
        if found and found[-1].number == number and found[-1].to_m == from_m:
            from_m = found.pop().from_m
        found.append(Told(from_m, to_m, number, line))
    return tuple(found)


def what_is_said(
    place: Place, lines: Sequence[tuple[int, PartState]], bows_m: Sequence[float]
) -> tuple[Said, ...]:
    """Return which line holds for which share of a place, in the order of the lines.

    Args:
        place: Part of the tunnel and stretch along it.
        lines: Lines of one family with their numbers, in the order as entered.
        bows_m: Where the bows stand, m.
    """
    told = told_stretches(place, lines, bows_m)
    length_m = place.to_m - place.from_m
    if length_m <= 0:
        return tuple(Said(one.number, one.line, 1.0) for one in told)
    held_m: dict[int, float] = {}
    for one in told:
        held_m[one.number] = held_m.get(one.number, 0.0) + one.to_m - one.from_m
    return tuple(
        Said(number, line, held_m[number] / length_m) for number, line in lines if number in held_m
    )


def reach(line: PartState, bows_m: Sequence[float]) -> Stretch:
    """Return the stretch that a line speaks of; without a bow it runs on past the end bow."""
    low_m = -math.inf if line.from_bow is None else bows_m[line.from_bow - 1]
    high_m = math.inf if line.to_bow is None else bows_m[line.to_bow - 1]
    return low_m, high_m


def numbered(condition: Iterable[PartState], family: str) -> tuple[tuple[int, PartState], ...]:
    """Return the lines about one family with their numbers, from 1, in the order as entered."""
    return tuple((n, line) for n, line in enumerate(condition, 1) if line.family == family)


def keep_parts(
    needs: tuple[Need, ...],
    condition: tuple[PartState, ...],
    survey: Survey,
    cover: Cover,
    catalogue: Catalogue,
) -> tuple[Need, ...]:
    """Return the needs, each with what stays of it.

    Args:
        needs: What each place needs, as counted.
        condition: What was found, line by line.
        survey: The frame as built.
        cover: The skin as laid, for where curtains and fixed film are.
        catalogue: What can be bought. Of a part it lacks nothing stays, as it has no family.

    Returns:
        The same needs in the same order; one of which nothing stays is left as it was.

    Source:
        Shares by length along the tunnel: derived here. Whole pieces, never too few: common
        practice, no published source.
    """
    if all(line.family == FILM for line in condition):
        return needs
    site = _Found(
        survey,
        stretches_by_mark(cover),
        parts_by_key(catalogue),
        _lone_parts(catalogue),
        {line.family: numbered(condition, line.family) for line in condition},
    )
    return tuple(site.keep(need) for need in needs)


@dataclass(frozen=True, slots=True)
class _Verdict:
    """What the lines about one family come to at one place.

    Attributes:
        gone: Share of the place where all is new.
        repairs: Share that is new because of repairs.
        state: Repair where some line repairs, else keep.
        terms: The lines and what they say.
    """

    gone: float
    repairs: float
    state: State
    terms: tuple[Term, ...]


@dataclass(slots=True)
class _Found:
    """What was found of the parts of one tunnel, while its needs are walked through.

    Attributes:
        survey: The frame as built.
        stretches: Stretch of each mark.
        parts: Parts by key.
        lone: Keys of parts that no two curtains share a stick of.
        families: Lines by family.
        repaired: Pieces of each part that repairs took so far, not rounded.
        verdicts: What the lines come to, by family and place.
    """

    survey: Survey
    stretches: dict[str, Stretch]
    parts: dict[str, Part]
    lone: frozenset[str]
    families: dict[str, tuple[tuple[int, PartState], ...]]
    repaired: dict[tuple[str, float], float] = field(default_factory=dict)
    verdicts: dict[tuple[str, Place], _Verdict] = field(default_factory=dict)

    def keep(self, need: Need) -> Need:
        """Return a need with what stays of it."""
        part = self.parts.get(need.part)
        lines = () if part is None else self.families.get(part.group, ())
        if part is None or not lines:
            return need
        verdict = self._verdict(part.group, place_of(need, self.survey, self.stretches))
        step = self._step(part, need.quantity)
        bought = self._bought(need, verdict, step)
        kept = need.quantity - bought
        if kept <= EXACT:
            return need
        return Need(
            part=need.part,
            quantity=need.quantity,
            where=need.where,
            marks=need.marks,
            working=need.working,
            place=need.place,
            kept=need.quantity if bought <= EXACT else kept,
            state=verdict.state,
            kept_working=_working(part, need.quantity, verdict, step),
        )

    def _verdict(self, family: str, place: Place) -> _Verdict:
        found = self.verdicts.get((family, place))
        if found is None:
            said = what_is_said(place, self.families[family], self.survey.bows_m)
            found = self.verdicts[family, place] = _Verdict(
                gone=max(0.0, 1.0 - sum(s.share for s in said if s.line.state != "replace")),
                repairs=sum(s.lost for s in said if s.line.state == "repair"),
                state="repair" if any(s.line.state == "repair" for s in said) else "keep",
                terms=tuple(term for s in said for term in _said_terms(s)),
            )
        return found

    def _step(self, part: Part, quantity: float) -> float:
        """Return what is bought in one piece, in the part's unit; 0 for a run that is spliced."""
        if part.counted_in == "count":
            return 1.0
        if part.key not in self.lone:
            return 0.0
        sticks = quantity / part.holds
        return part.holds if abs(sticks - round(sticks)) < EXACT else quantity

    def _bought(self, need: Need, verdict: _Verdict, step: float) -> float:
        """Return what is bought of a need: what no line keeps, and its share of the repairs."""
        if step <= 0:
            return min(need.quantity, need.quantity * (verdict.gone + verdict.repairs))
        pieces = need.quantity / step
        whole = _up(pieces * verdict.gone)
        before = self.repaired.get((need.part, step), 0.0)
        after = before + pieces * verdict.repairs
        self.repaired[need.part, step] = after
        return min(need.quantity, step * (whole + _up(after) - _up(before)))


def _between(place: Place, ends_m: Iterable[float]) -> Iterator[Stretch]:
    """Yield the stretches into which the ends of all lines cut a place."""
    if place.to_m <= place.from_m:
        return iter(((place.from_m, place.to_m),))
    inside = {x for x in ends_m if place.from_m < x < place.to_m}
    return pairwise(sorted({place.from_m, place.to_m} | inside))


def _up(pieces: float) -> int:
    return math.ceil(pieces - EXACT)


def _lone_parts(catalogue: Catalogue) -> frozenset[str]:
    """Return the parts whose sticks are cut for one curtain: roll bars and guide pipes."""
    guides = (d.guide_part for d in catalogue.drives if isinstance(d, GearedCrank))
    return frozenset((*(bar.part for bar in catalogue.bars), *guides))


def _working(part: Part, quantity: float, verdict: _Verdict, step: float) -> Working:
    needed = Term("needed", quantity, "m" if part.counted_in == "m" else "count")
    return Working("kept", WHOLE_RULE if step > 0 else RULE, (needed, *verdict.terms), SOURCE)


def _said_terms(said: Said) -> Iterator[Term]:
    yield Term(f"line {said.number}, {said.line.state}", said.share, "share")
    if said.line.state == "repair":
        name = f"line {said.number}, share to replace"
        yield Term(name, said.line.replace_share, "share")
