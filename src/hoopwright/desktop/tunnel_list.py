"""The list of the farm's tunnels: switch, add, copy, rename, remove."""

from collections.abc import Callable

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QComboBox,
    QHBoxLayout,
    QInputDialog,
    QLabel,
    QPushButton,
    QWidget,
)

from hoopwright.desktop.session import Session
from hoopwright.farm.change import add_tunnel, remove_tunnel


class TunnelList(QWidget):
    """One line with the tunnels and what can be done with them.

    Signals:
        new_wanted(): When the user asks for another tunnel.
    """

    new_wanted = Signal()

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        """Show the tunnels of a session."""
        super().__init__(parent)
        self._session = session
        self.ask_name: Callable[[str], tuple[str, bool]] = self._ask_name
        row = QHBoxLayout(self)
        row.setContentsMargins(6, 2, 6, 2)
        label = QLabel(self.tr("Tunnel"), self)
        row.addWidget(label)
        self.box = QComboBox(self)
        self.box.setAccessibleName(self.tr("Tunnel shown"))
        self.box.setMinimumContentsLength(16)
        label.setBuddy(self.box)
        self.box.activated.connect(session.show_tunnel)
        row.addWidget(self.box)
        for text, tip, act in (
            (self.tr("Add…"), self.tr("Add a tunnel by five questions"), self.new_wanted.emit),
            (self.tr("Copy"), self.tr("Add a copy of this tunnel"), self.copy),
            (self.tr("Rename…"), self.tr("Give this tunnel another name"), self.rename),
            (self.tr("Remove"), self.tr("Take this tunnel out of the farm"), self.remove),
        ):
            button = QPushButton(text, self)
            button.setToolTip(tip)
            button.clicked.connect(lambda _checked=False, act=act: act())
            row.addWidget(button)
        row.addStretch(1)
        session.farm_changed.connect(self.refresh)
        session.tunnel_shown.connect(self.refresh)
        self.refresh()

    def refresh(self, *_told: object) -> None:
        """Fill the list anew when names or choice changed."""
        names = [t.name for t in self._session.farm.tunnels]
        if [self.box.itemText(i) for i in range(self.box.count())] != names:
            self.box.clear()
            self.box.addItems(names)
        self.box.setCurrentIndex(self._session.index)

    def copy(self) -> None:
        """Add a copy of the tunnel shown, and show it."""
        farm = add_tunnel(self._session.farm, self._session.tunnel)
        self._session.apply(farm, self.tr("Copy tunnel"))
        self._session.show_tunnel(len(farm.tunnels) - 1)

    def rename(self) -> None:
        """Ask for another name."""
        name, wanted = self.ask_name(self._session.tunnel.name)
        if not wanted:
            return
        try:
            self._session.apply_tunnel(
                self._session.tunnel.but(name=name.strip()), self.tr("Rename tunnel")
            )
        except ValueError as fault:
            self._session.noticed.emit("fault", str(fault))

    def remove(self) -> None:
        """Take the tunnel shown out of the farm; undo brings it back."""
        try:
            farm = remove_tunnel(self._session.farm, self._session.index)
        except ValueError as fault:
            self._session.noticed.emit("fault", str(fault))
            return
        self._session.apply(farm, self.tr("Remove tunnel"))

    def _ask_name(self, name: str) -> tuple[str, bool]:
        return QInputDialog.getText(
            self, self.tr("Rename tunnel"), self.tr("Name of the tunnel"), text=name
        )
