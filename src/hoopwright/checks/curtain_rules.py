"""Rules about what a curtain is made of and held by, and what it airs."""

from collections.abc import Iterator

from hoopwright.airing import told_flow, told_share
from hoopwright.airing.workings import SUMMER_SOURCE, VENT_SOURCE
from hoopwright.checks.case import Case
from hoopwright.farm.change import with_tunnel_value
from hoopwright.quantity.finding import Finding
from hoopwright.quantity.working import PRACTICE, phrase


def channel_shared(case: Case) -> Iterator[Finding]:
    """A side film whose top lies in the channel of the roof."""
    if case.tunnel.skin.covering == "one_sheet":
        return
    for n, side in enumerate(case.tunnel.sides):
        if side.top != "shared_channel" or side.kind not in ("roll_up", "fixed"):
            continue
        yield case.finding(
            "hip.channel_shared",
            "note",
            f"side/{n}/hip",
            phrase("{side}: its film shares the channel of the roof.", side=side.name),
            phrase(
                "Side film wears out before the roof; it cannot be renewed without loosening the "
                "roof sheet along that side."
            ),
            phrase("Give the side film a channel of its own on the hip board."),
            with_tunnel_value(case.tunnel, ("sides", n, "top"), "own_channel"),
            PRACTICE,
        )


def woven_without_film(case: Case) -> Iterator[Finding]:
    """A woven side whose film is not woven."""
    for n, side in enumerate(case.tunnel.sides):
        key = side.film or case.tunnel.skin.sides.outer
        if side.kind != "woven" or case.catalogue.film(key).woven:
            continue
        woven = next((film for film in case.catalogue.films if film.woven), None)
        yield case.finding(
            "film.not_woven",
            "caution",
            f"side/{n}",
            phrase(
                "{side}: the {film} of its curtains is not woven.",
                side=side.name,
                film=case.catalogue.film(key).name,
            ),
            phrase(
                "The top edge that slides into a profile and the hem that holds the bar tear out "
                "of plain film."
            ),
            phrase("Take the {film}.", film=woven.name)
            if woven
            else phrase("Enter a woven film in the catalogue and take it for this side."),
            with_tunnel_value(case.tunnel, ("sides", n, "film"), woven.key) if woven else None,
            PRACTICE,
        )


def own_sheet(case: Case) -> Iterator[Finding]:
    """A side with sheets of its own although the covering is one sheet."""
    if case.tunnel.skin.covering != "one_sheet":
        return
    for n, side in enumerate(case.tunnel.sides):
        if side.kind not in ("woven", "drop_down"):
            continue
        yield case.finding(
            "one_sheet.own_sheet",
            "note",
            f"side/{n}",
            phrase("{side} has curtains of its own beside the one sheet.", side=side.name),
            phrase("The one sheet ends at the hip board of that side, with the tail of the hip."),
            phrase("Nothing to do; the sheet is cut so."),
        )


def air_in_one_layer(case: Case) -> Iterator[Finding]:
    """A side that is to be inflated and has no curtain of two layers."""
    doubled = {span.side for span in case.chosen.cover.curtains if span.layers == 2}
    flags = case.tunnel.air.inflated_sides
    for n, side in enumerate(case.tunnel.sides):
        if not flags[n] or n in doubled:
            continue
        yield case.finding(
            "air.one_layer",
            "caution",
            f"side/{n}",
            phrase("{side} is to be inflated, but has no curtain of two layers.", side=side.name),
            phrase(
                "Air is held between two layers; woven and drop-down curtains, curtains of a film "
                "of their own and fixed film are not inflated."
            ),
            phrase("Leave the side flat."),
            with_tunnel_value(case.tunnel, ("air", "inflated_sides", n), False),
        )


def curtain_loose(case: Case) -> Iterator[Finding]:
    """A curtain that neither a rope nor anything at its bottom holds."""
    for n, side in enumerate(case.tunnel.sides):
        for work in case.chosen.curtains:
            panel = side.panels[work.index] if work.side == n else None
            if panel is None or panel.rope != "none" or panel.bottom != "none":
                continue
            path = ("sides", n, "panels", work.index, "rope")
            yield case.finding(
                "curtain.loose",
                "caution",
                work.mark,
                phrase(
                    "{side}, curtain {number}: no rope, no straps and nothing at the bottom holds "
                    "it.",
                    side=side.name,
                    number=work.index + 1,
                ),
                phrase("Wind lifts the shut curtain off the bows, beats it and tears it."),
                phrase("Lay a zigzag rope over it."),
                with_tunnel_value(case.tunnel, path, "zigzag"),
                PRACTICE,
            )


def opening_share(case: Case) -> Iterator[Finding]:
    """How much of the floor opens and what air passes, beside published figures."""
    airing = case.chosen.airing
    if airing.opening_m2 <= 0:
        return
    yield case.finding(
        "airing.share",
        "note",
        "frame",
        told_share(airing),
        told_flow(airing),
        phrase("Nothing to mend; look at it beside your crop and your climate."),
        None,
        f"{VENT_SOURCE}; fans: {SUMMER_SOURCE}",
    )
