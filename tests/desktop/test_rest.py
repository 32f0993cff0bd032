"""Waiting for a hand to rest."""

from PySide6.QtCore import QElapsedTimer, QObject
from pytestqt.qtbot import QtBot

from hoopwright.desktop.rest import Rest


def test_it_tells_once_after_the_last_of_several_steps(qtbot: QtBot) -> None:
    owner = QObject()
    rest = Rest(40, 10_000, owner)
    told: list[int] = []
    rest.timeout.connect(lambda: told.append(1))
    for _ in range(5):
        rest.step()
        qtbot.wait(5)
        rest.step()
    assert told == []
    qtbot.waitUntil(lambda: told == [1])
    qtbot.wait(60)
    assert told == [1]
    assert not rest.isActive()


def test_a_hand_that_never_rests_is_told_all_the_same(qtbot: QtBot) -> None:
    owner = QObject()
    rest = Rest(10_000, 50, owner)
    told: list[int] = []
    rest.timeout.connect(lambda: told.append(1))
    clock = QElapsedTimer()
    clock.start()
    while not told and clock.elapsed() < 5_000:
        rest.step()
        qtbot.wait(1)
    assert told == [1]
    assert clock.elapsed() >= 50
