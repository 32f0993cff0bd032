"""An invented farm with a plan put together by hand, for papers that only show what a plan says.

Farm, sizes and prices are made up. Nothing here is computed by the stages, so that a paper can be
tested against numbers that are known beforehand.
"""

from collections.abc import Sequence
from decimal import Decimal

from hoopwright.airing import Airing
from hoopwright.checks.variant import TunnelPlan, Variant
from hoopwright.cost.cost import Cost, GroupCost
from hoopwright.cover.cover import Area, Cover, CurtainSpan, FixedSpan, Piece, SheetWidth
from hoopwright.cover.end_walls import lay_ends
from hoopwright.curtain.curtain import CurtainWork
from hoopwright.curtain.hung import HungCurtain
from hoopwright.farm import (
    Air,
    Bar,
    Blower,
    Catalogue,
    End,
    EvenBows,
    FanPoint,
    Farm,
    Film,
    FilmRoll,
    Frame,
    HandCrank,
    Layers,
    Money,
    Panel,
    Part,
    RoundBow,
    RoundTube,
    Side,
    SideBoards,
    Skin,
    Split,
    Tunnel,
)
from hoopwright.order.order import Cut, Line, Order, Roll
from hoopwright.outfit import Outfit
from hoopwright.plan import Plan
from hoopwright.quantity.finding import Finding
from hoopwright.quantity.money import line_total, tax_on
from hoopwright.quantity.units import FOOT_M, Units
from hoopwright.quantity.working import PRACTICE, Term, Working, phrase
from hoopwright.survey import survey_frame
from hoopwright.survey.bow_curve import bow_curve
from hoopwright.survey.survey import Survey
from hoopwright.takeoff import Sheets
from hoopwright.takeoff.need import Need
from papers.invented_air import invented_held, invented_inflation, invented_warmth
from papers.invented_fit import invented_fit

CLEAR = "film_clear"


def invented_catalogue() -> Catalogue:
    roll = FilmRoll(width_m=9.1, length_m=30.0, price=Decimal("241.75"))
    return Catalogue(
        note="Sizes and prices are invented.",
        films=(
            Film(
                key=CLEAR,
                name="clear film, four seasons",
                thickness_m=1.524e-4,
                density_kg_m3=920.0,
                life_years=4.0,
                rolls=(roll,),
            ),
        ),
        bars=(
            Bar(
                key="bar",
                name="galvanised tube with clamp-on cap",
                material="steel",
                section=RoundTube(outside_m=0.0334, wall_m=0.0017),
                grip="clamp_on_cap",
                grip_mass_kg_m=0.2,
                overlap_m=0.1,
                part="stick",
            ),
        ),
        drives=(
            HandCrank(
                key="crank",
                name="hand crank with extension",
                arm_m=0.3,
                ratio=1.0,
                efficiency=0.95,
                mass_kg=1.5,
                part="handle",
                extension_part="pipe",
                joint_part="joint",
            ),
        ),
        parts=tuple(_part(key) for key in ("stick", "handle", "pipe", "joint", "blower")),
        blowers=(
            Blower(
                key="blower",
                name="inflation blower",
                curve=(
                    FanPoint(flow_m3_s=0.0, pressure_pa=150.0),
                    FanPoint(flow_m3_s=0.045, pressure_pa=0.0),
                ),
                power_w=60.0,
                part="blower",
            ),
        ),
    )


def _part(key: str) -> Part:
    return Part(
        key=key,
        group="Roll bars",
        name=key,
        counted_in="m" if key == "stick" else "count",
        holds=6.4 if key == "stick" else 1.0,
        sold_as="piece",
        price=Decimal("9.95"),
    )


def invented_tunnel(name: str) -> Tunnel:
    layers = Layers(count=2, outer=CLEAR, inner=CLEAR)
    panels = (
        Panel(crank_end="front", bar="bar", drive="crank"),
        Panel(crank_end="back", bar="bar", drive="crank"),
    )
    side = Side(
        name="West side",
        kind="roll_up",
        shut_height_m=0.1,
        pocket_bays=(1, 1),
        splits=(Split(at_m=12.8016),),
        panels=panels,
    )
    fixed = Side(
        name="East side",
        kind="fixed",
        shut_height_m=0.1,
        pocket_bays=(0, 0),
        splits=(),
        panels=panels[:1],
    )
    boards = SideBoards(hip_height_m=1.5, baseboard_height_m=0.3)
    return Tunnel(
        name=name,
        frame=Frame(
            profile=RoundBow(span_m=7.3152, leg_height_m=1.5, peak_height_m=3.6),
            tube_diameter_m=0.0483,
            length_m=25.6032,
            bows=EvenBows(count=22, spacing_m=1.2192),
            boards=(boards, boards),
        ),
        skin=Skin(covering="roof_and_sides", roof=layers, sides=layers, pockets=layers),
        sides=(side, fixed),
        ends=(End(name="Front end", film=layers), End(name="Back end", film=None)),
        air=Air(blower="blower", inflated_sides=(True, False)),
    )


def invented_farm(
    units: Units = "imperial",
    name: str = "Thistle Bank",
    tunnels: Sequence[str] = ("North",),
    money: Money | None = None,
) -> Farm:
    entered = Money(tax_share=0.0625, freight=Decimal("85.00"), tax_on_freight=True)
    return Farm(
        name=name,
        units=units,
        note="Farm, sizes and prices are invented.",
        tunnels=tuple(invented_tunnel(tunnel) for tunnel in tunnels),
        catalogue=invented_catalogue(),
        money=money or entered,
    )


def invented_line(
    key: str,
    needed: float,
    holds: float,
    packs: int,
    price: str,
    *,
    counted_in: str = "m",
    spares: float = 0.0,
    group: str = "Channel and wire",
    name: str = "attachment channel",
    invented: bool = True,
) -> Line:
    """Return a line; how many packs it takes is said by the test."""
    amount = Decimal(price)
    working = Working("needed", "Length of all runs.", (Term("runs", needed, "m"),), PRACTICE)
    return Line(
        key=key,
        group=group,
        name=name,
        where=(phrase("hip boards of {tunnel}, both sides", tunnel="North"),),
        marks=(),
        counted_in=counted_in,
        needed=needed,
        spares=spares,
        holds=holds,
        sold_as="stick" if counted_in == "m" else "box",
        packs=packs,
        left_over=packs * holds - needed - spares,
        price=amount,
        total=line_total(packs, amount),
        invented=invented,
        workings=(working,),
    )


def invented_lines() -> tuple[Line, ...]:
    """Return lines whose packs were counted by hand."""
    roll = f"film/{CLEAR}/9.1/30"
    return (
        invented_line(roll, 1.0, 1.0, 2, "241.75", counted_in="count", group="Film", name="film"),
        # 4 runs of 84 ft are 336 ft; 336 / 8 = 42 sticks exactly.
        invented_line("channel", 4 * 84 * FOOT_M, 8 * FOOT_M, 42, "11.3750"),
        # 5 sticks of 6 m are 30 m exactly.
        invented_line("batten", 30.0, 6.0, 5, "7.20", name="batten"),
        # 30.001 m are one millimetre more than 5 sticks of 6 m.
        invented_line("profile", 30.001, 6.0, 6, "14.05", name="bottom seal profile"),
        # 410 screws and 21 spares: 431 / 100 = 4.31, so 5 boxes.
        invented_line(
            "screw",
            410.0,
            100.0,
            5,
            "6.49",
            counted_in="count",
            spares=20.5,
            group="Fasteners",
            name="self-drilling screw",
            invented=False,
        ),
        invented_line("eye", 0.0, 25.0, 0, "4.10", counted_in="count", name="eye"),
        # No price is known yet.
        invented_line("rope", 75.0, 100.0, 1, "0.00", group="Rope", name="wind rope"),
    )


def invented_order(lines: Sequence[Line]) -> Order:
    cut = Cut(
        tunnel="North",
        piece="piece/roof/outer/0",
        name="Roof, outer",
        along_m=0.0,
        across_m=0.0,
        length_m=26.8224,
        width_m=9.0,
    )
    rolls = tuple(
        Roll(
            film=CLEAR,
            width_m=9.1,
            length_m=30.0,
            price=Decimal("241.75"),
            cuts=(cut,),
            used_m2=241.4016,
            left_m=3.1776,
        )
        for _ in range(2)
    )
    return Order(
        lines=tuple(lines),
        rolls=rolls,
        near_misses=(),
        unplaced=(),
        film_bought_m2=546.0,
        film_used_m2=482.8032,
        waste_share=0.116,
        goods=sum((line.total for line in lines), Decimal(0)),
        missing=(),
    )


def invented_cost(farm: Farm, order: Order, *, with_freight: bool) -> Cost:
    money = farm.money
    freight = money.freight if with_freight else Decimal(0)
    taxed = order.goods + (freight if money.tax_on_freight else Decimal(0))
    tax = tax_on(taxed, Decimal(repr(money.tax_share)))
    sums: dict[str, Decimal] = {}
    for line in order.lines:
        sums[line.group] = sums.get(line.group, Decimal(0)) + line.total
    return Cost(
        groups=tuple(GroupCost(group=group, amount=amount) for group, amount in sums.items()),
        goods=order.goods,
        freight=freight,
        tax=tax,
        to_pay=order.goods + freight + tax,
        film_waste=Decimal("56.09"),
        bench_labour=Decimal("38.50"),
        per_floor_m2=Decimal("0"),
    )


def invented_piece(mark: str, name: str, layer: str) -> Piece:
    return Piece(
        mark=mark,
        name=name,
        role="roof sheet",
        layer=layer,  # type: ignore[arg-type]  # one of three words
        film=CLEAR,
        width_m=9.0,
        length_m=26.8224,
        width_terms=(Term("over the bow", 8.5428, "m"), Term("tails at the hip", 0.4572, "m")),
        length_terms=(Term("first to last bow", 25.6032, "m"), Term("tails", 1.2192, "m")),
        area_m2=241.4016,
        mass_kg=33.8,
        areas=(Area("roof", 0.0, 25.6032, -4.27, 4.27),),
        workings=(
            Working(
                "width_m",
                "Over the bow from hip to hip, and a tail at each hip.",
                (Term("over the bow", 8.5428, "m"), Term("tail", 0.2286, "m")),
            ),
        ),
    )


def _cover(tunnel: Tunnel, other: bool) -> Cover:
    spans = tuple(
        CurtainSpan(
            mark=f"side/0/panel/{n}",
            side=0,
            index=n,
            open_from_m=1.2192 if n == 0 else 12.8016,
            open_to_m=12.8016 if n == 0 else 24.384,
            from_m=0.9144 if n == 0 else 12.4968,
            to_m=13.1064 if n == 0 else 24.6888,
            length_m=12.192,
            hang_m=1.45,
            cut_height_m=1.9,
            layers=2,
            thickness_m=3.048e-4,
            film_mass_kg_m2=0.28,
            gap_m=0.0,
            board_gap_m=0.0,
        )
        for n in (0, 1)
    )
    return Cover(
        covering="one_sheet" if other else "roof_and_sides",
        pieces=tuple(
            invented_piece(f"piece/roof/{layer}/0", f"Roof, {layer}", layer)
            for layer in ("outer", "inner")
        ),
        curtains=spans,
        fixed=(FixedSpan(mark="side/1/fixed", side=1, from_m=0.0, to_m=25.6032),),
        ends=lay_ends(_survey(tunnel), tunnel.skin, tunnel.ends),
        sheet_width_m=12.9 if other else 9.0,
        side_height_m=(0.0, 0.0) if other else (1.9, 1.9),
        film_area_m2=482.8,
        film_mass_kg=67.6,
    )


def _hung(farm: Farm, tunnel: Tunnel, span: CurtainSpan) -> HungCurtain:
    (bar,), (drive,) = farm.catalogue.bars, farm.catalogue.drives
    return HungCurtain(
        span=span,
        side=tunnel.sides[0],
        boards=tunnel.frame.boards[0],
        survey=_survey(tunnel),
        bar=bar,
        stick_m=6.4,
        drive=drive,
        limits=farm.limits,
        weather=farm.weather,
        wrap_m=0.3,
    )


def _curtain(hung: HungCurtain) -> CurtainWork:
    return CurtainWork(
        mark=hung.span.mark,
        side=0,
        index=hung.span.index,
        kind="roll_up",
        cranked="front" if hung.span.index == 0 else "back",
        length_m=12.192,
        travel_m=1.3,
        diameters_m=(0.036, 0.041, 0.0455),
        weights_n=(180.0, 200.0, 220.0),
        torques_nm=(3.9, 4.9, 6.0),
        hand_forces_n=(13.0, 16.3, 20.0),
        hardest_n=20.0,
        turns=9.4,
        handle_turns=9.4,
        minutes=0.34,
        twist_rad=0.21,
        twist_trailing_m=0.001,
        play_trailing_m=0.002,
        uneven_trailing_m=0.005,
        trailing_m=0.008,
        joint_angles_rad=(0.6, 0.1, 0.3),
        joint_swing=1.21,
        guide_m=0.0,
        energy_j=140.0,
        runaway_m_s=2.5,
        runaway_handle_m_s=30.0,
        hand_length_m=36.0,
        trailing_length_m=30.0,
        longest_m=30.0,
        bound_by="trailing",
        bar_sticks=2,
        bar_joints=1,
        opening_m2=15.0,
        gutter_gap_m=None,
        pocket_gap_m=0.0381,
        rope_m=31.7,
        rope_legs=10,
        eyes=11,
        rope_tension_n=900.0,
        eye_load_n=400.0,
        lift_lines=0,
        lift_line_m=0.0,
        pulleys=0,
        hung=hung,
        workings=(
            Working("hardest_n", "The greatest of the three forces.", (), PRACTICE),
            Working("trailing_m", "Twist times half the thickness of the roll."),
        ),
    )


def _airing() -> Airing:
    return Airing(
        openings_m2=(30.0, 0.0),
        opening_m2=30.0,
        floor_share=0.16,
        side_shares=(0.16, 0.0),
        free_m2=15.0,
        free_share=0.08,
        wind_m3_s=2.0,
        warmth_m3_s=1.5,
        flow_m3_s=2.5,
        changes_per_h=16.7,
        per_floor_m3_s_m2=0.0133,
        course_made=lambda: ((0.0, 0.0, 0.0), (0.5, 0.08, 1.2), (1.0, 0.16, 2.5)),
        workings=(Working("flow_m3_s", "Root of the sum of squares."),),
    )


def _survey(tunnel: Tunnel) -> Survey:
    bows = tuple(i * 1.2192 for i in range(22))
    surveyed = survey_frame(tunnel.frame)
    return Survey(
        curve=bow_curve(tunnel.frame.profile, tunnel.frame.tube_diameter_m),
        bows_m=bows,
        bay_count=21,
        length_m=25.6032,
        span_m=7.3152,
        width_m=7.3635,
        height_m=3.624,
        girth_m=11.5,
        roof_girth_m=8.5428,
        roof_bow=None,
        roof_over=None,
        whole_girth_m=10.9428,
        whole_bow=None,
        sheet_length_m=25.6032,
        side_m=(1.2, 1.2),
        side_bows=(None, None),
        hip_at_m=(1.5, 10.0),
        base_at_m=(0.3, 11.2),
        hip_across_m=(-3.68, 3.68),
        section_area_m2=21.0,
        volume_m3=537.6,
        floor_area_m2=187.3,
        cover_area_m2=336.0,
        best_radius_m=None,
        misfit_m=None,
        taped=surveyed.taped,
        along=surveyed.along,
        workings=(
            Working("girth_m", "Over the outside from ground to ground."),
            Working("side_m", "Along the bow from hip board to baseboard."),
        ),
    )


def _finding(tunnel: str) -> Finding:
    return Finding(
        code="crank.force_high",
        severity="caution",
        tunnel=tunnel,
        where="side/0/panel/0",
        what=phrase("The crank takes {force}.", force=(80.0, "N")),
        why=phrase("Nobody likes to turn it."),
        mend=phrase("Split the side, or choose a drive with a ratio."),
    )


def invented_tunnel_plan(farm: Farm, tunnel: Tunnel, order: Order) -> TunnelPlan:
    need = Need(
        part="stick",
        quantity=2.0,
        where=phrase("roll bar of curtain 1"),
        marks=("side/0/panel/0",),
        working=Working("quantity", "Length of the bar by what a stick yields."),
    )
    covers = (_cover(tunnel, False), _cover(tunnel, True))
    both = tuple(
        Variant(
            cover=cover,
            curtains=tuple(_curtain(_hung(farm, tunnel, span)) for span in cover.curtains),
            inflation=invented_inflation(),
            airing=_airing(),
            outfit=Outfit(rain=None, shade=None, screens=()),
            needs=(need,),
            sheets=Sheets(ordered=cover.pieces),
            order=order,
            cost=invented_cost(farm, order, with_freight=False),
        )
        for cover in covers
    )
    return TunnelPlan(
        name=tunnel.name,
        survey=_survey(tunnel),
        chosen=both[0],
        other_sheet=SheetWidth(
            covering=both[1].cover.covering, sheet_width_m=both[1].cover.sheet_width_m
        ),
        other_made=lambda: both[1],
        fit=invented_fit(CLEAR),
        held=invented_held(),
        warmth=invented_warmth(),
        findings=(_finding(tunnel.name),),
    )


def invented_plan(farm: Farm, lines: Sequence[Line] | None = None) -> Plan:
    order = invented_order(invented_lines() if lines is None else lines)
    tunnels = tuple(invented_tunnel_plan(farm, tunnel, order) for tunnel in farm.tunnels)
    return Plan(
        tunnels=tunnels,
        order=order,
        cost=invented_cost(farm, order, with_freight=True),
        findings=tuple(found for tunnel in tunnels for found in tunnel.findings),
    )
