"""Rules about gutters and rain, shade cloth and insect screens."""

from collections.abc import Iterator

from hoopwright.checks.case import Case
from hoopwright.farm import Rain, Tunnel
from hoopwright.farm.change import with_tunnel_value
from hoopwright.farm.side import MOVING
from hoopwright.outfit import Gutter
from hoopwright.outfit.outlets import bore_for
from hoopwright.outfit.telling import SCREEN_SOURCE, SHADE_SOURCE
from hoopwright.quantity.finding import Finding
from hoopwright.quantity.working import DERIVED, PRACTICE, Phrase, phrase

GUTTER_DROP_M = 0.1


def gutter_missing(case: Case) -> Iterator[Finding]:
    """Rain that was entered where no hip board has a gutter."""
    work = case.chosen.outfit.rain
    if work is None or work.gutters:
        return
    yield case.finding(
        "rain.no_gutter",
        "note",
        "roof",
        phrase("Rain is entered, and neither hip board has a gutter."),
        phrase("All water runs down the film and the curtains to the baseboards."),
        phrase(
            "Hang a gutter on both hip boards, {drop} below them at its low end, or take the rain "
            "out.",
            drop=(GUTTER_DROP_M, "m_thin"),
        ),
        _with_gutters(case.tunnel),
        PRACTICE,
    )


def _with_gutters(tunnel: Tunnel) -> Tunnel:
    frame = tunnel.frame
    first, second = (b.but(gutter_drop_m=GUTTER_DROP_M) for b in frame.boards)
    return tunnel.but(frame=frame.but(boards=(first, second)))


def outlets_few(case: Case) -> Iterator[Finding]:
    """Gutters with fewer outlets than the water and the length ask for; one for each."""
    work = case.chosen.outfit.rain
    if work is None:
        return
    most = max((g.outlets_needed for g in work.gutters), default=0)
    for gutter in work.gutters:
        if gutter.outlets >= gutter.outlets_needed:
            continue
        yield case.finding(
            "rain.outlets_few",
            "caution",
            gutter.mark,
            phrase(
                "{side}: the gutter has outlets: {has}; it takes {needed}.",
                side=case.tunnel.sides[gutter.side].name,
                has=gutter.outlets,
                needed=gutter.outlets_needed,
            ),
            phrase(
                "{flow} runs to them in the heaviest rain and each takes {one}; one outlet has to "
                "drain {run} of gutter. What they do not take runs over onto curtain and cranks.",
                flow=(gutter.rain_m3_s, "m3/s_water"),
                one=(gutter.outlet_m3_s, "m3/s_water"),
                run=(gutter.run_m, "m"),
            ),
            _more_outlets(case.tunnel.rain, gutter, most),
            with_tunnel_value(case.tunnel, ("rain", "outlets"), most),
            gutter.working("outlet_m3_s").source,
        )


def _more_outlets(rain: Rain | None, gutter: Gutter, most: int) -> Phrase:
    """Return how outlets are mended: by their number, or by their bore where it is the water."""
    if rain is None or gutter.run_m > rain.outlet_reach_m:
        return phrase("Give each gutter {most} outlets.", most=most)
    bore_m = bore_for(gutter.rain_m3_s / gutter.outlets, rain.outlet_head_m)
    return phrase(
        "Give each gutter {most} outlets, or those there are a bore of {bore}.",
        most=most,
        bore=(bore_m, "m_thin"),
    )


def gutter_load(case: Case) -> Iterator[Finding]:
    """Gutters on the hip boards, which load the frame."""
    work = case.chosen.outfit.rain
    if work is None or not work.gutters:
        return
    yield case.finding(
        "rain.gutter_load",
        "note",
        work.gutters[0].mark,
        phrase("A gutter hangs on the hip board."),
        phrase(
            "Full of water, ice or sliding snow it is a load that hip board and bows may not be "
            "made for; nothing here works out whether they carry it."
        ),
        phrase("Ask a qualified engineer and keep to local rules before it goes up."),
        None,
        PRACTICE,
    )


def screen_without_loss(case: Case) -> Iterator[Finding]:
    """Insect screens that were entered as if they took no air; one finding for a side."""
    for screen in case.chosen.outfit.screens:
        if screen.flow_share < 1:
            continue
        yield case.finding(
            "screen.no_loss",
            "caution",
            screen.mark,
            phrase(
                "{side}: the insect screen is entered as letting all air through.",
                side=case.tunnel.sides[screen.side].name,
            ),
            phrase(
                "Every screen takes air, a fine one half of it and more; the opening is reckoned "
                "as if there were none. Published guidelines advise against screens with natural "
                "ventilation."
            ),
            phrase("Enter the share of the air that this screen lets through, as its maker says."),
            None,
            SCREEN_SOURCE,
        )


def screen_idle(case: Case) -> Iterator[Finding]:
    """Insect screens on sides that do not open; one finding for a side."""
    for n, side in enumerate(case.tunnel.sides):
        if side.screen is None or side.kind in MOVING:
            continue
        yield case.finding(
            "screen.no_opening",
            "note",
            f"side/{n}",
            phrase("{side}: an insect screen is entered for a side that is fixed.", side=side.name),
            phrase("It is not counted, as there is no opening to hang it in."),
            phrase("Take the screen out."),
            with_tunnel_value(case.tunnel, ("sides", n, "screen"), None),
            DERIVED,
        )


def shade_scratches(case: Case) -> Iterator[Finding]:
    """Shade cloth on film that air holds up and wind moves."""
    inflated = case.tunnel.air.blower is not None and case.tunnel.skin.roof.count == 2
    if case.chosen.outfit.shade is None or not inflated:
        return
    yield case.finding(
        "shade.scratches",
        "note",
        "roof",
        phrase("Shade cloth lies on a roof of two layers with air between."),
        phrase(
            "Cloth scratches the film it moves on, and film on air gives and moves with every gust."
        ),
        phrase("Pull it tight, tie every edge and lap, and leave it on no longer than needed."),
        None,
        f"{SHADE_SOURCE}; film on air: {PRACTICE}",
    )


def shade_over_opening(case: Case) -> Iterator[Finding]:
    """Shade cloth that hangs in front of sides that open."""
    shade = case.tunnel.shade
    opens = [n for n, side in enumerate(case.tunnel.sides) if side.kind in MOVING]
    if shade is None or shade.over == "roof" or not opens:
        return
    yield case.finding(
        "shade.over_opening",
        "caution",
        f"side/{opens[0]}",
        phrase("Shade cloth hangs in front of sides that open."),
        phrase(
            "Air has to pass the cloth, which the opening is not reckoned with, and it lies over "
            "rope, roll and cranks and can be caught by them."
        ),
        phrase("Shade the roof from hip to hip alone."),
        with_tunnel_value(case.tunnel, ("shade", "over"), "roof"),
        PRACTICE,
    )
