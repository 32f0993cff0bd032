"""What holding the cells under pressure takes. The stage function is `hold_air` in `holding`."""

from collections.abc import Callable
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Literal

from hoopwright.farm.air import AirReading
from hoopwright.pressure.net import AirNet
from hoopwright.quantity.working import Explained, Phrase

AirState = Literal["not fed", "flat", "low", "in range", "high"]
Verdict = Literal["never fills", "too weak", "fits", "too strong", "fits with the damper"]


@dataclass(frozen=True, slots=True, kw_only=True)
class CellAir(Explained):
    """One cell at rest.

    Attributes:
        mark: Mark of the cell.
        name: What people call it.
        pressure_pa: Pressure above outdoors, Pa.
        state: Not fed: no air reaches it; flat: the layers hang slack; low, in range or high:
            against the pressures wanted.
        leak_m3_s: What it loses, m3/s.
        minutes: Until it is filled, roughly, min; None when it never is.
    """

    mark: str
    name: str
    pressure_pa: float
    state: AirState
    leak_m3_s: float
    minutes: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class HoseAir(Explained):
    """One jumper hose at rest.

    Attributes:
        mark: Mark of the jumper.
        flow_m3_s: Air along it, m3/s; negative against its direction.
        loss_pa: Pressure it takes from that air, Pa; negative likewise.
        critical: Whether some cell has no other way to its air.
        cuts_off: Marks of the cells without air when it fails.
    """

    mark: str
    flow_m3_s: float
    loss_pa: float
    critical: bool
    cuts_off: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class BlowerTry(Explained):
    """One blower of the catalogue on this tunnel.

    Attributes:
        key: Catalogue key.
        name: Generic name.
        chosen: Whether it is the one chosen.
        low_pa: Least pressure of a cell that air reaches, with the damper as told, Pa.
        high_pa: Greatest pressure of a cell, likewise, Pa.
        flow_m3_s: Air it gives, likewise, m3/s.
        verdict: Whether every cell that air reaches comes to the pressures wanted.
        open_share: How far its damper is open for these figures.
        yearly_cost: Power for a year.
    """

    key: str
    name: str
    chosen: bool
    low_pa: float
    high_pa: float
    flow_m3_s: float
    verdict: Verdict
    open_share: float
    yearly_cost: Decimal

    @property
    def fits(self) -> bool:
        """Whether it comes to the pressures wanted, with its damper set where it needs one."""
        return self.verdict in ("fits", "fits with the damper")


@dataclass(frozen=True, slots=True, kw_only=True)
class FilmPull(Explained):
    """What the air does to one layer of film.

    Attributes:
        mark: `pull/roof/outer`, `pull/roof/inner`, `pull/side/0/outer`, `pull/end/1/outer`.
        name: What people call it.
        pressure_pa: Greatest pressure of its cells, Pa.
        chord_m: Between the lines that hold it, m.
        extra_share: How much longer than the chord the film between them is.
        radius_m: Radius of its bow, m.
        tension_n_m: Pull in a strip one metre wide, N/m.
        stress_pa: Stress in the layer, Pa.
        yield_share: Stress over that at which the film stretches for good.
    """

    mark: str
    name: str
    pressure_pa: float
    chord_m: float
    extra_share: float
    radius_m: float
    tension_n_m: float
    stress_pa: float
    yield_share: float


@dataclass(frozen=True, slots=True, kw_only=True)
class LeakHint(Explained):
    """What one reading tells about the leaks.

    Attributes:
        taken_on: Date of the reading.
        cell: Mark of the cell.
        pressure_pa: Measured pressure, Pa.
        planned_pa: What the plan has there, Pa.
        leak_m3_s: All leaks at the pressure of comparison, m3/s; None without measured air.
        hole_m2: One sharp-edged hole that lets as much through, m2; None likewise.
        baseline_on: Date of the baseline it is set against; "" without one, or for a baseline.
        grown_m2: Hole beyond the baseline's, m2; None without measured air in both.
        fallen_pa: Pressure below the baseline's in the same cell, Pa; None without one.
        told: The same as a sentence.
    """

    taken_on: str
    cell: str
    pressure_pa: float
    planned_pa: float
    leak_m3_s: float | None
    hole_m2: float | None
    baseline_on: str
    grown_m2: float | None
    fallen_pa: float | None
    told: Phrase


@dataclass(frozen=True, slots=True, kw_only=True)
class LeakingCell(Explained):
    """Which cell's leak explains the last readings best.

    Attributes:
        taken_on: Date of the readings.
        cell: Mark of the cell; "" when the readings point to none.
        extra_m3_s: What leaks there beyond the plan, m3/s.
        hole_m2: A sharp-edged hole that lets as much through, m2.
        as_likely: Marks of cells that explain the readings as well.
        told: The same as a sentence.
    """

    taken_on: str
    cell: str
    extra_m3_s: float
    hole_m2: float
    as_likely: tuple[str, ...]
    told: Phrase


@dataclass(frozen=True, slots=True, kw_only=True)
class Held(Explained):
    """The cells of one tunnel under pressure.

    Attributes:
        cells: Every cell.
        hoses: Every jumper hose.
        low_pa: Least pressure of a cell that air reaches, Pa; 0 without one.
        high_pa: Greatest pressure of a cell, Pa.
        fan_flow_m3_s: What the blower gives, m3/s.
        fan_pressure_pa: Pressure at its outlet, Pa.
        feed_loss_pa: What its hose and damper take, Pa.
        leak_m3_s: All leaks, m3/s.
        never_fills: Whether a blower runs and its air leaks away before any cell is filled.
        fill_min: Until all cells that air reaches are filled, roughly, min; None when never.
        power_w: Electric power of the blower, W.
        power_per_area_w_m2: Power over floor, W/m2.
        book_power_w: What a textbook's rule gives for this floor, W.
        yearly_kwh: Electricity in a year, kWh.
        yearly_cost: What that costs.
        tries_made: Tries every blower of the catalogue; done once, when somebody asks.
        fitting_made: Looks for the cheapest that fits; done once, when somebody asks.
        pulls: What the air does to the film, by kind of cell and layer.
        slack_m: Roof film left loose over its length on the day of pulling, m.
        sag_m: How far that slack hangs in the widest bay, m.
        seal_need_n_m: What the seals are asked for, N/m; 0 without seals under pressure.
        seal_share: The same over what a coupon held; None without a coupon.
        leaks: What the readings tell, oldest first.
        told: How it stands, as a sentence.
        told_window: The published pressures and power beside those here.
        net: The net that was settled; None without air.
        volumes_m3: Air in each cell of the net when full, m3.
        full_pa: Pressure those volumes belong to, Pa.
        readings: What was measured.
    """

    cells: tuple[CellAir, ...]
    hoses: tuple[HoseAir, ...]
    low_pa: float
    high_pa: float
    fan_flow_m3_s: float
    fan_pressure_pa: float
    feed_loss_pa: float
    leak_m3_s: float
    never_fills: bool
    fill_min: float | None
    power_w: float
    power_per_area_w_m2: float
    book_power_w: float
    yearly_kwh: float
    yearly_cost: Decimal
    tries_made: Callable[[], tuple[BlowerTry, ...]] = field(repr=False, compare=False)
    fitting_made: Callable[[], BlowerTry | None] = field(repr=False, compare=False)
    pulls: tuple[FilmPull, ...]
    slack_m: float
    sag_m: float
    seal_need_n_m: float
    seal_share: float | None
    leaks: tuple[LeakHint, ...]
    told: Phrase
    told_window: Phrase
    net: AirNet | None = field(repr=False, compare=False)
    volumes_m3: tuple[float, ...] = field(repr=False, compare=False)
    full_pa: float = field(repr=False, compare=False)
    readings: tuple[AirReading, ...] = field(repr=False, compare=False)

    @property
    def tries(self) -> tuple[BlowerTry, ...]:
        """Every blower of the catalogue on this tunnel."""
        return self.tries_made()

    @property
    def fitting(self) -> BlowerTry | None:
        """The blower that comes to the pressures wanted and costs least in a year, or None."""
        return self.fitting_made()
