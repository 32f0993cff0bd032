"""One curtain with all that holds and turns it, before anything is worked out."""

from dataclasses import dataclass

from hoopwright.cover.cover import CurtainSpan
from hoopwright.farm import Bar, HandCrank, Limits


@dataclass(frozen=True, slots=True, kw_only=True)
class HungCurtain:
    """One curtain with all that holds and turns it.

    Attributes:
        span: Where it hangs and what it is made of.
        bar: Its roll bar.
        stick_m: Length of a stick of that bar, m.
        drive: What turns it.
        limits: What people can do.
        wrap_m: Film on the bar when the curtain is shut, m.
        slack_m: Film left loose between hip board and bar, m.
        side_m: From hip board to baseboard top along the bow, m.
        rope_step_m: Wanted step of the wind rope, m; 0 without a rope.
    """

    span: CurtainSpan
    bar: Bar
    stick_m: float
    drive: HandCrank
    limits: Limits
    wrap_m: float
    slack_m: float
    side_m: float
    rope_step_m: float

    @property
    def travel_m(self) -> float:
        """How far the bar climbs, m: what hangs, less the slack."""
        return max(0.0, self.span.hang_m - self.slack_m)

    @property
    def wound_m(self) -> tuple[float, float, float]:
        """Film on the bar when shut, half way up and open, m; the slack is wound first."""
        top_m = self.wrap_m + self.span.hang_m
        return (self.wrap_m, top_m - self.travel_m / 2, top_m)
