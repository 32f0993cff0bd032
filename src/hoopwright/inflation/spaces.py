"""The spaces between two layers: how much air each holds and through how much film it leaks.

Every space is taken at its full shape. The roof stands between two circle arcs over the chord from
hip to hip, whatever the shape of its bows. Of a curtain the inner layer is cut flat and lies
against the bows, so the outer one bows out over it. An end wall's inner layer stands flat against
its studs; its outer one is held along the bow and the foot and swells like any thin skin under an
even pressure. Such a skin, while it is shallow, holds half of area times rise over a circle and
0.48 over a square; half is taken for every end wall.

Air is lost through the film of the outer layer, its seams and its edges alike: the leak at 1 Pa is
entered for each square metre and stands for them all.
"""

import math
from collections.abc import Iterator
from itertools import pairwise

from msgspec import Struct

from hoopwright.cover.bulge import bulge_extra
from hoopwright.cover.cover import CurtainSpan
from hoopwright.cover.end_laid import EndLaid
from hoopwright.farm import Air, End, Side, Skin
from hoopwright.inflation.inflation import Cell
from hoopwright.inflation.segment import gap_area
from hoopwright.quantity.working import DERIVED, ENTERED, LaterWorkings, Term, Working
from hoopwright.survey.survey import Survey

END_SHARE = 0.5
LEAST_M2 = 0.5
"""Strips of film beside a door that takes the wall hold no air worth a hose."""


class _Space(Struct, frozen=True):
    """Where a space lies and what fills it."""

    place: str
    name: str
    from_m: float
    to_m: float
    volume_m3: float
    area_m2: float
    edge_rule: str
    volume: Working
    area: Working


def roof_cells(survey: Survey, skin: Skin, air: Air) -> tuple[Cell, ...]:
    """Return the cells of a roof of two layers, front to back; the blower feeds the first.

    Args:
        survey: The frame as built.
        skin: The skin as chosen; its cross seams part the cells.
        air: Blower and leak of the roof.

    Source:
        Area between two arcs: see `segment`. Film: the bow, and what the cut adds for the gap.
    """
    chord_m, rise_m = _roof_chord(survey)
    edges_m = (0.0, *skin.cross_seams_m, survey.length_m)
    gap_m2 = gap_area(chord_m, rise_m, skin.inflation_gap_m)
    over_m = survey.roof_girth_m + bulge_extra(chord_m, rise_m, skin.inflation_gap_m)
    cells = []
    for n, (from_m, to_m) in enumerate(pairwise(edges_m)):
        length = Term("length of the cell", to_m - from_m, "m")
        space = _Space(
            place="roof",
            name="Roof" if not skin.cross_seams_m else f"Roof, cell {n + 1}",
            from_m=from_m,
            to_m=to_m,
            volume_m3=gap_m2 * (to_m - from_m),
            area_m2=over_m * (to_m - from_m),
            edge_rule="An end bow or a cross seam.",
            volume=_roof_volume(chord_m, rise_m, skin.inflation_gap_m, length),
            area=_area(
                "Outer layer from hip to hip, times the length of the cell.", over_m, length
            ),
        )
        fed = air.blower is not None and n == 0
        cells.append(_cell(f"cell/roof/{n}", space, air.leak_roof, fed=fed))
    return tuple(cells)


def curtain_cell(span: CurtainSpan, side: Side, skin: Skin, air: Air) -> Cell:
    """Return the cell of one curtain.

    Args:
        span: Where the curtain hangs.
        side: Its side as chosen.
        skin: The skin as chosen.
        air: Leak of curtains.

    Source:
        Segment of a circle: see `segment`. Film: what hangs, and what the cut adds for the gap.
    """
    drop_m = span.hang_m - side.slack_m
    over_m = span.hang_m + bulge_extra(drop_m, 0.0, skin.inflation_gap_m)
    length = Term("length of the curtain", span.length_m, "m")
    space = _Space(
        place=span.mark,
        name=f"{side.name}, curtain {span.index + 1}",
        from_m=span.from_m,
        to_m=span.to_m,
        volume_m3=gap_area(drop_m, 0.0, skin.inflation_gap_m) * span.length_m,
        area_m2=over_m * span.length_m,
        edge_rule="An end of the curtain.",
        volume=Working(
            "volume_m3",
            "Area between the flat inner and the bowed outer layer, times the length of the "
            "curtain.",
            (
                Term("from hip seam to bar", drop_m, "m"),
                Term("gap in the middle", skin.inflation_gap_m, "m"),
                length,
            ),
        ),
        area=_area(
            "Outer layer from hip seam to bar, times the length of the curtain.", over_m, length
        ),
    )
    return _cell(f"cell/{span.mark}", space, air.leak_curtain)


def end_cells(
    survey: Survey,
    skin: Skin,
    ends: tuple[End, End],
    walls: tuple[EndLaid, EndLaid],
    air: Air,
) -> Iterator[tuple[int, Cell]]:
    """Yield the cells of inflated end walls of two layers, each with its end: 0 front, 1 back.

    Where openings leave no film there is no cell.

    Args:
        survey: The frame as built.
        skin: The skin as chosen.
        ends: End walls as chosen.
        walls: End walls as laid.
        air: Which ends are inflated, and their leak.

    Source:
        Share of the air: see the module.
    """
    for n, (end, wall) in enumerate(zip(ends, walls, strict=True)):
        area_m2 = wall.net_m2
        if (
            end.film is None
            or end.film.count < 2
            or not air.inflated_ends[n]
            or area_m2 <= LEAST_M2
        ):
            continue
        at_m = survey.length_m if n else 0.0
        film = (
            Term("end inside the bow", wall.gross_m2, "m2"),
            Term("openings", wall.openings_m2, "m2"),
        )
        space = _Space(
            place=f"end/{n}",
            name=f"End wall {end.name}",
            from_m=at_m,
            to_m=at_m,
            volume_m3=END_SHARE * skin.inflation_gap_m * area_m2,
            area_m2=area_m2,
            edge_rule="It stands at its end bow.",
            volume=Working(
                "volume_m3",
                "Outer layer bowed out over a flat inner one: about half of film times gap.",
                (
                    Term("film", area_m2, "m2"),
                    Term("gap in the middle", skin.inflation_gap_m, "m"),
                ),
                f"{DERIVED}: a shallow skin under even pressure",
            ),
            area=Working("area_m2", "The end from the ground to the bow, less its openings.", film),
        )
        yield n, _cell(f"cell/end/{n}", space, air.leak_end)


def _cell(mark: str, space: _Space, leak: float, *, fed: bool = False) -> Cell:
    """Return a cell that leaks as much for each square metre, m3/s at 1 Pa."""
    ends = (
        Working("from_m", space.edge_rule, (Term("from the front", space.from_m, "m"),)),
        Working("to_m", space.edge_rule, (Term("from the front", space.to_m, "m"),)),
    )
    return Cell(
        mark=mark,
        name=space.name,
        place=space.place,
        from_m=space.from_m,
        to_m=space.to_m,
        volume_m3=space.volume_m3,
        area_m2=space.area_m2,
        unit_leak_m3_s=leak * space.area_m2,
        fed=fed,
        workings=LaterWorkings(
            lambda: (
                *ends,
                space.volume,
                space.area,
                Working(
                    "unit_leak_m3_s",
                    "Film of the outer layer times its leak at 1 Pa.",
                    (Term("film", space.area_m2, "m2"), Term("leak", leak, "leak")),
                    f"{DERIVED}; leak: {ENTERED}, no published source",
                ),
            )
        ),
    )


def _roof_chord(survey: Survey) -> tuple[float, float]:
    """Return the chord from hip to hip and the distance of the ridge from it, m."""
    (x0, y0), (x1, y1) = (survey.curve.point_at(at_m) for at_m in survey.hip_at_m)
    x, y = survey.curve.point_at(survey.curve.ridge_m)
    chord_m = math.hypot(x1 - x0, y1 - y0)
    return chord_m, ((x0 - x) * (y1 - y0) + (x1 - x0) * (y - y0)) / chord_m


def _roof_volume(chord_m: float, rise_m: float, gap_m: float, length: Term) -> Working:
    return Working(
        "volume_m3",
        "Area between two arcs from hip to hip, the outer raised by the gap, times the length of "
        "the cell.",
        (
            Term("chord from hip to hip", chord_m, "m"),
            Term("rise of the ridge over it", rise_m, "m"),
            Term("gap at the ridge", gap_m, "m"),
            length,
        ),
    )


def _area(rule: str, over_m: float, length: Term) -> Working:
    return Working("area_m2", rule, (Term("outer layer", over_m, "m"), length))
