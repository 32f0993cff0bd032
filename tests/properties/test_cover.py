"""For every tunnel: the sheets cover the whole skin, laps are kept and no size is short."""

from itertools import pairwise

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from shapely import box, unary_union

from hoopwright.cover import Cover, Piece, lay_skin
from hoopwright.farm import (
    Air,
    Allowances,
    EvenBows,
    Frame,
    ListedBows,
    RoundBow,
    Side,
    SideBoards,
    Skin,
    Split,
    Tunnel,
    bow_positions,
)
from hoopwright.farm.frame import Bows
from hoopwright.farm.profile import ridge_height
from hoopwright.farm.skin import Covering
from hoopwright.survey import Survey, survey_frame
from laying import laid, of_role
from profiles import profiles
from samples import INSIDE, layers, small_catalogue, tunnel
from samples import side as plain_side

BOTH: tuple[Covering, Covering] = ("one_sheet", "roof_and_sides")
LENGTHS = st.floats(0.0, 0.6)
TOUCH_M = 1e-6
slow = settings(suppress_health_check=[HealthCheck.too_slow], max_examples=60)


@st.composite
def bows(draw: st.DrawFn) -> Bows:
    """Draw bows at one spacing, or where a tape found them."""
    if draw(st.booleans()):
        return EvenBows(count=draw(st.integers(4, 30)), spacing_m=draw(st.floats(0.6, 3.0)))
    gaps = draw(st.lists(st.floats(0.4, 3.0), min_size=3, max_size=20))
    spots = [0.0]
    for gap_m in gaps:
        spots.append(spots[-1] + gap_m)
    return ListedBows(positions_m=tuple(spots))


@st.composite
def sides(draw: st.DrawFn, spots: tuple[float, ...], boards: SideBoards) -> Side:
    """Draw a side of any kind whose bar hangs at the baseboard or below it."""
    bays = len(spots) - 1
    front = draw(st.integers(0, min(3, bays - 1)))
    back = draw(st.integers(0, min(3, bays - 1 - front)))
    low_m, high_m = spots[front], spots[bays - back]
    shares = sorted(set(draw(st.lists(st.floats(0.05, 0.95), max_size=3))))
    on_bow = [x for x in spots if low_m < x < high_m]
    placed = {low_m + share * (high_m - low_m) for share in shares}
    if on_bow and draw(st.booleans()):
        placed = {min(on_bow, key=lambda x: abs(x - at_m)) for at_m in placed}
    splits = tuple(
        Split(at_m=at_m, join=draw(st.sampled_from(["lap", "strip"]))) for at_m in sorted(placed)
    )
    return plain_side(
        draw(st.sampled_from(["West side", "East side"])),
        splits,
        kind=draw(st.sampled_from(["roll_up", "roll_up", "fixed", "woven", "drop_down"])),
        film=draw(st.sampled_from([None, INSIDE])),
        shut_height_m=draw(st.floats(0.0, 1.0)) * boards.baseboard_height_m,
        pocket_bays=(front, back),
        slack_m=draw(st.floats(0.0, 0.2)),
    )


@st.composite
def tunnels(draw: st.DrawFn) -> Tunnel:
    """Draw a tunnel of any shape with any skin."""
    profile = draw(profiles())
    pair = []
    for _ in range(2):
        hip_m = max(0.3, draw(st.floats(0.15, 0.8)) * ridge_height(profile))
        base_m = min(5.0, draw(st.floats(0.0, 0.8)) * hip_m)
        pair.append(SideBoards(hip_height_m=hip_m, baseboard_height_m=base_m))
    placed = draw(bows())
    spots = bow_positions(placed)
    cuts = draw(st.lists(st.floats(0.1, 0.9), max_size=2))
    skin = Skin(
        covering="roof_and_sides",
        roof=layers(draw(st.integers(1, 2))),
        sides=layers(draw(st.integers(1, 2))),
        pockets=layers(draw(st.integers(1, 2))),
        allowances=Allowances(curtain_lap_m=draw(LENGTHS), seam_lap_m=draw(LENGTHS)),
        cross_seams_m=tuple(sorted({share * spots[-1] for share in cuts})),
        inflation_gap_m=draw(st.floats(0.0, 0.4)),
    )
    plain = tunnel()
    return plain.but(
        frame=Frame(
            profile=profile,
            tube_diameter_m=draw(st.floats(0.0, 0.1)),
            length_m=spots[-1],
            bows=placed,
            boards=(pair[0], pair[1]),
        ),
        skin=skin,
        sides=(draw(sides(spots, pair[0])), draw(sides(spots, pair[1]))),
        air=Air(blower=None, inflated_sides=draw(st.tuples(st.booleans(), st.booleans()))),
    )


def _uncovered(cover: Cover, surface: str, whole: tuple[float, float, float, float]) -> float:
    """Return the area of a surface that no outer sheet lies on, m2."""
    lying = [
        box(a.from_m, a.low_m, a.to_m, a.high_m).buffer(TOUCH_M, join_style="mitre")
        for piece in cover.pieces
        if piece.layer != "inner"
        for a in piece.areas
        if a.surface == surface
    ]
    return float(box(*whole).difference(unary_union(lying)).area)


def _side_heights(survey: Survey, n: int) -> tuple[float, float]:
    spots = (survey.base_at_m[n], survey.hip_at_m[n])
    base_m, hip_m = (survey.curve.point_at(at_m)[1] for at_m in spots)
    return base_m, hip_m


@slow
@given(tunnels(), st.sampled_from(BOTH))
def test_sheets_cover_roof_sides_and_ends_without_a_gap(one: Tunnel, covering: Covering) -> None:
    survey = survey_frame(one.frame)
    cover = laid(one, covering)
    left_m, right_m = survey.hip_across_m
    assert _uncovered(cover, "roof", (0.0, left_m, survey.length_m, right_m)) == 0.0
    for n, surface in enumerate(("side0", "side1")):
        base_m, hip_m = _side_heights(survey, n)
        assert _uncovered(cover, surface, (0.0, base_m, survey.length_m, hip_m)) == 0.0
    half_m = survey.width_m / 2
    for surface in ("end0", "end1"):
        assert _uncovered(cover, surface, (-half_m, 0.0, half_m, survey.height_m)) == 0.0


def _lying_length(piece: Piece) -> float:
    return max(a.to_m - a.from_m for a in piece.areas)


@slow
@given(tunnels(), st.sampled_from(BOTH))
def test_no_sheet_is_shorter_than_where_it_lies(one: Tunnel, covering: Covering) -> None:
    survey = survey_frame(one.frame)
    for piece in laid(one, covering).pieces:
        assert piece.width_m > 0
        if piece.role == "end wall":
            assert piece.width_m >= survey.width_m
            assert piece.length_m >= survey.height_m
            continue
        assert piece.length_m >= _lying_length(piece) - 1e-9
        lowest = sum(a.high_m - a.low_m for a in piece.areas if a.surface != "roof")
        roof_m = survey.roof_girth_m if piece.areas[0].surface == "roof" else 0.0
        assert piece.width_m >= roof_m + lowest - 1e-9


@slow
@given(tunnels(), st.sampled_from(BOTH))
def test_roof_sheets_lap_by_the_wanted_lap(one: Tunnel, covering: Covering) -> None:
    survey = survey_frame(one.frame)
    sheets = [p for p in laid(one, covering).pieces if p.role in ("roof sheet", "whole sheet")]
    allowances = one.skin.allowances
    for layer in {p.layer for p in sheets}:
        lengths_m = [p.length_m for p in sheets if p.layer == layer]
        # End to end they are as long as the tunnel, both end tails, and a lap for every seam.
        seams = len(one.skin.cross_seams_m)
        assert len(lengths_m) == seams + 1
        assert sum(lengths_m) == pytest.approx(
            survey.length_m + 2 * allowances.end_tail_m + seams * allowances.seam_lap_m
        )


@slow
@given(tunnels())
def test_neighbouring_films_of_a_side_lap(one: Tunnel) -> None:
    cover = laid(one)
    lap_m = one.skin.allowances.curtain_lap_m
    for n, side in enumerate(one.sides):
        curtains = [c for c in cover.curtains if c.side == n]
        assert len(curtains) == (0 if side.kind == "fixed" else len(side.splits) + 1)
        for before, after in pairwise(curtains):
            assert before.open_to_m <= after.open_from_m
            if side.splits[before.index].join == "lap":
                assert before.to_m - after.from_m >= 2 * lap_m - 1e-9 or (
                    after.open_from_m > before.open_to_m
                )
        for curtain in curtains:
            assert curtain.open_from_m <= curtain.open_to_m
            assert curtain.from_m == pytest.approx(curtain.open_from_m - lap_m)
            assert curtain.to_m == pytest.approx(curtain.open_to_m + lap_m)
            assert curtain.length_m >= 0


@slow
@given(tunnels(), st.sampled_from(BOTH))
def test_outer_layer_is_never_smaller_than_the_inner(one: Tunnel, covering: Covering) -> None:
    sheets = {p.mark: p for p in laid(one, covering).pieces}
    for mark, piece in sheets.items():
        if piece.layer == "inner":
            outer = sheets[mark.replace("/inner/", "/outer/")]
            assert outer.width_m >= piece.width_m
            assert outer.length_m == piece.length_m


@slow
@given(tunnels())
def test_side_with_its_own_curtains_does_not_ask_how_the_roof_is_laid(one: Tunnel) -> None:
    whole, apart = (laid(one, covering) for covering in BOTH)
    for n, side in enumerate(one.sides):
        if side.kind in ("woven", "drop_down"):
            for found in ("pieces", "curtains", "fixed"):
                same = [
                    [
                        x
                        for x in getattr(cover, found)
                        if f"/{n}/" in x.mark and "/end-" not in x.mark
                    ]
                    for cover in (whole, apart)
                ]
                assert same[0] == same[1]
            assert whole.side_height_m[n] == apart.side_height_m[n] > 0


@slow
@given(tunnels(), st.sampled_from(BOTH))
def test_skin_laid_twice_is_the_same(one: Tunnel, covering: Covering) -> None:
    assert laid(one, covering) == laid(one, covering)


@given(st.floats(4.0, 14.0), st.floats(0.01, 1.0), st.floats(0.5, 2.0), st.integers(1, 2))
def test_roof_width_grows_with_the_span(
    span_m: float, more_m: float, rise_m: float, count: int
) -> None:
    # For bows up to a half circle; a taller one bulges less when its feet are moved apart.
    widths = []
    for width_m in (span_m, span_m + more_m):
        plain = tunnel(roof_layers=count)
        profile = RoundBow(span_m=width_m, leg_height_m=1.5, peak_height_m=1.5 + rise_m)
        wide = plain.but(frame=plain.frame.but(profile=profile))
        widths.append(of_role(laid(wide), "roof sheet")[0].width_m)
    assert widths[0] < widths[1]


@given(st.floats(0.5, 2.0))
def test_skin_scales_with_the_tunnel(factor: float) -> None:
    # All lengths in proportion make all sheets in proportion; film is as thick as before, so
    # mass grows as the area does.
    small, large = (_scaled_skin(scale) for scale in (1.0, factor))
    for before, after in zip(small.pieces, large.pieces, strict=True):
        assert after.width_m == pytest.approx(factor * before.width_m)
        assert after.length_m == pytest.approx(factor * before.length_m)
        assert after.mass_kg == pytest.approx(factor**2 * before.mass_kg)


def _scaled_skin(scale: float) -> Cover:
    """Return the skin of a double tunnel with every length times the scale."""
    lengths = {
        "hip_tail_m": 0.2,
        "curtain_top_tail_m": 0.15,
        "baseboard_tail_m": 0.3,
        "end_tail_m": 0.6,
        "bar_wrap_m": 0.3,
        "curtain_lap_m": 0.3,
        "pocket_tail_m": 0.15,
        "seam_lap_m": 0.3,
        "end_wall_tail_m": 0.3,
        "measuring_tolerance_m": 0.02,
    }
    one = tunnel(roof_layers=2)
    boards = SideBoards(hip_height_m=1.4 * scale, baseboard_height_m=0.3 * scale)
    frame = one.frame.but(
        profile=RoundBow(span_m=8.0 * scale, leg_height_m=1.2 * scale, peak_height_m=3.6 * scale),
        tube_diameter_m=0.05 * scale,
        bows=EvenBows(count=17, spacing_m=1.5 * scale),
        boards=(boards, boards),
    )
    first = plain_side(
        splits=(Split(at_m=9.0 * scale, join="strip"),),
        shut_height_m=0.2 * scale,
        slack_m=0.05 * scale,
    )
    skin = one.skin.but(
        sides=layers(2),
        allowances=Allowances(**{name: size_m * scale for name, size_m in lengths.items()}),
        cross_seams_m=(10.0 * scale,),
        inflation_gap_m=0.15 * scale,
    )
    return lay_skin(
        "roof_and_sides",
        survey_frame(frame),
        skin,
        (first, first),
        one.ends,
        small_catalogue().films,
        (True, True),
    )
