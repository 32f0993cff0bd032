"""What the seals of a tunnel are asked for: the pull in the tighter layer, as in a peel coupon.

A curtain's outer layer bows by its slack and what is cut for the gap, its inner one by the slack
alone, so the inner one is the tighter. An end wall's outer layer is flat but for its stretch; its
inner one stands against studs. Both are reckoned over the whole way between two seal lines, as if
bows and studs did not help: an upper bound.
"""

from collections.abc import Iterator, Mapping

from hoopwright.cover.cover import Cover
from hoopwright.cover.side_film import curtain_films
from hoopwright.farm import Film, Side, Skin
from hoopwright.inflation import Inflation
from hoopwright.pressure.film_pulls import bowed_rise, end_film, hang_slacks
from hoopwright.pressure.membrane import MOST_SLACK
from hoopwright.pressure.peel import seal_pull
from hoopwright.survey.survey import Survey


def seal_need(
    inflation: Inflation,
    pressures: Mapping[str, float],
    skin: Skin,
    sides: tuple[Side, Side],
    films: tuple[Film, ...],
    survey: Survey,
    cover: Cover,
) -> float:
    """Return the greatest pull that a seal line is asked for, N/m; 0 without seals under pressure.

    Args:
        inflation: Seals.
        pressures: Greatest pressure of each kind of cell: `roof`, `side/0`, `end/1`, Pa.
        skin: The skin as chosen.
        sides: Both sides as chosen.
        films: Films of the catalogue.
        survey: The frame as built.
        cover: The skin laid one way.

    Source:
        `hoopwright.pressure.peel`; see the module.
    """
    by_key = {film.key: film for film in films}
    sealed = {seal.mark for seal in inflation.seals}
    under = {kind: pa for kind, pa in pressures.items() if pa > 0}
    needs = (
        *_curtains(sealed, under, skin, sides, by_key, cover),
        *_ends(sealed, under, by_key, survey, cover),
    )
    return max(needs, default=0.0)


def _curtains(
    sealed: set[str],
    pressures: Mapping[str, float],
    skin: Skin,
    sides: tuple[Side, Side],
    films: Mapping[str, Film],
    cover: Cover,
) -> Iterator[float]:
    for n, side in enumerate(sides):
        span = next((s for s in cover.curtains if s.side == n and s.mark in sealed), None)
        layers = [films.get(key) for _, key in curtain_films(side, skin, cover.covering)]
        if span is None or f"side/{n}" not in pressures or len(layers) != 2:
            continue
        pressure_pa = pressures[f"side/{n}"]
        chord_m, outer_share, inner_share = hang_slacks(span, side, skin)
        rises = [
            bowed_rise(film, pressure_pa, chord_m, min(share, MOST_SLACK))
            for film, share in zip(layers, (outer_share, inner_share), strict=True)
            if film is not None
        ]
        if len(rises) == 2 and min(rises) > 0:
            yield seal_pull(chord_m, pressure_pa, *rises).arm_n_m


def _ends(
    sealed: set[str],
    pressures: Mapping[str, float],
    films: Mapping[str, Film],
    survey: Survey,
    cover: Cover,
) -> Iterator[float]:
    for n in (0, 1):
        place, film = f"end/{n}", end_film(n, films, cover)
        if place not in sealed or place not in pressures or film is None:
            continue
        chord_m = min(survey.width_m, survey.height_m)
        rise_m = bowed_rise(film, pressures[place], chord_m, 0.0)
        if rise_m > 0:
            yield seal_pull(chord_m, pressures[place], rise_m, rise_m).arm_n_m
