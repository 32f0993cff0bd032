"""Fit out the tunnel with what is added to its skin: gutters, shade cloth, insect screens."""

from hoopwright.airing.airing import Airing
from hoopwright.cover.cover import Cover
from hoopwright.farm import Rain, Shade, Side, SideBoards
from hoopwright.outfit.outfit import Outfit
from hoopwright.outfit.rain import drain_roof
from hoopwright.outfit.screen import hang_screens
from hoopwright.outfit.shade import lay_shade
from hoopwright.survey.survey import Survey


def fit_out(
    survey: Survey,
    boards: tuple[SideBoards, SideBoards],
    sides: tuple[Side, Side],
    cover: Cover,
    airing: Airing,
    rain: Rain | None,
    shade: Shade | None,
) -> Outfit:
    """Return gutters, shade cloth and screens as they are on this tunnel.

    Args:
        survey: The frame as built.
        boards: Boards of the first and of the second side.
        sides: Both sides as chosen.
        cover: The skin as laid.
        airing: What opens.
        rain: The rain that gutters carry, or None; without it gutters are not worked out.
        shade: Shade cloth, or None.

    Source:
        Each figure keeps its own working.
    """
    return Outfit(
        rain=None if rain is None else drain_roof(survey, boards, rain),
        shade=None if shade is None else lay_shade(survey, sides, shade),
        screens=hang_screens(survey, sides, cover, airing),
    )
