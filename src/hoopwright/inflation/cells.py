"""Fill the cells with air: which closed spaces there are, how much air they hold, what feeds them.

A roof of two layers is one cell, cut at each cross seam because both layers are gripped there. A
curtain of two layers is a cell of its own when its side is to be inflated; in one sheet too, as
the hip board clamps the sheet between roof and curtain. Woven and drop-down curtains, and those of
a film of their own, have one layer and hold no air. Pockets, strips and end walls are not
inflated. The blower blows into the first roof cell; jumpers carry the air on.

Volumes take the full shape: between two circle arcs over the chord from hip to hip for the roof,
whatever the shape of its bows, and between a flat inner and a bowed outer layer for a curtain.
"""

import math

from hoopwright.cover.cover import Cover, CurtainSpan
from hoopwright.farm import Air, Bench, Side, Skin
from hoopwright.inflation.inflation import Cell, Inflation, Seal
from hoopwright.inflation.jumpers import place_jumpers
from hoopwright.inflation.seals import seal_edges
from hoopwright.inflation.segment import gap_area
from hoopwright.quantity.working import DERIVED, ENTERED, Term, Working
from hoopwright.survey.survey import Survey


def fill_cells(
    survey: Survey,
    skin: Skin,
    sides: tuple[Side, Side],
    air: Air,
    cover: Cover,
    bench: Bench,
) -> Inflation:
    """Return the seals, cells and jumpers of one tunnel.

    Args:
        survey: The frame as built.
        skin: The skin as chosen.
        sides: Both sides as chosen.
        air: Air between two layers as chosen.
        cover: The skin laid one way.
        bench: How fast seals are made.
    """
    spans = [s for s in cover.curtains if s.layers == 2 and air.inflated_sides[s.side]]
    roof = _roof_cells(survey, skin, air.blower is not None) if skin.roof.count == 2 else ()
    curtains = tuple(
        (span.side, _curtain_cell(span, sides[span.side], skin.inflation_gap_m)) for span in spans
    )
    cells = (*roof, *(cell for _, cell in curtains))
    seals = tuple(
        seal
        for span in spans
        for seal in seal_edges(span, cover.covering, air.seals_per_edge, bench)
    )
    seal_m = sum((seal.total_m for seal in seals), 0.0)
    bench_min = sum((seal.minutes for seal in seals), 0.0)
    return Inflation(
        seals=seals,
        cells=cells,
        jumpers=place_jumpers(roof, curtains, air.long_cell_m),
        seal_m=seal_m,
        bench_min=bench_min,
        volume_m3=sum((cell.volume_m3 for cell in cells), 0.0),
        blower=air.blower if cells else None,
        workings=_totals(seals, cells, bench),
    )


def _roof_chord(survey: Survey) -> tuple[float, float]:
    """Return the chord from hip to hip and the distance of the ridge from it, m."""
    (x0, y0), (x1, y1) = (survey.curve.point_at(at_m) for at_m in survey.hip_at_m)
    chord_m = math.hypot(x1 - x0, y1 - y0)
    return chord_m, (x0 * (y1 - y0) + (x1 - x0) * (survey.height_m - y0)) / chord_m


def _roof_cells(survey: Survey, skin: Skin, has_blower: bool) -> tuple[Cell, ...]:
    chord_m, rise_m = _roof_chord(survey)
    area_m2 = gap_area(chord_m, rise_m, skin.inflation_gap_m)
    sizes = (
        Term("chord from hip to hip", chord_m, "m"),
        Term("rise of the ridge over it", rise_m, "m"),
        Term("gap at the ridge", skin.inflation_gap_m, "m"),
    )
    edges_m = (0.0, *skin.cross_seams_m, survey.length_m)
    alone = not skin.cross_seams_m
    return tuple(
        Cell(
            mark=f"cell/roof/{n}",
            name="Roof" if alone else f"Roof, cell {n + 1}",
            place="roof",
            from_m=edges_m[n],
            to_m=edges_m[n + 1],
            volume_m3=area_m2 * (edges_m[n + 1] - edges_m[n]),
            fed=has_blower and n == 0,
            workings=(
                *_cell_ends(edges_m[n], edges_m[n + 1], "An end bow or a cross seam."),
                Working(
                    "volume_m3",
                    "Area between two arcs from hip to hip, the outer raised by the gap, times "
                    "the length of the cell.",
                    (*sizes, Term("length of the cell", edges_m[n + 1] - edges_m[n], "m")),
                ),
            ),
        )
        for n in range(len(edges_m) - 1)
    )


def _curtain_cell(span: CurtainSpan, side: Side, gap_m: float) -> Cell:
    drop_m = span.hang_m - side.slack_m
    length_m = span.to_m - span.from_m
    return Cell(
        mark=f"cell/{span.mark}",
        name=f"{side.name}, curtain {span.index + 1}",
        place=span.mark,
        from_m=span.from_m,
        to_m=span.to_m,
        volume_m3=gap_area(drop_m, 0.0, gap_m) * length_m,
        fed=False,
        workings=(
            *_cell_ends(span.from_m, span.to_m, "An end of the curtain."),
            Working(
                "volume_m3",
                "Area between the flat inner and the bowed outer layer, times the length of the "
                "curtain.",
                (
                    Term("from hip seam to bar", drop_m, "m"),
                    Term("gap in the middle", gap_m, "m"),
                    Term("length of the curtain", length_m, "m"),
                ),
            ),
        ),
    )


def _cell_ends(from_m: float, to_m: float, rule: str) -> tuple[Working, Working]:
    return (
        Working("from_m", rule, (Term("from the front", from_m, "m"),)),
        Working("to_m", rule, (Term("from the front", to_m, "m"),)),
    )


def _totals(seals: tuple[Seal, ...], cells: tuple[Cell, ...], bench: Bench) -> tuple[Working, ...]:
    edges = Term("edges", len(seals), "count")
    rate = Term("sealing rate", bench.seal_rate_m_min, "m/min")
    set_up = Term("set-up for one edge", bench.set_up_min, "min")
    return (
        Working("seal_m", "Sum of all sealed edges with their passes.", (edges,)),
        Working(
            "bench_min",
            "Sum of the bench time of all edges.",
            (edges, rate, set_up),
            f"{DERIVED}; rate and set-up: {ENTERED}",
        ),
        Working("volume_m3", "Sum of all cells.", (Term("cells", len(cells), "count"),)),
    )
