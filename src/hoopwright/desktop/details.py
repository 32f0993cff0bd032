"""The panel at the right: what is picked, and below it all that was entered of the tunnel."""

from collections.abc import Callable, Iterator
from itertools import pairwise

from PySide6.QtCore import QCoreApplication, Qt
from PySide6.QtWidgets import (
    QFrame,
    QLabel,
    QScrollArea,
    QSizePolicy,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from hoopwright.desktop.details_form import Form
from hoopwright.desktop.details_items import Item
from hoopwright.desktop.details_picked import picked_lines
from hoopwright.desktop.details_tunnel import GROUPS
from hoopwright.desktop.rest import Rest
from hoopwright.desktop.session import Session
from hoopwright.farm import Farm

DRAG_PAUSE_MS, DRAG_MOST_MS = 60, 400
LEAST_WIDTH_PX = 300


class Group(QWidget):
    """A part that opens and closes; its form is made when it is opened first."""

    def __init__(
        self,
        title: str,
        items: Callable[[Session], Iterator[Item]],
        session: Session,
        parent: QWidget | None = None,
    ) -> None:
        """Make a closed group."""
        super().__init__(parent)
        self.title, self._items, self._session = title, items, session
        self.header = QToolButton(self)
        self.header.setText(title)
        self.header.setCheckable(True)
        self.header.setAutoRaise(True)
        self.header.setArrowType(Qt.ArrowType.RightArrow)
        self.header.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
        self.header.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.header.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        font = self.header.font()
        font.setBold(True)
        self.header.setFont(font)
        self.form = Form(session, self)
        self.form.hide()
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(2)
        box.addWidget(self.header)
        box.addWidget(self.form)
        self.header.toggled.connect(self.on_toggled)

    @property
    def is_open(self) -> bool:
        """Whether its lines are shown."""
        return self.header.isChecked()

    def on_toggled(self, open_now: bool) -> None:
        """Show or hide the lines."""
        self.header.setArrowType(Qt.ArrowType.DownArrow if open_now else Qt.ArrowType.RightArrow)
        self.refresh()
        self.form.setVisible(open_now)

    def refresh(self) -> None:
        """Show the lines as they are now, when they are shown."""
        if self.is_open:
            self.form.show_items(tuple(self._items(self._session)), self.title)


class Details(QWidget):
    """What is picked, and all that was entered of the shown tunnel and of the farm."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        """Show what a session shows."""
        super().__init__(parent)
        self._session = session
        self._later = Rest(DRAG_PAUSE_MS, DRAG_MOST_MS, self)
        self._later.timeout.connect(self.refresh)
        self.picked_title = _heading()
        self.picked = Form(session)
        self.tunnel_title = _heading()
        self.groups = [
            Group(QCoreApplication.translate("Details", str(title)), items, session)
            for title, items in GROUPS
        ]
        self._lay_out()
        for form in (self.picked, *(g.form for g in self.groups)):
            form.rebuilt.connect(self.on_rebuilt)
        session.farm_changed.connect(self.on_farm_changed)
        session.mark_picked.connect(self.on_mark_picked)
        session.tunnel_shown.connect(self.on_tunnel_shown)
        session.stack.indexChanged.connect(self.on_step_made)
        self._show_names()
        self.groups[0].header.setChecked(True)

    def _lay_out(self) -> None:
        inside = QWidget()
        box = QVBoxLayout(inside)
        box.setContentsMargins(8, 6, 8, 8)
        box.setSpacing(4)
        rule = QFrame()
        rule.setFrameShape(QFrame.Shape.HLine)
        for widget in (self.picked_title, self.picked, rule, self.tunnel_title, *self.groups):
            box.addWidget(widget)
        box.addStretch(1)
        self.area = QScrollArea(self)
        self.area.setWidgetResizable(True)
        self.area.setFrameShape(QFrame.Shape.NoFrame)
        self.area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.area.setAccessibleName(QCoreApplication.translate("Details", "Details"))
        self.area.setWidget(inside)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.addWidget(self.area)
        self.setMinimumWidth(LEAST_WIDTH_PX)

    def on_farm_changed(self, _before: Farm, _after: Farm) -> None:
        """Show the values as they are: at once, or when a hand that drags rests."""
        if not self._session.dragging:
            self.refresh()
        else:
            self._later.step()

    def on_step_made(self, _index: int) -> None:
        """Catch up at once when the hand lets go."""
        if self._later.isActive():
            self.refresh()

    def on_tunnel_shown(self, _index: int) -> None:
        """Show another tunnel."""
        self.refresh()

    def on_mark_picked(self, mark: str) -> None:
        """Show what is picked, from its top."""
        self._show_picked()
        if mark:
            self.area.verticalScrollBar().setValue(0)

    def refresh(self) -> None:
        """Show every value as it is now."""
        self._later.stop()
        self._show_names()
        for group in self.groups:
            group.refresh()

    def on_rebuilt(self) -> None:
        """Put the stops of Tab in reading order again."""
        stops: list[QWidget] = list(self.picked.stops)
        for group in self.groups:
            stops += [group.header, *group.form.stops]
        for first, second in pairwise(stops):
            QWidget.setTabOrder(first, second)

    def _show_names(self) -> None:
        self._show_picked()
        words = QCoreApplication.translate("Details", "Tunnel: {name}")
        self.tunnel_title.setText(words.format(name=self._session.tunnel.name))

    def _show_picked(self) -> None:
        title, items = picked_lines(self._session)
        nothing = QCoreApplication.translate(
            "Details", "Nothing is picked. Click something on the drawing or a row of a table."
        )
        self.picked_title.setText(title or nothing)
        self.picked.setVisible(bool(items))
        self.picked.show_items(items, QCoreApplication.translate("Details", "Picked"))


def _heading() -> QLabel:
    words = QLabel()
    words.setWordWrap(True)
    words.setTextFormat(Qt.TextFormat.PlainText)
    font = words.font()
    font.setBold(True)
    words.setFont(font)
    return words
