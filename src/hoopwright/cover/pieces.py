"""Lay the skin: every sheet of one tunnel, how its size adds up and where it lies."""

from collections.abc import Iterator, Mapping
from functools import lru_cache
from itertools import pairwise
from typing import Literal

from hoopwright.cover.cover import Area, Cover, LayerName, Piece, Role, SheetWidth
from hoopwright.cover.end_laid import EndLaid
from hoopwright.cover.end_walls import end_pieces, lay_ends
from hoopwright.cover.lengths import seam_length, whole_length
from hoopwright.cover.sheet import Place, by_key, cut_piece
from hoopwright.cover.side_film import layer_films
from hoopwright.cover.side_pieces import LaidSide, SideCase, lay_side
from hoopwright.cover.size import Size
from hoopwright.cover.sizes import roof_width, whole_width
from hoopwright.farm import End, Film, Side, Skin
from hoopwright.farm.skin import Covering
from hoopwright.quantity.remembered import Remembered
from hoopwright.quantity.working import LaterWorkings, Term, Working
from hoopwright.survey import Survey

Pair = tuple[float, float]
LaidRoof = tuple[Size, tuple[Piece, ...]]


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
    uncut = _without_seams(skin)
    first, second = (
        _side(n, side, covering, survey, uncut, films, inflated)
        for n, (side, inflated) in enumerate(zip(sides, inflated_sides, strict=True))
    )
    width, over = _over(covering, survey, skin, sides, films, inflated_sides)
    walls = lay_ends(survey, skin, ends)
    pieces = (
        *over,
        *first.pieces,
        *second.pieces,
        *end_pieces(survey, skin, ends, walls, films),
    )
    return _cover(covering, pieces, (first, second), walls, width, sides)


def sheet_width(
    covering: Covering,
    survey: Survey,
    skin: Skin,
    sides: tuple[Side, Side],
    films: tuple[Film, ...],
    inflated_sides: tuple[bool, bool],
) -> SheetWidth:
    """Return how wide the sheet over the bows is in a covering, without laying all the skin.

    Args:
        covering: One sheet, or roof and sides apart; goes before the covering in `skin`.
        survey: The frame as built.
        skin: Layers, films, tails and seams.
        sides: Sides as chosen.
        films: Films that can be chosen.
        inflated_sides: Whether the curtains of each side are inflated.
    """
    width = _over(covering, survey, skin, sides, films, inflated_sides)[0]
    return SheetWidth(
        covering=covering,
        sheet_width_m=width.total_m,
        workings=LaterWorkings(lambda: (width.working("sheet_width_m"),)),
    )


def _over(
    covering: Covering,
    survey: Survey,
    skin: Skin,
    sides: tuple[Side, Side],
    films: tuple[Film, ...],
    inflated_sides: tuple[bool, bool],
) -> LaidRoof:
    if covering == "one_sheet":
        return _whole(survey, skin, sides, films, inflated_sides)
    return _roof(survey, skin, films)


@lru_cache(maxsize=16)
def _without_seams(skin: Skin) -> Skin:
    """Return a skin without its cross seams: neither do they matter to the sides."""
    return _alike(skin.but(cross_seams_m=()))


@lru_cache(maxsize=16)
def _alike(skin: Skin) -> Skin:
    """Return the first of equal skins, so that sides are not laid again while a seam is dragged."""
    return skin


def _lay_side(
    n: int,
    side: Side,
    covering: Covering,
    survey: Survey,
    skin: Skin,
    films: tuple[Film, ...],
    inflated: bool,
) -> LaidSide:
    return lay_side(SideCase(n, side, covering, survey, skin, by_key(films), inflated))


def _lay_roof(survey: Survey, skin: Skin, films: tuple[Film, ...]) -> LaidRoof:
    widths = {layer: roof_width(survey, skin, layer) for layer, _ in layer_films(skin.roof)}
    pieces = tuple(_roof_pieces("Roof sheet", survey, skin, (), widths, by_key(films)))
    return next(iter(widths.values())), pieces


def _lay_whole(
    survey: Survey,
    skin: Skin,
    sides: tuple[Side, Side],
    films: tuple[Film, ...],
    inflated_sides: tuple[bool, bool],
) -> LaidRoof:
    widths = {
        layer: whole_width(survey, skin, sides, inflated_sides, layer)
        for layer, _ in layer_films(skin.roof)
    }
    named = by_key(films)
    cases = (
        SideCase(n, side, "one_sheet", survey, skin, named, inflated)
        for n, (side, inflated) in enumerate(zip(sides, inflated_sides, strict=True))
    )
    below = tuple(case for case in cases if not case.own)
    pieces = tuple(_roof_pieces("Whole sheet", survey, skin, below, widths, named))
    return next(iter(widths.values())), pieces


_side = Remembered(_lay_side)
_roof = Remembered(_lay_roof)
_whole = Remembered(_lay_whole)


def _roof_pieces(
    title: Literal["Roof sheet", "Whole sheet"],
    survey: Survey,
    skin: Skin,
    below: tuple[SideCase, ...],
    widths: Mapping[LayerName, Size],
    films: Mapping[str, Film],
) -> Iterator[Piece]:
    """Yield the sheets over the bows, layer by layer, from front to back."""
    spots = (0.0, *skin.cross_seams_m, survey.length_m)
    role: Role = "roof sheet" if title == "Roof sheet" else "whole sheet"
    count = len(spots) - 1
    for layer in layer_films(skin.roof):
        for k, ends in enumerate(pairwise(spots)):
            length = whole_length(survey, skin) if count == 1 else seam_length(survey, skin, *ends)
            place = Place(
                role,
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
