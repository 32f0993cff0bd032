"""Work the curtains: from where each one hangs to what the hand feels at the crank.

At the bottom the bar hangs shut with its wrap of film on it; the loose film is wound first, then
the bar climbs until all film is on it. Weight and radius of the roll only grow on the way up, so
the greatest force, twist and trailing are those at the top.
"""

from dataclasses import replace

from hoopwright.cover.cover import Cover, CurtainSpan
from hoopwright.curtain.bar import SHEAR_PA, bar_mass, stick_count, torsion_constant
from hoopwright.curtain.curtain import CurtainWork
from hoopwright.curtain.hung import HungCurtain
from hoopwright.curtain.lift import Lift, lift_at
from hoopwright.curtain.lifting import (
    bar_twist,
    free_end_trailing,
    longest_by_force,
    longest_by_trailing,
    raised_energy,
)
from hoopwright.curtain.rolling import wound_turns
from hoopwright.curtain.rope import rope_legs, zigzag_rope
from hoopwright.curtain.workings import explain_work
from hoopwright.farm import Bar, HandCrank, Limits, Part, Side
from hoopwright.survey.survey import Survey


def work_curtains(
    survey: Survey,
    sides: tuple[Side, Side],
    cover: Cover,
    bars: tuple[Bar, ...],
    drives: tuple[HandCrank, ...],
    parts: tuple[Part, ...],
    limits: Limits,
    bar_wrap_m: float,
) -> tuple[CurtainWork, ...]:
    """Return how every curtain of a cover rolls, turns and hangs, in the order of its curtains.

    Args:
        survey: The frame as built.
        sides: Both sides as chosen.
        cover: The skin laid one way.
        bars: Roll bars of the catalogue.
        drives: Drives of the catalogue.
        parts: Parts of the catalogue; a stick of bar is as long as its part holds.
        limits: What people can do.
        bar_wrap_m: Film on a bar when its curtain is shut, m.
    """
    bar_of = {bar.key: bar for bar in bars}
    drive_of = {drive.key: drive for drive in drives}
    part_of = {part.key: part for part in parts}

    def hung(span: CurtainSpan) -> HungCurtain:
        side = sides[span.side]
        panel = side.panels[span.index]
        bar = bar_of[panel.bar]
        return HungCurtain(
            span=span,
            bar=bar,
            stick_m=part_of[bar.part].holds,
            drive=drive_of[panel.drive],
            limits=limits,
            wrap_m=bar_wrap_m,
            slack_m=side.slack_m,
            side_m=survey.side_m[span.side],
            rope_step_m=side.rope_step_m if panel.rope else 0.0,
        )

    return tuple(work_curtain(hung(span)) for span in cover.curtains)


def work_curtain(hung: HungCurtain) -> CurtainWork:
    """Return how one curtain rolls, turns and hangs.

    Source:
        Each figure keeps its own working.
    """
    span, drive, travel_m = hung.span, hung.drive, hung.travel_m
    low, half, high = (lift_at(hung, wound_m) for wound_m in hung.wound_m)
    turns = wound_turns(span.hang_m, low.radius_m, high.radius_m)
    twist_rad = bar_twist(high.line_torque_n, span.length_m, *_stiffness(hung))
    sticks = stick_count(span.length_m, hung.stick_m, hung.bar.overlap_m)
    legs = rope_legs(span.length_m, hung.rope_step_m) if hung.rope_step_m else 0
    diameters_m = (2 * low.radius_m, 2 * half.radius_m, 2 * high.radius_m)
    work = CurtainWork(
        mark=span.mark,
        side=span.side,
        index=span.index,
        length_m=span.length_m,
        travel_m=travel_m,
        diameters_m=diameters_m,
        weights_n=(low.weight_n, half.weight_n, high.weight_n),
        torques_nm=(low.torque_nm, half.torque_nm, high.torque_nm),
        hand_forces_n=(low.hand_n, half.hand_n, high.hand_n),
        hardest_n=high.hand_n,
        turns=turns,
        handle_turns=turns * drive.ratio,
        twist_rad=twist_rad,
        trailing_m=free_end_trailing(twist_rad, high.radius_m),
        energy_j=_energy(hung),
        hand_length_m=_hand_length(hung, high),
        trailing_length_m=longest_by_trailing(
            hung.limits.trailing_m, high.radius_m, high.line_torque_n, *_stiffness(hung)
        ),
        bar_sticks=sticks,
        bar_joints=sticks - 1,
        opening_m2=_opening(hung, diameters_m[2]),
        rope_m=zigzag_rope(span.length_m, travel_m, legs) if legs else 0.0,
        rope_legs=legs,
        eyes=legs + 1 if legs else 0,
    )
    return replace(work, workings=explain_work(hung, work, high.line_torque_n))


def _stiffness(hung: HungCurtain) -> tuple[float, float]:
    """Return shear modulus, Pa, and torsion constant, m4, of the bar."""
    return SHEAR_PA[hung.bar.material], torsion_constant(hung.bar.section)


def _hand_length(hung: HungCurtain, high: Lift) -> float:
    drive = hung.drive
    most_nm = hung.limits.hand_force_n * drive.arm_m * drive.ratio * drive.efficiency
    return longest_by_force(most_nm, high.line_torque_n, high.extra_torque_nm)


def _energy(hung: HungCurtain) -> float:
    span, travel_m = hung.span, hung.travel_m
    wound_kg_m = span.film_mass_kg_m2 * (hung.wrap_m + span.hang_m - travel_m)
    shut_kg = (bar_mass(hung.bar) + wound_kg_m) * span.length_m + hung.drive.mass_kg
    return raised_energy(shut_kg, span.film_mass_kg_m2 * travel_m * span.length_m, travel_m)


def _opening(hung: HungCurtain, roll_m: float) -> float:
    """Return the clear opening under the roll, m2; the roll hangs just below the hip board."""
    height_m = min(hung.side_m, hung.travel_m) - roll_m
    return max(0.0, height_m) * max(0.0, hung.span.open_to_m - hung.span.open_from_m)
