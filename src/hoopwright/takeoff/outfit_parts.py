"""What gutters, shade cloth and insect screens take.

Spacings are the catalogue's. The edges of a screen are held by laths on hip board, baseboard and
the two bows beside the opening.
"""

import math
from collections.abc import Iterator

from hoopwright.outfit import Gutter, ShadeLaid, SideScreen
from hoopwright.quantity.working import DERIVED, PRACTICE, Phrase, Term, phrase
from hoopwright.takeoff.need import Need, Place
from hoopwright.takeoff.places import SIDES
from hoopwright.takeoff.site import Site, count_spaced, need

ENDS_OF_A_GUTTER = 2
GROMMETS_AT_A_LAP = 2
NOTHING = 1e-9


def count_outfit(site: Site) -> Iterator[Need]:
    """Return what gutters, shade cloth and screens take.

    Source:
        Sizes are those of the outfit; rules of fixing: common practice, no published source.
    """
    outfit = site.outfit
    if outfit.rain is not None:
        for gutter in outfit.rain.gutters:
            yield from _count_gutter(gutter, site)
            yield from _count_outlets(gutter, site)
    if outfit.shade is not None:
        yield from _count_shade(outfit.shade)
        yield from _count_ties(outfit.shade)
    for screen in outfit.screens:
        yield from _count_screen(screen, site)


def _count_gutter(gutter: Gutter, site: Site) -> Iterator[Need]:
    where = phrase("{side}: gutter", side=site.sides[gutter.side].name)
    run = Term("gutter", gutter.length_m, "m")
    yield need(
        "gutter", gutter.length_m, where, gutter.mark, "As long as the tunnel", run, source=DERIVED
    )
    stick = site.part("gutter")
    if stick is not None:
        yield need(
            "gutter_joint",
            math.ceil(gutter.length_m / stick.holds - NOTHING) - 1,
            where,
            gutter.mark,
            "Between two sticks of gutter",
            run,
            Term("stick", stick.holds, "m"),
        )
    spacing_m = site.spacing_m("gutter_bracket")
    yield need(
        "gutter_bracket",
        count_spaced(gutter.length_m, spacing_m),
        where,
        gutter.mark,
        "Length divided by the spacing, rounded up, and one more for the end",
        run,
        Term("spacing", spacing_m, "m"),
    )
    yield need("gutter_end", ENDS_OF_A_GUTTER, where, gutter.mark, "One at each end of the gutter")


def _count_outlets(gutter: Gutter, site: Site) -> Iterator[Need]:
    where = phrase("{side}: downpipes", side=site.sides[gutter.side].name)
    mark, outlets = gutter.mark, Term("outlets", gutter.outlets, "count")
    told = gutter.working("outlets")
    yield need(
        "gutter_outlet",
        gutter.outlets,
        where,
        mark,
        told.rule.removesuffix("."),
        outlets,
        source=told.source,
    )
    if gutter.downpipe_m <= 0:
        return
    pipe = Term("down to the ground", gutter.downpipe_m, "m")
    yield need(
        "downpipe",
        gutter.outlets * gutter.downpipe_m,
        where,
        mark,
        "One from each outlet down to the ground; pipe on to a tank or a drain is not counted",
        outlets,
        pipe,
        source=DERIVED,
    )
    spacing_m = site.spacing_m("downpipe_strap")
    yield need(
        "downpipe_strap",
        gutter.outlets * count_spaced(gutter.downpipe_m, spacing_m),
        where,
        mark,
        "On each pipe its length divided by the spacing, rounded up, and one more for the end",
        outlets,
        pipe,
        Term("spacing", spacing_m, "m"),
    )


def _count_shade(laid: ShadeLaid) -> Iterator[Need]:
    told = laid.working("cloth_m")
    yield _on_roof(
        laid,
        laid.part,
        laid.cloth_m,
        phrase("shade cloth"),
        told.rule.removesuffix("."),
        *told.inputs,
        source=told.source,
    )
    yield _on_roof(
        laid,
        "shade_cord",
        2 * laid.across_m,
        phrase("ends of the shade cloth"),
        "One over the tunnel at each end of the cloth, which the ties there hold to",
        Term("over the tunnel", laid.across_m, "m"),
    )


def _count_ties(laid: ShadeLaid) -> Iterator[Need]:
    where = phrase("edges and laps of the shade cloth")
    edge = Term("ties around the edge", laid.edge_ties, "count")
    seam = Term("ties at laps", laid.seam_ties, "count")
    rule = "One at each tie of the edge, two at each tie of a lap"
    grommets = laid.edge_ties + GROMMETS_AT_A_LAP * laid.seam_ties
    yield _on_roof(laid, "shade_grommet", grommets, where, rule, edge, seam)
    ties = laid.edge_ties + laid.seam_ties
    yield _on_roof(laid, "shade_tie", ties, where, "Around the edge and at laps", edge, seam)
    hooks = Term("ties along the two sides", laid.hooks, "count")
    rule = "One for each tie along the two sides"
    yield _on_roof(laid, "shade_hook", laid.hooks, where, rule, hooks)


def _on_roof(
    laid: ShadeLaid,
    part: str,
    quantity: float,
    where: Phrase,
    rule: str,
    *inputs: Term,
    source: str = PRACTICE,
) -> Need:
    place = Place("roof", laid.from_m, laid.to_m)
    return need(part, quantity, where, "roof", rule, *inputs, source=source, place=place)


def _count_screen(hung: SideScreen, site: Site) -> Iterator[Need]:
    told = hung.working("screen_m")
    name = site.sides[hung.side].name
    place = Place(SIDES[hung.side], hung.from_m, hung.to_m)
    yield need(
        hung.part,
        hung.screen_m,
        phrase("{side}: insect screen", side=name),
        hung.mark,
        told.rule.removesuffix("."),
        *told.inputs,
        source=told.source,
        place=place,
    )
    where = phrase("{side}: edges of the insect screen", side=name)
    edges_m = (hung.to_m - hung.from_m, site.survey.side_m[hung.side])
    edges = (Term("along the opening", edges_m[0], "m"), Term("up the bow", edges_m[1], "m"))
    rule = "Above, below and at both ends of the opening"
    yield need("screen_batten", 2 * sum(edges_m), where, hung.mark, rule, *edges, place=place)
    spacing_m = site.spacing_m("screen_screw")
    yield need(
        "screen_screw",
        2 * sum(count_spaced(edge_m, spacing_m) for edge_m in edges_m),
        where,
        hung.mark,
        "Each lath divided by the spacing, rounded up, and one more for the end",
        *edges,
        Term("spacing", spacing_m, "m"),
        place=place,
    )
