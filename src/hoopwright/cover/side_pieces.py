"""The sheets of one side: curtains, pockets, split strips, or one fixed sheet."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache

from hoopwright.cover.cover import Area, CurtainSpan, FixedSpan, Piece, Role, Surface
from hoopwright.cover.lengths import side_length
from hoopwright.cover.sheet import Place, cut_piece
from hoopwright.cover.side_film import curtain_films, layer_films, own_sheets
from hoopwright.cover.size import Size, add_up
from hoopwright.cover.sizes import (
    TOLERANCE,
    curtain_hang,
    curtain_height,
    curtain_share,
    fixed_height,
    pocket_height,
)
from hoopwright.cover.spans import Hanging, curtain_spans, fixed_spans
from hoopwright.cover.stretch import Greatest, Stretch, greatest_gap
from hoopwright.farm import Film, Side, Skin
from hoopwright.farm.skin import Covering
from hoopwright.survey import Survey

SURFACES: tuple[Surface, Surface] = ("side0", "side1")


@dataclass(frozen=True, slots=True)
class LaidSide:
    """One side with its film.

    Attributes:
        pieces: Its sheets.
        curtains: Where curtains hang.
        fixed: Where film is fixed.
        height: Cut height of its highest film, or None when the sheet of the roof covers it.
    """

    pieces: tuple[Piece, ...]
    curtains: tuple[CurtainSpan, ...]
    fixed: tuple[FixedSpan, ...]
    height: Size | None


@dataclass(frozen=True, slots=True)
class SideCase:
    """One side and all that its film depends on.

    Attributes:
        n: 0 for the first side, 1 for the second.
        side: The side as chosen.
        covering: One sheet, or roof and sides apart.
        survey: The frame as built.
        skin: The skin as chosen.
        films: Films by key.
        inflated: Whether its curtains are inflated.
    """

    n: int
    side: Side
    covering: Covering
    survey: Survey
    skin: Skin
    films: Mapping[str, Film]
    inflated: bool

    def area(self, from_m: float, to_m: float, low_m: float) -> Area:
        """Return a rectangle below the hip seam that does not run past the end bows."""
        hip_m = self.survey.curve.point_at(self.survey.hip_at_m[self.n])[1]
        ends = (max(0.0, from_m), min(self.survey.length_m, to_m))
        return Area(SURFACES[self.n], *ends, low_m, hip_m)

    @property
    def own(self) -> bool:
        """Return whether the side has sheets of its own."""
        return own_sheets(self.side, self.covering)

    @property
    def base_m(self) -> float:
        """Return the height of the top of the baseboard, m."""
        return self.survey.curve.point_at(self.survey.base_at_m[self.n])[1]

    @property
    def low_m(self) -> float:
        """Return the height down to which the side's film hangs, m."""
        held = self.side.kind in ("fixed", "drop_down")
        return self.base_m if held else self.side.shut_height_m


def lay_side(case: SideCase) -> LaidSide:
    """Return a side with its film."""
    side, bows_m = case.side, case.survey.bows_m
    fixed = fixed_spans(case.n, side, bows_m, case.own)
    if side.kind == "fixed":
        return _fixed_side(case, fixed)
    hung_over = cache(lambda over: _hanging(case, over))
    curtains = curtain_spans(case.n, side, bows_m, case.own, hung_over)
    held = pocket_height(case.survey, case.skin, case.n, side)
    strips = tuple(_strips(case, fixed, held))
    if not case.own:
        return LaidSide(strips, curtains, fixed, None)
    pieces = (*_curtains(case, curtains, hung_over), *_pockets(case, fixed, held), *strips)
    layer = curtain_films(side, case.skin, case.covering)[0][0]
    highest = curtain_height(case.survey, case.skin, case.n, side, layer, case.inflated)
    return LaidSide(pieces, curtains, fixed, highest)


def _fixed_side(case: SideCase, fixed: tuple[FixedSpan, ...]) -> LaidSide:
    if not case.own:
        return LaidSide((), (), fixed, None)
    height = fixed_height(case.survey, case.skin, case.n)
    return LaidSide(tuple(_side_sheets(case, height)), (), fixed, height)


def _hanging(case: SideCase, over: Stretch) -> Hanging:
    """Return how high a curtain over a stretch is cut, its outer layer where there are two."""
    layers = curtain_films(case.side, case.skin, case.covering)
    height = curtain_height if case.own else curtain_share
    shut_m = None if case.side.kind == "drop_down" else case.side.shut_height_m
    line = case.survey.taped.lines[case.n]
    nothing = Greatest(0.0, None)
    return Hanging(
        hang=curtain_hang(case.survey, case.n, case.side, over),
        cut=height(case.survey, case.skin, case.n, case.side, layers[0][0], case.inflated, over),
        films=tuple(case.films[key] for _, key in layers),
        lap_m=case.skin.allowances.curtain_lap_m,
        shut_m=shut_m,
        gap=nothing if shut_m is None else greatest_gap(case.survey, shut_m, line.ground, over),
        board_gap=nothing
        if shut_m is None
        else greatest_gap(case.survey, shut_m, line.baseboard, over),
    )


def _curtains(
    case: SideCase, curtains: tuple[CurtainSpan, ...], hung_over: Callable[[Stretch], Hanging]
) -> Iterator[Piece]:
    tolerance_m = case.skin.allowances.measuring_tolerance_m
    for at, layer in enumerate(curtain_films(case.side, case.skin, case.covering)):
        for span in curtains:
            over = (span.open_from_m, span.open_to_m)
            # The first layer is the one that tells how high the curtain is cut.
            width = hung_over(over).cut
            if at > 0:
                width = curtain_height(
                    case.survey, case.skin, case.n, case.side, layer[0], case.inflated, over
                )
            length = add_up(
                "The opening, and a lap over the neighbour or the pocket at each end.",
                ("opening", span.open_to_m - span.open_from_m),
                ("2 x lap at the ends", 2 * case.skin.allowances.curtain_lap_m),
                (TOLERANCE, tolerance_m),
            )
            name = f"Curtain {span.index + 1}, {case.side.name}"
            areas = (case.area(span.from_m, span.to_m, case.low_m),)
            place = Place("curtain", case.n, span.index, name, areas)
            yield cut_piece(place, layer, width, length, case.films)


def _pockets(case: SideCase, fixed: tuple[FixedSpan, ...], height: Size) -> Iterator[Piece]:
    for number, end in enumerate(("front", "back")):
        for span in fixed:
            if span.mark.endswith(f"/pocket/{end}"):
                name = f"Pocket {end}, {case.side.name}"
                yield from _held(case, span, height, "pocket", number, name)


def _strips(case: SideCase, fixed: tuple[FixedSpan, ...], height: Size) -> Iterator[Piece]:
    for span in fixed:
        _, _, index = span.mark.partition("/strip/")
        if index:
            name = f"Split strip {int(index) + 1}, {case.side.name}"
            yield from _held(case, span, height, "split strip", int(index), name)


def _held(
    case: SideCase, span: FixedSpan, height: Size, role: Role, number: int, name: str
) -> Iterator[Piece]:
    """Yield the layers of a pocket or strip: held on the bows at both its ends."""
    allowances = case.skin.allowances
    length = add_up(
        "From bow to bow, and a tail beyond the bow at each end.",
        ("bow to bow", span.to_m - span.from_m),
        ("2 x tail past the bow", 2 * allowances.pocket_tail_m),
        (TOLERANCE, allowances.measuring_tolerance_m),
    )
    place = Place(role, case.n, number, name, (case.area(span.from_m, span.to_m, case.base_m),))
    for layer in layer_films(case.skin.pockets):
        yield cut_piece(place, layer, height, length, case.films)


def _side_sheets(case: SideCase, height: Size) -> Iterator[Piece]:
    areas = (case.area(0.0, case.survey.length_m, case.base_m),)
    place = Place("side sheet", case.n, 0, f"Side sheet, {case.side.name}", areas)
    length = side_length(case.survey, case.skin)
    for layer in layer_films(case.skin.sides):
        yield cut_piece(place, layer, height, length, case.films)
