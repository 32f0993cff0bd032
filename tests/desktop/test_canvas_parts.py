"""Parts of the canvas that need no mouse: rulers, layout, hits, moves, colours, words."""

from decimal import Decimal
from itertools import combinations

import pytest
from PySide6.QtWidgets import QApplication

import samples
from hardware import geared_crank
from hoopwright.desktop.canvas.arrangement import LONG, arrange
from hoopwright.desktop.canvas.moves import (
    Grasp,
    kind_of,
    move_to,
    next_place,
    place_of,
    range_of,
    snap,
)
from hoopwright.desktop.canvas.picking import is_lit, nearest_handle, nearest_mark
from hoopwright.desktop.canvas.ruler import ruler_steps, ruler_text
from hoopwright.desktop.cranks import crank_text, panel_of, turn_crank
from hoopwright.desktop.palette import (
    COLOURS,
    INKS,
    app_font,
    app_palette,
    drawing_font,
    is_dark,
)
from hoopwright.desktop.tags import drag_tag, move_text, place_name
from hoopwright.farm import GearedCrank, HandCrank
from hoopwright.farm.change import add_seam, move_split
from hoopwright.papers.scene import STYLES, Handle, Line, Polygon, Symbol, View, rectangle
from hoopwright.papers.views import draw_tunnel
from hoopwright.plan import plan
from hoopwright.quantity.units import Units

FOOT_M = 0.3048


# --- Rulers


@pytest.mark.parametrize("units", ["imperial", "metric"])
@pytest.mark.parametrize("px_per_m", [2.0, 7.0, 20.0, 65.0, 300.0, 900.0])
def test_numbers_of_a_ruler_keep_apart_and_fine_steps_divide_them(
    px_per_m: float, units: Units
) -> None:
    major_m, minor_m = ruler_steps(px_per_m, units, 58.0)
    assert major_m * px_per_m >= 58.0
    assert major_m / minor_m == pytest.approx(round(major_m / minor_m))


@pytest.mark.parametrize(
    ("place_m", "step_m", "units", "text"),
    [
        (10 * FOOT_M, 10 * FOOT_M, "imperial", "10'"),
        (0.0, FOOT_M / 4, "imperial", "0'"),
        (4.5 * FOOT_M, FOOT_M / 2, "imperial", "4' 6\""),
        (12.0, 2.0, "metric", "12 m"),
        (0.30000000000000004, 0.1, "metric", "0.3 m"),
    ],
)
def test_a_ruler_writes_lengths_as_people_read_them(
    place_m: float, step_m: float, units: Units, text: str
) -> None:
    assert ruler_text(place_m, step_m, units) == text


# --- Layout


@pytest.mark.parametrize("size", [(640.0, 360.0), (1000.0, 500.0), (1500.0, 800.0)])
@pytest.mark.parametrize("length_m", [6.0, 30.0, 96.0])
def test_the_whole_tunnel_fits_and_nothing_overlaps(
    size: tuple[float, float], length_m: float
) -> None:
    side, roof = (-0.6, 0.0, length_m + 0.6, 3.7), (-0.6, -4.0, length_m + 0.6, 4.0)
    boxes = {"first_side": side, "plan": roof, "second_side": side, "section": (-4.5, 0, 4.5, 3.7)}
    found = arrange(*size, boxes, 15.0, (2, 1))
    for name in (*LONG, "section"):
        left, top, width, height = found.frames[name]
        scale = found.section_px_per_m if name == "section" else found.px_per_m
        box = boxes[name]
        assert (box[2] - box[0]) * scale <= width
        assert (box[3] - box[1]) * scale + found.head_px + found.foot_px[name] <= height + 1
        assert left >= 0
        assert top >= 0
        assert left + width <= size[0] + 1
        assert top + height <= size[1] + 1
    areas = [(*f[:2], f[0] + f[2], f[1] + f[3]) for f in (*found.frames.values(), found.key)]
    for (l1, t1, r1, b1), (l2, t2, r2, b2) in combinations(areas, 2):
        assert min(r1, r2) <= max(l1, l2) or min(b1, b2) <= max(t1, t2)


# --- Hits


def _view(*shapes: Polygon | Line | Handle | Symbol) -> View:
    return View("plan", "", "", (0.0, 0.0, 10.0, 10.0), shapes)


def _handle(mark: str, at_m: float) -> Handle:
    return Handle(mark, "split", (at_m, 0.0, at_m, 5.0), (at_m, 5.0), "split", "along")


def test_the_nearest_handle_is_taken_not_the_topmost() -> None:
    view = _view(_handle("near", 2.0), _handle("topmost", 2.5))
    found = nearest_handle(view, (2.1, 5.0), 20.0)
    assert found is not None
    assert found.mark == "near"


def test_a_grip_is_24_pixels_wide_at_every_scale() -> None:
    view = _view(_handle("split", 2.0))
    for px_per_m in (5.0, 50.0, 500.0):
        assert nearest_handle(view, (2.0 + 11.9 / px_per_m, 5.0), px_per_m) is not None
        assert nearest_handle(view, (2.0 + 12.1 / px_per_m, 5.0), px_per_m) is None


def test_a_line_close_by_goes_before_the_area_and_the_topmost_area_before_others() -> None:
    low, high = Polygon("low", "roof", rectangle(0, 0, 9, 9)), rectangle(0, 0, 5, 5)
    view = _view(low, Polygon("high", "curtain", high), Line("line", "bow", (3.0, 0.0, 3.0, 9.0)))
    assert nearest_mark(view, (3.1, 2.0), 20.0) == "line"
    assert nearest_mark(view, (2.0, 2.0), 20.0) == "high"
    assert nearest_mark(view, (7.0, 7.0), 20.0) == "low"
    assert nearest_mark(view, (9.5, 9.5), 20.0) == ""


def test_a_crank_is_hit_where_it_is_drawn() -> None:
    view = _view(
        Line("bow", "bow", (2.65, 0.0, 2.65, 5.0)), Symbol("crank", "crank", (2.0, 1.0), "crank", 1)
    )
    # Drawn 13 px beside its place, which is 0.65 m at 20 px/m: it covers the bow there.
    assert nearest_mark(view, (2.65, 1.0), 20.0) == "crank"
    assert nearest_mark(view, (2.65, 3.0), 20.0) == "bow"


def test_a_whole_side_lights_what_is_on_it() -> None:
    assert is_lit("side/0/panel/1", ("side/0",))
    assert not is_lit("side/1/panel/1", ("side/0",))
    assert is_lit("bow/3", ("frame",))
    assert not is_lit("side/0/panel/1", ("side/0/panel/11", ""))


# --- Moves

EIGHTH_IN_M = 0.0254 / 8


def test_marks_say_what_kind_of_handle_they_are() -> None:
    marks = ("side/0/split/1", "roof/seam/0", "side/1/hip", "side/1/panel/0", "bow/3", "")
    assert [kind_of(mark) for mark in marks] == ["split", "seam", "hip", "", "", ""]
    assert panel_of("side/1/panel/0/crank") == "side/1/panel/0"
    assert panel_of("side/1/hip") == ""


@pytest.mark.parametrize(("units", "step_m"), [("imperial", EIGHTH_IN_M), ("metric", 0.001)])
def test_fine_steps_are_an_eighth_of_an_inch_or_a_millimetre(units: Units, step_m: float) -> None:
    tunnel, grasp = samples.double_tunnel(), Grasp("side/0/split/0", units, fine=True)
    spot = snap(tunnel, grasp, 13.2345)
    assert spot == pytest.approx(13.2345, abs=step_m / 2 + 1e-9)
    assert spot / step_m == pytest.approx(round(spot / step_m))


@pytest.mark.parametrize(("units", "step_m"), [("imperial", 0.0254), ("metric", 0.01)])
def test_a_hip_seam_goes_in_inches_or_centimetres(units: Units, step_m: float) -> None:
    tunnel, grasp = samples.double_tunnel(), Grasp("side/0/hip", units)
    assert snap(tunnel, grasp, 1.6789) == pytest.approx(1.6789, abs=step_m / 2)
    moved = move_to(tunnel, grasp, next_place(tunnel, grasp, 3))
    assert place_of(moved, "side/1/hip") == pytest.approx(1.5 + 3 * step_m, abs=step_m / 2)


def test_a_split_never_snaps_to_a_bow_it_cannot_reach() -> None:
    tunnel = samples.double_tunnel()
    low_m, high_m = range_of(tunnel, "side/0/split/0")
    for place_m in (-5.0, 1.6, 22.4, 90.0):
        spot = snap(tunnel, Grasp("side/0/split/0", "metric"), place_m)
        assert low_m <= spot <= high_m
        assert spot % 1.5 == 0


def _ends(drive: HandCrank | GearedCrank) -> list[str]:
    """Return where a crank of curtain 2 on the first side goes by three turns."""
    catalogue = samples.small_catalogue().but(drives=(drive,))
    tunnel, ends = samples.double_tunnel(), []
    for _turn in range(3):
        tunnel = turn_crank(tunnel, catalogue, "side/0/panel/1")
        ends.append(tunnel.sides[0].panels[1].crank_end)
    return ends


def test_a_crank_goes_to_the_middle_only_when_it_climbs_with_the_bar() -> None:
    (hand,) = samples.small_catalogue().drives
    assert isinstance(hand, HandCrank)
    assert _ends(hand) == ["back", "front", "back"]
    assert _ends(geared_crank(hand.key)) == ["back", "middle", "front"]


def test_moving_a_crank_is_named_after_its_curtain() -> None:
    tunnel, catalogue = samples.double_tunnel(), samples.small_catalogue()
    once = turn_crank(tunnel, catalogue, "side/0/panel/1")
    assert crank_text("side/0/panel/1", once) == "Move crank of curtain 2 on West side to the back"


# --- Words


def test_tags_tell_the_difference_to_the_start_of_the_drag() -> None:
    farm = samples.small_farm(add_seam(samples.double_tunnel(), 12.0))
    before = plan(farm).tunnels[0]
    moved = move_split(farm.tunnels[0], 0, 0, 15.0)
    now = plan(farm.but(tunnels=(moved,))).tunnels[0]
    change = now.chosen.cost.to_pay - before.chosen.cost.to_pay
    last = drag_tag("side/0/split/0", farm, moved, before, now, False)[-1]
    assert last == ("Cost as before" if change == 0 else f"Cost {_signed(change)}")
    assert drag_tag("roof/seam/0", farm, moved, now, now, False)[-1] == "Film as before"


def _signed(amount: Decimal) -> str:
    return f"{'+' if amount > 0 else '−'}${abs(amount):,.2f}"


def test_everything_that_is_drawn_has_a_name() -> None:
    tunnel = add_seam(samples.double_tunnel(), 12.0)
    planned = plan(samples.small_farm(tunnel)).tunnels[0]
    views = draw_tunnel(tunnel, planned, "metric")
    shapes = [s for v in (views.first_side, views.plan, views.second_side) for s in v.shapes]
    nameless = {
        s.mark for s in shapes if s.mark and not place_name(s.mark, tunnel, planned, "metric")
    }
    assert not nameless


def test_steps_are_named_after_what_was_moved() -> None:
    tunnel = samples.double_tunnel()
    assert move_text("side/1/split/0", tunnel) == "Move split on East side"
    assert move_text("side/1/hip", tunnel) == "Move hip seam on both sides"
    assert move_text("side/1/hip", tunnel, one_side=True) == "Move hip seam on East side"


# --- Colours


def _luminance(shade: str) -> float:
    """Relative luminance of a colour: W3C, Web Content Accessibility Guidelines 2.2."""
    parts = [int(shade[k : k + 2], 16) / 255 for k in (1, 3, 5)]
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def _contrast(one: str, other: str) -> float:
    """Contrast ratio of two colours: W3C, Web Content Accessibility Guidelines 2.2."""
    dark, light = sorted((_luminance(one), _luminance(other)))
    return (light + 0.05) / (dark + 0.05)


@pytest.mark.parametrize("dark", [False, True])
def test_colours_stand_out_from_the_paper(dark: bool) -> None:
    paper = COLOURS["paper"][dark]
    for name, shades in COLOURS.items():
        # 3:1 for drawing, 4.5:1 for text: W3C, Web Content Accessibility Guidelines 2.2.
        if name != "paper":
            least = 4.5 if name in ("text", "muted", "fault", "caution", "note", "good") else 3.0
            assert _contrast(shades[dark], paper) >= least, name


@pytest.mark.parametrize("dark", [False, True])
def test_texts_of_the_window_can_be_read(dark: bool) -> None:
    palette = app_palette(dark)
    pairs = (
        (palette.windowText(), palette.window()),
        (palette.text(), palette.base()),
        (palette.buttonText(), palette.button()),
        (palette.toolTipText(), palette.toolTipBase()),
        (palette.highlightedText(), palette.highlight()),
    )
    for ink, ground in pairs:
        assert _contrast(ink.color().name(), ground.color().name()) >= 4.5
    assert is_dark(palette) is dark


def test_every_style_of_the_drawing_has_an_ink() -> None:
    assert set(INKS) == set(STYLES)


def test_fonts_are_never_too_small_to_read(qapp: QApplication) -> None:
    font = app_font()
    assert font.pointSizeF() >= 9
    assert 8 <= drawing_font(font).pointSizeF() <= font.pointSizeF()
