"""Curtains hung on a bar, for the tests of what they weigh, turn and take.

Sizes are in feet and inches, as the handbook figures they are compared with.
"""

from dataclasses import replace

from hoopwright.cover import CurtainSpan
from hoopwright.curtain import CurtainWork
from hoopwright.curtain.hung import HungCurtain
from hoopwright.farm import (
    Bar,
    EvenBows,
    Frame,
    HandCrank,
    Limits,
    Panel,
    RoundBow,
    RoundTube,
    Side,
    SideBoards,
    SquareTube,
    Weather,
)
from hoopwright.farm.bar import Material
from hoopwright.farm.drive import Drive, GearedCrank, LineDrum
from hoopwright.farm.side import SideKind
from hoopwright.survey import survey_frame
from hoopwright.survey.survey import Survey

FOOT_M = 0.3048
INCH_M = 0.0254
MIL_M = 2.54e-5
POUND_KG = 0.45359237
LBF_N = POUND_KG * 9.80665
LB_FT_KG_M = POUND_KG / FOOT_M
LBF_IN_NM = LBF_N * INCH_M

FREE = Limits(rubbing_share=0.0, uneven_winding_m=0.0)
USUAL = Limits(rubbing_share=0.2, uneven_winding_m=0.0002)
BASE_FT = 1.0
BAY_FT = 4.0


def round_tube(outside_in: float, wall_in: float) -> RoundTube:
    """Return a round tube sized in inches."""
    return RoundTube(outside_m=outside_in * INCH_M, wall_m=wall_in * INCH_M)


def square_tube(outside_in: float, wall_in: float) -> SquareTube:
    """Return a square tube sized in inches."""
    return SquareTube(outside_m=outside_in * INCH_M, wall_m=wall_in * INCH_M)


def bar(
    section: RoundTube | SquareTube, material: Material = "steel", cap_lb_ft: float = 0.0
) -> Bar:
    """Return a roll bar that takes 4 in at a joint, without play."""
    return Bar(
        key="bar",
        name="roll bar",
        material=material,
        section=section,
        grip="clamp_on_cap",
        grip_mass_kg_m=cap_lb_ft * LB_FT_KG_M,
        overlap_m=4 * INCH_M,
        part="bar_stick",
        joint_play_m=0.0,
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


def geared(arm_in: float, **changes: object) -> GearedCrank:
    """Return a geared crank without mass or losses, five turns for one."""
    plain = GearedCrank(
        key="geared",
        name="geared crank",
        arm_m=arm_in * INCH_M,
        ratio=5.0,
        efficiency=1.0,
        mass_kg=0.0,
        part="geared",
        guide_part="guide_pipe",
    )
    return plain.but(**changes)


def drum(arm_in: float, drum_in: float, **changes: object) -> LineDrum:
    """Return a drum without gears or losses."""
    plain = LineDrum(
        key="drum",
        name="line drum",
        arm_m=arm_in * INCH_M,
        ratio=1.0,
        efficiency=1.0,
        drum_m=drum_in * INCH_M,
        part="drum",
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
        gap_m=0.0,
        board_gap_m=0.0,
    )


def hung(
    curtain: CurtainSpan,
    roll_bar: Bar,
    drive: Drive,
    limits: Limits = FREE,
    wrap_ft: float = 0.0,
    slack_ft: float = 0.0,
    rope_step_ft: float = 0.0,
    kind: SideKind = "roll_up",
) -> HungCurtain:
    """Return a curtain hung on a bar of 21 ft sticks over an upright side.

    The baseboard is 1 ft above the ground and the bar shuts level with it; the hip is as high
    above it as the film hangs, without its slack. Bows stand at 4 ft.
    """
    side_m = curtain.hang_m - slack_ft * FOOT_M
    boards = SideBoards(hip_height_m=BASE_FT * FOOT_M + side_m, baseboard_height_m=BASE_FT * FOOT_M)
    return HungCurtain(
        span=curtain,
        side=Side(
            name="East side",
            kind=kind,
            shut_height_m=BASE_FT * FOOT_M,
            pocket_bays=(0, 0),
            splits=(),
            panels=(
                Panel(
                    crank_end="front",
                    bar=roll_bar.key,
                    drive=drive.key,
                    rope="zigzag" if rope_step_ft else "none",
                ),
            ),
            slack_m=slack_ft * FOOT_M,
            rope_step_m=rope_step_ft * FOOT_M if rope_step_ft else None,
            bunch_m=0.0,
        ),
        boards=boards,
        survey=_upright(boards, curtain.open_to_m),
        bar=roll_bar,
        stick_m=21 * FOOT_M,
        drive=drive,
        limits=limits,
        weather=Weather(),
        wrap_m=wrap_ft * FOOT_M,
    )


def chosen(curtain: HungCurtain, **changes: object) -> HungCurtain:
    """Return the curtain with other choices for itself, such as the crank's place."""
    panels = (curtain.panel.but(**changes),)
    return replace(curtain, side=curtain.side.but(panels=panels))


def sided(curtain: HungCurtain, **changes: object) -> HungCurtain:
    """Return the curtain on a side with other choices."""
    return replace(curtain, side=curtain.side.but(**changes))


def boarded(curtain: HungCurtain, **changes: object) -> HungCurtain:
    """Return the curtain below a hip board with other sizes."""
    return replace(curtain, boards=curtain.boards.but(**changes))


def _upright(boards: SideBoards, length_m: float) -> Survey:
    """Return a frame whose legs stand upright past the hip, long enough for a curtain."""
    leg_m = boards.hip_height_m + 0.5
    bays = max(1, round(length_m / (BAY_FT * FOOT_M) + 0.499))
    return survey_frame(
        Frame(
            profile=RoundBow(
                span_m=26 * FOOT_M, leg_height_m=leg_m, peak_height_m=leg_m + 7 * FOOT_M
            ),
            tube_diameter_m=0.0,
            length_m=bays * BAY_FT * FOOT_M,
            bows=EvenBows(count=bays + 1, spacing_m=BAY_FT * FOOT_M),
            boards=(boards, boards),
        )
    )


def rolling(drive: Drive | None = None) -> HungCurtain:
    """Return 60 ft of two layers below a gutter, with all that rubs, plays and winds unevenly."""
    return boarded(
        hung(
            span(60, 5, layers=2),
            bar(round_tube(1.66, 0.065), cap_lb_ft=0.25).but(
                joint_play_m=0.0005, max_length_m=60.0
            ),
            drive or crank(12, ratio=2.0, efficiency=0.8, mass_kg=2.0, extension_m=2.0),
            USUAL,
            wrap_ft=1,
            slack_ft=0.25,
            rope_step_ft=4.0,
        ),
        gutter_drop_m=0.1,
    )


def dropping(holds: bool = False) -> HungCurtain:
    """Return 60 ft of one layer that drops, its rod square and its drum geared."""
    curtain = hung(
        span(60, 5),
        bar(square_tube(1.5, 0.0625), "aluminium"),
        drum(12, 3, ratio=2.0, efficiency=0.8, holds=holds, max_length_m=50.0),
        USUAL,
        wrap_ft=0.5,
        kind="drop_down",
    )
    return sided(curtain, bunch_m=0.3)


def inputs_of(work: CurtainWork, figure: str) -> dict[str, float]:
    """Return the numbers that a working carries, by name."""
    return {
        t.name: float(t.value) for t in work.working(figure).inputs if not isinstance(t.value, str)
    }
