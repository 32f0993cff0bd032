"""Where curtains hang on a side and where its film is fixed.

The opening lies between the pockets. A split divides it: two curtains lap on its bow, or both
close against a fixed strip that stands behind them in the bay after it. A side without sheets of
its own is the tail of the roof's sheet, which has no film to lap with where it is slit: there
every split gets a strip, and the curtain behind the split starts at the slit and hangs over it.
"""

from collections.abc import Callable
from dataclasses import dataclass

from hoopwright.cover.cover import CurtainSpan, FixedSpan
from hoopwright.cover.size import Size
from hoopwright.cover.stretch import ON_BOW_M, Greatest, Stretch, opening_ends
from hoopwright.farm import Film, Side
from hoopwright.quantity.working import ENTERED, LaterWorkings, Term, Working


@dataclass(frozen=True, slots=True)
class Hanging:
    """How high a curtain is, what it is made of and how far above the ground it ends.

    Attributes:
        hang: Hip seam to shut bar; of a drop-down curtain baseboard to rod.
        cut: Height the film is cut to.
        films: Films of the layers wound together.
        lap_m: What a curtain laps over its neighbour, m.
        shut_m: Height of the shut bar, m; None of a curtain that is held at the baseboard.
        gap: From the shut bar down to the ground where it is deepest.
        board_gap: From the shut bar down to the top of the baseboard where it is lowest.
    """

    hang: Size
    cut: Size
    films: tuple[Film, ...]
    lap_m: float
    shut_m: float | None
    gap: Greatest
    board_gap: Greatest


@dataclass(frozen=True, slots=True)
class _Opening:
    """One opening of a side.

    Attributes:
        from_m: Start, m.
        to_m: End, m.
        slit_m: Where a tail cut in one piece with the roof is slit in front of it, m.
    """

    from_m: float
    to_m: float
    slit_m: float


def fixed_spans(n: int, side: Side, bows_m: tuple[float, ...], own: bool) -> tuple[FixedSpan, ...]:
    """Return where film is fixed on a side, from front to back.

    Args:
        n: 0 for the first side, 1 for the second.
        side: The side as chosen.
        bows_m: Where the bows stand, m.
        own: Whether the side has sheets of its own.
    """
    if side.kind == "fixed":
        return (FixedSpan(mark=f"side/{n}/fixed", side=n, from_m=bows_m[0], to_m=bows_m[-1]),)
    low_m, high_m = opening_ends(side, bows_m)
    spans = []
    if low_m > bows_m[0]:
        spans.append(FixedSpan(mark=f"side/{n}/pocket/front", side=n, from_m=bows_m[0], to_m=low_m))
    for i, split in enumerate(side.splits):
        if _has_strip(side, i, own):
            end_m = _strip_end(split.at_m, bows_m, high_m)
            spans.append(
                FixedSpan(mark=f"side/{n}/strip/{i}", side=n, from_m=split.at_m, to_m=end_m)
            )
    if high_m < bows_m[-1]:
        spans.append(
            FixedSpan(mark=f"side/{n}/pocket/back", side=n, from_m=high_m, to_m=bows_m[-1])
        )
    return tuple(spans)


def curtain_spans(
    n: int,
    side: Side,
    bows_m: tuple[float, ...],
    own: bool,
    hung_over: Callable[[Stretch], Hanging],
) -> tuple[CurtainSpan, ...]:
    """Return where curtains hang on a side that opens, from front to back.

    Args:
        n: 0 for the first side, 1 for the second.
        side: The side as chosen.
        bows_m: Where the bows stand, m.
        own: Whether the side has sheets of its own.
        hung_over: Gives how high a curtain over a stretch of it is and what it is made of.
    """
    return tuple(
        _curtain(n, i, opening, own, hung_over((opening.from_m, opening.to_m)))
        for i, opening in enumerate(_openings(side, bows_m, own))
    )


def _has_strip(side: Side, index: int, own: bool) -> bool:
    return not own or side.splits[index].join == "strip"


def _strip_end(at_m: float, bows_m: tuple[float, ...], high_m: float) -> float:
    """Return the next bow beyond a split, m; the end of the opening when there is none."""
    return next((x for x in bows_m if at_m + ON_BOW_M < x < high_m), high_m)


def _openings(side: Side, bows_m: tuple[float, ...], own: bool) -> list[_Opening]:
    """Return the openings; one that strips leave no room for has no length."""
    low_m, high_m = opening_ends(side, bows_m)
    found = []
    from_m = slit_m = low_m
    for i, split in enumerate(side.splits):
        found.append(_Opening(min(from_m, split.at_m), split.at_m, slit_m))
        from_m = slit_m = split.at_m
        if _has_strip(side, i, own):
            from_m = _strip_end(split.at_m, bows_m, high_m)
    found.append(_Opening(min(from_m, high_m), high_m, slit_m))
    return found


def _curtain(n: int, index: int, opening: _Opening, own: bool, hanging: Hanging) -> CurtainSpan:
    lap_m = hanging.lap_m if own else 0.0
    from_m = opening.from_m - lap_m if own else opening.slit_m
    to_m = opening.to_m + lap_m
    return CurtainSpan(
        mark=f"side/{n}/panel/{index}",
        side=n,
        index=index,
        open_from_m=opening.from_m,
        open_to_m=opening.to_m,
        from_m=from_m,
        to_m=to_m,
        length_m=to_m - from_m,
        hang_m=hanging.hang.total_m,
        cut_height_m=hanging.cut.total_m,
        layers=len(hanging.films),
        thickness_m=sum(f.thickness_m for f in hanging.films),
        film_mass_kg_m2=sum(f.thickness_m * f.density_kg_m3 for f in hanging.films),
        gap_m=hanging.gap.length_m,
        board_gap_m=hanging.board_gap.length_m,
        workings=LaterWorkings(
            lambda: (
                *_place_workings(opening, own, from_m, to_m, lap_m),
                *_film_workings(hanging),
                *_gap_workings(hanging),
            )
        ),
    )


def _place_workings(
    opening: _Opening, own: bool, from_m: float, to_m: float, lap_m: float
) -> tuple[Working, ...]:
    starts, ends = Term("opening from", opening.from_m, "m"), Term("opening to", opening.to_m, "m")
    lap = Term("lap", lap_m, "m")
    if own:
        edge = "The curtain laps over its neighbour or a pocket by the lap."
        front: tuple[Term, ...] = (starts, lap)
        back: tuple[Term, ...] = (ends, lap)
    else:
        edge = "The tail of the sheet is slit at the bow, so the curtain has no lap."
        front, back = (Term("slit at", opening.slit_m, "m"),), (ends,)
    return (
        Working("open_from_m", "From the pocket, the split or the strip behind it.", (starts,)),
        Working("open_to_m", "To the split or the pocket.", (ends,)),
        Working("from_m", edge, front),
        Working("to_m", edge, back),
        Working(
            "length_m",
            "From the front edge of the curtain to its back edge.",
            (Term("front edge", from_m, "m"), Term("back edge", to_m, "m")),
        ),
    )


def _film_workings(hanging: Hanging) -> tuple[Working, ...]:
    thick = tuple(Term(f.name, f.thickness_m, "m_film") for f in hanging.films)
    dense = tuple(Term(f"density of {f.name}", f.density_kg_m3, "kg/m3") for f in hanging.films)
    return (
        hanging.hang.working("hang_m"),
        hanging.cut.working("cut_height_m"),
        Working("thickness_m", "All layers that are wound together.", thick, ENTERED),
        Working("film_mass_kg_m2", "Thickness times density of every layer.", (*thick, *dense)),
    )


def _gap_workings(hanging: Hanging) -> tuple[Working, ...]:
    if hanging.shut_m is None:
        held = "The film is held at the baseboard, so nothing stands open under it."
        return (Working("gap_m", held), Working("board_gap_m", held))
    shut = Term("bar height when shut", hanging.shut_m, "m")
    level = "The bar lies straight and level; {} stays open, nothing where it lies higher."
    return tuple(
        Working(
            figure,
            level.format(f"what is between it and the lowest {what} under the curtain"),
            (shut, Term(gap.named(f"lowest {what}"), hanging.shut_m - gap.length_m, "m")),
        )
        for figure, what, gap in (
            ("gap_m", "ground", hanging.gap),
            ("board_gap_m", "top of the baseboard", hanging.board_gap),
        )
    )
