"""What may be added to a tunnel: gutters that carry rain away, shade cloth, insect screen."""

from typing import Annotated, Literal

from hoopwright.farm.entered import Entered, choice, measure

ShadeOver = Literal["roof", "roof_and_sides"]


class Rain(Entered, frozen=True):
    """The rain that gutters on the hip boards have to carry, and what is kept of it.

    A gutter is on a side whose boards have one (`SideBoards.gutter_drop_m`).

    Attributes:
        depth_m: Depth of one rain, m.
        rate_m_s: Heaviest rain the gutters shall carry, m of water in a second.
        runoff_share: Share of the rain that reaches the gutter.
        outlet_bore_m: Bore of an outlet, m.
        outlet_head_m: Water standing over an outlet in the heaviest rain, m.
        outlet_reach_m: Longest run of gutter that one outlet drains, m.
        outlets: Outlets that each gutter has, or None for as many as it takes.
        fall_share: Fall of the gutter to its outlet, as a share of the run.
        tank_m3: Water that the tank holds, m3, or None without a tank.
    """

    depth_m: Annotated[float, measure("depth of a rain", "m_thin", 0.0, 1.0)] = 0.0127
    rate_m_s: Annotated[float, measure("heaviest rain", "m/s_rain", 1e-7, 3e-4)] = 2.8e-5
    runoff_share: Annotated[float, measure("share that runs off", "share", 0.1, 1.0)] = 0.95
    outlet_bore_m: Annotated[float, measure("bore of an outlet", "m_thin", 0.02, 0.5)] = 0.0762
    outlet_head_m: Annotated[float, measure("water over an outlet", "m_thin", 0.005, 0.3)] = 0.04
    outlet_reach_m: Annotated[float, measure("gutter to one outlet", "m", 1.0, 100.0)] = 12.0
    outlets: Annotated[int, measure("outlets of each gutter", "count", 1, 100)] | None = None
    fall_share: Annotated[float, measure("fall of the gutter", "share", 0.0, 0.1)] = 0.004
    tank_m3: Annotated[float, measure("tank holds", "m3_water", 0.1, 10000.0)] | None = None


class Shade(Entered, frozen=True):
    """Shade cloth over the film.

    Attributes:
        part: Catalogue key of the cloth.
        cloth_width_m: Width it is sold in, m.
        shade_share: Share of the light it takes.
        over: Over the roof from hip to hip, or down both sides to the shut bar as well.
        from_bow: First bow under it, or None from the front end.
        to_bow: Last bow under it, or None to the back end.
        hang_m: What it hangs past each edge, m.
        lap_m: What two widths lap, m.
        tie_step_m: From tie to tie along an edge, m.
    """

    part: Annotated[str, choice("cloth")]
    cloth_width_m: Annotated[float, measure("width of the cloth", "m", 0.5, 20.0)] = 3.6576
    shade_share: Annotated[float, measure("shade", "share", 0.05, 0.95)] = 0.3
    over: Annotated[ShadeOver, choice("shade over")] = "roof"
    from_bow: Annotated[int, measure("from bow", "count", 1, 1000)] | None = None
    to_bow: Annotated[int, measure("to bow", "count", 1, 1000)] | None = None
    hang_m: Annotated[float, measure("hangs past the edge", "m", 0.0, 2.0)] = 0.15
    lap_m: Annotated[float, measure("lap of two widths", "m", 0.0, 1.0)] = 0.15
    tie_step_m: Annotated[float, measure("from tie to tie", "m", 0.1, 5.0)] = 0.6096

    def __post_init__(self) -> None:
        """Refuse a stretch that runs backwards and widths that lap away."""
        Entered.__post_init__(self)
        first, last = self.from_bow, self.to_bow
        if first is not None and last is not None and last <= first:
            raise ValueError("to_bow: the last bow must come after the first")
        if self.lap_m >= self.cloth_width_m:
            raise ValueError("lap_m: the lap of two widths must be less than the cloth is wide")


class Screen(Entered, frozen=True):
    """Insect screen in the opening of one side.

    Attributes:
        part: Catalogue key of the screen.
        screen_width_m: Width it is sold in, m.
        hole_m: Size of a hole, m.
        flow_share: Share of the air of the bare opening that it lets through; a figure of each
            screen, which its open share alone does not give.
        edge_m: Added at each edge to fix it, m.
        lap_m: What two widths lap, m.
    """

    part: Annotated[str, choice("screen")]
    screen_width_m: Annotated[float, measure("width of the screen", "m", 0.3, 20.0)] = 1.8288
    hole_m: Annotated[float, measure("hole of the screen", "m_film", 2e-5, 0.02)] = 0.00034
    flow_share: Annotated[float, measure("air through the screen", "share", 0.01, 1.0)] = 0.5
    edge_m: Annotated[float, measure("screen past each edge", "m", 0.0, 1.0)] = 0.1
    lap_m: Annotated[float, measure("lap of two screens", "m", 0.0, 1.0)] = 0.05

    def __post_init__(self) -> None:
        """Refuse widths that lap away."""
        Entered.__post_init__(self)
        if self.lap_m >= self.screen_width_m:
            raise ValueError("lap_m: the lap of two widths must be less than the screen is wide")
