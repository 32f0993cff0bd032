"""Proposed splits in the real window: asked for, seen, taken, left, and dropped by any edit."""

from collections.abc import Iterator

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from hoopwright.desktop.notice_bar import CAUTION
from hoopwright.desktop.proposing import film_search
from hoopwright.desktop.window import MainWindow
from hoopwright.farm import Farm
from hoopwright.papers.scene import Line
from samples import double_tunnel, side, small_farm, tunnel
from windows import make_window, show_window, told_by

LEFT = Qt.MouseButton.LeftButton


def hard_farm() -> Farm:
    """Return a farm where each curtain is too hard to crank, and shorter ones are not."""
    farm = small_farm(double_tunnel())
    return farm.but(limits=farm.limits.but(hand_force_n=20.0))


@pytest.fixture
def window(qtbot: QtBot) -> Iterator[MainWindow]:
    made = make_window()
    show_window(qtbot, made)
    made.session.load(hard_farm(), None, None)
    return made


def _press(window: MainWindow, key: str) -> None:
    assert window.menu[key].isEnabled()
    window.menu[key].trigger()


def _dashed(window: MainWindow) -> list[float]:
    """Return where proposed splits are drawn on the first side, m."""
    shapes = window.canvas.board.strips["first_side"].view.shapes
    return [s.ends[0] for s in shapes if isinstance(s, Line) and s.style == "proposed"]


def _spots(window: MainWindow) -> tuple[float, ...]:
    return tuple(split.at_m for split in window.session.tunnel.sides[0].splits)


def test_proposed_splits_are_drawn_and_told_and_change_nothing(window: MainWindow) -> None:
    before = window.session.farm
    window.session.pick("side/0")
    _press(window, "propose_even")
    proposal = window.session.proposal
    assert proposal is not None
    assert len(proposal.spots_m) > len(before.tunnels[0].sides[0].splits)
    assert _dashed(window) == list(proposal.spots_m)
    assert window.notices.text.text().startswith("West side: ")
    assert window.notices.take.isVisible()
    assert window.notices.leave.isVisible()
    assert window.session.farm is before
    assert window.session.stack.count() == 0


def test_one_click_takes_them_and_one_undo_brings_all_back(window: MainWindow) -> None:
    before = window.session.farm
    window.session.pick("side/0/panel/1")
    _press(window, "propose_even")
    proposal = window.session.proposal
    assert proposal is not None
    QTest.mouseClick(window.notices.take, LEFT)
    assert _spots(window) == proposal.spots_m
    assert window.session.stack.undoText() == "Take proposed splits on West side"
    assert max(w.hardest_n for w in window.session.tunnel_plan.chosen.curtains[:2]) <= 20.0
    assert _dashed(window) == []
    assert window.notices.text.text() == CAUTION
    window.session.stack.undo()
    assert window.session.farm == before


def test_splits_found_for_a_farm_of_before_are_not_offered(
    window: MainWindow, qtbot: QtBot
) -> None:
    search = film_search(window.session)
    window.session.pick("side/0")
    with qtbot.waitSignal(search.found):
        _press(window, "propose_film")
        window.session.apply_tunnel(window.session.tunnel.but(name="Brook"), "Rename")
    assert window.session.proposal is None


def test_search_that_finds_nothing_says_why(window: MainWindow, qtbot: QtBot) -> None:
    limits = window.session.farm.limits.but(hand_force_n=5.0)
    window.session.apply(window.session.farm.but(limits=limits), "Limit")
    told = told_by(window)
    window.session.pick("side/0")
    _press(window, "propose_film")
    qtbot.waitUntil(lambda: len(told) == 2)
    assert told[1][0] == "fault"
    assert "West side" in told[1][1]


def test_left_alone_they_go_without_a_trace(window: MainWindow, qtbot: QtBot) -> None:
    before = window.session.farm
    window.session.pick("side/0")
    _press(window, "propose_film")
    assert window.notices.text.text().startswith("Looking for")
    qtbot.waitUntil(lambda: window.session.proposal is not None)
    assert window.session.proposal.aim == "least film"
    QTest.mouseClick(window.notices.leave, LEFT)
    assert window.session.proposal is None
    assert _dashed(window) == []
    assert not window.notices.take.isVisible()
    assert window.session.farm is before


def test_any_edit_drops_them(window: MainWindow) -> None:
    window.session.pick("side/0")
    _press(window, "propose_even")
    window.session.apply_tunnel(window.session.tunnel.but(name="Brook"), "Rename")
    assert window.session.proposal is None
    assert _dashed(window) == []
    assert window.notices.text.text() == CAUTION


def test_undo_drops_them(window: MainWindow) -> None:
    window.session.apply_tunnel(window.session.tunnel.but(name="Brook"), "Rename")
    window.session.pick("side/0")
    _press(window, "propose_even")
    window.session.stack.undo()
    assert window.session.proposal is None


def test_another_tunnel_drops_them(window: MainWindow) -> None:
    farm = hard_farm()
    farm = farm.but(tunnels=(*farm.tunnels, tunnel().but(name="Brook")))
    window.session.load(farm, None, None)
    window.session.pick("side/0")
    _press(window, "propose_even")
    window.session.show_tunnel(1)
    assert window.session.proposal is None
    assert not window.notices.take.isVisible()


def test_the_offer_comes_back_when_another_notice_is_put_away(window: MainWindow) -> None:
    window.session.pick("side/0")
    _press(window, "propose_even")
    offer = window.notices.text.text()
    window.session.noticed.emit("fault", "The disk is full.")
    assert not window.notices.take.isVisible()
    QTest.mouseClick(window.notices.away, LEFT)
    assert window.notices.text.text() == offer
    assert window.notices.take.isVisible()


@pytest.mark.parametrize(("mark", "at_m"), [("side/0/split/0", 12.0), ("bow/6", 9.0)])
def test_the_picked_split_or_bow_is_kept(window: MainWindow, mark: str, at_m: float) -> None:
    window.session.pick(mark)
    _press(window, "propose_keep")
    proposal = window.session.proposal
    assert proposal is not None
    assert proposal.aim == "keep bow"
    assert at_m in proposal.spots_m


def test_without_something_to_keep_nothing_is_kept(window: MainWindow) -> None:
    told = told_by(window)
    window.session.pick("side/0")
    assert not window.menu["propose_keep"].isEnabled()
    window.run(lambda: window.acts.propose("keep bow"))
    assert "Pick the split or the bow" in told[0][1]


def test_what_fits_no_limit_is_told_in_words(window: MainWindow) -> None:
    told = told_by(window)
    farm = window.session.farm
    path = farm.limits.but(hand_force_n=5.0)
    window.session.apply(farm.but(limits=path), "Limit")
    window.session.pick("side/0")
    window.menu["propose_even"].trigger()
    assert len(told) == 1
    assert "West side" in told[0][1]
    assert window.session.proposal is None


def test_side_of_the_hardest_crank_is_meant_when_none_is_picked(window: MainWindow) -> None:
    hardest = max(window.session.tunnel_plan.chosen.curtains, key=lambda w: w.hardest_n)
    _press(window, "propose_even")
    proposal = window.session.proposal
    assert proposal is not None
    assert proposal.side == hardest.side


def test_a_tunnel_without_curtains_has_nothing_to_propose(window: MainWindow) -> None:
    sides = (side("West side", kind="fixed"), side("East side", kind="fixed"))
    window.session.load(small_farm(tunnel(sides=sides)), None, None)
    assert not window.menu["propose_even"].isEnabled()
    told = told_by(window)
    window.run(lambda: window.acts.propose("even"))
    assert "has curtains" in told[0][1]


def test_buttons_of_a_picked_curtain_propose_too(window: MainWindow, qtbot: QtBot) -> None:
    window.session.pick("side/1/panel/0")
    (button,) = (
        stop
        for stop in window.details.picked.stops
        if stop.accessibleName() == "Picked: Propose even splits"
    )
    qtbot.keyClick(button, Qt.Key.Key_Space)
    proposal = window.session.proposal
    assert proposal is not None
    assert proposal.side == 1


def test_take_and_leave_are_reached_by_key(window: MainWindow, qtbot: QtBot) -> None:
    with qtbot.waitActive(window):
        window.activateWindow()
    window.session.pick("side/0")
    _press(window, "propose_even")
    window.details.picked.stops[0].setFocus()
    for _area in range(5):
        window.go_to_area(1)
        if window.focusWidget() is window.notices.take:
            break
    assert window.focusWidget() is window.notices.take
    qtbot.keyClick(window.notices.take, Qt.Key.Key_Space)
    assert len(_spots(window)) > 1
