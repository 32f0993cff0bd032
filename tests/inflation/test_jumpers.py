"""Hoses reach every cell: the cells as a graph, walked by a library for graphs."""

from itertools import pairwise

import networkx as nx
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.inflation import Cell, Jumper
from hoopwright.inflation.jumpers import Joined, place_jumpers

LONG_M = 30.0


def _cell(mark: str, from_m: float, to_m: float, fed: bool = False) -> Cell:
    return Cell(
        mark=mark,
        name=mark,
        place=mark,
        from_m=from_m,
        to_m=to_m,
        volume_m3=1.0,
        area_m2=10.0,
        unit_leak_m3_s=4e-5,
        fed=fed,
    )


def _roof(*edges_m: float) -> tuple[Cell, ...]:
    return tuple(
        _cell(f"roof{n}", low_m, high_m, n == 0)
        for n, (low_m, high_m) in enumerate(pairwise(edges_m))
    )


def _joined(cells: tuple[Cell, ...], jumpers: tuple[Jumper, ...]) -> "nx.MultiGraph[str]":
    graph: nx.MultiGraph[str] = nx.MultiGraph()
    graph.add_nodes_from(cell.mark for cell in cells)
    graph.add_edges_from((j.from_cell, j.to_cell) for j in jumpers)
    return graph


@st.composite
def _tunnels(draw: st.DrawFn) -> Joined:
    length_m = draw(st.floats(10.0, 150.0))
    seams = draw(st.lists(st.floats(0.05, 0.95), max_size=4, unique=True))
    roof = _roof(0.0, *(length_m * s for s in sorted(seams)), length_m)
    curtains = []
    for side in (0, 1):
        cuts = sorted(draw(st.lists(st.floats(0.1, 0.9), max_size=3, unique=True)))
        edges = [0.02 * length_m, *(length_m * c for c in cuts), 0.98 * length_m]
        curtains += [
            (side, _cell(f"side{side}/{n}", low_m, high_m))
            for n, (low_m, high_m) in enumerate(pairwise(edges))
        ]
    walls = draw(st.sampled_from([(), (0,), (1,), (0, 1)]))
    ends = ((n, _cell(f"end{n}", n * length_m, n * length_m)) for n in walls)
    return Joined(roof=roof, curtains=tuple(curtains), ends=tuple(ends))


@given(_tunnels())
def test_every_cell_is_joined_to_the_fed_one(tunnel: Joined) -> None:
    graph = _joined(tunnel.cells, place_jumpers(tunnel, LONG_M))
    reached = nx.node_connected_component(nx.Graph(graph), tunnel.roof[0].mark)
    assert reached == {c.mark for c in tunnel.cells}
    assert not list(nx.selfloop_edges(graph))


@given(_tunnels())
def test_short_cells_are_joined_by_as_few_hoses_as_can_be(tunnel: Joined) -> None:
    graph = _joined(tunnel.cells, place_jumpers(tunnel, long_cell_m=1000.0))
    assert nx.is_tree(graph)


@given(_tunnels())
def test_only_long_cells_get_a_second_hose(tunnel: Joined) -> None:
    long = {c.mark for c in tunnel.cells if c.to_m - c.from_m > LONG_M} - {tunnel.roof[0].mark}
    jumpers = place_jumpers(tunnel, LONG_M)
    assert len(jumpers) == len(tunnel.cells) - 1 + len(long)
    assert {j.to_cell for j in jumpers} == {c.mark for c in tunnel.cells[1:]}


@given(_tunnels())
def test_one_kinked_hose_empties_no_long_curtain(tunnel: Joined) -> None:
    graph = _joined(tunnel.cells, place_jumpers(tunnel, LONG_M))
    long = {c.mark for c in tunnel.cells if c.to_m - c.from_m > LONG_M}
    for mark in {c.mark for c in tunnel.cells} - {tunnel.roof[0].mark}:
        assert graph.degree(mark) >= (2 if mark in long else 1)
    far = long & {c.mark for _, c in tunnel.curtains}
    assert not [bridge for bridge in nx.bridges(graph) if far & set(bridge[:2])]


@given(_tunnels())
def test_hoses_hang_where_both_their_cells_are(tunnel: Joined) -> None:
    cells = {c.mark: c for c in tunnel.cells}
    for jumper in place_jumpers(tunnel, LONG_M):
        assert not jumper.placed
        for mark in (jumper.from_cell, jumper.to_cell):
            assert cells[mark].from_m <= jumper.at_m <= cells[mark].to_m


def test_short_curtain_takes_its_air_near_its_middle() -> None:
    (jumper,) = place_jumpers(
        Joined(roof=_roof(0, 40), curtains=((1, _cell("side1/0", 5, 25)),)), LONG_M
    )
    assert jumper == Jumper(
        mark="jumper/0", from_cell="roof0", to_cell="side1/0", side=1, at_m=15.0, placed=False
    )


def test_long_curtain_takes_its_air_near_both_ends() -> None:
    first, second = place_jumpers(
        Joined(roof=_roof(0, 40), curtains=((0, _cell("side0/0", 2, 38)),)), LONG_M
    )
    assert (first.at_m, second.at_m) == (3.0, 37.0)


def test_curtain_under_a_seam_takes_its_air_from_the_roof_that_covers_most_of_it() -> None:
    seam, hose = place_jumpers(
        Joined(roof=_roof(0, 20, 40), curtains=((0, _cell("side0/0", 14, 30)),)), LONG_M
    )
    assert (seam.from_cell, seam.to_cell, seam.side, seam.at_m) == ("roof0", "roof1", None, 20)
    assert hose.from_cell == "roof1"
    assert hose.at_m == 22.0


def test_hose_keeps_off_the_seam() -> None:
    (_, hose) = place_jumpers(
        Joined(roof=_roof(0, 20, 40), curtains=((0, _cell("side0/0", 10, 30)),)), LONG_M
    )
    assert abs(hose.at_m - 20) >= 0.5


def test_long_roof_cell_takes_its_air_on_both_slopes() -> None:
    hoses = place_jumpers(Joined(roof=_roof(0, 20, 60)), LONG_M)
    assert [(h.side, h.at_m) for h in hoses] == [(0, 20), (1, 20)]
    assert len({h.mark for h in hoses}) == 2
    graph = _joined(_roof(0, 20, 60), hoses)
    assert not list(nx.bridges(graph))


def test_roof_of_one_cell_alone_needs_no_hose() -> None:
    assert place_jumpers(Joined(roof=_roof(0, 80)), LONG_M) == ()


def test_curtain_under_a_roof_without_air_gets_no_hose() -> None:
    assert place_jumpers(Joined(roof=(), curtains=((0, _cell("side0/0", 0, 80)),)), LONG_M) == ()
