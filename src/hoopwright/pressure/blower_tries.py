"""What every blower of the catalogue would do on this tunnel, and where its damper belongs.

Behind the blower's hose lie the same cells and jumpers for all blowers: for a pressure in the cell
it feeds they take one flow and come to one set of pressures. So the net is settled once with that
cell at the greatest pressure wanted. A blower that still has pressure to spare at that flow is too
strong when its damper is open; the damper can bring it down when the lowest cell is high enough in
that state. Where it belongs follows from the pressure to spare, without a search: K velocity
pressures of the hose, K = 1 / share**2 - 1. It is set so that the window of pressures lies evenly
around the cells.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from functools import lru_cache

from msgspec import Struct

from hoopwright.farm import Air, Blower, Climate
from hoopwright.pressure.balance import AirBalance, balance_air
from hoopwright.pressure.fan import FanCurve
from hoopwright.pressure.held import BlowerTry, Verdict
from hoopwright.pressure.hose import AIR_KG_M3, Hose, pressure_loss
from hoopwright.pressure.net import AirNet, Feed
from hoopwright.pressure.planned_net import fan_curve
from hoopwright.quantity.money import round_cents
from hoopwright.quantity.working import DERIVED, ENTERED, LaterWorkings, Term, Working

# The damper cannot be entered further shut.
LEAST_OPEN = 0.05

_KEPT = 64
_LEVEL = 1e-7
_WIDE = Hose(bore_m=1.0, length_m=0.1, roughness_m=0.0, loss_k=0.0)


@dataclass(frozen=True, slots=True)
class Span:
    """What the cells that air reaches come to.

    Attributes:
        low_pa: Least pressure, Pa.
        high_pa: Greatest pressure, Pa.
        flow_m3_s: Air given, m3/s.
    """

    low_pa: float
    high_pa: float
    flow_m3_s: float


class _Behind(Struct, frozen=True):
    """What lies behind the blower's hose, for all blowers alike.

    Attributes:
        net: The net with the damper open.
        low_pa: Least pressure wanted, Pa.
        high_pa: Greatest pressure wanted, Pa.
        top: The cells with the fed one at the greatest pressure wanted.
    """

    net: AirNet
    low_pa: float
    high_pa: float
    top: Span

    def aim(self) -> tuple[Span | None, float]:
        """Return the cells as a damper is to hold them and the pressure of the fed one, Pa.

        There are no such cells when no damper can.
        """
        if self.top.low_pa < self.low_pa:
            return None, self.high_pa
        # Hoses take nearly the same share of every pressure, so this puts the middle of the
        # cells on the middle of the window.
        window_pa = self.low_pa + self.high_pa
        aim_pa = min(self.high_pa, window_pa / (1 + self.top.low_pa / self.top.high_pa))
        aim = _held_at(self.net, aim_pa)
        return (self.top, self.high_pa) if aim.low_pa < self.low_pa else (aim, aim_pa)

    def spare_pa(self, fan: FanCurve, span: Span, fed_pa: float) -> float:
        """Return what a blower has to spare at a flow with its damper open, Pa."""
        if span.flow_m3_s >= fan.most_m3_s:
            return -fed_pa
        taken_pa = pressure_loss(self.net.feeds[0].hose, span.flow_m3_s)
        return fan.pressure_pa(span.flow_m3_s) - taken_pa - fed_pa


def try_blowers(
    net: AirNet, blowers: Sequence[Blower], air: Air, climate: Climate
) -> tuple[BlowerTry, ...]:
    """Return what every blower would do.

    Args:
        net: The tunnel's net with any blower.
        blowers: Blowers of the catalogue.
        air: Pressures wanted.
        climate: Hours and price of power.

    Source:
        See the module.
    """
    behind = _look_behind(net, air)
    return tuple(_try(behind, blower, air, climate) for blower in blowers)


def cheapest_fitting(
    net: AirNet, blowers: Sequence[Blower], air: Air, climate: Climate
) -> BlowerTry | None:
    """Return the blower that fits and costs least in a year, or None; dearer ones are not tried.

    Args:
        net: The tunnel's net with any blower.
        blowers: Blowers of the catalogue.
        air: Pressures wanted.
        climate: Hours and price of power.

    Source:
        See the module.
    """
    behind = _look_behind(net, air)
    by_cost = sorted(blowers, key=lambda blower: power_cost(blower.power_w, climate)[1])
    tries = (_try(behind, blower, air, climate) for blower in by_cost)
    return next((tried for tried in tries if tried.fits), None)


@lru_cache(maxsize=_KEPT)
def settled(net: AirNet) -> AirBalance:
    """Return a net at rest; equal nets are settled once.

    Source:
        `balance_air`.
    """
    return balance_air(net)


def span_of(found: AirBalance) -> Span:
    """Return the least and greatest pressure of cells that air reaches; 0 without one."""
    reached = [
        pa
        for mark, pa in zip(found.cells, found.pressures_pa, strict=True)
        if mark not in found.unjoined
    ]
    return Span(min(reached, default=0.0), max(reached, default=0.0), found.fan_flow_m3_s)


def power_cost(power_w: float, climate: Climate) -> tuple[float, Decimal]:
    """Return the electricity of a blower for a year, kWh, and what it costs.

    Source:
        Power times hours times price.
    """
    kwh = power_w * climate.blower_hours / 1000
    return kwh, round_cents(Decimal(repr(kwh)) * climate.power_price)


def _look_behind(net: AirNet, air: Air) -> _Behind:
    feed = net.feeds[0]
    bare = replace(net, feeds=(replace(feed, damper_k=0.0),))
    return _Behind(bare, air.low_pa, air.high_pa, _held_at(bare, air.high_pa))


def _held_at(net: AirNet, fed_pa: float) -> Span:
    """Return what the cells come to with the fed one at a pressure, as beside a great tank."""
    most = sum(cell.leak_m3_s(fed_pa) for cell in net.cells)
    tank = FanCurve(((0.0, fed_pa * (1 + _LEVEL)), (2 * most + _LEVEL, fed_pa * (1 - _LEVEL))))
    held = replace(net, feeds=(Feed(net.feeds[0].into, _WIDE),), fan=tank)
    return replace(span_of(settled(held)), high_pa=fed_pa)


def _try(behind: _Behind, blower: Blower, air: Air, climate: Climate) -> BlowerTry:
    fan = fan_curve(blower)
    span, verdict, open_share = _judge(behind, fan)
    kwh, cost = power_cost(blower.power_w, climate)
    return BlowerTry(
        key=blower.key,
        name=blower.name,
        chosen=blower.key == air.blower,
        low_pa=span.low_pa,
        high_pa=span.high_pa,
        flow_m3_s=span.flow_m3_s,
        verdict=verdict,
        open_share=open_share,
        yearly_cost=cost,
        workings=LaterWorkings(lambda: _workings(behind, blower, span, open_share, kwh, climate)),
    )


def _judge(behind: _Behind, fan: FanCurve) -> tuple[Span, Verdict, float]:
    too_strong = behind.spare_pa(fan, behind.top, behind.high_pa) > 0
    if too_strong:
        aim, aim_pa = behind.aim()
        open_share = 0.0 if aim is None else _damper(behind, fan, aim, aim_pa)
        if aim is not None and open_share >= LEAST_OPEN:
            return aim, "fits with the damper", open_share
    found = settled(replace(behind.net, fan=fan))
    span = span_of(found)
    if too_strong:
        return span, "too strong", 1.0
    if found.never_fills:
        return span, "never fills", 1.0
    return span, "fits" if span.low_pa >= behind.low_pa else "too weak", 1.0


def _damper(behind: _Behind, fan: FanCurve, aim: Span, aim_pa: float) -> float:
    """Return how far a damper is open that takes what a blower has to spare; 0 for none that can.

    Source:
        See the module.
    """
    hose = behind.net.feeds[0].hose
    spare_pa = behind.spare_pa(fan, aim, aim_pa)
    speed_m_s = aim.flow_m3_s / hose.area_m2
    velocity_pa = AIR_KG_M3 / 2 * speed_m_s * speed_m_s
    if velocity_pa <= 0:
        return 0.0
    return float((1 + max(0.0, spare_pa) / velocity_pa) ** -0.5)


def _workings(
    behind: _Behind,
    blower: Blower,
    span: Span,
    open_share: float,
    kwh: float,
    climate: Climate,
) -> tuple[Working, ...]:
    window = (
        Term("least wanted", behind.low_pa, "Pa"),
        Term("greatest wanted", behind.high_pa, "Pa"),
    )
    damper = Term("damper open", open_share, "share")
    reached = "of the cells that air reaches, with the blower's curve and all leaks in balance."
    low, high = Term("least", span.low_pa, "Pa"), Term("greatest", span.high_pa, "Pa")
    return (
        Working("low_pa", f"The least pressure {reached}", (damper,), CURVE_SOURCE),
        Working("high_pa", f"The greatest pressure {reached}", (damper,), CURVE_SOURCE),
        Working("flow_m3_s", "What leaks from all cells at their pressures.", (low, high)),
        Working(
            "verdict",
            "Too weak when a cell stays below the least pressure wanted, too strong when one "
            "passes the greatest. A damper helps when it brings all into the window.",
            (low, high, *window),
        ),
        Working(
            "open_share",
            "The damper takes what pressure the blower has to spare, so that the pressures of the "
            "cells lie in the middle of those wanted. It takes 1 / share squared, less one, of the "
            "velocity pressure in the hose.",
            window,
        ),
        Working(
            "yearly_cost",
            "Power times hours times price.",
            (
                Term("power of the blower", blower.power_w, "W"),
                Term("hours in a year", climate.blower_hours, "h"),
                Term("electricity", kwh, "kWh"),
                Term("price of one kWh", climate.power_price, "money"),
            ),
            ENTERED,
        ),
    )


CURVE_SOURCE = f"{DERIVED}; curve: {ENTERED}"
