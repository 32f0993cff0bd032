"""What the seals are asked for, against the pull of a single strip worked out another way."""

import math

import pytest
from scipy.optimize import brentq

from hoopwright.farm import Bench
from hoopwright.pressure.seal_needs import seal_need
from inflated import Filled, filled, with_ends
from samples import double_tunnel


def _need(made: Filled, **pressures: float) -> float:
    return seal_need(
        made.inflation,
        {kind.replace("_", "/"): pressure for kind, pressure in pressures.items()},
        made.tunnel.skin,
        made.tunnel.sides,
        made.catalogue.films,
        made.survey,
        made.cover,
    )


def _strip_pull(chord_m: float, pressure_pa: float, slack: float, thickness_m: float) -> float:
    """Return the pull of a strip by a root finder over it, with the stiffness of 200 MPa."""

    def spare(pull: float) -> float:
        radius = pull / pressure_pa
        cut = chord_m * (1 + slack) * (1 + pull / (2e8 * thickness_m))
        return 2 * radius * math.asin(chord_m / (2 * radius)) - cut

    return float(brentq(spare, pressure_pa * chord_m / 2 * (1 + 1e-9), 1e5))


# The inner layer has the slack alone and is the tighter one; its film is 0.15 mm thick.
def test_the_tighter_layer_of_a_curtain_asks_most() -> None:
    made = filled()
    span = made.cover.curtains[0]
    chord_m = span.hang_m - 0.05
    expected = _strip_pull(chord_m, 60.0, 0.05 / chord_m, 0.00015)
    assert _need(made, side_0=60.0) == pytest.approx(expected, rel=1e-6)
    assert _need(made, side_0=60.0, side_1=30.0) == _need(made, side_0=60.0)


def test_an_end_wall_asks_for_the_pull_of_its_flat_outer_layer() -> None:
    made = filled(with_ends(double_tunnel()))
    chord_m = min(made.survey.width_m, made.survey.height_m)
    expected = _strip_pull(chord_m, 60.0, 0.0, 0.0002)
    assert _need(made, end_0=60.0) == pytest.approx(expected, rel=1e-6)


def test_roofs_and_flat_cells_ask_for_no_seal() -> None:
    assert _need(filled(), roof=60.0) == 0.0
    assert _need(filled(), side_0=0.0) == 0.0
    assert _need(filled(inflated_sides=(False, False)), side_0=60.0) == 0.0


def test_need_over_the_coupon() -> None:
    held = filled().held(bench=Bench(coupon_n_m=400.0))
    assert held.seal_share == pytest.approx(held.seal_need_n_m / 400.0)
    assert held.seal_need_n_m > 0
    assert filled().held().seal_share is None
