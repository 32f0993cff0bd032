"""What a drawing is drawn from, and how its sizes are written."""

from dataclasses import dataclass
from functools import lru_cache

from hoopwright.checks.variant import TunnelPlan, Variant
from hoopwright.farm import Tunnel
from hoopwright.pressure import HoseAir
from hoopwright.quantity.lengths import format_length
from hoopwright.quantity.units import Units, show
from hoopwright.survey import Survey


@dataclass(frozen=True, slots=True)
class Subject:
    """One tunnel, its plan, and the reader's units.

    Attributes:
        tunnel: The tunnel as entered.
        plan: Its plan.
        units: Units of the sizes on the drawing.
        proposed: Splits that are offered: side, position from the first bow in m.
        pressures: Whether cells are named by their pressures.
    """

    tunnel: Tunnel
    plan: TunnelPlan
    units: Units
    proposed: tuple[tuple[int, float], ...] = ()
    pressures: bool = False

    def offered(self, side: int) -> tuple[float, ...]:
        """Return where splits are offered on a side, m."""
        return tuple(at_m for number, at_m in self.proposed if number == side)

    def hose(self, mark: str) -> HoseAir | None:
        """Return a jumper hose under air; None when there is no such hose."""
        return next((hose for hose in self.plan.held.hoses if hose.mark == mark), None)

    def pressure(self, mark: str) -> str:
        """Return the pressure of a cell with what is wrong with it; "" when it is not asked for."""
        cell = next((cell for cell in self.plan.held.cells if cell.mark == mark), None)
        if not self.pressures or cell is None:
            return ""
        text = show(cell.pressure_pa, "Pa", self.units)
        return text if cell.state == "in range" else f"{text}, {cell.state}"

    @property
    def survey(self) -> Survey:
        """The frame as built."""
        return self.plan.survey

    @property
    def chosen(self) -> Variant:
        """The covering that was chosen."""
        return self.plan.chosen

    def size(self, length_m: float) -> str:
        """Return a length as printed on the drawing."""
        return _size(length_m, self.units)


@lru_cache(maxsize=4096)
def _size(length_m: float, units: Units) -> str:
    return format_length(length_m, units)
