"""Signs of severity differ by shape, not by colour alone."""

import pytest
from pytestqt.qtbot import QtBot

from hoopwright.desktop.signs import SIDE_PX, severity_icon
from hoopwright.quantity.finding import Severity


def _outline(severity: Severity, dark: bool) -> list[bool]:
    """Return which points of a sign are painted, whatever their colour."""
    image = severity_icon(severity, dark).pixmap(SIDE_PX, SIDE_PX).toImage()
    spots = range(0, SIDE_PX, 2)
    return [image.pixelColor(x, y).alpha() > 128 for y in spots for x in spots]


@pytest.mark.parametrize("dark", [False, True])
def test_each_severity_has_a_shape_of_its_own(qtbot: QtBot, dark: bool) -> None:
    shapes = [_outline(severity, dark) for severity in ("fault", "caution", "note")]
    for n, one in enumerate(shapes):
        assert any(one)
        for other in shapes[n + 1 :]:
            differing = sum(a != b for a, b in zip(one, other, strict=True))
            assert differing > 0.01 * len(one)
