"""Proposed splits against every way there is."""

import itertools
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.curtain.splitting import (
    Opening,
    even_splits,
    every_split,
    side_opening,
    with_splits,
)
from hoopwright.farm import ListedBows, Split
from hoopwright.farm.side import Join, SideKind
from hoopwright.farm.skin import Covering
from laying import laid
from samples import side, tunnel

LEAST_OPEN_M = 0.5


def _bars(opening: Opening, splits: tuple[float, ...]) -> list[float]:
    """Work out the bars of a way to split, without the search."""
    places = opening.places_m
    edges = [places[0], *splits, places[-1]]
    bars = []
    for n, (from_m, to_m) in enumerate(itertools.pairwise(edges)):
        open_m = from_m
        if n and opening.has_strips:
            open_m = min(x for x in places if x > from_m)
        if to_m - open_m < LEAST_OPEN_M:
            return [math.inf]
        start_m = from_m if opening.slit else open_m
        bars.append(to_m - start_m + 2 * opening.lap_m)
    return bars


def _allowed(opening: Opening, longest_m: float) -> list[tuple[float, ...]]:
    """Return every way to split with the fewest curtains, found by trying all."""
    inner = opening.places_m[1:-1]
    for count in range(len(inner) + 1):
        found = [
            splits
            for splits in itertools.combinations(inner, count)
            if max(_bars(opening, splits)) <= longest_m + 1e-6
            and (opening.kept_m is None or opening.kept_m in splits)
        ]
        if found:
            return found
    return []


def _evenness(opening: Opening, splits: tuple[float, ...]) -> tuple[float, float]:
    bars = _bars(opening, splits)
    return max(bars), sum(bar**2 for bar in bars)


@st.composite
def openings(draw: st.DrawFn) -> Opening:
    steps = draw(st.lists(st.floats(0.3, 4.0), min_size=1, max_size=9))
    places = tuple(itertools.accumulate([1.5, *steps]))
    strips = draw(st.booleans())
    kept = draw(st.sampled_from([None, *places[1:-1]]))
    return Opening(places, draw(st.floats(0, 0.6)), strips, strips and draw(st.booleans()), kept)


@given(openings(), st.floats(1.0, 20.0))
def test_proposed_splits_are_the_best_of_all(opening: Opening, longest_m: float) -> None:
    ways = _allowed(opening, longest_m)
    splits = even_splits(opening, longest_m)
    if not ways:
        assert splits is None
        assert list(every_split(opening, longest_m)) == []
        return
    assert splits is not None
    assert len(splits) == len(ways[0])
    best = min(_evenness(opening, way) for way in ways)
    longest, squares = _evenness(opening, splits)
    assert longest == pytest.approx(best[0], abs=1e-4)
    assert squares <= best[1] + 1e-3
    assert sorted(every_split(opening, longest_m)) == sorted(ways)


@pytest.mark.parametrize(
    ("longest_m", "splits"),
    [
        # Worked by hand: 12 bays of 2 m and a lap of 0.25 m at each end. 24.5 m is one bar; 12.5 m
        # two; 8.5 m three; less than 2.5 m cannot be.
        (24.5, ()),
        (24.4, (12.0,)),
        (12.5, (12.0,)),
        (12.4, (8.0, 16.0)),
        (8.4, (6.0, 12.0, 18.0)),
        (2.5, tuple(2.0 * n for n in range(1, 12))),
        (2.4, None),
    ],
)
def test_even_bays_are_split_evenly(longest_m: float, splits: tuple[float, ...] | None) -> None:
    opening = Opening(tuple(2.0 * n for n in range(13)), 0.25)
    assert even_splits(opening, longest_m) == splits


def test_kept_bow_stays_and_the_rest_is_even() -> None:
    opening = Opening(tuple(2.0 * n for n in range(13)), 0.0, kept_m=4.0)
    assert even_splits(opening, 30.0) == (4.0,)
    assert even_splits(opening, 10.0) == (4.0, 14.0)


def test_opening_lies_between_the_pockets() -> None:
    made = tunnel(sides=(side("West", pocket_bays=(2, 1)), side("East")))
    opening = side_opening(made, 0)
    assert (opening.places_m[0], opening.places_m[-1]) == (3.0, 22.5)
    assert opening.lap_m == made.skin.allowances.curtain_lap_m
    assert not opening.has_strips


def test_slit_sheet_has_strips_and_no_lap() -> None:
    made = tunnel()
    one = made.but(skin=made.skin.but(covering="one_sheet"))
    opening = side_opening(one, 0)
    assert (opening.lap_m, opening.has_strips, opening.slit) == (0.0, True, True)
    apart = one.but(sides=(one.sides[0].but(kind="woven"), one.sides[1]))
    assert not side_opening(apart, 0).slit
    assert side_opening(apart, 0).lap_m > 0


def test_wanted_place_is_taken_to_the_nearest_bow_inside() -> None:
    assert side_opening(tunnel(), 0, 7.0).kept_m == 7.5
    assert side_opening(tunnel(), 0, 0.0).kept_m == 3.0


def test_no_bow_to_keep_is_told() -> None:
    made = tunnel(sides=(side("West", pocket_bays=(0, 0)), side("East", pocket_bays=(0, 0))))
    bare = made.but(
        frame=made.frame.but(bows=ListedBows(positions_m=(0.0, 6.0)), length_m=6.0),
    )
    with pytest.raises(ValueError, match="no bow stands inside"):
        side_opening(bare, 0, 3.0)


def test_two_curtains_are_cranked_from_the_outer_ends() -> None:
    changed = with_splits(tunnel(), 0, (12.0,)).sides[0]
    assert [s.at_m for s in changed.splits] == [12.0]
    assert [p.crank_end for p in changed.panels] == ["front", "back"]


def test_inner_curtains_are_cranked_at_the_front() -> None:
    changed = with_splits(tunnel(), 1, (6.0, 12.0, 18.0)).sides[1]
    assert [p.crank_end for p in changed.panels] == ["front", "front", "front", "back"]


def test_single_curtain_keeps_its_crank() -> None:
    plain = side("West")
    middle = plain.but(panels=(plain.panels[0].but(crank_end="middle"),))
    made = tunnel(sides=(middle, side("East")))
    assert with_splits(made, 0, ()) == made


def test_curtains_take_what_hung_at_their_middle_and_splits_are_made_alike() -> None:
    split = side("West", (Split(at_m=12.0, join="strip"),))
    into = split.panels[0].but(winding="into")
    made = tunnel(sides=(split.but(panels=(into, split.panels[1])), side("East")))
    three = with_splits(made, 0, (6.0, 15.0)).sides[0]
    assert [p.winding for p in three.panels] == ["into", "into", "out"]
    assert [s.join for s in three.splits] == ["strip", "strip"]


KINDS: tuple[SideKind, ...] = ("roll_up", "woven", "drop_down")


@pytest.mark.parametrize("covering", ["one_sheet", "roof_and_sides"])
@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("join", ["lap", "strip"])
def test_bars_are_as_long_as_the_skin_lays_them(
    covering: Covering, kind: SideKind, join: Join
) -> None:
    plain = side("West", (Split(at_m=9.0, join=join),), kind=kind)
    made = tunnel(sides=(plain, side("East")))
    made = made.but(skin=made.skin.but(covering=covering))
    made = with_splits(made, 0, (6.0, 12.0, 16.5))
    opening = side_opening(made, 0)
    marks = [opening.places_m.index(x) for x in (1.5, 6.0, 12.0, 16.5, 22.5)]
    spans = [s for s in laid(made, covering).curtains if s.side == 0]
    bars_m = [opening.bar_m(first, last) for first, last in itertools.pairwise(marks)]
    assert bars_m == pytest.approx([span.length_m for span in spans])
