"""A new tunnel, or a new farm with its first tunnel, from five questions."""

from collections.abc import Sequence
from functools import partial
from typing import Any

from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QHBoxLayout,
    QLabel,
    QVBoxLayout,
    QWidget,
)

from hoopwright.desktop.bow_picture import BowPicture
from hoopwright.desktop.field import Between, LineField, refusal_words
from hoopwright.desktop.fields import ChoiceField, LengthField, TextField
from hoopwright.farm import Catalogue, EvenBows, Farm, Tunnel
from hoopwright.farm.begin import Answers, begin_tunnel
from hoopwright.farm.change import whole_bays
from hoopwright.farm.entered import describe
from hoopwright.quantity.units import Units, format_length

FIRST: dict[Units, dict[str, float]] = {
    "imperial": {"span_m": 9.144, "length_m": 29.2608, "spacing_m": 1.2192},
    "metric": {"span_m": 8.0, "length_m": 24.0, "spacing_m": 1.5},
}
SHAPES = (
    ("round", "Round bow"),
    ("gothic", "Gothic bow, pointed at the ridge"),
    ("rafters", "Straight rafters"),
)
LAYERS = (
    (1, "One layer"),
    (2, "Two layers with air between"),
)
COVERINGS = (
    ("roof_and_sides", "Roof and sides apart"),
    ("one_sheet", "One sheet, baseboard to baseboard"),
)
WIDEST_CHOICE = 28
UNITS = (
    ("imperial", "Feet and inches"),
    ("metric", "Metres"),
)
LENGTHS = {
    "span_m": "2  Span, between tube centres at the ground",
    "length_m": "3  Length, first to last bow",
    "spacing_m": "4  From bow to bow",
}


def _said(text: str) -> str:
    return QCoreApplication.translate("Begin", text)


class BeginDialog(QDialog):
    """Asks for shape, span, length, bow spacing and layers.

    Attributes:
        tunnel: The tunnel that was answered, or None until then.
    """

    def __init__(
        self,
        catalogue: Catalogue,
        units: Units,
        name: str,
        parent: QWidget | None = None,
        with_farm: bool = False,
    ) -> None:
        """Ask with common sizes filled in; with_farm asks for the farm's name and units too."""
        super().__init__(parent)
        self.setWindowTitle(_said("New farm") if with_farm else _said("New tunnel"))
        self.tunnel: Tunnel | None = None
        self._catalogue = catalogue
        self.farm_name = TextField(_said("Name of the farm"))
        self.farm_name.set_value(_said("My farm"))
        self._units: Units = units
        self.units = _choice(_said("Units"), UNITS, units)
        self.name = TextField(_said("Name of the tunnel"))
        self.name.set_value(name)
        self.shape = _choice(_said("Shape of the bows"), SHAPES, "round")
        self.layers = _choice(_said("Layers of the roof"), LAYERS, 1)
        self.covering = _choice(_said("Covering"), COVERINGS, "roof_and_sides")
        self.lengths: dict[str, LengthField] = {}
        self.picture = BowPicture()
        self.told = QLabel()
        self.told.setWordWrap(True)
        self._form = QFormLayout()
        self._form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapLongRows)
        self._form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.AllNonFixedFieldsGrow)
        self._lay_out(with_farm)
        self._chosen: dict[str, object] = {
            "shape": "round",
            "layers": 1,
            "covering": "roof_and_sides",
        }
        for key, field in self._choices().items():
            field.entered.connect(partial(self.on_chosen, key))
        self.name.entered.connect(self.on_answered)
        self.units.entered.connect(self.on_units_chosen)
        self.tell()

    def _lay_out(self, with_farm: bool) -> None:
        form = self._form
        if with_farm:
            form.addRow(_said("Farm"), self.farm_name)
            form.addRow(_said("Units"), self.units)
        form.addRow(_said("Tunnel"), self.name)
        form.addRow(_said("1  Shape of the bows"), self.shape)
        self._first_length_row = form.rowCount()
        self._ask_lengths(dict(FIRST[self._units]))
        form.addRow(_said("5  Layers of the roof"), self.layers)
        form.addRow(_said("Covering"), self.covering)
        beside = QHBoxLayout()
        beside.addLayout(form, 1)
        beside.addWidget(self.picture)
        buttons = QDialogButtonBox(
            QDialogButtonBox.StandardButton.Ok | QDialogButtonBox.StandardButton.Cancel
        )
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        column = QVBoxLayout(self)
        column.addLayout(beside)
        column.addWidget(self.told)
        column.addStretch(1)
        column.addWidget(buttons)

    def _choices(self) -> dict[str, ChoiceField]:
        return {"shape": self.shape, "layers": self.layers, "covering": self.covering}

    def _ask_lengths(self, sizes: dict[str, float]) -> None:
        """Put three fields for lengths into the form, in the chosen units."""
        limits = {known.name: known for known in describe(Answers)}
        for offset, (key, label) in enumerate(LENGTHS.items()):
            known = limits[key]
            assert known.low is not None
            assert known.high is not None
            between = Between(known.low, known.high)
            field = LengthField(known.label, self._units, between)
            field.set_value(sizes[key])
            field.entered.connect(self.on_answered)
            self.lengths[key] = field
            self._form.insertRow(self._first_length_row + offset, _said(label), field)

    def on_chosen(self, key: str, value: object) -> None:
        """Show what another choice makes."""
        self._chosen[key] = value
        self.tell()

    def on_units_chosen(self, units: object) -> None:
        """Ask for the lengths in other units; common sizes become the common ones there."""
        other, self._units = self._units, "metric" if units == "metric" else "imperial"
        sizes = {}
        for key, field in self.lengths.items():
            value = field.value
            assert isinstance(value, float)
            sizes[key] = FIRST[self._units][key] if value == FIRST[other][key] else value
        for _key in LENGTHS:
            self._form.removeRow(self._first_length_row)
        self._ask_lengths(sizes)
        self.tell()

    def on_answered(self, _value: object) -> None:
        """Show what the answers make by now."""
        self.tell()

    def farm(self) -> Farm:
        """Return a farm with the answered tunnel; units and name are as answered too."""
        assert self.tunnel is not None
        return Farm(
            name=str(self.farm_name.value),
            units=self._units,
            note="",
            tunnels=(self.tunnel,),
            catalogue=self._catalogue,
        )

    def answered(self) -> Tunnel:
        """Return the tunnel as answered so far.

        Raises:
            ValueError: The answers make none; the message begins with the name of a field.
        """
        lengths = {key: field.value for key, field in self.lengths.items()}
        answers: dict[str, Any] = {"name": self.name.value, **self._chosen, **lengths}
        return begin_tunnel(self._catalogue, self._units, Answers(**answers))

    def tell(self) -> bool:
        """Say what the answers make, or what is the matter; return whether all is well."""
        for field in self.lengths.values():
            if not field.line.isModified():
                field.say("")
        try:
            tunnel = self.answered()
        except ValueError as fault:
            self._refuse(fault)
            return False
        self.picture.show_frame(tunnel.frame)
        self.told.setText(bows_told(tunnel, self._units))
        return True

    def _refuse(self, fault: ValueError) -> None:
        """Show a refusal at the field it names, else below the form."""
        self.picture.show_frame(None)
        self.told.setText(refusal_words(fault, self._units))
        name = str(fault).partition(":")[0]
        fields: dict[str, LineField] = {**self.lengths, "name": self.name}
        if name in fields:
            fields[name].show_refusal(refusal_words(fault, self._units))

    def accept(self) -> None:
        """Close with the tunnel, or stay at the field that is still to be mended."""
        typed = (self.farm_name, self.name, *self.lengths.values())
        wrong = next((field for field in typed if field.line.isModified()), None)
        if wrong is not None:
            wrong.setFocus()
        elif self.tell():
            self.tunnel = self.answered()
            super().accept()


def _choice(name: str, choices: Sequence[tuple[object, str]], chosen: object) -> ChoiceField:
    field = ChoiceField(name, [(value, _said(words)) for value, words in choices])
    field.box.setMinimumContentsLength(WIDEST_CHOICE)
    field.set_value(chosen)
    return field


def bows_told(tunnel: Tunnel, units: Units) -> str:
    """Return how many bows and bays a tunnel has, and whether they make its length."""
    bows = tunnel.frame.bows
    assert isinstance(bows, EvenBows)
    bays = bows.count - 1
    built = format_length(bays * bows.spacing_m, units)
    words = _said("{bows} bows, {bays} bays, {built} from the first to the last bow.")
    told = words.format(bows=bows.count, bays=bays, built=built)
    if whole_bays(tunnel.frame) is None:
        length = format_length(tunnel.frame.length_m, units)
        differs = _said("That is not the length of {length}: measure the spacing again.")
        return f"{told} {differs.format(length=length)}"
    return f"{told} {_said('Everything can be changed afterwards.')}"
