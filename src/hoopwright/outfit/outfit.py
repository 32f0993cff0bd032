"""What fitting out a tunnel yields. The stage function is `fit_out` in `fitting`."""

from dataclasses import dataclass
from typing import Literal

from msgspec import Struct

from hoopwright.quantity.working import Explained

Laid = Literal["along", "across"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Gutter(Explained):
    """The gutter on one hip board.

    Attributes:
        mark: `side/0/hip`.
        side: 0 for the first side, 1 for the second.
        length_m: Length, m.
        plan_area_m2: Roof that drains into it, seen from above, m2.
        water_m3: Water of one rain, m3.
        rain_m3_s: Water in the heaviest rain, m3/s.
        outlet_m3_s: What one outlet takes at the head entered, m3/s.
        outlets_needed: Outlets that it takes.
        outlets: Outlets it has: as entered, or else as many as it takes.
        run_m: Gutter that runs to one outlet, m.
        fall_m: How much lower that run ends than it starts, m.
        whole_fall_m: The same of a gutter that falls one way from end to end, m.
        section_m2: Least cross section of a half-round gutter that carries the run, m2.
        downpipe_m: From the gutter down to the ground line, m.
    """

    mark: str
    side: int
    length_m: float
    plan_area_m2: float
    water_m3: float
    rain_m3_s: float
    outlet_m3_s: float
    outlets_needed: int
    outlets: int
    run_m: float
    fall_m: float
    whole_fall_m: float
    section_m2: float
    downpipe_m: float


@dataclass(frozen=True, slots=True, kw_only=True)
class RainWork(Explained):
    """The rain that was entered, and what carries and keeps it.

    Attributes:
        gutters: Gutters, none where no hip board has one.
        plan_area_m2: What drains into all of them, seen from above, m2.
        water_m3: Water of one rain in all of them, m3.
        rain_m3_s: Water in the heaviest rain in all of them, m3/s.
        rains_to_fill: Rains that fill the tank; None without a tank or without water.
        overflow_m3: What one rain brings beyond an empty tank, m3; None without a tank.
    """

    gutters: tuple[Gutter, ...]
    plan_area_m2: float
    water_m3: float
    rain_m3_s: float
    rains_to_fill: float | None
    overflow_m3: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class ShadeLaid(Explained):
    """Shade cloth as it lies over the film.

    Attributes:
        part: Catalogue key of the cloth.
        from_m: First bow under it, m from the front.
        to_m: Last bow under it, m.
        along_m: Size along the tunnel, what hangs past the edges included, m.
        across_m: Size over the tunnel along the bow likewise, m.
        laid: Whether its widths lie along the tunnel or across it: the way that takes less cloth.
        widths: Number of widths.
        cut_m: Length of each width, m.
        cloth_m: Cloth to cut off the roll, m.
        area_m2: Size along times size across, m2.
        edge_ties: Ties around its edge.
        hooks: Those along the two sides, each of which holds to a hook.
        seam_ties: Ties where two widths lap.
        floor_share: Floor under it, as a share of the tunnel's.
        shade_share: Share of the light it takes.
    """

    part: str
    from_m: float
    to_m: float
    along_m: float
    across_m: float
    laid: Laid
    widths: int
    cut_m: float
    cloth_m: float
    area_m2: float
    edge_ties: int
    hooks: int
    seam_ties: int
    floor_share: float
    shade_share: float


@dataclass(frozen=True, slots=True, kw_only=True)
class SideScreen(Explained):
    """Insect screen in the opening of one side.

    Attributes:
        mark: `side/0`.
        side: 0 for the first side, 1 for the second.
        part: Catalogue key of the screen.
        from_m: Where the opening starts, m from the front.
        to_m: Where it ends, m.
        length_m: Screen along the side with its edges, m.
        height_m: Screen from baseboard to hip along the bow with its edges, m.
        widths: Number of widths, one above the other.
        screen_m: Screen to cut off the roll, m.
        hole_m: Size of a hole, m.
        flow_share: Share of the air of the bare opening that it lets through.
        keeps_out: Insects of the published table that a hole of this size keeps out.
        lets_in: The others of the table.
        opening_m2: Clear opening of the side, m2.
        free_m2: What it is worth for the air behind the screen, m2.
        free_share: That over the floor.
    """

    mark: str
    side: int
    part: str
    from_m: float
    to_m: float
    length_m: float
    height_m: float
    widths: int
    screen_m: float
    hole_m: float
    flow_share: float
    keeps_out: tuple[str, ...]
    lets_in: tuple[str, ...]
    opening_m2: float
    free_m2: float
    free_share: float


class Outfit(Struct, frozen=True, kw_only=True):
    """What is added to the skin of one tunnel.

    Attributes:
        rain: Gutters and water, or None where no rain was entered.
        shade: Shade cloth, or None.
        screens: Insect screen of each side that opens and has one.
    """

    rain: RainWork | None
    shade: ShadeLaid | None
    screens: tuple[SideScreen, ...]
