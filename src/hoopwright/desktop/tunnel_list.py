"""The list of the farm's tunnels: which one is shown, and what can be done with it."""

from collections.abc import Sequence

from PySide6.QtCore import QSignalBlocker
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QLabel, QMenu, QToolButton, QWidget

from hoopwright.desktop.session import Session
from hoopwright.farm import Farm


class TunnelList(QWidget):
    """The tunnels of a farm, and a menu beside them."""

    def __init__(
        self, session: Session, acts: Sequence[QAction], parent: QWidget | None = None
    ) -> None:
        """Show the tunnels of a session, with the acts of its menu."""
        super().__init__(parent)
        self._session = session
        label = QLabel(self.tr("Tunnel"))
        self.box = QComboBox()
        self.box.setAccessibleName(self.tr("Tunnel shown"))
        self.box.setSizeAdjustPolicy(
            QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
        )
        self.box.setMinimumContentsLength(14)
        label.setBuddy(self.box)
        self.more = QToolButton()
        self.more.setText("+ …")
        self.more.setToolTip(self.tr("Add, copy, rename or remove a tunnel"))
        self.more.setAccessibleName(self.tr("Add, copy, rename or remove a tunnel"))
        self.more.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        menu = QMenu(self.more)
        menu.addActions(list(acts))
        self.more.setMenu(menu)
        row = QHBoxLayout(self)
        row.setContentsMargins(6, 0, 6, 0)
        for widget in (label, self.box, self.more):
            row.addWidget(widget)
        self.setFocusProxy(self.box)
        self.box.activated.connect(session.show_tunnel)
        session.farm_changed.connect(self.on_farm_changed)
        session.tunnel_shown.connect(self.on_tunnel_shown)
        self.refresh()

    def on_farm_changed(self, _before: Farm, _after: Farm) -> None:
        """Show the tunnels as they are called now."""
        self.refresh()

    def on_tunnel_shown(self, _index: int) -> None:
        """Show which tunnel is shown."""
        self.refresh()

    def refresh(self) -> None:
        """Fill the list anew when the names changed."""
        names = [t.name for t in self._session.farm.tunnels]
        with QSignalBlocker(self.box):
            if [self.box.itemText(i) for i in range(self.box.count())] != names:
                self.box.clear()
                self.box.addItems(names)
            self.box.setCurrentIndex(self._session.index)
