"""Fill the cells with air: which closed spaces there are, how much air they hold, what feeds them.

A roof of two layers is one cell, cut at each cross seam because both layers are gripped there. A
curtain of two layers is a cell of its own when its side is to be inflated; in one sheet too, as
the hip board clamps the sheet between roof and curtain. Woven and drop-down curtains, and those of
a film of their own, have one layer and hold no air. An end wall of two layers is a cell when it is
to be inflated. Pockets and strips are not inflated. The blower blows into the first roof cell;
jumpers carry the air on, those placed by hand or, when none are entered, those worked out.
"""

import math
from dataclasses import replace

from hoopwright.cover.cover import Cover
from hoopwright.farm import Air, Bench, End, Side, Skin
from hoopwright.inflation.feeding import find_unfed
from hoopwright.inflation.inflation import Cell, Inflation, Jumper, Seal
from hoopwright.inflation.jumpers import Joined, place_jumpers
from hoopwright.inflation.placed import hang_jumpers
from hoopwright.inflation.seals import EXACT, seal_edges, seal_foot
from hoopwright.inflation.spaces import curtain_cell, end_cells, roof_cells
from hoopwright.quantity.working import DERIVED, ENTERED, LaterWorkings, Term, Working
from hoopwright.survey.survey import Survey


def fill_cells(
    survey: Survey,
    skin: Skin,
    sides: tuple[Side, Side],
    ends: tuple[End, End],
    air: Air,
    cover: Cover,
    bench: Bench,
    old_places: frozenset[str] = frozenset(),
) -> Inflation:
    """Return the seals, cells and jumpers of one tunnel.

    Args:
        survey: The frame as built.
        skin: The skin as chosen.
        sides: Both sides as chosen.
        ends: Both end walls as chosen.
        air: Air between two layers as chosen.
        cover: The skin laid one way.
        bench: How seals are made.
        old_places: Marks of the curtains and end walls whose film stays with its seals.
    """
    spans = [
        s for s in cover.curtains if s.layers == 2 and air.inflated_sides[s.side] and s.length_m > 0
    ]
    joined = Joined(
        roof=roof_cells(survey, skin, air) if skin.roof.count == 2 else (),
        curtains=tuple((s.side, curtain_cell(s, sides[s.side], skin, air)) for s in spans),
        ends=tuple(end_cells(survey, skin, ends, cover.ends, air)),
    )
    seals = (
        *(e for s in spans for e in seal_edges(s, cover.covering, air.seals_per_edge, bench)),
        *(
            foot
            for n, _ in joined.ends
            for foot in seal_foot(cover.ends[n], air.seals_per_edge, bench)
        ),
    )
    marked = tuple(_stays(s) if s.mark in old_places else s for s in seals)
    return _inflation(joined, marked, air, bench)


def _stays(seal: Seal) -> Seal:
    """Return a seal that is there already and takes no time at the bench."""
    told = seal.workings
    return replace(
        seal,
        strokes=0,
        minutes=0.0,
        there=True,
        workings=LaterWorkings(
            lambda: (
                *(w for w in told if w.figure not in ("strokes", "minutes")),
                Working("strokes", "The sheet stays with its seals.", (), ENTERED),
                Working("minutes", "The sheet stays with its seals.", (), ENTERED),
            )
        ),
    )


def _inflation(joined: Joined, seals: tuple[Seal, ...], air: Air, bench: Bench) -> Inflation:
    cells = joined.cells
    jumpers, idle = _jumpers(joined, air)
    seal_m = sum((seal.total_m for seal in seals if not seal.there), 0.0)
    return Inflation(
        seals=seals,
        cells=cells,
        jumpers=jumpers,
        seal_m=seal_m,
        strokes=sum(seal.strokes for seal in seals),
        elements=math.ceil(seal_m / bench.element_m - EXACT),
        bench_min=sum((seal.minutes for seal in seals), 0.0),
        volume_m3=sum((cell.volume_m3 for cell in cells), 0.0),
        blower=air.blower if cells else None,
        no_feed=find_unfed(cells, jumpers),
        idle=idle,
        workings=LaterWorkings(lambda: _totals(seals, cells, seal_m, bench)),
    )


def _jumpers(joined: Joined, air: Air) -> tuple[tuple[Jumper, ...], tuple[int, ...]]:
    if air.jumpers is None:
        return place_jumpers(joined, air.long_cell_m), ()
    return hang_jumpers(joined, air.jumpers)


def _totals(
    seals: tuple[Seal, ...], cells: tuple[Cell, ...], seal_m: float, bench: Bench
) -> tuple[Working, ...]:
    edges = Term("edges to seal", sum(not seal.there for seal in seals), "count")
    set_up = Term("set-up for one edge", bench.set_up_min, "min")
    if bench.sealer == "running":
        pace, paced = Term("sealing rate", bench.seal_rate_m_min, "m/min"), "rate"
    else:
        pace, paced = Term("one stroke", bench.stroke_s, "s"), "stroke"
    return (
        Working("seal_m", "Sum of all edges to seal with their passes.", (edges,)),
        Working(
            "strokes",
            "Sum of the strokes of all edges; a sealer that runs on makes none.",
            (edges,),
        ),
        Working(
            "elements",
            "Length of all seals divided by what one element seals, rounded up.",
            (Term("seals", seal_m, "m"), Term("one element seals", bench.element_m, "m")),
            f"{DERIVED}; life of an element: {ENTERED}",
        ),
        Working(
            "bench_min",
            "Sum of the bench time of all edges.",
            (edges, pace, set_up),
            f"{DERIVED}; {paced} and set-up: {ENTERED}",
        ),
        Working("volume_m3", "Sum of all cells.", (Term("cells", len(cells), "count"),)),
    )
