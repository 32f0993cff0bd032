"""What a measuring sheet is made for: a tunnel as it is entered so far, or any tunnel."""

from dataclasses import dataclass

from hoopwright.farm import Catalogue, Farm, Tunnel
from hoopwright.farm.condition import FILM
from hoopwright.papers.form_page import PAPERS, Paper
from hoopwright.quantity.units import Units, format_length, show, unit_label

SIDE_LETTERS, END_LETTERS = 10, 40


@dataclass(frozen=True, slots=True)
class MeasuringSubject:
    """One tunnel to measure, or none in particular.

    Attributes:
        paper: Size of the paper.
        units: Units to write in.
        families: Families of parts whose condition is looked at.
        farm_name: Name of the farm, or "" on a blank sheet.
        tunnel: The tunnel as entered so far, or None on a blank sheet.
    """

    paper: Paper
    units: Units
    families: tuple[str, ...]
    farm_name: str = ""
    tunnel: Tunnel | None = None

    @property
    def inner_mm(self) -> float:
        """Return the width to write on, mm."""
        return self.paper.inner_mm

    @property
    def long_unit(self) -> str:
        """Return how lengths are written: feet and inches, or metres."""
        return "ft in" if self.units == "imperial" else "m"

    @property
    def thin_unit(self) -> str:
        """Return the unit of small sizes."""
        return unit_label("m_thin", self.units)

    def size(self, length_m: float | None) -> str:
        """Return a length as it was entered, or "" where there is none."""
        return "" if length_m is None else format_length(length_m, self.units)

    def thin(self, length_m: float) -> str:
        """Return a small size as it was entered."""
        return show(length_m, "m_thin", self.units)

    def side_name(self, side: int) -> str:
        """Return the side by its place and, where it has one, by its name."""
        place = ("first side", "second side")[side]
        return (
            place
            if self.tunnel is None
            else named(place, self.tunnel.sides[side].name, SIDE_LETTERS)
        )

    def end_name(self, end: int) -> str:
        """Return the end by its place and, where it has one, by its name."""
        place = ("front end", "back end")[end]
        return (
            place if self.tunnel is None else named(place, self.tunnel.ends[end].name, END_LETTERS)
        )


def named(place: str, name: str, most: int) -> str:
    """Return a place with the name that people gave it, shortened where it is long."""
    plain = " ".join(name.split())
    if not plain or plain.lower() == place:
        return place
    return f"{place}: {shortened(plain, most)}"


def shortened(text: str, most: int) -> str:
    """Return a text of at most so many letters; three dots stand for the rest."""
    return text if len(text) <= most else f"{text[: most - 1].rstrip()}…"


def families_of(catalogue: Catalogue) -> tuple[str, ...]:
    """Return film and the groups of the parts of a catalogue, each once, in its order."""
    return tuple(dict.fromkeys((FILM, *(part.group for part in catalogue.parts))))


def usual_paper(units: Units) -> Paper:
    """Return the paper that people with these units mostly have."""
    return PAPERS["letter" if units == "imperial" else "a4"]


def subject_of(farm: Farm, tunnel: Tunnel, paper: Paper, units: Units) -> MeasuringSubject:
    """Return what the sheet of one tunnel of a farm is made for."""
    return MeasuringSubject(paper, units, families_of(farm.catalogue), farm.name, tunnel)


def blank_subject(catalogue: Catalogue, paper: Paper, units: Units) -> MeasuringSubject:
    """Return what a sheet for any tunnel is made for, with the families of a catalogue."""
    return MeasuringSubject(paper, units, families_of(catalogue))
