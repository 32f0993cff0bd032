"""The net of a tunnel: its cells, jumpers and blower as the searches for pressures want them.

A damper that leaves a share of the bore open takes 1 / share**2 - 1 velocity pressures of the full
bore: all that the air's greater speed in the narrow place costs, and nothing when it is open.
"""

from collections.abc import Sequence

from hoopwright.farm import Air, Blower
from hoopwright.farm import Hose as HoseChoice
from hoopwright.inflation import Cell, Inflation, feed_hose, jumper_hose
from hoopwright.pressure.fan import FanCurve
from hoopwright.pressure.hose import Hose
from hoopwright.pressure.net import AirCell, AirNet, Feed, Jump


def damper_loss(open_share: float) -> float:
    """Return the velocity pressures that a damper takes.

    Args:
        open_share: How much of the bore it leaves open, above 0, at most 1.

    Source:
        Derived here: velocity pressure in the narrow place less that in the full bore.
    """
    return 1 / open_share**2 - 1


def fan_curve(blower: Blower) -> FanCurve:
    """Return the curve of a blower.

    Source:
        The user's entry.
    """
    return FanCurve(tuple((point.flow_m3_s, point.pressure_pa) for point in blower.curve))


def plan_net(
    inflation: Inflation, air: Air, hoses: tuple[HoseChoice, ...], blower: Blower
) -> AirNet | None:
    """Return the net of a tunnel with a blower; None when it has no cell to feed or no hose.

    Args:
        inflation: Cells and jumpers.
        air: Hoses and damper as chosen. Without a chosen blower the first roof cell is fed, where
            one would be.
        hoses: Hoses of the catalogue.
        blower: The blower.
    """
    feed, jumper, into = feed_hose(air, hoses), jumper_hose(air, hoses), _fed(inflation.cells, air)
    if feed is None or jumper is None or into is None:
        return None
    across = _hose(jumper, air.jumper_hose_m)
    return AirNet(
        cells=tuple(
            AirCell(cell.mark, cell.unit_leak_m3_s, air.leak_exponent) for cell in inflation.cells
        ),
        jumps=tuple(Jump(j.from_cell, j.to_cell, across) for j in inflation.jumpers),
        feeds=(Feed(into, _hose(feed, air.feed_hose_m), damper_loss(air.open_share)),),
        fan=fan_curve(blower),
    )


def _fed(cells: Sequence[Cell], air: Air) -> str | None:
    """Return the cell that the blower's one hose leads into."""
    fed = [cell.mark for cell in cells if cell.fed]
    if not fed and air.blower is None:
        fed = [cell.mark for cell in cells if cell.place == "roof"]
    return fed[0] if fed else None


def _hose(hose: HoseChoice, length_m: float) -> Hose:
    return Hose(hose.bore_m, length_m, hose.roughness_m)
