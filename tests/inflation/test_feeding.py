"""Cells that air never reaches, against a library for graphs."""

import networkx as nx
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.inflation import Cell, Jumper
from hoopwright.inflation.feeding import find_unfed


def _cell(mark: int, fed: bool) -> Cell:
    return Cell(
        mark=str(mark),
        name="",
        place="roof",
        from_m=0.0,
        to_m=1.0,
        volume_m3=1.0,
        area_m2=1.0,
        unit_leak_m3_s=1e-5,
        fed=fed,
    )


def _jumper(giver: int, taker: int) -> Jumper:
    return Jumper(
        mark="jumper/0",
        from_cell=str(giver),
        to_cell=str(taker),
        side=None,
        at_m=0.0,
        placed=True,
    )


@given(
    st.lists(st.booleans(), min_size=1, max_size=9),
    st.lists(st.tuples(st.integers(0, 8), st.integers(0, 8)), max_size=12),
)
def test_flat_cells_are_the_components_without_a_fed_one(
    fed: list[bool], pairs: list[tuple[int, int]]
) -> None:
    pairs = [(a, b) for a, b in pairs if max(a, b) < len(fed)]
    graph: nx.Graph[int] = nx.Graph(pairs)
    graph.add_nodes_from(range(len(fed)))
    flat = [c for c in nx.connected_components(graph) if not any(fed[n] for n in c)]
    cells = [_cell(n, one) for n, one in enumerate(fed)]
    found = find_unfed(cells, [_jumper(a, b) for a, b in pairs])
    assert found == tuple(str(n) for n in sorted(set().union(*flat)))


def test_air_passes_a_hose_either_way() -> None:
    cells = [_cell(0, False), _cell(1, True), _cell(2, False)]
    assert find_unfed(cells, [_jumper(0, 1)]) == ("2",)
