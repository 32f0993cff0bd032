"""Subjects of measuring sheets: both papers, both systems of units, tunnels of many sizes."""

from itertools import product

import samples
from files.varied import varied_farm
from hoopwright.farm import EvenBows, Farm, Tunnel
from hoopwright.papers.form_page import PAPERS, Paper
from hoopwright.papers.measuring_subject import MeasuringSubject, blank_subject, subject_of
from hoopwright.quantity.units import Units

LETTER, A4 = PAPERS["letter"], PAPERS["a4"]


def measured_farm() -> Farm:
    """Return the farm whose last tunnel was measured, with all that can be entered of it."""
    return varied_farm()


def measured(paper: Paper = A4, units: Units = "metric") -> MeasuringSubject:
    """Return the sheet's subject of the tunnel that was measured."""
    farm = measured_farm()
    return subject_of(farm, farm.tunnels[-1], paper, units)


def long_tunnel(count: int) -> Tunnel:
    """Return a tunnel of so many bows at 1 m, with long names."""
    plain = samples.tunnel()
    name = "A name that somebody wrote at great length for the tunnel behind the old packing shed"
    sides = tuple(
        side.but(name=name, splits=(), panels=side.panels[:1], pocket_bays=(0, 0))
        for side in plain.sides
    )
    ends = tuple(end.but(name=name) for end in plain.ends)
    bows = EvenBows(count=count, spacing_m=1.0)
    frame = plain.frame.but(bows=bows, length_m=max(1.0, count - 1.0))
    return plain.but(name=name, frame=frame, sides=sides, ends=ends)


def bows(count: int, paper: Paper = A4, units: Units = "metric") -> MeasuringSubject:
    """Return the sheet's subject of a tunnel of so many bows."""
    tunnel = long_tunnel(count)
    return subject_of(samples.small_farm(tunnel), tunnel, paper, units)


def blank(paper: Paper = A4, units: Units = "metric") -> MeasuringSubject:
    """Return the subject of a sheet for any tunnel."""
    return blank_subject(measured_farm().catalogue, paper, units)


def every_subject() -> list[MeasuringSubject]:
    """Return subjects of every kind on both papers in both systems."""
    found: list[MeasuringSubject] = []
    systems: tuple[Units, ...] = ("imperial", "metric")
    for paper, units in product((LETTER, A4), systems):
        found += [measured(paper, units), blank(paper, units)]
        found += [bows(count, paper, units) for count in (2, 5, 30, 100)]
    return found
