"""Rules about sheets, seams and the air between layers."""

from collections.abc import Iterator

from hoopwright.checks.case import Case
from hoopwright.checks.end_rules import join_end, misses_peak
from hoopwright.farm import Tunnel
from hoopwright.farm.change import add_seam, add_split, is_close, move_seam, nearest_bow
from hoopwright.order.order import Order, Unplaced
from hoopwright.quantity.finding import Finding
from hoopwright.quantity.money import format_money
from hoopwright.quantity.working import INVENTED, PRACTICE, Phrase, phrase

LIFT_BAND = 1.01


def sheet_without_stock(case: Case) -> Iterator[Finding]:
    """A sheet that no stock roll of its film can yield."""
    for miss in case.chosen.order.unplaced:
        if (missed := misses_peak(case, miss)) is not None:
            what = missed
        elif miss.over_width_m > 0:
            what = phrase(
                "{name} is {over} wider than the widest stock, {stock}.",
                name=miss.name,
                over=(miss.over_width_m, "m"),
                stock=(miss.stock_m, "m"),
            )
        else:
            what = phrase(
                "{name} is {over} longer than the longest roll that is wide enough, {stock}.",
                name=miss.name,
                over=(miss.over_length_m, "m"),
                stock=(miss.stock_m, "m"),
            )
        mend, mended = _shorten(case, miss)
        yield case.finding(
            "film.no_stock",
            "fault",
            miss.piece,
            what,
            phrase("It cannot be ordered as one sheet, and nothing is priced for it."),
            mend,
            mended,
        )


def _shorten(case: Case, miss: Unplaced) -> tuple[Phrase, Tunnel | None]:
    """Return what mends a sheet without stock, and the mended tunnel where there is one way."""
    piece = next(p for p in case.chosen.cover.pieces if p.mark == miss.piece)
    if piece.role == "end wall":
        return join_end(case, miss, piece)
    if miss.over_width_m > 0 and piece.role == "whole sheet":
        apart = case.tunnel.but(skin=case.tunnel.skin.but(covering="roof_and_sides"))
        mends = not any(u.over_width_m > 0 for u in case.other_made().order.unplaced)
        return phrase("Skin roof and sides apart."), apart if mends else None
    if miss.over_width_m > 0:
        return phrase("Enter a wider stock, choose another film, or use shorter tails."), None
    if piece.role in ("roof sheet", "whole sheet"):
        return phrase("Add a cross seam on a bow."), add_seam(case.tunnel)
    if piece.role == "curtain":
        side = next(a.surface for a in piece.areas)
        return phrase("Split the curtain on a bow."), add_split(case.tunnel, int(side[-1]))
    return phrase("Enter a longer roll or choose another film."), None


def near_miss(case: Case) -> Iterator[Finding]:
    """A sheet that is only just too wide for a narrower, cheaper stock width."""
    for miss in case.chosen.order.near_misses:
        yield case.finding(
            "film.near_miss",
            "note",
            miss.piece,
            phrase(
                "{name} is {over} over the {stock} width.",
                name=miss.name,
                over=(miss.over_m, "m"),
                stock=(miss.stock_width_m, "m"),
            ),
            phrase(
                "The narrower roll would save {saving} on that sheet.",
                saving=format_money(miss.saving, case.currency),
            ),
            phrase(
                "Look at the tails, the wrap on the bar and the hip height before you order wide; "
                "never cut a grip short to save film."
            ),
        )


def seam_off_bow(case: Case) -> Iterator[Finding]:
    """A cross seam between two bows: there is nothing to fix it on."""
    for i, seam_m in enumerate(case.tunnel.skin.cross_seams_m):
        bow_m = nearest_bow(case.tunnel, seam_m)
        if is_close(bow_m, seam_m):
            continue
        snapped = move_seam(case.tunnel, i, bow_m)
        lands = is_close(snapped.skin.cross_seams_m[i], bow_m)
        yield case.finding(
            "seam.off_bow",
            "caution",
            f"roof/seam/{i}",
            phrase(
                "Cross seam {number} at {at} is not on a bow; the nearest stands at {bow}.",
                number=i + 1,
                at=(seam_m, "m"),
                bow=(bow_m, "m"),
            ),
            phrase("A joint in mid-air has no channel, leaks and tears."),
            phrase("Move the seam to the bow at {bow}.", bow=(bow_m, "m")),
            snapped if lands else None,
            PRACTICE,
        )


def one_sheet_slit(case: Case) -> Iterator[Finding]:
    """A one-sheet tail that is slit for a split has no lap of its own."""
    if case.tunnel.skin.covering != "one_sheet":
        return
    for n, side in enumerate(case.tunnel.sides):
        if side.kind == "roll_up" and side.splits:
            yield case.finding(
                "one_sheet.slit",
                "note",
                f"side/{n}",
                phrase(
                    "{side}: a slit in one sheet has no lap, so each split gets a fixed strip in "
                    "the bay behind it.",
                    side=side.name,
                ),
                phrase("That bay does not open."),
                phrase("Roof and sides apart can lap the curtains on the bow."),
                None,
                PRACTICE,
            )


def sheet_heavy(case: Case) -> Iterator[Finding]:
    """A sheet to cut that is heavier than one person lifts."""
    for piece in case.chosen.sheets.ordered:
        if piece.mass_kg <= case.limits.lift_kg * LIFT_BAND:
            continue
        yield case.finding(
            "sheet.heavy",
            "note",
            piece.mark,
            phrase(
                "{name} weighs {mass}; one person lifts {limit} at best.",
                name=piece.name,
                mass=(piece.mass_kg, "kg"),
                limit=(case.limits.lift_kg, "kg"),
            ),
            phrase("Backs are hurt when rolls are carried alone."),
            phrase("Carry it with two or more, held close and without a twist."),
            None,
            "Load constant 23 kg (51 lb), revised NIOSH lifting equation, NIOSH 94-110",
        )


def parts_missing(order: Order) -> Iterator[Finding]:
    """Parts that the takeoff asks for and the catalogue lacks."""
    for key in order.missing:
        yield Finding(
            code="catalogue.part_missing",
            severity="fault",
            tunnel="",
            where="",
            what=phrase("The catalogue has no part {key}.", key=key),
            why=phrase("What the skin needs of it is neither on the order nor in the price."),
            mend=phrase("Add the part with its pack and price to the catalogue of the farm file."),
        )


def prices_invented(order: Order) -> Iterator[Finding]:
    """Lines whose price is invented."""
    count = sum(1 for line in order.lines if line.invented)
    if count:
        yield Finding(
            code="price.invented",
            severity="note",
            tunnel="",
            where="",
            what=phrase(
                "{count} of {all} lines have an invented price.",
                count=count,
                all=len(order.lines),
            ),
            why=phrase("The totals only show how the sum is made until you enter your own prices."),
            mend=phrase("Type your prices in the Prices table or in the workbook."),
            source=INVENTED,
        )
