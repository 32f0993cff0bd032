"""An invented tunnel whose sides can be of every kind, for papers that draw and list them."""

from decimal import Decimal

import samples
from hoopwright.farm import Catalogue, Farm, GearedCrank, LineDrum, Part, Side, Split, Tunnel
from hoopwright.papers.views import Views, draw_tunnel
from hoopwright.plan import TunnelPlan, plan
from hoopwright.quantity.units import Units

HALVES = (Split(at_m=12.0),)


def catalogue() -> Catalogue:
    """Return the small catalogue with a bar for a hem, a geared crank and a line drum."""
    small = samples.small_catalogue()
    geared = GearedCrank(
        key="geared",
        name="geared crank",
        arm_m=0.25,
        ratio=8.0,
        efficiency=0.5,
        mass_kg=3.0,
        part="geared",
        guide_part="guide",
        guide_buried_m=0.45,
    )
    drum = LineDrum(
        key="drum",
        name="line drum",
        arm_m=0.25,
        ratio=10.0,
        efficiency=0.6,
        drum_m=0.08,
        part="drum",
    )
    piece = Part(
        key="geared",
        group="Curtains",
        name="geared",
        counted_in="count",
        holds=1.0,
        sold_as="piece",
        price=Decimal(10),
    )
    return small.but(
        bars=(*small.bars, small.bars[0].but(key="hem_bar", name="bar for a hem", grip="hem")),
        drives=(*small.drives, geared, drum),
        parts=(*small.parts, *(piece.but(key=key) for key in ("geared", "guide", "drum"))),
    )


def with_panels(side: Side, **changes: object) -> Side:
    """Return a side with something changed at all its curtains."""
    return side.but(panels=tuple(panel.but(**changes) for panel in side.panels))


def geared_side(**changes: object) -> Side:
    """Return a roll-up side with geared cranks."""
    return with_panels(samples.side(splits=HALVES), drive="geared", **changes)


def woven_side() -> Side:
    """Return a side with woven curtains."""
    return with_panels(samples.woven_side(splits=HALVES), bar="hem_bar")


def drop_side() -> Side:
    """Return a side with drop-down curtains."""
    return with_panels(samples.drop_side("East side", HALVES), drive="drum")


def tunnel_of(first: Side, second: Side) -> Tunnel:
    """Return the small tunnel with two sides."""
    return samples.tunnel(sides=(first, second))


def farm_of(tunnel: Tunnel, units: Units = "metric") -> Farm:
    """Return a farm with one tunnel and the catalogue of every kind."""
    return Farm(
        name="Small farm",
        units=units,
        note="Invented for tests.",
        tunnels=(tunnel,),
        catalogue=catalogue(),
    )


def drawn(tunnel: Tunnel, proposed: tuple[tuple[int, float], ...] = ()) -> tuple[Views, TunnelPlan]:
    """Return the drawing of a tunnel and the plan it is drawn from."""
    (planned,) = plan(farm_of(tunnel)).tunnels
    return draw_tunnel(tunnel, planned, "metric", proposed), planned
