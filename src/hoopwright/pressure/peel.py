"""What a seal line has to bear where two bowed layers meet.

The film leaves the chord at the angle a with sin a = c / (2 R). Its pull there is p R cos a along
the chord and p R sin a = p c / 2 away from it; the latter is half the load of the strip, as it
must be. Where two layers meet at a seal and are held beyond it, as at the edges of a curtain, the
bows stand to both sides of one plane. Away from the plane they pull against each other and open
the seal with p c / 2 each. Along the plane they pull together: beyond the seal one tail carries p
R1 cos a1 + p R2 cos a2, never more than p R1 + p R2, which is twice p R for equal bows. So a seal
line is asked for p R of the greater bow as each arm of a peel coupon has it, and the film and its
grip beyond for up to twice that.

Source:
    Derived here from T = p R, see `hoopwright.pressure.membrane`.
"""

import math

from msgspec import Struct

from hoopwright.pressure.membrane import billow_radius, film_pull


class SealPull(Struct, frozen=True):
    """What two layers under one pressure do to the seal line that joins them.

    Attributes:
        arm_n_m: Pull in the tighter layer, as in each arm of a peel coupon, N/m.
        tail_n_m: Pull that is left beyond the seal, along the plane between both, N/m.
        opening_n_m: Pull away from that plane, by one layer against the other, N/m.
        tail_limit_n_m: The most the tail can carry, both pulls in one line, N/m.
    """

    arm_n_m: float
    tail_n_m: float
    opening_n_m: float
    tail_limit_n_m: float


def seal_pull(chord_m: float, pressure_pa: float, rise_m: float, other_rise_m: float) -> SealPull:
    """Return what two layers under one pressure do to the seal line that joins them.

    Args:
        chord_m: Between the seal lines, m, above zero.
        pressure_pa: Pressure between the layers, Pa, zero or more.
        rise_m: Rise of one layer, m, above zero, at most half the chord.
        other_rise_m: Rise of the other to its side, m, likewise.

    Raises:
        ValueError: A figure is out of its range.

    Source:
        See the module.
    """
    radii = (billow_radius(chord_m, rise_m), billow_radius(chord_m, other_rise_m))
    pulls = [film_pull(pressure_pa, radius) for radius in radii]
    along = [
        pull * math.sqrt(max(0.0, 1 - (chord_m / (2 * radius)) ** 2))
        for pull, radius in zip(pulls, radii, strict=True)
    ]
    return SealPull(
        arm_n_m=max(pulls),
        tail_n_m=sum(along),
        opening_n_m=pressure_pa * chord_m / 2,
        tail_limit_n_m=sum(pulls),
    )
