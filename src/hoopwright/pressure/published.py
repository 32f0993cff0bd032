"""What is written about the pressure between two layers and the power of the blower."""

# Least and greatest pressure, Pa.
PRACTICE_PA = (50.0, 75.0)
# Above this nobody goes, Pa: half an inch of water; common practice, from memory.
PRACTICE_MOST_PA = 125.0
BOOK_PA = (40.0, 60.0)
# 250 W for each 1000 m2 of floor, W/m2.
BOOK_POWER_W_M2 = 0.25
BOOK = "Castilla, Greenhouse Technology and Management, section 7.3.1"
WINDOW_SOURCE = (
    "50 to 75 Pa: common practice, no published source; 40 to 60 Pa: "
    f"{BOOK}; the pressures wanted: the user's entry"
)
