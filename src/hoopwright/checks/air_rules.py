"""Rules about the space between two layers: what is to hold air, and whether any can come to it."""

from collections.abc import Iterator

from hoopwright.checks.case import Case
from hoopwright.farm.change import with_tunnel_value
from hoopwright.farm.change_air import with_jumpers
from hoopwright.quantity.finding import Finding
from hoopwright.quantity.working import PRACTICE, phrase

BLOWER = "blower"


def cell_not_fed(case: Case) -> Iterator[Finding]:
    """A side or an end wall that should hold air over a roof of one layer: no cell feeds it."""
    cells = case.chosen.inflation.cells
    if not cells or any(c.place.startswith("roof") for c in cells):
        return
    air, tunnel = case.tunnel.air, case.tunnel
    places = (
        *((f"side/{n}", side.name, "inflated_sides", n) for n, side in enumerate(tunnel.sides)),
        *((f"end/{n}", end.name, "inflated_ends", n) for n, end in enumerate(tunnel.ends)),
    )
    for place, name, field, n in places:
        held = any(c.place == place or c.place.startswith(f"{place}/") for c in cells)
        if not getattr(air, field)[n] or not held:
            continue
        yield case.finding(
            "air.cell_not_fed",
            "fault",
            place,
            phrase(
                "{name} is to be inflated, but the roof has one layer and no air to give.",
                name=name,
            ),
            phrase("Jumpers carry air from the roof; without it the film stays flat."),
            phrase("Give the roof two layers, or leave it flat."),
            with_tunnel_value(tunnel, ("air", field, n), False),
        )


def cell_cut_off(case: Case) -> Iterator[Finding]:
    """A cell that no chain of jumpers joins to the cell the blower feeds."""
    inflation = case.chosen.inflation
    if not any(cell.fed for cell in inflation.cells):
        return
    for cell in inflation.cells:
        if cell.mark not in inflation.no_feed:
            continue
        yield case.finding(
            "air.cell_cut_off",
            "fault",
            cell.mark,
            phrase("{cell}: no jumper brings it air.", cell=cell.name),
            phrase("It stays flat, its layers rub and chafe, and they keep little heat in."),
            phrase("Add a jumper to it, or have the jumpers worked out."),
            with_jumpers(case.tunnel, None),
        )


def jumper_idle(case: Case) -> Iterator[Finding]:
    """A jumper placed by hand where there are no two cells to join."""
    placed = case.tunnel.air.jumpers or ()
    for number in case.chosen.inflation.idle:
        kept = (*placed[:number], *placed[number + 1 :])
        yield case.finding(
            "air.jumper_idle",
            "caution",
            "air",
            phrase(
                "Jumper {number} at {at} joins nothing: there are no two cells there.",
                number=number + 1,
                at=(placed[number].at_m, "m"),
            ),
            phrase("It would be bought and blow into the open."),
            phrase("Move it to an inflated curtain, or take it away."),
            with_jumpers(case.tunnel, kept),
        )


def hose_missing(case: Case) -> Iterator[Finding]:
    """A blower and cells, and no hose in the catalogue."""
    if case.catalogue.hoses or not any(cell.fed for cell in case.chosen.inflation.cells):
        return
    yield case.finding(
        "air.hose_missing",
        "fault",
        "air",
        phrase("The catalogue has no hose for air."),
        phrase("Without its bore no pressure can be worked out, and none is on the order."),
        phrase("Add a hose with its bore to the catalogue of the farm file."),
    )


def air_from_inside(case: Case) -> Iterator[Finding]:
    """A blower that takes its air from inside the tunnel."""
    if case.tunnel.air.outside_air or not any(c.fed for c in case.chosen.inflation.cells):
        return
    yield case.finding(
        "air.from_inside",
        "caution",
        "air",
        phrase("The blower takes its air from inside the tunnel."),
        phrase(
            "Moist air condenses between the layers; the water lies in the film and costs light."
        ),
        phrase("Lead outside air to it."),
        with_tunnel_value(case.tunnel, ("air", "outside_air"), True),
        "Castilla, Greenhouse Technology and Management: air taken from outside",
    )


def blower_missing(case: Case) -> Iterator[Finding]:
    """Two layers without a blower."""
    if not case.chosen.inflation.cells or case.tunnel.air.blower is not None:
        return
    known = any(b.key == BLOWER for b in case.catalogue.blowers)
    yield case.finding(
        "air.blower_missing",
        "fault",
        "roof",
        phrase("The skin has two layers, but no blower is chosen."),
        phrase("Without air the layers rub, chafe through and save no heat."),
        phrase("Add an inflation blower with an inlet for outside air."),
        case.tunnel.but(air=case.tunnel.air.but(blower=BLOWER)) if known else None,
        "Castilla, Greenhouse Technology and Management: air taken from outside",
    )


def layers_flat(case: Case) -> Iterator[Finding]:
    """Two layers in curtains that are not sealed and inflated."""
    doubled = {span.side for span in case.chosen.cover.curtains if span.layers == 2}
    for n, side in enumerate(case.tunnel.sides):
        if n not in doubled or case.tunnel.air.inflated_sides[n]:
            continue
        flags = case.tunnel.air.inflated_sides
        flags = (True, flags[1]) if n == 0 else (flags[0], True)
        yield case.finding(
            "air.layers_flat",
            "note",
            f"side/{n}",
            phrase("{side}: the curtain has two layers and is not inflated.", side=side.name),
            phrase("Two layers lying on each other weigh twice and keep little heat in."),
            phrase("Seal and inflate the curtain, or make it of one layer."),
            case.tunnel.but(air=case.tunnel.air.but(inflated_sides=flags)),
            PRACTICE,
        )
