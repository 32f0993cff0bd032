"""One sheet of film from its sizes: area, mass and how each was got."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from hoopwright.cover.cover import Area, LayerName, Piece, Role
from hoopwright.cover.size import Size
from hoopwright.farm import Film
from hoopwright.quantity.working import LaterWorkings, Term, Working


@dataclass(frozen=True, slots=True)
class Place:
    """What a sheet is for and where it lies.

    Attributes:
        role: What it is for.
        side: 0 or 1; of an end wall joined from several sheets the number of the sheet from below;
            else None.
        number: Its number among its like, from 0.
        name: What people call it, without its layer.
        areas: Where it lies.
    """

    role: Role
    side: int | None
    number: int
    name: str
    areas: tuple[Area, ...]


def by_key(films: Iterable[Film]) -> dict[str, Film]:
    """Return films by key."""
    return {film.key: film for film in films}


def cut_piece(
    place: Place, layer: tuple[LayerName, str], width: Size, length: Size, films: Mapping[str, Film]
) -> Piece:
    """Return one sheet.

    Args:
        place: What it is for and where it lies.
        layer: Name of the layer and catalogue key of its film.
        width: Size across the roll.
        length: Size along the roll.
        films: Films by key.
    """
    name, key = layer
    film = films[key]
    side = "-" if place.side is None else str(place.side)
    area_m2 = width.total_m * length.total_m
    return Piece(
        mark=f"piece/{place.role.replace(' ', '-')}/{name}/{side}/{place.number}",
        name=place.name if name == "single" else f"{place.name}, {name}",
        role=place.role,
        layer=name,
        film=key,
        width_m=width.total_m,
        length_m=length.total_m,
        width_terms=width.terms,
        length_terms=length.terms,
        area_m2=area_m2,
        mass_kg=area_m2 * film.thickness_m * film.density_kg_m3,
        areas=place.areas,
        workings=LaterWorkings(lambda: _workings(width, length, area_m2, film)),
    )


def _workings(width: Size, length: Size, area_m2: float, film: Film) -> tuple[Working, ...]:
    return (
        width.working("width_m"),
        length.working("length_m"),
        Working(
            "area_m2",
            "Width times length, as cut.",
            (Term("width", width.total_m, "m"), Term("length", length.total_m, "m")),
        ),
        Working(
            "mass_kg",
            "Area times thickness times density.",
            (
                Term("area", area_m2, "m2"),
                Term("thickness", film.thickness_m, "m_film"),
                Term("density", film.density_kg_m3, "kg/m3"),
            ),
        ),
    )
