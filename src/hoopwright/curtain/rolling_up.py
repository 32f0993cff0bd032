"""Work a curtain that winds on a bar from the bottom.

At the bottom the bar hangs shut with its wrap of film on it; the loose film is wound first, then
the bar climbs until it stops. Weight and radius of the roll only grow on the way up, so the
greatest force, twist and trailing are those at the top.
"""

from hoopwright.curtain.bar import bar_inertia, bar_mass
from hoopwright.curtain.hung import HungCurtain
from hoopwright.curtain.joint import joint_angle
from hoopwright.curtain.lift import lift_at
from hoopwright.curtain.lifting import raised_energy
from hoopwright.curtain.moved import Moved
from hoopwright.curtain.rolling import wound_turns
from hoopwright.curtain.runaway import runaway_speed
from hoopwright.curtain.trailing import lag_of, longest_by_trailing
from hoopwright.farm.drive import GearedCrank, HandCrank


def roll_up(hung: HungCurtain) -> Moved:
    """Return how one curtain that winds on a bar moves through its travel.

    Source:
        Each figure keeps its own working.
    """
    travel_m, wrap_m = hung.travel_m, hung.wrap_m
    low, half, high = (lift_at(hung, wound_m) for wound_m in hung.wound_m)
    turns = wound_turns(hung.wound_m[2] - wrap_m, low.radius_m, high.radius_m)
    energy_j = _energy(hung)
    lifting_m = lift_at(hung, wrap_m + hung.side.slack_m).radius_m
    return Moved(
        places=(low, half, high),
        hardest=high,
        turns=turns,
        energy_j=energy_j,
        runaway_m_s=_runaway(hung, energy_j, lifting_m),
        low_radius_m=lifting_m,
        edge_m=high.radius_m,
        trailing_length_m=longest_by_trailing(hung, high, turns),
        diameters_m=(2 * low.radius_m, 2 * half.radius_m, 2 * high.radius_m),
        lag=lag_of(hung, high, turns),
        joint_angles_rad=(
            joint_angle_at(hung, 0.0),
            joint_angle_at(hung, travel_m / 2),
            joint_angle_at(hung, travel_m),
        ),
        guide_m=_guide(hung),
    )


def bar_height(hung: HungCurtain, raised_m: float) -> float:
    """Return the height of the bar above the ground, m.

    Args:
        hung: The curtain.
        raised_m: How far the bar has climbed along the bow, m.

    Source:
        The curve of the bow as surveyed.
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


def _runaway(hung: HungCurtain, energy_j: float, radius_m: float) -> float:
    drive, length_m = hung.drive, hung.span.length_m
    if drive.holds:
        return 0.0
    return runaway_speed(
        energy_j,
        bar_mass(hung.bar) * length_m + hung.carried_kg,
        bar_inertia(hung.bar) * length_m,
        drive.inertia_kg_m2 * drive.ratio**2,
        radius_m,
    )
