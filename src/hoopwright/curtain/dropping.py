"""Work a curtain that opens downward: a rod on lift lines, film fixed at the baseboard.

A line goes up from the rod at each bow within the curtain and at both its ends, over a pulley on
the hip board, and is tied to one cable that runs along the hip to a drum. The cable moves as far
as the rod, so the drum carries the whole weight on half its diameter; what the pulleys take is in
the drive's efficiency and the share of rubbing. The rod carries the film that hangs from it, and
the rest lies bunched at the bottom: the handle is hardest when the curtain is shut, with the rod
at the hip.

Left out: the rod sags between its lines and the lines stretch, so trailing is not worked out; the
cable lies in one layer on the drum.
"""

import math
from dataclasses import replace

from hoopwright.curtain.bar import bar_mass, stick_count
from hoopwright.curtain.curtain import CurtainWork
from hoopwright.curtain.drop_workings import explain_drop
from hoopwright.curtain.hung import HungCurtain
from hoopwright.curtain.lift import Lift, lift_at
from hoopwright.curtain.lifting import raised_energy
from hoopwright.curtain.lines import LONGEST_SIDE_M, lift_lines
from hoopwright.curtain.longest import hand_length, longest_bar
from hoopwright.curtain.roped import rope_curtain
from hoopwright.curtain.runaway import handle_speed, runaway_speed
from hoopwright.curtain.way import clear_opening, gutter_gap, pocket_gap


def drop_curtain(hung: HungCurtain) -> CurtainWork:
    """Return how one curtain that opens downward turns and hangs.

    Source:
        Each figure keeps its own working.
    """
    span, drive, travel_m = hung.span, hung.drive, hung.travel_m
    shut, half, down = (drop_at(hung, travel_m * share) for share in (0.0, 0.5, 1.0))
    turns = travel_m / (2 * math.pi * shut.radius_m)
    hand_m = hand_length(hung, shut)
    longest_m, bound = longest_bar(hung, hand_m, LONGEST_SIDE_M)
    sticks = stick_count(span.length_m, hung.stick_m, hung.bar.overlap_m)
    energy_j = _energy(hung)
    speed_m_s = _runaway(hung, energy_j, shut.radius_m)
    rod_m = hung.bar.section.outside_m / 2
    roped, lines = rope_curtain(hung), lift_lines(hung, shut.radius_m)
    work = CurtainWork(
        mark=span.mark,
        side=span.side,
        index=span.index,
        kind=hung.side.kind,
        cranked=hung.panel.crank_end,
        length_m=span.length_m,
        travel_m=travel_m,
        diameters_m=(0.0, 0.0, 0.0),
        weights_n=(shut.weight_n, half.weight_n, down.weight_n),
        torques_nm=(shut.torque_nm, half.torque_nm, down.torque_nm),
        hand_forces_n=(shut.hand_n, half.hand_n, down.hand_n),
        hardest_n=shut.hand_n,
        turns=turns,
        handle_turns=turns * drive.ratio,
        minutes=turns * drive.ratio / hung.limits.handle_rate_per_min,
        twist_rad=0.0,
        twist_trailing_m=0.0,
        play_trailing_m=0.0,
        uneven_trailing_m=0.0,
        trailing_m=0.0,
        joint_angles_rad=(0.0, 0.0, 0.0),
        joint_swing=1.0,
        guide_m=0.0,
        energy_j=energy_j,
        runaway_m_s=speed_m_s,
        runaway_handle_m_s=handle_speed(speed_m_s, shut.radius_m, drive.ratio, drive.arm_m),
        hand_length_m=hand_m,
        trailing_length_m=LONGEST_SIDE_M,
        longest_m=longest_m,
        bound_by=bound,
        bar_sticks=sticks,
        bar_joints=sticks - 1,
        opening_m2=clear_opening(hung, travel_m, rod_m),
        gutter_gap_m=gutter_gap(hung, rod_m),
        pocket_gap_m=pocket_gap(hung, rod_m),
        rope_m=roped.rope_m,
        rope_legs=roped.legs,
        eyes=roped.eyes,
        rope_tension_n=roped.tension_n,
        eye_load_n=roped.eye_load_n,
        lift_lines=lines.count,
        lift_line_m=lines.length_m,
        pulleys=lines.pulleys,
        hung=hung,
    )
    return replace(work, workings=explain_drop(hung, work, shut, roped, lines))


def hanging_film(hung: HungCurtain, lowered_m: float) -> float:
    """Return the film that hangs from the rod, m.

    Args:
        hung: The curtain.
        lowered_m: How far the rod has gone down, m.

    Source:
        Derived here: what the rod comes down is laid off at the bottom.
    """
    return max(0.0, hung.span.hang_m - lowered_m)


def drop_at(hung: HungCurtain, lowered_m: float) -> Lift:
    """Return lever, weight, torque and hand force at one place of the rod.

    Args:
        hung: The curtain.
        lowered_m: How far the rod has gone down, m.

    Source:
        See the module.
    """
    return lift_at(hung, hanging_film(hung, lowered_m))


def _energy(hung: HungCurtain) -> float:
    span, travel_m = hung.span, hung.travel_m
    kept_kg_m = span.film_mass_kg_m2 * hanging_film(hung, travel_m)
    lifted_kg = span.film_mass_kg_m2 * travel_m * span.length_m
    return raised_energy((bar_mass(hung.bar) + kept_kg_m) * span.length_m, lifted_kg, travel_m)


def _runaway(hung: HungCurtain, energy_j: float, radius_m: float) -> float:
    drive = hung.drive
    if drive.holds:
        return 0.0
    falling_kg = bar_mass(hung.bar) * hung.span.length_m
    return runaway_speed(energy_j, falling_kg, 0.0, drive.inertia_kg_m2 * drive.ratio**2, radius_m)
