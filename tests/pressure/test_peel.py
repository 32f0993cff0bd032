"""What a seal line bears, by the equilibrium of what hangs on it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.pressure.membrane import billow_radius
from hoopwright.pressure.peel import seal_pull


# Worked by hand: chord 1.5 m, both rises 0.1 m, 60 Pa: R = (0.5625 + 0.01) / 0.2 = 2.8625 m, arm
# 171.75 N/m; sin a = 0.75 / 2.8625 = 0.26201, cos a = 0.96507, tail 2 x 165.75 = 331.5 N/m, at most
# 343.5 N/m; each layer lifts with 60 x 0.75 = 45 N/m.
def test_seal_of_equal_bows_agrees_with_the_hand_sum() -> None:
    pull = seal_pull(1.5, 60.0, 0.1, 0.1)
    assert pull.arm_n_m == pytest.approx(171.75)
    assert pull.tail_n_m == pytest.approx(331.5, abs=0.05)
    assert pull.tail_limit_n_m == pytest.approx(2 * pull.arm_n_m)
    assert pull.opening_n_m == pytest.approx(45.0)


@given(
    chord_m=st.floats(0.3, 3.0),
    shares=st.tuples(st.floats(0.02, 0.5), st.floats(0.02, 0.5)),
    pressure_pa=st.floats(1.0, 300.0),
)
def test_tail_balances_half_of_the_cell_cut_open(
    chord_m: float, shares: tuple[float, float], pressure_pa: float
) -> None:
    # Cut through the middle of the bows: there both layers run along the plane with p R each, and
    # the air pushes apart on the height of the cut; what is left is the tail.
    rises = [share * chord_m for share in shares]
    pull = seal_pull(chord_m, pressure_pa, *rises)
    across = sum(pressure_pa * billow_radius(chord_m, rise) for rise in rises)
    expected = across - pressure_pa * sum(rises)
    assert pull.tail_n_m == pytest.approx(expected, rel=1e-6, abs=1e-6 * across)
    assert pull.tail_n_m <= pull.tail_limit_n_m


def test_half_circles_pull_straight_away_from_the_plane() -> None:
    pull = seal_pull(2.0, 50.0, 1.0, 1.0)
    assert pull.tail_n_m == pytest.approx(0.0, abs=1e-6)
    assert pull.opening_n_m == pull.arm_n_m == 50.0


def test_tighter_layer_decides_the_arm() -> None:
    pull = seal_pull(1.5, 60.0, 0.1, 0.05)
    assert pull.arm_n_m == pytest.approx(60 * billow_radius(1.5, 0.05))


def test_seal_refuses_what_cannot_be() -> None:
    with pytest.raises(ValueError, match="flat film carries no pressure"):
        seal_pull(1.5, 60.0, 0.0, 0.1)
