"""The film: every sheet with how its size adds up, and the rolls with the cuts from them."""

from collections.abc import Iterable, Sequence

from hoopwright.cover.cover import Piece
from hoopwright.farm.farm import Farm
from hoopwright.order.order import Cut, Roll
from hoopwright.papers.cautions import Place, caution_texts
from hoopwright.papers.sheet import Column, Sheet, Value, list_sheet
from hoopwright.papers.sheet_numbers import (
    heading,
    length_columns,
    length_values,
    number_format,
    shown,
)
from hoopwright.plan import Plan
from hoopwright.quantity.units import Units, show
from hoopwright.quantity.working import Term


def film_sheet(farm: Farm, plan: Plan) -> Sheet:
    """Return every sheet of film of a farm, with its size and how that adds up."""
    units = farm.units
    columns = (
        Column("Tunnel", 14),
        Column("Sheet", 22),
        Column("Layer", 8),
        Column("Film", 22),
        *length_columns("Width", units),
        *length_columns("Length", units),
        Column(heading("Area", "m2", units), 9, number_format(1)),
        Column(heading("Mass", "kg", units), 8.5, number_format(1)),
        Column("The width adds up from", 37),
        Column("The length adds up from", 37),
    )
    lines = [
        _piece_line(farm, tunnel.name, piece)
        for tunnel in plan.tunnels
        for piece in tunnel.chosen.cover.pieces
    ]
    notes = (
        "Sizes are to be cut, rounded up. Width is across the roll, length along it. Measure the "
        "frame once more before you cut.",
        caution_note("film"),
    )
    empty = "No sheet of film is planned."
    return list_sheet(
        "Film", "Film: sheets to cut", notes, columns, lines, empty=empty, frozen_columns=2
    )


def _piece_line(farm: Farm, tunnel: str, piece: Piece) -> tuple[Value, ...]:
    units = farm.units
    return (
        tunnel,
        piece.name,
        piece.layer,
        farm.catalogue.film(piece.film).name,
        *length_values(piece.width_m, units),
        *length_values(piece.length_m, units),
        shown(piece.area_m2, "m2", units, 1),
        shown(piece.mass_kg, "kg", units, 1),
        _added_up(piece.width_terms, units),
        _added_up(piece.length_terms, units),
    )


def _added_up(terms: Iterable[Term], units: Units) -> str:
    return "; ".join(f"{t.name} {show(t.value, t.unit, units)}" for t in terms)


def rolls_sheet(farm: Farm, plan: Plan) -> Sheet:
    """Return the rolls to open and the cuts from each, marked from the roll's end."""
    units = farm.units
    columns = (
        Column("Roll", 5.5, "0"),
        Column("Film", 22),
        *length_columns("Roll width", units),
        *length_columns("Roll length", units),
        Column("Cut", 5, "0"),
        Column("Tunnel", 14),
        Column("Sheet", 22),
        *length_columns("From mark", units),
        *length_columns("To mark", units),
        *length_columns("Cut width", units),
        *length_columns("Starts across", units),
    )
    lines: list[Sequence[Value]] = []
    for number, roll in enumerate(plan.order.rolls, start=1):
        lines += _roll_lines(farm, number, roll)
    notes = (
        "Marks run along the roll from its free end; the last line of a roll is what stays on it.",
        f"Film bought {show(plan.order.film_bought_m2, 'm2', units)}, in sheets "
        f"{show(plan.order.film_used_m2, 'm2', units)}, in no sheet "
        f"{show(plan.order.waste_share, 'share', units)}.",
        caution_note("rolls"),
    )
    empty = "No roll has to be opened."
    return list_sheet("Rolls", "Rolls and the cuts from them", notes, columns, lines, empty=empty)


def _roll_lines(farm: Farm, number: int, roll: Roll) -> Iterable[Sequence[Value]]:
    units = farm.units
    whole = (
        number,
        farm.catalogue.film(roll.film).name,
        *length_values(roll.width_m, units),
        *length_values(roll.length_m, units),
    )
    cuts = sorted(roll.cuts, key=lambda c: (c.along_m, c.across_m))
    for n, cut in enumerate(cuts, start=1):
        yield (*whole, n, *_cut_values(cut, units))
    if roll.left_m > 0.0005:
        rest = Cut(
            tunnel="",
            piece="",
            name="stays on the roll",
            along_m=roll.length_m - roll.left_m,
            across_m=0.0,
            length_m=roll.left_m,
            width_m=roll.width_m,
        )
        yield (*whole, None, *_cut_values(rest, units))


def _cut_values(cut: Cut, units: Units) -> tuple[Value, ...]:
    sizes = (cut.along_m, cut.along_m + cut.length_m, cut.width_m, cut.across_m)
    return (
        cut.tunnel,
        cut.name,
        *(value for size_m in sizes for value in length_values(size_m, units)),
    )


def caution_note(place: Place) -> str:
    """Return the cautions of a part of the job as one sentence that names them."""
    titles = ", ".join(c.title.lower() for c in caution_texts(place))
    return f"Take care: {titles}. Read the sheet Cautions before you start."
