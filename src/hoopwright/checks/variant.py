"""One tunnel as the stages left it: both ways to skin it, and what the checks found."""

from collections.abc import Callable
from dataclasses import dataclass, field

from hoopwright.airing import Airing
from hoopwright.cost import Cost
from hoopwright.cover import Cover, SheetWidth
from hoopwright.curtain import CurtainWork
from hoopwright.fit import Fit
from hoopwright.heat import Warmth
from hoopwright.inflation import Inflation
from hoopwright.order import Order
from hoopwright.outfit import Outfit
from hoopwright.pressure import Held
from hoopwright.quantity.finding import Finding
from hoopwright.survey import Survey
from hoopwright.takeoff import Need, Sheets


@dataclass(frozen=True, slots=True, kw_only=True)
class Variant:
    """One tunnel skinned one way.

    Attributes:
        cover: Sheets.
        curtains: Mechanics of each curtain.
        inflation: Seals, cells, jumpers.
        airing: What opens and what air passes.
        outfit: Gutters, shade cloth, insect screens.
        needs: What each place needs, and what of it stays.
        sheets: Sheets to cut and sheets that stay.
        order: What to buy for this tunnel by itself.
        cost: What that costs, without freight.
    """

    cover: Cover
    curtains: tuple[CurtainWork, ...]
    inflation: Inflation
    airing: Airing
    outfit: Outfit
    needs: tuple[Need, ...]
    sheets: Sheets
    order: Order
    cost: Cost


@dataclass(frozen=True, slots=True, kw_only=True)
class TunnelPlan:
    """Everything about one tunnel.

    Attributes:
        name: Name of the tunnel.
        survey: The frame as built.
        chosen: The covering that was chosen.
        other_sheet: How wide the sheet over the bows is in the other covering, for comparison.
        other_made: Gives the whole other covering; worked out when somebody asks for it.
        fit: How sure it is that each stock width is wide enough.
        held: The cells of the chosen covering under pressure.
        warmth: What it loses in heat and what the second layer saves.
        findings: Faults, cautions and notes of this tunnel.
    """

    name: str
    survey: Survey
    chosen: Variant
    other_sheet: SheetWidth = field(compare=False, repr=False)
    other_made: Callable[[], Variant] = field(compare=False, repr=False)
    fit: Fit
    held: Held
    warmth: Warmth
    findings: tuple[Finding, ...]

    @property
    def other(self) -> Variant:
        """The other covering, for comparison."""
        return self.other_made()
