"""Rules about end walls: openings that stick out or overlap, seams, sheets that miss the peak."""

from collections.abc import Iterator

from hoopwright.checks.case import Case
from hoopwright.cover import Piece
from hoopwright.cover.end_laid import Crossing, EndLaid, Opening
from hoopwright.cover.end_walls import band_size, lay_ends
from hoopwright.farm import Tunnel
from hoopwright.farm import change_ends as edit
from hoopwright.farm.change import is_close
from hoopwright.order.order import Unplaced
from hoopwright.quantity.finding import Finding
from hoopwright.quantity.working import ENTERED, PRACTICE, Phrase, phrase

LEAST_LAP_M = 0.1
NEAR_RAIL_M = 0.3
FIT_M = 1e-6


def _walls(case: Case) -> Iterator[tuple[int, str, EndLaid]]:
    """Yield each end wall with its number and its name."""
    for n, (end, wall) in enumerate(zip(case.tunnel.ends, case.chosen.cover.ends, strict=True)):
        yield n, end.name, wall


def opening_outside(case: Case) -> Iterator[Finding]:
    """A door, vent or fan opening that sticks out of its end wall.

    A door that is larger than the wall is told by another rule.
    """
    for n, name, wall in _walls(case):
        for opening in wall.openings:
            if opening.inside or _too_large(case, opening):
                continue
            mended = _fitted(case, n, opening)
            yield case.finding(
                "end.opening_outside",
                "fault",
                opening.mark,
                phrase(
                    "{end}: "
                    + f"the {opening.use} of {{wide}} by {{high}}, {{sill}} above the ground and "
                    "with its left edge at {left} from the middle, sticks out of the end wall.",
                    end=name,
                    wide=(opening.width_m, "m"),
                    high=(opening.height_m, "m"),
                    sill=(opening.box.low_m, "m"),
                    left=(opening.box.left_m, "m"),
                ),
                phrase(
                    "There is no bow to frame it to, and film, channel and sheets are counted "
                    "wrongly."
                ),
                _move_words(mended, n, opening),
                mended,
                ENTERED,
            )


def _too_large(case: Case, opening: Opening) -> bool:
    """Return whether the rule about doors that are too large tells it already."""
    survey = case.survey
    larger = opening.height_m >= survey.height_m or opening.width_m >= survey.width_m
    return opening.use == "door" and larger


def openings_overlap(case: Case) -> Iterator[Finding]:
    """Two openings of an end wall that overlap."""
    for n, name, wall in _walls(case):
        marked = {opening.mark: opening for opening in wall.openings}
        for opening in wall.openings:
            if not opening.meets:
                continue
            other = marked[opening.meets[0]]
            mended = _fitted(case, n, opening)
            yield case.finding(
                "end.openings_overlap",
                "fault",
                opening.mark,
                phrase(
                    "{end}: " + f"{opening.use} {{number}} overlaps {other.use} {{other}}.",
                    end=name,
                    number=opening.number + 1,
                    other=other.number + 1,
                ),
                phrase("Two frames cannot stand in one place; one of the sizes is wrong."),
                _move_words(mended, n, opening),
                mended,
                ENTERED,
            )


def _fitted(case: Case, end: int, opening: Opening) -> Tunnel | None:
    """Return the tunnel with an opening where it has room, when it has any."""
    moved = edit.fit_opening(case.tunnel, end, _kind(opening), opening.number)
    if moved is None:
        return None
    wall = lay_ends(case.survey, moved.skin, moved.ends)[end]
    now = next(other for other in wall.openings if other.mark == opening.mark)
    free = all(opening.mark not in other.meets for other in wall.openings)
    return moved if now.inside and not now.meets and free else None


def _kind(opening: Opening) -> edit.OpeningKind:
    return "door" if opening.use == "door" else "cut"


def _move_words(mended: Tunnel | None, end: int, opening: Opening) -> Phrase:
    if mended is None:
        return phrase("Make it smaller, or correct its place: nowhere in this wall has it room.")
    left_m, sill_m = edit.opening_place(mended, end, _kind(opening), opening.number)
    return phrase(
        "Put its left edge at {left} from the middle and its lower edge {sill} above the ground, "
        "the nearest place that has room.",
        left=(left_m, "m"),
        sill=(sill_m, "m"),
    )


def seam_off_rail(case: Case) -> Iterator[Finding]:
    """A seam in the film of an end wall with no rail behind it, or above the ridge."""
    for n, name, wall in _walls(case):
        for k, seam in enumerate(wall.seams):
            if seam.at_m >= wall.height_m:
                yield _above(case, n, k, name, wall)
            elif not any(is_close(rail.at_m, seam.at_m) for rail in wall.rails):
                yield _off_rail(case, n, k, name, wall)


def _above(case: Case, end: int, index: int, name: str, wall: EndLaid) -> Finding:
    seam = wall.seams[index]
    return case.finding(
        "end.seam_above_ridge",
        "caution",
        seam.mark,
        phrase(
            "{end}: the seam at {at} is not below the ridge at {ridge}.",
            end=name,
            at=(seam.at_m, "m"),
            ridge=(wall.height_m, "m"),
        ),
        phrase("It joins nothing, and no sheet ends there."),
        phrase("Take the seam away, or correct its height."),
        edit.remove_seam(case.tunnel, end, index),
        ENTERED,
    )


def _off_rail(case: Case, end: int, index: int, name: str, wall: EndLaid) -> Finding:
    seam = wall.seams[index]
    mend, mended = _to_rail(case, end, index, wall)
    return case.finding(
        "end.seam_off_rail",
        "caution",
        seam.mark,
        phrase("{end}: the seam at {at} lies on no rail.", end=name, at=(seam.at_m, "m")),
        phrase("A seam in mid-air has no channel, and wind tears it open."),
        mend,
        mended,
        PRACTICE,
    )


def _to_rail(case: Case, end: int, index: int, wall: EndLaid) -> tuple[Phrase, Tunnel]:
    """Return the seam on the nearest free rail close by, or a rail under the seam."""
    seam = wall.seams[index]
    rail = _near_rail(seam, wall)
    if rail is not None:
        moved = edit.move_end_seam(case.tunnel, end, index, rail.at_m)
        if is_close(moved.ends[end].seams_m[index], rail.at_m):
            return phrase("Move the seam to the rail at {rail}.", rail=(rail.at_m, "m")), moved
    added = edit.add_rail(case.tunnel, end, seam.at_m)
    return phrase("Set a rail at {at} behind it.", at=(seam.at_m, "m")), added


def _near_rail(seam: Crossing, wall: EndLaid) -> Crossing | None:
    taken = [other.at_m for other in wall.seams]
    free = [r for r in wall.rails if not any(is_close(r.at_m, y) for y in taken)]
    near = [r for r in free if abs(r.at_m - seam.at_m) <= NEAR_RAIL_M and r.at_m < wall.height_m]
    return min(near, key=lambda r: abs(r.at_m - seam.at_m), default=None)


def seam_lap_short(case: Case) -> Iterator[Finding]:
    """Sheets of an end wall that hardly lap at their seam."""
    lap_m = case.tunnel.skin.allowances.seam_lap_m
    for _n, name, wall in _walls(case):
        if len(wall.bands) < 2 or lap_m >= LEAST_LAP_M:
            continue
        allowances = case.tunnel.skin.allowances.but(seam_lap_m=LEAST_LAP_M)
        yield case.finding(
            "end.seam_lap_short",
            "caution",
            wall.seams[0].mark,
            phrase(
                "{end}: the sheets lap only {lap} at their seam.", end=name, lap=(lap_m, "m_thin")
            ),
            phrase(
                "One run of channel has to hold both edges; woven film frays and plain film slips "
                "out of it where the lap is short."
            ),
            phrase(
                "Let sheets lap {least} or more; the cross seams of the roof have the same lap.",
                least=(LEAST_LAP_M, "m_thin"),
            ),
            case.tunnel.but(skin=case.tunnel.skin.but(allowances=allowances)),
            PRACTICE,
        )


def seam_parts_air(case: Case) -> Iterator[Finding]:
    """An inflated end wall whose seam parts the air between its layers."""
    cells = {cell.mark for cell in case.chosen.inflation.cells}
    for n, name, wall in _walls(case):
        if len(wall.bands) < 2 or f"cell/end/{n}" not in cells:
            continue
        inflated = tuple(on and k != n for k, on in enumerate(case.tunnel.air.inflated_ends))
        yield case.finding(
            "end.seam_parts_air",
            "caution",
            wall.seams[0].mark,
            phrase("{end}: the seam parts the air of the inflated end wall.", end=name),
            phrase(
                "The channel grips both layers; air is reckoned as one cell, and past the seam "
                "none comes in."
            ),
            phrase("Do not inflate this end wall, or close it with one sheet."),
            case.tunnel.but(air=case.tunnel.air.but(inflated_ends=inflated)),
        )


def misses_peak(case: Case, miss: Unplaced) -> Phrase | None:
    """Return by how much the top sheet of a joined end wall misses the peak; else None."""
    piece = _piece(case, miss)
    area = piece.areas[0]
    joined = piece.role == "end wall" and area.low_m > 0
    if not joined or miss.over_width_m <= 0 or area.high_m < case.survey.height_m - FIT_M:
        return None
    return phrase(
        "{name}: the widest stock, {stock}, misses the peak at {peak} by {over}, tails included.",
        name=miss.name,
        stock=(miss.stock_m, "m"),
        peak=(case.survey.height_m, "m"),
        over=(miss.over_width_m, "m"),
    )


def join_end(case: Case, miss: Unplaced, piece: Piece) -> tuple[Phrase, Tunnel | None]:
    """Return how an end wall without stock is joined of sheets that have one.

    Args:
        case: The tunnel.
        miss: The sheet without stock.
        piece: The same sheet as laid.
    """
    if miss.over_width_m <= 0:
        return phrase("Enter a longer roll or choose another film."), None
    end = int(piece.areas[0].surface[-1])
    widest_m = max(roll.width_m for roll in case.catalogue.film(piece.film).rolls)
    joined = case.tunnel
    for _ in range(len(joined.ends[end].seams_m), 6):
        joined = edit.add_seam(joined, end)
        walls = lay_ends(case.survey, joined.skin, joined.ends)
        sizes = [band_size(band, joined.skin.allowances)[1] for band in walls[end].bands]
        if all(size.total_m <= widest_m + FIT_M for size in sizes):
            seams = len(joined.ends[end].seams_m)
            words = "Join it at {seams} seam on a rail; such sheets lie along the roll."
            if seams > 1:
                words = "Join it at {seams} seams on rails; such sheets lie along the roll."
            return phrase(words, seams=seams), joined
    return phrase("Enter a wider stock, choose another film, or use shorter tails."), None


def _piece(case: Case, miss: Unplaced) -> Piece:
    return next(p for p in case.chosen.cover.pieces if p.mark == miss.piece)
