"""The right field for each line of a form, read from the annotation of the entered class."""

from decimal import Decimal
from functools import cache
from types import UnionType
from typing import Any, Union, get_args, get_origin, get_type_hints

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication

from hoopwright.desktop.details_choices import Choices, choices_of, special_choices
from hoopwright.desktop.details_edits import limits_of
from hoopwright.desktop.details_items import Entry, Special
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
from hoopwright.farm import Farm, Tunnel
from hoopwright.farm.entered import Entered, describe

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
    "left_m": QT_TRANSLATE_NOOP("Farm", "spread evenly"),
    "from_bow": QT_TRANSLATE_NOOP("Farm", "from the front"),
    "to_bow": QT_TRANSLATE_NOOP("Farm", "to the end"),
    "outlets": QT_TRANSLATE_NOOP("Farm", "as it takes"),
    "": QT_TRANSLATE_NOOP("Farm", "none"),
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


def choices_for(item: Entry | Special, farm: Farm, tunnel: Tunnel) -> Choices | None:
    """Return what a line offers to choose from, or None when it is typed, ticked or listed."""
    if isinstance(item, Special):
        return special_choices(item)
    return choices_of(item, plain_kind(item)[0], farm, tunnel)


def make_field(item: Entry | Special, name: str, farm: Farm, tunnel: Tunnel) -> Field:
    """Return an empty field for a line.

    Args:
        item: The line.
        name: What readers call it.
        farm: The farm, for units, currency and catalogue.
        tunnel: The shown tunnel, for limits that hang on it.
    """
    choices = choices_for(item, farm, tunnel)
    if choices is not None:
        return ChoiceField(name, choices)
    if isinstance(item, Special):
        return PositionsField(name, farm.units) if item.kind == "positions" else FlagField(name)
    kind, optional = plain_kind(item)
    if kind is bool:
        return FlagField(name)
    if kind is Decimal:
        return MoneyField(name, farm.money.currency)
    if kind is str:
        return TextField(name)
    return _make_number(item, name, optional, farm, tunnel)


def _make_number(item: Entry, name: str, optional: bool, farm: Farm, tunnel: Tunnel) -> Field:
    between = limits_of(item, tunnel)
    unit = next(k.unit for k in describe(item.owner) if k.name == item.name)
    kind, _optional = plain_kind(item)
    made: LengthField | NumberField
    if kind is int:
        made = CountField(name, farm.units, between, optional)
    elif unit in ("m", ""):
        made = LengthField(name, farm.units, between, optional)
    else:
        made = NumberField(name, unit, farm.units, between, optional)
    if optional:
        words = str(EMPTY.get(item.name, EMPTY[""]))
        made.line.setPlaceholderText(QCoreApplication.translate("Farm", words))
    return made
