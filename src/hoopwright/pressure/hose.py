"""What pressure a hose takes from the air that runs through it, and what air a pressure drives.

The loss is that of the wall and of the two ends: (f l / D + K) times the velocity pressure. The
friction factor follows one formula from creeping to fully rough flow, so the loss has no jump and
always grows with the flow; near rest it is in step with the flow. A flow against the hose's
direction has a negative sign, and so has its loss.

Source:
    Loss (Darcy and Weisbach) and the velocity pressure: textbook of fluid mechanics. Friction
    factor: Churchill, S. W., Friction-factor equation spans all fluid-flow regimes, Chemical
    Engineering 84(24), 91-92 (1977), from memory.
"""

import math
from dataclasses import dataclass

# Dry air at 20 degC and 1013 hPa (textbook).
AIR_KG_M3 = 1.204
AIR_PA_S = 1.82e-5
# Half a velocity pressure is lost where air enters a hose and a whole one where it leaves
# (textbook, sharp edges).
ENDS_K = 1.5
# Wall of a ribbed or fabric hose: common practice, no published source.
ROUGHNESS_M = 0.0005

_CREEPING = 1.0
_LOG = 2.457
_KNEE = 37530.0
_CLOSE = 1e-12
_ROUNDS = 200


@dataclass(frozen=True, slots=True)
class Hose:
    """A round hose between two cells, or from the blower to a cell.

    Attributes:
        bore_m: Inside diameter, m, above zero.
        length_m: Length, m, above zero.
        roughness_m: Height of the wall's roughness, m, zero or more, less than half the bore.
        loss_k: Velocity pressures lost at both ends and in all fittings, zero or more.
    """

    bore_m: float
    length_m: float
    roughness_m: float = ROUGHNESS_M
    loss_k: float = ENDS_K

    def __post_init__(self) -> None:
        """Refuse sizes that no hose has.

        Raises:
            ValueError: A size is out of its range; the message names the field and the mend.
        """
        _check_above_zero("bore_m", self.bore_m, "Enter the inside diameter of the hose.")
        _check_above_zero("length_m", self.length_m, "Enter the length of the hose.")
        if not 0 <= self.roughness_m < self.bore_m / 2:
            raise ValueError(
                f"roughness_m must be from zero to less than half the bore, not "
                f"{self.roughness_m!r} m. Enter the height of the roughness of the wall."
            )
        if not 0 <= self.loss_k < math.inf:
            raise ValueError(
                f"loss_k must be zero or more, not {self.loss_k!r}. Enter 1.5 for two sharp ends."
            )

    @property
    def area_m2(self) -> float:
        """Section of the bore, m2."""
        return math.pi / 4 * self.bore_m * self.bore_m


def _check_above_zero(field: str, size_m: float, mend: str) -> None:
    if not 0 < size_m < math.inf:
        raise ValueError(f"{field} must be above zero, not {size_m!r} m. {mend}")


def _factor_and_growth(reynolds: float, roughness_share: float) -> tuple[float, float]:
    """Return the friction factor of Darcy and what share of itself it grows by.

    The growth is for each share of itself that the Reynolds number grows by.

    Args:
        reynolds: Reynolds number, at least that of creeping flow.
        roughness_share: Roughness over bore, zero or more.
    """
    smooth = (7 / reynolds) ** 0.9
    logarithm = -_LOG * math.log(smooth + 0.27 * roughness_share)
    rough, knee = logarithm**16, (_KNEE / reynolds) ** 16
    creep, rest = (8 / reynolds) ** 12, (rough + knee) ** -1.5
    factor = 8 * (creep + rest) ** (1 / 12)
    rough_growth = 14.4 * _LOG * smooth / (smooth + 0.27 * roughness_share) * logarithm**15
    rest_growth = rest * -1.5 * (rough_growth - 16 * knee) / (rough + knee)
    return factor, (rest_growth - 12 * creep) / (12 * (creep + rest))


def loss_and_slope(hose: Hose, flow_m3_s: float) -> tuple[float, float]:
    """Return the pressure a hose takes, Pa, and how it grows with the flow, Pa s/m3.

    Args:
        hose: The hose.
        flow_m3_s: Flow along the hose, m3/s; negative the other way.

    Returns:
        Loss with the sign of the flow; slope, always above zero.

    Source:
        See the module; the slope is derived here.
    """
    bore_m = hose.bore_m
    area_m2 = hose.area_m2
    speed_m_s = abs(flow_m3_s) / area_m2
    reynolds = AIR_KG_M3 * bore_m / AIR_PA_S * speed_m_s
    ends_pa_s2_m2 = hose.loss_k * AIR_KG_M3 / 2
    if reynolds < _CREEPING:
        creeping = 32 * AIR_PA_S * hose.length_m / (bore_m * bore_m)
        loss_pa = (creeping + ends_pa_s2_m2 * speed_m_s) * speed_m_s
        slope = (creeping + 2 * ends_pa_s2_m2 * speed_m_s) / area_m2
        return math.copysign(loss_pa, flow_m3_s), slope
    factor, growth = _factor_and_growth(reynolds, hose.roughness_m / bore_m)
    wall_pa_s2_m2 = factor * hose.length_m / bore_m * AIR_KG_M3 / 2
    loss_pa = (wall_pa_s2_m2 + ends_pa_s2_m2) * speed_m_s * speed_m_s
    slope = (wall_pa_s2_m2 * (2 + growth) + 2 * ends_pa_s2_m2) * speed_m_s / area_m2
    return math.copysign(loss_pa, flow_m3_s), slope


def pressure_loss(hose: Hose, flow_m3_s: float) -> float:
    """Return the pressure a hose takes from a flow, Pa, with the sign of the flow.

    Args:
        hose: The hose.
        flow_m3_s: Flow along the hose, m3/s; negative the other way.

    Source:
        See the module.
    """
    return loss_and_slope(hose, flow_m3_s)[0]


def driven_flow(hose: Hose, drop_pa: float) -> float:
    """Return the flow that a pressure difference drives through a hose, m3/s.

    The flow is hemmed in from above by two losses that are each less than the whole: that of the
    ends alone, and that of a wall in creeping flow. Newton's steps start there; one that leaves
    the hem is replaced by halving.

    Args:
        hose: The hose.
        drop_pa: Pressure at its start less that at its end, Pa.

    Returns:
        Flow with the sign of the difference.

    Source:
        See the module; the search is derived here.
    """
    drop = abs(drop_pa)
    if drop == 0:
        return 0.0
    low, high = 0.0, _most_flow(hose, drop)
    flow = high
    for _ in range(_ROUNDS):
        loss_pa, slope = loss_and_slope(hose, flow)
        if loss_pa > drop:
            high = flow
        else:
            low = flow
        step = (drop - loss_pa) / slope
        flow += step
        if abs(step) <= _CLOSE * high:
            break
        if not low <= flow <= high:
            flow = (low + high) / 2
    return math.copysign(flow, drop_pa)


def _most_flow(hose: Hose, drop_pa: float) -> float:
    """Return a flow that surely takes at least this pressure, m3/s."""
    area_m2 = hose.area_m2
    creeping_m_s = drop_pa * hose.bore_m**2 / (32 * AIR_PA_S * hose.length_m)
    if hose.loss_k == 0:
        return area_m2 * creeping_m_s
    return area_m2 * min(creeping_m_s, math.sqrt(2 * drop_pa / (hose.loss_k * AIR_KG_M3)))
