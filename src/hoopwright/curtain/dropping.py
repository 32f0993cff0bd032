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

from hoopwright.curtain.bar import bar_mass
from hoopwright.curtain.hung import HungCurtain
from hoopwright.curtain.lift import Lift, lift_at
from hoopwright.curtain.lifting import raised_energy
from hoopwright.curtain.lines import LONGEST_SIDE_M, lift_lines
from hoopwright.curtain.moved import Moved
from hoopwright.curtain.runaway import runaway_speed


def drop_down(hung: HungCurtain) -> Moved:
    """Return how one curtain that opens downward moves through its travel.

    Source:
        Each figure keeps its own working.
    """
    travel_m = hung.travel_m
    shut, half, down = (drop_at(hung, travel_m * share) for share in (0.0, 0.5, 1.0))
    energy_j = _energy(hung)
    return Moved(
        places=(shut, half, down),
        hardest=shut,
        turns=travel_m / (2 * math.pi * shut.radius_m),
        energy_j=energy_j,
        runaway_m_s=_runaway(hung, energy_j, shut.radius_m),
        low_radius_m=shut.radius_m,
        edge_m=hung.bar.section.outside_m / 2,
        trailing_length_m=LONGEST_SIDE_M,
        lines=lift_lines(hung, shut.radius_m),
    )


def carried_film(hung: HungCurtain, lowered_m: float) -> float:
    """Return the film that the rod carries, m: its wrap and what hangs from it.

    Args:
        hung: The curtain.
        lowered_m: How far the rod has gone down, m.

    Source:
        Derived here: what the rod comes down is laid off at the bottom.
    """
    return hung.wrap_m + max(0.0, hung.span.hang_m - lowered_m)


def drop_at(hung: HungCurtain, lowered_m: float) -> Lift:
    """Return lever, weight, torque and hand force at one place of the rod.

    Args:
        hung: The curtain.
        lowered_m: How far the rod has gone down, m.

    Source:
        See the module.
    """
    return lift_at(hung, carried_film(hung, lowered_m))


def _energy(hung: HungCurtain) -> float:
    span, travel_m = hung.span, hung.travel_m
    kept_kg_m = span.film_mass_kg_m2 * carried_film(hung, travel_m)
    lifted_kg = span.film_mass_kg_m2 * travel_m * span.length_m
    return raised_energy((bar_mass(hung.bar) + kept_kg_m) * span.length_m, lifted_kg, travel_m)


def _runaway(hung: HungCurtain, energy_j: float, radius_m: float) -> float:
    drive = hung.drive
    if drive.holds:
        return 0.0
    falling_kg = bar_mass(hung.bar) * hung.span.length_m
    return runaway_speed(energy_j, falling_kg, 0.0, drive.inertia_kg_m2 * drive.ratio**2, radius_m)
