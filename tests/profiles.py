"""Bows of every shape for tests that try many."""

import math

import msgspec
from hypothesis import strategies as st

from hoopwright.farm import GothicBow, RoundBow, StraightRafters
from hoopwright.farm.profile import Profile


@st.composite
def profiles(draw: st.DrawFn) -> Profile:
    """Draw a bow that can stand, of any shape."""
    span_m = draw(st.floats(4.0, 15.0))
    leg_m = draw(st.one_of(st.just(0.0), st.floats(0.05, 2.5)))
    rise_m = draw(st.floats(0.2, 0.75)) * span_m
    peak_m = leg_m + rise_m
    shape = draw(st.sampled_from(["round", "gothic", "no kink", "rafters"]))
    if shape == "round":
        return RoundBow(span_m=span_m, leg_height_m=leg_m, peak_height_m=peak_m)
    if shape == "no kink":
        peak_m = leg_m + max(rise_m, span_m / 2)
        return GothicBow(span_m=span_m, leg_height_m=leg_m, peak_height_m=peak_m)
    if shape == "gothic":
        # A ridge that does not dip needs R >= c2 / 2f: the arc is level at the ridge then.
        level_m = ((span_m / 2) ** 2 + rise_m**2) / (2 * rise_m)
        return GothicBow(
            span_m=span_m,
            leg_height_m=leg_m,
            peak_height_m=peak_m,
            arc_radius_m=level_m * draw(st.floats(1.001, 3.0)),
        )
    return draw(_rafters(span_m, leg_m, peak_m))


@st.composite
def _rafters(draw: st.DrawFn, span_m: float, leg_m: float, peak_m: float) -> StraightRafters:
    """Draw bends that take less than the leg, and together less than the rafter."""
    pitch_rad = math.atan2(peak_m - leg_m, span_m / 2)
    rafter_m = math.hypot(span_m / 2, peak_m - leg_m)
    corner_m = draw(st.floats(0.0, 0.9)) * min(leg_m, rafter_m / 2)
    ridge_m = draw(st.floats(0.0, 0.9)) * rafter_m / 2
    return StraightRafters(
        span_m=span_m,
        leg_height_m=leg_m,
        peak_height_m=peak_m,
        corner_radius_m=min(5.0, corner_m / math.tan((math.pi / 2 - pitch_rad) / 2)),
        ridge_radius_m=min(5.0, ridge_m / math.tan(pitch_rad)),
    )


def scaled(profile: Profile, factor: float) -> Profile:
    """Return the bow with every length times the factor."""
    sizes = {
        name: value * factor
        for name, value in msgspec.structs.asdict(profile).items()
        if isinstance(value, float)
    }
    return profile.but(**sizes)
