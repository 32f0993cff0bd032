"""Curtains hung on a bar, for the tests of what they weigh, turn and take.

Sizes are in feet and inches, as the handbook figures they are compared with.
"""

from hoopwright.cover import CurtainSpan
from hoopwright.curtain.hung import HungCurtain
from hoopwright.farm import Bar, HandCrank, Limits, RoundTube, SquareTube
from hoopwright.farm.catalogue import Material

FOOT_M = 0.3048
INCH_M = 0.0254
MIL_M = 2.54e-5
POUND_KG = 0.45359237
LBF_N = POUND_KG * 9.80665
LB_FT_KG_M = POUND_KG / FOOT_M
LBF_IN_NM = LBF_N * INCH_M

FREE = Limits(rubbing_share=0.0)


def round_tube(outside_in: float, wall_in: float) -> RoundTube:
    """Return a round tube sized in inches."""
    return RoundTube(outside_m=outside_in * INCH_M, wall_m=wall_in * INCH_M)


def square_tube(outside_in: float, wall_in: float) -> SquareTube:
    """Return a square tube sized in inches."""
    return SquareTube(outside_m=outside_in * INCH_M, wall_m=wall_in * INCH_M)


def bar(
    section: RoundTube | SquareTube, material: Material = "steel", cap_lb_ft: float = 0.0
) -> Bar:
    """Return a roll bar that takes 4 in at a joint."""
    return Bar(
        key="bar",
        name="roll bar",
        material=material,
        section=section,
        grip="clamp_on_cap",
        grip_mass_kg_m=cap_lb_ft * LB_FT_KG_M,
        overlap_m=4 * INCH_M,
        part="bar_stick",
    )


def crank(arm_in: float, **changes: object) -> HandCrank:
    """Return a crank without mass, gears or losses."""
    plain = HandCrank(
        key="crank",
        name="hand crank",
        arm_m=arm_in * INCH_M,
        ratio=1.0,
        efficiency=1.0,
        mass_kg=0.0,
        part="crank",
        extension_part="crank_pipe",
        joint_part="joint",
    )
    return plain.but(**changes)


def span(length_ft: float, hang_ft: float, layers: int = 1, mils: float = 6.0) -> CurtainSpan:
    """Return a curtain of film of 920 kg/m3, its opening as long as itself."""
    thickness_m = layers * mils * MIL_M
    return CurtainSpan(
        mark="side/0/panel/0",
        side=0,
        index=0,
        open_from_m=0.0,
        open_to_m=length_ft * FOOT_M,
        from_m=0.0,
        to_m=length_ft * FOOT_M,
        length_m=length_ft * FOOT_M,
        hang_m=hang_ft * FOOT_M,
        cut_height_m=hang_ft * FOOT_M,
        layers=layers,
        thickness_m=thickness_m,
        film_mass_kg_m2=thickness_m * 920.0,
    )


def hung(
    curtain: CurtainSpan,
    roll_bar: Bar,
    drive: HandCrank,
    limits: Limits = FREE,
    wrap_ft: float = 0.0,
    slack_ft: float = 0.0,
    rope_step_ft: float = 0.0,
) -> HungCurtain:
    """Return a curtain hung on a bar of 21 ft sticks, the side as high as the film hangs."""
    return HungCurtain(
        span=curtain,
        bar=roll_bar,
        stick_m=21 * FOOT_M,
        drive=drive,
        limits=limits,
        wrap_m=wrap_ft * FOOT_M,
        slack_m=slack_ft * FOOT_M,
        side_m=curtain.hang_m,
        rope_step_m=rope_step_ft * FOOT_M,
    )
