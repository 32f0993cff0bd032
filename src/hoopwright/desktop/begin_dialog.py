"""A new tunnel from five questions."""

from typing import Any

from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QLabel,
    QLineEdit,
    QVBoxLayout,
    QWidget,
)

from hoopwright.desktop.fields import ChoiceField, LengthField
from hoopwright.farm import Catalogue, Tunnel
from hoopwright.farm.begin import Answers, begin_tunnel
from hoopwright.quantity.units import Units, show

FIRST: dict[Units, dict[str, float]] = {
    "imperial": {"span_m": 7.9248, "length_m": 25.6032, "spacing_m": 1.2192},
    "metric": {"span_m": 8.0, "length_m": 24.0, "spacing_m": 1.5},
}
SHAPES = (("round", "Round bow"), ("gothic", "Gothic bow"), ("rafters", "Straight rafters"))
COVERINGS = (("roof_and_sides", "Roof and sides apart"), ("one_sheet", "One sheet"))
LEAST_WIDTH_PX = 460
LAYER_CHOICES = ((1, "One layer"), (2, "Two layers with air between"))


class BeginDialog(QDialog):
    """Asks for shape, span, length, bow spacing and layers; `tunnel` is the answer."""

    def __init__(
        self, catalogue: Catalogue, units: Units, name: str, parent: QWidget | None = None
    ) -> None:
        """Ask with common sizes filled in."""
        super().__init__(parent)
        self.setWindowTitle(self.tr("New tunnel"))
        self.setMinimumWidth(LEAST_WIDTH_PX)
        self._catalogue, self._units = catalogue, units
        self.tunnel: Tunnel | None = None
        self.name = QLineEdit(name, self)
        self.name.setAccessibleName(self.tr("Name of the tunnel"))
        self.shape = ChoiceField(self.tr("shape of the bows"), SHAPES, parent=self)
        self.layers = ChoiceField(self.tr("layers of the roof"), LAYER_CHOICES, parent=self)
        self.covering = ChoiceField(self.tr("covering"), COVERINGS, parent=self)
        self.lengths = {
            field: LengthField(label, units, parent=self)
            for field, label in (
                ("span_m", self.tr("span, tube centre to tube centre")),
                ("length_m", self.tr("length, first to last bow")),
                ("spacing_m", self.tr("bow spacing")),
            )
        }
        self.told = QLabel(self)
        self.told.setWordWrap(True)
        self._lay_out()
        self.shape.set_value("round")
        self.layers.set_value(1)
        self.covering.set_value("roof_and_sides")
        for field, value in FIRST[units].items():
            self.lengths[field].set_value(value)
            self.lengths[field].entered.connect(lambda _value: self.tell())
        self.tell()

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        form = QFormLayout()
        form.addRow(self.tr("Name"), self.name)
        form.addRow(self.tr("Shape of the bows"), self.shape)
        form.addRow(self.tr("Span (tube centres)"), self.lengths["span_m"])
        form.addRow(self.tr("Length (first to last bow)"), self.lengths["length_m"])
        form.addRow(self.tr("Bow spacing"), self.lengths["spacing_m"])
        form.addRow(self.tr("Layers of the roof"), self.layers)
        form.addRow(self.tr("Covering"), self.covering)
        column.addLayout(form)
        column.addWidget(self.told)
        buttons = QDialogButtonBox(
            QDialogButtonBox.StandardButton.Ok | QDialogButtonBox.StandardButton.Cancel
        )
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        column.addWidget(buttons)

    def answered(self) -> Tunnel:
        """Return the tunnel as answered so far; ValueError names what cannot be."""
        given: dict[str, Any] = {field: line.value for field, line in self.lengths.items()}
        given["shape"] = self.shape.value
        given["layers"] = self.layers.value
        given["covering"] = self.covering.value
        answers = Answers(name=self.name.text().strip() or self.tr("Tunnel"), **given)
        return begin_tunnel(self._catalogue, self._units, answers)

    def tell(self) -> None:
        """Say how many bows and bays the answers make, or what is the matter with them."""
        try:
            tunnel = self.answered()
        except ValueError as fault:
            self.told.setText(str(fault))
            return
        bows = tunnel.frame.bows
        count = getattr(bows, "count", 0)
        built_m = (count - 1) * getattr(bows, "spacing_m", 0.0)
        self.told.setText(
            self.tr("%1 bows make %2 bays = %3. Everything else can be changed afterwards.")
            .replace("%1", str(count))
            .replace("%2", str(count - 1))
            .replace("%3", show(built_m, "m", self._units))
        )

    def accept(self) -> None:
        """Close with the tunnel, or stay and say what is the matter."""
        try:
            self.tunnel = self.answered()
        except ValueError as fault:
            self.told.setText(str(fault))
            return
        super().accept()
