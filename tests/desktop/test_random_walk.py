"""A random walk over the farm: every step can be undone, redone, saved and read again."""

from typing import Any

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from hoopwright.desktop.session import Session
from hoopwright.farm import Farm, change
from hoopwright.files.document import from_json, to_json
from hoopwright.plan import plan
from samples import double_tunnel, small_farm

PLACES = st.floats(0.0, 30.0)
SIDES = st.integers(0, 1)
STEPS = st.one_of(
    st.tuples(st.just("add_split"), SIDES, PLACES),
    st.tuples(st.just("move_split"), SIDES, PLACES),
    st.tuples(st.just("remove_split"), SIDES, PLACES),
    st.tuples(st.just("add_seam"), SIDES, PLACES),
    st.tuples(st.just("move_hip"), SIDES, st.floats(-1.0, 9.0)),
    st.tuples(st.just("length"), SIDES, st.floats(0.0, 60.0)),
    st.tuples(st.just("copy"), SIDES, PLACES),
    st.tuples(st.just("covering"), SIDES, PLACES),
)


def stepped(farm: Farm, step: tuple[str, int, float]) -> Farm:
    """Return the farm after a step; one that cannot be made leaves it as it is."""
    kind, side, place = step
    tunnel = farm.tunnels[0]
    splits = tunnel.sides[side].splits
    made: Any = tunnel
    try:
        if kind == "add_split":
            made = change.add_split(tunnel, side, place)
        elif kind == "move_split" and splits:
            made = change.move_split(tunnel, side, 0, place)
        elif kind == "remove_split" and splits:
            made = change.remove_split(tunnel, side, len(splits) - 1)
        elif kind == "add_seam":
            made = change.add_seam(tunnel, place)
        elif kind == "move_hip":
            made = change.move_hip(tunnel, (side,), place)
        elif kind == "length":
            made = change.with_tunnel_value(tunnel, ("frame", "length_m"), place)
        elif kind == "covering":
            way = "one_sheet" if side else "roof_and_sides"
            made = change.with_tunnel_value(tunnel, ("skin", "covering"), way)
        elif kind == "copy":
            return change.add_tunnel(farm, tunnel)
    except ValueError:
        return farm
    return change.with_tunnel(farm, 0, made)


@settings(max_examples=25, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(walk=st.lists(STEPS, min_size=1, max_size=8))
def test_undo_gives_every_farm_back(qapp: object, walk: list[tuple[str, int, float]]) -> None:
    session = Session(small_farm(double_tunnel()))
    farms = [session.farm]
    for step in walk:
        session.apply(stepped(session.farm, step), step[0])
        if session.farm != farms[-1]:
            farms.append(session.farm)
        assert from_json(to_json(session.farm), "walk.json") == session.farm
        assert session.plan == plan(session.farm)
        assert len(session.plan.tunnels) == len(session.farm.tunnels)
    for farm in reversed(farms[:-1]):
        session.stack.undo()
        assert session.farm == farm
    for farm in farms[1:]:
        session.stack.redo()
        assert session.farm == farm
    assert session.stack.count() == len(farms) - 1
    session.deleteLater()
