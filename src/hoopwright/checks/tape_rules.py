"""Rules about girths, lengths and diagonals read on the frame: too few, outliers, not agreeing."""

import math
from collections.abc import Iterator

from hoopwright.checks.case import Case
from hoopwright.farm.change_tape import LEAST_BOWS
from hoopwright.quantity.finding import Finding
from hoopwright.quantity.working import DERIVED, ENTERED, PRACTICE, Phrase, phrase
from hoopwright.survey.bow_curve import bow_curve
from hoopwright.survey.girths import WAYS
from hoopwright.survey.taped import GirthReading, GirthSpread

LENGTH_BAND_M = 0.05
BAY_BAND = 0.1
BENT_M = 0.05
HAND_M = 0.1
INSIDE_BAND = 0.25
OVER_BOWS = ("roof sheet", "whole sheet")


def one_girth(case: Case) -> Iterator[Finding]:
    """Girths read over fewer bows than the trade wants."""
    spreads = _spreads(case)
    wanted = min(LEAST_BOWS, len(case.survey.bows_m))
    count = max((len(spread.readings) for spread in spreads), default=wanted)
    if count >= wanted:
        return
    yield case.finding(
        "tape.one_girth",
        "caution",
        "frame",
        phrase("The girth was read over {count} of {bows} bows.", count=count, bows=_bows(case)),
        phrase("Bent frames differ from bow to bow; a bow that was not read may be the longest."),
        phrase("Read the girth over {wanted} bows or more, both end bows too.", wanted=wanted),
        None,
        PRACTICE,
    )


def outlier(case: Case) -> Iterator[Finding]:
    """A girth far from the middle one: it governs when it is the longest, until read again."""
    for spread in _spreads(case):
        for reading in spread.readings:
            if reading.outlier:
                governs = reading.bow == spread.governing_bow
                yield case.finding(
                    "tape.outlier",
                    "caution",
                    "frame",
                    _outlier_words(spread, reading, governs),
                    phrase(
                        "Every sheet over the bows is cut to the longest girth: a slip of the tape "
                        "costs film, a bow that is bent needs it."
                    )
                    if governs
                    else phrase("A slip of the tape, or a bow that is bent in."),
                    _again(case, spread, reading, governs),
                    None,
                    PRACTICE,
                )


def _outlier_words(spread: GirthSpread, reading: GirthReading, governs: bool) -> Phrase:
    more = "more" if reading.from_middle_m > 0 else "less"
    tail = "it governs until it is measured again" if governs else "it does not govern"
    return phrase(
        f"Over bow {{bow}}, {WAYS[spread.over]}, the tape reads {{length}}: {{off}} {more} than "
        f"the middle girth of {{middle}}; {tail}.",
        bow=reading.bow,
        length=(reading.length_m, "m"),
        off=(abs(reading.from_middle_m), "m"),
        middle=(spread.middle_m, "m"),
    )


def _again(case: Case, spread: GirthSpread, reading: GirthReading, governs: bool) -> Phrase:
    """Return the mend: measure again, and what would come of the next reading."""
    others = [r for r in spread.readings if r.bow != reading.bow]
    if not governs or not others:
        return phrase("Measure over bow {bow} again.", bow=reading.bow)
    following = max(others, key=lambda r: r.length_m)
    needs = _needs(case, spread, following)
    template = (
        "Measure over bow {bow} again. With the next longest, {next} over bow {next_bow}, the "
        "sheet is planned by that"
    )
    terms: dict[str, tuple[float, str] | int] = {
        "bow": reading.bow,
        "next": (following.length_m, "m"),
        "next_bow": following.bow,
    }
    if needs is None:
        return phrase(template + ".", **terms)
    now_m, then_m, stock_now_m, stock_then_m = needs
    terms |= {"now": (now_m, "m"), "then": (then_m, "m"), "stock": (stock_now_m, "m")}
    template += " and {then} wide instead of {now}"
    if stock_now_m == stock_then_m:
        return phrase(template + ": the stock width stays at {stock}.", **terms)
    terms["less"] = (stock_then_m, "m")
    return phrase(template + ": a stock width of {less} would do instead of {stock}.", **terms)


def _needs(
    case: Case, spread: GirthSpread, following: GirthReading
) -> tuple[float, float, float, float] | None:
    """Return the width needed now and then, and the stock width for each; None without a stock."""
    for piece in case.chosen.sheets.ordered:
        read = any(term.value == spread.governing_m for term in piece.width_terms)
        if piece.role not in OVER_BOWS or not read:
            continue
        then_m = piece.width_m - spread.governing_m + following.length_m
        film = next(film for film in case.catalogue.films if film.key == piece.film)
        stocks_m = sorted({r.width_m for r in film.rolls if r.length_m >= piece.length_m})
        now = next((width_m for width_m in stocks_m if width_m >= piece.width_m), None)
        then = next((width_m for width_m in stocks_m if width_m >= then_m), None)
        return None if now is None or then is None else (piece.width_m, then_m, now, then)
    return None


def girth_disagrees(case: Case) -> Iterator[Finding]:
    """Girths that are not those of the profile that was entered."""
    band = case.tunnel.frame.tape.agreement_share
    for spread in _spreads(case):
        if abs(spread.disagreement_share) <= band:
            continue
        off_m = spread.middle_m - spread.computed_m
        more = "more" if off_m > 0 else "less"
        yield case.finding(
            "tape.girth_disagrees",
            "caution",
            "frame",
            phrase(
                f"The middle girth read {WAYS[spread.over]} is {{middle}}; the profile gives "
                f"{{computed}} over the outside of the tube, so the tape reads {{off}} {more} "
                "({share}).",
                middle=(spread.middle_m, "m"),
                computed=(spread.computed_m, "m"),
                off=(abs(off_m), "m"),
                share=(abs(spread.disagreement_share), "share"),
            ),
            phrase(
                "Either the frame stands otherwise than it was entered, or the line was laid "
                "otherwise; the film is planned by the readings, doors and end walls by the "
                "profile."
            ),
            _disagreement_mend(case, spread, off_m),
        )


def _disagreement_mend(case: Case, spread: GirthSpread, off_m: float) -> Phrase:
    inside_m = _inside_less(case, spread)
    if inside_m > 0 and abs(off_m + inside_m) <= INSIDE_BAND * inside_m:
        return phrase(
            "The inside of the tube reads about {inside} less: lay the line over the outside, from "
            "fixing to fixing, and read again.",
            inside=(inside_m, "m"),
        )
    return phrase(
        "Measure span and peak of the bow as it stands, and the heights of the boards; lay the "
        "line over the outside of the tube from fixing to fixing."
    )


def _inside_less(case: Case, spread: GirthSpread) -> float:
    """Return how much less a girth along the inside of the tube is, m.

    Source:
        Derived here: outside and inside lie as far from the centre line, so twice what the outside
        is more than that.
    """
    frame, survey = case.tunnel.frame, case.survey
    hips = spread.over == "hips"
    middle = bow_curve(frame.profile, 0.0)
    outside_m = centre_m = 0.0
    for n, boards in enumerate(frame.boards):
        height_m = boards.hip_height_m if hips else boards.baseboard_height_m
        held_m = min(height_m, middle.height_m)
        outside_m += abs(survey.curve.position_at_height(held_m, n) - survey.curve.ridge_m)
        centre_m += abs(middle.position_at_height(held_m, n) - middle.ridge_m)
    return 2 * (outside_m - centre_m)


def lengths_disagree(case: Case) -> Iterator[Finding]:
    """A length along a side that is not the one from the first bow to the last."""
    tape, built_m = case.tunnel.frame.tape, case.survey.length_m
    bay_m = built_m / case.survey.bay_count
    lines = (("hip", tape.hip_lengths_m), ("baseboard", tape.base_lengths_m))
    for board, lengths_m in lines:
        for side, read_m in zip(case.tunnel.sides, lengths_m, strict=True):
            if read_m is None or abs(read_m - built_m) <= LENGTH_BAND_M:
                continue
            a_bay = abs(abs(read_m - built_m) - bay_m) <= BAY_BAND * bay_m
            yield case.finding(
                "tape.lengths_disagree",
                "caution",
                "frame",
                phrase(
                    f"{{side}}: along the {board} the tape reads {{read}}, and the bows stand over "
                    "{built}.",
                    side=side.name,
                    read=(read_m, "m"),
                    built=(built_m, "m"),
                ),
                phrase("The sheets over the bows are as long as the longest length read."),
                phrase(
                    "That is about one bay: count the bows again; n bows make one bay less."
                    if a_bay
                    else "Measure again between the middles of both end bows, and correct the bows."
                ),
                None,
                ENTERED,
            )


def skew(case: Case) -> Iterator[Finding]:
    """Ends out of square."""
    taped = case.survey.taped
    if taped.skew_m is None or abs(taped.skew_m) <= BENT_M:
        return
    yield case.finding(
        "tape.skew",
        "caution",
        "frame",
        phrase(
            "The frame is out of square: {side} stands {skew} ahead at the back.",
            side=case.tunnel.sides[1 if taped.skew_m > 0 else 0].name,
            skew=(abs(taped.skew_m), "m"),
        ),
        phrase(
            "A sheet cut square needs {cost} more length, which is counted; pulled square to the "
            "side it is short at a corner.",
            cost=(taped.skew_cost_m, "m"),
        ),
        phrase(
            "Lay the sheet out with what is over shared between the corners. Ask a qualified "
            "person before a frame is pulled square."
        ),
        None,
        DERIVED,
    )


def diagonals_disagree(case: Case) -> Iterator[Finding]:
    """Diagonals that no frame of this span and length can have."""
    tape, span_m = case.tunnel.frame.tape, case.survey.span_m
    first_m, second_m = tape.diagonals_m
    if first_m is None or second_m is None:
        return
    square_m2 = (first_m**2 + second_m**2) / 2 - case.survey.taped.length_m**2
    end_m = math.sqrt(max(0.0, square_m2))
    if abs(end_m - span_m) <= max(HAND_M, tape.agreement_share * span_m):
        return
    yield case.finding(
        "tape.diagonals_disagree",
        "caution",
        "frame",
        phrase(
            "With a length of {length} the diagonals give {end} across the ends; the span is "
            "entered as {span}.",
            length=(case.survey.taped.length_m, "m"),
            end=(end_m, "m"),
            span=(span_m, "m"),
        ),
        phrase("What the skew is reckoned to cost rests on a wrong reading."),
        phrase("Measure both diagonals again, at the ground from tube middle to tube middle."),
        None,
        "parallelogram law: squares of both diagonals are twice those of both sides; derived here",
    )


def lean(case: Case) -> Iterator[Finding]:
    """An end bow out of plumb."""
    leans_m = case.tunnel.frame.tape.leans_m
    costs_m = case.survey.taped.lean_costs_m
    for n, (end, lean_m) in enumerate(zip(case.tunnel.ends, leans_m, strict=True)):
        if lean_m is None or abs(lean_m) <= BENT_M:
            continue
        way = "outside" if lean_m > 0 else "inside"
        yield case.finding(
            "tape.lean",
            "caution",
            f"end/{n}",
            phrase(
                f"{{end}}: the ridge of the end bow stands {{lean}} {way} its feet.",
                end=end.name,
                lean=(abs(lean_m), "m"),
            ),
            phrase(
                "A sheet over it needs {cost} more length, which is counted; a bow that leans "
                "carries less.",
                cost=(costs_m[n], "m"),
            ),
            phrase("Ask a qualified person before the frame is covered or pulled upright."),
            None,
            PRACTICE,
        )


def _spreads(case: Case) -> tuple[GirthSpread, ...]:
    taped = case.survey.taped
    return tuple(spread for spread in (taped.hips, taped.baseboards) if spread is not None)


def _bows(case: Case) -> int:
    return len(case.survey.bows_m)
