"""Numbers of the plan as decimals of the farm's units: what a cell holds is what it shows.

A size is rounded up, so that nothing gets short; a position, an area or a force to the nearest.
Before rounding up, the dust of binary fractions is taken off at the ninth decimal.

Source:
    Rounding up sizes to be cut: common practice, no published source.
"""

from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_UP, Context, Decimal

from hoopwright.papers.sheet import Column, Value
from hoopwright.quantity.lengths import format_length
from hoopwright.quantity.units import Units, to_display, unit_label

DUST_PLACES = 9
EXACT = Context(prec=60)
LENGTH_PLACES = {"imperial": 2, "metric": 3}


def decimal_of(value: float, places: int = DUST_PLACES) -> Decimal:
    """Return a number as a decimal without the dust of binary fractions.

    Args:
        value: The number.
        places: Decimals that are more than dust.

    Raises:
        ValueError: The number is not finite.
    """
    exact = Decimal(repr(value))
    if not exact.is_finite():
        raise ValueError(f"a cell cannot hold {value!r}; numbers must be finite")
    return round_near(exact, places)


def round_up(value: Decimal, places: int) -> Decimal:
    """Return a decimal rounded up to some places."""
    return value.quantize(Decimal(1).scaleb(-places), ROUND_CEILING, EXACT)


def round_down(value: Decimal, places: int) -> Decimal:
    """Return a decimal rounded down to some places."""
    return value.quantize(Decimal(1).scaleb(-places), ROUND_FLOOR, EXACT)


def round_near(value: Decimal, places: int) -> Decimal:
    """Return a decimal rounded to the nearest, half up."""
    return value.quantize(Decimal(1).scaleb(-places), ROUND_HALF_UP, EXACT)


def shown(value: float, unit: str, units: Units, places: int) -> Decimal:
    """Return a number of the plan in the farm's unit, to the nearest.

    Args:
        value: The number, in the unit of the code.
        unit: Unit code.
        units: The farm's units.
        places: Decimals kept.
    """
    return round_near(decimal_of(to_display(value, unit, units)), places)


def shown_size(value_m: float, units: Units) -> Decimal:
    """Return a length in ft or m, rounded up to the place it is shown with.

    Args:
        value_m: The length, m.
        units: The farm's units.
    """
    return round_up(decimal_of(to_display(value_m, "m", units)), LENGTH_PLACES[units])


def number_format(places: int) -> str:
    """Return the number format that shows just so many decimals."""
    return "#,##0" + ("." + "0" * places if places else "")


def heading(words: str, unit: str, units: Units) -> str:
    """Return a heading with its unit."""
    return f"{words} ({unit_label(unit, units)})"


def length_columns(words: str, units: Units) -> tuple[Column, ...]:
    """Return the columns of a length: metres, or feet and beside them feet and inches."""
    number = number_format(LENGTH_PLACES[units])
    columns = (Column(heading(words, "m", units), 9.5, number),)
    return columns if units == "metric" else (*columns, Column(f"{words} (ft\u00a0in)", 12))


def length_values(value_m: float, units: Units) -> tuple[Value, ...]:
    """Return what stands in `length_columns`, rounded up.

    Args:
        value_m: The length, m.
        units: The farm's units.
    """
    size = shown_size(value_m, units)
    if units == "metric":
        return (size,)
    return (size, format_length(value_m, units, step=8, rounding="up"))
