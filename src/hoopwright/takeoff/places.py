"""Where a need sits along the tunnel, read from its mark."""

from collections.abc import Mapping

from hoopwright.cover.cover import Cover
from hoopwright.farm.condition import Where
from hoopwright.survey.survey import Survey
from hoopwright.takeoff.need import Need, Place

Stretch = tuple[float, float]

SIDES: tuple[Where, Where] = ("first_side", "second_side")
ENDS: tuple[Where, Where] = ("front_end", "back_end")


def stretches_by_mark(cover: Cover) -> dict[str, Stretch]:
    """Return the stretch of each curtain, its laps left out, and of each fixed film, m."""
    found = {span.mark: (span.open_from_m, span.open_to_m) for span in cover.curtains}
    found.update({span.mark: (span.from_m, span.to_m) for span in cover.fixed})
    return found


def place_of(need: Need, survey: Survey, stretches: Mapping[str, Stretch]) -> Place:
    """Return where a need sits.

    Args:
        need: The need; one that names its place is taken at its word.
        survey: The frame as built.
        stretches: Stretch of each curtain and of each fixed film by mark.

    Returns:
        A need whose mark tells no stretch lies along the whole tunnel.
    """
    return need.place or place_at(need.marks[0], survey, stretches)


def place_at(mark: str, survey: Survey, stretches: Mapping[str, Stretch]) -> Place:
    """Return the part of the tunnel and the stretch that a mark stands for."""
    kind, _, rest = mark.partition("/")
    whole = (survey.bows_m[0], survey.bows_m[-1])
    number = rest.partition("/")[0]
    if kind == "end" and number in ("0", "1"):
        at_m = whole[int(number)]
        return Place(ENDS[int(number)], at_m, at_m)
    if kind == "side" and number in ("0", "1"):
        return Place(SIDES[int(number)], *stretches.get(mark, whole))
    return Place("roof" if kind == "roof" else "everywhere", *whole)
