"""Lay the end walls: outline, openings, areas, and the sheets of film that close them."""

from collections.abc import Iterator
from functools import lru_cache
from itertools import pairwise

from hoopwright.cover.cover import Area, Piece, Surface
from hoopwright.cover.end_laid import Band, Crossing, EndLaid, Opening, OpeningUse
from hoopwright.cover.end_shape import TOUCH_M, EndShape, end_shape
from hoopwright.cover.end_sheets import lay_rigid
from hoopwright.cover.sheet import Place, by_key, cut_piece
from hoopwright.cover.side_film import layer_films
from hoopwright.cover.size import Size, add_up
from hoopwright.cover.sizes import TOLERANCE
from hoopwright.farm import Allowances, End, Film, Skin
from hoopwright.farm.change_ends import cover_of
from hoopwright.farm.end_places import Box, opening_boxes
from hoopwright.quantity.remembered import Remembered
from hoopwright.quantity.working import LaterWorkings, Term, Working
from hoopwright.survey import Survey
from hoopwright.survey.bow_curve import BowCurve

END_SURFACES: tuple[Surface, Surface] = ("end0", "end1")
WHOLE_RULE = "Bounding rectangle of the end, with a tail on each edge: the greatest {} of the bow."
BAND_RULE = (
    "The widest place of the end between the edges of the sheet, its half of the laps included, "
    "with a tail at the left and at the right."
)


def lay_ends(survey: Survey, skin: Skin, ends: tuple[End, End]) -> tuple[EndLaid, EndLaid]:
    """Return both end walls.

    Args:
        survey: The frame as built.
        skin: The skin as chosen; its seam lap joins the sheets of an end wall too.
        ends: Front and back end wall as chosen.

    Source:
        Each figure keeps its own working.
    """
    lap_m = skin.allowances.seam_lap_m
    front, back = (
        _lay_end(survey.curve, survey.span_m, survey.width_m, end, number, lap_m)
        for number, end in enumerate(ends)
    )
    return front, back


@lru_cache(maxsize=64)
def _lay_end(
    curve: BowCurve, span_m: float, width_m: float, end: End, number: int, lap_m: float
) -> EndLaid:
    shape = end_shape(curve, number)
    mark = f"end/{number}"
    openings = _openings(shape, end, span_m, mark)
    boxes = tuple(opening.box for opening in openings)
    gross_m2 = curve.area_m2
    openings_m2 = shape.covered_m2(boxes)
    net_m2 = gross_m2 - openings_m2
    left_m, right_m = shape.widest(0.0, shape.height_m)
    seams_m = end.seams_m if end.film is not None else ()
    return EndLaid(
        mark=mark,
        closed=cover_of(end),
        outline_m=shape.outline,
        openings=openings,
        widest_m=width_m,
        widest_at_m=_widest_at(shape, left_m, right_m),
        height_m=shape.height_m,
        gross_m2=gross_m2,
        openings_m2=openings_m2,
        net_m2=net_m2,
        foot_m=shape.free_m(0.0, boxes),
        rails=tuple(_crossings(shape, boxes, end.rails_m, f"{mark}/rail")),
        seams=tuple(_crossings(shape, boxes, seams_m, f"{mark}/seam")),
        bands=tuple(_bands(shape, end.seams_m, lap_m)) if end.film is not None else (),
        rigid=None if end.rigid is None else lay_rigid(shape, end.rigid, net_m2, mark),
        workings=LaterWorkings(lambda: _workings(shape, openings, gross_m2, openings_m2)),
    )


def _openings(shape: EndShape, end: End, span_m: float, mark: str) -> tuple[Opening, ...]:
    doors, cuts = opening_boxes(end, span_m)
    named: list[tuple[str, OpeningUse, int, Box]] = [
        *((f"{mark}/door/{n}", "door", n, box) for n, box in enumerate(doors)),
        *((f"{mark}/cut/{n}", end.cuts[n].kind, n, box) for n, box in enumerate(cuts)),
    ]
    found: list[Opening] = []
    for name, use, number, box in named:
        meets = tuple(other.mark for other in found if box.overlaps(other.box))
        found.append(Opening(name, use, number, box, shape.holds(box), meets))
    return tuple(found)


def _bands(shape: EndShape, seams_m: tuple[float, ...], lap_m: float) -> Iterator[Band]:
    """Yield what each sheet covers; a seam on or above the ridge joins nothing."""
    top_m, half_m = shape.height_m, lap_m / 2
    seams = [y for y in seams_m if TOUCH_M < y < top_m - TOUCH_M]
    for low_m, high_m in pairwise((0.0, *seams, top_m)):
        edges = (low_m in seams) + (high_m in seams)
        from_m = max(0.0, low_m - half_m) if low_m in seams else low_m
        to_m = min(top_m, high_m + half_m) if high_m in seams else high_m
        yield Band(from_m, to_m, *shape.widest(from_m, to_m), edges)


def _widest_at(shape: EndShape, left_m: float, right_m: float) -> float:
    """Return the least height at which the outline reaches its greatest width on one side, m."""
    spots = [y for x, y in shape.outline if x <= left_m + TOUCH_M or x >= right_m - TOUCH_M]
    return min(spots)


def _crossings(
    shape: EndShape, boxes: tuple[Box, ...], heights_m: tuple[float, ...], mark: str
) -> Iterator[Crossing]:
    for n, at_m in enumerate(heights_m):
        inside = at_m < shape.height_m
        left_m, right_m = shape.reach_at(at_m) if inside else (0.0, 0.0)
        free_m = shape.free_m(at_m, boxes) if inside else 0.0
        yield Crossing(f"{mark}/{n}", at_m, left_m, right_m, free_m)


def _workings(
    shape: EndShape, openings: tuple[Opening, ...], gross_m2: float, openings_m2: float
) -> tuple[Working, ...]:
    ridge = Term("outside height at the ridge", shape.height_m, "m")
    doors = tuple(
        Term(f"{o.use} {o.number + 1}", o.width_m, "m") for o in openings if o.box.low_m <= TOUCH_M
    )
    left_m, right_m = shape.outline[0][0], shape.outline[-1][0]
    return (
        Working("widest_m", "Widest place over the outside of the end bow.", (ridge,)),
        Working("widest_at_m", "The lowest place at which it is that wide.", (ridge,)),
        Working("height_m", "Top of the bow tube at the ridge.", (ridge,)),
        Working(
            "gross_m2",
            "Between the outside of the end bow and the ground line.",
            (ridge,),
            "exact integrals of straights and circle arcs; derived here",
        ),
        Working(
            "openings_m2",
            "Width times height of doors, vents and fan openings, as far as they lie in the end; "
            "what overlaps counts once.",
            tuple(
                term
                for o in openings
                for term in (
                    Term(f"{o.use} {o.number + 1} wide", o.width_m, "m"),
                    Term(f"{o.use} {o.number + 1} high", o.height_m, "m"),
                )
            ),
        ),
        Working(
            "net_m2",
            "The end less its openings.",
            (Term("end", gross_m2, "m2"), Term("openings", openings_m2, "m2")),
        ),
        Working(
            "foot_m",
            "The foot of the end wall from leg to leg, less what stands open on the ground.",
            (Term("width at the ground", right_m - left_m, "m"), *doors),
        ),
    )


def end_pieces(
    survey: Survey,
    skin: Skin,
    ends: tuple[End, End],
    laid: tuple[EndLaid, EndLaid],
    films: tuple[Film, ...],
) -> tuple[Piece, ...]:
    """Return the sheets of film of both end walls, from below, layer by layer.

    A wall of one sheet has its width across the roll. Sheets that end at a seam lie along the roll,
    their height across it: so they are cut of narrow rolls, and of a wide one ripped lengthwise.

    Args:
        survey: The frame as built.
        skin: Tails and laps.
        ends: End walls as chosen.
        laid: End walls as laid.
        films: Films that can be chosen.
    """
    front, back = (
        _sheets(survey, skin.allowances, end, number, wall, films)
        for number, (end, wall) in enumerate(zip(ends, laid, strict=True))
    )
    return (*front, *back)


def _cut_wall(
    survey: Survey,
    allowances: Allowances,
    end: End,
    number: int,
    wall: EndLaid,
    films: tuple[Film, ...],
) -> tuple[Piece, ...]:
    if end.film is None:
        return ()
    found: list[Piece] = []
    count, named = len(wall.bands), by_key(films)
    for k, band in enumerate(wall.bands):
        size = whole_size(survey, allowances)
        name, spot = f"End wall {end.name}", None
        if count > 1:
            across, up = band_size(band, allowances)
            size = (up, across)
            name, spot = f"{name}, sheet {k + 1} of {count} from below", k
        place = Place("end wall", spot, number, name, (_area(number, band),))
        found += (cut_piece(place, layer, *size, named) for layer in layer_films(end.film))
    return tuple(found)


_sheets = Remembered(_cut_wall)


def _area(number: int, band: Band) -> Area:
    return Area(END_SURFACES[number], band.left_m, band.right_m, band.low_m, band.high_m)


def whole_size(survey: Survey, allowances: Allowances) -> tuple[Size, Size]:
    """Return width and height of a sheet that closes the whole end."""
    tails = ("2 x tail at the edges", 2 * allowances.end_wall_tail_m)
    tolerance = (TOLERANCE, allowances.measuring_tolerance_m)
    width = add_up(
        WHOLE_RULE.format("outside width"),
        ("greatest outside width", survey.width_m),
        tails,
        tolerance,
    )
    height = add_up(
        WHOLE_RULE.format("outside height"),
        ("outside height", survey.height_m),
        tails,
        tolerance,
    )
    return width, height


def band_size(band: Band, allowances: Allowances) -> tuple[Size, Size]:
    """Return width and height of a sheet that ends at one or two seams.

    Args:
        band: What it covers.
        allowances: Tails and tape tolerance.
    """
    tail_m, tolerance = allowances.end_wall_tail_m, (TOLERANCE, allowances.measuring_tolerance_m)
    width = add_up(
        BAND_RULE,
        ("widest place of the sheet", band.right_m - band.left_m),
        ("2 x tail at the edges", 2 * tail_m),
        tolerance,
    )
    tails = 2 - band.seams
    height = add_up(
        "From edge to edge with its half of the lap at a seam, and a tail at the ground and over "
        "the ridge.",
        ("from edge to edge with its laps", band.high_m - band.low_m),
        (f"{tails} x tail at the edges", tails * tail_m),
        tolerance,
    )
    return width, height
