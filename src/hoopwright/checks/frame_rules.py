"""Rules about the frame: bows and bays, length, hip boards, doors."""

from collections.abc import Iterator
from functools import partial

from hoopwright.checks.case import Case, mend_or_none
from hoopwright.farm import EvenBows, MeasuredBow, RoundBow
from hoopwright.farm.change import fit_to_frame, move_hip, whole_bays, with_tunnel_value
from hoopwright.farm.side import MOVING, ROLLING
from hoopwright.quantity.finding import Finding
from hoopwright.quantity.working import ENTERED, PRACTICE, Phrase, phrase

LENGTH_BAND_M = 0.02
LEAST_SIDE_M = 0.3
LEANS_IN_M = 0.05
STRAIGHT_SIDES = (
    "University of Massachusetts Extension, Natural Ventilation in Greenhouses: straight "
    "sides suit roll-up openings better than round ones"
)


def bows_not_bays(case: Case) -> Iterator[Finding]:
    """Bows, spacing and length that do not agree: most often bays were counted as bows."""
    frame = case.tunnel.frame
    built_m = case.survey.length_m
    if not isinstance(frame.bows, EvenBows) or abs(built_m - frame.length_m) <= LENGTH_BAND_M:
        return
    count, spacing_m = frame.bows.count, frame.bows.spacing_m
    bays = whole_bays(frame)
    if bays is None:
        mend = phrase(
            "No whole number of {spacing} bays makes {length}: measure the spacing again, or list "
            "the bow positions one by one.",
            spacing=(spacing_m, "m"),
            length=(frame.length_m, "m"),
        )
        mended = None
    else:
        mend = phrase(
            "Set {bows} bows: {bows} bows make {bays} bays of {spacing} = {length}.",
            bows=bays + 1,
            bays=bays,
            spacing=(spacing_m, "m"),
            length=(frame.length_m, "m"),
        )
        bows = frame.bows.but(count=bays + 1)
        # What was entered for bows past the last one stands against it.
        mended = mend_or_none(lambda: fit_to_frame(case.tunnel, frame.but(bows=bows)))
        if mended is None:
            first = "First clear what is entered for bows past the last. "
            mend = Phrase(first + mend.template, mend.terms)
    yield case.finding(
        "frame.bows_not_bays",
        "fault",
        "frame",
        phrase(
            "{count} bows make {bays} bays of {spacing} = {built}, but the tape says {length}.",
            count=count,
            bays=count - 1,
            spacing=(spacing_m, "m"),
            built=(built_m, "m"),
            length=(frame.length_m, "m"),
        ),
        phrase(
            "Bows counted as bays are the costliest slip: every sheet is cut one bay too long or "
            "too short."
        ),
        mend,
        mended,
    )


def length_not_list(case: Case) -> Iterator[Finding]:
    """Listed bows whose last position is not the length on the tape."""
    frame = case.tunnel.frame
    built_m = case.survey.length_m
    if isinstance(frame.bows, EvenBows) or abs(built_m - frame.length_m) <= LENGTH_BAND_M:
        return
    yield case.finding(
        "frame.length_not_list",
        "fault",
        "frame",
        phrase(
            "The last bow is listed at {built}, but the length is entered as {length}.",
            built=(built_m, "m"),
            length=(frame.length_m, "m"),
        ),
        phrase("The sheets are cut to the listed bows; one of the two readings is wrong."),
        phrase("Take the length from the list: {built}.", built=(built_m, "m")),
        with_tunnel_value(case.tunnel, ("frame", "length_m"), built_m),
        ENTERED,
    )


def hip_above_shoulder(case: Case) -> Iterator[Finding]:
    """A hip board above the straight leg: the curtain lies on a bow that leans in."""
    if isinstance(case.tunnel.frame.profile, MeasuredBow):
        return
    leg_m = case.tunnel.frame.profile.leg_height_m
    for n, (side, boards) in enumerate(
        zip(case.tunnel.sides, case.tunnel.frame.boards, strict=True)
    ):
        over_m = boards.hip_height_m - leg_m
        if side.kind not in MOVING or over_m <= 0.01:
            continue
        can = leg_m > max(boards.baseboard_height_m, side.shut_height_m) + LEAST_SIDE_M
        yield case.finding(
            "hip.above_shoulder",
            "caution",
            f"side/{n}/hip",
            phrase(
                "{side}: the hip board at {hip} is {over} above the straight leg of {leg}.",
                side=side.name,
                hip=(boards.hip_height_m, "m"),
                over=(over_m, "m"),
                leg=(leg_m, "m"),
            ),
            phrase(
                "Above the leg the bow leans in: the bar rubs on it, and rain runs into the open "
                "side."
            ),
            phrase("Lower the hip board to the top of the leg.")
            if can
            else phrase("Reckon with a harder crank, or build the hip board out from the bow."),
            mend_or_none(partial(move_hip, case.tunnel, (n,), leg_m)) if can else None,
            STRAIGHT_SIDES,
        )


def bow_leans_in(case: Case) -> Iterator[Finding]:
    """A measured bow that leans in between the shut bar and the hip board."""
    if not isinstance(case.tunnel.frame.profile, MeasuredBow):
        return
    curve = case.survey.curve
    for n, side in enumerate(case.tunnel.sides):
        bar_x_m, _ = curve.point_at(curve.position_at_height(side.shut_height_m, n))
        inward = 1 if n == 0 else -1
        in_m = inward * (case.survey.hip_across_m[n] - bar_x_m)
        if side.kind not in MOVING or in_m <= LEANS_IN_M:
            continue
        yield case.finding(
            "hip.bow_leans_in",
            "caution",
            f"side/{n}/hip",
            phrase(
                "{side}: from the shut bar up to the hip board the bow leans in by {lean}.",
                side=side.name,
                lean=(in_m, "m"),
            ),
            phrase("The bar rubs on the bows, and rain runs into the open side."),
            phrase("Reckon with a harder crank, or build the hip board out from the bow."),
            None,
            STRAIGHT_SIDES,
        )


def wider_above_legs(case: Case) -> Iterator[Finding]:
    """A round bow that rises more than half its span is wider above the legs."""
    profile = case.tunnel.frame.profile
    if not isinstance(profile, RoundBow):
        return
    rise_m = profile.peak_height_m - profile.leg_height_m
    if rise_m <= profile.span_m / 2 + 0.005:
        return
    yield case.finding(
        "frame.wider_above_legs",
        "note",
        "frame",
        phrase(
            "The bow is wider above the legs: {width} against a span of {span}.",
            width=(case.survey.width_m, "m"),
            span=(profile.span_m, "m"),
        ),
        phrase("End wall sheets are sized by the greatest width, not by the span."),
        phrase("Nothing to do when the readings are right."),
    )


def door_too_large(case: Case) -> Iterator[Finding]:
    """A door that is larger than the end wall it stands in."""
    for n, end in enumerate(case.tunnel.ends):
        for door in end.doors:
            fits = door.height_m < case.survey.height_m and door.width_m < case.survey.width_m
            if fits:
                continue
            yield case.finding(
                "door.too_large",
                "fault",
                f"end/{n}",
                phrase(
                    "{end}: a door of {wide} by {high} does not fit an end wall of {width} by "
                    "{height}.",
                    end=end.name,
                    wide=(door.width_m, "m"),
                    high=(door.height_m, "m"),
                    width=(case.survey.width_m, "m"),
                    height=(case.survey.height_m, "m"),
                ),
                phrase("Channel and film round the door would be counted wrongly."),
                phrase("Correct the door's width and height."),
                None,
                ENTERED,
            )


def bar_above_baseboard(case: Case) -> Iterator[Finding]:
    """A shut curtain that ends above the baseboard leaves a gap."""
    for n, side in enumerate(case.tunnel.sides):
        spans = [span for span in case.chosen.cover.curtains if span.side == n]
        gap_m = max((span.board_gap_m for span in spans), default=0.0)
        if side.kind not in ROLLING or gap_m <= 0.001:
            continue
        fitted = side.but(shut_height_m=max(0.0, side.shut_height_m - gap_m - 0.05))
        yield case.finding(
            "bar.above_baseboard",
            "caution",
            f"side/{n}/baseboard",
            phrase(
                "{side}: shut, the bar hangs {gap} above the top of the baseboard.",
                side=side.name,
                gap=(gap_m, "m"),
            ),
            phrase("Wind and cold come in under the curtain, and the bar slaps the board."),
            phrase("Let the shut bar hang just below the top of the baseboard."),
            with_tunnel_value(case.tunnel, ("sides", n), fitted),
            PRACTICE,
        )
