"""Rules about heights read along the sides, the ground under curtains, and measured bows."""

import math
from collections.abc import Iterator

from hoopwright.checks.case import Case
from hoopwright.cover.stretch import spanned_bows
from hoopwright.farm import MeasuredBow
from hoopwright.farm.change import with_tunnel_value
from hoopwright.farm.side import ROLLING
from hoopwright.quantity.finding import Finding
from hoopwright.quantity.working import ENTERED, PRACTICE, phrase

HAND_M = 0.1
CLEAR_M = 0.02
MISFIT_SHARE = 0.01
UNEQUAL_M = 0.05


def heights_crossed(case: Case) -> Iterator[Finding]:
    """Heights that cannot be: a hip board that is not between baseboard and ridge."""
    ridge_m = case.survey.height_m
    for n, (side, line) in enumerate(zip(case.tunnel.sides, case.survey.taped.lines, strict=True)):
        bar_m = side.shut_height_m if side.kind in ROLLING else -math.inf
        lows_m = [max(bar_m, base_m) for base_m in line.baseboard.heights_m]
        pairs = zip(line.hip.heights_m, lows_m, strict=True)
        wrong = [k for k, (hip_m, low_m) in enumerate(pairs) if not low_m < hip_m < ridge_m]
        if not wrong:
            continue
        k = wrong[0]
        yield case.finding(
            "tape.heights_crossed",
            "fault",
            f"side/{n}/hip",
            phrase(
                "{side}, bow {bow}: the hip board at {hip} does not lie between the ridge at "
                "{ridge} and what is below it, baseboard or shut bar at {low}.",
                side=side.name,
                bow=k + 1,
                hip=(line.hip.heights_m[k], "m"),
                low=(lows_m[k], "m"),
                ridge=(ridge_m, "m"),
            ),
            phrase("Nothing can be cut by heights that cannot be."),
            phrase(
                "Read the heights again from one level line; where only some bows were read, the "
                "others are drawn straight between them."
            ),
            None,
            ENTERED,
        )


def gap(case: Case) -> Iterator[Finding]:
    """Ground that falls away under a shut curtain."""
    for span in case.chosen.cover.curtains:
        side = case.tunnel.sides[span.side]
        panel = side.panels[span.index]
        if side.kind not in ROLLING or span.gap_m <= side.shut_height_m + HAND_M:
            continue
        yield case.finding(
            "tape.gap",
            "caution",
            span.mark,
            phrase(
                "{side}, curtain {number}: the ground falls away, and {gap} stand open under the "
                "shut bar where it is deepest.",
                side=side.name,
                number=span.index + 1,
                gap=(span.gap_m, "m"),
            ),
            phrase("Wind and cold come in under the baseboard there, and animals too."),
            phrase("Fill up the ground or lengthen the skirt.")
            if panel.bottom == "skirt"
            else phrase("Fill up the ground, add a board below, or close the gap with a skirt."),
            None,
            PRACTICE,
        )


def bar_on_ground(case: Case) -> Iterator[Finding]:
    """Ground that stands higher than the shut bar."""
    survey = case.survey
    for n, side in enumerate(case.tunnel.sides):
        if side.kind not in ROLLING:
            continue
        heights_m = survey.taped.lines[n].ground.heights_m
        under = {
            k
            for span in case.chosen.cover.curtains
            if span.side == n
            for k in spanned_bows(survey.bows_m, (span.open_from_m, span.open_to_m))
        }
        highest = max(under, key=lambda k: heights_m[k], default=None)
        if highest is None or heights_m[highest] <= side.shut_height_m:
            continue
        clear_m = heights_m[highest] + CLEAR_M
        yield case.finding(
            "tape.bar_on_ground",
            "caution",
            f"side/{n}/baseboard",
            phrase(
                "{side}: the ground at bow {bow} stands {over} above the shut bar.",
                side=side.name,
                bow=highest + 1,
                over=(heights_m[highest] - side.shut_height_m, "m"),
            ),
            phrase("The bar lies on the ground before it is shut, and film and bar wear there."),
            phrase("Dig the ground away, or let the bar shut at {clear}.", clear=(clear_m, "m")),
            with_tunnel_value(case.tunnel, ("sides", n, "shut_height_m"), clear_m),
            PRACTICE,
        )


def not_a_circle(case: Case) -> Iterator[Finding]:
    """A measured bow that is no circle arc."""
    survey = case.survey
    if survey.misfit_m is None or survey.best_radius_m is None:
        return
    if survey.misfit_m <= MISFIT_SHARE * survey.span_m:
        return
    yield case.finding(
        "tape.not_a_circle",
        "note",
        "frame",
        phrase(
            "The measured bow is no arc of a circle: the best one, of radius {radius}, is off its "
            "points by {misfit} in the mean.",
            radius=(survey.best_radius_m, "m"),
            misfit=(survey.misfit_m, "m"),
        ),
        phrase("It has legs, a pointed ridge or a dent, or a point was misread."),
        phrase("Look at the outline; nothing to do when it is the bow that stands there."),
        None,
        "1 % of the span: assumed, no published source",
    )


def unequal_sides(case: Case) -> Iterator[Finding]:
    """Sides that were measured and differ."""
    survey = case.survey
    read = isinstance(case.tunnel.frame.profile, MeasuredBow) or any(
        bow is not None for bow in survey.side_bows
    )
    first_m, second_m = survey.side_m
    if not read or abs(first_m - second_m) <= UNEQUAL_M:
        return
    yield case.finding(
        "tape.unequal_sides",
        "note",
        "frame",
        phrase(
            "From hip board to baseboard {first} measures {one} and {second} {other}.",
            first=case.tunnel.sides[0].name,
            one=(first_m, "m"),
            second=case.tunnel.sides[1].name,
            other=(second_m, "m"),
        ),
        phrase("Film cut for one side does not fit the other."),
        phrase("Mark every sheet with its side and its front end before it is rolled up."),
        None,
        PRACTICE,
    )
