"""The choices behind a plan in words: frame, skin, sides, air, allowances, money, limits."""

from collections.abc import Iterable

from msgspec import Struct

from hoopwright.cover.side_film import curtain_films
from hoopwright.farm.catalogue import Catalogue
from hoopwright.farm.entered import describe
from hoopwright.farm.farm import Farm, Tunnel
from hoopwright.farm.frame import EvenBows
from hoopwright.farm.measured_bow import MeasuredBow
from hoopwright.farm.profile import GothicBow, Profile, RoundBow, StraightRafters
from hoopwright.farm.side import ROLLING, Panel, Side
from hoopwright.farm.skin import Covering, Cut, Door, End, Layers, RigidSheet
from hoopwright.inflation.hoses import feed_hose, jumper_hose
from hoopwright.papers.sheet import SECTION, TEXT, Row, wide_row
from hoopwright.papers.side_words import (
    BOTTOMS,
    EXPOSURES,
    KINDS,
    ROPES,
    SEALERS,
    TOPS,
    WIND_SIDES,
    WINDINGS,
)
from hoopwright.quantity.money import format_money
from hoopwright.quantity.units import Units, show

COVERINGS: dict[Covering, str] = {
    "one_sheet": "one sheet",
    "roof_and_sides": "roof and sides apart",
}

SHAPES: dict[type[Profile], str] = {
    RoundBow: "round bow",
    GothicBow: "gothic bow",
    StraightRafters: "straight rafters",
    MeasuredBow: "bow as measured",
}

UNUSED_ROLLING = ("bunch_m",)
UNUSED_DROPPING = ("shut_height_m", "slack_m", "stop_m")

Words = tuple[tuple[str, str], ...]


def choice_rows(farm: Farm, last: int) -> list[Row]:
    """Return the choices in words; tunnels that share all of them have the words once.

    Args:
        farm: The farm.
        last: Last column of the sheet.
    """
    alike: dict[Words, list[str]] = {}
    for tunnel in farm.tunnels:
        alike.setdefault(_tunnel_words(tunnel, farm), []).append(tunnel.name)
    rows: list[Row] = []
    for lines, names in alike.items():
        rows += [Row(), wide_row(f"What was chosen for {', '.join(names)}", SECTION, last)]
        rows += [wide_row(text, TEXT, last, label=label) for label, text in lines]
    rows += [Row(), wide_row("What was chosen for the whole farm", SECTION, last)]
    return rows + [wide_row(text, TEXT, last, label=label) for label, text in _farm_words(farm)]


def _tunnel_words(tunnel: Tunnel, farm: Farm) -> Words:
    units, skin, air = farm.units, tunnel.skin, tunnel.air
    lines = [
        ("Frame", _frame_words(tunnel, units)),
        ("Covering", COVERINGS[skin.covering]),
        ("Roof" if skin.covering == "roof_and_sides" else "Sheet", _film(skin.roof, farm)),
    ]
    if skin.covering == "roof_and_sides":
        lines.append(("Curtains", _film(skin.sides, farm)))
    lines.append(("Pockets and strips", _film(skin.pockets, farm)))
    if skin.cross_seams_m:
        lines.append(("Cross seams at", ", ".join(show(x, "m", units) for x in skin.cross_seams_m)))
    for number in (0, 1):
        lines += _side_lines(tunnel, number, farm)
    lines += [(end.name, _end_words(end, farm)) for end in tunnel.ends]
    if air.blower is not None:
        lines += _air_lines(tunnel, farm)
        lines += _entered(skin, units) + _entered(air, units)
    lines += _heating_lines(tunnel, farm)
    lines += _entered(skin.allowances, units)
    return tuple(lines)


def _air_lines(tunnel: Tunnel, farm: Farm) -> Iterable[tuple[str, str]]:
    """Yield blower, hoses and what is inflated, in words."""
    air, catalogue = tunnel.air, farm.catalogue
    if air.blower is not None:
        yield "Blower", catalogue.blower(air.blower).name
    yield "Blower takes air", "from outdoors" if air.outside_air else "from inside"
    for label, hose in (
        ("Hose of the blower", feed_hose(air, catalogue.hoses)),
        ("Jumper hoses", jumper_hose(air, catalogue.hoses)),
    ):
        if hose is not None:
            yield label, hose.name
    yield "Jumper hoses hang", "where worked out" if air.jumpers is None else "where placed by hand"
    yield "Sealed and inflated sides", _inflated(tunnel)
    yield "Sealed and inflated end walls", _inflated_ends(tunnel)


def _heating_lines(tunnel: Tunnel, farm: Farm) -> list[tuple[str, str]]:
    """Return how the tunnel is heated."""
    heating = tunnel.heating
    if heating is None:
        return [("Heating", "none")]
    price = format_money(heating.fuel_price, farm.money.currency)
    fuel = f"{heating.fuel} at {price} for one {heating.fuel_unit}"
    return [("Heating", fuel), *_entered(heating, farm.units)]


def _frame_words(tunnel: Tunnel, units: Units) -> str:
    profile, bows = tunnel.frame.profile, tunnel.frame.bows
    sizes = "; ".join(f"{label.lower()} {text}" for label, text in _entered(profile, units))
    spacing = (
        f"{bows.count} bows every {show(bows.spacing_m, 'm', units)}"
        if isinstance(bows, EvenBows)
        else f"{len(bows.positions_m)} bows where the tape found them"
    )
    tube = show(tunnel.frame.tube_diameter_m, "m_thin", units)
    return f"{shape_name(profile)}; {sizes}; {spacing}; tube {tube}"


def _film(layers: Layers, farm: Farm) -> str:
    outer = farm.catalogue.film(layers.outer).name
    if layers.count == 1:
        return f"one layer: {outer}"
    return f"two layers: {outer} outside, {farm.catalogue.film(layers.inner).name} inside"


def _side_lines(tunnel: Tunnel, number: int, farm: Farm) -> list[tuple[str, str]]:
    """Return one side in words: its kind and sizes, and each of its curtains."""
    side, units = tunnel.sides[number], farm.units
    lines = [
        (side.name, f"{_side_words(tunnel, number, farm)}; {_board_words(tunnel, number, units)}")
    ]
    if side.kind == "fixed":
        return lines
    return lines + [
        (f"{side.name}, curtain {index}", _panel_words(panel, side, farm.catalogue))
        for index, panel in enumerate(side.panels, start=1)
    ]


def _side_words(tunnel: Tunnel, number: int, farm: Farm) -> str:
    side = tunnel.sides[number]
    if side.kind == "fixed":
        return KINDS[side.kind]
    splits = [
        f"split at {show(split.at_m, 'm', farm.units)} "
        f"({'the curtains lap' if split.join == 'lap' else 'film strip behind'})"
        for split in side.splits
    ]
    front, back = side.pocket_bays
    films = [farm.catalogue.film(key).name for key in _curtain_layers(tunnel, side)]
    words = [KINDS[side.kind], *splits, f"pockets of {front} and {back} bays"]
    if side.kind == "roll_up":
        words.append(TOPS[side.top])
    words.append(f"curtains of {' and '.join(films)}")
    unused = UNUSED_DROPPING if side.kind == "drop_down" else UNUSED_ROLLING
    words += [f"{label.lower()} {text}" for label, text in _entered(side, farm.units, unused)]
    if side.rope_step_m is None and any(panel.rope != "none" for panel in side.panels):
        words.append("a leg or strap at each bow")
    return "; ".join(words)


def _panel_words(panel: Panel, side: Side, catalogue: Catalogue) -> str:
    words = [
        f"cranked at the {panel.crank_end}",
        catalogue.drive(panel.drive).name,
        catalogue.bar(panel.bar).name,
    ]
    if side.kind in ROLLING:
        words.append(f"roll lies {WINDINGS[panel.winding]}")
        words.append(f"bottom edge: {BOTTOMS[panel.bottom]}")
    return "; ".join((*words, f"against the wind: {ROPES[panel.rope]}"))


def _board_words(tunnel: Tunnel, number: int, units: Units) -> str:
    boards = tunnel.frame.boards[number]
    words = [
        f"hip board ({boards.hip_board}) at {show(boards.hip_height_m, 'm', units)}, "
        f"stands off {show(boards.stand_off_m, 'm_thin', units)}",
        f"baseboard ({boards.baseboard}) at {show(boards.baseboard_height_m, 'm', units)}",
    ]
    if boards.gutter_drop_m is not None:
        words.append(f"gutter {show(boards.gutter_drop_m, 'm', units)} below the hip")
    return ", ".join(words)


def _end_words(end: End, farm: Farm) -> str:
    closed = "not covered with film"
    if end.film is not None:
        closed = _film(end.film, farm)
    elif end.rigid is not None:
        closed = _rigid_words(end.rigid, farm)
    return "; ".join((closed, *_opening_words(end, farm.units), *_level_words(end, farm.units)))


def _rigid_words(sheet: RigidSheet, farm: Farm) -> str:
    units = farm.units
    return (
        f"{farm.catalogue.part(sheet.part).name}, each covers "
        f"{show(sheet.cover_width_m, 'm', units)} and is {show(sheet.sheet_height_m, 'm', units)} "
        f"high, laps {show(sheet.lap_m, 'm', units)}"
    )


def _opening_words(end: End, units: Units) -> Iterable[str]:
    """Yield doors, vents and fan openings in words."""
    for door in end.doors:
        place = "" if door.left_m is None else f", left edge {show(door.left_m, 'm', units)}"
        yield f"door {_size_words(door, units)}{place}"
    for cut in end.cuts:
        yield (
            f"{cut.kind} {_size_words(cut, units)}, left edge {show(cut.left_m, 'm', units)}, "
            f"sill {show(cut.sill_m, 'm', units)} above the ground"
        )


def _size_words(opening: Door | Cut, units: Units) -> str:
    width, height = (show(x, "m", units) for x in (opening.width_m, opening.height_m))
    return f"{width} wide, {height} high"


def _level_words(end: End, units: Units) -> Iterable[str]:
    """Yield rails and seams in words."""
    for name, heights_m in (("rails", end.rails_m), ("seams", end.seams_m)):
        if heights_m:
            yield f"{name} at {', '.join(show(y, 'm', units) for y in heights_m)}"


def _inflated(tunnel: Tunnel) -> str:
    """Return the sides whose curtains have two layers and air between them."""
    names = [
        side.name
        for side, inflated in zip(tunnel.sides, tunnel.air.inflated_sides, strict=True)
        if inflated and side.kind != "fixed" and len(_curtain_layers(tunnel, side)) == 2
    ]
    return ", ".join(names) or "none"


def _inflated_ends(tunnel: Tunnel) -> str:
    """Return the end walls that have two layers and air between them."""
    names = [
        end.name
        for end, inflated in zip(tunnel.ends, tunnel.air.inflated_ends, strict=True)
        if inflated and end.film is not None and end.film.count == 2
    ]
    return ", ".join(names) or "none"


def _curtain_layers(tunnel: Tunnel, side: Side) -> tuple[str, ...]:
    films = curtain_films(side, tunnel.skin, tunnel.skin.covering)
    return tuple(film for _name, film in films)


def _entered(part: Struct, units: Units, unused: tuple[str, ...] = ()) -> list[tuple[str, str]]:
    """Return label and value of every number of an entered thing, as the forms show them.

    Args:
        part: The entered thing.
        units: The farm's units.
        unused: Fields that mean nothing where it stands.
    """
    lines = []
    for field in describe(type(part)):
        value = getattr(part, field.name)
        if isinstance(value, int | float) and field.low is not None and field.name not in unused:
            label = field.label[:1].upper() + field.label[1:]
            lines.append((label, show(value, field.unit or "count", units)))
    return lines


def _farm_words(farm: Farm) -> Iterable[tuple[str, str]]:
    units, money = farm.units, farm.money
    taxed = "taxed" if money.tax_on_freight else "not taxed"
    lines = [
        ("Sales tax", f"{show(money.tax_share, 'share', units)}, rounded once for the whole order"),
        ("Freight", f"{format_money(money.freight, money.currency)}, {taxed}"),
        ("Wage at the bench", f"{format_money(farm.bench.wage_per_hour, money.currency)} an hour"),
        ("Sealer", SEALERS[farm.bench.sealer]),
        *_entered(farm.bench, units),
        *_entered(farm.limits, units),
        *_entered(farm.weather, units),
        ("Wind meets the side", WIND_SIDES[farm.weather.wind_from]),
        *_entered(farm.climate, units),
        ("Price of one kWh", format_money(farm.climate.power_price, money.currency)),
        ("Ground around", EXPOSURES[farm.weather.exposure]),
        ("Sizes and prices", farm.catalogue.note),
        ("Remarks", farm.note),
    ]
    return ((label, text) for label, text in lines if text)


def shape_name(profile: Profile) -> str:
    """Return what people call a shape of bow."""
    return SHAPES[type(profile)]
