"""Work the curtains: from where each one hangs to what the hand feels at the handle."""

from hoopwright.cover.cover import Cover, CurtainSpan
from hoopwright.curtain.bar import stick_count
from hoopwright.curtain.curtain import CurtainWork
from hoopwright.curtain.dropping import drop_down
from hoopwright.curtain.hung import HungCurtain
from hoopwright.curtain.joint import joint_swing
from hoopwright.curtain.longest import longest_bar
from hoopwright.curtain.rolling_up import roll_up
from hoopwright.curtain.roped import rope_curtain
from hoopwright.curtain.runaway import handle_speed
from hoopwright.curtain.way import clear_opening, gutter_gap, pocket_gap
from hoopwright.curtain.workings import explain_work
from hoopwright.farm import Bar, Limits, Part, Side, SideBoards, Weather
from hoopwright.farm.drive import Drive
from hoopwright.quantity.remembered import Remembered
from hoopwright.quantity.working import LaterWorkings
from hoopwright.survey.survey import Survey


def work_curtains(
    boards: tuple[SideBoards, SideBoards],
    survey: Survey,
    sides: tuple[Side, Side],
    cover: Cover,
    bars: tuple[Bar, ...],
    drives: tuple[Drive, ...],
    parts: tuple[Part, ...],
    limits: Limits,
    weather: Weather,
    bar_wrap_m: float,
) -> tuple[CurtainWork, ...]:
    """Return how every curtain of a cover moves, turns and hangs, in the order of its curtains.

    Args:
        boards: Boards of both sides.
        survey: The frame as built.
        sides: Both sides as chosen.
        cover: The skin laid one way.
        bars: Roll bars of the catalogue.
        drives: Drives of the catalogue.
        parts: Parts of the catalogue; a stick of bar is as long as its part holds.
        limits: What people can do.
        weather: The storm that the wind rope is looked at with.
        bar_wrap_m: Film on a bar when its curtain is shut, m.
    """
    bar_of = {bar.key: bar for bar in bars}
    drive_of = {drive.key: drive for drive in drives}
    part_of = {part.key: part for part in parts}

    def work(span: CurtainSpan) -> CurtainWork:
        side = sides[span.side]
        panel = side.panels[span.index]
        bar = bar_of[panel.bar]
        return _work(
            span,
            side,
            boards[span.side],
            survey,
            bar,
            part_of[bar.part],
            drive_of[panel.drive],
            limits,
            weather,
            bar_wrap_m,
        )

    return tuple(work(span) for span in cover.curtains)


def _hang_and_work(
    span: CurtainSpan,
    side: Side,
    boards: SideBoards,
    survey: Survey,
    bar: Bar,
    stick: Part,
    drive: Drive,
    limits: Limits,
    weather: Weather,
    wrap_m: float,
) -> CurtainWork:
    return work_curtain(
        HungCurtain(
            span=span,
            side=side,
            boards=boards,
            survey=survey,
            bar=bar,
            stick_m=stick.holds,
            drive=drive,
            limits=limits,
            weather=weather,
            wrap_m=wrap_m,
        )
    )


_work = Remembered(_hang_and_work)


def work_curtain(hung: HungCurtain) -> CurtainWork:
    """Return how one curtain moves, turns and hangs.

    Source:
        Each figure keeps its own working.
    """
    span, drive = hung.span, hung.drive
    moved = drop_down(hung) if hung.drops else roll_up(hung)
    shut, half, high = moved.places
    lag, handle_turns = moved.lag, moved.turns * drive.ratio
    longest = longest_bar(hung, moved.hardest, moved.trailing_length_m)
    sticks = stick_count(span.length_m, hung.stick_m, hung.bar.overlap_m)
    roped = rope_curtain(hung)
    return CurtainWork(
        mark=span.mark,
        side=span.side,
        index=span.index,
        kind=hung.side.kind,
        cranked=hung.panel.crank_end,
        length_m=span.length_m,
        travel_m=hung.travel_m,
        diameters_m=moved.diameters_m,
        weights_n=(shut.weight_n, half.weight_n, high.weight_n),
        torques_nm=(shut.torque_nm, half.torque_nm, high.torque_nm),
        hand_forces_n=(shut.hand_n, half.hand_n, high.hand_n),
        hardest_n=moved.hardest.hand_n,
        turns=moved.turns,
        handle_turns=handle_turns,
        minutes=handle_turns / hung.limits.handle_rate_per_min,
        twist_rad=lag.twist_rad,
        twist_trailing_m=lag.twist_m,
        play_trailing_m=lag.play_m,
        uneven_trailing_m=lag.uneven_m,
        trailing_m=lag.all_m,
        joint_angles_rad=moved.joint_angles_rad,
        joint_swing=joint_swing(max(moved.joint_angles_rad)),
        guide_m=moved.guide_m,
        energy_j=moved.energy_j,
        runaway_m_s=moved.runaway_m_s,
        runaway_handle_m_s=handle_speed(moved.runaway_m_s, moved.low_radius_m, drive),
        hand_length_m=longest.by_hand_m,
        trailing_length_m=longest.by_trailing_m,
        longest_m=longest.bar_m,
        bound_by=longest.bound,
        bar_sticks=sticks,
        bar_joints=sticks - 1,
        opening_m2=clear_opening(hung, hung.travel_m, moved.edge_m),
        gutter_gap_m=gutter_gap(hung, moved.edge_m),
        pocket_gap_m=pocket_gap(hung, moved.edge_m),
        rope_m=roped.rope_m,
        rope_legs=roped.legs,
        eyes=roped.eyes,
        rope_tension_n=roped.tension_n,
        eye_load_n=roped.eye_load_n,
        lift_lines=moved.lines.count,
        lift_line_m=moved.lines.length_m,
        pulleys=moved.lines.pulleys,
        hung=hung,
        workings=LaterWorkings(lambda: explain_work(hung, moved, longest, sticks, roped)),
    )
