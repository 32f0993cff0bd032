"""How each figure of the cells under pressure was got, and how it is told in a sentence."""

from dataclasses import replace

from hoopwright.farm import Air, Bench, Blower, Climate, Film
from hoopwright.inflation import Cell, Inflation, Jumper
from hoopwright.pressure.balance import FILLS_AT_PA
from hoopwright.pressure.filling import FILLED_SHARE
from hoopwright.pressure.held import CellAir, Held, HoseAir
from hoopwright.pressure.membrane import STEEL_1_K
from hoopwright.pressure.planned_net import damper_loss
from hoopwright.pressure.published import (
    BOOK,
    BOOK_PA,
    PRACTICE_MOST_PA,
    PRACTICE_PA,
    WINDOW_SOURCE,
)
from hoopwright.quantity.working import (
    DERIVED,
    ENTERED,
    LaterWorkings,
    Phrase,
    Term,
    Working,
    phrase,
)
from hoopwright.survey.survey import Survey

BALANCE_SOURCE = (
    "leak as a power of the pressure: common practice for buildings; loss of hoses: Darcy and "
    "Weisbach with Churchill, Chemical Engineering 84(24), 91-92 (1977), from memory; curve of the "
    f"blower: {ENTERED}"
)
THERMAL_SOURCE = (
    "thermal expansion (textbook); polyethylene 1 to 2e-4 for each kelvin (Cardarelli, Materials "
    "Handbook, 2018), steel 1.2e-5 (textbook)"
)


def told_state(held: Held, air: Air) -> Phrase:
    """Return how the cells stand, as a sentence."""
    if not held.cells:
        return phrase("No part of the skin has two layers with air between.")
    if held.net is None:
        return phrase("No blower runs, or no hose or cell for it: the layers lie on each other.")
    if held.never_fills:
        return phrase(
            "The leaks take all of the blower's {flow} before any cell is filled: choose a "
            "stronger blower or seal better.",
            flow=(held.fan_flow_m3_s, "m3/s"),
        )
    outside = sum(cell.state != "in range" for cell in held.cells)
    stand = "all in range" if not outside else f"{outside} of {len(held.cells)} not in range"
    return phrase(
        "Cells stand at {low} to {high}, wanted {least} to {most}: {stand}.",
        low=(held.low_pa, "Pa"),
        high=(held.high_pa, "Pa"),
        least=(air.low_pa, "Pa"),
        most=(air.high_pa, "Pa"),
        stand=stand,
    )


def told_window(held: Held) -> Phrase:
    """Return the published pressures and power beside those here."""
    return phrase(
        "Common practice, with no published source, is {low} to {high}; one textbook has {least} "
        "to {most}, and by its rule this floor takes {book}; this blower takes {power}. In strong "
        "wind and under snow many raise the pressure a little, never above about {highest}, and "
        "lower it in calm heat: common practice, no published source.",
        low=(PRACTICE_PA[0], "Pa"),
        high=(PRACTICE_PA[1], "Pa"),
        least=(BOOK_PA[0], "Pa"),
        most=(BOOK_PA[1], "Pa"),
        book=(held.book_power_w, "W"),
        highest=(PRACTICE_MOST_PA, "Pa"),
        power=(held.power_w, "W"),
    )


def explain_cell(air_in: CellAir, cell: Cell, air: Air) -> CellAir:
    """Return a cell with a working for each of its figures."""
    pressure = Term("pressure", air_in.pressure_pa, "Pa")
    unit = Term("leak at 1 Pa", cell.unit_leak_m3_s, "m3/s")
    power = Term("leak exponent", air.leak_exponent, "ratio")
    return replace(
        air_in,
        workings=LaterWorkings(
            lambda: (
                Working(
                    "pressure_pa",
                    "The pressures at which every cell loses what it gets, through all hoses and "
                    "leaks at once, with the blower on its curve.",
                    (unit, power),
                    BALANCE_SOURCE,
                ),
                Working(
                    "state",
                    "Not fed without a chain of hoses from the blower, flat while the layers hang "
                    "slack, else against the pressures wanted.",
                    (
                        pressure,
                        Term("flat below", FILLS_AT_PA, "Pa"),
                        Term("least wanted", air.low_pa, "Pa"),
                        Term("greatest wanted", air.high_pa, "Pa"),
                    ),
                    WINDOW_SOURCE,
                ),
                Working(
                    "leak_m3_s",
                    "Leak at 1 Pa times a power of the pressure.",
                    (unit, pressure, power),
                    f"common practice for leaks of buildings; coefficients: {ENTERED}",
                ),
                Working(
                    "minutes",
                    "Roughly: all cells fill as one whose pressure grows with the third power of "
                    "its volume; a cell behind a thin hose takes at least its own volume over what "
                    "the hose lets through.",
                    (
                        Term("air when full", cell.volume_m3, "m3"),
                        Term("counts as filled at", FILLED_SHARE, "share"),
                    ),
                ),
            )
        ),
    )


def explain_hose(hose: HoseAir, jumper: Jumper, air: Air) -> HoseAir:
    """Return a jumper hose with a working for each of its figures."""
    ends = (
        Term("from", jumper.from_cell, "text"),
        Term("to", jumper.to_cell, "text"),
        Term("length", air.jumper_hose_m, "m"),
    )
    return replace(
        hose,
        workings=LaterWorkings(
            lambda: (
                Working("flow_m3_s", "What the cells behind it lose.", ends, BALANCE_SOURCE),
                Working(
                    "loss_pa",
                    "Wall and both ends, times the velocity pressure.",
                    (Term("air", hose.flow_m3_s, "m3/s"), *ends),
                    BALANCE_SOURCE,
                ),
                Working(
                    "critical",
                    "Without it some cell has no way to the blower's air; two hoses side by side "
                    "stand in for each other.",
                    ends,
                    "bridges of a graph: Tarjan, Information Processing Letters 2(6), 160-161 "
                    "(1974), from memory",
                ),
                Working("cuts_off", "The cells that have no other way.", ends),
            )
        ),
    )


def explain_held(
    held: Held,
    inflation: Inflation,
    air: Air,
    blower: Blower | None,
    film: Film | None,
    bench: Bench,
    climate: Climate,
    survey: Survey,
) -> Held:
    """Return the cells under pressure with a working for each figure and the sentences."""
    return replace(
        held,
        told=told_state(held, air),
        told_window=told_window(held),
        workings=LaterWorkings(
            lambda: (
                *_air_workings(held, inflation, air, blower),
                *_power_workings(held, climate, survey),
                *_film_workings(held, film, bench, climate, survey),
            )
        ),
    )


def _air_workings(
    held: Held, inflation: Inflation, air: Air, blower: Blower | None
) -> tuple[Working, ...]:
    cells = Term("cells", len(held.cells), "count")
    flow = Term("air of the blower", held.fan_flow_m3_s, "m3/s")
    leak = Term("all leaks", held.leak_m3_s, "m3/s")
    curve = tuple(
        Term(f"curve, point {n + 1}: pressure", point.pressure_pa, "Pa")
        for n, point in enumerate(blower.curve if blower else ())
    )
    return (
        Working("low_pa", "The least of the cells that air reaches.", (cells,), WINDOW_SOURCE),
        Working("high_pa", "The greatest of all cells.", (cells,), WINDOW_SOURCE),
        Working("fan_flow_m3_s", "What all leaks let out.", (leak, *curve), BALANCE_SOURCE),
        Working("fan_pressure_pa", "The blower's curve at its flow.", (flow, *curve), ENTERED),
        Working(
            "feed_loss_pa",
            "Pressure at the blower less that in the cell it feeds. A damper takes 1 / share "
            "squared, less one, of the velocity pressure in the hose.",
            (
                flow,
                Term("length of the hose", air.feed_hose_m, "m"),
                Term("damper open", air.open_share, "share"),
                Term("velocity pressures of the damper", damper_loss(air.open_share), "ratio"),
            ),
            BALANCE_SOURCE,
        ),
        Working("leak_m3_s", "Sum of all cells.", (cells,)),
        Working(
            "never_fills",
            "Every cell stays below the pressure at which the layers part.",
            (Term("flat below", FILLS_AT_PA, "Pa"), flow, leak),
            f"{DERIVED}; limit assumed, no published source",
        ),
        Working(
            "fill_min",
            "The last of the cells that fill. Roughly; the course of filling gives it exactly.",
            (Term("air when full", inflation.volume_m3, "m3"), flow),
        ),
    )


def _power_workings(held: Held, climate: Climate, survey: Survey) -> tuple[Working, ...]:
    power = Term("power of the blower", held.power_w, "W")
    floor = Term("floor", survey.floor_area_m2, "m2")
    kwh = Term("electricity", held.yearly_kwh, "kWh")
    return (
        Working("power_w", "As entered for the blower; none while none runs.", (power,), ENTERED),
        Working("power_per_area_w_m2", "Power over floor.", (power, floor)),
        Working("book_power_w", "250 W for each 1000 m2 of floor.", (floor,), BOOK),
        Working(
            "yearly_kwh", "Power times hours.", (power, Term("hours", climate.blower_hours, "h"))
        ),
        Working(
            "yearly_cost",
            "Electricity times price.",
            (kwh, Term("price of one kWh", climate.power_price, "money")),
            ENTERED,
        ),
    )


def _film_workings(
    held: Held, film: Film | None, bench: Bench, climate: Climate, survey: Survey
) -> tuple[Working, ...]:
    grows = () if film is None else (Term("film grows by", film.expansion_per_k, "1/K"),)
    need = Term("seals are asked for", held.seal_need_n_m, "N/m")
    coupon = () if bench.coupon_n_m is None else (Term("coupon held", bench.coupon_n_m, "N/m"),)
    return (
        Working(
            "slack_m",
            "So that the film is just taut in the coldest hour: what it shrinks more than the "
            "frame, over the length. An upper bound, as polyethylene relaxes.",
            (
                *grows,
                Term("steel grows by", STEEL_1_K, "1/K"),
                Term("day of pulling", climate.install_k, "K"),
                Term("coldest film", climate.coldest_k, "K"),
                Term("length", survey.length_m, "m"),
            ),
            THERMAL_SOURCE,
        ),
        Working(
            "sag_m",
            "How far the widest bay hangs with its part of the slack, as a circle arc.",
            (Term("slack over the length", held.slack_m, "m"),),
        ),
        Working(
            "seal_need_n_m",
            "Pressure times radius of the tighter layer, as each arm of a peel coupon has it; over "
            "the whole way between two seal lines.",
            (Term("greatest pressure", held.high_pa, "Pa"),),
        ),
        Working(
            "seal_share",
            "What the seals are asked for over what the coupon held.",
            (need, *coupon),
            f"{DERIVED}; coupon: {ENTERED}",
        ),
    )
