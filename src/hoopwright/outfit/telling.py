"""What published figures and common cautions stand beside gutters, shade cloth and screens."""

from hoopwright.outfit.outfit import RainWork, ShadeLaid, SideScreen
from hoopwright.quantity.working import Phrase, phrase

SHADE_SOURCE = (
    "Purdue University, Vegetable Crops Hotline, Add Shade to High Tunnels; scratches: University "
    "of Illinois Extension, High Tunnel Maintenance"
)
USUAL_SHADE = 0.30
BARE_K, SHADED_K = 321.483, 315.928
SCREEN_SOURCE = (
    "Bartok, Natural ventilation guidelines, Greenhouse Management, August 2015; Harmanto, Tantau "
    "and Salokhe, Influence of insect screens with different mesh sizes, CIGR e-journal"
)
FINER_SHARES = (0.35, 0.50)


def told_rain(work: RainWork) -> Phrase:
    """Return what one rain brings, and what a gutter asks of the frame."""
    if not work.gutters:
        return phrase("No gutter hangs on a hip board, so no water of a rain is caught.")
    return phrase(
        "One rain brings {water} off {area} of roof, {flow} in the heaviest. Full of water, ice or "
        "snow a gutter is a load on the hip board and the bows: ask a qualified engineer and keep "
        "to local rules before it goes up. Lead overflow away from the baseboards.",
        water=(work.water_m3, "m3_water"),
        area=(work.plan_area_m2, "m2"),
        flow=(work.rain_m3_s, "m3/s_water"),
    )


def told_shade(laid: ShadeLaid) -> Phrase:
    """Return the published shade beside the one entered, and what the cloth does to the tunnel.

    Source:
        `SHADE_SOURCE`; wind: common practice, no published source.
    """
    return phrase(
        "The cloth takes {shade} of the light over {floor} of the floor; {usual} is usual for "
        "vegetables, and in one test air of {bare} came down to {shaded}. It scratches the film it "
        "moves on. Loose cloth is a sail: pull it on in calm air, tie every edge, take it off "
        "before storms and snow.",
        shade=(laid.shade_share, "share"),
        floor=(laid.floor_share, "share"),
        usual=(USUAL_SHADE, "share"),
        bare=(BARE_K, "K"),
        shaded=(SHADED_K, "K"),
    )


def told_screen(hung: SideScreen) -> Phrase:
    """Return what a screen keeps out and what it costs in air, beside the published figures.

    Source:
        `SCREEN_SOURCE`, and the table of insects.
    """
    return phrase(
        "Holes of {hole} keep out {kept} and let in {rest}. Behind the screen the opening is worth "
        "{free}, {share} of the floor. Published guidelines advise against screens with natural "
        "ventilation; finer meshes were measured to lose {less} to {more} of the air of a coarser "
        "one, with the air inside 1 to 3 °C (2 to 5 °F) warmer.",
        hole=(hung.hole_m, "m_film"),
        kept=_named(hung.keeps_out),
        rest=_named(hung.lets_in),
        free=(hung.free_m2, "m2"),
        share=(hung.free_share, "share"),
        less=(FINER_SHARES[0], "share"),
        more=(FINER_SHARES[1], "share"),
    )


def _named(insects: tuple[str, ...]) -> str:
    return ", ".join(insects) if insects else "none of the published table"
