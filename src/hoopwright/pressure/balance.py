"""Settle the pressures of a net of cells: what the blower gives is what leaks away.

Air comes from the blower, through feed hoses into some cells, through hoses from cell to cell,
and leaves every cell by its leaks. At rest each cell gives what it gets. There is one such state:
every flow grows with the pressure that drives it.

The search treats each hose and the blower by their flow and each leak by its pressure. All are
replaced by their tangents, which makes linear equations for the pressures; these give new flows,
and so on. A hose near rest has a finite slope, and so the tangents never stand upright. Tangents
that throw each other to and fro are calmed by going half of the way only.

Cells that no chain of hoses joins to the blower stay flat and are listed.

Source:
    Leaks: `hoopwright.pressure.net`. Tangents by flow: Todini and Pilati, A gradient method for
    the analysis of pipe networks (1987), from memory.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from msgspec import Struct

from hoopwright.pressure.elimination import elimination_order, solve_net
from hoopwright.pressure.fan import FanCurve
from hoopwright.pressure.hose import Hose, loss_and_slope
from hoopwright.pressure.net import AirCell, AirNet, Way, check_net, joined_ways, split_joined

# Below this a layer hangs slack and flaps; assumed, no published source.
FILLS_AT_PA = 10.0

_CLOSE = 1e-8
_PATIENCE, _ROUNDS = 25, 200
_SOFT, _STIFF = 1e-5, 1e5
_NEAR_ZERO = 1e-12


class AirBalance(Struct, frozen=True, kw_only=True):
    """The state in which every cell loses what it gets. All tuples are in the net's order.

    Attributes:
        cells: Marks of the cells.
        pressures_pa: Pressure of each cell above outdoors, Pa.
        leaks_m3_s: What leaks out of each cell, m3/s.
        jump_flows_m3_s: Flow along each hose between cells, m3/s; negative against its direction.
        feed_flows_m3_s: Flow through each feed, m3/s.
        fan_flow_m3_s: What the blower gives, m3/s.
        fan_pressure_pa: Pressure at the blower's outlet, Pa.
        unjoined: Cells that no chain of hoses joins to the blower; their pressure is 0.
        unfilled: Joined cells that stay below the pressure at which they count as filled.
        is_settled: Whether the search came to rest; if not, the figures are only near.
    """

    cells: tuple[str, ...]
    pressures_pa: tuple[float, ...]
    leaks_m3_s: tuple[float, ...]
    jump_flows_m3_s: tuple[float, ...]
    feed_flows_m3_s: tuple[float, ...]
    fan_flow_m3_s: float
    fan_pressure_pa: float
    unjoined: tuple[str, ...]
    unfilled: tuple[str, ...]
    is_settled: bool

    @property
    def never_fills(self) -> bool:
        """Whether the leaks take all the air before any cell is filled."""
        return len(self.unfilled) + len(self.unjoined) == len(self.cells)

    def pressure_pa(self, cell: str) -> float:
        """Return the pressure of one cell, Pa.

        Raises:
            ValueError: There is no such cell.

        Source:
            `balance_air`.
        """
        return self.pressures_pa[self.cells.index(cell)]


@dataclass(slots=True)
class _State:
    """What one round of the search starts from.

    Attributes:
        pressures: Of each joined cell, then of the blower's outlet, Pa.
        flows: Through each hose, m3/s.
        given: By the blower, m3/s.
        is_settled: Whether the last round hardly moved anything.
    """

    pressures: list[float]
    flows: list[float]
    given: float
    is_settled: bool = False


def balance_air(net: AirNet, fills_at_pa: float = FILLS_AT_PA) -> AirBalance:
    """Return the pressures and flows at which every cell loses what it gets.

    Args:
        net: The cells, hoses and the blower.
        fills_at_pa: Pressure at which a cell counts as filled, Pa.

    Raises:
        ValueError: The blower feeds no cell, a mark is unknown or listed twice, a hose has one
            cell at both ends, or a leak, exponent or damper is out of its range; the message
            names the field and the mend.

    Source:
        See the module.
    """
    check_net(net)
    joined, unjoined = split_joined(net)
    ways = joined_ways(net, joined)
    state = _settle(joined, ways, net.fan)
    pressures = dict(zip((cell.mark for cell in joined), state.pressures, strict=False))
    flows = iter(state.flows)
    jump_flows = tuple(0.0 if j.from_cell in unjoined else next(flows) for j in net.jumps)
    return AirBalance(
        cells=net.marks,
        pressures_pa=tuple(pressures.get(mark, 0.0) for mark in net.marks),
        leaks_m3_s=tuple(cell.leak_m3_s(pressures.get(cell.mark, 0.0)) for cell in net.cells),
        jump_flows_m3_s=jump_flows,
        feed_flows_m3_s=tuple(flows),
        fan_flow_m3_s=state.given,
        fan_pressure_pa=state.pressures[-1],
        unjoined=unjoined,
        unfilled=tuple(mark for mark, pa in pressures.items() if pa < fills_at_pa),
        is_settled=state.is_settled,
    )


def _settle(cells: Sequence[AirCell], ways: Sequence[Way], fan: FanCurve) -> _State:
    """Return the state at rest, no pressure or flow outside the blower's curve."""
    order = elimination_order(len(cells) + 1, ((one, other) for one, other, _ in ways))
    middle = (fan.least_m3_s + fan.most_m3_s) / 2
    state = _State([fan.most_pa / 2] * (len(cells) + 1), [middle / 2] * len(ways), middle)
    for round_at in range(_ROUNDS):
        share = 1.0 if round_at < _PATIENCE else 0.5
        if _improve(state, cells, ways, fan, order, share):
            state.is_settled = True
            break
    state.pressures = [min(pa, fan.most_pa) for pa in state.pressures]
    state.given = min(state.given, fan.most_m3_s)
    return state


def _improve(
    state: _State,
    cells: Sequence[AirCell],
    ways: Sequence[Way],
    fan: FanCurve,
    order: Sequence[int],
    share: float,
) -> bool:
    """Move the state a share of the way to where the tangents meet; say whether that is near."""
    diagonal, right = [0.0] * len(order), [0.0] * len(order)
    beside: list[dict[int, float]] = [{} for _ in order]
    tangents = [_tangent(way[2], flow) for way, flow in zip(ways, state.flows, strict=True)]
    for (one, other, _), (rest, ease) in zip(ways, tangents, strict=True):
        diagonal[one] += ease
        diagonal[other] += ease
        right[one] -= rest
        right[other] += rest
        beside[one][other] = beside[one].get(other, 0.0) - ease
        beside[other][one] = beside[one][other]
    leaks = [cell.leak_m3_s(pa) for cell, pa in zip(cells, state.pressures, strict=False)]
    for at, (cell, leak) in enumerate(zip(cells, leaks, strict=True)):
        diagonal[at] += leak * cell.exponent / state.pressures[at]
        right[at] += leak * (cell.exponent - 1)
    held, fall = _held(fan, state.given)
    diagonal[-1] += 1 / fall
    right[-1] += state.given + held / fall
    found = solve_net(diagonal, beside, right, order)
    flows = [
        rest + ease * (found[one] - found[other])
        for (one, other, _), (rest, ease) in zip(ways, tangents, strict=True)
    ]
    given = state.given + (held - found[-1]) / fall
    moved = _farthest((*flows, given), (*state.flows, state.given))
    swung = _farthest(found, state.pressures)
    floor = _NEAR_ZERO * fan.most_pa
    state.flows = _between(state.flows, flows, share)
    state.given += share * (given - state.given)
    state.pressures = [
        max(new, old / 10, floor)
        for new, old in zip(_between(state.pressures, found, share), state.pressures, strict=True)
    ]
    if moved > _CLOSE * fan.most_m3_s or swung > _CLOSE * fan.most_pa:
        return False
    # Next to no pressure a leak still moves when its pressure hardly does.
    after = [cell.leak_m3_s(pa) for cell, pa in zip(cells, state.pressures, strict=False)]
    return _farthest(after, leaks) <= _CLOSE * fan.most_m3_s


def _tangent(hose: Hose, flow: float) -> tuple[float, float]:
    """Return the flow without a pressure difference and its growth with it, on the tangent."""
    loss, slope = loss_and_slope(hose, flow)
    return flow - loss / slope, 1 / slope


def _between(here: Sequence[float], there: Sequence[float], share: float) -> list[float]:
    return [one + share * (other - one) for one, other in zip(here, there, strict=True)]


def _farthest(here: Sequence[float], there: Sequence[float]) -> float:
    return max(abs(one - other) for one, other in zip(here, there, strict=True))


def _held(fan: FanCurve, flow: float) -> tuple[float, float]:
    """Return the blower's pressure and its fall with the flow, above zero everywhere.

    Outside the points the curve is level or upright, which a tangent by flow cannot follow; it
    leans there by a hundred-thousandth.
    """
    chord = (fan.most_pa - fan.pressure_pa(fan.most_m3_s)) / (fan.most_m3_s - fan.least_m3_s)
    if flow < fan.least_m3_s:
        return fan.most_pa + _SOFT * chord * (fan.least_m3_s - flow), _SOFT * chord
    if flow > fan.most_m3_s:
        beyond = flow - fan.most_m3_s
        return fan.pressure_pa(flow) - _STIFF * chord * beyond, _STIFF * chord
    return fan.pressure_pa(flow), max(-fan.slope(flow), _SOFT * chord)
