"""Stock widths beside the width of a sheet over the bows, in the panel."""

import pytest
from pytestqt.qtbot import QtBot

from forms import line_named, named, open_panel, said_by, type_into
from hoopwright.desktop.details import Details
from hoopwright.desktop.details_form import FigureLine
from hoopwright.desktop.fit_words import fit_lines
from hoopwright.farm import BowReading, Farm, Tape
from samples import small_farm, tunnel


def read_farm(layers: int = 1) -> Farm:
    """Return a farm whose tunnel was read at three bows."""
    plain = tunnel(roof_layers=layers)
    rows = tuple(
        BowReading(bow=bow, over_hips_m=girth_m)
        for bow, girth_m in ((1, 9.60), (9, 9.62), (17, 9.65))
    )
    return small_farm(plain.but(frame=plain.frame.but(tape=Tape(bows=rows))))


def shown(panel: Details) -> dict[str, str]:
    """Return all figures that are seen: label and text."""
    lines = [f for f in panel.picked.findChildren(FigureLine) if f.isVisible()]
    names = [f.button.accessibleName().partition(": ") for f in lines]
    return {label: text for label, _colon, text in names if label}


def test_widths_stand_beside_the_width_of_the_roof(qtbot: QtBot) -> None:
    session, panel = open_panel(qtbot, read_farm(), mark="roof")
    (sheet,) = session.tunnel_plan.fit.sheets
    for line in fit_lines(sheet, session.units):
        assert shown(panel)[line.label] == line.text
    assert "12.000 m stock, chosen" in shown(panel)
    assert shown(panel)["girths read"].startswith("3 of 17 bows")


def test_chance_follows_the_tape_and_the_film(qtbot: QtBot) -> None:
    session, panel = open_panel(qtbot, read_farm(), mark="roof")
    before = session.tunnel_plan.fit.sheets[0].widths
    type_into(qtbot, line_named(panel, "Picked: roll may be narrower by"), "5")
    assert session.farm.catalogue.films[0].width_minus_share == pytest.approx(0.05)
    after = session.tunnel_plan.fit.sheets[0].widths
    pairs = [(a.chance, b.chance) for a, b in zip(before, after, strict=True)]
    assert all(a is not None and b is not None and b >= a for a, b in pairs)
    assert any(a != b for a, b in pairs)
    type_into(qtbot, line_named(panel, "Picked: error of a reading"), "40")
    assert session.tunnel.frame.tape.error_m == pytest.approx(0.04)


def test_each_layer_has_its_widths(qtbot: QtBot) -> None:
    session, panel = open_panel(qtbot, read_farm(2), mark="roof")
    assert len(session.tunnel_plan.fit.sheets) == 2
    for sheet in session.tunnel_plan.fit.sheets:
        assert f"Stock widths, {sheet.name}" in said_by(panel)


def test_sheet_over_the_bows_shows_them_and_a_curtain_does_not(qtbot: QtBot) -> None:
    session, panel = open_panel(qtbot, read_farm())
    pieces = session.tunnel_plan.chosen.cover.pieces
    roof = next(p for p in pieces if session.tunnel_plan.fit.of(p.mark) is not None)
    session.pick(roof.mark)
    assert "Stock widths" in said_by(panel)
    assert named(panel, "Picked: roll may be narrower by").isVisible()
    other = next(p for p in pieces if session.tunnel_plan.fit.of(p.mark) is None)
    session.pick(other.mark)
    assert "Stock widths" not in said_by(panel)
