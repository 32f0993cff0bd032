"""The small tunnel aired with curtains made by hand."""

from hoopwright.airing import Airing, air_tunnel
from hoopwright.curtain.curtain import CurtainWork
from hoopwright.farm import Side, Weather
from hoopwright.survey import survey_frame
from samples import side, tunnel
from worked import worked

SURVEY = survey_frame(tunnel().frame)
BOTH = (worked(0), worked(1))
PAIR = (side("West side"), side("East side"))


def aired(
    curtains: tuple[CurtainWork, ...] = BOTH,
    sides: tuple[Side, Side] = PAIR,
    **weather: object,
) -> Airing:
    """Return the tunnel aired on a day that differs from the common one by what is given."""
    return air_tunnel(SURVEY, sides, curtains, Weather(**weather))  # type: ignore[arg-type]
