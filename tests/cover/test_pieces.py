"""The skin as a whole: the worked example, names and marks, layers, seams, ends, workings."""

from dataclasses import fields

import pytest

from hoopwright.cover import Cover, CurtainSpan, Piece
from hoopwright.farm import Allowances, EvenBows, RoundBow, SideBoards, Tunnel
from hoopwright.farm.skin import Covering
from hoopwright.quantity.working import explain
from laying import laid, of_role
from samples import (
    double_tunnel,
    drop_side,
    gothic_tunnel,
    layers,
    rafter_tunnel,
    side,
    tunnel,
    woven_side,
)

FOOT_M = 0.3048
BOTH: tuple[Covering, Covering] = ("one_sheet", "roof_and_sides")
TUNNELS = {
    "round": tunnel(),
    "gothic": gothic_tunnel(),
    "rafters": rafter_tunnel(),
    "double": double_tunnel(),
    "fixed": tunnel(sides=(side(kind="fixed"), side("East side"))),
    "woven": tunnel(sides=(woven_side(), side("East side"))),
    "drop_down": tunnel(sides=(side(film="inside"), drop_side("East side")), roof_layers=2),
}
each_tunnel = pytest.mark.parametrize("one", TUNNELS.values(), ids=TUNNELS)


def _worked_tunnel() -> Tunnel:
    """Return a house of 26 x 84 ft: legs 5 ft, rise 7 ft, bows at 4 ft, hip at the shoulder."""
    boards = SideBoards(hip_height_m=5 * FOOT_M, baseboard_height_m=1 * FOOT_M)
    west = side("West side", shut_height_m=0.0, slack_m=0.0)
    plain = tunnel(sides=(west, west.but(name="East side")))
    frame = plain.frame.but(
        profile=RoundBow(span_m=26 * FOOT_M, leg_height_m=5 * FOOT_M, peak_height_m=12 * FOOT_M),
        tube_diameter_m=0.0,
        length_m=84 * FOOT_M,
        bows=EvenBows(count=22, spacing_m=4 * FOOT_M),
        boards=(boards, boards),
    )
    allowances = Allowances(
        hip_tail_m=0.75 * FOOT_M,
        curtain_top_tail_m=0.5 * FOOT_M,
        end_tail_m=2 * FOOT_M,
        bar_wrap_m=1 * FOOT_M,
        curtain_lap_m=0.5 * FOOT_M,
        pocket_tail_m=0.5 * FOOT_M,
    )
    return plain.but(frame=frame, skin=plain.skin.but(allowances=allowances))


def _feet(piece: Piece) -> tuple[float, float]:
    return piece.width_m / FOOT_M, piece.length_m / FOOT_M


def test_roof_and_sides_apart_as_worked_by_hand() -> None:
    # Hip to hip: R = (13^2 + 7^2)/14 = 15.571, 4 R atan(7/13) = 30.77; with 2 x 0.75 ft = 32.27.
    # Length 84 + 2 x 2 = 88. Opening bow 2 to bow 21 = 19 x 4 = 76, with 2 x 0.5 lap = 77 by
    # 5 + 1 wrap + 0.5 tail = 6.5. Pocket 4 + 2 x 0.5 = 5 by the curtain's 6.5 ft.
    cover = laid(_worked_tunnel())
    (roof,) = of_role(cover, "roof sheet")
    assert _feet(roof) == pytest.approx((32.27, 88.0), abs=0.005)
    assert [_feet(p) for p in of_role(cover, "curtain")] == [pytest.approx((6.5, 77.0))] * 2
    assert [_feet(p) for p in of_role(cover, "pocket")] == [pytest.approx((6.5, 5.0))] * 4
    assert cover.sheet_width_m == roof.width_m
    assert cover.side_height_m == pytest.approx((6.5 * FOOT_M, 6.5 * FOOT_M))


def test_one_sheet_as_worked_by_hand() -> None:
    # 30.77 over the bow and on each side 5 to the ground and 1 round the bar: 42.77 ft.
    cover = laid(_worked_tunnel(), "one_sheet")
    (sheet,) = of_role(cover, "whole sheet")
    assert _feet(sheet) == pytest.approx((42.77, 88.0), abs=0.005)
    assert {p.role for p in cover.pieces} == {"whole sheet", "end wall"}
    assert cover.side_height_m == (0.0, 0.0)
    assert [c.cut_height_m / FOOT_M for c in cover.curtains] == pytest.approx([6.0, 6.0])


def test_end_walls_bound_the_end_as_worked_by_hand() -> None:
    # 26 and 12 ft, with 1 ft on every edge: 28 x 14 ft.
    walls = of_role(laid(_worked_tunnel()), "end wall")
    assert [_feet(wall) for wall in walls] == [pytest.approx((28.0, 14.0))] * 2
    assert [area.surface for wall in walls for area in wall.areas] == ["end0", "end1"]


def test_end_wall_of_a_bulging_bow_covers_its_widest_place() -> None:
    # Worked by hand: span 4, rise 2.6 m, R = (4 + 6.76)/5.2 = 2.0692, widest 4.1385 m; the tube
    # adds 0.048 and the tails 2 x 0.3048: 4.7961 m.
    plain = tunnel()
    bulging = RoundBow(span_m=4.0, leg_height_m=0.8, peak_height_m=3.4)
    wide = plain.but(frame=plain.frame.but(profile=bulging))
    assert of_role(laid(wide), "end wall")[0].width_m == pytest.approx(4.7961, abs=1e-4)


def test_end_without_film_gets_none() -> None:
    plain = tunnel()
    bare = plain.but(ends=(plain.ends[0].but(film=None), plain.ends[1].but(film=layers(2))))
    walls = of_role(laid(bare), "end wall")
    assert [w.name for w in walls] == ["End wall Back end, outer", "End wall Back end, inner"]


def test_sheets_are_named_for_people_and_marked_once() -> None:
    plain = double_tunnel()
    seamed = plain.but(skin=plain.skin.but(cross_seams_m=(7.5, 15.0)))
    cover = laid(seamed)
    names = [p.name for p in cover.pieces]
    for name in (
        "Roof sheet 2 of 3, inner",
        "Curtain 1, West side, outer",
        "Pocket front, West side",
        "Split strip 1, East side",
        "End wall Front end",
    ):
        assert name in names
    marks = [p.mark for p in cover.pieces]
    assert len(set(marks)) == len(marks)
    assert {"piece/roof-sheet/inner/-/1", "piece/split-strip/single/1/0"} <= set(marks)
    assert "Whole sheet 3 of 3, outer" in [p.name for p in laid(seamed, "one_sheet").pieces]


@pytest.mark.parametrize("covering", BOTH)
def test_sheets_lap_at_cross_seams(covering: Covering) -> None:
    # Worked by hand with a lap of 0.3 and tails of 0.6: seams at 9 and 15 of 24 m give sheets of
    # 9 + 0.6 + 0.15, 6 + 0.15 + 0.15 and 9 + 0.15 + 0.6.
    plain = tunnel()
    allowances = Allowances(seam_lap_m=0.3, end_tail_m=0.6)
    skin = plain.skin.but(cross_seams_m=(9.0, 15.0), allowances=allowances)
    sheets = [
        p for p in laid(plain.but(skin=skin), covering).pieces if p.areas[0].surface == "roof"
    ]
    assert [p.length_m for p in sheets] == pytest.approx([9.75, 6.3, 9.75])
    spans = [(p.areas[0].from_m, p.areas[0].to_m) for p in sheets]
    assert spans == [pytest.approx(s) for s in ((0.0, 9.15), (8.85, 15.15), (14.85, 24.0))]


def test_two_layers_are_two_films_and_the_outer_one_is_wider() -> None:
    outer, inner = of_role(laid(double_tunnel()), "roof sheet")
    assert (outer.layer, outer.film, inner.layer, inner.film) == (
        "outer",
        "clear",
        "inner",
        "inside",
    )
    # Worked by hand, hips at the shoulder: the outside of the tube is 0.024 m beyond the centre
    # line, so the chord is 8.048 m, the rise 3.724 - 1.5 = 2.224 m and the gap 0.15 m.
    # R = 4.75242: arc 9.59801; with the gap R = 4.59740: arc 9.80174; 0.2037 m wider.
    assert outer.width_m - inner.width_m == pytest.approx(0.20373, abs=1e-5)


def test_flat_curtains_of_two_layers_are_equal() -> None:
    flat = double_tunnel()
    flat = flat.but(air=flat.air.but(inflated_sides=(False, False)))
    assert len({p.width_m for p in of_role(laid(flat), "curtain")}) == 1


def test_tape_tolerance_is_added_once_to_each_size() -> None:
    plain = tunnel()
    allowances = plain.skin.allowances.but(measuring_tolerance_m=0.04)
    careful = plain.but(skin=plain.skin.but(allowances=allowances))
    for covering in BOTH:
        pairs = zip(laid(plain, covering).pieces, laid(careful, covering).pieces, strict=True)
        for before, after in pairs:
            assert after.width_m - before.width_m == pytest.approx(0.04)
            assert after.length_m - before.length_m == pytest.approx(0.04)


def test_mass_is_volume_times_density() -> None:
    # Worked by hand: 0.2 mm at 920 kg/m3 weighs 0.184 kg/m2.
    cover = laid(tunnel())
    for piece in cover.pieces:
        assert piece.mass_kg == pytest.approx(0.184 * piece.width_m * piece.length_m)
    assert cover.film_mass_kg == pytest.approx(0.184 * cover.film_area_m2)


def test_published_weight_of_film_gives_the_weight_of_a_sheet() -> None:
    # A film converter's yield table gives 30,100 in2/lb at 1 mil for 0.92 g/cm3 (company not
    # named); at 6 mil and 48 x 100 ft that is 4800 x 144 x 6/30100 = 137.8 lb.
    plain = _worked_tunnel()
    film = laid(plain).pieces[0]
    density_kg_m2 = film.mass_kg / film.area_m2 / 0.0002 * 6 * 0.0000254
    assert density_kg_m2 * 4800 * FOOT_M**2 / 0.45359237 == pytest.approx(137.8, rel=0.001)


@each_tunnel
@pytest.mark.parametrize("covering", BOTH)
def test_totals_are_the_sum_of_the_sheets(one: Tunnel, covering: Covering) -> None:
    cover = laid(one, covering)
    assert cover.covering == covering
    assert cover.film_area_m2 == pytest.approx(sum(p.width_m * p.length_m for p in cover.pieces))
    assert cover.film_mass_kg == pytest.approx(sum(p.mass_kg for p in cover.pieces))


@each_tunnel
@pytest.mark.parametrize("covering", BOTH)
def test_sizes_are_the_sum_of_their_terms(one: Tunnel, covering: Covering) -> None:
    for piece in laid(one, covering).pieces:
        assert sum(float(t.value) for t in piece.width_terms) == piece.width_m
        assert sum(float(t.value) for t in piece.length_terms) == piece.length_m
        assert {t.unit for t in (*piece.width_terms, *piece.length_terms)} == {"m"}


@each_tunnel
@pytest.mark.parametrize("covering", BOTH)
def test_every_figure_says_how_it_was_got(one: Tunnel, covering: Covering) -> None:
    cover = laid(one, covering)
    for kind, results in (
        (Cover, (cover,)),
        (Piece, cover.pieces),
        (CurtainSpan, cover.curtains),
    ):
        figures = [f.name for f in fields(kind) if f.name.endswith(("_m", "_m2", "_kg"))]
        assert figures
        for result in results:
            for figure in figures:
                assert "Source:" in explain(result.working(figure), "imperial")


def test_film_that_is_not_listed_is_a_broken_promise() -> None:
    plain = tunnel()
    strange = plain.skin.roof.but(outer="nowhere")
    with pytest.raises(KeyError):
        laid(plain.but(skin=plain.skin.but(roof=strange)))


def test_one_sheet_leaves_each_side_its_own_curtains() -> None:
    # Woven on the first side: 1.25 + 0.05 + 0.1524 + 0.3048 high, 21 + 2 x 0.3048 long; the tail
    # of the sheet covers the second side alone.
    cover = laid(tunnel(sides=(woven_side(), side("East side"))), "one_sheet")
    (curtain,) = of_role(cover, "curtain")
    assert (curtain.mark, curtain.film) == ("piece/curtain/single/0/0", "inside")
    assert (curtain.width_m, curtain.length_m) == pytest.approx((1.7572, 21.6096))
    assert cover.side_height_m == (curtain.width_m, 0.0)
    assert "covers the sides" in cover.working("side_height_m").rule
    assert len(of_role(cover, "pocket")) == 2
    (sheet,) = of_role(cover, "whole sheet")
    assert [a.surface for a in sheet.areas] == ["roof", "side1"]
    assert [c.mark for c in cover.curtains] == ["side/0/panel/0", "side/1/panel/0"]
