"""The small tunnel aired with the curtains of its sides."""

from hoopwright.airing import Airing, air_tunnel
from hoopwright.farm import Side, Weather
from worked import PAIR, SURVEY, curtains


def aired(sides: tuple[Side, Side] = PAIR, **weather: object) -> Airing:
    """Return the tunnel aired on a day that differs from the common one by what is given."""
    return air_tunnel(SURVEY, sides, curtains(sides), Weather(**weather))  # type: ignore[arg-type]
