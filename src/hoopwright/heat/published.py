"""What was published on the heat that film covers lose: U-values, air changes, shares saved.

A U-value is the heat through one square metre for one kelvin between inside and outside. The
sources print it in Btu/(h ft2 degF). Film, wind, sky and wetness move it by a tenth and more, so
every figure is a range and the farm's own entry goes before it.
"""

from typing import NamedTuple

# One Btu/(h ft2 degF) in W/m2/K, from 1055.056 J, 0.09290304 m2 and 5/9 K (NIST Special
# Publication 811, appendix B).
BTU_H_SQUARE_FOOT_F_W_M2_K = 5.678263
# Heat to warm a cubic metre of air by one kelvin, J: 1.2 kg/m3 times 1005 J/(kg K) (textbook).
AIR_J_M3_K = 1206.0


class Published(NamedTuple):
    """A published range.

    Attributes:
        covering: What it is for, in words of the trade.
        low: Its lower end, in the unit of its table.
        high: Its upper end.
        source: Where it was published.
    """

    covering: str
    low: float
    high: float
    source: str


def _u(covering: str, low_btu: float, high_btu: float, source: str) -> Published:
    """Return a range of U-values in W/m2/K from one in Btu/(h ft2 degF)."""
    to_si = BTU_H_SQUARE_FOOT_F_W_M2_K
    return Published(covering, low_btu * to_si, high_btu * to_si, source)


_EXTENSION = "Sanford, extension module on heating greenhouses (title from memory)"
_STANDARD = "believed to stand in ASAE EP406; from memory, to be confirmed"

SINGLE = "single film"
DOUBLE = "two films, air between"
DOUBLE_INFRARED = "two films, the inner one holding back heat rays"
DOUBLE_SCREEN = "two films and a screen drawn at night"

U_W_M2_K: tuple[Published, ...] = (
    _u(SINGLE, 1.0, 1.2, _EXTENSION),
    _u(DOUBLE, 0.6, 0.7, _EXTENSION),
    _u(SINGLE, 1.15, 1.2, _STANDARD),
    _u(DOUBLE, 0.7, 0.7, _STANDARD),
    _u(
        DOUBLE_INFRARED,
        0.5,
        0.6,
        "derived here: 0.70 less the 15 to 20 % of the University of Wisconsin Extension",
    ),
    _u(DOUBLE_SCREEN, 0.3, 0.45, "believed to stand in NRAES-33; from memory, to be confirmed"),
)

CHANGES_1_H: tuple[Published, ...] = (
    Published("new house, two films", 0.5, 1.0, _STANDARD),
    Published("new house, glass", 0.75, 1.5, _STANDARD),
    Published("old house, well kept", 1.0, 2.0, _STANDARD),
    Published("old house, in poor repair", 2.0, 4.0, _STANDARD),
)

# Share of the loss through the cover that a second film with air between saves.
SAVED_SHARE = Published(
    DOUBLE,
    0.34,
    0.35,
    "Rasheed, Lee and Lee, Spanish Journal of Agricultural Research (validated model), 34 %; "
    "Bartok, Greenhouse glazing tips, Greenhouse Management, March 2013, 35 %",
)
