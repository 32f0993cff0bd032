"""The ground that all entered values stand on: frozen, checked, strict about names.

One annotation on a field serves the constructor, the farm file and the forms of the window:
limits, unit and label are read from it.
"""

import math
from collections.abc import Sequence
from decimal import Decimal
from functools import cache
from types import NoneType, UnionType
from typing import Annotated, Any, Self, Union, get_args, get_origin, get_type_hints

import msgspec
from msgspec import Meta, Struct

from hoopwright.farm.entry_error import EntryError

MONEY_LIMIT = Decimal("100000000")


class Entered(Struct, frozen=True, kw_only=True, forbid_unknown_fields=True, cache_hash=True):
    """Base of everything people enter.

    Raises:
        ValueError: A number is outside the limits of its field, not finite, or not a number.
    """

    def __post_init__(self) -> None:
        """Check every number against the limits written at its field."""
        for name, low, high, unit, label, optional in _limits(type(self)):
            value = getattr(self, name)
            if value is None and optional:
                continue
            if type(value) not in (int, float) or not low <= value <= high:
                raise _outside(name, label, unit, (low, high), value)
        for name in _amounts(type(self)):
            amount = getattr(self, name)
            if not isinstance(amount, Decimal) or not amount.is_finite():
                raise ValueError(f"{name} must be an amount of money such as 12.50")
            if not 0 <= amount <= MONEY_LIMIT:
                raise ValueError(
                    f"{name} must be an amount of money from 0 to {MONEY_LIMIT}, not {amount}"
                )

    def but(self, **changes: Any) -> Self:
        """Return a copy with some fields changed, checked again."""
        return msgspec.structs.replace(self, **changes)


def _outside(
    name: str, label: str, unit: str, limits: tuple[float, float], value: object
) -> EntryError:
    """Return why a number is refused that is none, or outside its limits."""
    plain = unit or "ratio"
    real = isinstance(value, int | float) and not isinstance(value, bool) and math.isfinite(value)
    return EntryError(
        name,
        "{label} must be from {low} to {high}, not {value}",
        label=label,
        low=(limits[0], plain),
        high=(limits[1], plain),
        value=(value, plain) if real and isinstance(value, int | float) else repr(value),
    )


def measure(label: str, unit: str, low: float, high: float) -> Meta:
    """Return what stands at a number's annotation: label, SI unit and inclusive limits."""
    return Meta(ge=low, le=high, title=label, extra={"unit": unit})


def choice(label: str) -> Meta:
    """Return what stands at the annotation of a choice or a text: its label."""
    return Meta(title=label)


def _alone(kind: Any) -> tuple[Any, Meta | None, bool]:
    """Return the type behind metadata and optionality, its metadata, and whether it is optional."""
    if get_origin(kind) is Annotated:
        return get_args(kind)[0], kind.__metadata__[0], False
    if get_origin(kind) in (Union, UnionType):
        members = [member for member in get_args(kind) if member is not NoneType]
        plain, meta, _ = _alone(members[0])
        return plain, meta, len(members) < len(get_args(kind))
    return kind, None, False


@cache
def _kinds(kind: type[Struct]) -> tuple[tuple[str, Any, Meta | None, bool], ...]:
    """Return name, plain type, metadata and optionality of each field, as annotated.

    The types inside a field are left alone: reading them too would be half the time it takes to
    open a farm.
    """
    hints = get_type_hints(kind, include_extras=True)
    return tuple((name, *_alone(hints[name])) for name in kind.__struct_fields__)


@cache
def _limits(kind: type[Struct]) -> tuple[tuple[str, float, float, str, str, bool], ...]:
    found = []
    for entry in describe(kind):
        if entry.low is not None and entry.high is not None:
            found.append(
                (entry.name, entry.low, entry.high, entry.unit, entry.label, entry.optional)
            )
    return tuple(found)


@cache
def _amounts(kind: type[Struct]) -> tuple[str, ...]:
    return tuple(name for name, plain, _meta, _optional in _kinds(kind) if plain is Decimal)


class Field(Struct, frozen=True):
    """What a form needs to know about one entered number.

    Attributes:
        name: Field name in the class and the file.
        label: What people call it.
        unit: SI unit code, or "" when it has none.
        low: Least value, or None when the field is not a number.
        high: Greatest value, or None.
        optional: Whether None may stand there.
    """

    name: str
    label: str
    unit: str
    low: float | None
    high: float | None
    optional: bool


@cache
def describe(kind: type[Struct]) -> Sequence[Field]:
    """Return the fields of an entered class in order, with labels, units and limits."""
    found = []
    for name, plain, meta, optional in _kinds(kind):
        low = high = None
        if plain in (float, int):
            low = meta.ge if meta is not None and meta.ge is not None else -math.inf
            high = meta.le if meta is not None and meta.le is not None else math.inf
        label = (meta.title if meta is not None else None) or name.replace("_", " ")
        unit = (meta.extra or {}).get("unit", "") if meta is not None else ""
        found.append(Field(name, label, unit, low, high, optional))
    return tuple(found)
