"""What was read on each frame, what it comes to, and the heights along the sides."""

from collections.abc import Iterator
from typing import NamedTuple

from hoopwright.cover.cover import CurtainSpan
from hoopwright.farm.farm import Farm, Tunnel
from hoopwright.farm.tape import Tape
from hoopwright.papers.sheet import NOTE, TITLE, Sheet, wide_row
from hoopwright.papers.sheet_figures import Figure, listed_rows
from hoopwright.papers.side_words import place_name
from hoopwright.plan import Plan
from hoopwright.survey import Survey
from hoopwright.survey.girths import WAYS
from hoopwright.survey.taped import GirthReading, GirthSpread, HeightLine, SideLine

TAPE_WIDTHS = (22.0, 22.0, *(13.0 for _ in range(8)))
GOVERNS = (
    "The longest girth and the longest length govern, an outlier too, until they are measured "
    "again. Lengths are over the outside of the tube; heights are from the ground line of the "
    "profile."
)
NONE_READ = "No girth was read; the film is planned by the profile."
NO_LENGTH = "Nothing was read along or across the whole frame."


class _Spread(NamedTuple):
    tunnel: str
    spread: GirthSpread


class _Girth(NamedTuple):
    tunnel: str
    spread: GirthSpread
    reading: GirthReading

    @property
    def told(self) -> str:
        """Return what is said of it."""
        said = ["governs"] if self.reading.bow == self.spread.governing_bow else []
        said += ["outlier, measure again"] if self.reading.outlier else []
        return ", ".join(said)


class _Frame(NamedTuple):
    tunnel: str
    survey: Survey


class _Long(NamedTuple):
    tunnel: str
    tape: Tape


class _Height(NamedTuple):
    tunnel: Tunnel
    side: int
    line: SideLine
    bow: int


class _Gap(NamedTuple):
    tunnel: Tunnel
    span: CurtainSpan


SPREADS: tuple[Figure[_Spread], ...] = (
    Figure("Tunnel", lambda s: s.tunnel),
    Figure("Over the ridge", lambda s: WAYS[s.spread.over]),
    Figure("Bows read", lambda s: len(s.spread.readings), "count"),
    Figure("Longest, governs", lambda s: s.spread.governing_m, "m"),
    Figure("At bow", lambda s: s.spread.governing_bow, "count"),
    Figure("Median", lambda s: s.spread.middle_m, "m"),
    Figure("Longest less shortest", lambda s: s.spread.spread_m, "m_thin"),
    Figure("Deviation", lambda s: s.spread.deviation_m, "m_thin"),
    Figure("By the profile", lambda s: s.spread.computed_m, "m"),
    Figure("Median off the profile", lambda s: s.spread.disagreement_share, "share"),
)
GIRTHS: tuple[Figure[_Girth], ...] = (
    Figure("Tunnel", lambda g: g.tunnel),
    Figure("Over the ridge", lambda g: WAYS[g.spread.over]),
    Figure("Bow", lambda g: g.reading.bow, "count"),
    Figure("Girth", lambda g: g.reading.length_m, "m"),
    Figure("From the median", lambda g: g.reading.from_middle_m, "m_thin"),
    Figure("Told", lambda g: g.told),
)
FRAMES: tuple[Figure[_Frame], ...] = (
    Figure("Tunnel", lambda f: f.tunnel),
    Figure("Longest length", lambda f: f.survey.taped.length_m, "m"),
    Figure("Second side ahead at the back", lambda f: f.survey.taped.skew_m, "m_thin"),
    Figure("Skew costs in length", lambda f: f.survey.taped.skew_cost_m, "m_thin"),
    Figure("Lean costs in length", lambda f: f.survey.taped.lean_cost_m, "m_thin"),
    Figure("A sheet must cover", lambda f: f.survey.sheet_length_m, "m"),
    Figure("Deepest dip", lambda f: f.survey.taped.dip_m, "m_thin"),
    Figure("Dip saves in width there", lambda f: f.survey.taped.dip_cost_m, "m_thin"),
    Figure("Radius of the best circle", lambda f: f.survey.best_radius_m, "m"),
    Figure("Bow off that circle", lambda f: f.survey.misfit_m, "m_thin"),
)
LONG: tuple[Figure[_Long], ...] = (
    Figure("Tunnel", lambda r: r.tunnel),
    Figure("Along the hip, first side", lambda r: r.tape.hip_lengths_m[0], "m"),
    Figure("Along the hip, second side", lambda r: r.tape.hip_lengths_m[1], "m"),
    Figure("Along the baseboard, first side", lambda r: r.tape.base_lengths_m[0], "m"),
    Figure("Along the baseboard, second side", lambda r: r.tape.base_lengths_m[1], "m"),
    Figure("Diagonal, first side's front", lambda r: r.tape.diagonals_m[0], "m"),
    Figure("Diagonal, second side's front", lambda r: r.tape.diagonals_m[1], "m"),
    Figure("Front end bow leans out", lambda r: r.tape.leans_m[0], "m_thin"),
    Figure("Back end bow leans out", lambda r: r.tape.leans_m[1], "m_thin"),
)
HEIGHTS: tuple[Figure[_Height], ...] = (
    Figure("Tunnel", lambda h: h.tunnel.name),
    Figure("Side", lambda h: h.tunnel.sides[h.side].name),
    Figure("Bow", lambda h: h.bow + 1, "count"),
    Figure("Hip", lambda h: h.line.hip.heights_m[h.bow], "m"),
    Figure("Hip is", lambda h: _known(h.line.hip, h.bow)),
    Figure("Baseboard top", lambda h: h.line.baseboard.heights_m[h.bow], "m"),
    Figure("Baseboard is", lambda h: _known(h.line.baseboard, h.bow)),
    Figure("Ground", lambda h: h.line.ground.heights_m[h.bow], "m"),
    Figure("Ground is", lambda h: _known(h.line.ground, h.bow)),
)
GAPS: tuple[Figure[_Gap], ...] = (
    Figure("Tunnel", lambda g: g.tunnel.name),
    Figure("Curtain", lambda g: place_name(g.tunnel, g.span.mark)),
    Figure("Bar to ground, at most", lambda g: g.span.gap_m, "m"),
    Figure("Bar to baseboard, at most", lambda g: g.span.board_gap_m, "m"),
)


def tape_sheet(farm: Farm, plan: Plan) -> Sheet:
    """Return what was read on each frame and what it comes to.

    Args:
        farm: The farm.
        plan: Its plan.
    """
    last, units = len(TAPE_WIDTHS), farm.units
    frames = [_Frame(planned.name, planned.survey) for planned in plan.tunnels]
    spreads = [_Spread(f.tunnel, spread) for f in frames for spread in _spreads(f.survey)]
    girths = [_Girth(*one, reading) for one in spreads for reading in one.spread.readings]
    pairs = list(zip(farm.tunnels, plan.tunnels, strict=True))
    longs = [
        _Long(tunnel.name, tunnel.frame.tape)
        for tunnel in farm.tunnels
        if any(value is not None for value in _whole(tunnel.frame.tape))
    ]
    heights = [h for tunnel, planned in pairs for h in _heights(tunnel, planned.survey)]
    gaps = [_Gap(tunnel, span) for tunnel, p in pairs for span in p.chosen.cover.curtains]
    rows = [
        wide_row("Readings of the frames as they stand", TITLE, last),
        wide_row(GOVERNS, NOTE, last),
        *listed_rows("What the girths come to", SPREADS, spreads, units, last, NONE_READ),
        *listed_rows("Girths read", GIRTHS, girths, units, last, NONE_READ),
        *listed_rows("Lengths, diagonals and leans read", LONG, longs, units, last, NO_LENGTH),
        *listed_rows("Length, skew, lean and dip", FRAMES, frames, units, last, ""),
        *listed_rows(
            "Heights along the sides", HEIGHTS, heights, units, last, "No height was read."
        ),
        *listed_rows("Under shut curtains", GAPS, gaps, units, last, "No side opens."),
    ]
    return Sheet(name="Readings", widths=TAPE_WIDTHS, rows=tuple(rows))


def _whole(tape: Tape) -> Iterator[float | None]:
    """Yield what was read along and across the whole frame."""
    for pair in (tape.hip_lengths_m, tape.base_lengths_m, tape.diagonals_m, tape.leans_m):
        yield from pair


def _spreads(survey: Survey) -> Iterator[GirthSpread]:
    for spread in (survey.taped.hips, survey.taped.baseboards):
        if spread is not None:
            yield spread


def _heights(tunnel: Tunnel, survey: Survey) -> Iterator[_Height]:
    """Yield the bows of each side along which a height was read."""
    for side, line in enumerate(survey.taped.lines):
        if any(any(one.read) for one in (line.hip, line.baseboard, line.ground)):
            for bow in range(len(survey.bows_m)):
                yield _Height(tunnel, side, line, bow)


def _known(line: HeightLine, bow: int) -> str:
    """Return how the height at a bow is known."""
    if line.read[bow]:
        return "read"
    if not any(line.read):
        return "as entered"
    between = any(line.read[:bow]) and any(line.read[bow:])
    return "interpolated" if between else "as at the nearest read"
