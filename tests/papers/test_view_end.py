"""End walls drawn from outside: the same rectangles as laid, grips where they are taken."""

import pytest
from shapely import Polygon as Area

from hoopwright.farm import Cut, Door, MeasuredBow, RigidSheet, RoundBow, Tunnel
from hoopwright.farm.measured_bow import AcrossUp
from hoopwright.papers.scene import Dimension, Handle, Label, Line, Polygon, Shape, View, bounds
from hoopwright.papers.subject import Subject
from hoopwright.papers.view_end import draw_end
from hoopwright.papers.views import Beside, draw_tunnel
from hoopwright.plan import plan
from samples import small_farm, tunnel, with_double_ends

HALF_CIRCLE = RoundBow(span_m=8.0, leg_height_m=0.0, peak_height_m=4.0)
LOPSIDED = MeasuredBow(
    span_m=8.0,
    join="corners",
    points=(
        AcrossUp(across_m=-0.3, up_m=1.5),
        AcrossUp(across_m=3.0, up_m=3.6),
        AcrossUp(across_m=7.0, up_m=1.8),
    ),
)
DOOR = Door(width_m=2.4, height_m=2.1, left_m=-2.0)
VENT = Cut(left_m=-0.3, sill_m=2.6, width_m=0.6, height_m=0.5)


def walled(**changes: object) -> Tunnel:
    """Return a tunnel of half circles of 4 m, its back end changed."""
    plain = tunnel(HALF_CIRCLE)
    return plain.but(ends=(plain.ends[0], plain.ends[1].but(**changes)))


def drawn(made: Tunnel, number: int = 1) -> View:
    planned = plan(small_farm(made)).tunnels[0]
    return draw_end(Subject(made, planned, "metric"), number)


def of(view: View, kind: type[Shape], mark: str) -> list[Shape]:
    return [s for s in view.shapes if isinstance(s, kind) and s.mark == mark]


def test_openings_stand_where_they_are_entered_seen_from_outside() -> None:
    view = drawn(walled(doors=(DOOR,), cuts=(VENT, VENT.but(kind="fan", left_m=1.0, sill_m=1.0))))
    (door,) = of(view, Polygon, "end/1/door/0")
    assert bounds((door,)) == pytest.approx((-2.0, 0.0, 0.4, 2.1))
    (fan,) = of(view, Polygon, "end/1/cut/1")
    assert bounds((fan,)) == pytest.approx((1.0, 1.0, 1.6, 1.5))
    texts = [s.text for s in view.shapes if isinstance(s, Label)]
    assert texts == ["Door 1 · 2.400 m × 2.100 m", "Vent 1 · 0.600 m × 0.500 m", texts[2]]
    assert texts[2].startswith("Fan 2 ·")
    assert "vent 1 0.600 m wide" in view.described
    assert "East side at the left" in view.title


def test_grips_move_doors_along_openings_both_ways_and_rails_up() -> None:
    view = drawn(walled(doors=(DOOR,), cuts=(VENT,), rails_m=(2.0,), seams_m=(2.0,)))
    handles = {s.mark: s for s in view.shapes if isinstance(s, Handle)}
    assert {mark: handle.way for mark, handle in handles.items()} == {
        "end/1/rail/0": "up",
        "end/1/seam/0": "up",
        "end/1/door/0": "along",
        "end/1/cut/0": "both",
    }
    # The vent from -0.3 and 2.6 m, 0.6 by 0.5 m.
    assert handles["end/1/cut/0"].grip == pytest.approx((0.0, 2.85))
    rail, seam = handles["end/1/rail/0"].grip, handles["end/1/seam/0"].grip
    assert rail[1] == seam[1] == 2.0
    assert seam[0] - rail[0] > 5.0
    sizes = [s.text for s in view.shapes if isinstance(s, Dimension)]
    assert sizes == ["8.048 m", "4.024 m", "2.000 m"]


@pytest.mark.parametrize("number", [0, 1])
def test_the_wall_has_the_true_outline_of_an_unsymmetrical_bow(number: int) -> None:
    plain = tunnel(LOPSIDED)
    view = drawn(plain, number)
    (wall,) = of(view, Polygon, f"end/{number}")
    assert isinstance(wall, Polygon)
    # The ridge, 3 m from the first foot of 8, stands left of the middle seen from the front.
    ridge = max(wall.points, key=lambda p: p[1])
    assert (ridge[0] < 0) == (number == 0)
    survey = plan(small_farm(plain)).tunnels[0].survey
    assert Area(wall.points).area == pytest.approx(survey.curve.area_m2, rel=1e-3)
    bow = next(s for s in view.shapes if getattr(s, "style", "") == "bow")
    assert Area(wall.points).buffer(1e-6).contains(Area(bow.points))  # type: ignore[union-attr]


def test_rigid_sheets_are_drawn_as_columns_and_laps() -> None:
    sheet = RigidSheet(part="crank", cover_width_m=2.0, sheet_height_m=3.0, lap_m=0.1)
    view = drawn(walled(film=None, rigid=sheet))
    lines = [s.ends for s in view.shapes if isinstance(s, Line) and s.style == "rigid"]
    # 8.048 m in five columns about the middle: edges at -3, -1, 1 and 3 m; a lap at 2.9 m.
    upright = [ends for ends in lines if ends[0] == ends[2]]
    assert [ends[0] for ends in upright] == pytest.approx([-3.0, -1.0, 1.0, 3.0])
    assert upright[0][3] == pytest.approx((4.024**2 - 9.0) ** 0.5, abs=1e-3)
    assert [ends[1] for ends in lines if ends[1] == ends[3]] == pytest.approx([2.9])
    assert not [s for s in drawn(walled(film=None)).shapes if isinstance(s, Polygon)]


def test_an_inflated_end_shows_its_cell() -> None:
    view = drawn(with_double_ends(walled()))
    assert of(view, type(view.shapes[2]), "cell/end/1")


@pytest.mark.parametrize("beside", ["section", "front_end", "back_end"])
def test_one_end_stands_beside_the_long_views(beside: Beside) -> None:
    made = walled()
    planned = plan(small_farm(made)).tunnels[0]
    assert draw_tunnel(made, planned, "metric", beside=beside).section.name == beside
