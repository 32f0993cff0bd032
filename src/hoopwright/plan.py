"""plan(farm): the stages in order, each remembered on its frozen inputs."""

from dataclasses import dataclass

from hoopwright.cost.cost import Cost
from hoopwright.cover.cover import Cover
from hoopwright.curtain.curtain import CurtainWork
from hoopwright.farm.farm import Farm
from hoopwright.inflation.inflation import Inflation
from hoopwright.order.order import Order
from hoopwright.quantity.finding import Finding
from hoopwright.survey.survey import Survey
from hoopwright.takeoff.need import Need


@dataclass(frozen=True, slots=True, kw_only=True)
class Variant:
    """One tunnel skinned one way.

    Attributes:
        cover: Sheets.
        curtains: Mechanics of each curtain.
        inflation: Seals, cells, jumpers.
        needs: What each place needs.
        order: What to buy for this tunnel by itself.
        cost: What that costs, without freight.
    """

    cover: Cover
    curtains: tuple[CurtainWork, ...]
    inflation: Inflation
    needs: tuple[Need, ...]
    order: Order
    cost: Cost


@dataclass(frozen=True, slots=True, kw_only=True)
class TunnelPlan:
    """Everything about one tunnel.

    Attributes:
        name: Name of the tunnel.
        survey: The frame as built.
        chosen: The covering that was chosen.
        other: The other covering, for comparison.
        findings: Faults, cautions and notes of this tunnel.
    """

    name: str
    survey: Survey
    chosen: Variant
    other: Variant
    findings: tuple[Finding, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """Every number anybody shows.

    Attributes:
        tunnels: Plans of the tunnels, in the farm's order.
        order: What to buy for all tunnels together.
        cost: What that costs, with freight.
        findings: All findings, faults first.
    """

    tunnels: tuple[TunnelPlan, ...]
    order: Order
    cost: Cost
    findings: tuple[Finding, ...]
