"""What the air does to the film of each kind of cell, and what the seals are asked for.

**Roof, outer layer.** It is gripped at the hips and stands off the inner layer everywhere between,
so no bow or purlin helps it: a strip across the tunnel spans the whole arch, and its radius is
that of a circle arc as long as the film over the chord from hip to hip. That is metres, not the
decimetres of the gap, and governs the pull. Where such an arc would pass under the ridge, as over
straight rafters, the film rests on the ridge and each half is an arc of its own. Stretching makes
the arc longer and the pull less; it is left out.

**Roof, inner layer.** The air presses it onto the bows and between them inward; across, pressed
onto a round arch, it cannot pull. So it spans the widest bay along the tunnel, flat but for what
it stretches.

**Curtains, outer layer.** A strip spans from the hip to the bar, longer than that by the slack and
by what is cut for the gap, and it stretches. The inner layer lies against the bows.

**End walls, outer layer.** Cut flat; a strip is taken over the lesser of width and height, as if
the other way did not help. An upper bound: a film bowed both ways is pulled less.
"""

import math
from collections.abc import Iterator, Mapping
from itertools import pairwise

from msgspec import Struct

from hoopwright.cover.bulge import bulge_extra
from hoopwright.cover.cover import Cover, CurtainSpan
from hoopwright.cover.side_film import curtain_films
from hoopwright.farm import Film, Side, Skin
from hoopwright.pressure.held import FilmPull
from hoopwright.pressure.membrane import (
    MOST_SLACK,
    billow_radius,
    film_pull,
    film_stress,
    stretched_rise,
)
from hoopwright.quantity.working import DERIVED, ENTERED, LaterWorkings, Term, Working
from hoopwright.survey.survey import Survey

LAPLACE = "T = p R (Laplace; any text on thin shells)"
MODULUS = (
    f"stiffness: {ENTERED}; 126 to 299 MPa were measured on greenhouse films (Advances in "
    "Materials Science and Engineering 2019, article 1692126, table 5)"
)

_HALVINGS = 60


class _Bow(Struct, frozen=True):
    """A layer between the lines that hold it.

    Attributes:
        mark: Mark of the pull.
        name: What people call it.
        film: Its film.
        pressure_pa: Pressure on it, Pa.
        chord_m: Between the lines, m.
        extra_share: How much longer than the chord it is cut.
        radius_m: Radius it takes, m.
        rule: How the radius was got.
    """

    mark: str
    name: str
    film: Film
    pressure_pa: float
    chord_m: float
    extra_share: float
    radius_m: float
    rule: str


def pull_films(
    pressures: Mapping[str, float],
    skin: Skin,
    sides: tuple[Side, Side],
    films: tuple[Film, ...],
    survey: Survey,
    cover: Cover,
) -> tuple[FilmPull, ...]:
    """Return what the air does to the film, by kind of cell and layer.

    Args:
        pressures: Greatest pressure above zero of each kind: `roof`, `side/0`, `end/1`, Pa.
        skin: The skin as chosen.
        sides: Both sides as chosen.
        films: Films of the catalogue.
        survey: The frame as built.
        cover: The skin laid one way.

    Source:
        See the module.
    """
    by_key = {film.key: film for film in films}
    bows = (
        *_roof(pressures, skin, by_key, survey),
        *_curtains(pressures, skin, sides, by_key, cover),
        *_ends(pressures, by_key, survey, cover),
    )
    return tuple(_pull(bow) for bow in bows)


def hang_slacks(span: CurtainSpan, side: Side, skin: Skin) -> tuple[float, float, float]:
    """Return the chord of a curtain, m, and how much longer its outer and inner layers are.

    Source:
        Derived here: slack, and for the outer layer what is cut for the gap, over the chord.
    """
    drop_m = span.hang_m - side.slack_m
    extra_m = bulge_extra(drop_m, 0.0, skin.inflation_gap_m)
    return drop_m, (side.slack_m + extra_m) / drop_m, side.slack_m / drop_m


def bowed_rise(film: Film, pressure_pa: float, chord_m: float, extra_share: float) -> float:
    """Return how far a layer bows with its slack and its stretch, at most to a half circle, m.

    Source:
        `hoopwright.pressure.membrane`.
    """
    try:
        return stretched_rise(chord_m, pressure_pa, film.thickness_m, film.modulus_pa, extra_share)
    except ValueError:
        return chord_m / 2


def arc_radius(chord_m: float, length_m: float) -> float:
    """Return the radius of a circle arc by its length and its chord, m.

    Args:
        chord_m: Between its ends, m, above zero.
        length_m: Along it, m; at most the chord makes it straight.

    Returns:
        Radius; infinite for a straight one. An arc may be more than a half circle.

    Source:
        Circle geometry: sin u / u = chord / length, R = length / (2 u), solved by halving.
    """
    if length_m <= chord_m * (1 + 1e-12):
        return math.inf
    low, high = 0.0, math.pi
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        if math.sin(middle) * length_m > middle * chord_m:
            low = middle
        else:
            high = middle
    return length_m / (low + high)


def roof_radius(survey: Survey, gap_m: float) -> tuple[float, float, float]:
    """Return chord, length and radius of the outer layer over the arch, m.

    Where the film rests on the ridge they are those of the half with the greater radius.

    Args:
        survey: The frame as built.
        gap_m: Air between the layers that the outer one is cut for, m.

    Source:
        See the module.
    """
    first, second = (survey.curve.point_at(at_m) for at_m in survey.hip_at_m)
    ridge = survey.curve.point_at(survey.curve.ridge_m)
    chord_m = math.dist(first, second)
    rise_m = _height_over(first, second, ridge)
    length_m = survey.roof_girth_m + bulge_extra(chord_m, max(0.0, rise_m), gap_m)
    radius_m = arc_radius(chord_m, length_m)
    if math.isinf(radius_m):
        return chord_m, length_m, radius_m
    if radius_m * (1 - math.cos(length_m / (2 * radius_m))) >= rise_m:
        return chord_m, length_m, radius_m
    halves = [math.dist(hip, ridge) for hip in (first, second)]
    share = length_m / sum(halves)
    return max(
        ((half, half * share, arc_radius(half, half * share)) for half in halves),
        key=lambda part: part[2],
    )


def _height_over(
    first: tuple[float, float], second: tuple[float, float], point: tuple[float, float]
) -> float:
    across_m, up_m = second[0] - first[0], second[1] - first[1]
    return (across_m * (point[1] - first[1]) - up_m * (point[0] - first[0])) / math.hypot(
        across_m, up_m
    )


def _roof(
    pressures: Mapping[str, float], skin: Skin, films: Mapping[str, Film], survey: Survey
) -> Iterator[_Bow]:
    pressure_pa = pressures.get("roof", 0.0)
    if pressure_pa <= 0:
        return
    outer, inner = films.get(skin.roof.outer), films.get(skin.roof.inner)
    if outer is not None:
        chord_m, length_m, radius_m = roof_radius(survey, skin.inflation_gap_m)
        share = length_m / chord_m - 1
        rule = (
            "A circle arc as long as the film, over the chord. The layer stands off the frame from "
            "hip to hip; where it rests on the ridge, the chord is that of one half."
        )
        if math.isinf(radius_m):
            radius_m, share = _stretched(outer, pressure_pa, chord_m, 0.0), 0.0
        yield _Bow(
            "pull/roof/outer",
            "Roof, outer layer, hip to hip",
            outer,
            pressure_pa,
            chord_m,
            share,
            radius_m,
            rule,
        )
    if inner is not None:
        bay_m = widest_bay(survey)
        yield _Bow(
            "pull/roof/inner",
            "Roof, inner layer, bow to bow",
            inner,
            pressure_pa,
            bay_m,
            0.0,
            _stretched(inner, pressure_pa, bay_m, 0.0),
            "The layer is pressed inward between the bows, flat but for what it stretches.",
        )


def _curtains(
    pressures: Mapping[str, float],
    skin: Skin,
    sides: tuple[Side, Side],
    films: Mapping[str, Film],
    cover: Cover,
) -> Iterator[_Bow]:
    for n, side in enumerate(sides):
        pressure_pa = pressures.get(f"side/{n}", 0.0)
        span = next((s for s in cover.curtains if s.side == n), None)
        film = films.get(curtain_films(side, skin, cover.covering)[0][1])
        if pressure_pa <= 0 or span is None or film is None:
            continue
        chord_m, share, _ = hang_slacks(span, side, skin)
        yield _Bow(
            f"pull/side/{n}/outer",
            f"{side.name}, outer layer, hip to bar",
            film,
            pressure_pa,
            chord_m,
            share,
            _stretched(film, pressure_pa, chord_m, share),
            "A circle arc as long as the film with its slack, what is cut for the gap and what it "
            "stretches, over the way from hip to bar.",
        )


def _ends(
    pressures: Mapping[str, float], films: Mapping[str, Film], survey: Survey, cover: Cover
) -> Iterator[_Bow]:
    for n in (0, 1):
        pressure_pa = pressures.get(f"end/{n}", 0.0)
        film = end_film(n, films, cover)
        if pressure_pa <= 0 or film is None:
            continue
        chord_m = min(survey.width_m, survey.height_m)
        yield _Bow(
            f"pull/end/{n}/outer",
            f"{('Front', 'Back')[n]} end wall, outer layer",
            film,
            pressure_pa,
            chord_m,
            0.0,
            _stretched(film, pressure_pa, chord_m, 0.0),
            "Cut flat, it bows by what it stretches over the lesser of width and height; that it "
            "is held the other way too is left out.",
        )


def end_film(n: int, films: Mapping[str, Film], cover: Cover) -> Film | None:
    """Return the outer film of an end wall; None when it has none."""
    for piece in cover.pieces:
        on_end = piece.role == "end wall" and piece.areas[0].surface == f"end{n}"
        if on_end and piece.layer != "inner":
            return films.get(piece.film)
    return None


def widest_bay(survey: Survey) -> float:
    """Return the widest bay, m.

    Source:
        Derived here.
    """
    return max(there - here for here, there in pairwise(survey.bows_m))


def _stretched(film: Film, pressure_pa: float, chord_m: float, extra_share: float) -> float:
    rise_m = bowed_rise(film, pressure_pa, chord_m, min(extra_share, MOST_SLACK))
    return billow_radius(chord_m, max(rise_m, _FLATTEST * chord_m))


# A bow this flat carries no pressure worth naming and its radius would pass all bounds.
_FLATTEST = 1e-6


def _pull(bow: _Bow) -> FilmPull:
    tension_n_m = film_pull(bow.pressure_pa, bow.radius_m)
    stress_pa = film_stress(tension_n_m, bow.film.thickness_m)
    return FilmPull(
        mark=bow.mark,
        name=bow.name,
        pressure_pa=bow.pressure_pa,
        chord_m=bow.chord_m,
        extra_share=bow.extra_share,
        radius_m=bow.radius_m,
        tension_n_m=tension_n_m,
        stress_pa=stress_pa,
        yield_share=stress_pa / bow.film.yield_pa,
        workings=LaterWorkings(lambda: _workings(bow, tension_n_m, stress_pa)),
    )


def _workings(bow: _Bow, tension_n_m: float, stress_pa: float) -> tuple[Working, ...]:
    pressure = Term("pressure", bow.pressure_pa, "Pa")
    chord, share = Term("chord", bow.chord_m, "m"), Term("longer by", bow.extra_share, "share")
    radius, tension = Term("radius", bow.radius_m, "m"), Term("pull", tension_n_m, "N/m")
    thickness = Term("thickness of the layer", bow.film.thickness_m, "m_film")
    stiff = Term("stiffness", bow.film.modulus_pa, "Pa_film")
    return (
        Working("pressure_pa", "The greatest pressure of its cells.", (pressure,)),
        Working("chord_m", "Straight between the lines that hold the layer.", (chord,)),
        Working(
            "extra_share", "Length cut between these lines over the chord, less one.", (share,)
        ),
        Working(
            "radius_m",
            bow.rule,
            (chord, share, pressure, thickness, stiff),
            f"{DERIVED}; {MODULUS}",
        ),
        Working("tension_n_m", "Pressure times radius.", (pressure, radius), LAPLACE),
        Working("stress_pa", "Pull over thickness.", (tension, thickness)),
        Working(
            "yield_share",
            "Stress over the stress at which the film stretches for good. Film under lasting pull "
            "creeps well below that; keep far under it.",
            (
                Term("stress", stress_pa, "Pa_film"),
                Term("stretches for good at", bow.film.yield_pa, "Pa_film"),
            ),
            f"{DERIVED}; yield: {ENTERED}",
        ),
    )
