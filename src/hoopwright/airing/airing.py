"""What airing a tunnel yields. The stage function is `air_tunnel` in `flow`."""

from collections.abc import Callable
from dataclasses import dataclass, field

from hoopwright.quantity.working import Explained

AiringStep = tuple[float, float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Airing(Explained):
    """How much of the tunnel opens and what air passes on the farm's day of airing.

    Attributes:
        openings_m2: Clear opening of each side with all its curtains open, m2.
        opening_m2: Both sides together, m2.
        floor_share: Opening over floor area.
        side_shares: Opening of each side over floor area.
        free_m2: What the openings are worth for the air behind their insect screens, m2; the
            opening itself where there is none.
        free_share: That over floor area.
        wind_m3_s: Air by wind, through the openings and their screens, m3/s.
        warmth_m3_s: Air by warmth, m3/s.
        flow_m3_s: Both together, m3/s.
        changes_per_h: Air changes, 1/h.
        per_floor_m3_s_m2: Flow for each square metre of floor, m3/s per m2.
        course_made: Gives the way from shut to open; nobody reads it in a drag.
    """

    openings_m2: tuple[float, float]
    opening_m2: float
    floor_share: float
    side_shares: tuple[float, float]
    free_m2: float
    free_share: float
    wind_m3_s: float
    warmth_m3_s: float
    flow_m3_s: float
    changes_per_h: float
    per_floor_m3_s_m2: float
    course_made: Callable[[], tuple[AiringStep, ...]] = field(repr=False, compare=False)

    @property
    def course(self) -> tuple[AiringStep, ...]:
        """The way from shut to open: share of travel, opening over floor, flow in m3/s."""
        return self.course_made()
