"""What a form shows, line by line: entered values, acts, headings, hints, cautions, figures.

Lines are values. Two forms of equal shape differ only in what stands in their fields, so an edit
that adds or removes nothing only fills the fields anew.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Literal

from msgspec import Struct

from hoopwright.farm.change import FieldPath
from hoopwright.farm.entered import Entered, describe
from hoopwright.papers.cautions import Caution
from hoopwright.quantity.units import Units, show, unit_label
from hoopwright.quantity.working import Explained, Working

Root = Literal["tunnel", "farm"]
SpecialKind = Literal[
    "shape", "taken", "positions", "end_cover", "heated", "rain", "shade", "screen"
]
Shown = float | int | str | Decimal | tuple[float, ...]


class Entry(Struct, frozen=True):
    """One entered value.

    Attributes:
        root: Whether the path starts at the shown tunnel or at the farm.
        path: Where it stands.
        owner: Class that holds the field.
        name: Name of the field in its class.
        label: What to call it here, or "" for the label of its class.
    """

    root: Root
    path: FieldPath
    owner: type[Entered]
    name: str
    label: str = ""


class Special(Struct, frozen=True):
    """A value that is entered as one and stands in several places.

    Attributes:
        kind: `shape` of the bows, how a point of a measured bow was `taken`, `positions` of the
            bows, `end_cover` that closes an end wall, whether there is heat (`heated`), `rain`,
            `shade`, insect `screen`.
        place: Which point, end or side it is, else 0.
        label: What people call it.
    """

    kind: SpecialKind
    place: int
    label: str


class Act(Struct, frozen=True):
    """Something to do to the tunnel.

    Attributes:
        kind: Name in the table of acts.
        places: Which side, split, seam, end, door.
        text: What the button says and the undo step is called.
    """

    kind: str
    places: tuple[int, ...]
    text: str


class Heading(Struct, frozen=True):
    """Words above a part of a form.

    Attributes:
        text: The words.
    """

    text: str


class Hint(Struct, frozen=True):
    """Words that tell how something is meant.

    Attributes:
        text: The words.
    """

    text: str


@dataclass(frozen=True, slots=True)
class Figure:
    """A figure of the plan; figures of one label are the same line of a form.

    Attributes:
        label: What it is.
        text: The figure with its unit.
        working: How it was got, or None where there is nothing to tell.
    """

    label: str
    text: str = field(compare=False)
    working: Working | None = field(default=None, compare=False)


Item = Entry | Special | Act | Heading | Hint | Figure | Caution


def entries(root: Root, path: FieldPath, thing: Entered, *names: str) -> Iterator[Entry]:
    """Return a line for each named field of an entered value, or for all of its plain fields."""
    for known in describe(type(thing)):
        if names and known.name not in names:
            continue
        if not names and isinstance(getattr(thing, known.name), tuple | Entered):
            continue
        yield Entry(root, (*path, known.name), type(thing), known.name)


def figure(label: str, value: Shown, unit: str, units: Units, working: Working | None) -> Figure:
    """Return a figure in the reader's units; several values of one figure share the unit."""
    values = value if isinstance(value, tuple) else (value,)
    texts = [show(one, unit, units) for one in values]
    said = unit_label(unit, units)
    if said:
        texts[:-1] = [text.removesuffix(said).rstrip() for text in texts[:-1]]
    return Figure(label, " · ".join(texts), working)


def explained(thing: Explained, name: str) -> Working | None:
    """Return how a figure of a result was got, or None when no working was kept."""
    return next((w for w in thing.workings if w.figure == name), None)


def figures(
    thing: Explained, rows: Iterable[tuple[str, str, str]], units: Units
) -> Iterator[Figure]:
    """Return figures of a result: name of the field, unit code and label of each."""
    for name, unit, label in rows:
        yield figure(label, getattr(thing, name), unit, units, explained(thing, name))
