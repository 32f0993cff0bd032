"""Which girth the film is planned by: the longest as read, else what the profile gives."""

from dataclasses import dataclass

from hoopwright.quantity.working import Term
from hoopwright.survey.girths import WAYS
from hoopwright.survey.heights import Along
from hoopwright.survey.taped import GirthSpread, Taped


@dataclass(frozen=True, slots=True)
class Girth:
    """A girth that the film is planned by.

    Attributes:
        length_m: Its length, m.
        bow: Bow where it was read, 1 at the front; None when it was not.
        rule: How it was got, in words.
        inputs: What went in.
    """

    length_m: float
    bow: int | None
    rule: str
    inputs: tuple[Term, ...]


def roof_girth(taped: Taped, along: tuple[Along, Along]) -> Girth:
    """Return the girth over the roof, from hip seam to hip seam.

    Args:
        taped: What the readings come to.
        along: Where the boards lie on each bow.

    Source:
        The longest of several readings governs: common practice, no published source.
    """
    if taped.hips is not None:
        return _as_read(taped.hips)
    sides_m = list(zip(along[0].sides_m, along[1].sides_m, strict=True))
    if taped.baseboards is not None:
        length_m, bow = max(
            (r.length_m - sum(sides_m[r.bow - 1]), -r.bow) for r in taped.baseboards.readings
        )
        return Girth(
            length_m,
            -bow,
            f"Girth as read over bow {-bow} from baseboard to baseboard, less both sides along "
            "that bow from hip board to baseboard: of the bows that were read the one where most "
            "is left governs.",
            (*_read(taped.baseboards), *_sides(sides_m[-bow - 1])),
        )
    hips_m = list(zip(along[0].hips_m, along[1].hips_m, strict=True))
    first_m, second_m = max(hips_m, key=lambda pair: pair[1] - pair[0])
    return Girth(
        second_m - first_m,
        None,
        "Over the outside of the bow from the hip seam on one side to that on the other, at the "
        "bow where that is longest.",
        (
            Term("hip along the bow, first side", first_m, "m"),
            Term("hip along the bow, second side", second_m, "m"),
        ),
    )


def whole_girth(taped: Taped, roof: Girth, sides_m: tuple[float, float]) -> Girth:
    """Return the girth from baseboard to baseboard.

    Args:
        taped: What the readings come to.
        roof: Girth over the roof.
        sides_m: From hip board to baseboard on each side, m.
    """
    if taped.baseboards is not None:
        return _as_read(taped.baseboards)
    return Girth(
        roof.length_m + sum(sides_m),
        roof.bow,
        "Over the roof from hip seam to hip seam, and on each side down to the baseboard.",
        (Term("roof", roof.length_m, "m"), *_sides(sides_m)),
    )


def _as_read(spread: GirthSpread) -> Girth:
    bow = spread.governing_bow
    rule = f"Over bow {bow} from {WAYS[spread.over]}, as read: the longest of the girths governs"
    if any(r.outlier for r in spread.readings if r.bow == bow):
        rule += ", though it is an outlier; until that bow is measured again it counts"
    return Girth(spread.governing_m, bow, rule + ".", _read(spread))


def _read(spread: GirthSpread) -> tuple[Term, ...]:
    return tuple(Term(f"bow {r.bow}", r.length_m, "m") for r in spread.readings)


def _sides(sides_m: tuple[float, float]) -> tuple[Term, Term]:
    first_m, second_m = sides_m
    return Term("first side", first_m, "m"), Term("second side", second_m, "m")
