"""Air on the drawing: cells, blower, hoses with the way of their air, pressures when asked."""

import dataclasses
import math

import pytest

import samples
from hoopwright.farm import PlacedJumper, Tunnel
from hoopwright.farm.change import add_seam
from hoopwright.papers.scene import (
    Handle,
    Label,
    Line,
    Polygon,
    Polyline,
    Shape,
    Symbol,
    View,
    points_of,
)
from hoopwright.papers.views import Views, draw_tunnel
from hoopwright.plan import TunnelPlan, plan


def _planned(tunnel: Tunnel) -> TunnelPlan:
    return plan(samples.small_farm(tunnel)).tunnels[0]


def _drawn(tunnel: Tunnel, *, pressures: bool = False) -> tuple[Views, TunnelPlan]:
    planned = _planned(tunnel)
    return draw_tunnel(tunnel, planned, "metric", pressures=pressures), planned


def _jumpers(view: View, kind: type[Shape]) -> dict[str, Shape]:
    return {s.mark: s for s in view.shapes if isinstance(s, kind) and s.style == "jumper"}


def _texts(view: View) -> dict[str, str]:
    return {s.mark: s.text for s in view.shapes if isinstance(s, Label) and s.style == "cell"}


def test_a_jumper_is_drawn_at_the_hip_over_its_curtain_and_moves_along() -> None:
    views, planned = _drawn(samples.double_tunnel())
    for side, view in ((0, views.first_side), (1, views.second_side)):
        here = {j.mark: j.at_m for j in planned.chosen.inflation.jumpers if j.side == side}
        assert here
        handles = _jumpers(view, Handle)
        assert {mark: h.grip for mark, h in handles.items() if isinstance(h, Handle)} == {
            mark: (at_m, 1.5) for mark, at_m in here.items()
        }
        assert {h.way for h in handles.values() if isinstance(h, Handle)} == {"along"}
        assert set(_jumpers(view, Symbol)) == set(here)


def _tip(shape: Shape) -> tuple[float, float]:
    """Return how far an arrow goes, m: its second point from its first."""
    (x1, y1), (x2, y2) = points_of(shape)[:2]
    return x2 - x1, y2 - y1


def test_arrows_point_the_way_the_air_goes() -> None:
    double = samples.double_tunnel()
    views, planned = _drawn(add_seam(double, 12.0))
    flows = {hose.mark: hose.flow_m3_s for hose in planned.held.hoses}
    assert all(flows.values())
    for mark, arrow in _jumpers(views.first_side, Polyline).items():
        right_m, up_m = _tip(arrow)
        assert right_m == pytest.approx(0.0)
        assert math.copysign(1, -up_m) == math.copysign(1, flows[mark])
    over = [j.mark for j in planned.chosen.inflation.jumpers if "roof" in j.to_cell]
    assert over
    for mark in over:
        right_m, up_m = _tip(_jumpers(views.plan, Polyline)[mark])
        assert math.copysign(1, right_m) == math.copysign(1, flows[mark])
        assert up_m == pytest.approx(0.0)


def test_no_air_has_no_arrow() -> None:
    double = samples.double_tunnel()
    views, planned = _drawn(double.but(air=double.air.but(blower=None)))
    assert planned.chosen.inflation.jumpers
    assert not _jumpers(views.first_side, Polyline)
    assert not [s for s in views.plan.shapes if s.mark == "air/blower"]


def test_a_hose_that_alone_feeds_a_cell_has_a_ring() -> None:
    double = samples.double_tunnel()
    lonely = (
        PlacedJumper(surface="first_side", at_m=5.0),
        PlacedJumper(surface="first_side", at_m=14.0),
        PlacedJumper(surface="first_side", at_m=18.0),
    )
    views, _planned_too = _drawn(double.but(air=double.air.but(jumpers=lonely)))
    # The first curtain ends at 12 m and has one hose, the second has two.
    assert set(_jumpers(views.first_side, Polygon)) == {"jumper/0"}
    assert set(_jumpers(views.plan, Polygon)) == {"jumper/0"}


def test_blower_stands_where_its_cell_begins_and_its_hose_leads_in() -> None:
    views, planned = _drawn(samples.double_tunnel())
    fed = next(cell for cell in planned.chosen.inflation.cells if cell.fed)
    (hose,) = [s for s in views.plan.shapes if s.mark == "air/blower" and isinstance(s, Polyline)]
    (blower,) = [s for s in views.plan.shapes if isinstance(s, Symbol) and s.kind == "blower"]
    assert blower.at == hose.points[0]
    assert fed.from_m == blower.at[0] < hose.points[1][0] < fed.to_m


def test_cells_of_end_walls_stand_in_plan_and_section() -> None:
    views, planned = _drawn(samples.with_double_ends(samples.double_tunnel()))
    assert planned.chosen.inflation.cells
    ends = [s for s in views.plan.shapes if isinstance(s, Line) and s.style == "cell"]
    # The tunnel is 24 m long; a line stands a hand's width inside each wall.
    assert [(s.mark, s.ends[0]) for s in ends] == [
        ("cell/end/0", pytest.approx(0.2)),
        ("cell/end/1", pytest.approx(23.8)),
    ]
    (front,) = [s for s in views.section.shapes if s.style == "cell"]
    assert front.mark == "cell/end/0"
    plain = _drawn(samples.double_tunnel())[0]
    assert not [s for s in plain.section.shapes if s.style == "cell"]


def test_a_hose_at_an_end_cannot_be_moved() -> None:
    views, planned = _drawn(samples.with_double_ends(samples.double_tunnel()))
    ends = {j.mark for j in planned.chosen.inflation.jumpers if "/end/" in j.to_cell}
    assert ends
    assert ends <= set(_jumpers(views.plan, Symbol))
    assert not ends & set(_jumpers(views.plan, Handle))


def test_pressures_are_written_on_every_cell_when_asked_for() -> None:
    tunnel = samples.with_double_ends(samples.double_tunnel())
    plain = _drawn(tunnel)[0]
    assert not _texts(plain.plan)
    views, planned = _drawn(tunnel, pressures=True)
    found = {
        **_texts(views.plan),
        **_texts(views.first_side),
        **_texts(views.second_side),
    }
    for cell in planned.held.cells:
        mark = cell.mark if cell.mark in found else cell.mark.removeprefix("cell/")
        assert f"{cell.pressure_pa:.1f} Pa" in found[mark]
        assert (cell.state in found[mark]) == (cell.state != "in range")
    assert _texts(views.section)["cell/end/0"] == found["cell/end/0"]


def test_pressures_are_written_in_the_readers_units() -> None:
    tunnel = samples.double_tunnel()
    planned = _planned(tunnel)
    cells = tuple(dataclasses.replace(c, pressure_pa=49.8178) for c in planned.held.cells)
    held = dataclasses.replace(planned.held, cells=cells)
    planned = dataclasses.replace(planned, held=held)
    views = draw_tunnel(tunnel, planned, "imperial", pressures=True)
    # 249.089 Pa are one inch of water column at 4 degrees Celsius (NIST Special Publication 811).
    assert all(text.startswith("0.200 in w.c.") for text in _texts(views.plan).values())
