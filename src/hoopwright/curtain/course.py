"""The course of one curtain: everything about it on the whole way from shut to open."""

import math

from msgspec import Struct

from hoopwright.curtain.curtain import Course, CurtainWork
from hoopwright.curtain.dropping import drop_at
from hoopwright.curtain.hung import HungCurtain
from hoopwright.curtain.lift import Lift, lift_at
from hoopwright.curtain.rolling import wound_turns
from hoopwright.curtain.rolling_up import bar_height, joint_angle_at
from hoopwright.curtain.trailing import lag_of
from hoopwright.curtain.way import clear_opening


class _Spot(Struct, frozen=True):
    """One place on the way."""

    lift: Lift
    height_m: float
    radius_m: float
    turns: float
    trailing_m: float
    joint_rad: float
    opening_m2: float


def course(work: CurtainWork, steps: int = 40) -> Course:
    """Return a curtain on its whole way from shut to open.

    Args:
        work: The curtain as worked.
        steps: Even steps of the travel, at least 1; there is one place more than steps.

    Raises:
        ValueError: There is no step.

    Source:
        The rules that the working of each figure of the curtain tells.
    """
    if steps < 1:
        raise ValueError(f"steps: a course needs at least one step, not {steps!r}")
    hung = work.hung
    shares = tuple(k / steps for k in range(steps + 1))
    spot_at = _dropped if hung.drops else _rolled
    spots = [spot_at(hung, share) for share in shares]
    a_turn_min = hung.drive.ratio / hung.limits.handle_rate_per_min
    return Course(
        shares=shares,
        heights_m=tuple(spot.height_m for spot in spots),
        radii_m=tuple(spot.radius_m for spot in spots),
        weights_n=tuple(spot.lift.weight_n for spot in spots),
        torques_nm=tuple(spot.lift.torque_nm for spot in spots),
        hand_forces_n=tuple(spot.lift.hand_n for spot in spots),
        trailing_m=tuple(spot.trailing_m for spot in spots),
        joint_angles_rad=tuple(spot.joint_rad for spot in spots),
        openings_m2=tuple(spot.opening_m2 for spot in spots),
        minutes=tuple(spot.turns * a_turn_min for spot in spots),
    )


def _rolled(hung: HungCurtain, share: float) -> _Spot:
    raised_m = share * hung.travel_m
    low_m, _, top_m = hung.wound_m
    wound_m = top_m - hung.travel_m + raised_m if share else low_m
    lift = lift_at(hung, wound_m)
    turns = wound_turns(wound_m - low_m, lift_at(hung, low_m).radius_m, lift.radius_m)
    return _Spot(
        lift=lift,
        height_m=bar_height(hung, raised_m),
        radius_m=lift.radius_m,
        turns=turns,
        trailing_m=lag_of(hung, lift, turns).all_m,
        joint_rad=joint_angle_at(hung, raised_m),
        opening_m2=clear_opening(hung, raised_m, lift.radius_m),
    )


def _dropped(hung: HungCurtain, share: float) -> _Spot:
    lowered_m = share * hung.travel_m
    lift = drop_at(hung, lowered_m)
    return _Spot(
        lift=lift,
        height_m=hung.height_m(lowered_m),
        radius_m=0.0,
        turns=lowered_m / (2 * math.pi * lift.radius_m),
        trailing_m=0.0,
        joint_rad=0.0,
        opening_m2=clear_opening(hung, lowered_m, hung.bar.section.outside_m / 2),
    )
