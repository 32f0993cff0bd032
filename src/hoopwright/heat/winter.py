"""Degree-days to the temperature at which this tunnel's heater starts.

Degree-days are printed to some base. The heater of a tunnel starts at what is kept inside less
what sun and soil give, so they have to be brought from one base to the other. Between the coldest
outside C and mild days the number of colder days grows about with the square of the height over
C: a few very cold days, many cool ones. Degree-days are the sum of those days over all heights
below the base, so they grow with the cube: D' = D ((T' - C) / (T - C))**3.
"""

from hoopwright.farm import Climate
from hoopwright.quantity.working import Phrase, Term, Working, phrase

SAME_K = 0.05
"""Two bases closer than this are one. Unit: K."""

CUBE_SOURCE = (
    "derived here; within some percent of the annual heating degree-days to bases of 50 to 65 degF "
    "that the Western Regional Climate Center prints for its stations"
)


def degree_days_at(climate: Climate, start_k: float) -> float:
    """Return the degree-days of the season to the temperature at which the heater starts, K d.

    Args:
        climate: Degree-days with their base, and the coldest outside.
        start_k: Outside temperature below which the heater runs, K.

    Returns:
        Degree-days, K d; 0 when it never gets that cold; as entered when their own base is no
        warmer than the coldest outside.

    Source:
        Cube of the height over the coldest outside: derived in this module's docstring.
    """
    coldest_k = climate.design_outside_k
    if abs(start_k - climate.base_k) <= SAME_K:
        return climate.degree_days
    if start_k <= coldest_k:
        return 0.0
    if climate.base_k <= coldest_k:
        return climate.degree_days
    return climate.degree_days * ((start_k - coldest_k) / (climate.base_k - coldest_k)) ** 3


def told_base(climate: Climate, start_k: float) -> Phrase | None:
    """Return what was done with degree-days of another base; nothing when it is the same."""
    if abs(start_k - climate.base_k) <= SAME_K or climate.degree_days == 0:
        return None
    if start_k > climate.design_outside_k >= climate.base_k:
        return phrase(
            "The degree-days are counted to {base}, which is no warmer than the coldest outside, "
            "so they are used as entered; enter those to {start}, where the heater starts.",
            base=(climate.base_k, "K"),
            start=(start_k, "K"),
        )
    return phrase(
        "The degree-days are counted to {base} and the heater starts at {start}: {entered} were "
        "brought to {used} by the cube of the height over the coldest outside. Enter those counted "
        "to {start} for a surer figure.",
        base=(climate.base_k, "K"),
        start=(start_k, "K"),
        entered=(climate.degree_days, "K day"),
        used=(degree_days_at(climate, start_k), "K day"),
    )


def days_working(climate: Climate, inside_k: float, gain_k: float) -> Working:
    """Return how the degree-days of the season were got.

    Args:
        climate: Degree-days with their base, and the coldest outside.
        inside_k: Temperature kept inside, K.
        gain_k: What sun and soil lift it, K.
    """
    return Working(
        "degree_days",
        "As entered when their base is what is kept inside less what sun and soil give; else "
        "times the cube of the height of that over the coldest outside to the height of their "
        "base over it.",
        (
            Term("degree-days entered", climate.degree_days, "K day"),
            Term("to a base of", climate.base_k, "K"),
            Term("kept inside", inside_k, "K"),
            Term("given by sun and soil", gain_k, "dK"),
            Term("coldest outside", climate.design_outside_k, "K"),
        ),
        CUBE_SOURCE,
    )
