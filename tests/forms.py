"""Forms as people work them: by the names that are read aloud, by key and by what they show."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractButton, QComboBox, QLabel, QLineEdit, QWidget
from pytestqt.qtbot import QtBot

from hoopwright.desktop.details import Details
from hoopwright.desktop.details_form import FigureLine
from hoopwright.desktop.session import Session
from hoopwright.farm import Farm


def named(panel: Details, name: str) -> QWidget:
    """Return the one widget that is read aloud with a name."""
    found = [w for w in panel.findChildren(QWidget) if w.accessibleName() == name]
    found = [w for w in found if w.isVisible()]
    assert len(found) == 1, (name, len(found))
    return found[0]


def line_named(panel: Details, name: str) -> QLineEdit:
    """Return the one line to type into that is read aloud with a name."""
    line = named(panel, name)
    assert isinstance(line, QLineEdit)
    return line


def type_into(qtbot: QtBot, line: QLineEdit, text: str) -> None:
    """Type over a line and enter it; an empty text empties it."""
    line.setFocus()
    line.selectAll()
    if text:
        qtbot.keyClicks(line, text)
    else:
        qtbot.keyClick(line, Qt.Key.Key_Delete)
    qtbot.keyClick(line, Qt.Key.Key_Return)


def press(qtbot: QtBot, panel: Details, name: str) -> None:
    """Press the one button of a name by key."""
    button = named(panel, name)
    assert isinstance(button, QAbstractButton)
    qtbot.keyClick(button, Qt.Key.Key_Space)


def choose(qtbot: QtBot, panel: Details, name: str, words: str) -> None:
    """Go through a list by key until it reads some words."""
    box = named(panel, name)
    assert isinstance(box, QComboBox)
    box.setFocus()
    for _step in range(box.count()):
        qtbot.keyClick(box, Qt.Key.Key_Up)
    while box.currentText() != words:
        before = box.currentText()
        qtbot.keyClick(box, Qt.Key.Key_Down)
        assert box.currentText() != before, f"{words} is not offered"


def said_by(panel: Details) -> str:
    """Return all plain words that are seen."""
    return "\n".join(w.text() for w in panel.findChildren(QLabel) if w.isVisible())


def open_panel(
    qtbot: QtBot, farm: Farm, group: str = "", mark: str = ""
) -> tuple[Session, Details]:
    """Open the panel of a farm with one of its groups open and something picked."""
    session = Session(farm)
    panel = Details(session)
    session.setParent(panel)
    qtbot.addWidget(panel)
    panel.resize(330, 1200)
    panel.show()
    for part in panel.groups:
        part.header.setChecked(part.title == group)
    session.pick(mark)
    return session, panel


def offers(panel: Details, name: str) -> list[str]:
    """Return what a list offers to choose from."""
    box = named(panel, name)
    assert isinstance(box, QComboBox)
    return [box.itemText(n) for n in range(box.count())]


def names_in(panel: Details, title: str) -> list[str]:
    """Return what the stops of Tab in a group are read aloud as."""
    group = next(g for g in panel.groups if g.title == title)
    return [stop.accessibleName() for stop in group.form.stops]


def step_down(qtbot: QtBot, panel: Details, name: str) -> str:
    """Choose what comes next in a list by key and return what it shows then."""
    box = named(panel, name)
    assert isinstance(box, QComboBox)
    box.setFocus()
    qtbot.keyClick(box, Qt.Key.Key_Down)
    return box.currentText()


def figure_of(panel: Details, label: str) -> str:
    """Return what the one figure of a label shows, with a working or without."""
    lines = [f for f in panel.findChildren(FigureLine) if f.isVisible()]
    shown = [w for f in lines for w in (f.button, f.plain) if w.isVisible()]
    texts = [w.text() for w in shown if w.accessibleName().startswith(f"{label}: ")]
    assert len(texts) == 1, (label, texts)
    return texts[0]
