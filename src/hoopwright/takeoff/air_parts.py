"""What the air between two layers takes, and tapes and spares for the film.

The lengths and rates here are common practice without a published source.
"""

import math
from collections.abc import Iterator

from hoopwright.inflation.inflation import Jumper
from hoopwright.quantity.working import Term, phrase
from hoopwright.takeoff.need import Need
from hoopwright.takeoff.site import Site, need

HOSE_M = 0.9
FLANGES_AT_JUMPER = 2
CLAMPS_AT_HOSE = 2
BOW_TAPE_M = 0.9
REPAIR_TAPE_M_M2 = 0.05
SEAL_OF_ELEMENT_M = 150.0


def count_air(site: Site) -> Iterator[Need]:
    """Return blower, outside-air inlet, jumpers and their fittings.

    Source:
        Air from outside through one blower, one flange where its hose meets the inner layer, one
        at each end of a jumper, a clamp at each end of a hose: common practice, no published
        source.
    """
    if site.air.blower is not None and site.inflation.cells:
        where = phrase("inflation blower")
        mark = "air/blower"
        yield need(site.catalogue.blower(site.air.blower).part, 1, where, mark, "One for the tunnel")
        yield need("air_inlet", 1, where, mark, "One for the blower, so that it takes outside air")
        yield from _count_hose(site, where.template, mark, flanges=1)
    for number, jumper in enumerate(site.inflation.jumpers, start=1):
        yield from _count_hose(site, f"jumper {number}", jumper.mark, FLANGES_AT_JUMPER, jumper)


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
    if site.inflation.seal_m > 0:
        yield need(
            "seal_element",
            math.ceil(site.inflation.seal_m / SEAL_OF_ELEMENT_M - 1e-9),
            phrase("sealing bench"),
            "roof",
            "Length of all seals divided by what one element seals, rounded up",
            Term("seals", site.inflation.seal_m, "m"),
            Term("one element seals", SEAL_OF_ELEMENT_M, "m"),
        )


def _count_hose(
    site: Site, name: str, mark: str, flanges: int, jumper: Jumper | None = None
) -> Iterator[Need]:
    where = phrase("{name} at {at}", name=name, at=(jumper.at_m, "m")) if jumper else phrase(name)
    part = site.part("jumper_hose")
    by_length = part is None or part.counted_in == "m"
    yield need(
        "jumper_hose",
        HOSE_M if by_length else 1,
        where,
        mark,
        "One hose",
        Term("one hose", HOSE_M, "m"),
    )
    yield need("jumper_flange", flanges, where, mark, "One at each film that the hose meets")
    yield need("hose_clamp", CLAMPS_AT_HOSE, where, mark, "One at each end of the hose")
