"""What the layers of the drawing paint, looked at as pixels."""

import pytest
from pyqtgraph import GraphicsScene
from PySide6.QtCore import QPoint, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QImage, QPainter, QWheelEvent
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

import samples
from hoopwright.desktop.canvas.hand import Hand, wheel_factor
from hoopwright.desktop.canvas.key import Key
from hoopwright.desktop.canvas.layers import LitLayer, StyleLayer
from hoopwright.desktop.canvas.notes import Entry, Tag
from hoopwright.desktop.canvas.stage import Stage
from hoopwright.desktop.canvas.strip import Strip
from hoopwright.desktop.canvas.symbols import (
    DISC_PX,
    Brushes,
    Lettering,
    draw_grip,
    draw_level_dimension,
    draw_symbol,
    draw_text,
    draw_upright_dimension,
    stamp_grip,
    stamp_symbol,
)
from hoopwright.desktop.canvas.words import Words
from hoopwright.desktop.palette import colour
from hoopwright.desktop.session import Session
from hoopwright.farm import Tunnel
from hoopwright.papers.scene import Hatch, Label, Line, Polygon, Shape, View, rectangle
from hoopwright.papers.views import Views, draw_tunnel
from hoopwright.plan import plan

SIZE = 200
PAPER = QColor("white")
INK = Brushes(PAPER, QColor("black"), QColor("black"))
BOX = (0.0, 0.0, 10.0, 10.0)


def _sheet() -> tuple[QImage, QPainter]:
    image = QImage(SIZE, SIZE, QImage.Format.Format_RGB32)
    image.fill(PAPER)
    return image, QPainter(image)


def _painted(image: QImage) -> set[tuple[int, int]]:
    """Return the pixels that are no longer paper."""
    width, height = image.width(), image.height()
    spots = ((x, y) for x in range(width) for y in range(height))
    return {(x, y) for x, y in spots if image.pixelColor(x, y) != PAPER}


def _shown(strip: Strip, scene: GraphicsScene, shapes: tuple[Shape, ...]) -> QImage:
    """Return what a view of 10 m by 10 m paints at 20 px/m."""
    strip.show_view(View("plan", "", "", BOX, shapes))
    strip.place((0.0, 0.0, float(SIZE), float(SIZE)))
    strip.look(0.0, 0.0, 20.0)
    return _rendered(scene)


def _rendered(scene: GraphicsScene) -> QImage:
    image, painter = _sheet()
    whole = QRectF(0, 0, SIZE, SIZE)
    scene.prepareForPaint()
    scene.render(painter, whole, whole)
    painter.end()
    return image


@pytest.fixture
def scene(qapp: QApplication) -> GraphicsScene:
    made = GraphicsScene()
    made.setSceneRect(0, 0, SIZE, SIZE)
    return made


@pytest.fixture
def strip(scene: GraphicsScene, qapp: QApplication) -> Strip:
    made = Strip(scene, qapp.font())
    made.set_dark(False)
    return made


@pytest.mark.parametrize("kind", ["crank", "jumper", "blower", "roll into", "roll out"])
def test_symbols_are_drawn_round_their_place_and_small(qapp: QApplication, kind: str) -> None:
    image, painter = _sheet()
    draw_symbol(painter, kind, QPointF(100, 100), 1, INK)  # type: ignore[arg-type]
    painter.end()
    spots = _painted(image)
    assert len(spots) > 20
    reach = DISC_PX + 6
    assert all(abs(x - 100) <= reach and abs(y - 100) <= reach for x, y in spots)


def test_a_bar_that_winds_in_looks_unlike_one_that_winds_out(qapp: QApplication) -> None:
    spots = []
    for kind in ("roll into", "roll out"):
        image, painter = _sheet()
        draw_symbol(painter, kind, QPointF(100, 100), 1, INK)  # type: ignore[arg-type]
        painter.end()
        spots.append(_painted(image))
    assert spots[0] != spots[1]


def test_a_kept_picture_looks_like_the_symbol_drawn_in_place(qapp: QApplication) -> None:
    sheets = []
    for stamped in (True, False):
        image, painter = _sheet()
        if stamped:
            stamp_symbol(painter, "crank", QPointF(60, 60), 1, 1.0, INK)
            stamp_symbol(painter, "crank", QPointF(140.2, 139.9), -1, 1.0, INK)
            stamp_grip(painter, "hip", QPointF(60, 140), True, INK)
        else:
            draw_symbol(painter, "crank", QPointF(60, 60), 1, INK)
            draw_symbol(painter, "crank", QPointF(140, 140), -1, INK)
            draw_grip(painter, "hip", QPointF(60, 140), True, INK)
        painter.end()
        sheets.append(image)
    away = [
        abs(QColor(one).lightness() - QColor(other).lightness())
        for one, other in (
            (sheets[0].pixel(x, y), sheets[1].pixel(x, y)) for x in range(SIZE) for y in range(SIZE)
        )
    ]
    # Mixed once in the picture and once on the paper: a shade of rounding, no more.
    assert max(away) <= 4


def test_grips_differ_in_shape_and_grow_when_held(qapp: QApplication) -> None:
    shapes = {}
    for kind in ("split", "seam", "hip"):
        for held in (False, True):
            image, painter = _sheet()
            draw_grip(painter, kind, QPointF(100, 100), held, INK)  # type: ignore[arg-type]
            painter.end()
            shapes[kind, held] = frozenset(_painted(image))
    assert len(set(shapes.values())) == 6
    for kind in ("split", "seam", "hip"):
        assert len(shapes[kind, True]) > len(shapes[kind, False])


def test_a_text_stands_where_it_says(qapp: QApplication) -> None:
    image, painter = _sheet()
    box = draw_text(painter, "Curtain 1", 20, 100, INK, Lettering(painter.font()), plate=False)
    painter.end()
    assert all(box.adjusted(-1, -1, 1, 1).contains(x, y) for x, y in _painted(image))


def test_a_dimension_without_room_drops_its_text_and_keeps_its_line(qapp: QApplication) -> None:
    counts = []
    for right in (30.0, 180.0):
        image, painter = _sheet()
        draw_level_dimension(
            painter, 20.0, right, (10.0, 10.0), 60.0, "12.345 m", INK, Lettering(painter.font())
        )
        painter.end()
        spots = _painted(image)
        assert (int(right) - 5, 60) in spots
        counts.append(len({y for x, y in spots if 24 < x < right - 8}))
    assert counts[0] <= 2 < counts[1]


def test_an_upright_dimension_reads_upward_beside_its_line(qapp: QApplication) -> None:
    image, painter = _sheet()
    draw_upright_dimension(
        painter, 20.0, 180.0, (150.0, 150.0), 100.0, "12.345 m", INK, Lettering(painter.font())
    )
    painter.end()
    spots = _painted(image)
    assert (100, 30) in spots
    middle = [y for x, y in spots if abs(x - 96) < 3]
    assert max(middle) - min(middle) > 30


def test_areas_lie_where_they_are_to_the_pixel(strip: Strip, scene: GraphicsScene) -> None:
    image = _shown(strip, scene, (Polygon("a", "roof", rectangle(2.0, 3.0, 6.0, 8.0)),))
    spots = _painted(image)
    # Worked by hand: 20 px/m, y upward from the lower edge at 200 px.
    assert (min(x for x, _ in spots), max(x for x, _ in spots)) == (40, pytest.approx(120, abs=1))
    assert (min(y for _, y in spots), max(y for _, y in spots)) == (40, pytest.approx(140, abs=1))


def test_lines_keep_their_width_when_the_drawing_grows(strip: Strip, scene: GraphicsScene) -> None:
    _shown(strip, scene, (Line("a", "bar", (5.0, 0.0, 5.0, 10.0)),))
    widths = []
    for px_per_m in (20.0, 80.0):
        strip.look(5.0 - 100 / px_per_m, 0.0, px_per_m)
        image = _rendered(scene)
        widths.append(len({x for x, y in _painted(image) if y == 100}))
    assert widths[0] == widths[1] == 3


def test_a_hatch_is_as_dense_at_every_scale(strip: Strip, scene: GraphicsScene) -> None:
    _shown(strip, scene, (Hatch("a", "curtain", (-100.0, -100.0, 100.0, 100.0), 1),))
    shares = []
    for px_per_m in (10.0, 40.0, 160.0):
        strip.look(0.0, 0.0, px_per_m)
        image = _rendered(scene)
        shares.append(len(_painted(image)))
    assert max(shares) < 1.5 * min(shares)


def test_what_is_picked_is_drawn_in_its_colour_and_thicker(
    strip: Strip, scene: GraphicsScene
) -> None:
    shapes = (Line("bow/1", "bow", (5.0, 0.0, 5.0, 10.0)),)
    plain = _painted(_shown(strip, scene, shapes))
    strip.show_marks(("bow/1",), ())
    image = _shown(strip, scene, shapes)
    selected = colour("selected", False)
    lit = [x for x in range(SIZE) if image.pixelColor(x, 100).rgb() == selected.rgb()]
    assert len(lit) > len({x for x, y in plain if y == 100})


def test_a_label_is_left_out_where_there_is_no_room(strip: Strip, scene: GraphicsScene) -> None:
    def marks(room_m: float) -> int:
        return len(_painted(_shown(strip, scene, (_label(room_m),))))

    empty = len(_painted(_shown(strip, scene, ())))
    assert marks(2.0) == empty
    # 45 px is the least; at 20 px/m that is 2.25 m. A whole text takes more room than its name.
    assert empty < marks(4.2) < marks(10.0)


def _label(room_m: float) -> Label:
    return Label("a", "label", (5.0, 5.0), "Strip · 12.345 m", room_m)


def test_the_key_names_what_is_drawn_and_no_more(qapp: QApplication) -> None:
    key = Key(qapp.font())
    key.place(QRectF(0, 0, SIZE, SIZE))
    rows = []
    for styles in (frozenset(), frozenset({"roof"}), frozenset({"roof", "curtain", "crank"})):
        key.show_styles(styles)  # type: ignore[arg-type]
        image, painter = _sheet()
        key.paint(painter, None)  # type: ignore[arg-type]
        painter.end()
        spots = {y for _x, y in _painted(image)}
        rows.append(max(spots, default=0))
    assert rows[0] == 0
    assert 0 < rows[1] < rows[2]


def test_items_let_the_mouse_through(qapp: QApplication) -> None:
    for item in (StyleLayer("roof"), LitLayer(), Words(qapp.font())):
        assert item.acceptedMouseButtons() == Qt.MouseButton.NoButton


def _views(tunnel: Tunnel) -> Views:
    return draw_tunnel(tunnel, plan(samples.small_farm(tunnel)).tunnels[0], "metric")


def test_the_stage_shows_some_marks_large_and_then_all_again(qtbot: QtBot) -> None:
    stage = Stage(QApplication.font())
    qtbot.addWidget(stage)
    stage.resize(1000, 500)
    stage.show()
    stage.set_look("metric", False)
    stage.show_views(_views(samples.double_tunnel()))
    scale = stage.px_per_m
    stage.zoom_to(("bow/2",))
    assert stage.px_per_m > scale
    assert stage.strip_at(stage.strips["plan"].to_pixels((3.0, 0.0))) is stage.strips["plan"]
    stage.fit_all()
    assert stage.px_per_m == scale


@pytest.mark.parametrize("at", [(0, 0), (395, 5), (200, 295), (395, 295)])
def test_notes_stay_on_the_canvas(qtbot: QtBot, at: tuple[int, int]) -> None:
    page = QWidget()
    qtbot.addWidget(page)
    page.resize(400, 300)
    page.show()
    tag, entry = Tag(page), Entry(page)
    tag.say(("Split at 12.000 m", "Cost as before"), QPointF(*at), stays=True)
    entry.ask("Split", "12 x", "metric", QPointF(*at), True)
    for note in (tag, entry):
        assert note.isVisible()
        assert page.rect().contains(note.geometry())
    assert not tag.geometry().contains(QPoint(*at))


def test_a_notch_forward_and_a_notch_back_leave_the_scale(qapp: QApplication) -> None:
    factor = 1.0
    for turned in (120, -120):
        factor *= wheel_factor(
            QWheelEvent(
                QPointF(),
                QPointF(),
                QPoint(),
                QPoint(0, turned),
                Qt.MouseButton.NoButton,
                Qt.KeyboardModifier.NoModifier,
                Qt.ScrollPhase.NoScrollPhase,
                False,
            )
        )
    assert factor == pytest.approx(1.0)


def test_an_empty_hand_lets_go_of_nothing(qapp: QApplication) -> None:
    hand = Hand(Session(samples.small_farm()))
    assert hand.release() == ""
    assert not hand.cancel()
