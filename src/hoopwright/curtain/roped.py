"""The wind rope or the straps of one curtain, and what a storm pulls at them."""

import math

from msgspec import Struct

from hoopwright.curtain.hung import HungCurtain
from hoopwright.curtain.rope import leg_pull, rope_legs, strap_count, strap_rope, zigzag_rope
from hoopwright.curtain.storm import storm_pressure


class Roped(Struct, frozen=True):
    """The wind rope or the straps of one curtain; all 0 without.

    Attributes:
        rope_m: Rope with tails, or all straps, m.
        legs: Legs of the zigzag, or straps.
        eyes: Eyes, top and bottom together.
        step_m: From a top eye to the next bottom eye, or from strap to strap, m.
        height_m: Between the rows of eyes, m.
        leg_m: Length of a leg from eye to eye, m.
        pressure_pa: Pressure of the storm, Pa.
        tension_n: Pull in a leg, N.
        eye_load_n: Pull on an eye straight out, N.
    """

    rope_m: float = 0.0
    legs: int = 0
    eyes: int = 0
    step_m: float = 0.0
    height_m: float = 0.0
    leg_m: float = 0.0
    pressure_pa: float = 0.0
    tension_n: float = 0.0
    eye_load_n: float = 0.0


NO_ROPE = Roped()


def rope_curtain(hung: HungCurtain) -> Roped:
    """Return the wind rope or the straps of one curtain.

    Eyes stand in the hip board and at the height of the shut bar.

    Source:
        The rules of `rope` and `storm`.
    """
    kind, step_m = hung.panel.rope, hung.side.rope_step_m
    length_m, height_m = hung.span.length_m, hung.covered_m
    if kind == "none" or not height_m:
        return NO_ROPE
    if kind == "straps":
        legs = hung.inner_bows() + 2 if step_m is None else strap_count(length_m, step_m)
        step_m, leg_m, eyes, at_eye = length_m / (legs - 1), height_m, 2 * legs, 1
        rope_m = strap_rope(legs, height_m)
    else:
        legs = hung.inner_bows() + 1 if step_m is None else rope_legs(length_m, step_m)
        step_m, eyes, at_eye = length_m / legs, legs + 1, min(2, legs)
        rope_m, leg_m = zigzag_rope(length_m, height_m, legs), math.hypot(step_m, height_m)
    weather = hung.weather
    pressure_pa = storm_pressure(weather.storm_m_s, hung.height_m(0.0), weather.exposure)
    tension_n, eye_n = leg_pull(
        pressure_pa, weather.rope_share, step_m, height_m, leg_m, weather.rope_bow_m, at_eye
    )
    return Roped(rope_m, legs, eyes, step_m, height_m, leg_m, pressure_pa, tension_n, eye_n)
