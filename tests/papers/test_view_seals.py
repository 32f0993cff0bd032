"""One inflated sheet laid flat: passes, strokes and texts by edge, against sums done by hand."""

import pytest

import samples
from hoopwright.farm import Bench, Door, Tunnel
from hoopwright.papers.scene import Dimension, Label, Line, Polygon, View
from hoopwright.papers.subject import Subject
from hoopwright.papers.view_seals import draw_seals
from hoopwright.plan import TunnelPlan, plan
from hoopwright.quantity.units import Units

CURTAIN = "side/0/panel/0"


def _planned(tunnel: Tunnel, bench: Bench) -> TunnelPlan:
    (planned,) = plan(samples.small_farm(tunnel).but(bench=bench)).tunnels
    return planned


def _drawn(
    mark: str = CURTAIN,
    tunnel: Tunnel | None = None,
    bench: Bench | None = None,
    units: Units = "metric",
) -> tuple[View, TunnelPlan]:
    shown = tunnel or samples.double_tunnel()
    planned = _planned(shown, bench or Bench())
    return draw_seals(Subject(shown, planned, units), mark), planned


def _lines(view: View, style: str) -> list[Line]:
    return [s for s in view.shapes if isinstance(s, Line) and s.style == style]


def _levels(view: View, style: str) -> list[float]:
    return sorted({y1 for _x1, y1, _x2, y2 in (s.ends for s in _lines(view, style)) if y1 == y2})


def test_every_edge_has_its_passes_as_long_as_the_edge() -> None:
    view, planned = _drawn()
    drawn = {}
    for line in _lines(view, "seal"):
        x1, y1, x2, y2 = line.ends
        drawn.setdefault("level" if y1 == y2 else "upright", []).append(x2 - x1 + y2 - y1)
    seals = [s for s in planned.chosen.inflation.seals if s.mark == CURTAIN]
    for way, edges in (("level", ("top", "bottom")), ("upright", ("front", "back"))):
        wanted = [s.length_m for s in seals if s.edge in edges for _ in range(s.passes)]
        assert sorted(drawn[way]) == pytest.approx(sorted(wanted))


def test_seals_that_can_be_told_apart_are_drawn_as_far_apart_as_they_are() -> None:
    # The first curtain is cut to less than 12 m: a fifth of a metre is far more than 12 m / 150.
    view, planned = _drawn(bench=Bench(spacing_m=0.2))
    (span,) = [c for c in planned.chosen.cover.curtains if c.mark == CURTAIN]
    high_m = span.cut_height_m
    assert _levels(view, "seal") == pytest.approx([0.2, 0.4, high_m - 0.4, high_m - 0.2])
    assert "200.0 mm apart" in view.title
    assert "drawn wider" not in view.title


def test_seals_too_close_to_be_seen_are_drawn_wider_apart_and_it_is_said() -> None:
    view, _planned_too = _drawn(bench=Bench(spacing_m=0.02))
    low, second = _levels(view, "seal")[:2]
    assert second - low > 0.02
    assert "seals 20.0 mm apart, drawn wider apart" in view.title
    assert "Seals 20.0 mm apart, drawn wider apart." in view.described


def test_a_single_seal_has_no_spacing() -> None:
    single = samples.double_tunnel()
    single = single.but(air=single.air.but(seals_per_edge=1))
    view, _planned_too = _drawn(tunnel=single)
    assert len(_lines(view, "seal")) == 4
    assert "one seal along each edge" in view.title


def test_strokes_of_a_sealing_bar_are_ticks_and_counted_in_the_text() -> None:
    bench = Bench(sealer="bar", bar_m=1.0, bar_overlap_m=0.0)
    view, planned = _drawn(bench=bench)
    seals = {s.edge: s for s in planned.chosen.inflation.seals if s.mark == CURTAIN}
    assert len(_lines(view, "rope")) == sum(s.strokes for s in seals.values())
    # Strokes of 1 m without overlap: as many as the edge has metres, begun ones counted whole.
    metres = int(-(-seals["top"].length_m // 1))
    texts = [s.text for s in view.shapes if isinstance(s, Label)]
    assert f"top · {seals['top'].length_m:.3f} m · 2 seals of {metres} strokes" in texts


def test_a_sealer_that_runs_on_makes_no_ticks() -> None:
    view, _planned_too = _drawn()
    assert not _lines(view, "rope")
    assert "strokes" not in view.described


def test_tail_and_wrap_lie_where_the_sheet_is_gripped() -> None:
    view, planned = _drawn()
    (span,) = [c for c in planned.chosen.cover.curtains if c.mark == CURTAIN]
    bands = [s.points for s in view.shapes if isinstance(s, Polygon) and s.style == "tail"]
    # 0.3048 m of wrap at the bar and 0.1524 m of tail at the hip, as entered.
    heights = sorted((points[0][1], points[2][1]) for points in bands)
    high_m = span.cut_height_m
    assert heights == [(0.0, 0.3048), (pytest.approx(high_m - 0.1524), high_m)]
    sizes = [s.text for s in view.shapes if isinstance(s, Dimension)]
    assert {"0.305 m", "0.152 m", f"{span.length_m:.3f} m", f"{high_m:.3f} m"} == set(sizes)


def test_in_one_sheet_the_top_is_the_clamp_of_the_hip_board_and_not_sealed() -> None:
    double = samples.double_tunnel()
    view, _planned_too = _drawn(tunnel=double.but(skin=double.skin.but(covering="one_sheet")))
    texts = [s.text for s in view.shapes if isinstance(s, Label)]
    assert "hip board; the sheet goes on over the roof" in texts
    assert not [text for text in texts if text.startswith("top")]
    assert len([s for s in view.shapes if isinstance(s, Polygon) and s.style == "tail"]) == 1


def test_foot_of_an_end_wall_is_sealed_between_its_doors() -> None:
    tunnel = samples.with_double_ends(samples.double_tunnel())
    front, back = tunnel.ends
    tunnel = tunnel.but(ends=(front.but(doors=(Door(width_m=2.0, height_m=2.2),)), back))
    bench = Bench(sealer="bar", bar_m=0.5, bar_overlap_m=0.0)
    view, planned = _drawn("end/0", tunnel, bench)
    (seal,) = [s for s in planned.chosen.inflation.seals if s.mark == "end/0"]
    lines = _lines(view, "seal")
    assert len(lines) == 2 * seal.passes
    assert sum(x2 - x1 for x1, _y1, x2, _y2 in (s.ends for s in lines)) == pytest.approx(
        seal.total_m
    )
    assert not [s for s in lines if s.ends[0] < -1e-6 < 1e-6 < s.ends[2]]
    assert len(_lines(view, "rope")) == seal.strokes


def test_a_sheet_without_seals_is_refused_with_its_name() -> None:
    with pytest.raises(ValueError, match="'side/0/pocket/front' is sealed"):
        _drawn("side/0/pocket/front")
