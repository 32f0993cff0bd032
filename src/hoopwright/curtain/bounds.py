"""The limits that set how long a bar may be: for a bar cranked at an end, and in words."""

from dataclasses import replace

from hoopwright.curtain.cranking import work_curtain
from hoopwright.curtain.curtain import Bound, CurtainWork

REMEDY: dict[Bound, str] = {
    "hand force": "take a longer arm, a geared crank or a lighter bar",
    "trailing": "take a bar of larger diameter, or allow more trailing",
    "maker of the bar": "take another bar",
    "maker of the drive": "take another drive",
}
"""What helps when no split keeps within a limit; each begins in the middle of a sentence."""


def end_bound(works: tuple[CurtainWork, ...]) -> tuple[float, Bound]:
    """Return how long a bar of a side may be when it is cranked at an end, and what sets it.

    A curtain cranked in the middle reaches farther than one cranked at an end, and where there
    are several they are cranked at their ends.

    Args:
        works: The curtains of the side, at least one.

    Returns:
        Length, m, and the limit.
    """
    ended = [_at_end(work) if work.cranked == "middle" else work for work in works]
    least = min(ended, key=lambda work: work.longest_m)
    return least.longest_m, least.bound_by


def _at_end(work: CurtainWork) -> CurtainWork:
    side = work.hung.side
    panels = tuple(panel.but(crank_end="front") for panel in side.panels)
    return work_curtain(replace(work.hung, side=side.but(panels=panels)))


def limit_words(bound: Bound) -> str:
    """Return a limit as it stands in a sentence."""
    owner = bound.removeprefix("maker of ")
    return f"the maker of {owner}" if owner != bound else f"your limit of {bound}"
