"""The right field for each line of a form, read from the annotation of the entered class."""

from collections.abc import Sequence
from decimal import Decimal
from functools import cache
from types import UnionType
from typing import Any, Literal, Union, get_args, get_origin, get_type_hints

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication

from hoopwright.desktop.details_edits import limits_of
from hoopwright.desktop.details_items import Entry, Special
from hoopwright.desktop.details_words import choice_words
from hoopwright.desktop.field import Field
from hoopwright.desktop.fields import (
    ChoiceField,
    CountField,
    FlagField,
    LengthField,
    MoneyField,
    NumberField,
    TextField,
)
from hoopwright.desktop.positions import PositionsField
from hoopwright.farm import Air, Catalogue, Farm, Panel, Side, Tunnel
from hoopwright.farm.change_shape import SHAPES
from hoopwright.farm.entered import Entered, describe
from hoopwright.farm.farm import fits_bar, fits_drive

# Labels of fields whose annotation is inside a tuple or that have none.
LABELS: dict[str, object] = {
    "positions_m": QT_TRANSLATE_NOOP("Farm", "position"),
    "cross_seams_m": QT_TRANSLATE_NOOP("Farm", "position from the front"),
    "units": QT_TRANSLATE_NOOP("Farm", "units"),
    "note": QT_TRANSLATE_NOOP("Farm", "note"),
}

# What an empty field means.
EMPTY: dict[str, object] = {
    "rope_step_m": QT_TRANSLATE_NOOP("Farm", "one at each bow"),
    "": QT_TRANSLATE_NOOP("Farm", "none"),
}

# Which hose is taken where none was chosen.
PLAIN_HOSE: dict[str, object] = {
    "feed_hose": QT_TRANSLATE_NOOP("Details", "the widest there is"),
    "jumper_hose": QT_TRANSLATE_NOOP("Details", "the first one listed"),
}


@cache
def _hints(owner: type[Entered]) -> dict[str, Any]:
    return get_type_hints(owner)


def plain_kind(entry: Entry) -> tuple[Any, bool]:
    """Return the type that a line holds, and whether None may stand there too."""
    kind = _hints(entry.owner)[entry.name]
    if get_origin(kind) is tuple:
        kind = get_args(kind)[0]
    if get_origin(kind) in (Union, UnionType):
        members = [m for m in get_args(kind) if m is not type(None)]
        return members[0], len(members) < len(get_args(kind))
    return kind, False


def label_of(item: Entry | Special) -> str:
    """Return what a line is called."""
    if item.label or isinstance(item, Special):
        return item.label
    known = next(k for k in describe(item.owner) if k.name == item.name)
    return QCoreApplication.translate("Farm", str(LABELS.get(item.name, known.label)))


def make_field(item: Entry | Special, name: str, farm: Farm, tunnel: Tunnel) -> Field:
    """Return an empty field for a line.

    Args:
        item: The line.
        name: What readers call it.
        farm: The farm, for units, currency and catalogue.
        tunnel: The shown tunnel, for limits that hang on it.
    """
    if isinstance(item, Special):
        return _make_special(item, name, farm)
    kind, optional = plain_kind(item)
    choices = _choices(item, kind, farm.catalogue, tunnel)
    if choices is not None:
        return ChoiceField(name, choices)
    if kind is bool:
        return FlagField(name)
    if kind is Decimal:
        return MoneyField(name, farm.money.currency)
    if kind is str:
        return TextField(name)
    return _make_number(item, name, optional, farm, tunnel)


def _make_special(item: Special, name: str, farm: Farm) -> Field:
    if item.kind == "shape":
        return ChoiceField(name, [(shape, choice_words(shape)) for shape in SHAPES.values()])
    if item.kind in ("covered", "heated"):
        return FlagField(name)
    return PositionsField(name, farm.units)


def _make_number(item: Entry, name: str, optional: bool, farm: Farm, tunnel: Tunnel) -> Field:
    between = limits_of(item, tunnel)
    unit = next(k.unit for k in describe(item.owner) if k.name == item.name)
    kind, _optional = plain_kind(item)
    if kind is int:
        return CountField(name, farm.units, between)
    made: LengthField | NumberField
    if unit in ("m", ""):
        made = LengthField(name, farm.units, between, optional)
    else:
        made = NumberField(name, unit, farm.units, between, optional)
    if optional:
        words = str(EMPTY.get(item.name, EMPTY[""]))
        made.line.setPlaceholderText(QCoreApplication.translate("Farm", words))
    return made


def _choices(
    item: Entry, kind: Any, catalogue: Catalogue, tunnel: Tunnel
) -> Sequence[tuple[object, str]] | None:
    """Return what a line offers to choose from, or None when it is typed or ticked."""
    if get_origin(kind) is Literal:
        return [(value, choice_words(value)) for value in get_args(kind)]
    films = [(film.key, film.name) for film in catalogue.films]
    if item.name in ("outer", "inner"):
        return films
    if item.name == "film" and item.owner is Side:
        return [(None, QCoreApplication.translate("Details", "as the skin says")), *films]
    if item.owner is Panel:
        return _hardware(item, catalogue, tunnel)
    if item.owner is Air:
        return _of_air(item, catalogue)
    return None


def _of_air(item: Entry, catalogue: Catalogue) -> Sequence[tuple[object, str]] | None:
    """Return the blowers or hoses of the catalogue, each list with what None stands for."""
    if item.name == "blower":
        return [(None, choice_words(None)), *((b.key, b.name) for b in catalogue.blowers)]
    if item.name not in PLAIN_HOSE:
        return None
    plain = QCoreApplication.translate("Details", str(PLAIN_HOSE[item.name]))
    return [(None, plain), *((h.key, h.name) for h in catalogue.hoses)]


def _hardware(item: Entry, catalogue: Catalogue, tunnel: Tunnel) -> Sequence[tuple[object, str]]:
    """Return the bars or drives that fit the kind of side a curtain hangs on."""
    side = item.path[1]
    assert isinstance(side, int)
    kind = tunnel.sides[side].kind
    if item.name == "bar":
        return [(bar.key, bar.name) for bar in catalogue.bars if fits_bar(kind, bar)]
    return [(drive.key, drive.name) for drive in catalogue.drives if fits_drive(kind, drive)]
