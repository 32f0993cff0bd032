"""What air reaches and what hangs on one hose, against a general library of graphs."""

import networkx as nx
import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.pressure.graph import (
    CriticalHose,
    critical_hoses,
    groups_without_feed,
)

CELLS = ("roof", "left", "right", "end", "shed")
LINKS = (("roof", "left"), ("roof", "right"), ("roof", "right"), ("left", "end"))


@st.composite
def nets(draw: st.DrawFn) -> tuple[list[str], list[tuple[str, str]], list[str]]:
    cells = [f"c{at}" for at in range(draw(st.integers(2, 9)))]
    places = st.integers(0, len(cells) - 1)
    pairs = draw(st.lists(st.tuples(places, places).filter(lambda p: p[0] != p[1]), max_size=14))
    fed = draw(st.lists(places, min_size=1, max_size=3))
    return cells, [(cells[a], cells[b]) for a, b in pairs], [cells[at] for at in fed]


def _graph(cells: list[str], links: list[tuple[str, str]], fed: list[str]) -> nx.MultiGraph:
    """Return the net with the blower as one more place, so close that no feed can fail."""
    graph = nx.MultiGraph()
    graph.add_nodes_from(cells)
    for at, (one, other) in enumerate(links):
        graph.add_edge(one, other, key=at)
    for cell in set(fed):
        graph.add_edge("blower", cell, key="feed")
    return graph


@given(net=nets())
def test_groups_without_feed_are_the_components_without_the_blower(
    net: tuple[list[str], list[tuple[str, str]], list[str]],
) -> None:
    components = nx.connected_components(_graph(*net))
    alone = {frozenset(group) for group in components if "blower" not in group}
    assert {frozenset(group) for group in groups_without_feed(*net)} == alone


@given(net=nets())
def test_critical_hoses_are_the_bridges_and_cut_off_what_they_say(
    net: tuple[list[str], list[tuple[str, str]], list[str]],
) -> None:
    cells, links, fed = net
    graph = _graph(*net)
    reached = nx.node_connected_component(graph, "blower")
    bridges = {frozenset(pair) for pair in nx.bridges(nx.Graph(graph))}
    pairs = [frozenset(link) for link in links]
    expected = {
        at
        for at, pair in enumerate(pairs)
        if pair in bridges and pair <= reached and pairs.count(pair) == 1
    }
    found = critical_hoses(cells, links, fed)
    assert {hose.link for hose in found} == expected
    for hose in found:
        left = graph.copy()
        left.remove_edge(*links[hose.link], key=hose.link)
        assert set(hose.cells) == reached - nx.node_connected_component(left, "blower")


def test_two_hoses_side_by_side_stand_in_for_each_other() -> None:
    assert critical_hoses(CELLS, LINKS, ["roof"]) == (
        CriticalHose(link=0, cells=("left", "end")),
        CriticalHose(link=3, cells=("end",)),
    )


def test_second_feed_frees_the_hoses_on_the_way() -> None:
    assert critical_hoses(CELLS, LINKS, ["roof", "end"]) == ()


def test_cell_without_a_hose_has_no_air() -> None:
    assert groups_without_feed(CELLS, LINKS, ["roof"]) == (("shed",),)


@pytest.mark.parametrize(
    ("cells", "links", "fed", "words"),
    [
        (("a", "a"), (), ["a"], "cells: .*twice"),
        (("a", "b"), (("a", "c"),), ["a"], "links: hose 1 .*no cell"),
        (("a", "b"), (("a", "a"),), ["a"], "links: hose 1 .*both ends"),
        (("a", "b"), (("a", "b"),), ["c"], "fed: 'c' is no cell"),
    ],
)
def test_graph_refuses_what_cannot_be(
    cells: tuple[str, ...], links: tuple[tuple[str, str], ...], fed: list[str], words: str
) -> None:
    for ask in (groups_without_feed, critical_hoses):
        with pytest.raises(ValueError, match=words):
            ask(cells, links, fed)
