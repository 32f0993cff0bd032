"""What people may mean by the gauge of a tube's wall.

A number of gauge names two different walls: one among tubes (Birmingham gauge) and a thinner one
among sheets (manufacturers' standard gauge), from which welded tubes are also made.
"""

from hoopwright.quantity.factors import INCH_M
from hoopwright.quantity.working import Phrase, phrase

TUBE_GAUGE_IN: dict[int, float] = {
    10: 0.134,
    11: 0.120,
    12: 0.109,
    13: 0.095,
    14: 0.083,
    15: 0.072,
    16: 0.065,
    17: 0.058,
    18: 0.049,
    19: 0.042,
    20: 0.035,
}
SHEET_GAUGE_IN: dict[int, float] = {14: 0.0747, 16: 0.0598, 17: 0.0538, 18: 0.0478}
NEAR_SHARE = 0.04


def gauge_words(wall_m: float) -> Phrase:
    """Return the gauge of a tube's wall in both meanings of the word.

    Args:
        wall_m: Wall as measured, m.

    Source:
        Birmingham gauge: table of engineeringtoolbox.com; manufacturers' standard gauge: from
        memory, to be confirmed. A wall within 4 % of a gauge carries its number: common practice,
        no published source; tubes are sold with 10 % of tolerance on the wall.
    """
    tube, sheet = _nearest(wall_m, TUBE_GAUGE_IN), _nearest(wall_m, SHEET_GAUGE_IN)
    if tube is None and sheet is None:
        return phrase("A wall of {wall} has no usual gauge.", wall=(wall_m, "m_thin"))
    if tube is None:
        return phrase(
            "A wall of {wall} is no gauge of tubes and {sheet} gauge of sheets.",
            wall=(wall_m, "m_thin"),
            sheet=str(sheet),
        )
    if sheet is None:
        return phrase(
            "A wall of {wall} is {tube} gauge of tubes and no gauge of sheets.",
            wall=(wall_m, "m_thin"),
            tube=str(tube),
        )
    return phrase(
        "A wall of {wall} is {tube} gauge of tubes and {sheet} gauge of sheets.",
        wall=(wall_m, "m_thin"),
        tube=str(tube),
        sheet=str(sheet),
    )


def _nearest(wall_m: float, gauges: dict[int, float]) -> int | None:
    """Return the number of the nearest gauge, or None when none is near."""
    wall_in = wall_m / INCH_M
    number = min(gauges, key=lambda n: abs(gauges[n] - wall_in))
    return number if abs(gauges[number] - wall_in) <= NEAR_SHARE * gauges[number] else None
