"""Rules about pressure between two layers, and about what it does to film and seals."""

from collections.abc import Iterator

from hoopwright.checks.case import Case
from hoopwright.farm import Tunnel
from hoopwright.farm.change import with_tunnel_value
from hoopwright.pressure import BlowerTry, CellAir
from hoopwright.quantity.finding import Finding
from hoopwright.quantity.working import ENTERED, PRACTICE, phrase

FAIR_YIELD_SHARE = 0.5
FAIR_SEAL_SHARE = 0.5
WINDOW = f"the pressures wanted: {ENTERED}; 50 to 75 Pa: {PRACTICE}"


def never_fills(case: Case) -> Iterator[Finding]:
    """A blower that is weaker than the leaks."""
    held = case.held
    if not held.never_fills:
        return
    tried = case.held.fitting
    yield case.finding(
        "air.never_fills",
        "fault",
        "air",
        phrase(
            "The blower never fills the skin: {flow} leak away before any cell reaches {low}.",
            flow=(held.leak_m3_s, "m3/s"),
            low=(case.tunnel.air.low_pa, "Pa"),
        ),
        phrase("Layers that are not held apart rub through and keep little heat in."),
        phrase("Take {blower}.", blower=tried.name)
        if tried
        else phrase("No blower of the catalogue is strong enough: seal the leaks or enter one."),
        _with_blower(case, tried),
        WINDOW,
    )


def cells_low(case: Case) -> Iterator[Finding]:
    """Cells that air reaches and that stay below the pressure wanted."""
    low = [cell for cell in case.held.cells if cell.state in ("low", "flat")]
    if case.held.never_fills or not low:
        return
    tried = case.held.fitting
    worst = min(low, key=lambda cell: cell.pressure_pa)
    yield case.finding(
        "air.pressure_low",
        "caution",
        worst.mark,
        phrase(
            "{count} of {all} cells stay below {low}; lowest is {cell} with {pressure}.",
            count=len(low),
            all=len(case.held.cells),
            low=(case.tunnel.air.low_pa, "Pa"),
            cell=worst.name,
            pressure=(worst.pressure_pa, "Pa"),
        ),
        phrase("Film that is not held stiff flaps in the wind and wears on the bows."),
        phrase("Take {blower}.", blower=tried.name)
        if tried
        else phrase("Take a wider hose, a second jumper or a stronger blower; look for leaks."),
        _with_blower(case, tried),
        WINDOW,
    )


def cells_high(case: Case) -> Iterator[Finding]:
    """Cells that come above the greatest pressure wanted."""
    high = [cell for cell in case.held.cells if cell.state == "high"]
    if not high:
        return
    worst = max(high, key=lambda cell: cell.pressure_pa)
    tried = _own(case) or case.held.fitting
    yield case.finding(
        "air.pressure_high",
        "caution",
        worst.mark,
        phrase(
            "{cell} comes to {pressure}, above {high}.",
            cell=worst.name,
            pressure=(worst.pressure_pa, "Pa"),
            high=(case.tunnel.air.high_pa, "Pa"),
        ),
        phrase("Hard film pulls at channel and seals, and stretches for good."),
        phrase("Shut the damper to {share}.", share=(tried.open_share, "share"))
        if tried
        else phrase("Take a smaller blower."),
        _with_blower(case, tried),
        WINDOW,
    )


def chain_starves(case: Case) -> Iterator[Finding]:
    """A cell that gets its air through another one and stays low."""
    by_mark = {cell.mark: cell for cell in case.held.cells}
    for jumper in case.chosen.inflation.jumpers:
        giver, taker = by_mark.get(jumper.from_cell), by_mark.get(jumper.to_cell)
        if giver is None or taker is None or not _starves(case, giver, taker):
            continue
        yield case.finding(
            "air.chain_starves",
            "note",
            jumper.mark,
            phrase(
                "{taker} gets its air through {giver} and loses {drop} on the way.",
                taker=taker.name,
                giver=giver.name,
                drop=(giver.pressure_pa - taker.pressure_pa, "Pa"),
            ),
            phrase("The farther the air has to go, the less is left at the end of the chain."),
            phrase("Take a wider hose there, or add a second one."),
        )


def _starves(case: Case, giver: CellAir, taker: CellAir) -> bool:
    low = taker.state in ("low", "flat")
    return low and giver.pressure_pa >= case.tunnel.air.low_pa


def hose_cuts_off(case: Case) -> Iterator[Finding]:
    """A hose whose loss leaves several cells without air."""
    names = {cell.mark: cell.name for cell in case.held.cells}
    for hose in case.held.hoses:
        if len(hose.cuts_off) < 2:
            continue
        yield case.finding(
            "air.hose_cuts_off",
            "note",
            hose.mark,
            phrase(
                "If this hose comes off, {count} cells lose their air: {cells}.",
                count=len(hose.cuts_off),
                cells=", ".join(names[mark] for mark in hose.cuts_off),
            ),
            phrase("One kinked or torn hose would let them all down."),
            phrase("Hang a second hose beside it; two protect each other."),
            None,
            PRACTICE,
        )


def film_strained(case: Case) -> Iterator[Finding]:
    """Film that the pressure pulls near its yield."""
    for pull in case.held.pulls:
        if pull.yield_share <= FAIR_YIELD_SHARE:
            continue
        yield case.finding(
            "film.strained",
            "fault" if pull.yield_share > 1 else "caution",
            pull.mark,
            phrase(
                "{name}: {stress} in the film, {share} of its yield as entered.",
                name=pull.name,
                stress=(pull.stress_pa, "Pa_film"),
                share=(pull.yield_share, "share"),
            ),
            phrase("Film under long pull creeps: it grows slack and thin."),
            phrase("Blow less, leave a larger gap between the layers, or take thicker film."),
            None,
            f"membrane equation (thin cylinder); yield: {ENTERED}; half of it: {PRACTICE}",
        )


def seal_weak(case: Case) -> Iterator[Finding]:
    """Seals that are asked for more than half of what the coupon held, or that none was pulled."""
    held, coupon = case.held, case.coupon_n_m
    if held.seal_need_n_m <= 0:
        return
    if held.seal_share is None or coupon is None:
        yield case.finding(
            "seal.no_coupon",
            "note",
            "air",
            phrase(
                "No coupon of the seal is entered; the pressure asks for {need}.",
                need=(held.seal_need_n_m, "N/m"),
            ),
            phrase("A seal that looks sound may peel; only a pulled strip tells."),
            phrase("Seal a coupon before the curtains, pull it, and enter what it held."),
            None,
            "coupon tests: ASTM F88",
        )
        return
    if held.seal_share <= FAIR_SEAL_SHARE:
        return
    yield case.finding(
        "seal.weak",
        "fault" if held.seal_share > 1 else "caution",
        "air",
        phrase(
            "The pressure asks the seals for {need}; the coupon held {coupon}.",
            need=(held.seal_need_n_m, "N/m"),
            coupon=(coupon, "N/m"),
        ),
        phrase("Seals that peel let the curtain go flat; all are done again on the bench."),
        phrase("Seal hotter or longer and pull a new coupon, or blow less."),
        None,
        f"coupon: {ENTERED}; half of it at most: {PRACTICE}",
    )


def leak_found(case: Case) -> Iterator[Finding]:
    """A reading that shows more leak than the baseline."""
    for hint in case.held.leaks:
        if hint.grown_m2 is None or hint.grown_m2 <= 0:
            continue
        yield case.finding(
            "air.leak_grown",
            "caution",
            hint.cell,
            hint.told,
            phrase("A growing hole lets the blower work for nothing and the cell go flat."),
            phrase(
                "Look along its edges, seals and hoses first, then for cuts; tape and read again."
            ),
            None,
            f"readings: {ENTERED}",
        )


def second_layer_pays(case: Case) -> Iterator[Finding]:
    """What the second layer saves, said plainly."""
    if case.chosen.inflation.cells:
        yield case.finding(
            "heat.second_layer",
            "note",
            "roof",
            case.warmth.told,
            phrase("The second layer costs film, hoses, a blower and its power every year."),
            phrase("Look at it beside the frost you have had and the crop you grow."),
        )


def _own(case: Case) -> BlowerTry | None:
    """Return the chosen blower when it fits with its damper set, or None."""
    tries = case.held.tries
    return next((t for t in tries if t.chosen and t.fits), None)


def _with_blower(case: Case, tried: BlowerTry | None) -> Tunnel | None:
    if tried is None:
        return None
    changed = with_tunnel_value(case.tunnel, ("air", "blower"), tried.key)
    return with_tunnel_value(changed, ("air", "open_share"), tried.open_share)
