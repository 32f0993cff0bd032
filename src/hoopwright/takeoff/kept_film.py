"""Which sheets of the old skin stay.

A sheet cannot be half kept: it stays where the lines about film keep or repair it over all its
length, on every part of the tunnel that it covers. What it laps past a bow or past the neighbour is
not asked for. All other sheets are cut new. A kept sheet is taken to have the size that the plan
gives it.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from hoopwright.cover.cover import Area, Cover, CurtainSpan, Piece
from hoopwright.farm.condition import FILM, PartState, State
from hoopwright.farm.skin import Allowances
from hoopwright.quantity.working import ENTERED, PRACTICE, Explained, Term, Working, phrase
from hoopwright.survey.survey import Survey
from hoopwright.takeoff.condition import EXACT, Said, numbered, what_is_said
from hoopwright.takeoff.need import Need, Place
from hoopwright.takeoff.places import ENDS, SIDES

TAPED_FACES = 2
TAPE = "repair_tape"


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptSheet(Explained):
    """A sheet of the old skin that stays.

    Attributes:
        piece: The sheet.
        state: Keep as it is, or repair.
        repair_share: Share of its length that is repaired.
        tape_m: Repair tape for it, m.
    """

    piece: Piece
    state: State
    repair_share: float
    tape_m: float


@dataclass(frozen=True, slots=True, kw_only=True)
class PartKept:
    """A sheet that would be kept in part only, and is cut new.

    Attributes:
        piece: The sheet.
        share: Share of it that lines keep or repair.
        places: The parts of the tunnel and stretches that it covers.
    """

    piece: Piece
    share: float
    places: tuple[Place, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheets:
    """The sheets of one tunnel, those to cut and those that stay.

    Attributes:
        ordered: Sheets to cut from new film.
        kept: Sheets that stay.
        in_part: Sheets of which a part only would stay; they are among those to cut.
        old_places: Marks of curtains and end walls all of whose film stays, with its seals.
    """

    ordered: tuple[Piece, ...]
    kept: tuple[KeptSheet, ...] = ()
    in_part: tuple[PartKept, ...] = ()
    old_places: frozenset[str] = frozenset()


def keep_film(
    cover: Cover, condition: tuple[PartState, ...], survey: Survey, allowances: Allowances
) -> Sheets:
    """Return which sheets are cut and which stay.

    Args:
        cover: The skin as laid.
        condition: What was found, line by line.
        survey: The frame as built.
        allowances: Laps, which are not asked for.

    Source:
        Tape on both faces of the share to repair, along the sheet: common practice, no published
        source.
    """
    lines = numbered(condition, FILM)
    if not lines:
        return Sheets(ordered=cover.pieces)
    ordered: list[Piece] = []
    kept: list[KeptSheet] = []
    in_part: list[PartKept] = []
    for piece in cover.pieces:
        places = sheet_places(piece, survey, allowances)
        said = tuple(what_is_said(place, lines, survey.bows_m) for place in places)
        held = _mean(_held(one) for one in said)
        if held >= 1.0 - EXACT:
            kept.append(_kept(piece, said))
            continue
        ordered.append(piece)
        if held > EXACT:
            in_part.append(PartKept(piece=piece, share=held, places=places))
    return Sheets(
        ordered=tuple(ordered),
        kept=tuple(kept),
        in_part=tuple(in_part),
        old_places=_old_places(cover, {k.piece.mark for k in kept}) if kept else frozenset(),
    )


def mend_film(sheets: Sheets) -> tuple[Need, ...]:
    """Return the tape for kept sheets that are repaired."""
    return tuple(
        Need(
            part=TAPE,
            quantity=one.tape_m,
            where=phrase("repair of {sheet}", sheet=one.piece.name),
            marks=(one.piece.mark,),
            working=one.working("tape_m"),
        )
        for one in sheets.kept
        if one.tape_m > 0
    )


def sheet_places(piece: Piece, survey: Survey, allowances: Allowances) -> tuple[Place, ...]:
    """Return the parts of the tunnel that a sheet covers, from bow to bow without its laps."""
    lap_m = max(allowances.curtain_lap_m, allowances.seam_lap_m) + EXACT
    return tuple(_place(area, survey.bows_m, lap_m) for area in piece.areas)


def _place(area: Area, bows_m: tuple[float, ...], lap_m: float) -> Place:
    kind, number = area.surface[:-1], area.surface[-1]
    if kind == "end":
        at_m = bows_m[-1 if number == "1" else 0]
        return Place(ENDS[int(number)], at_m, at_m)
    from_m = min((b for b in bows_m if 0 <= b - area.from_m <= lap_m), default=area.from_m)
    to_m = max((b for b in bows_m if 0 <= area.to_m - b <= lap_m), default=area.to_m)
    if from_m >= to_m:
        from_m, to_m = area.from_m, area.to_m
    return Place(SIDES[int(number)] if kind == "side" else "roof", from_m, to_m)


def _held(said: tuple[Said, ...]) -> float:
    """Return the share of a stretch over which old film stays."""
    return sum(s.share for s in said if s.lost < s.share)


def _mean(shares: Iterable[float]) -> float:
    listed = tuple(shares)
    return sum(listed) / len(listed)


def _kept(piece: Piece, said: tuple[tuple[Said, ...], ...]) -> KeptSheet:
    share = _mean(sum(s.lost for s in one) for one in said)
    tape_m = TAPED_FACES * share * piece.length_m
    numbers = sorted({s.number for one in said for s in one})
    told = Term("lines of the condition", ", ".join(map(str, numbers)), "text")
    repair = any(s.line.state == "repair" for one in said for s in one)
    return KeptSheet(
        piece=piece,
        state="repair" if repair else "keep",
        repair_share=share,
        tape_m=tape_m,
        workings=(
            Working("repair_share", "Mean over the parts that the sheet covers", (told,), ENTERED),
            Working(
                "tape_m",
                "The share to repair of the sheet's length, taped on both faces",
                (
                    Term("sheet", piece.length_m, "m"),
                    Term("share to repair", share, "share"),
                    Term("faces", TAPED_FACES, "count"),
                ),
                PRACTICE,
            ),
        ),
    )


def _old_places(cover: Cover, kept: set[str]) -> frozenset[str]:
    """Return the curtains and end walls all of whose sheets stay."""
    places = {span.mark: _curtain_sheets(cover, span) for span in cover.curtains}
    for n in (0, 1):
        on_end = tuple(p for p in cover.pieces if any(a.surface == f"end{n}" for a in p.areas))
        places[f"end/{n}"] = on_end
    return frozenset(
        mark for mark, pieces in places.items() if pieces and all(p.mark in kept for p in pieces)
    )


def _curtain_sheets(cover: Cover, span: CurtainSpan) -> tuple[Piece, ...]:
    """Return the layers of a curtain: sheets of its own, or the whole sheets over its opening."""
    own = f"/{span.side}/{span.index}"
    sheets = tuple(p for p in cover.pieces if p.role == "curtain" and p.mark.endswith(own))
    return sheets or tuple(
        p
        for p in cover.pieces
        if p.role == "whole sheet" and any(_hangs_in(area, span) for area in p.areas)
    )


def _hangs_in(area: Area, span: CurtainSpan) -> bool:
    if area.surface != f"side{span.side}":
        return False
    return area.from_m < span.open_to_m and area.to_m > span.open_from_m
