"""Small tunnels fitted out with gutters, shade cloth and screens."""

from hoopwright.airing import air_tunnel
from hoopwright.curtain import work_curtains
from hoopwright.farm import EvenBows, Limits, RoundBow, SideBoards, Tunnel, Weather
from hoopwright.outfit import Outfit, fit_out
from hoopwright.survey import survey_frame
from laying import laid
from samples import small_catalogue, tunnel
from worked import DRUM

FOOT_M = 0.3048


def with_gutters(made: Tunnel, *sides: int, drop_m: float = 0.15) -> Tunnel:
    """Return the tunnel with a gutter on the hip boards of these sides."""
    boards: list[SideBoards] = list(made.frame.boards)
    for n in sides:
        boards[n] = boards[n].but(gutter_drop_m=drop_m)
    return made.but(frame=made.frame.but(boards=(boards[0], boards[1])))


def published_tunnel() -> Tunnel:
    """Return a tunnel of 30 by 96 ft over its bows, a gutter on each side."""
    plain = tunnel()
    profile = RoundBow(span_m=30 * FOOT_M, leg_height_m=5 * FOOT_M, peak_height_m=14 * FOOT_M)
    frame = plain.frame.but(
        profile=profile,
        tube_diameter_m=0.0,
        length_m=96 * FOOT_M,
        bows=EvenBows(count=25, spacing_m=4 * FOOT_M),
    )
    return with_gutters(plain.but(frame=frame), 0, 1)


def fitted(made: Tunnel) -> Outfit:
    """Return what is added to the skin of a tunnel."""
    survey, cover, catalogue = survey_frame(made.frame), laid(made), small_catalogue()
    curtains = work_curtains(
        made.frame.boards,
        survey,
        made.sides,
        cover,
        catalogue.bars,
        (*catalogue.drives, DRUM),
        catalogue.parts,
        Limits(),
        Weather(),
        made.skin.allowances.bar_wrap_m,
    )
    airing = air_tunnel(survey, made.sides, curtains, Weather())
    return fit_out(survey, made.frame.boards, made.sides, cover, airing, made.rain, made.shade)
