"""One place of a bar on its way: how thick the roll is and what it pulls."""

from msgspec import Struct

from hoopwright.curtain.bar import bar_mass, winding_radius
from hoopwright.curtain.hung import HungCurtain
from hoopwright.curtain.lifting import hand_force, hanging_weight, winding_torque
from hoopwright.curtain.rolling import roll_radius
from hoopwright.farm.drive import LineDrum


class Lift(Struct, frozen=True):
    """One place of a bar on its way.

    Attributes:
        radius_m: Lever of the weight, m: radius of the roll, or of the drum.
        weight_n: What hangs on the film or on the lines, N.
        torque_nm: Torque at the cranked place with rubbing, N m.
        line_torque_n: Torque that each metre of bar takes with rubbing, N m/m.
        extra_torque_nm: Torque for what the bar carries of the crank, with rubbing, N m.
        hand_n: Force at the handle, N.
    """

    radius_m: float
    weight_n: float
    torque_nm: float
    line_torque_n: float
    extra_torque_nm: float
    hand_n: float


def lift_at(hung: HungCurtain, film_m: float) -> Lift:
    """Return lever, weight, torque and hand force at one place.

    Args:
        hung: The curtain.
        film_m: Film that the bar carries, m: wound on it, or hanging from the rod of a drop-down
            curtain.

    Source:
        The rules of `rolling`, `dropping` and `lifting`.
    """
    span, drive, rubbing = hung.span, hung.drive, hung.limits.rubbing_share
    if isinstance(drive, LineDrum):
        radius_m = drive.drum_m / 2
    else:
        radius_m = roll_radius(winding_radius(hung.bar.section), span.thickness_m, film_m)
    line_kg_m = bar_mass(hung.bar) + span.film_mass_kg_m2 * film_m
    weight_n = hanging_weight(line_kg_m, span.length_m, hung.carried_kg)
    torque_nm = winding_torque(weight_n, radius_m, rubbing)
    return Lift(
        radius_m=radius_m,
        weight_n=weight_n,
        torque_nm=torque_nm,
        line_torque_n=winding_torque(hanging_weight(line_kg_m, 1.0, 0.0), radius_m, rubbing),
        extra_torque_nm=winding_torque(
            hanging_weight(0.0, 0.0, hung.carried_kg), radius_m, rubbing
        ),
        hand_n=hand_force(torque_nm, drive.arm_m, drive.ratio, drive.efficiency),
    )
