"""The ground that all entered values stand on: frozen, checked, strict about names.

One annotation on a field serves the constructor, the farm file and the forms of the window:
limits, unit and label are read from it.
"""

import math
from collections.abc import Sequence
from decimal import Decimal
from functools import cache
from typing import Any, Self

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


def _unwrap(kind: Any) -> tuple[Any, dict[str, Any]]:
    """Return the plain number type behind metadata and optionality, with its extras."""
    extra: dict[str, Any] = {}
    if isinstance(kind, msgspec.inspect.Metadata):
        extra = dict(kind.extra or {})
        extra["title"] = (kind.extra_json_schema or {}).get("title", "")
        return kind.type, extra
    if isinstance(kind, msgspec.inspect.UnionType):
        for member in kind.types:
            if not isinstance(member, msgspec.inspect.NoneType):
                return _unwrap(member)
    return kind, extra


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
    info = msgspec.inspect.type_info(kind)
    assert isinstance(info, msgspec.inspect.StructType)
    return tuple(
        f.name for f in info.fields if isinstance(_unwrap(f.type)[0], msgspec.inspect.DecimalType)
    )


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
    info = msgspec.inspect.type_info(kind)
    assert isinstance(info, msgspec.inspect.StructType)
    found = []
    for entry in info.fields:
        plain, extra = _unwrap(entry.type)
        low = high = None
        if isinstance(plain, msgspec.inspect.FloatType | msgspec.inspect.IntType):
            low = plain.ge if plain.ge is not None else -math.inf
            high = plain.le if plain.le is not None else math.inf
        optional = isinstance(entry.type, msgspec.inspect.UnionType) and any(
            isinstance(m, msgspec.inspect.NoneType) for m in entry.type.types
        )
        label = extra.get("title") or entry.name.replace("_", " ")
        found.append(Field(entry.name, label, extra.get("unit", ""), low, high, optional))
    return tuple(found)
