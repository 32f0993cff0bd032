"""Roughly how long the cells take to fill, without marching them moment by moment.

All cells that air reaches are taken to fill side by side, as one space whose pressure grows with
the third power of its volume. With s the share of the final volume the air still needed is V, what
the blower gives against the pressure that far less what leaks is q(s), and the time is V times the
integral of ds / q(s) up to the share that counts as filled. Near the end q falls to nothing, so
the integral runs over -ln(1 - s), where it is smooth.

A jumper that is thin for its cell makes that cell late: the cell then takes at least its own
volume over what the jumper lets through, which grows about with the root of what drives it.
"""

import math
from collections.abc import Mapping, Sequence

from hoopwright.pressure.balance import AirBalance
from hoopwright.pressure.filling import FILLED_SHARE
from hoopwright.pressure.hose import loss_and_slope
from hoopwright.pressure.net import AirNet
from hoopwright.quantity.factors import MINUTE_S

# Gauss and Legendre, six places from 0 to 1 and their weights (textbook).
_PLACES = (
    (0.033765242898424, 0.085662246189585),
    (0.169395306766868, 0.180380786524069),
    (0.380690406958402, 0.233956967286346),
    (0.619309593041598, 0.233956967286346),
    (0.830604693233132, 0.180380786524069),
    (0.966234757101576, 0.085662246189585),
)
_ROUNDS = 40
_CLOSE = 1e-4


def fill_minutes(
    net: AirNet, found: AirBalance, volumes_m3: Sequence[float], full_pa: float
) -> dict[str, float]:
    """Return roughly until when each cell that air reaches is filled, min.

    Args:
        net: The net.
        found: The same net at rest.
        volumes_m3: Air in each cell when full, m3.
        full_pa: Pressure those volumes belong to, Pa.

    Returns:
        Minutes by mark; cells that stay flat are left out.

    Source:
        See the module.
    """
    final_m3 = {
        mark: volume * (pa / full_pa) ** (1 / 3)
        for mark, pa, volume in zip(found.cells, found.pressures_pa, volumes_m3, strict=True)
        if mark not in found.unjoined and mark not in found.unfilled
    }
    if not final_m3:
        return {}
    together = _together_s(net, found, sum(final_m3.values()))
    alone = _alone_s(net, found, final_m3)
    return {
        mark: max(together, alone.get(mark, 0.0)) / MINUTE_S
        for mark in final_m3
        if math.isfinite(together)
    }


def _together_s(net: AirNet, found: AirBalance, volume_m3: float) -> float:
    feed = net.feeds[0]
    fed_pa = found.pressure_pa(feed.into)
    exponent = net.cells[0].exponent
    final_m3_s = sum(found.leaks_m3_s)
    top = -math.log(1 - FILLED_SHARE ** (1 / 3))
    total, flow = 0.0, found.fan_flow_m3_s
    for place, weight in reversed(_PLACES):
        share = 1 - math.exp(-top * place)
        flow = _given(net, fed_pa * share**3, flow)
        gain = flow - final_m3_s * share ** (3 * exponent)
        if gain <= 0:
            return math.inf
        total += weight * top * (1 - share) / gain
    return volume_m3 * total


def _given(net: AirNet, fed_pa: float, near: float) -> float:
    """Return what the blower gives against a pressure in the cell it feeds, m3/s.

    Newton's steps from a flow that is near; one that leaves the hem is replaced by halving.
    """
    fan, hose = net.fan, net.feeds[0].damped
    low, high = 0.0, fan.most_m3_s
    flow = min(near, high)
    for _ in range(_ROUNDS):
        loss_pa, slope = loss_and_slope(hose, flow)
        spare_pa = fan.pressure_pa(flow) - loss_pa - fed_pa
        if spare_pa > 0:
            low = flow
        else:
            high = flow
        step = spare_pa / (slope - fan.slope(flow))
        flow += step
        if abs(step) <= _CLOSE * fan.most_m3_s:
            break
        if not low <= flow <= high:
            flow = (low + high) / 2
    return min(max(flow, 0.0), fan.most_m3_s)


def _alone_s(net: AirNet, found: AirBalance, final_m3: Mapping[str, float]) -> dict[str, float]:
    """Return how long each cell takes through its own jumpers while those before it stand, s."""
    pressures = dict(zip(found.cells, found.pressures_pa, strict=True))
    gains: dict[str, float] = {}
    for jump, flow in zip(net.jumps, found.jump_flows_m3_s, strict=True):
        giver, taker = jump.from_cell, jump.to_cell
        if flow < 0:
            giver, taker = taker, giver
        drop_pa = pressures[giver] - pressures[taker]
        if drop_pa > 0:
            driven_pa = pressures[giver] - pressures[taker] / 4
            gains[taker] = gains.get(taker, 0.0) + abs(flow) * math.sqrt(driven_pa / drop_pa)
    leaks = {c.mark: c.leak_m3_s(pressures[c.mark] / 4) for c in net.cells}
    return {
        mark: FILLED_SHARE * final_m3[mark] / (gain - leaks[mark])
        for mark, gain in gains.items()
        if mark in final_m3 and gain > leaks[mark]
    }
