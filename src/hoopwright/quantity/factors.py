"""What one of each unit is worth in SI, as plain floats.

Exact by agreement: inch, foot, yard, mile, pound, standard gravity, minute, hour, year of
365 days, and with them everything multiplied or divided out of them here. The inch of water is
the *conventional* one; those at 39.2 degF and at 60 degF are up to 0.1 % smaller.

Source:
    NIST Special Publication 811, Guide for the Use of the International System of Units,
    appendix B.
"""

import math
from typing import Literal

Units = Literal["imperial", "metric"]

INCH_M = 0.0254
FOOT_M = 0.3048
YARD_M = 0.9144
MIL_M = 2.54e-5
MICRON_M = 1e-6
MILLIMETRE_M = 1e-3
POUND_KG = 0.45359237
OUNCE_KG = POUND_KG / 16
G_M_S2 = 9.80665
LBF_N = POUND_KG * G_M_S2
SQUARE_FOOT_M2 = 0.09290304
CUBIC_FOOT_M3 = 0.028316846592
GALLON_M3 = 231 * 0.0254**3
LITRE_M3 = 1e-3
POUND_FOOT_KG_M = POUND_KG / FOOT_M
POUND_SQUARE_FOOT_KG_M2 = POUND_KG / SQUARE_FOOT_M2
POUND_CUBIC_FOOT_KG_M3 = POUND_KG / CUBIC_FOOT_M3
LBF_FOOT_N_M = LBF_N / FOOT_M
INCH_LBF_NM = LBF_N * INCH_M
FOOT_LBF_J = LBF_N * FOOT_M
INCH_WATER_PA = 249.0889
PSF_PA = LBF_N / SQUARE_FOOT_M2
PSI_PA = LBF_N / INCH_M**2
MPH_M_S = 0.44704
BTU_J = 1055.05585262
MINUTE_S = 60.0
HOUR_S = 3600.0
YEAR_S = 365 * 24 * HOUR_S
CFM_M3_S = CUBIC_FOOT_M3 / MINUTE_S
DEGREE_RAD = math.pi / 180
FAHRENHEIT_K = 5 / 9
BTU_H_W = BTU_J / HOUR_S
ZERO_CELSIUS_K = 273.15
ZERO_FAHRENHEIT_K = ZERO_CELSIUS_K - 32 * FAHRENHEIT_K
