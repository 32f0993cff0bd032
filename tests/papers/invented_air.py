"""Invented air and heat of the invented plan, put together by hand."""

from decimal import Decimal

from hoopwright.heat import Warmth
from hoopwright.inflation.inflation import Cell, Inflation, Jumper, Seal
from hoopwright.pressure import BlowerTry, CellAir, FilmPull, Held, HoseAir, LeakHint
from hoopwright.quantity.working import PRACTICE, Working, phrase


def invented_inflation() -> Inflation:
    seals = tuple(
        Seal(
            mark="side/0/panel/0",
            edge=edge,  # type: ignore[arg-type]  # one of four words
            length_m=12.192 if edge in ("top", "bottom") else 1.9,
            passes=2,
            spacing_m=0.0254,
            strokes=42 if edge in ("top", "bottom") else 8,
            total_m=24.384 if edge in ("top", "bottom") else 3.8,
            minutes=21.3,
        )
        for edge in ("top", "bottom", "front", "back")
    )
    cells = (
        Cell(
            mark="cell/roof/0",
            name="Roof",
            place="roof",
            from_m=0.0,
            to_m=25.6032,
            volume_m3=21.5,
            area_m2=221.0,
            unit_leak_m3_s=0.00088,
            fed=True,
        ),
        Cell(
            mark="cell/side/0/panel/0",
            name="West side, curtain 1",
            place="side/0/panel/0",
            from_m=0.9144,
            to_m=13.1064,
            volume_m3=1.4,
            area_m2=15.4,
            unit_leak_m3_s=0.000092,
            fed=False,
        ),
    )
    jumper = Jumper(
        mark="jumper/0",
        from_cell=cells[0].mark,
        to_cell=cells[1].mark,
        side=0,
        at_m=7.0,
        placed=False,
    )
    return Inflation(
        seals=seals,
        cells=cells,
        jumpers=(jumper,),
        seal_m=56.4,
        strokes=100,
        elements=1,
        bench_min=85.2,
        volume_m3=22.9,
        blower="blower",
        no_feed=(),
        idle=(),
    )


def _pressed() -> tuple[CellAir, ...]:
    low = Working("pressure_pa", "Where leaks and blower meet.", (), PRACTICE)
    return tuple(
        CellAir(
            mark=mark,
            name=name,
            pressure_pa=pressure_pa,
            state=state,  # type: ignore[arg-type]  # one of five words
            leak_m3_s=leak_m3_s,
            minutes=minutes,
            workings=(low,),
        )
        for mark, name, pressure_pa, state, leak_m3_s, minutes in (
            ("cell/roof/0", "Roof", 58.0, "in range", 0.0125, 30.0),
            ("cell/side/0/panel/0", "West side, curtain 1", 49.8178, "low", 0.0015, None),
        )
    )


def _tries() -> tuple[BlowerTry, ...]:
    return tuple(
        BlowerTry(
            key=key,
            name=name,
            chosen=key == "blower",
            low_pa=low_pa,
            high_pa=58.0,
            flow_m3_s=0.014,
            verdict=verdict,  # type: ignore[arg-type]  # one of five words
            open_share=open_share,
            yearly_cost=Decimal(cost),
        )
        for key, name, low_pa, verdict, open_share, cost in (
            ("blower", "inflation blower", 49.8178, "too weak", 1.0, "84.10"),
            ("large", "larger blower", 56.0, "fits with the damper", 0.625, "126.14"),
        )
    )


def _leaks() -> tuple[LeakHint, ...]:
    return (
        LeakHint(
            taken_on="2030-10-01",
            cell="cell/roof/0",
            pressure_pa=50.0,
            planned_pa=58.0,
            leak_m3_s=0.02,
            hole_m2=0.0036,
            baseline_on="",
            grown_m2=None,
            fallen_pa=None,
            told=phrase("{day}: look at the seams.", day="2030-10-01"),
        ),
    )


def invented_held() -> Held:
    return Held(
        cells=_pressed(),
        hoses=(
            HoseAir(
                mark="jumper/0",
                flow_m3_s=0.0015,
                loss_pa=8.1822,
                critical=True,
                cuts_off=("cell/side/0/panel/0",),
            ),
        ),
        low_pa=49.8178,
        high_pa=58.0,
        fan_flow_m3_s=0.014,
        fan_pressure_pa=95.0,
        feed_loss_pa=37.0,
        leak_m3_s=0.014,
        never_fills=False,
        fill_min=30.0,
        power_w=60.0,
        power_per_area_w_m2=0.32,
        book_power_w=46.8,
        yearly_kwh=525.6,
        yearly_cost=Decimal("84.10"),
        tries_made=_tries,
        fitting_made=lambda: _tries()[1],
        pulls=(
            FilmPull(
                mark="pull/roof/outer",
                name="Roof, outer layer",
                pressure_pa=58.0,
                chord_m=7.36,
                extra_share=0.05,
                radius_m=5.0,
                tension_n_m=291.878,
                stress_pa=1.94e6,
                yield_share=0.216,
            ),
        ),
        slack_m=0.1778,
        sag_m=0.05,
        seal_need_n_m=145.939,
        seal_share=None,
        leaks=_leaks(),
        told=phrase("The curtain is a little low."),
        told_window=phrase("Written about it: {low}.", low=(50.0, "Pa")),
        net=None,
        volumes_m3=(21.5, 1.4),
        full_pa=60.0,
        readings=(),
        workings=(Working("low_pa", "The least of the cells."),),
    )


def invented_warmth() -> Warmth:
    return Warmth(
        loss_one_w_k=3400.0,
        loss_two_w_k=2100.0,
        loss_now_w_k=2200.0,
        peak_w=55000.0,
        degree_days=900.0,
        season_j=1.71e11,
        fuel_units=2218.0,
        fuel_cost=Decimal("5323.20"),
        saved_share=0.353,
        saved_units=1210.0,
        saved_cost=Decimal("2819.90"),
        second_layer_cost=Decimal("980.00"),
        payback_years=0.4,
        told=phrase("The second layer is soon paid back."),
        notes=(phrase("The back end wall counts as one layer."),),
        workings=(Working("saved_share", "Less lost, over what is lost with one layer."),),
    )
