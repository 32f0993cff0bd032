"""Runs of channel with wire and screws, and the boards they sit on.

Where film is gripped: along the hip boards, along the baseboard under fixed film and under
drop-down curtains, over both end bows, over the bow under a cross seam, down the bows that hold
fixed film, along the seams of end walls and round their doors, vents and fan openings. Under a
curtain that rolls up there is no channel at the baseboard.

On the hip board the roof has a run. The side film has one of its own or shares the roof's. Of a
woven curtain the top slides into a profile, and a drop-down one has no edge there: on such sides
only pockets and strips have film to hold at the hip.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from hoopwright.cover.cover import CurtainSpan, FixedSpan
from hoopwright.cover.end_laid import EndLaid
from hoopwright.farm.catalogue import Catalogue
from hoopwright.farm.frame import SideBoards
from hoopwright.farm.side import Side
from hoopwright.farm.skin import End
from hoopwright.quantity.remembered import Remembered
from hoopwright.quantity.working import DERIVED, Phrase, Term, phrase
from hoopwright.survey.survey import Survey
from hoopwright.takeoff.need import Need, Place
from hoopwright.takeoff.places import SIDES
from hoopwright.takeoff.site import TOUCH_M, Site, count_spaced, need, part_spacing


@dataclass(frozen=True, slots=True)
class Run:
    """One run of channel, or of the profile that holds the top of a woven curtain.

    Attributes:
        length_m: Length, m.
        ground: What it is screwed to, "wood" or "metal".
        where: Where it is, in words.
        mark: Place on the canvas.
        rule: How its length was got, in words.
        inputs: What the length adds up from.
        part: Catalogue key of what is bought by the metre.
        place: Where it sits along the tunnel, when the mark does not tell it.
    """

    length_m: float
    ground: str
    where: Phrase
    mark: str
    rule: str
    inputs: tuple[Term, ...]
    part: str = "channel"
    place: Place | None = None


def count_channel(site: Site) -> Iterator[Need]:
    """Return channel or profile, wire and screws of all runs.

    Source:
        One run of wire in each run of channel holds all layers; screws at the catalogue's spacing
        with one at each end: common practice, no published source.
    """
    catalogue, survey = site.catalogue, site.survey
    for at, (side, boards) in enumerate(zip(site.sides, site.frame.boards, strict=True)):
        if _has_hip_channel(site, at):
            yield from _hip(at, side, boards, site.own(at), survey, catalogue)
    yield from _needs(_curtain_runs(site), catalogue)
    for span in site.cover.fixed:
        side, boards = site.sides[span.side], site.frame.boards[span.side]
        yield from _fixed(span, side, boards, site.own(span.side), survey, catalogue)
    yield from _needs(_end_runs(site), catalogue)
    yield from _needs(_seam_runs(site), catalogue)
    walls = tuple(zip(site.ends, site.cover.ends, strict=True))
    for found in (_wall_seams, _openings):
        for end, wall in walls:
            yield from found(end, wall, catalogue)


def _needs(runs: Iterable[Run], catalogue: Catalogue) -> Iterator[Need]:
    """Yield channel or profile, wire and screws of runs."""
    for run in runs:
        screw = f"channel_screw_{run.ground}"
        spacing_m = part_spacing(catalogue, screw)
        length = Term("run", run.length_m, "m")
        yield need(
            run.part,
            run.length_m,
            run.where,
            run.mark,
            run.rule,
            *run.inputs,
            source=DERIVED,
            place=run.place,
        )
        if run.part == "channel":
            yield need(
                "spring_wire",
                run.length_m,
                run.where,
                run.mark,
                "One run of wire in each run of channel; it holds all layers there",
                length,
                place=run.place,
            )
        yield need(
            screw,
            count_spaced(run.length_m, spacing_m),
            run.where,
            run.mark,
            "Length of the run divided by the spacing, rounded up, and one more for the end",
            length,
            Term("spacing", spacing_m, "m"),
            place=run.place,
        )


def count_boards(site: Site) -> Iterator[Need]:
    """Return hip boards, baseboards and what fastens them.

    Source:
        One fastener on each bow: common practice, no published source.
    """
    for at, (side, boards) in enumerate(zip(site.sides, site.frame.boards, strict=True)):
        places = [("baseboard", boards.baseboard, phrase("{side}: baseboard", side=side.name))]
        if _has_hip_channel(site, at):
            hip = phrase("{side}: hip board", side=side.name)
            places.insert(0, ("hip_board", boards.hip_board, hip))
        for board, material, where in places:
            mark = f"side/{at}/{'hip' if board == 'hip_board' else board}"
            yield need(
                f"{board}_{material}",
                site.survey.length_m,
                where,
                mark,
                "The whole length of the tunnel",
                Term("tunnel length", site.survey.length_m, "m"),
                source=DERIVED,
            )
            yield need(
                "board_bolt" if material == "wood" else "board_bracket",
                len(site.survey.bows_m),
                where,
                mark,
                "One on each bow",
                Term("bows", len(site.survey.bows_m), "count"),
            )


def _has_hip_channel(site: Site, side: int) -> bool:
    """Return whether film is gripped at the hip: not where one sheet runs on to a fixed side."""
    return site.own(side) or site.sides[side].kind != "fixed"


def _hip_needs(
    at: int, side: Side, boards: SideBoards, own: bool, survey: Survey, catalogue: Catalogue
) -> tuple[Need, ...]:
    runs = (
        Run(
            survey.length_m,
            boards.hip_board,
            phrase(text, side=side.name),
            f"side/{at}/hip",
            rule,
            (Term("tunnel length", survey.length_m, "m"),),
        )
        for text, rule in _hip_texts(side, own)
    )
    return tuple(_needs(runs, catalogue))


def _hip_texts(side: Side, own: bool) -> tuple[tuple[str, str], ...]:
    """Return name and rule of each run along the whole hip board of a side."""
    if not own:
        return (("{side}: hip board", "The whole length of the tunnel; one run clamps the sheet"),)
    roof = "{side}: hip board, roof film"
    if side.kind in ("woven", "drop_down"):
        return ((roof, "The whole length of the tunnel, for the edge of the roof film"),)
    if side.top == "shared_channel":
        shared = "The whole length of the tunnel; the side film shares the run of the roof film"
        return (("{side}: hip board, roof and side film", shared),)
    apart = (
        "The whole length of the tunnel; with roof and sides apart there are two runs, so that the "
        "side film can be renewed alone"
    )
    return ((roof, apart), ("{side}: hip board, side film", apart))


def _curtain_runs(site: Site) -> Iterator[Run]:
    """Return what holds the fixed edge of woven and drop-down curtains."""
    for span in site.cover.curtains:
        kind = site.sides[span.side].kind
        run = None
        if kind == "woven":
            run = _profile_run(site, span)
        elif kind == "drop_down":
            run = _foot_run(site, span)
        if run is not None and run.length_m > TOUCH_M:
            yield run


def _profile_run(site: Site, span: CurtainSpan) -> Run:
    from_m, to_m = max(span.from_m, site.end_m(0)), min(span.to_m, site.end_m(1))
    return Run(
        to_m - from_m,
        site.frame.boards[span.side].hip_board,
        _curtain_name(site, span, ", top profile"),
        span.mark,
        "As long as the curtain with its laps, no longer than the hip board; the bead of the "
        "curtain slides into it",
        (Term("curtain from", from_m, "m"), Term("curtain to", to_m, "m")),
        "top_profile",
    )


def _foot_run(site: Site, span: CurtainSpan) -> Run:
    return Run(
        span.open_to_m - span.open_from_m,
        site.frame.boards[span.side].baseboard,
        _curtain_name(site, span, ", baseboard"),
        span.mark,
        "Over the opening, for the foot of the drop-down curtain; where it laps over a pocket or a "
        "strip it shares the run of that film",
        (Term("opening from", span.open_from_m, "m"), Term("opening to", span.open_to_m, "m")),
    )


def _fixed_needs(
    span: FixedSpan,
    side: Side,
    boards: SideBoards,
    own: bool,
    survey: Survey,
    catalogue: Catalogue,
) -> tuple[Need, ...]:
    return tuple(_needs(_fixed_runs(span, side, boards, own, survey), catalogue))


def _fixed_runs(
    span: FixedSpan, side: Side, boards: SideBoards, own: bool, survey: Survey
) -> Iterator[Run]:
    where = _span_name(side.name, span)
    length_m = span.to_m - span.from_m
    bays = Term("between the bows that hold it", length_m, "m")
    yield Run(
        length_m,
        boards.baseboard,
        Phrase(where.template + ", baseboard", where.terms),
        span.mark,
        "From the first to the last bow that holds the fixed film",
        (bays,),
    )
    if rule := _hip_rule(side, own, span):
        hip = Phrase(where.template + ", hip", where.terms)
        yield Run(length_m, boards.hip_board, hip, span.mark, rule, (bays,))
    yield from _uprights(survey, own, span, where)


def _hip_rule(side: Side, own: bool, span: FixedSpan) -> str:
    """Return why fixed film has a run of its own at the hip, or nothing where it has none."""
    if not own:
        behind = "Behind the one sheet, from the first to the last bow that holds the strip"
        return behind if "/strip/" in span.mark else ""
    if side.kind in ("woven", "drop_down") and side.top == "own_channel":
        return "From the first to the last bow that holds the fixed film, apart from the roof film"
    return ""


def _uprights(survey: Survey, own: bool, span: FixedSpan, where: Phrase) -> Iterator[Run]:
    """Return the runs down the bows that hold fixed film; one sheet has none of its own there."""
    ends = (survey.bows_m[0], survey.bows_m[-1])
    spots = [
        at_m
        for at_m in (span.from_m, span.to_m)
        if own or min(abs(at_m - end_m) for end_m in ends) > TOUCH_M
    ]
    if not spots:
        return
    side_m = survey.side_m[span.side]
    for at_m in spots:
        yield Run(
            side_m,
            "metal",
            Phrase(where.template + ", upright", where.terms),
            span.mark,
            "Along the bow from hip board to baseboard; with one sheet the end bow's run goes down "
            "here",
            (Term("hip board to baseboard along the bow", side_m, "m"),),
            place=Place(SIDES[span.side], at_m, at_m),
        )


def _end_runs(site: Site) -> Iterator[Run]:
    """Return the runs over both end bows; the end wall's film shares them."""
    for at, end in enumerate(site.ends):
        terms = [Term("roof from hip to hip", site.survey.roof_girth_m, "m")]
        for n, side in enumerate(site.sides):
            reached = site.fixed_at(n, site.end_m(at)) is not None
            walled = end.film is not None
            if (walled and not reached) or (reached and not site.own(n)):
                terms.append(Term(f"{side.name} down to the baseboard", site.survey.side_m[n], "m"))
        yield Run(
            sum(float(t.value) for t in terms),
            "metal",
            phrase("{end}: end bow", end=end.name),
            f"end/{at}",
            "Over the bow from hip to hip, and down to the baseboard where one sheet or an end "
            "wall is held there; the end wall's film shares this run, its foot is buried or "
            "battened and not counted",
            tuple(terms),
        )


def _seam_runs(site: Site) -> Iterator[Run]:
    for at_m in site.skin.cross_seams_m:
        yield Run(
            site.survey.roof_girth_m,
            "metal",
            phrase("cross seam at {at}", at=(at_m, "m")),
            "roof",
            "Over the bow from hip to hip; one run holds both roof sheets",
            (Term("roof from hip to hip", site.survey.roof_girth_m, "m"),),
            place=Place("roof", at_m, at_m),
        )


def _opening_needs(end: End, wall: EndLaid, catalogue: Catalogue) -> tuple[Need, ...]:
    return tuple(_needs(_opening_runs(end, wall), catalogue))


def _opening_runs(end: End, wall: EndLaid) -> Iterator[Run]:
    """Return the runs round doors, vents and fan openings in film."""
    for opening in wall.openings if wall.closed == "film" else ():
        width_m, height_m = opening.width_m, opening.height_m
        door = opening.use == "door"
        yield Run(
            2 * height_m + (1 if door else 2) * width_m,
            "wood",
            phrase("{end}: " + f"{opening.use} frame", end=end.name),
            opening.mark,
            "Twice the height and once the width of the door"
            if door
            else "Twice the height and twice the width of the opening",
            (
                Term(f"{opening.use} height", height_m, "m"),
                Term(f"{opening.use} width", width_m, "m"),
            ),
        )


def _wall_seam_needs(end: End, wall: EndLaid, catalogue: Catalogue) -> tuple[Need, ...]:
    return tuple(_needs(_wall_seam_runs(end, wall), catalogue))


def _wall_seam_runs(end: End, wall: EndLaid) -> Iterator[Run]:
    """Return the runs at the seams of end walls."""
    for seam in wall.seams:
        if seam.free_m > TOUCH_M:
            yield Run(
                seam.free_m,
                "wood",
                phrase("{end}: seam at {at}", end=end.name, at=(seam.at_m, "m")),
                seam.mark,
                "Along the rail from side to side, less the openings it meets; one run holds "
                "both sheets",
                (
                    Term("end wall there", seam.right_m - seam.left_m, "m"),
                    Term("free of openings", seam.free_m, "m"),
                ),
            )


def _curtain_name(site: Site, span: CurtainSpan, text: str) -> Phrase:
    side = site.sides[span.side].name
    return phrase("{side}: curtain {number}" + text, side=side, number=span.index + 1)


def _span_name(side: str, span: FixedSpan) -> Phrase:
    _, _, kind, *rest = span.mark.split("/")
    if kind == "pocket":
        return phrase("{side}: {end} pocket", side=side, end=rest[0])
    if kind == "strip":
        return phrase("{side}: strip behind split {number}", side=side, number=int(rest[0]) + 1)
    return phrase("{side}: fixed film", side=side)


_hip = Remembered(_hip_needs)
_fixed = Remembered(_fixed_needs)
_wall_seams = Remembered(_wall_seam_needs)
_openings = Remembered(_opening_needs)
