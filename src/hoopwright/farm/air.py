"""Air between two layers as chosen: what is inflated, blower, hoses, and what was measured."""

import datetime
from typing import Annotated, Literal

from hoopwright.farm.entered import Entered, choice, measure

JumperSurface = Literal["first_side", "second_side", "roof", "front_end", "back_end"]

PositionM = Annotated[float, measure("position from the front", "m", 0.0, 1000.0)]
LeakRate = Annotated[float, measure("leak of the film", "leak", 0.0, 1e-3)]
PressurePa = Annotated[float, measure("pressure", "Pa", 0.0, 500.0)]


class PlacedJumper(Entered, frozen=True):
    """A jumper hose placed by hand.

    Attributes:
        surface: What it joins the roof with: the curtain of a side, the roof beyond the nearest
            cross seam, or an end wall.
        at_m: Where along the tunnel, m from the first bow; of no account at an end.
    """

    surface: Annotated[JumperSurface, choice("jumper to the")]
    at_m: PositionM


class AirReading(Entered, frozen=True):
    """A pressure that was measured between the layers.

    Attributes:
        taken_on: Date, written year-month-day.
        cell: Mark of the cell, for example `cell/side/0/panel/1`.
        pressure_pa: Measured pressure above outdoors, Pa.
        flow_m3_s: Air that the blower gave meanwhile, m3/s, or None.
        baseline: Whether it was taken when all was sound, to compare later ones with.
    """

    taken_on: Annotated[str, choice("date")]
    cell: Annotated[str, choice("cell")]
    pressure_pa: PressurePa
    flow_m3_s: Annotated[float, measure("air of the blower", "m3/s", 1e-5, 5.0)] | None = None
    baseline: Annotated[bool, choice("baseline")] = False

    def __post_init__(self) -> None:
        """Refuse what is no date."""
        Entered.__post_init__(self)
        try:
            datetime.date.fromisoformat(self.taken_on)
        except ValueError as error:
            raise ValueError(
                f"taken_on: write the date as year-month-day such as 2026-03-14, "
                f"not {self.taken_on!r}"
            ) from error


class Air(Entered, frozen=True):
    """Air between two layers.

    Attributes:
        blower: Catalogue key of the blower, or None.
        inflated_sides: Whether the curtains of each side are sealed and inflated, when they
            have two layers.
        seals_per_edge: Passes of the sealer along each edge.
        long_cell_m: A cell longer than this gets a second jumper, m.
        inflated_ends: Whether each end wall is sealed and inflated, when it has two layers.
        feed_hose: Catalogue key of the hose from blower to film; None takes the widest.
        feed_hose_m: Its length, m.
        jumper_hose: Catalogue key of the jumper hoses; None takes the catalogue's first.
        jumper_hose_m: Length of one jumper hose, m.
        open_share: How far the damper of the blower is open.
        outside_air: Whether the blower takes its air from outdoors.
        low_pa: Least pressure wanted in every cell, Pa.
        high_pa: Greatest pressure wanted, Pa.
        leak_roof: Leak of roof film at 1 Pa, m3/s for each m2.
        leak_curtain: Leak of curtains at 1 Pa, m3/s for each m2.
        leak_end: Leak of end walls at 1 Pa, m3/s for each m2.
        leak_exponent: Power of the pressure with which leaks grow.
        jumpers: Jumpers placed by hand, or None for those that are worked out.
        readings: What was measured.
    """

    blower: Annotated[str, choice("blower")] | None
    inflated_sides: tuple[bool, bool] = (False, False)
    seals_per_edge: Annotated[int, measure("seals on each edge", "count", 1, 4)] = 2
    long_cell_m: Annotated[float, measure("two jumpers above", "m", 1.0, 1000.0)] = 30.0
    inflated_ends: tuple[bool, bool] = (False, False)
    feed_hose: Annotated[str, choice("hose of the blower")] | None = None
    feed_hose_m: Annotated[float, measure("length of its hose", "m", 0.1, 30.0)] = 1.5
    jumper_hose: Annotated[str, choice("jumper hose")] | None = None
    jumper_hose_m: Annotated[float, measure("length of a jumper", "m", 0.1, 30.0)] = 0.9
    open_share: Annotated[float, measure("damper open", "share", 0.05, 1.0)] = 1.0
    outside_air: Annotated[bool, choice("air from outdoors")] = True
    low_pa: Annotated[float, measure("least pressure", "Pa", 1.0, 300.0)] = 50.0
    high_pa: Annotated[float, measure("greatest pressure", "Pa", 1.0, 500.0)] = 75.0
    leak_roof: LeakRate = 4e-6
    leak_curtain: LeakRate = 6e-6
    leak_end: LeakRate = 6e-6
    leak_exponent: Annotated[float, measure("leak exponent", "ratio", 0.5, 1.0)] = 0.65
    jumpers: tuple[PlacedJumper, ...] | None = None
    readings: tuple[AirReading, ...] = ()

    def __post_init__(self) -> None:
        """Refuse a window of pressures that is upside down."""
        Entered.__post_init__(self)
        if self.low_pa >= self.high_pa:
            raise ValueError("high_pa: the greatest pressure must be above the least one")
