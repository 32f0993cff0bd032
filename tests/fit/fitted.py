"""An invented tunnel of 22 bows with girths read, fitted to the widths its film is sold in."""

from collections.abc import Sequence
from decimal import Decimal

from hoopwright.cover import lay_skin
from hoopwright.farm import (
    BowReading,
    EvenBows,
    Film,
    FilmRoll,
    RoundBow,
    SideBoards,
    Tape,
    Tunnel,
)
from hoopwright.farm.skin import Covering
from hoopwright.fit import Fit, fit_widths
from hoopwright.quantity.units import FOOT_M, INCH_M
from hoopwright.survey import survey_frame
from samples import small_catalogue, tunnel

# The bent bow, a worked story: 30 ft 9 in, 9 1/2, 10, 8 3/4, and 31 ft 2 in at the last bow.
BENT = {
    1: 30 * FOOT_M + 9 * INCH_M,
    6: 30 * FOOT_M + 9.5 * INCH_M,
    11: 30 * FOOT_M + 10 * INCH_M,
    17: 30 * FOOT_M + 8.75 * INCH_M,
    22: 31 * FOOT_M + 2 * INCH_M,
}
STOCKS_FT = (24, 28, 32, 34, 36, 40, 42, 48)


def bent_tunnel(girths_m: dict[int, float] | None = None, layers: int = 1, **tape: float) -> Tunnel:
    """Return 26 by 84 ft, bows at 4 ft, hip 5 ft, rise 7 ft, with tails of 9 in at the hips.

    Args:
        girths_m: Girths from hip to hip by bow, m; the bent bow's when not given.
        layers: Layers of the roof.
        **tape: What else is said of the tape.
    """
    plain = tunnel(roof_layers=layers)
    boards = SideBoards(hip_height_m=5 * FOOT_M, baseboard_height_m=FOOT_M)
    read = BENT if girths_m is None else girths_m
    rows = tuple(BowReading(bow=bow, over_hips_m=m) for bow, m in sorted(read.items()))
    frame = plain.frame.but(
        profile=RoundBow(span_m=26 * FOOT_M, leg_height_m=5 * FOOT_M, peak_height_m=12 * FOOT_M),
        length_m=84 * FOOT_M,
        bows=EvenBows(count=22, spacing_m=4 * FOOT_M),
        boards=(boards, boards),
        tape=Tape(bows=rows, **tape),
    )
    allowances = plain.skin.allowances.but(hip_tail_m=0.75 * FOOT_M)
    return plain.but(frame=frame, skin=plain.skin.but(allowances=allowances))


def stocked(minus_share: float = 0.0, stocks_ft: Sequence[float] = STOCKS_FT) -> tuple[Film, ...]:
    """Return the small films in the widths of the story, each in two lengths."""
    rolls = tuple(
        FilmRoll(width_m=width_ft * FOOT_M, length_m=length_ft * FOOT_M, price=Decimal(400))
        for width_ft in reversed(stocks_ft)
        for length_ft in (100, 150)
    )
    films = small_catalogue().films
    return tuple(film.but(rolls=rolls, width_minus_share=minus_share) for film in films)


def fitted(
    made: Tunnel, films: tuple[Film, ...] | None = None, covering: Covering = "roof_and_sides"
) -> Fit:
    """Return how the sheets over the bows fit."""
    sold = films or stocked()
    survey = survey_frame(made.frame)
    cover = lay_skin(
        covering, survey, made.skin, made.sides, made.ends, sold, made.air.inflated_sides
    )
    return fit_widths(survey, made.skin, cover.pieces, sold, made.frame.tape)
