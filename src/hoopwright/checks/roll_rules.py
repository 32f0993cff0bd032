"""Rules about bar and roll: a slit bar, a heavier wall, gutter, pocket film, rain."""

import math
from collections.abc import Iterator

from hoopwright.checks.case import Case
from hoopwright.curtain import CurtainWork
from hoopwright.farm import Bar, Tunnel
from hoopwright.farm.change import with_tunnel_value
from hoopwright.farm.farm import fits_bar
from hoopwright.farm.side import ROLLING
from hoopwright.quantity.finding import Finding
from hoopwright.quantity.working import PRACTICE, phrase

SPARE_M = 0.005


def bar_slit(case: Case) -> Iterator[Finding]:
    """A bar that trails because its channel slits it along its length."""
    for work in case.chosen.curtains:
        bar = work.hung.bar
        if not bar.slit or work.trailing_m <= case.limits.trailing_m:
            continue
        closed = _closed(case, work)
        yield case.finding(
            "bar.slit",
            "caution",
            work.mark,
            phrase(
                "{side}, curtain {number}: the {bar} is slit along its length and twists by "
                "{twist} from the crank to its far end.",
                side=case.tunnel.sides[work.side].name,
                number=work.index + 1,
                bar=bar.name,
                twist=(work.twist_rad, "rad"),
            ),
            phrase("A slit tube resists twisting some hundred times less than a closed one."),
            phrase("Take a closed bar, such as the {bar}.", bar=closed.name)
            if closed
            else phrase("Enter a closed bar in the catalogue and take it, or split the curtain."),
            _with_bar(case, work, closed),
            "torsion of open and closed thin-walled sections (textbook)",
        )


def _closed(case: Case, work: CurtainWork) -> Bar | None:
    """Return a closed bar in place of a slit one: of the same grip, or else any that fits."""
    fitting = [b for b in case.catalogue.bars if not b.slit and fits_bar(work.kind, b)]
    alike = [b for b in fitting if b.grip == work.hung.bar.grip]
    return next(iter((*alike, *fitting)), None)


def _with_bar(case: Case, work: CurtainWork, bar: Bar | None) -> Tunnel | None:
    if bar is None:
        return None
    return with_tunnel_value(
        case.tunnel, ("sides", work.side, "panels", work.index, "bar"), bar.key
    )


def wall_heavier(case: Case) -> Iterator[Finding]:
    """A bar of heavier wall that trails as the lighter one of its outside would."""
    for work in case.chosen.curtains:
        bar = work.hung.bar
        lighter = next((b for b in case.catalogue.bars if _is_lighter(b, bar)), None)
        if lighter is None or work.trailing_m <= case.limits.trailing_m:
            continue
        yield case.finding(
            "bar.wall_heavier",
            "note",
            work.mark,
            phrase(
                "{side}, curtain {number}: the wall of {wall} does not keep the bar from trailing.",
                side=case.tunnel.sides[work.side].name,
                number=work.index + 1,
                wall=(bar.section.wall_m, "m_thin"),
            ),
            phrase(
                "A heavier wall adds weight as it adds stiffness, so a bare tube twists as much, "
                "and the handle is harder. Only the share of cap and film grows less."
            ),
            phrase(
                "Take a larger diameter or a shorter bar; the {lighter} turns more easily.",
                lighter=lighter.name,
            ),
            _with_bar(case, work, lighter),
            "torsion of a thin-walled tube under its own weight, derived here",
        )


def _is_lighter(bar: Bar, than: Bar) -> bool:
    """Return whether a bar is the same but for a thinner wall."""
    if type(bar.section) is not type(than.section) or bar.slit or than.slit:
        return False
    alike = (bar.material, bar.grip) == (than.material, than.grip)
    same_m = math.isclose(bar.section.outside_m, than.section.outside_m, abs_tol=1e-4)
    return alike and same_m and bar.section.wall_m < than.section.wall_m - 1e-5


def roll_meets_gutter(case: Case) -> Iterator[Finding]:
    """An open roll that runs against the gutter; one finding for a side."""
    for n, side in enumerate(case.tunnel.sides):
        gaps = [
            (w.gutter_gap_m, w)
            for w in case.chosen.curtains
            if w.side == n and w.gutter_gap_m is not None and w.gutter_gap_m < 0
        ]
        if not gaps:
            continue
        gap_m, work = min(gaps, key=lambda pair: pair[0])
        stop_m = math.ceil((side.stop_m - gap_m) / SPARE_M + 1) * SPARE_M
        can = side.kind in ROLLING and stop_m < min(2.0, work.travel_m + side.stop_m)
        yield case.finding(
            "roll.meets_gutter",
            "caution",
            work.mark,
            phrase(
                "{side}: open, the roll runs {over} into the gutter.",
                side=side.name,
                over=(-gap_m, "m_thin"),
            ),
            phrase("The film is chafed through, and the gutter is torn off by the crank."),
            phrase("Stop the bar {stop} below the hip board.", stop=(stop_m, "m"))
            if can
            else phrase("Hang the gutter higher or farther out."),
            with_tunnel_value(case.tunnel, ("sides", n, "stop_m"), stop_m) if can else None,
        )


def roll_rubs(case: Case) -> Iterator[Finding]:
    """A roll that rubs on pocket film and bows behind it; one finding for a side."""
    for n, side in enumerate(case.tunnel.sides):
        works = [w for w in case.chosen.curtains if w.side == n and w.pocket_gap_m < 0]
        if not works:
            continue
        work = min(works, key=lambda w: w.pocket_gap_m)
        stand_m = case.tunnel.frame.boards[n].stand_off_m - work.pocket_gap_m
        stand_m = math.ceil(stand_m / SPARE_M - 1e-9) * SPARE_M
        yield case.finding(
            "roll.rubs",
            "note",
            work.mark,
            phrase(
                "{side}: the open roll reaches {over} into pocket film and bows.",
                side=side.name,
                over=(-work.pocket_gap_m, "m_thin"),
            ),
            phrase(
                "A roll on the tunnel side of the film needs as much room as it is thick; it rubs "
                "the pocket film through."
            ),
            phrase(
                "Let the hip board stand {stand} off the bows, or wind the film out.",
                stand=(stand_m, "m_thin"),
            ),
            with_tunnel_value(case.tunnel, ("frame", "boards", n, "stand_off_m"), stand_m)
            if stand_m <= 0.5
            else None,
        )


def rain_in_roll(case: Case) -> Iterator[Finding]:
    """A roll outside the film, in whose nip rain gathers; one finding for a side."""
    for n, side in enumerate(case.tunnel.sides):
        out = [i for i, panel in enumerate(side.panels) if panel.winding == "out"]
        if side.kind not in ROLLING or not out:
            continue
        panels = tuple(panel.but(winding="into") for panel in side.panels)
        yield case.finding(
            "roll.rain",
            "note",
            f"side/{n}/panel/{out[0]}",
            phrase("{side}: the film winds out, with the roll outside of it.", side=side.name),
            phrase(
                "Rain that runs down the film gathers in the roll: it weighs at the crank, stays "
                "between the turns and freezes there."
            ),
            phrase(
                "Wind it into the tunnel side when the hip board stands off farther than the roll "
                "is thick; else shut the side before rain."
            ),
            with_tunnel_value(case.tunnel, ("sides", n, "panels"), panels),
            PRACTICE,
        )
