"""One curtain with all that holds and turns it, before anything is worked out."""

from dataclasses import dataclass

from hoopwright.cover.cover import CurtainSpan
from hoopwright.farm import Bar, Limits, Panel, Side, SideBoards, Weather
from hoopwright.farm.drive import Drive, LineDrum
from hoopwright.survey.survey import Survey

NEAR_M = 1e-3


@dataclass(frozen=True, slots=True, kw_only=True)
class HungCurtain:
    """One curtain with all that holds and turns it.

    Attributes:
        span: Where it hangs and what it is made of.
        side: Its side as chosen.
        boards: The boards of that side.
        survey: The frame as built.
        bar: Its roll bar, or the rod of a drop-down curtain.
        stick_m: Length of a stick of that bar, m.
        drive: What turns it.
        limits: What people can do.
        weather: The storm that its wind rope is looked at with.
        wrap_m: Film on the bar when the curtain is shut, m.
    """

    span: CurtainSpan
    side: Side
    boards: SideBoards
    survey: Survey
    bar: Bar
    stick_m: float
    drive: Drive
    limits: Limits
    weather: Weather
    wrap_m: float

    @property
    def panel(self) -> Panel:
        """The curtain as chosen."""
        return self.side.panels[self.span.index]

    @property
    def drops(self) -> bool:
        """Whether it opens downward."""
        return self.side.kind == "drop_down"

    @property
    def side_m(self) -> float:
        """From hip board to baseboard top along the bow, m."""
        return self.survey.side_m[self.span.side]

    @property
    def covered_m(self) -> float:
        """From the hip seam down to the lower edge of the shut curtain along the bow, m."""
        return self.side_m if self.drops else max(0.0, self.span.hang_m - self.side.slack_m)

    @property
    def travel_m(self) -> float:
        """How far the bar climbs, or the rod of a drop-down curtain goes down, m."""
        kept_m = self.side.bunch_m if self.drops else self.side.stop_m
        return max(0.0, self.covered_m - kept_m)

    @property
    def wound_m(self) -> tuple[float, float, float]:
        """Film on the bar when shut, half way up and open, m; the slack is wound first."""
        lifts_m = self.wrap_m + self.side.slack_m
        return (self.wrap_m, lifts_m + self.travel_m / 2, lifts_m + self.travel_m)

    @property
    def carried_kg(self) -> float:
        """What the bar carries of the drive, kg; a drum stands beside it."""
        return 0.0 if isinstance(self.drive, LineDrum) else self.drive.mass_kg

    @property
    def reach_m(self) -> float:
        """From the crank to the farthest place of the bar, m."""
        return self.span.length_m / (2 if self.panel.crank_end == "middle" else 1)

    def height_m(self, below_m: float) -> float:
        """Return the height above the ground of a place below the hip seam, m.

        Args:
            below_m: From the hip seam down along the bow, m.

        Source:
            The curve of the bow as surveyed.
        """
        down = -1 if self.span.side == 0 else 1
        hip_at_m = self.survey.hip_at_m[self.span.side]
        return self.survey.curve.point_at(hip_at_m + down * below_m)[1]

    def inner_bows(self) -> int:
        """Return how many bows stand between both ends of the opening."""
        front_m, back_m = self.span.open_from_m + NEAR_M, self.span.open_to_m - NEAR_M
        return sum(front_m < at_m < back_m for at_m in self.survey.bows_m)
