"""Which girth the film is planned by: the longest as read, else what the profile gives."""

from msgspec import Struct

from hoopwright.quantity.working import Term
from hoopwright.survey.girths import WAYS
from hoopwright.survey.heights import Along
from hoopwright.survey.taped import GirthReading, GirthSpread, Over, Taped


class Girth(Struct, frozen=True):
    """A girth that the film is planned by.

    Attributes:
        length_m: Its length, m.
        bow: Bow where it was read, 1 at the front; None when it was not.
        over: Lines between which it was read there; None when it was not.
        rule: How it was got, in words.
        inputs: What went in.
    """

    length_m: float
    bow: int | None
    over: Over | None
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
    at_hips = None if taped.hips is None else _as_read(taped.hips)
    found = [girth for girth in (at_hips, _from_bases(taped, along)) if girth is not None]
    if found:
        return max(found, key=lambda girth: girth.length_m)
    hips_m = list(zip(along[0].hips_m, along[1].hips_m, strict=True))
    first_m, second_m = max(hips_m, key=lambda pair: pair[1] - pair[0])
    return Girth(
        second_m - first_m,
        None,
        None,
        "Over the outside of the bow from the hip seam on one side to that on the other, at the "
        "bow where that is longest.",
        (
            Term("hip along the bow, first side", first_m, "m"),
            Term("hip along the bow, second side", second_m, "m"),
        ),
    )


def _from_bases(taped: Taped, along: tuple[Along, Along]) -> Girth | None:
    """Return what girths over the baseboards leave for the roof at bows not read at the hips."""
    at_hips = {r.bow for r in taped.hips.readings} if taped.hips else set()
    bases = taped.baseboards.readings if taped.baseboards else ()
    readings = tuple(r for r in bases if r.bow not in at_hips)
    if not readings:
        return None
    sides_m = list(zip(along[0].sides_m, along[1].sides_m, strict=True))
    length_m, bow = max((r.length_m - sum(sides_m[r.bow - 1]), -r.bow) for r in readings)
    rule = (
        f"Girth as read over bow {-bow} from baseboard to baseboard, less both sides along that "
        "bow from hip board to baseboard: of the bows that were read the one where most is left "
        "governs."
    )
    if at_hips:
        rule += " From hip to hip that bow was not read, and those that were are shorter."
    return Girth(
        length_m, -bow, "baseboards", rule, (*_terms(readings), *_sides(sides_m[-bow - 1]))
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
        roof.over,
        "Over the roof from hip seam to hip seam, and on each side down to the baseboard.",
        (Term("roof", roof.length_m, "m"), *_sides(sides_m)),
    )


def _as_read(spread: GirthSpread) -> Girth:
    bow = spread.governing_bow
    rule = f"Over bow {bow} from {WAYS[spread.over]}, as read: the longest of the girths governs"
    if any(r.outlier for r in spread.readings if r.bow == bow):
        rule += ", though it is an outlier; until that bow is measured again it counts"
    return Girth(spread.governing_m, bow, spread.over, rule + ".", _terms(spread.readings))


def _terms(readings: tuple[GirthReading, ...]) -> tuple[Term, ...]:
    return tuple(Term(f"bow {r.bow}", r.length_m, "m") for r in readings)


def _sides(sides_m: tuple[float, float]) -> tuple[Term, Term]:
    first_m, second_m = sides_m
    return Term("first side", first_m, "m"), Term("second side", second_m, "m")
