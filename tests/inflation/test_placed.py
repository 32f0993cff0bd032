"""Jumpers placed by hand join the cells that lie there, and those that find none are told."""

import networkx as nx
import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.farm import PlacedJumper
from hoopwright.farm.air import JumperSurface
from hoopwright.inflation import Cell, Jumper
from hoopwright.inflation.feeding import find_unfed
from hoopwright.inflation.jumpers import Joined
from hoopwright.inflation.placed import hang_jumpers


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


# Seams at 10 and 24 m; the curtains of the first side lap from 13.7 to 14.3 m.
TUNNEL = Joined(
    roof=(_cell("roof0", 0, 10, fed=True), _cell("roof1", 10, 24), _cell("roof2", 24, 30)),
    curtains=(
        (0, _cell("first0", 1.2, 14.3)),
        (0, _cell("first1", 13.7, 28.8)),
        (1, _cell("second0", 1.2, 28.8)),
    ),
    ends=((0, _cell("front", 0, 0)), (1, _cell("back", 30, 30))),
)


def _hung(surface: JumperSurface, at_m: float, joined: Joined = TUNNEL) -> Jumper | None:
    jumpers, idle = hang_jumpers(joined, (PlacedJumper(surface=surface, at_m=at_m),))
    assert len(jumpers) + len(idle) == 1
    return jumpers[0] if jumpers else None


@pytest.mark.parametrize(
    ("surface", "at_m", "pair", "side", "hung_m"),
    [
        ("first_side", 5.0, ("roof0", "first0"), 0, 5.0),
        ("first_side", 12.0, ("roof1", "first0"), 0, 12.0),
        ("first_side", 26.0, ("roof2", "first1"), 0, 26.0),
        ("second_side", 26.0, ("roof2", "second0"), 1, 26.0),
        # In the lap: the curtain that reaches farther beyond the place.
        ("first_side", 13.9, ("roof1", "first0"), 0, 13.9),
        ("first_side", 14.1, ("roof1", "first1"), 0, 14.1),
        ("roof", 2.0, ("roof0", "roof1"), None, 10.0),
        ("roof", 18.0, ("roof1", "roof2"), None, 24.0),
        ("front_end", 12.0, ("roof0", "front"), None, 0.0),
        ("back_end", 12.0, ("roof2", "back"), None, 30.0),
    ],
)
def test_hose_joins_the_cells_that_lie_there(
    surface: JumperSurface, at_m: float, pair: tuple[str, str], side: int | None, hung_m: float
) -> None:
    jumper = _hung(surface, at_m)
    assert jumper == Jumper(
        mark="jumper/0", from_cell=pair[0], to_cell=pair[1], side=side, at_m=hung_m, placed=True
    )


BARE = Joined(roof=(_cell("roof0", 0, 30, fed=True),))


@pytest.mark.parametrize(
    ("surface", "at_m", "joined"),
    [
        ("first_side", 0.5, TUNNEL),
        ("first_side", 29.0, TUNNEL),
        ("first_side", 500.0, TUNNEL),
        ("second_side", 12.0, BARE),
        ("roof", 12.0, BARE),
        ("front_end", 0.0, BARE),
        ("back_end", 30.0, Joined(roof=(), ends=TUNNEL.ends)),
        ("first_side", 12.0, Joined(roof=(), curtains=TUNNEL.curtains)),
    ],
)
def test_hose_that_finds_no_two_cells_is_left_out(
    surface: JumperSurface, at_m: float, joined: Joined
) -> None:
    assert _hung(surface, at_m, joined) is None


def test_hoses_keep_the_numbers_of_their_entries() -> None:
    placed = (
        PlacedJumper(surface="first_side", at_m=0.0),
        PlacedJumper(surface="second_side", at_m=4.0),
        PlacedJumper(surface="first_side", at_m=400.0),
        PlacedJumper(surface="back_end", at_m=0.0),
    )
    jumpers, idle = hang_jumpers(TUNNEL, placed)
    assert [j.mark for j in jumpers] == ["jumper/1", "jumper/3"]
    assert idle == (0, 2)


def test_two_hoses_over_one_seam_lie_on_both_slopes() -> None:
    placed = tuple(PlacedJumper(surface="roof", at_m=at_m) for at_m in (8.0, 30.0, 12.0))
    jumpers, _ = hang_jumpers(TUNNEL, placed)
    assert [(j.at_m, j.side) for j in jumpers] == [(10, 0), (24, None), (10, 1)]


@given(
    st.lists(
        st.builds(
            PlacedJumper,
            surface=st.sampled_from(("first_side", "second_side", "roof", "front_end", "back_end")),
            at_m=st.floats(0.0, 35.0),
        ),
        max_size=12,
    )
)
def test_cells_left_flat_are_those_beyond_the_fed_one(placed: list[PlacedJumper]) -> None:
    jumpers, idle = hang_jumpers(TUNNEL, tuple(placed))
    assert len(jumpers) + len(idle) == len(placed)
    graph: nx.Graph[str] = nx.Graph()
    graph.add_nodes_from(c.mark for c in TUNNEL.cells)
    graph.add_edges_from((j.from_cell, j.to_cell) for j in jumpers)
    flat = graph.nodes - nx.node_connected_component(graph, "roof0")
    assert set(find_unfed(TUNNEL.cells, jumpers)) == flat
