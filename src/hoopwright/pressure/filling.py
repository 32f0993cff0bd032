"""How a flat net of cells fills once the blower runs.

A cell grows by what it gets less what it leaks. Its pressure follows its volume: a flat film
rises with the third root of the pressure (shallow, elastic), so p = p_d (V / V_d)**3 with the
volume V_d that it has at a pressure p_d. Hoses and blower follow at once; the air in them weighs
nothing beside the film's play.

Marched forward with steps of the third order, each checked against one of the second; a step is
never so long that a cell gains more than a hundredth of its volume, so that between two kept
moments everything runs straight.

Source:
    Third root: derived for a flat elastic film, see `hoopwright.pressure.membrane`. Steps:
    Bogacki and Shampine, A 3(2) pair of Runge-Kutta formulas, Applied Mathematics Letters 2(4),
    321-325 (1989), from memory.
"""

from collections.abc import Sequence

from msgspec import Struct

from hoopwright.pressure.balance import balance_air
from hoopwright.pressure.fan import FanCurve
from hoopwright.pressure.hose import Hose, driven_flow
from hoopwright.pressure.net import AirNet, Way, joined_ways, split_joined
from hoopwright.quantity.factors import HOUR_S, MINUTE_S

# A cell counts as filled at this share of its final pressure; common practice, no published
# source.
FILLED_SHARE = 0.95
LIMIT_S = 24 * HOUR_S

_STEP_SHARE = 0.01
_CLOSE = 1e-5
_CLOSE_PA = 1e-9
_ROUNDS = 100


class Filling(Struct, frozen=True, kw_only=True):
    """The course of filling, moment by moment.

    Attributes:
        cells: Marks of the cells, in the net's order.
        times_s: Moments since the start, s.
        pressures_pa: At each moment the pressure of each cell, Pa.
        volumes_m3: At each moment the volume of each cell, m3.
        final_pa: Pressure of each cell at rest, Pa.
        minutes: Until each cell is filled, min; None for one without air or not in time.
    """

    cells: tuple[str, ...]
    times_s: tuple[float, ...]
    pressures_pa: tuple[tuple[float, ...], ...]
    volumes_m3: tuple[tuple[float, ...], ...]
    final_pa: tuple[float, ...]
    minutes: tuple[float | None, ...]


class _Growth(Struct, frozen=True):
    """The joined part of a net while it fills; cells are counted by their share of V_d.

    Attributes:
        net: The whole net.
        places: Where each joined cell stands in the net.
        ways: See `joined_ways`.
        volumes: V_d of each joined cell, m3.
        design_pa: p_d, Pa.
    """

    net: AirNet
    places: tuple[int, ...]
    ways: tuple[Way, ...]
    volumes: tuple[float, ...]
    design_pa: float

    def pressures(self, shares: Sequence[float]) -> list[float]:
        """Return the pressure of each joined cell, Pa."""
        return [self.design_pa * max(share, 0.0) ** 3 for share in shares]

    def rates(self, shares: Sequence[float]) -> list[float]:
        """Return how the shares grow, 1/s."""
        pressures = self.pressures(shares)
        gains = [
            -self.net.cells[at].leak_m3_s(pa) for at, pa in zip(self.places, pressures, strict=True)
        ]
        feeds = []
        for one, other, hose in self.ways:
            if one == len(pressures):
                feeds.append((other, hose))
                continue
            flow = driven_flow(hose, pressures[one] - pressures[other])
            gains[one] -= flow
            gains[other] += flow
        outlet = outlet_pressure([(hose, pressures[at]) for at, hose in feeds], self.net.fan)
        for at, hose in feeds:
            gains[at] += driven_flow(hose, outlet - pressures[at])
        return [gain / volume for gain, volume in zip(gains, self.volumes, strict=True)]


def fill_net(
    net: AirNet,
    volumes_m3: Sequence[float],
    design_pa: float,
    filled_share: float = FILLED_SHARE,
    limit_s: float = LIMIT_S,
) -> Filling:
    """Return how the cells fill from flat until all with air are filled or time is up.

    Args:
        net: The cells, hoses and the blower.
        volumes_m3: Volume of each cell at the design pressure, m3, above zero.
        design_pa: The pressure those volumes belong to, Pa, above zero.
        filled_share: Share of its final pressure at which a cell counts as filled, under 1.
        limit_s: When to stop, s.

    Raises:
        ValueError: A volume, the pressure or the share is out of its range, or see
            `balance_air`; the message names the field and the mend.

    Source:
        See the module.
    """
    _check(net, volumes_m3, design_pa, filled_share)
    final_pa = balance_air(net).pressures_pa
    joined, _ = split_joined(net)
    marks = [cell.mark for cell in joined]
    places = tuple(at for at, cell in enumerate(net.cells) if cell.mark in marks)
    growth = _Growth(
        net, places, joined_ways(net, joined), tuple(volumes_m3[at] for at in places), design_pa
    )
    goals = [(filled_share * final_pa[at] / design_pa) ** (1 / 3) for at in places]
    course = _march(growth, goals, limit_s)
    minutes: list[float | None] = [None] * len(net.cells)
    for joined_at, at in enumerate(places):
        minutes[at] = _minutes_to(course, joined_at, goals[joined_at])
    wide = [_widen(shares, growth) for _, shares in course]
    return Filling(
        cells=net.marks,
        times_s=tuple(time for time, _ in course),
        pressures_pa=tuple(tuple(growth.pressures(shares)) for shares in wide),
        volumes_m3=tuple(
            tuple(s * v for s, v in zip(shares, volumes_m3, strict=True)) for shares in wide
        ),
        final_pa=final_pa,
        minutes=tuple(minutes),
    )


def outlet_pressure(feeds: Sequence[tuple[Hose, float]], fan: FanCurve) -> float:
    """Return the pressure at which the blower gives what its feeds carry, Pa.

    Secants between two pressures that hem it in; one that stays put is halved in weight, so that
    both come closer.

    Args:
        feeds: Each feed's hose and the pressure at its far end, Pa.
        fan: The blower's curve.

    Returns:
        Pressure at the outlet, at most the most the blower holds.

    Source:
        Derived here; the halved weight is known as the Illinois rule (textbook).
    """

    def spare(outlet_pa: float) -> float:
        return fan.flow_m3_s(outlet_pa) - sum(driven_flow(h, outlet_pa - pa) for h, pa in feeds)

    low, high = min(pa for _, pa in feeds), fan.most_pa
    above, below = spare(low), spare(high)
    if below >= 0 or low >= high:
        return high
    side = 0
    for _ in range(_ROUNDS):
        middle = (low * below - high * above) / (below - above)
        found = spare(middle)
        if found == 0 or high - low <= _CLOSE_PA * fan.most_pa:
            return middle
        if found > 0:
            low, above, below = middle, found, below / 2 if side > 0 else below
            side = 1
        else:
            high, below, above = middle, found, above / 2 if side < 0 else above
            side = -1
        if abs(found) <= _CLOSE_PA * fan.most_m3_s:
            return middle
    return (low + high) / 2


def _check(net: AirNet, volumes_m3: Sequence[float], design_pa: float, filled_share: float) -> None:
    if len(volumes_m3) != len(net.cells) or not all(volume > 0 for volume in volumes_m3):
        raise ValueError(
            "volumes_m3: give one volume above zero for each cell, that at the design pressure."
        )
    if not design_pa > 0:
        raise ValueError(
            f"design_pa must be above zero, not {design_pa!r} Pa. Enter the pressure that the "
            "volumes belong to."
        )
    if not 0 < filled_share < 1:
        raise ValueError(
            f"filled_share must be between 0 and 1, not {filled_share!r}. The last of the "
            "pressure never comes; enter 0.95."
        )


def _march(
    growth: _Growth, goals: Sequence[float], limit_s: float
) -> list[tuple[float, list[float]]]:
    time, shares = 0.0, [0.0] * len(goals)
    rates = growth.rates(shares)
    course = [(time, shares)]
    step = limit_s
    while time < limit_s and any(s < goal for s, goal in zip(shares, goals, strict=True)):
        fastest = max(abs(rate) for rate in rates)
        step = min(step, limit_s - time, _STEP_SHARE / fastest if fastest else limit_s)
        ahead, rates_ahead, error = _step(growth, shares, rates, step)
        if error <= _CLOSE:
            time, shares, rates = time + step, ahead, rates_ahead
            course.append((time, shares))
        step *= min(3.0, max(0.2, 0.9 * (_CLOSE / error) ** (1 / 3))) if error else 3.0
    return course


def _step(
    growth: _Growth, shares: Sequence[float], rates: Sequence[float], step_s: float
) -> tuple[list[float], list[float], float]:
    """Return the shares and rates after a step, and how far both orders lie apart."""
    first = rates
    second = growth.rates([s + step_s * a / 2 for s, a in zip(shares, first, strict=True)])
    third = growth.rates([s + step_s * b * 3 / 4 for s, b in zip(shares, second, strict=True)])
    stages = list(zip(shares, first, second, third, strict=True))
    ahead = [s + step_s * (2 * a + 3 * b + 4 * c) / 9 for s, a, b, c in stages]
    fourth = growth.rates(ahead)
    error = max(
        abs(step_s * (-5 * a / 72 + b / 12 + c / 9 - d / 8))
        for (_, a, b, c), d in zip(stages, fourth, strict=True)
    )
    return ahead, fourth, error


def _minutes_to(
    course: Sequence[tuple[float, Sequence[float]]], at: int, goal: float
) -> float | None:
    """Return when a cell first has a share of its volume, min; None when it does not."""
    before_s, before = course[0][0], course[0][1][at]
    for time_s, shares in course[1:]:
        share = shares[at]
        if share >= goal:
            return (before_s + (goal - before) / (share - before) * (time_s - before_s)) / MINUTE_S
        before_s, before = time_s, share
    return None


def _widen(shares: Sequence[float], growth: _Growth) -> list[float]:
    """Return the shares of all cells of the net, 0 for those without air."""
    wide = [0.0] * len(growth.net.cells)
    for at, share in zip(growth.places, shares, strict=True):
        wide[at] = share
    return wide
