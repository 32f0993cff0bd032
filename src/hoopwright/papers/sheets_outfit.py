"""What is added to the skin: gutters and their water, shade cloth, insect screens."""

from collections.abc import Iterator
from typing import NamedTuple

from hoopwright.farm import Rain
from hoopwright.farm.farm import Farm, Tunnel
from hoopwright.outfit import (
    Gutter,
    Outfit,
    RainWork,
    ShadeLaid,
    SideScreen,
    told_rain,
    told_screen,
    told_shade,
)
from hoopwright.papers.sheet import NOTE, TITLE, Row, Sheet, wide_row
from hoopwright.papers.sheet_figures import Figure, listed_rows
from hoopwright.plan import Plan
from hoopwright.quantity.working import Explained, Phrase, words

OUTFIT_WIDTHS = (20.0, 20.0, *(13.0 for _ in range(9)))
LAST = len(OUTFIT_WIDTHS)


class _Guttered(NamedTuple):
    tunnel: Tunnel
    gutter: Gutter

    @property
    def side(self) -> str:
        """Name of its side."""
        return self.tunnel.sides[self.gutter.side].name


class _Kept(NamedTuple):
    tunnel: Tunnel
    rain: Rain
    work: RainWork


class _Shaded(NamedTuple):
    tunnel: Tunnel
    laid: ShadeLaid


class _Screened(NamedTuple):
    tunnel: Tunnel
    hung: SideScreen

    @property
    def side(self) -> str:
        """Name of its side."""
        return self.tunnel.sides[self.hung.side].name


CARRIED: tuple[Figure[_Guttered], ...] = (
    Figure("Tunnel", lambda g: g.tunnel.name),
    Figure("Side", lambda g: g.side),
    Figure("Gutter", lambda g: g.gutter.length_m, "m"),
    Figure("Roof it drains", lambda g: g.gutter.plan_area_m2, "m2"),
    Figure("Water of one rain", lambda g: g.gutter.water_m3, "m3_water"),
    Figure("In the heaviest rain", lambda g: g.gutter.rain_m3_s, "m3/s_water"),
    Figure("Least cross section, half round", lambda g: g.gutter.section_m2, "m2_thin"),
)
OUTLETS: tuple[Figure[_Guttered], ...] = (
    Figure("Tunnel", lambda g: g.tunnel.name),
    Figure("Side", lambda g: g.side),
    Figure("One outlet takes", lambda g: g.gutter.outlet_m3_s, "m3/s_water"),
    Figure("Outlets it takes", lambda g: g.gutter.outlets_needed, "count"),
    Figure("Outlets it has", lambda g: g.gutter.outlets, "count"),
    Figure("Run to one outlet", lambda g: g.gutter.run_m, "m"),
    Figure("Fall of that run", lambda g: g.gutter.fall_m, "m_thin"),
    Figure("Fall if one way from end to end", lambda g: g.gutter.whole_fall_m, "m_thin"),
    Figure("Each pipe down to the ground", lambda g: g.gutter.downpipe_m, "size"),
)
KEPT: tuple[Figure[_Kept], ...] = (
    Figure("Tunnel", lambda k: k.tunnel.name),
    Figure("Depth of a rain", lambda k: k.rain.depth_m, "m_thin"),
    Figure("Water of one rain", lambda k: k.work.water_m3, "m3_water"),
    Figure("Tank holds", lambda k: k.rain.tank_m3, "m3_water"),
    Figure("Rains that fill it", lambda k: k.work.rains_to_fill, "ratio"),
    Figure("Runs over in one rain", lambda k: k.work.overflow_m3, "m3_water"),
)
CLOTH: tuple[Figure[_Shaded], ...] = (
    Figure("Tunnel", lambda s: s.tunnel.name),
    Figure("Widths lie", lambda s: f"{s.laid.laid} the tunnel"),
    Figure("Widths", lambda s: s.laid.widths, "count"),
    Figure("Length of each", lambda s: s.laid.cut_m, "size"),
    Figure("Sewn: along", lambda s: s.laid.along_m, "m"),
    Figure("Sewn: across", lambda s: s.laid.across_m, "m"),
    Figure("Area", lambda s: s.laid.area_m2, "m2"),
    Figure("Light it takes", lambda s: s.laid.shade_share, "share"),
    Figure("Floor under it", lambda s: s.laid.floor_share, "share"),
)
TIES: tuple[Figure[_Shaded], ...] = (
    Figure("Tunnel", lambda s: s.tunnel.name),
    Figure("Ties around the edge", lambda s: s.laid.edge_ties, "count"),
    Figure("of these with a hook", lambda s: s.laid.hooks, "count"),
    Figure("Ties at laps", lambda s: s.laid.seam_ties, "count"),
)
SCREENS: tuple[Figure[_Screened], ...] = (
    Figure("Tunnel", lambda s: s.tunnel.name),
    Figure("Side", lambda s: s.side),
    Figure("Widths", lambda s: s.hung.widths, "count"),
    Figure("Length of each", lambda s: s.hung.length_m, "size"),
    Figure("Height over all", lambda s: s.hung.height_m, "m"),
    Figure("Hole", lambda s: s.hung.hole_m, "m_film"),
    Figure("Clear opening", lambda s: s.hung.opening_m2, "m2"),
    Figure("Air it lets through", lambda s: s.hung.flow_share, "share"),
    Figure("Opening for the air", lambda s: s.hung.free_m2, "m2"),
    Figure("That of the floor", lambda s: s.hung.free_share, "share"),
)


def outfit_sheet(farm: Farm, plan: Plan) -> Sheet:
    """Return gutters with their water, shade cloth and screens of all tunnels."""
    units = farm.units
    fitted = [
        (tunnel, planned.chosen.outfit)
        for tunnel, planned in zip(farm.tunnels, plan.tunnels, strict=True)
    ]
    gutters = [_Guttered(t, g) for t, o in fitted if o.rain for g in o.rain.gutters]
    kept = [_Kept(t, t.rain, o.rain) for t, o in fitted if t.rain and o.rain]
    shades = [_Shaded(t, o.shade) for t, o in fitted if o.shade]
    screens = [_Screened(t, s) for t, o in fitted for s in o.screens]
    told = [(t.name, said) for t, outfit in fitted for said in _told(outfit)]
    none = "No gutter carries rain."
    rows = [
        wide_row("Rain, shade and screens", TITLE, LAST),
        *listed_rows("Rain in the gutters", CARRIED, gutters, units, LAST, none),
        *listed_rows("Outlets, fall and pipes", OUTLETS, gutters, units, LAST, none),
        *listed_rows("Water kept", KEPT, kept, units, LAST, "No rain is entered."),
        *listed_rows("Shade cloth", CLOTH, shades, units, LAST, "There is no shade cloth."),
        *listed_rows("Ties of the shade cloth", TIES, shades, units, LAST, "None."),
        *listed_rows("Insect screens", SCREENS, screens, units, LAST, "No side has one."),
        Row(),
        *(wide_row(words(said, units), NOTE, LAST, label=name) for name, said in told),
    ]
    return Sheet(name="Rain and shade", widths=OUTFIT_WIDTHS, rows=tuple(rows))


def outfit_explained(tunnel: Tunnel, outfit: Outfit) -> Iterator[tuple[str, Explained]]:
    """Give every result of the outfit of a tunnel with its name."""
    if outfit.rain is not None:
        yield f"{tunnel.name}, rain", outfit.rain
        for gutter in outfit.rain.gutters:
            yield f"{tunnel.name}, {tunnel.sides[gutter.side].name}: gutter", gutter
    if outfit.shade is not None:
        yield f"{tunnel.name}, shade cloth", outfit.shade
    for screen in outfit.screens:
        yield f"{tunnel.name}, {tunnel.sides[screen.side].name}: insect screen", screen


def _told(outfit: Outfit) -> Iterator[Phrase]:
    """Give what is said of the outfit beside published figures and common cautions."""
    if outfit.rain is not None and outfit.rain.gutters:
        yield told_rain(outfit.rain)
    if outfit.shade is not None:
        yield told_shade(outfit.shade)
    for screen in outfit.screens:
        yield told_screen(screen)
