"""The equations of a net against a general solver of dense ones."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.pressure.elimination import elimination_order, solve_net


@given(
    size=st.integers(1, 9),
    pairs=st.lists(st.tuples(st.integers(0, 8), st.integers(0, 8), st.floats(0.1, 50.0))),
    own=st.lists(st.floats(0.01, 10.0), min_size=9, max_size=9),
    right=st.lists(st.floats(-5.0, 5.0), min_size=9, max_size=9),
)
def test_solution_is_that_of_a_dense_solver(
    size: int, pairs: list[tuple[int, int, float]], own: list[float], right: list[float]
) -> None:
    matrix = np.diag(own[:size])
    beside: list[dict[int, float]] = [{} for _ in range(size)]
    for one, other, ease in pairs:
        if one < size and other < size and one != other:
            matrix[[one, other], [one, other]] += ease
            matrix[[one, other], [other, one]] -= ease
            beside[one][other] = beside[other][one] = beside[one].get(other, 0.0) - ease
    order = elimination_order(size, [(a, b) for a, row in enumerate(beside) for b in row])
    found = solve_net([float(d) for d in np.diag(matrix)], beside, right[:size], order)
    assert found == pytest.approx(np.linalg.solve(matrix, right[:size]), rel=1e-6, abs=1e-9)


def test_chain_is_taken_out_from_its_ends() -> None:
    order = elimination_order(5, [(0, 1), (1, 2), (2, 3), (3, 4)])
    assert sorted(order) == [0, 1, 2, 3, 4]
    assert order[0] in (0, 4)


def test_star_keeps_its_middle_to_the_last() -> None:
    order = elimination_order(6, [(2, at) for at in (0, 1, 3, 4, 5)])
    assert 2 in order[-2:]
