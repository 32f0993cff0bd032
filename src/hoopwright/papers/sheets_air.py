"""The air between two layers: pressures, hoses, blowers, seals, and what film and seals hold."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Generic, TypeVar

from hoopwright.farm.farm import Farm, Tunnel
from hoopwright.inflation.inflation import Cell, Inflation, Jumper, Seal
from hoopwright.papers.cautions import CAUTIONS
from hoopwright.papers.sheet import NOTE, TEXT, TITLE, Row, Sheet, wide_row
from hoopwright.papers.sheet_figures import Figure, listed_rows
from hoopwright.papers.side_words import SEALERS, place_name
from hoopwright.plan import Plan
from hoopwright.pressure import BlowerTry, CellAir, FilmPull, Held, HoseAir, LeakHint, leaking_cell
from hoopwright.quantity.working import words

T = TypeVar("T")

AIR_WIDTHS = (16.0, 32.0, 26.0, *(11.5 for _ in range(7)))
LAST = len(AIR_WIDTHS)
NO_AIR = "No two layers have air between them."
NO_SEAL = "No edge has to be sealed."
TEST_STRIP = "Make and pull a test strip before the first seal of each film and each day."
HOSE_NOTE = "When the only hose to a cell fails, the cell goes flat; a second one stands in for it."
FILM_NOTE = (
    "Of its yield: the stress over that at which the film stretches for good, at the greatest "
    "pressure of its cells. Old film stretches sooner."
)
SEAL_NOTE = (
    "What seals are asked for is reckoned over the whole way between two seals, as if no bow "
    "helped: an upper bound. Compare it with what a test strip of the same film held."
)
COLD_NOTE = (
    "So much of the roof film is left loose on the day of pulling, so that it is just taut in the "
    "coldest hour: an upper bound, as film gives."
)


@dataclass(frozen=True, slots=True)
class _Of(Generic[T]):
    """A thing with the farm, the tunnel and the plan it belongs to.

    Attributes:
        farm: The farm.
        tunnel: The tunnel.
        air: Its cells, jumpers and seals.
        held: The same under pressure.
        it: The thing.
    """

    farm: Farm
    tunnel: Tunnel
    air: Inflation
    held: Held
    it: T

    def cell(self, mark: str) -> str:
        """Return what people call a cell."""
        return next((cell.name for cell in self.air.cells if cell.mark == mark), mark)


_Cell = _Of[tuple[Cell, CellAir]]
_Hose = _Of[tuple[Jumper, HoseAir]]

CELLS: tuple[Figure[_Cell], ...] = (
    Figure("Tunnel", lambda c: c.tunnel.name),
    Figure("Cell", lambda c: c.it[0].name),
    Figure("Air comes", lambda c: "from the blower" if c.it[0].fed else "by jumper hose"),
    Figure("Pressure", lambda c: c.it[1].pressure_pa, "Pa"),
    Figure("State", lambda c: c.it[1].state),
    Figure("From", lambda c: c.it[0].from_m, "m"),
    Figure("To", lambda c: c.it[0].to_m, "m"),
    Figure("Volume", lambda c: c.it[0].volume_m3, "m3"),
    Figure("Leaks", lambda c: c.it[1].leak_m3_s, "m3/s"),
    Figure("Full after", lambda c: c.it[1].minutes, "min"),
)
HOSES: tuple[Figure[_Hose], ...] = (
    Figure("Tunnel", lambda h: h.tunnel.name),
    Figure("Hose", lambda h: f"{h.cell(h.it[0].from_cell)} to {h.cell(h.it[0].to_cell)}"),
    Figure("Only way to", lambda h: _only_way(h)),
    Figure("At", lambda h: h.it[0].at_m, "m"),
    Figure("Hangs on", lambda h: _hangs_on(h)),
    Figure("Air in it", lambda h: abs(h.it[1].flow_m3_s), "m3/s"),
    Figure("Takes", lambda h: abs(h.it[1].loss_pa), "Pa"),
    Figure("Place", lambda h: "by hand" if h.it[0].placed else "worked out"),
)
SUMS: tuple[Figure[_Of[Held]], ...] = (
    Figure("Tunnel", lambda b: b.tunnel.name),
    Figure("Blower", lambda b: _blower(b)),
    Figure("Its air", lambda b: _its_air(b.it)),
    Figure("Air it gives", lambda b: b.it.fan_flow_m3_s, "m3/s"),
    Figure("At its outlet", lambda b: b.it.fan_pressure_pa, "Pa"),
    Figure("Its hose and damper take", lambda b: b.it.feed_loss_pa, "Pa"),
    Figure("All full after", lambda b: b.it.fill_min, "min"),
    Figure("Power", lambda b: b.it.power_w, "W"),
    Figure("In a year", lambda b: b.it.yearly_kwh, "kWh"),
    Figure("That costs", lambda b: b.it.yearly_cost, "money"),
)
TRIED: tuple[Figure[_Of[BlowerTry]], ...] = (
    Figure("Tunnel", lambda t: t.tunnel.name),
    Figure("Blower", lambda t: t.it.name + (", chosen" if t.it.chosen else "")),
    Figure("What comes of it", lambda t: t.it.verdict),
    Figure("Lowest cell", lambda t: t.it.low_pa, "Pa"),
    Figure("Highest cell", lambda t: t.it.high_pa, "Pa"),
    Figure("Air it gives", lambda t: t.it.flow_m3_s, "m3/s"),
    Figure("Damper open", lambda t: t.it.open_share, "share"),
    Figure("Power for a year", lambda t: t.it.yearly_cost, "money"),
)
SEALED: tuple[Figure[_Of[Seal]], ...] = (
    Figure("Tunnel", lambda s: s.tunnel.name),
    Figure("Sheet", lambda s: place_name(s.tunnel, s.it.mark)),
    Figure("State", lambda s: "stays, sealed" if s.it.there else "to seal"),
    Figure("Edge", lambda s: s.it.edge),
    Figure("Edge length", lambda s: s.it.length_m, "m"),
    Figure("Seals on it", lambda s: s.it.passes, "count"),
    Figure("Apart", lambda s: s.it.spacing_m or None, "m_thin"),
    Figure("Strokes in all", lambda s: s.it.strokes or None, "count"),
    Figure("Seal in all", lambda s: s.it.total_m, "m"),
    Figure("Bench", lambda s: s.it.minutes, "min"),
)
BENCH: tuple[Figure[_Of[Inflation]], ...] = (
    Figure("Tunnel", lambda b: b.tunnel.name),
    Figure("All sheets", lambda b: f"{_to_seal(b.it)} to seal"),
    Figure("Sealer", lambda b: SEALERS[b.farm.bench.sealer]),
    Figure("All seals", lambda b: b.it.seal_m, "m"),
    Figure("Strokes in all", lambda b: b.it.strokes or None, "count"),
    Figure("Heating elements", lambda b: b.it.elements, "count"),
    Figure("Bench", lambda b: b.it.bench_min, "min"),
    Figure("Seals are asked for", lambda b: b.held.seal_need_n_m, "N/m"),
    Figure("Test strip held", lambda b: b.farm.bench.coupon_n_m, "N/m"),
    Figure("Asked, of the strip", lambda b: b.held.seal_share, "share"),
)
PULLED: tuple[Figure[_Of[FilmPull]], ...] = (
    Figure("Tunnel", lambda p: p.tunnel.name),
    Figure("Film", lambda p: p.it.name),
    Figure("Of its yield", lambda p: p.it.yield_share, "share"),
    Figure("Pressure", lambda p: p.it.pressure_pa, "Pa"),
    Figure("Held every", lambda p: p.it.chord_m, "m"),
    Figure("Longer than flat", lambda p: p.it.extra_share, "share"),
    Figure("Radius", lambda p: p.it.radius_m, "m"),
    Figure("Pull", lambda p: p.it.tension_n_m, "N/m"),
    Figure("Stress", lambda p: p.it.stress_pa, "Pa_film"),
)
COLD: tuple[Figure[_Of[Held]], ...] = (
    Figure("Tunnel", lambda h: h.tunnel.name),
    Figure("Slack to leave over the length", lambda h: h.it.slack_m, "m_thin"),
    Figure("Hangs in the widest bay", lambda h: h.it.sag_m, "m_thin"),
)
READ: tuple[Figure[_Of[LeakHint]], ...] = (
    Figure("Tunnel", lambda r: r.tunnel.name),
    Figure("Cell", lambda r: r.cell(r.it.cell)),
    Figure("Read on", lambda r: r.it.taken_on),
    Figure("Read", lambda r: r.it.pressure_pa, "Pa"),
    Figure("In the plan", lambda r: r.it.planned_pa, "Pa"),
    Figure("All leaks at 50 Pa", lambda r: r.it.leak_m3_s, "m3/s"),
    Figure("As one hole", lambda r: r.it.hole_m2, "m2_thin"),
    Figure("Grown by", lambda r: r.it.grown_m2, "m2_thin"),
    Figure("Since", lambda r: r.it.baseline_on or None),
)


def air_sheet(farm: Farm, plan: Plan) -> Sheet:
    """Return the cells under pressure with their hoses and blowers, the seals, and the film."""
    whole = [
        _Of(farm, tunnel, planned.chosen.inflation, planned.held, planned.held)
        for tunnel, planned in zip(farm.tunnels, plan.tunnels, strict=True)
    ]
    rows = [
        wide_row("Air between two layers", TITLE, LAST),
        wide_row(f"Amounts of money in {farm.money.currency}. {TEST_STRIP}", NOTE, LAST),
        Row(),
        *(row for one in whole for row in _told(one)),
        *_cells(whole),
        *_blowers(whole),
    ]
    breaks = (len(rows),) if any(one.air.seals for one in whole) else ()
    rows += [*_seals(whole), *_film(whole), *_readings(whole)]
    return Sheet(name="Air", widths=AIR_WIDTHS, rows=tuple(rows), breaks=breaks)


def _told(one: _Of[Held]) -> Iterator[Row]:
    """Yield how the cells of a tunnel stand, and what is written about it."""
    window = (one.held.told_window,) if one.held.cells else ()
    for told in (one.held.told, *window):
        yield wide_row(words(told, one.farm.units), TEXT, LAST, label=one.tunnel.name)


def _caution(mark: str) -> Row:
    """Return one caution in full."""
    (caution,) = (c for c in CAUTIONS if c.id == mark)
    return wide_row(caution.text, TEXT, LAST, label=caution.title)


def _each(whole: Iterable[_Of[Held]], of: Callable[[_Of[Held]], Iterable[T]]) -> list[_Of[T]]:
    """Return the things of all tunnels, each with what it belongs to."""
    return [_Of(o.farm, o.tunnel, o.air, o.held, thing) for o in whole for thing in of(o)]


def _cells(whole: Sequence[_Of[Held]]) -> Iterator[Row]:
    units = whole[0].farm.units
    cells = _each(whole, lambda o: zip(o.air.cells, o.held.cells, strict=True))
    hoses = _each(whole, lambda o: zip(o.air.jumpers, o.held.hoses, strict=True))
    yield from listed_rows("Cells", CELLS, cells, units, LAST, NO_AIR)
    if cells:
        yield _caution("air_off")
    no_hose = "No jumper hose is needed."
    yield from listed_rows("Jumper hoses", HOSES, hoses, units, LAST, no_hose)
    if hoses:
        yield wide_row(HOSE_NOTE, NOTE, LAST)


def _blowers(whole: Sequence[_Of[Held]]) -> Iterator[Row]:
    units = whole[0].farm.units
    running = [one for one in whole if one.air.blower is not None]
    tried = _each(whole, lambda o: o.held.tries)
    yield from listed_rows("The blower", SUMS, running, units, LAST, "No blower is chosen.")
    none = "No blower of the catalogue could be tried."
    yield from listed_rows("Blowers of the catalogue, tried", TRIED, tried, units, LAST, none)
    if running or tried:
        yield _caution("electricity")


def _seals(whole: Sequence[_Of[Held]]) -> Iterator[Row]:
    units = whole[0].farm.units
    seals = _each(whole, lambda o: o.air.seals)
    benches = _each((o for o in whole if o.air.seals), lambda o: (o.air,))
    yield from listed_rows("Seals, edge by edge", SEALED, seals, units, LAST, NO_SEAL)
    if seals:
        yield from listed_rows("At the bench", BENCH, benches, units, LAST, NO_SEAL)
        yield wide_row(SEAL_NOTE, NOTE, LAST)
        yield _caution("sealer")


def _film(whole: Sequence[_Of[Held]]) -> Iterator[Row]:
    units = whole[0].farm.units
    pulls = _each(whole, lambda o: o.held.pulls)
    yield from listed_rows("Film under pressure", PULLED, pulls, units, LAST, NO_AIR)
    if pulls:
        yield wide_row(FILM_NOTE, NOTE, LAST)
    yield from listed_rows("Film for the coldest day", COLD, whole, units, LAST, "")
    yield wide_row(COLD_NOTE, NOTE, LAST)


def _readings(whole: Sequence[_Of[Held]]) -> Iterator[Row]:
    units = whole[0].farm.units
    read = _each(whole, lambda o: o.held.leaks)
    none = "No pressure has been read yet. A first reading, when all is sound, is worth most."
    yield from listed_rows("Readings", READ, read, units, LAST, none)
    for reading in read:
        yield wide_row(words(reading.it.told, units), TEXT, LAST, label=reading.tunnel.name)
    for one in whole:
        found = leaking_cell(one.held)
        if found is not None:
            yield wide_row(words(found.told, units), TEXT, LAST, label=one.tunnel.name)


def _blower(one: _Of[Held]) -> str:
    key = one.air.blower
    return one.farm.catalogue.blower(key).name if key is not None else ""


def _its_air(held: Held) -> str:
    return "leaks away before a cell fills" if held.never_fills else "fills the cells it reaches"


def _to_seal(inflation: Inflation) -> int:
    """Return how many sheets have to be sealed; those that stay have their seals."""
    return len({seal.mark for seal in inflation.seals if not seal.there})


def _only_way(hose: _Hose) -> str:
    names = [hose.cell(mark) for mark in hose.it[1].cuts_off]
    return ", ".join(names) or "no cell, another hose helps"


def _hangs_on(hose: _Hose) -> str:
    jumper = hose.it[0]
    if jumper.to_cell.startswith("cell/end/"):
        return "end wall"
    if jumper.to_cell.startswith("cell/roof/"):
        return "roof"
    return "" if jumper.side is None else hose.tunnel.sides[jumper.side].name
