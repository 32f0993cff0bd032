"""Lay the skin: every sheet of one tunnel, how its size adds up and where it lies."""

from collections.abc import Iterator, Mapping
from itertools import pairwise

from hoopwright.cover.cover import Area, Cover, LayerName, Piece
from hoopwright.cover.end_laid import EndLaid
from hoopwright.cover.end_walls import end_pieces, lay_ends
from hoopwright.cover.lengths import seam_length, whole_length
from hoopwright.cover.sheet import Place, cut_piece
from hoopwright.cover.side_film import layer_films
from hoopwright.cover.side_pieces import LaidSide, SideCase, lay_side
from hoopwright.cover.size import Size
from hoopwright.cover.sizes import roof_width, whole_width
from hoopwright.farm import End, Film, Side, Skin
from hoopwright.farm.skin import Covering
from hoopwright.quantity.working import LaterWorkings, Term, Working
from hoopwright.survey import Survey

Pair = tuple[float, float]


def lay_skin(
    covering: Covering,
    survey: Survey,
    skin: Skin,
    sides: tuple[Side, Side],
    ends: tuple[End, End],
    films: tuple[Film, ...],
    inflated_sides: tuple[bool, bool],
) -> Cover:
    """Return the skin laid one way.

    Args:
        covering: One sheet, or roof and sides apart; goes before the covering in `skin`.
        survey: The frame as built.
        skin: Layers, films, tails and seams.
        sides: Sides as chosen.
        ends: End walls.
        films: Films that can be chosen.
        inflated_sides: Whether the curtains of each side are inflated.

    Raises:
        KeyError: A film that was chosen is not among `films`.
    """
    by_key = {film.key: film for film in films}
    cases = tuple(
        SideCase(n, side, covering, survey, skin, by_key, inflated)
        for n, (side, inflated) in enumerate(zip(sides, inflated_sides, strict=True))
    )
    widths = {
        layer: roof_width(survey, skin, layer)
        if covering == "roof_and_sides"
        else whole_width(survey, skin, sides, inflated_sides, layer)
        for layer, _ in layer_films(skin.roof)
    }
    laid = tuple(lay_side(case) for case in cases)
    walls = lay_ends(survey, skin, ends)
    pieces = (
        *_roof_pieces(covering, survey, skin, cases, widths, by_key),
        *(piece for side in laid for piece in side.pieces),
        *end_pieces(survey, skin, ends, walls, by_key),
    )
    width = next(iter(widths.values()))
    return _cover(covering, pieces, (laid[0], laid[1]), walls, width, sides)


def _roof_pieces(
    covering: Covering,
    survey: Survey,
    skin: Skin,
    cases: tuple[SideCase, ...],
    widths: Mapping[LayerName, Size],
    films: Mapping[str, Film],
) -> Iterator[Piece]:
    """Yield the sheets over the bows, layer by layer, from front to back."""
    spots = (0.0, *skin.cross_seams_m, survey.length_m)
    whole = covering == "one_sheet"
    below = tuple(case for case in cases if not case.own)
    title = "Whole sheet" if whole else "Roof sheet"
    count = len(spots) - 1
    for layer in layer_films(skin.roof):
        for k, ends in enumerate(pairwise(spots)):
            length = whole_length(survey, skin) if count == 1 else seam_length(survey, skin, *ends)
            place = Place(
                "whole sheet" if whole else "roof sheet",
                None,
                k,
                title if count == 1 else f"{title} {k + 1} of {count}",
                _roof_areas(survey, skin, ends, below),
            )
            yield cut_piece(place, layer, widths[layer[0]], length, films)


def _roof_areas(
    survey: Survey, skin: Skin, ends: Pair, cases: tuple[SideCase, ...]
) -> tuple[Area, ...]:
    """Return where a sheet over the bows lies, its lap at cross seams included."""
    half_m = skin.allowances.seam_lap_m / 2
    from_m = max(0.0, ends[0] - half_m)
    to_m = min(survey.length_m, ends[1] + half_m)
    roof = Area("roof", from_m, to_m, *survey.hip_across_m)
    return (roof, *(case.area(from_m, to_m, case.low_m) for case in cases))


def _cover(
    covering: Covering,
    pieces: tuple[Piece, ...],
    laid: tuple[LaidSide, LaidSide],
    ends: tuple[EndLaid, EndLaid],
    width: Size,
    sides: tuple[Side, Side],
) -> Cover:
    heights_m = tuple(0.0 if one.height is None else one.height.total_m for one in laid)
    return Cover(
        covering=covering,
        pieces=pieces,
        curtains=(*laid[0].curtains, *laid[1].curtains),
        fixed=(*laid[0].fixed, *laid[1].fixed),
        ends=ends,
        sheet_width_m=width.total_m,
        side_height_m=(heights_m[0], heights_m[1]),
        film_area_m2=sum(p.area_m2 for p in pieces),
        film_mass_kg=sum(p.mass_kg for p in pieces),
        workings=LaterWorkings(
            lambda: (
                width.working("sheet_width_m"),
                _height_working(laid, sides),
                Working(
                    "film_area_m2",
                    "All sheets together, as cut.",
                    tuple(Term(p.name, p.area_m2, "m2") for p in pieces),
                ),
                Working(
                    "film_mass_kg",
                    "All sheets together, as cut.",
                    tuple(Term(p.name, p.mass_kg, "kg") for p in pieces),
                ),
            )
        ),
    )


def _height_working(laid: tuple[LaidSide, LaidSide], sides: tuple[Side, Side]) -> Working:
    """Return how the cut heights of both sides add up."""
    terms: list[Term] = []
    rules: list[str] = []
    for one, side in zip(laid, sides, strict=True):
        rule = "The sheet of the roof covers the sides, so none is cut."
        if one.height is not None:
            rule = one.height.rule
            terms += [Term(f"{side.name}: {t.name}", t.value, t.unit) for t in one.height.terms]
        if rule not in rules:
            rules.append(rule)
    return Working("side_height_m", " ".join(rules), tuple(terms))
