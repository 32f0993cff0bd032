"""What one place of the tunnel needs of one part. The stage function is `count_parts`."""

from dataclasses import dataclass

from hoopwright.farm.condition import State, Where
from hoopwright.quantity.working import Phrase, Working


@dataclass(frozen=True, slots=True)
class Place:
    """Where something sits: a part of the tunnel and a stretch along it.

    Attributes:
        part: Part of the tunnel; everywhere when it belongs to the tunnel as a whole.
        from_m: Start along the tunnel from the first bow, m.
        to_m: End of it, m; the same where it sits at one bow.
    """

    part: Where
    from_m: float
    to_m: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Need:
    """A quantity of one part for one place.

    Attributes:
        part: Catalogue key of the part.
        quantity: Metres of run or number of pieces, as the part is counted.
        where: Where it goes, in words.
        marks: Places on the canvas.
        working: How the quantity was got.
        place: Where it sits along the tunnel, when the mark does not tell it.
        kept: What stays of it and is not bought, in the same unit.
        state: Keep or repair when something of it stays, else replace.
        kept_working: How that was got, or None when nothing stays.
    """

    part: str
    quantity: float
    where: Phrase
    marks: tuple[str, ...]
    working: Working
    place: Place | None = None
    kept: float = 0.0
    state: State = "replace"
    kept_working: Working | None = None

    @property
    def bought(self) -> float:
        """What is bought of it, in the same unit."""
        return self.quantity - self.kept
