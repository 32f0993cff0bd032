"""The bindings of the toolkit must not eat references to None.

One release takes a reference from None with each call that returns None; after some thousand
calls the process ends with "deallocating None". The dependency's upper limit keeps it out.
"""

import sys

import pytest

QtGui = pytest.importorskip("PySide6.QtGui")


@pytest.mark.skipif(sys.version_info >= (3, 12), reason="None is never counted down there")
def test_bindings_do_not_eat_none() -> None:
    pen = QtGui.QPen()
    pen.setWidth(1)
    before = sys.getrefcount(None)
    for _ in range(200):
        pen.setWidth(1)
    assert sys.getrefcount(None) - before > -100
