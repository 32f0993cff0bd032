"""How a number was got, and sentences that carry numbers.

The model computes in SI and does not know which units its reader likes. A sentence with
numbers in it is therefore kept as a `Phrase`: a template and the values that belong in it.
The view turns it into words in the reader's units with `words`.
"""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Any

from msgspec import Struct

from hoopwright.quantity.units import Units, show

Value = float | int | str | Decimal

DERIVED = "derived here from the geometry"
PRACTICE = "common practice, no published source"
ENTERED = "the user's entry"
INVENTED = "invented demo price"


class Term(Struct, frozen=True):
    """One named value with its unit.

    Attributes:
        name: What it is, in words of the trade.
        value: The number in SI, or a text.
        unit: Unit code of `quantity.units.show`, for example "m" or "N m".
    """

    name: str
    value: Value
    unit: str


class Phrase(Struct, frozen=True):
    """A sentence whose numbers are still in SI.

    Attributes:
        template: Text with `{name}` where a term belongs.
        terms: The terms; their names are the names in the template.
    """

    template: str
    terms: tuple[Term, ...] = ()


@dataclass(frozen=True, slots=True)
class Working:
    """How one figure was got.

    Attributes:
        figure: Name of the field it explains, with its unit, for example `width_m`.
        rule: The rule in words.
        inputs: What went in, with units.
        source: Where the rule comes from.
    """

    figure: str
    rule: str
    inputs: tuple[Term, ...] = ()
    source: str = DERIVED


class LaterWorkings(Sequence[Working]):
    """Workings that are written when somebody asks for them: a drag makes results nobody reads."""

    __slots__ = ("_made", "_make")

    def __init__(self, make: Callable[[], tuple[Working, ...]]) -> None:
        """Keep the function that writes them."""
        self._make = make
        self._made: tuple[Working, ...] | None = None

    def _written(self) -> tuple[Working, ...]:
        if self._made is None:
            self._made = self._make()
        return self._made

    def __getitem__(self, index: Any) -> Any:
        """Return one working, or some of them."""
        return self._written()[index]

    def __iter__(self) -> Iterator[Working]:
        """Walk the workings."""
        return iter(self._written())

    def __len__(self) -> int:
        """Return how many there are."""
        return len(self._written())


@dataclass(frozen=True, slots=True, kw_only=True)
class Explained:
    """A result whose numbers can say how they were got.

    Attributes:
        workings: One working for each number of the result; two results are equal when their
            numbers are.
    """

    workings: Sequence[Working] = field(
        default=(), repr=False, compare=False, metadata={"told": True}
    )

    def working(self, figure: str) -> Working:
        """Return how one figure was got.

        Args:
            figure: Name of the field.

        Raises:
            KeyError: No working was kept for that field.
        """
        for working in self.workings:
            if working.figure == figure:
                return working
        raise KeyError(figure)


def phrase(template: str, /, **terms: tuple[Value, str] | Value) -> Phrase:
    """Return a phrase; each keyword is a value with its unit code, or a plain text or count."""
    made = []
    for name, given in terms.items():
        if isinstance(given, tuple):
            made.append(Term(name, given[0], given[1]))
        else:
            made.append(Term(name, given, "text" if isinstance(given, str) else "count"))
    return Phrase(template, tuple(made))


def words(text: Phrase, units: Units) -> str:
    """Return the sentence in the reader's units."""
    if not text.terms:
        return text.template
    said = text.template.format(**{t.name: show(t.value, t.unit, units) for t in text.terms})
    # A unit may end in a full stop of its own.
    return said.replace("w.c..", "w.c.") if "w.c.." in said else said


def explain(working: Working, units: Units) -> str:
    """Return a working as lines of text: the rule, its inputs, its source."""
    inputs = "; ".join(_inputs(working.inputs, units))
    lines = [working.rule]
    if inputs:
        lines.append(f"From: {inputs}")
    lines.append(f"Source: {working.source}")
    return "\n".join(lines)


def _inputs(terms: Iterable[Term], units: Units) -> Iterable[str]:
    return (f"{t.name} {show(t.value, t.unit, units)}" for t in terms)
