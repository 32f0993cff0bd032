"""The small parts of the window: pictures of tools, notices, the drawing of a bow, menus."""

import pytest
from PySide6.QtGui import QIcon, QImage
from pytestqt.qtbot import QtBot

import samples
from hoopwright.desktop.actions import MENUS, TOOL_BAR
from hoopwright.desktop.bow_picture import BowPicture
from hoopwright.desktop.icons import tool_icon
from hoopwright.desktop.notice_bar import NoticeBar
from hoopwright.desktop.palette import COLOURS, app_palette
from hoopwright.files.fault import FileFault

TOOLS = [tool for _title, tools in MENUS for tool in tools if tool.key]
PICTURES = sorted({tool.icon for tool in TOOLS if tool.icon})


def image_of(name: str, dark: bool, mode: QIcon.Mode = QIcon.Mode.Normal) -> QImage:
    return tool_icon(name, dark).pixmap(48, 48, mode).toImage()


def inked(image: QImage) -> list[tuple[int, int]]:
    spots = [(x, y) for x in range(image.width()) for y in range(image.height())]
    return [spot for spot in spots if image.pixelColor(*spot).alpha() > 200]


@pytest.mark.parametrize("name", PICTURES)
def test_picture_is_drawn_in_the_colour_of_the_text(qtbot: QtBot, name: str) -> None:
    for dark in (False, True):
        image = image_of(name, dark)
        full = [image.pixelColor(*spot).name().upper() for spot in inked(image)]
        assert len(full) > 30
        assert COLOURS["text"][dark] in full
    faint = image_of(name, False, QIcon.Mode.Disabled)
    assert not inked(faint)


def test_no_two_tools_share_a_picture_but_the_splits(qtbot: QtBot) -> None:
    shapes = [tuple(inked(image_of(name, False))) for name in PICTURES]
    assert len(set(shapes)) == len(shapes)


def test_missing_picture_is_a_fault_of_the_installation(qtbot: QtBot) -> None:
    with pytest.raises(FileFault, match="missing from the installation"):
        tool_icon("no-such-picture", False)


def test_tool_bar_shows_entries_with_picture_and_words() -> None:
    known = {tool.key: tool for tool in TOOLS}
    assert len(known) == len(TOOLS)
    shown = [known[key] for keys in TOOL_BAR for key in keys]
    assert all(tool.icon and tool.short for tool in shown)
    assert {tool.key for tool in TOOLS if tool.short} == {tool.key for tool in shown}


def test_note_goes_by_itself_and_a_fault_stays(
    qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    bar = NoticeBar("At rest.")
    qtbot.addWidget(bar)
    bar._later.setInterval(10)
    bar.show_notice("note", "Saved.")
    assert bar.text.text() == "Saved."
    qtbot.waitUntil(lambda: bar.text.text() == "At rest.")
    bar.show_notice("note", "Saved.")
    bar.show_notice("fault", "The disk is full.")
    qtbot.wait(40)
    assert bar.text.text() == "Fault: The disk is full."
    bar.rest()
    assert bar.severity is None


def test_sign_of_a_notice_follows_the_palette(qtbot: QtBot) -> None:
    bar = NoticeBar("At rest.")
    qtbot.addWidget(bar)
    bar.show_notice("caution", "Careful.")
    bar.setPalette(app_palette(False))
    light = bar.sign.pixmap().toImage()
    bar.setPalette(app_palette(True))
    assert bar.sign.pixmap().toImage() != light


def test_bow_is_drawn_to_scale_and_taken_away(qtbot: QtBot) -> None:
    picture = BowPicture()
    qtbot.addWidget(picture)
    empty = picture.grab().toImage()
    picture.show_frame(samples.tunnel().frame)
    # The round bow of the samples: 8 m and a tube of 0.048 m wide, 3.7 m and half a tube high.
    across = [x for x, _y in picture._points]
    assert max(across) - min(across) == pytest.approx(8.048, abs=0.01)
    assert max(y for _x, y in picture._points) == pytest.approx(3.724, abs=0.01)
    assert picture.grab().toImage() != empty
    picture.show_frame(None)
    assert picture.grab().toImage() == empty
