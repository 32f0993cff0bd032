"""Carry the rain away: the roof that drains into each gutter, its outlets, its fall, the tank."""

import math

from msgspec import Struct

from hoopwright.farm import Rain, SideBoards
from hoopwright.outfit.outfit import Gutter, RainWork
from hoopwright.outfit.outlets import (
    GUTTER_SOURCE,
    OUTLET_SOURCE,
    gutter_section,
    outlet_flow,
)
from hoopwright.quantity.working import (
    ENTERED,
    PRACTICE,
    LaterWorkings,
    Term,
    Working,
)
from hoopwright.survey.survey import Survey

NOTHING = 1e-9


class _Need(Struct, frozen=True):
    """Outlets by what calls for them."""

    for_flow: int
    for_reach: int

    @property
    def most(self) -> int:
        return max(self.for_flow, self.for_reach)


def drain_roof(survey: Survey, boards: tuple[SideBoards, SideBoards], rain: Rain) -> RainWork:
    """Return the gutters on the hip boards and the water they carry.

    Args:
        survey: The frame as built.
        boards: Boards of the first and of the second side; one with a gutter has a drop.
        rain: The rain entered.

    Source:
        Each figure keeps its own working.
    """
    hung = [(n, board, board.gutter_drop_m) for n, board in enumerate(boards)]
    widths_m = drained_widths(survey)
    gutters = tuple(
        _gutter(n, widths_m[n], survey.length_m, board, drop_m, rain)
        for n, board, drop_m in hung
        if drop_m is not None
    )
    water_m3 = sum(g.water_m3 for g in gutters)
    tank_m3 = rain.tank_m3
    return RainWork(
        gutters=gutters,
        plan_area_m2=sum(g.plan_area_m2 for g in gutters),
        water_m3=water_m3,
        rain_m3_s=sum(g.rain_m3_s for g in gutters),
        rains_to_fill=tank_m3 / water_m3 if tank_m3 is not None and water_m3 > 0 else None,
        overflow_m3=None if tank_m3 is None else max(0.0, water_m3 - tank_m3),
        workings=LaterWorkings(lambda: _water_workings(gutters, rain, water_m3)),
    )


def drained_widths(survey: Survey) -> tuple[float, float]:
    """Return how much of the roof drains to each hip, seen from above, m.

    Source:
        Derived here: from the ridge to the widest place of the bow above the hip; from there the
        water runs down the film to the hip board.
    """
    points = survey.curve.outline()
    ridge_m = max(points, key=lambda p: p[1])[0]
    hips = tuple(survey.curve.point_at(at_m) for at_m in survey.hip_at_m)
    left_m = min(x for x, y in (*points, hips[0]) if y >= hips[0][1])
    right_m = max(x for x, y in (*points, hips[1]) if y >= hips[1][1])
    return ridge_m - left_m, right_m - ridge_m


def _gutter(
    n: int, width_m: float, length_m: float, board: SideBoards, drop_m: float, rain: Rain
) -> Gutter:
    area_m2 = width_m * length_m
    caught_m2 = area_m2 * rain.runoff_share
    rain_m3_s = rain.rate_m_s * caught_m2
    outlet_m3_s = outlet_flow(rain.outlet_bore_m, rain.outlet_head_m)
    needed = _Need(
        math.ceil(rain_m3_s / outlet_m3_s - NOTHING),
        math.ceil(length_m / rain.outlet_reach_m - NOTHING),
    )
    outlets = needed.most if rain.outlets is None else rain.outlets
    run_m = length_m / outlets
    gutter = Gutter(
        mark=f"side/{n}/hip",
        side=n,
        length_m=length_m,
        plan_area_m2=area_m2,
        water_m3=rain.depth_m * caught_m2,
        rain_m3_s=rain_m3_s,
        outlet_m3_s=outlet_m3_s,
        outlets_needed=needed.most,
        outlets=outlets,
        run_m=run_m,
        fall_m=rain.fall_share * run_m,
        whole_fall_m=rain.fall_share * length_m,
        section_m2=gutter_section(rain_m3_s / outlets),
        downpipe_m=max(0.0, board.hip_height_m - drop_m),
        workings=LaterWorkings(
            lambda: (
                *_roof_workings(width_m, length_m, area_m2, rain),
                *_outlet_workings(gutter, needed, rain),
                *_gutter_workings(gutter, board, drop_m, rain),
            )
        ),
    )
    return gutter


def _roof_workings(
    width_m: float, length_m: float, area_m2: float, rain: Rain
) -> tuple[Working, ...]:
    area = Term("roof that drains here", area_m2, "m2")
    share = Term("share that runs off", rain.runoff_share, "share")
    return (
        Working("length_m", "As long as the tunnel.", (Term("length", length_m, "m"),)),
        Working(
            "plan_area_m2",
            "From the ridge to the widest place above the hip, seen from above, times the length. "
            "Rain that wind drives against a side is left out.",
            (Term("ridge to hip, seen from above", width_m, "m"), Term("length", length_m, "m")),
        ),
        Working(
            "water_m3",
            "Depth of the rain times that area, less what does not reach the gutter.",
            (Term("depth of the rain", rain.depth_m, "m_thin"), area, share),
        ),
        Working(
            "rain_m3_s",
            "Heaviest rain times that area, less what does not reach the gutter.",
            (Term("heaviest rain", rain.rate_m_s, "m/s_rain"), area, share),
        ),
    )


def _outlet_workings(gutter: Gutter, needed: _Need, rain: Rain) -> tuple[Working, ...]:
    flow = Term("heaviest flow", gutter.rain_m3_s, "m3/s_water")
    one = Term("one outlet takes", gutter.outlet_m3_s, "m3/s_water")
    length = Term("gutter", gutter.length_m, "m")
    reach = Term("gutter to one outlet", rain.outlet_reach_m, "m")
    entered = rain.outlets is not None
    return (
        Working(
            "outlet_m3_s",
            "The lesser of what falls over its rim as over a weir, D h^1.5 / 7500, and what it "
            "takes filled as an orifice, D² h^0.5 / 15000: litres a second of the bore D and the "
            "water h over it in millimetres. A grating with leaves in it takes half or less.",
            (
                Term("bore", rain.outlet_bore_m, "m_thin"),
                Term("water over the outlet", rain.outlet_head_m, "m_thin"),
            ),
            OUTLET_SOURCE,
        ),
        Working(
            "outlets_needed",
            "The more of two: heaviest flow over what one outlet takes, and length over the "
            "longest run to one outlet, each rounded up.",
            (
                flow,
                one,
                Term("for the flow", needed.for_flow, "count"),
                length,
                reach,
                Term("for the reach", needed.for_reach, "count"),
            ),
        ),
        Working(
            "outlets",
            "As entered." if entered else "As many as it takes.",
            (Term("outlets", gutter.outlets, "count"),),
            ENTERED if entered else PRACTICE,
        ),
    )


def _gutter_workings(
    gutter: Gutter, board: SideBoards, drop_m: float, rain: Rain
) -> tuple[Working, ...]:
    length = Term("gutter", gutter.length_m, "m")
    outlets = Term("outlets", gutter.outlets, "count")
    run = Term("run to one outlet", gutter.run_m, "m")
    fall = Term("fall", rain.fall_share, "share")
    return (
        Working(
            "run_m",
            "Length over outlets; each outlet stands at the low end of its run.",
            (length, outlets),
        ),
        Working(
            "fall_m",
            "Share of fall times the run to one outlet. The roll has to clear the low end: enter "
            "the drop of the gutter there.",
            (fall, run),
        ),
        Working(
            "whole_fall_m",
            "Share of fall times the whole gutter, when it falls one way from end to end.",
            (fall, length),
        ),
        Working(
            "section_m2",
            "Cross section A of a half-round gutter, full, that carries the heaviest flow of one "
            "run: litres a second are 0.9 × 0.0000278 A^1.25 with A in square millimetres.",
            (Term("heaviest flow", gutter.rain_m3_s, "m3/s_water"), outlets),
            GUTTER_SOURCE,
        ),
        Working(
            "downpipe_m",
            "From the gutter straight down to the ground line; pipe from there on to a tank or a "
            "drain is not counted.",
            (
                Term("hip board", board.hip_height_m, "m"),
                Term("gutter hangs below it", drop_m, "m"),
            ),
        ),
    )


def _water_workings(
    gutters: tuple[Gutter, ...], rain: Rain, water_m3: float
) -> tuple[Working, ...]:
    def each(name: str, field: str, unit: str) -> tuple[Term, ...]:
        return tuple(
            Term(f"{name}, {'first' if g.side == 0 else 'second'} side", getattr(g, field), unit)
            for g in gutters
        )

    water = Term("water of one rain", water_m3, "m3_water")
    tank = () if rain.tank_m3 is None else (Term("tank", rain.tank_m3, "m3_water"),)
    return (
        Working("plan_area_m2", "All gutters together.", each("roof", "plan_area_m2", "m2")),
        Working("water_m3", "All gutters together.", each("water", "water_m3", "m3_water")),
        Working("rain_m3_s", "All gutters together.", each("flow", "rain_m3_s", "m3/s_water")),
        Working("rains_to_fill", "Tank over the water of one rain.", (*tank, water)),
        Working(
            "overflow_m3",
            "Water of one rain less the tank, which is taken to be empty before it.",
            (water, *tank),
        ),
    )
