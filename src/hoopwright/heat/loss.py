"""How fast the tunnel loses heat: through its cover and with the air that leaks.

Every surface passes U A for each kelvin between inside and outside; the air that is changed n
times an hour carries rho c V n / 3600. Their sum K is the loss for one kelvin, and K times the
greatest difference is what the heater must bring. Soil, sun and crop are left out.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from hoopwright.heat.published import AIR_J_M3_K
from hoopwright.quantity.factors import HOUR_S
from hoopwright.quantity.working import Explained, LaterWorkings, Term, Working

CONDUCTION_SOURCE = (
    "Q = U A (Ti - To), as in Miller and Nemali, Calculating Greenhouse Heating Requirements, "
    "Purdue University"
)
AIR_SOURCE = (
    "Air of 1206 J/(m3 K) (textbook), the 0.018 Btu/(ft3 degF) of greenhouse texts; air changes "
    "are the user's entry"
)


@dataclass(frozen=True, slots=True)
class Surface:
    """One part of the cover.

    Attributes:
        name: What it is, in words of the trade: roof, sides, ends.
        area_m2: Its area, m2, zero or more.
        u_w_m2_k: Heat through a square metre for one kelvin, W/m2/K, above zero.
    """

    name: str
    area_m2: float
    u_w_m2_k: float

    def __post_init__(self) -> None:
        """Refuse figures that no cover has.

        Raises:
            ValueError: A figure is out of its range; the message names the field and the mend.
        """
        if not 0 <= self.area_m2 < math.inf:
            raise ValueError(
                f"area_m2 of {self.name} must be zero or more, not {self.area_m2!r} m2. Mend it."
            )
        if not 0 < self.u_w_m2_k < math.inf:
            raise ValueError(
                f"u_w_m2_k of {self.name} must be above zero, not {self.u_w_m2_k!r} W/m2/K. Enter "
                "about 6 for one film, about 4 for two with air between."
            )

    @property
    def loss_w_k(self) -> float:
        """Heat through it for one kelvin, W/K."""
        return self.u_w_m2_k * self.area_m2


@dataclass(frozen=True, slots=True, kw_only=True)
class HeatLoss(Explained):
    """What the tunnel loses.

    Attributes:
        surfaces_w_k: Loss through each surface for one kelvin, W/K.
        air_w_k: Loss with the air changed, W/K.
        whole_w_k: Both together, W/K.
        peak_w: What the heater must bring in the coldest hour, W; 0 when it is no colder outside.
    """

    surfaces_w_k: tuple[float, ...]
    air_w_k: float
    whole_w_k: float
    peak_w: float


def heat_loss(
    surfaces: Sequence[Surface],
    volume_m3: float,
    changes_per_h: float,
    inside_k: float,
    outside_k: float,
) -> HeatLoss:
    """Return what the tunnel loses for one kelvin and in the coldest hour.

    Args:
        surfaces: The parts of the cover.
        volume_m3: Air inside, m3, zero or more.
        changes_per_h: How often it is changed, 1/h, zero or more.
        inside_k: Temperature to hold, K.
        outside_k: Temperature of the coldest hour, K.

    Raises:
        ValueError: A figure is out of its range; the message names the field and the mend.

    Source:
        Each figure keeps its own working.
    """
    for field, figure in (("volume_m3", volume_m3), ("changes_per_h", changes_per_h)):
        if not 0 <= figure < math.inf:
            raise ValueError(f"{field} must be zero or more, not {figure!r}. Mend the figure.")
    for field, figure in (("inside_k", inside_k), ("outside_k", outside_k)):
        if not 0 < figure < math.inf:
            raise ValueError(f"{field} must be above zero kelvin, not {figure!r}. Mend it.")
    air_w_k = AIR_J_M3_K * volume_m3 * changes_per_h / HOUR_S
    surfaces_w_k = tuple(surface.loss_w_k for surface in surfaces)
    whole_w_k = sum(surfaces_w_k) + air_w_k
    peak_w = whole_w_k * max(0.0, inside_k - outside_k)
    found = HeatLoss(surfaces_w_k=surfaces_w_k, air_w_k=air_w_k, whole_w_k=whole_w_k, peak_w=peak_w)
    air = (Term("air inside", volume_m3, "m3"), Term("air changes", changes_per_h, "1/h"))
    warmth = (Term("inside", inside_k, "K"), Term("outside", outside_k, "K"))
    return replace(found, workings=LaterWorkings(lambda: _workings(found, surfaces, air, warmth)))


def _workings(
    loss: HeatLoss,
    surfaces: Sequence[Surface],
    air: tuple[Term, ...],
    warmth: tuple[Term, ...],
) -> tuple[Working, ...]:
    return (
        Working(
            "surfaces_w_k",
            "Each surface times the heat that a square metre of it passes.",
            _told_surfaces(surfaces),
            CONDUCTION_SOURCE,
        ),
        Working("air_w_k", "Air changed in an hour times its heat.", air, AIR_SOURCE),
        Working("whole_w_k", "All surfaces and the air.", _told_losses(surfaces, loss.air_w_k)),
        Working(
            "peak_w",
            "Loss for one degree times the difference of both; nothing when it is no colder "
            "outside. Sun, soil and crop are left out.",
            (Term("loss", loss.whole_w_k, "W/K"), *warmth),
            CONDUCTION_SOURCE,
        ),
    )


def saved_share(one_layer_w_k: float, two_layers_w_k: float) -> float:
    """Return the share of a loss that the second layer saves.

    Args:
        one_layer_w_k: Loss with one layer, W/K, above zero.
        two_layers_w_k: The same loss with two layers, W/K.

    Raises:
        ValueError: There is no loss with one layer.

    Source:
        Derived here. Published for the cover alone: `hoopwright.heat.published.SAVED_SHARE`; the
        whole tunnel's share also holds what changes in the air that leaks.
    """
    if not one_layer_w_k > 0:
        raise ValueError(f"one_layer_w_k must be above zero, not {one_layer_w_k!r} W/K.")
    return 1 - two_layers_w_k / one_layer_w_k


def _told_surfaces(surfaces: Sequence[Surface]) -> tuple[Term, ...]:
    told = []
    for surface in surfaces:
        told.append(Term(surface.name, surface.area_m2, "m2"))
        told.append(Term(f"heat passed by {surface.name}", surface.u_w_m2_k, "W/m2/K"))
    return tuple(told)


def _told_losses(surfaces: Sequence[Surface], air_w_k: float) -> tuple[Term, ...]:
    through = tuple(Term(surface.name, surface.loss_w_k, "W/K") for surface in surfaces)
    return (*through, Term("air changed", air_w_k, "W/K"))
