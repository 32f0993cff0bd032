"""Rain, shade and screens in the panel.

1 in = 0.0254 m exactly (NIST Special Publication 811, appendix B).
"""

from dataclasses import fields

import pytest
from pytestqt.qtbot import QtBot

from forms import (
    choose,
    figure_of,
    line_named,
    names_in,
    offers,
    open_panel,
    press,
    said_by,
    type_into,
)
from hoopwright.desktop.details import Details
from hoopwright.desktop.details_form import FigureLine
from hoopwright.desktop.details_outfit import CLOTH, GUTTER, SCREEN, WATER, Rows
from hoopwright.farm import Farm, Rain, Screen, Shade
from hoopwright.outfit import Gutter, RainWork, ShadeLaid, SideScreen
from samples import small_catalogue, small_farm, tunnel

INCH_M = 0.0254


def farm_with_cloth() -> Farm:
    """Return a farm whose catalogue has a cloth, a screen and a hook."""
    catalogue = small_catalogue()
    like = catalogue.parts[0].but(group="Shade and screen", counted_in="m")
    lengths = [like.but(key=key, name=key) for key in ("shade_cloth", "insect_screen")]
    hook = like.but(key="hook", counted_in="count")
    parts = (*catalogue.parts, *lengths, hook)
    return small_farm().but(catalogue=catalogue.but(parts=parts))


@pytest.mark.parametrize(
    ("kind", "rows"),
    [(RainWork, WATER), (Gutter, GUTTER), (ShadeLaid, CLOTH), (SideScreen, SCREEN)],
)
def test_every_figure_is_one_of_its_result(kind: type, rows: Rows) -> None:
    assert {name for name, _unit, _words in rows} <= {field.name for field in fields(kind)}


def test_rain_comes_with_its_lines_and_goes(qtbot: QtBot) -> None:
    farm = small_farm().but(units="imperial")
    session, panel = open_panel(qtbot, farm, "Rain")
    assert names_in(panel, "Rain") == ["Rain: rain is gathered"]
    press(qtbot, panel, "Rain: rain is gathered")
    assert session.tunnel.rain == Rain()
    type_into(qtbot, line_named(panel, "Rain: depth of a rain"), "1")
    assert session.tunnel.rain.depth_m == pytest.approx(INCH_M)
    outlets = line_named(panel, "Rain: outlets of each gutter")
    assert outlets.placeholderText() == "as it takes"
    type_into(qtbot, outlets, "2")
    type_into(qtbot, line_named(panel, "Rain: gutter below the hip, East side"), '6"')
    assert session.tunnel.rain.outlets == 2
    drops = [boards.gutter_drop_m for boards in session.tunnel.frame.boards]
    assert drops == [None, pytest.approx(6 * INCH_M)]
    press(qtbot, panel, "Rain: rain is gathered")
    assert session.tunnel.rain is None
    for _step in range(session.stack.count()):
        session.stack.undo()
    assert session.farm == farm


def test_rate_of_rain_is_held_by_its_limits(qtbot: QtBot) -> None:
    farm = small_farm(tunnel().but(rain=Rain()))
    session, panel = open_panel(qtbot, farm, "Rain")
    # 3e-4 m/s are 1080 mm in an hour.
    type_into(qtbot, line_named(panel, "Rain: heaviest rain"), "1200")
    assert "1,080" in said_by(panel)
    assert session.stack.count() == 0


def test_shade_cloth_is_taken_from_the_catalogue(qtbot: QtBot) -> None:
    session, panel = open_panel(qtbot, farm_with_cloth(), "Shade")
    press(qtbot, panel, "Shade: shade cloth")
    assert session.tunnel.shade == Shade(part="shade_cloth")
    # The hook is counted by the piece: it is no cloth.
    assert offers(panel, "Shade: cloth") == ["shade_cloth", "insect_screen"]
    choose(qtbot, panel, "Shade: shade over", "the roof and both sides")
    type_into(qtbot, line_named(panel, "Shade: to bow"), "8")
    type_into(qtbot, line_named(panel, "Shade: shade"), "25")
    shade = session.tunnel.shade
    assert shade == Shade(part="shade_cloth", over="roof_and_sides", to_bow=8, shade_share=0.25)
    type_into(qtbot, line_named(panel, "Shade: lap of two widths"), "1")
    type_into(qtbot, line_named(panel, "Shade: width of the cloth"), "0.8")
    assert "the lap of two widths must be less than the cloth is wide" in said_by(panel).lower()
    assert session.tunnel.shade.cloth_width_m == pytest.approx(3.6576)


def test_catalogue_without_cloth_is_told_at_the_tick(qtbot: QtBot) -> None:
    session, panel = open_panel(qtbot, small_farm(), "Shade")
    press(qtbot, panel, "Shade: shade cloth")
    assert session.tunnel.shade is None
    assert "add it to the parts first" in said_by(panel)


def test_screen_hangs_in_the_opening_of_one_side(qtbot: QtBot) -> None:
    session, panel = open_panel(qtbot, farm_with_cloth(), mark="side/1")
    press(qtbot, panel, "Picked: insect screen")
    type_into(qtbot, line_named(panel, "Picked: air through the screen"), "40")
    screen = Screen(part="insect_screen", flow_share=0.4)
    assert [side.screen for side in session.tunnel.sides] == [None, screen]
    session.stack.undo()
    session.stack.undo()
    assert session.tunnel.sides[1].screen is None


def test_side_that_stays_shut_asks_for_no_screen(qtbot: QtBot) -> None:
    plain = tunnel()
    fixed = plain.but(sides=(plain.sides[0].but(kind="fixed"), plain.sides[1]))
    _session, panel = open_panel(qtbot, small_farm(fixed), "Sides")
    assert names_in(panel, "Sides").count("Sides: insect screen") == 1


def test_water_of_one_rain_is_roof_times_depth_times_share(qtbot: QtBot) -> None:
    plain = tunnel().but(rain=Rain(depth_m=0.02, runoff_share=0.9))
    boards = tuple(b.but(gutter_drop_m=0.1) for b in plain.frame.boards)
    plain = plain.but(frame=plain.frame.but(boards=boards))
    session, panel = open_panel(qtbot, small_farm(plain), "Rain")
    roof_m2 = session.tunnel_plan.chosen.outfit.rain.plan_area_m2  # type: ignore[union-attr]
    # 1 mm on 1 m2 is 1 litre.
    assert said_figures(panel, "water of one rain")[0] == f"{roof_m2 * 20 * 0.9:,.0f} L"
    assert len(said_figures(panel, "downpipe")) == 2
    assert "ask a qualified engineer" in said_by(panel)


def test_shade_and_screen_tell_what_they_come_to(qtbot: QtBot) -> None:
    farm = farm_with_cloth()
    shaded = tunnel().but(shade=Shade(part="shade_cloth", to_bow=9, hang_m=0.1))
    screen = Screen(part="insect_screen", flow_share=0.4)
    shaded = shaded.but(sides=(shaded.sides[0], shaded.sides[1].but(screen=screen)))
    farm = farm.but(tunnels=(shaded,))
    session, panel = open_panel(qtbot, farm, "Shade", "side/1")
    # 8 bays of 1.5 m, and 0.1 m past each edge.
    assert figure_of(panel, "size along the tunnel") == "12.200 m"
    assert figure_of(panel, "floor under it") == "50%"
    opening_m2 = session.tunnel_plan.chosen.airing.openings_m2[1]
    assert figure_of(panel, "opening without it") == f"{opening_m2:.1f} m²"
    assert figure_of(panel, "worth behind it") == f"{opening_m2 * 0.4:.1f} m²"
    assert "Loose cloth is a sail" in said_by(panel)


def said_figures(panel: Details, label: str) -> list[str]:
    """Return what all figures of a label show."""
    lines = [f for f in panel.findChildren(FigureLine) if f.isVisible()]
    return [f.button.text() for f in lines if f.button.accessibleName().startswith(f"{label}: ")]
