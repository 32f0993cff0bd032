"""Work a curtain that winds on a bar from the bottom.

At the bottom the bar hangs shut with its wrap of film on it; the loose film is wound first, then
the bar climbs until it stops. Weight and radius of the roll only grow on the way up, so the
greatest force, twist and trailing are those at the top.
"""

from dataclasses import replace

from hoopwright.curtain.bar import bar_inertia, bar_mass, stick_count
from hoopwright.curtain.curtain import CurtainWork
from hoopwright.curtain.hung import HungCurtain
from hoopwright.curtain.joint import joint_angle, joint_swing
from hoopwright.curtain.lift import lift_at
from hoopwright.curtain.lifting import raised_energy
from hoopwright.curtain.longest import hand_length, longest_bar
from hoopwright.curtain.roll_workings import explain_roll
from hoopwright.curtain.rolling import wound_turns
from hoopwright.curtain.roped import rope_curtain
from hoopwright.curtain.runaway import handle_speed, runaway_speed
from hoopwright.curtain.trailing import lag_of, longest_by_trailing
from hoopwright.curtain.way import clear_opening, gutter_gap, pocket_gap
from hoopwright.farm.catalogue import GearedCrank, HandCrank


def roll_curtain(hung: HungCurtain) -> CurtainWork:
    """Return how one curtain that rolls up turns and hangs.

    Source:
        Each figure keeps its own working.
    """
    span, drive, travel_m = hung.span, hung.drive, hung.travel_m
    low, half, high = (lift_at(hung, wound_m) for wound_m in hung.wound_m)
    turns = wound_turns(hung.wound_m[2] - hung.wrap_m, low.radius_m, high.radius_m)
    lag = lag_of(hung, high, turns, span.length_m)
    hand_m = hand_length(hung, high)
    trailing_m = longest_by_trailing(hung, high, turns)
    longest_m, bound = longest_bar(hung, hand_m, trailing_m)
    angles_rad = (
        joint_angle_at(hung, 0.0),
        joint_angle_at(hung, travel_m / 2),
        joint_angle_at(hung, travel_m),
    )
    sticks = stick_count(span.length_m, hung.stick_m, hung.bar.overlap_m)
    energy_j = _energy(hung)
    speed_m_s = _runaway(hung, energy_j)
    roped = rope_curtain(hung)
    work = CurtainWork(
        mark=span.mark,
        side=span.side,
        index=span.index,
        kind=hung.side.kind,
        cranked=hung.panel.crank_end,
        length_m=span.length_m,
        travel_m=travel_m,
        diameters_m=(2 * low.radius_m, 2 * half.radius_m, 2 * high.radius_m),
        weights_n=(low.weight_n, half.weight_n, high.weight_n),
        torques_nm=(low.torque_nm, half.torque_nm, high.torque_nm),
        hand_forces_n=(low.hand_n, half.hand_n, high.hand_n),
        hardest_n=high.hand_n,
        turns=turns,
        handle_turns=turns * drive.ratio,
        minutes=turns * drive.ratio / hung.limits.handle_rate_per_min,
        twist_rad=lag.twist_rad,
        twist_trailing_m=lag.twist_m,
        play_trailing_m=lag.play_m,
        uneven_trailing_m=lag.uneven_m,
        trailing_m=lag.all_m,
        joint_angles_rad=angles_rad,
        joint_swing=joint_swing(max(angles_rad)),
        guide_m=_guide(hung),
        energy_j=energy_j,
        runaway_m_s=speed_m_s,
        runaway_handle_m_s=handle_speed(speed_m_s, _lifting_radius(hung), drive.ratio, drive.arm_m),
        hand_length_m=hand_m,
        trailing_length_m=trailing_m,
        longest_m=longest_m,
        bound_by=bound,
        bar_sticks=sticks,
        bar_joints=sticks - 1,
        opening_m2=clear_opening(hung, travel_m, high.radius_m),
        gutter_gap_m=gutter_gap(hung, high.radius_m),
        pocket_gap_m=pocket_gap(hung, high.radius_m),
        rope_m=roped.rope_m,
        rope_legs=roped.legs,
        eyes=roped.eyes,
        rope_tension_n=roped.tension_n,
        eye_load_n=roped.eye_load_n,
        lift_lines=0,
        lift_line_m=0.0,
        pulleys=0,
        hung=hung,
    )
    return replace(work, workings=explain_roll(hung, work, high, roped))


def bar_height(hung: HungCurtain, raised_m: float) -> float:
    """Return the height of the bar above the ground, m.

    Args:
        hung: The curtain.
        raised_m: How far the bar has climbed along the bow, m.
    """
    return hung.height_m(hung.covered_m - raised_m)


def joint_angle_at(hung: HungCurtain, raised_m: float) -> float:
    """Return the angle of the universal joint, rad; 0 where the drive has none.

    Args:
        hung: The curtain.
        raised_m: How far the bar has climbed along the bow, m.

    Source:
        `joint_angle`.
    """
    drive = hung.drive
    if not isinstance(drive, HandCrank):
        return 0.0
    height_m = bar_height(hung, raised_m)
    return joint_angle(height_m, hung.limits.handle_height_m, drive.extension_m)


def _guide(hung: HungCurtain) -> float:
    """Return the guide pipe, m: it stands in the ground and reaches the open bar."""
    drive = hung.drive
    if not isinstance(drive, GearedCrank):
        return 0.0
    return bar_height(hung, hung.travel_m) + drive.guide_buried_m


def _energy(hung: HungCurtain) -> float:
    span, travel_m = hung.span, hung.travel_m
    wound_kg_m = span.film_mass_kg_m2 * (hung.wrap_m + hung.side.slack_m)
    shut_kg = (bar_mass(hung.bar) + wound_kg_m) * span.length_m + hung.carried_kg
    return raised_energy(shut_kg, span.film_mass_kg_m2 * travel_m * span.length_m, travel_m)


def _lifting_radius(hung: HungCurtain) -> float:
    """Return the radius of the roll when the bar begins to climb, m."""
    return lift_at(hung, hung.wrap_m + hung.side.slack_m).radius_m


def _runaway(hung: HungCurtain, energy_j: float) -> float:
    drive, length_m = hung.drive, hung.span.length_m
    if drive.holds:
        return 0.0
    return runaway_speed(
        energy_j,
        bar_mass(hung.bar) * length_m + hung.carried_kg,
        bar_inertia(hung.bar) * length_m,
        drive.inertia_kg_m2 * drive.ratio**2,
        _lifting_radius(hung),
    )
