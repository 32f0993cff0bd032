"""Rigid sheets on end walls, and the screws that hold them.

Rigid sheets are screwed along the end bow, along the foot, along every rail and round every
opening. An end wall of film has its channel, wire and screws with the other runs.
"""

from collections.abc import Iterator
from itertools import pairwise
from math import dist

from hoopwright.cover.end_laid import EndLaid
from hoopwright.quantity.working import PRACTICE, Term, phrase
from hoopwright.takeoff.need import Need
from hoopwright.takeoff.site import TOUCH_M, Site, count_spaced, need

RIGID_SCREW = "rigid_screw"


def count_rigid(site: Site) -> Iterator[Need]:
    """Return rigid sheets and their screws.

    Source:
        Screws along bow, foot, rails and frames at the catalogue's spacing, one at each end of a
        line: common practice, no published source.
    """
    for end, wall in zip(site.ends, site.cover.ends, strict=True):
        if wall.rigid is None:
            continue
        where = phrase("{end}: rigid sheets", end=end.name)
        told = wall.rigid.working("sheet_count")
        yield need(
            wall.rigid.part,
            wall.rigid.sheet_count,
            where,
            wall.mark,
            told.rule,
            *told.inputs,
            source=told.source,
        )
        spacing_m = site.spacing_m(RIGID_SCREW)
        lines = tuple(_lines(wall))
        yield need(
            RIGID_SCREW,
            sum(count_spaced(length_m, spacing_m) for _, length_m in lines),
            where,
            wall.mark,
            "On each line its length divided by the spacing, rounded up, and one more for the end",
            *(Term(name, length_m, "m") for name, length_m in lines),
            Term("spacing", spacing_m, "m"),
            source=PRACTICE,
        )


def _lines(wall: EndLaid) -> Iterator[tuple[str, float]]:
    """Yield the lines along which the sheets are screwed."""
    yield "along the end bow", sum(dist(a, b) for a, b in pairwise(wall.outline_m))
    lines = [("along the foot", wall.foot_m)]
    lines += [(f"rail {n + 1}", rail.free_m) for n, rail in enumerate(wall.rails)]
    yield from (line for line in lines if line[1] > TOUCH_M)
    for opening in wall.openings:
        widths = 1 if opening.use == "door" else 2
        around_m = 2 * opening.height_m + widths * opening.width_m
        yield f"round {opening.use} {opening.number + 1}", around_m
