"""What one place of the tunnel needs of one part. The stage function is `count_parts`."""

from dataclasses import dataclass

from hoopwright.quantity.working import Phrase, Working


@dataclass(frozen=True, slots=True, kw_only=True)
class Need:
    """A quantity of one part for one place.

    Attributes:
        part: Catalogue key of the part.
        quantity: Metres of run or number of pieces, as the part is counted.
        where: Where it goes, in words.
        marks: Places on the canvas.
        working: How the quantity was got.
    """

    part: str
    quantity: float
    where: Phrase
    marks: tuple[str, ...]
    working: Working
