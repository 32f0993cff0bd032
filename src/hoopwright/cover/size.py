"""A cut size and the terms it adds up from."""

from dataclasses import dataclass

from hoopwright.quantity.working import Term, Working

Part = tuple[str, float]

SUMMED = "derived here from the geometry; tails, laps and wraps are the user's entry"


@dataclass(frozen=True, slots=True)
class Size:
    """One size of a sheet.

    Attributes:
        rule: How it adds up, in words.
        parts: Name and length of each summand, m.
    """

    rule: str
    parts: tuple[Part, ...]

    @property
    def total_m(self) -> float:
        """Return the sum of the parts, m."""
        return sum(length_m for _, length_m in self.parts)

    @property
    def terms(self) -> tuple[Term, ...]:
        """Return the parts as terms."""
        return tuple(Term(name, length_m, "m") for name, length_m in self.parts)

    def working(self, figure: str) -> Working:
        """Return the size as the working of a figure."""
        return Working(figure, self.rule, self.terms, SUMMED)


def add_up(rule: str, *parts: Part) -> Size:
    """Return a size; what adds nothing is left out."""
    return Size(rule, tuple(part for part in parts if part[1] != 0) or parts[:1])
