"""What an outlet takes of the water in a gutter, and the gutter that carries water to it.

Water falls over the rim of an outlet as over a weir while it is shallow, and fills the outlet as
an orifice when it is deep; the lesser of the two governs, and they are equal where the water
stands half a bore high:

    weir      Q = D h**1.5 / 7500      orifice   Q = D**2 h**0.5 / 15000

with Q in l/s and D and h in mm. A nominally level half-round gutter of the cross section A in mm2
carries 0.9 * 2.78e-5 * A**1.25 l/s.
"""

import math

LITRE_IN_M3 = 1000.0
MM_IN_M = 1000.0
WEIR: float = MM_IN_M**2.5 / 7500 / LITRE_IN_M3
ORIFICE: float = MM_IN_M**2.5 / 15000 / LITRE_IN_M3
GUTTER_SHARE, GUTTER_L_S = 0.9, 2.78e-5
OUTLET_SOURCE = (
    "EN 12056-3:2000, gutter outlets without a grating, from memory; the coefficients agree with a "
    "weir and a sharp orifice of textbooks"
)
GUTTER_SOURCE = (
    "EN 12056-3:2000, nominally level half-round gutters, from memory; seven tenths of what the "
    "momentum of water without friction gives for a level gutter that ends in a free fall"
)


def outlet_flow(bore_m: float, head_m: float) -> float:
    """Return what one outlet without a grating takes, m3/s.

    Args:
        bore_m: Bore of the outlet at its top, m.
        head_m: Water standing over it, m.

    Source:
        `OUTLET_SOURCE`.
    """
    over_rim_m3_s = WEIR * bore_m * head_m * math.sqrt(head_m)
    return min(over_rim_m3_s, ORIFICE * bore_m**2 * math.sqrt(head_m))


def bore_for(flow_m3_s: float, head_m: float) -> float:
    """Return the least bore of an outlet that takes a flow, m.

    Args:
        flow_m3_s: Flow, m3/s.
        head_m: Water standing over it, m.

    Source:
        `OUTLET_SOURCE`, turned round.
    """
    over_rim_m = flow_m3_s / (WEIR * head_m * math.sqrt(head_m))
    return max(over_rim_m, math.sqrt(flow_m3_s / (ORIFICE * math.sqrt(head_m))))


def gutter_section(flow_m3_s: float) -> float:
    """Return the least cross section of a half-round gutter that carries a flow to its end, m2.

    Args:
        flow_m3_s: All water that runs to one outlet, m3/s.

    Source:
        `GUTTER_SOURCE`, turned round.
    """
    carried = flow_m3_s * LITRE_IN_M3 / (GUTTER_SHARE * GUTTER_L_S)
    return math.pow(carried, 0.8) / MM_IN_M**2
