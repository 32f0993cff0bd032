"""Where curtains hang and where film is fixed."""

from itertools import pairwise

import pytest

from hoopwright.cover import Cover
from hoopwright.farm import ListedBows, Side, Split, Tunnel
from laying import laid, of_role
from samples import drop_side, side, tunnel, woven_side

LAP_M = 0.3048


def _with(first: Side) -> Tunnel:
    return tunnel(sides=(first, side("East side")))


def _openings(cover: Cover) -> list[tuple[float, float]]:
    return [(c.open_from_m, c.open_to_m) for c in cover.curtains if c.side == 0]


def _films(cover: Cover) -> list[tuple[float, float]]:
    return [(c.from_m, c.to_m) for c in cover.curtains if c.side == 0]


def _fixed(cover: Cover) -> dict[str, tuple[float, float]]:
    return {f.mark: (f.from_m, f.to_m) for f in cover.fixed if f.side == 0}


def test_one_curtain_hangs_between_the_pockets_and_laps_them() -> None:
    cover = laid(_with(side(pocket_bays=(1, 2))))
    assert _openings(cover) == [(1.5, 21.0)]
    assert _films(cover) == [pytest.approx((1.5 - LAP_M, 21.0 + LAP_M))]
    assert _fixed(cover) == {"side/0/pocket/front": (0.0, 1.5), "side/0/pocket/back": (21.0, 24.0)}
    (curtain, _) = cover.curtains
    assert (curtain.mark, curtain.layers) == ("side/0/panel/0", 1)
    assert curtain.length_m == pytest.approx(19.5 + 2 * LAP_M)


def test_no_pocket_bays_leave_no_fixed_film() -> None:
    cover = laid(_with(side(pocket_bays=(0, 0))))
    assert _openings(cover) == [(0.0, 24.0)]
    assert _fixed(cover) == {}


def test_lapped_curtains_overlap_by_both_laps() -> None:
    cover = laid(_with(side(splits=(Split(at_m=9.0), Split(at_m=15.0)))))
    assert _openings(cover) == [(1.5, 9.0), (9.0, 15.0), (15.0, 22.5)]
    films = _films(cover)
    for before, after in pairwise(films):
        assert before[1] - after[0] == pytest.approx(2 * LAP_M)


def test_strip_takes_the_bay_after_the_split() -> None:
    cover = laid(_with(side(splits=(Split(at_m=9.0, join="strip"),))))
    assert _openings(cover) == [(1.5, 9.0), (10.5, 22.5)]
    assert _fixed(cover)["side/0/strip/0"] == (9.0, 10.5)
    (strip,) = of_role(cover, "split strip")
    # Bay of 1.5 m and 0.1524 m past the bow at each end.
    assert strip.length_m == pytest.approx(1.5 + 2 * 0.1524)


def test_strip_of_a_split_off_a_bow_reaches_the_next_bow() -> None:
    cover = laid(_with(side(splits=(Split(at_m=9.7, join="strip"),))))
    assert _fixed(cover)["side/0/strip/0"] == (9.7, 10.5)
    assert _openings(cover) == [(1.5, 9.7), (10.5, 22.5)]


def test_strip_in_the_last_bay_leaves_a_curtain_without_opening() -> None:
    cover = laid(_with(side(splits=(Split(at_m=21.0, join="strip"),))))
    assert _openings(cover) == [(1.5, 21.0), (22.5, 22.5)]
    assert all(c.length_m > 0 for c in cover.curtains)


def test_strip_that_passes_the_following_split_leaves_no_opening_between() -> None:
    splits = (Split(at_m=9.2, join="strip"), Split(at_m=9.9))
    cover = laid(_with(side(splits=splits)))
    assert _openings(cover) == [(1.5, 9.2), (9.9, 9.9), (9.9, 22.5)]


def test_uneven_bows_are_followed() -> None:
    plain = _with(side(splits=(Split(at_m=3.0, join="strip"),)))
    bows = ListedBows(positions_m=(0.0, 1.1, 3.0, 4.9, 7.0, 8.2))
    cover = laid(plain.but(frame=plain.frame.but(bows=bows, length_m=8.2)))
    assert _openings(cover) == [(1.1, 3.0), (4.9, 7.0)]
    assert _fixed(cover)["side/0/pocket/back"] == (7.0, 8.2)


def test_every_split_of_one_sheet_gets_a_strip_behind_its_slit() -> None:
    cover = laid(_with(side(splits=(Split(at_m=9.0), Split(at_m=15.0, join="strip")))), "one_sheet")
    assert _openings(cover) == [(1.5, 9.0), (10.5, 15.0), (16.5, 22.5)]
    # The tail is slit at the pockets and at the splits: no film is left to lap.
    assert _films(cover) == [(1.5, 9.0), (9.0, 15.0), (15.0, 22.5)]
    strips = of_role(cover, "split strip")
    assert [s.mark for s in strips] == [
        "piece/split-strip/single/0/0",
        "piece/split-strip/single/0/1",
    ]
    assert of_role(cover, "pocket") == []
    assert "side/0/pocket/front" in _fixed(cover)


@pytest.mark.parametrize("covering", ["one_sheet", "roof_and_sides"])
def test_fixed_side_hangs_no_curtain(covering: str) -> None:
    fixed = side(kind="fixed", splits=(Split(at_m=9.0),))
    cover = laid(_with(fixed), "one_sheet" if covering == "one_sheet" else "roof_and_sides")
    assert _openings(cover) == []
    assert _fixed(cover) == {"side/0/fixed": (0.0, 24.0)}
    assert not [p for p in cover.pieces if p.role in ("pocket", "split strip") and "/0/" in p.mark]


def test_curtains_of_one_sheet_are_of_the_roof_film() -> None:
    plain = _with(side())
    skin = plain.skin.but(roof=plain.skin.roof.but(count=2))
    doubled = plain.but(skin=skin)
    (whole, _), (apart, _) = laid(doubled, "one_sheet").curtains, laid(doubled).curtains
    assert (whole.layers, apart.layers) == (2, 1)
    # 0.2 mm and 0.15 mm of film at 920 kg/m3.
    assert whole.thickness_m == pytest.approx(0.00035)
    assert whole.film_mass_kg_m2 == pytest.approx(0.322)
    assert apart.film_mass_kg_m2 == pytest.approx(0.184)


@pytest.mark.parametrize("one_side", [woven_side, drop_side])
def test_splits_of_a_side_with_its_own_curtains_lap_in_one_sheet_too(one_side: object) -> None:
    splits = (Split(at_m=9.0), Split(at_m=15.0, join="strip"))
    cover = laid(_with(one_side("West side", splits)), "one_sheet")  # type: ignore[operator]
    assert _openings(cover) == [(1.5, 9.0), (9.0, 15.0), (16.5, 22.5)]
    assert _films(cover) == [
        pytest.approx(s)
        for s in ((1.5 - LAP_M, 9.0 + LAP_M), (9.0 - LAP_M, 15.0 + LAP_M), (16.5 - LAP_M, 22.8048))
    ]
    assert list(_fixed(cover)) == ["side/0/pocket/front", "side/0/strip/1", "side/0/pocket/back"]


def test_film_of_its_own_is_what_winds_on_the_bar() -> None:
    plain = _with(side(film="inside"))
    double = plain.but(skin=plain.skin.but(sides=plain.skin.sides.but(count=2)))
    curtain, other = laid(double).curtains
    # 0.15 mm at 920 kg/m3; the other side has both layers, 0.35 mm.
    assert (curtain.layers, other.layers) == (1, 2)
    assert curtain.thickness_m == pytest.approx(0.00015)
    assert curtain.film_mass_kg_m2 == pytest.approx(0.138)
    assert other.film_mass_kg_m2 == pytest.approx(0.322)
