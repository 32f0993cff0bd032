"""The parts of the cover that lose heat, and how much of each stands in two layers blown apart.

Only air that a blower keeps between two layers holds heat back: two layers that lie on each other,
a cell that no jumper feeds, fixed film of two layers, doors and other openings of the end walls all
count as one layer. Each side
runs from the hip seam to the ground, so that roof, sides and ends make up the whole cover of the
survey; baseboards and end walls that stand open count as one layer of film. Rigid sheets of an end
wall let through what is entered for them, however the film is laid.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Literal

from hoopwright.cover.cover import Cover, Surface
from hoopwright.cover.end_walls import END_SURFACES
from hoopwright.farm import Film, Heating
from hoopwright.heat.loss import Surface as HeatSurface
from hoopwright.inflation.inflation import Cell, Inflation
from hoopwright.survey.survey import Survey

AsLaid = Literal["one", "two", "now"]

NAMES: dict[Surface, str] = {
    "roof": "roof",
    "side0": "first side",
    "side1": "second side",
    "end0": "front end wall",
    "end1": "back end wall",
}
FIXED = ("pocket", "split strip", "side sheet")


@dataclass(frozen=True, slots=True)
class CoverPart:
    """One part of the cover.

    Attributes:
        name: What it is, in words of the trade.
        area_m2: All of it, m2.
        two_m2: What stands in two layers blown apart, m2.
        rigid_m2: What is closed with rigid sheets, m2.
        thermal: Whether the inner layer is thermal film.
        doubled: Whether film of two layers lies on it that is no fixed film of a side.
    """

    name: str
    area_m2: float
    two_m2: float
    rigid_m2: float
    thermal: bool
    doubled: bool

    def u_one(self, heating: Heating) -> float:
        """Return what it lets through in one layer, or where it is rigid, W/m2/K.

        Source:
            The user's entry.
        """
        return heating.u_rigid if self.rigid_m2 > 0 else heating.u_one

    def u_two(self, heating: Heating) -> float:
        """Return what it lets through in two layers blown apart, or where it is rigid, W/m2/K.

        Source:
            The user's entry.
        """
        if self.rigid_m2 > 0:
            return heating.u_rigid
        return heating.u_two_thermal if self.thermal else heating.u_two


def cover_parts(
    survey: Survey,
    cover: Cover,
    inflation: Inflation,
    films: tuple[Film, ...],
) -> tuple[CoverPart, ...]:
    """Return roof, first and second side, front and back end wall.

    Args:
        survey: The frame as built.
        cover: The skin as laid.
        inflation: The cells of that skin.
        films: Films that can be chosen.
    """
    length_m = survey.length_m
    areas_m2: dict[Surface, float] = {
        "roof": survey.roof_girth_m * length_m,
        "side0": survey.hip_at_m[0] * length_m,
        "side1": (survey.girth_m - survey.hip_at_m[1]) * length_m,
        "end0": survey.section_area_m2,
        "end1": survey.section_area_m2,
    }
    blown_m2 = dict.fromkeys(areas_m2, 0.0)
    for cell in _blown(inflation):
        surface, area_m2 = _cell_area(cell, survey, cover)
        blown_m2[surface] += area_m2
    inner = _inner_films(cover)
    rigid_m2 = {
        END_SURFACES[n]: max(0.0, survey.section_area_m2 - wall.openings_m2)
        for n, wall in enumerate(cover.ends)
        if wall.closed == "rigid"
    }
    thermal = {film.key for film in films if film.thermal}
    return tuple(
        CoverPart(
            name=NAMES[surface],
            area_m2=area_m2,
            two_m2=min(area_m2, blown_m2[surface]),
            rigid_m2=rigid_m2.get(surface, 0.0),
            thermal=inner.get(surface) in thermal,
            doubled=surface in inner,
        )
        for surface, area_m2 in areas_m2.items()
    )


def heat_surfaces(
    parts: Iterable[CoverPart], heating: Heating, laid: AsLaid
) -> tuple[HeatSurface, ...]:
    """Return what loses heat when all is in one layer, all in two blown apart, or as it is now.

    Args:
        parts: The parts of the cover.
        heating: What one and two layers let through.
        laid: One layer, two layers, or now.
    """
    found = []
    for part in parts:
        film_m2 = part.area_m2 - part.rigid_m2
        two_m2 = {"one": 0.0, "two": film_m2, "now": part.two_m2}[laid]
        u_two = heating.u_two_thermal if part.thermal else heating.u_two
        if film_m2 > two_m2:
            found.append(HeatSurface(f"{part.name}, one layer", film_m2 - two_m2, heating.u_one))
        if two_m2 > 0:
            inside = ", the inner one thermal" if part.thermal else ""
            found.append(HeatSurface(f"{part.name}, two layers{inside}", two_m2, u_two))
        if part.rigid_m2 > 0:
            name = f"{part.name}, rigid sheets"
            found.append(HeatSurface(name, part.rigid_m2, heating.u_rigid))
    return tuple(found)


def air_changes(parts: Iterable[CoverPart], heating: Heating, laid: AsLaid) -> float:
    """Return how often the air is changed by leaks, 1/h.

    Args:
        parts: The parts of the cover, the roof first.
        heating: Air changes with one and with two layers.
        laid: One layer, two layers, or now.

    Source:
        Between the user's entries, by the share of the roof that is blown apart: derived here.
    """
    roof = next(iter(parts))
    share = {"one": 0.0, "two": 1.0, "now": roof.two_m2 / roof.area_m2}[laid]
    one_per_h, two_per_h = heating.changes_one_per_h, heating.changes_two_per_h
    return one_per_h + share * (two_per_h - one_per_h)


def _blown(inflation: Inflation) -> Iterable[Cell]:
    """Return the cells that air is blown into."""
    return (cell for cell in inflation.cells if cell.mark not in inflation.no_feed)


def _cell_area(cell: Cell, survey: Survey, cover: Cover) -> tuple[Surface, float]:
    """Return on which part of the cover a cell lies, and how much of it, m2."""
    if cell.place == "roof":
        return "roof", survey.roof_girth_m * (cell.to_m - cell.from_m)
    if cell.place.startswith("end/"):
        n = int(cell.place.removeprefix("end/"))
        openings_m2 = cover.ends[n].openings_m2
        return END_SURFACES[n], max(0.0, survey.section_area_m2 - openings_m2)
    span = next(span for span in cover.curtains if span.mark == cell.place)
    return ("side1" if span.side else "side0"), ((span.open_to_m - span.open_from_m) * span.hang_m)


def _inner_films(cover: Cover) -> Mapping[Surface, str]:
    """Return the film of the inner layer on each part of the cover that has one, by its key."""
    return {
        area.surface: piece.film
        for piece in cover.pieces
        if piece.layer == "inner" and piece.role not in FIXED
        for area in piece.areas
    }
