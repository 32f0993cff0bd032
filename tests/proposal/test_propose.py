"""Splits proposed for a side: within every limit, with the fewest curtains, best for the aim."""

import itertools
from dataclasses import fields
from decimal import Decimal

import pytest

from hoopwright.curtain.splitting import with_splits
from hoopwright.farm import EvenBows, Farm, Split, Tunnel
from hoopwright.plan import plan
from hoopwright.proposal import Aim, Proposal, propose_splits
from hoopwright.quantity.working import explain, words
from samples import INSIDE, side, small_farm, tunnel


def farm_of(made: Tunnel | None = None, **limits: float) -> Farm:
    farm = small_farm(made or tunnel())
    lax = {"hand_force_n": 500.0, "trailing_m": 2.0}
    return farm.but(limits=farm.limits.but(**{**lax, **limits}))


def spots(farm: Farm, aim: Aim = "even", keep_m: float | None = None) -> tuple[float, ...]:
    return propose_splits(farm, 0, 0, aim, keep_m).spots_m


def hardest(farm: Farm, spots_m: tuple[float, ...]) -> float:
    made = with_splits(farm.tunnels[0], 0, spots_m)
    works = plan(farm.but(tunnels=(made,))).tunnels[0].chosen.curtains
    return max(work.hardest_n for work in works if work.side == 0)


def limited(longest_m: float) -> Farm:
    """Return a farm whose maker allows the crank no longer bars."""
    farm = farm_of()
    drive = farm.catalogue.drives[0].but(max_length_m=longest_m)
    return farm.but(catalogue=farm.catalogue.but(drives=(drive,)))


def test_curtain_within_its_limits_is_left_in_one() -> None:
    proposal = propose_splits(farm_of(), 0, 0, "even")
    assert proposal.spots_m == ()
    assert proposal.tunnel == farm_of().tunnels[0]
    assert proposal.cost_more == 0


@pytest.mark.parametrize("limit_n", [16.0, 18.0, 30.0])
def test_fewest_curtains_and_least_hand_force_of_every_way_there_is(limit_n: float) -> None:
    # Tried out through the plan: no way with fewer curtains keeps the limit, and none with as many
    # has an easier hardest crank.
    farm = farm_of(hand_force_n=limit_n)
    found = spots(farm)
    inner = [1.5 * n for n in range(2, 15)]
    assert hardest(farm, found) <= limit_n
    assert set(found) <= set(inner)
    if found:
        fewer = itertools.combinations(inner, len(found) - 1)
        assert min(hardest(farm, way) for way in fewer) > limit_n
    if len(found) < 3:
        alike = itertools.combinations(inner, len(found))
        least = min(hardest(farm, way) for way in alike)
        assert hardest(farm, found) == pytest.approx(least)


def test_trailing_limit_is_kept_as_well() -> None:
    loose, tight = farm_of(trailing_m=2.0), farm_of(trailing_m=0.014)
    proposal = propose_splits(tight, 0, 0, "even")
    assert len(proposal.spots_m) > len(spots(loose))
    assert proposal.trailing_m <= 0.014
    assert proposal.bound_by == "trailing"


def test_maker_of_the_drive_is_heard() -> None:
    # 21 m between the pockets in 14 bays: three curtains of five, five and four bays.
    proposal = propose_splits(limited(9.0), 0, 0, "even")
    lap_m = tunnel().skin.allowances.curtain_lap_m
    assert proposal.bound_by == "maker of the drive"
    assert max(w.length_m for w in proposal.curtains) == pytest.approx(7.5 + 2 * lap_m)
    assert len(proposal.curtains) == 3


def test_cranks_stand_at_the_outer_ends() -> None:
    assert [w.cranked for w in propose_splits(limited(12.0), 0, 0, "even").curtains] == [
        "front",
        "back",
    ]
    assert [w.cranked for w in propose_splits(limited(9.0), 0, 0, "even").curtains] == [
        "front",
        "front",
        "back",
    ]


def test_other_side_is_left_alone() -> None:
    farm = limited(9.0)
    proposal = propose_splits(farm, 0, 1, "even")
    assert proposal.tunnel.sides[0] == farm.tunnels[0].sides[0]
    assert len(proposal.tunnel.sides[1].splits) == 2
    assert {w.side for w in proposal.curtains} == {1}


def test_kept_bow_is_among_the_splits() -> None:
    # Of the 16.5 m behind it, two even curtains have five and six bays.
    assert spots(limited(12.0), "keep bow", 6.1) in ((6.0, 13.5), (6.0, 15.0))
    assert spots(farm_of(), "keep bow", 9.0) == (9.0,)


def test_cheapest_film_is_found_among_the_ways_with_as_many_curtains() -> None:
    # Made so that two even curtains need two rolls of 40, and a long and a short one rolls of 45
    # and 15.
    plain = tunnel(sides=(side("West", film=INSIDE), side("East", kind="fixed")))
    farm = limited(15.0).but(tunnels=(plain,))
    outer, inner = farm.catalogue.films
    rolls = tuple(
        inner.rolls[0].but(width_m=2.5, length_m=length_m, price=Decimal(price))
        for length_m, price in ((8.9, 15), (12.0, 40), (15.0, 45))
    )
    films = (outer, inner.but(rolls=rolls))
    farm = farm.but(catalogue=farm.catalogue.but(films=films))

    def price(way: tuple[float, ...]) -> Decimal:
        made = with_splits(farm.tunnels[0], 0, way)
        order = plan(farm.but(tunnels=(made,))).tunnels[0].chosen.order
        assert not order.unplaced
        return sum((roll.price for roll in order.rolls), Decimal(0))

    found = propose_splits(farm, 0, 0, "least film")
    ways = [(1.5 * n,) for n in range(6, 11)]
    assert found.spots_m in ((9.0,), (15.0,))
    assert price(found.spots_m) == min(map(price, ways))
    assert price(found.spots_m) == price((12.0,)) - 20
    assert spots(farm) == (12.0,)


def test_cost_is_told_against_now() -> None:
    farm = limited(12.0)
    proposal = propose_splits(farm, 0, 0, "even")
    before = plan(farm).tunnels[0].chosen.cost.to_pay
    after = plan(farm.but(tunnels=(proposal.tunnel,))).tunnels[0].chosen
    assert proposal.cost_more == after.cost.to_pay - before
    assert proposal.film_m2 == after.order.film_bought_m2


def test_slit_sheet_gets_no_split_without_a_bay_behind_it() -> None:
    made = tunnel()
    one = made.but(skin=made.skin.but(covering="one_sheet"))
    farm = limited(6.0).but(tunnels=(one,))
    proposal = propose_splits(farm, 0, 0, "even")
    assert max(w.length_m for w in proposal.curtains) <= 6.0
    codes = {f.code for f in plan(farm.but(tunnels=(proposal.tunnel,))).findings}
    assert not codes & {"split.strip_without_bay", "curtain.no_opening", "split.off_bow"}


def test_crank_in_the_middle_counts_for_a_single_curtain_alone() -> None:
    plain = side("West")
    middle = plain.but(panels=(plain.panels[0].but(crank_end="middle"),))
    made = tunnel(sides=(middle, side("East")))
    farm = farm_of(made, trailing_m=0.03)
    single = plan(farm).tunnels[0].chosen.curtains[0]
    proposal = propose_splits(farm, 0, 0, "even")
    assert (single.length_m <= single.longest_m) == (proposal.spots_m == ())
    assert max(w.trailing_m for w in proposal.curtains) <= 0.03


@pytest.mark.parametrize(
    ("farm", "words_of"),
    [
        (farm_of(hand_force_n=5.0), "hand force"),
        (farm_of(trailing_m=0.001), "trailing"),
        (limited(1.0), "the maker of the drive"),
    ],
)
def test_limit_that_nothing_keeps_is_named(farm: Farm, words_of: str) -> None:
    heavy = farm.catalogue.bars[0].but(grip_mass_kg_m=9.0)
    farm = farm.but(catalogue=farm.catalogue.but(bars=(heavy,)))
    with pytest.raises(ValueError, match=words_of) as caught:
        propose_splits(farm, 0, 0, "even")
    assert str(caught.value).startswith("West side: even with a split on every bow")
    assert "To mend it, take" in str(caught.value)


def test_kept_bow_that_leaves_too_long_a_bar_is_named() -> None:
    uneven = tunnel().but(frame=tunnel().frame.but(bows=EvenBows(count=4, spacing_m=8.0)))
    farm = limited(8.3).but(tunnels=(uneven.but(sides=(side("West", pocket_bays=(0, 0)),) * 2),))
    with pytest.raises(ValueError, match="with a split kept at"):
        propose_splits(farm, 0, 0, "keep bow", 8.0)


def test_fixed_side_and_missing_bow_are_refused() -> None:
    fixed = tunnel(sides=(side("West", kind="fixed"), side("East")))
    with pytest.raises(ValueError, match="fixed film"):
        propose_splits(small_farm(fixed), 0, 0, "even")
    with pytest.raises(ValueError, match="bow"):
        propose_splits(small_farm(), 0, 0, "keep bow")


def _told(proposal: Proposal) -> list[str]:
    return [words(proposal.told, "metric"), words(proposal.told, "imperial")]


def test_proposal_is_told_in_one_sentence() -> None:
    for said in _told(propose_splits(limited(12.0), 0, 0, "even")):
        assert said.startswith("West side: 2 curtains, split at ")
        assert "hardest crank" in said
        assert said.endswith("than now.")
        assert "{" not in said
    (metric, _) = _told(propose_splits(farm_of(), 0, 0, "even"))
    assert "one curtain without a split" in metric
    assert metric.endswith("the same cost as now.")


def test_fewer_curtains_cost_less_than_now() -> None:
    cut = tunnel(sides=(side("West", (Split(at_m=6.0), Split(at_m=12.0))), side("East")))
    proposal = propose_splits(farm_of(cut), 0, 0, "even")
    assert proposal.cost_more < 0
    assert _told(proposal)[0].endswith("less than now.")


def test_every_figure_says_how_it_was_got() -> None:
    proposal = propose_splits(limited(12.0), 0, 0, "even")
    figures = {
        f.name for f in fields(proposal) if isinstance(getattr(proposal, f.name), float | Decimal)
    }
    assert figures | {"spots_m"} == {w.figure for w in proposal.workings}
    for working in proposal.workings:
        assert working.inputs
        assert explain(working, "imperial")
