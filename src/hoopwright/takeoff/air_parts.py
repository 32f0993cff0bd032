"""What the air between two layers takes, and tapes and spares for the film.

The rates of tape are common practice without a published source.
"""

from collections.abc import Iterator
from dataclasses import replace

from hoopwright.farm import Hose
from hoopwright.farm.condition import Where
from hoopwright.inflation import feed_hose, jumper_hose
from hoopwright.quantity.working import ENTERED, Phrase, Term, phrase
from hoopwright.takeoff.need import Need, Place
from hoopwright.takeoff.places import SIDES
from hoopwright.takeoff.site import Site, need

HOSE = "jumper_hose"
FLANGES_AT_JUMPER = 2
CLAMPS_AT_HOSE = 2
BOW_TAPE_M = 0.9
REPAIR_TAPE_M_M2 = 0.05


def count_air(site: Site) -> Iterator[Need]:
    """Return blower, outside-air inlet, hoses and their fittings.

    Source:
        One flange where the hose of the blower meets the inner layer, one at each end of a
        jumper, a clamp at each end of a hose: common practice, no published source.
    """
    air, hoses = site.air, site.catalogue.hoses
    if air.blower is not None and site.inflation.cells:
        where = phrase("inflation blower")
        mark = "air/blower"
        yield need(site.catalogue.blower(air.blower).part, 1, where, mark, "One for the tunnel")
        if air.outside_air:
            rule = "One for the blower, so that it takes outside air"
            yield need("air_inlet", 1, where, mark, rule)
        feed = feed_hose(air, hoses)
        yield from _count_hose(site, feed, air.feed_hose_m, where, mark, flanges=1)
    hose = jumper_hose(air, hoses)
    for jumper in site.inflation.jumpers:
        number = int(jumper.mark.rpartition("/")[2]) + 1
        where = phrase("{name} at {at}", name=f"jumper {number}", at=(jumper.at_m, "m"))
        part: Where = "everywhere" if jumper.side is None else SIDES[jumper.side]
        place = Place(part, jumper.at_m, jumper.at_m)
        for one in _count_hose(
            site, hose, air.jumper_hose_m, where, jumper.mark, FLANGES_AT_JUMPER
        ):
            yield replace(one, place=place)


def count_tapes(site: Site) -> Iterator[Need]:
    """Return tape on the bows, repair tape and spares for the sealer.

    Source:
        Rates: common practice, no published source.
    """
    bows = len(site.survey.bows_m)
    yield need(
        "bow_tape",
        bows * BOW_TAPE_M,
        phrase("rough places of the bows"),
        "roof",
        "A strip at ridge and hips of each bow",
        Term("bows", bows, "count"),
        Term("tape on each bow", BOW_TAPE_M, "m"),
    )
    yield need(
        "repair_tape",
        site.cover.film_area_m2 * REPAIR_TAPE_M_M2,
        phrase("kept for repairs"),
        "roof",
        "Tape for each square metre of film",
        Term("film", site.cover.film_area_m2, "m2"),
        Term("tape for one square metre", REPAIR_TAPE_M_M2, "m"),
    )
    if site.inflation.elements > 0:
        used = site.inflation.working("elements")
        yield need(
            "seal_element",
            site.inflation.elements,
            phrase("sealing bench"),
            "roof",
            used.rule.removesuffix("."),
            *used.inputs,
            source=used.source,
        )


def _count_hose(
    site: Site, hose: Hose | None, length_m: float, where: Phrase, mark: str, flanges: int
) -> Iterator[Need]:
    """Return a hose and its fittings; a hose sold as a kit is counted by the piece."""
    key = HOSE if hose is None else hose.part
    part = site.part(key)
    by_length = part is None or part.counted_in == "m"
    yield need(
        key,
        length_m if by_length else 1,
        where,
        mark,
        "One hose",
        Term("one hose", length_m, "m"),
        source=ENTERED,
    )
    yield need("jumper_flange", flanges, where, mark, "One at each film that the hose meets")
    yield need("hose_clamp", CLAMPS_AT_HOSE, where, mark, "One at each end of the hose")
