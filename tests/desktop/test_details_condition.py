"""What of the old skin stays, line by line in the panel."""

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
from hoopwright.desktop.details_condition import LABELS
from hoopwright.farm import PartState
from hoopwright.farm.entered import describe
from hoopwright.order import Order
from hoopwright.plan import plan
from samples import small_farm, tunnel


def test_every_field_of_a_line_has_words() -> None:
    assert list(LABELS) == [known.name for known in describe(PartState)]


def test_line_is_added_changed_and_taken_away(qtbot: QtBot) -> None:
    farm = small_farm()
    session, panel = open_panel(qtbot, farm, "Condition")
    press(qtbot, panel, "Condition: Add a line")
    # The small catalogue has one group of parts.
    assert offers(panel, "Condition: line 1, parts") == ["film", "Curtains"]
    assert offers(panel, "Condition: line 1, where") == [
        "everywhere",
        "roof",
        "West side",
        "East side",
        "Front end",
        "Back end",
    ]
    choose(qtbot, panel, "Condition: line 1, parts", "Curtains")
    choose(qtbot, panel, "Condition: line 1, where", "East side")
    type_into(qtbot, line_named(panel, "Condition: line 1, from bow"), "3")
    last = line_named(panel, "Condition: line 1, to bow")
    assert (last.text(), last.placeholderText()) == ("", "to the end")
    type_into(qtbot, last, "9")
    assert session.tunnel.condition == (
        PartState(family="Curtains", where="second_side", from_bow=3, to_bow=9, state="keep"),
    )
    type_into(qtbot, line_named(panel, "Condition: line 1, to bow"), "")
    assert session.tunnel.condition[0].to_bow is None
    press(qtbot, panel, "Condition: Remove line 1")
    assert session.tunnel.condition == ()
    for _step in range(session.stack.count()):
        session.stack.undo()
    assert session.farm == farm


def test_share_is_asked_for_a_repair_alone(qtbot: QtBot) -> None:
    farm = small_farm(tunnel().but(condition=(PartState(family="Film", state="keep"),)))
    session, panel = open_panel(qtbot, farm, "Condition")
    assert "Condition: line 1, share to replace" not in names_in(panel, "Condition")
    choose(qtbot, panel, "Condition: line 1, what is done", "repair, replace a share")
    type_into(qtbot, line_named(panel, "Condition: line 1, share to replace"), "40")
    assert session.tunnel.condition == (
        PartState(family="Film", state="repair", replace_share=0.4),
    )
    choose(qtbot, panel, "Condition: line 1, what is done", "replace")
    assert "Condition: line 1, share to replace" not in names_in(panel, "Condition")


def test_bow_that_is_not_there_and_stretch_that_runs_back_are_refused(qtbot: QtBot) -> None:
    farm = small_farm(tunnel().but(condition=(PartState(family="Film", from_bow=4, to_bow=8),)))
    session, panel = open_panel(qtbot, farm, "Condition")
    type_into(qtbot, line_named(panel, "Condition: line 1, to bow"), "18")
    # 16 bays have 17 bows.
    assert "Enter from 1 to 17." in said_by(panel)
    type_into(qtbot, line_named(panel, "Condition: line 1, to bow"), "4")
    assert "The last bow must come after the first" in said_by(panel)
    assert session.stack.count() == 0


def test_renamed_side_is_offered_by_its_new_name(qtbot: QtBot) -> None:
    farm = small_farm(tunnel().but(condition=(PartState(family="Film"),)))
    session, panel = open_panel(qtbot, farm, "Condition")
    sides = session.tunnel.sides
    session.apply_tunnel(session.tunnel.but(sides=(sides[0].but(name="Road"), sides[1])), "Rename")
    assert offers(panel, "Condition: line 1, where")[2:4] == ["Road", "East side"]


def test_what_stays_is_told_with_what_it_saves(qtbot: QtBot) -> None:
    session, panel = open_panel(qtbot, small_farm(), "Condition")
    assert "What stays" not in said_by(panel)
    press(qtbot, panel, "Condition: Add a line")
    choose(qtbot, panel, "Condition: line 1, parts", "Curtains")
    # Two cranks, one for each curtain, at 10.00 each, among what stays.
    assert figure_of(panel, "crank") == "2 of 2"
    order = session.tunnel_plan.chosen.order
    assert all(line.group != "Curtains" for line in order.lines)
    saved = sum(line.packs * line.price for line in order_of_all_new().lines)
    kept = saved - sum(line.total for line in order.lines)
    assert figure_of(panel, "not bought") == f"${kept:,.2f}"


def order_of_all_new() -> Order:
    """Return the order where nothing stays."""
    return plan(small_farm()).tunnels[0].chosen.order


def test_sheets_that_stay_are_called_by_their_places(qtbot: QtBot) -> None:
    farm = small_farm(tunnel().but(condition=(PartState(family="Film", state="keep"),)))
    session, panel = open_panel(qtbot, farm, "Condition")
    pieces = session.tunnel_plan.chosen.cover.pieces
    assert len({piece.name for piece in pieces}) == len(pieces) > 2
    for piece in pieces:
        assert figure_of(panel, piece.name) == "1 of 1"
