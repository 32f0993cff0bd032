"""For every condition: what stays and what is bought are what is needed, and nothing is lost."""

from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from hoopwright.farm import PartState, Tunnel
from hoopwright.order import Order, place_order
from hoopwright.takeoff import Need, Sheets, keep_film, keep_parts, mend_film
from hoopwright.takeoff.site import Site
from samples import double_tunnel
from takeoff.counted import count, site, whole_catalogue

GROUPS = sorted({part.group for part in whole_catalogue().parts})
WHERE = ("everywhere", "roof", "first_side", "second_side", "front_end", "back_end")
BOWS = 17


@cache
def laid() -> tuple[Tunnel, Site, tuple[Need, ...]]:
    plain = double_tunnel()
    seamed = plain.but(skin=plain.skin.but(cross_seams_m=(9.0,)))
    return seamed, site(seamed), count(seamed)


@st.composite
def lines(draw: st.DrawFn) -> PartState:
    first = draw(st.none() | st.integers(1, BOWS - 1))
    last = draw(st.none() | st.integers((first or 1) + 1, BOWS))
    return PartState(
        family=draw(st.sampled_from(["Film", *GROUPS])),
        where=draw(st.sampled_from(WHERE)),
        from_bow=first,
        to_bow=last,
        state=draw(st.sampled_from(["keep", "repair", "replace"])),
        replace_share=draw(st.floats(0.0, 1.0)),
    )


CONDITIONS = st.lists(lines(), max_size=8).map(tuple)


def stay(condition: tuple[PartState, ...]) -> tuple[tuple[Need, ...], Sheets, Order]:
    _, found, counted = laid()
    sheets = keep_film(found.cover, condition, found.survey, found.skin.allowances)
    needs = keep_parts(
        (*counted, *mend_film(sheets)), condition, found.survey, found.cover, found.catalogue
    )
    order = place_order(
        (("T", needs),), (("T", sheets.ordered),), found.catalogue, (("T", sheets.kept),)
    )
    return needs, sheets, order


@given(CONDITIONS)
@settings(max_examples=80, deadline=None)
def test_kept_and_bought_are_what_is_needed(condition: tuple[PartState, ...]) -> None:
    _, found, counted = laid()
    needs, sheets, order = stay(condition)
    parts = {part.key: part for part in found.catalogue.parts}
    for before, after in zip(counted, needs, strict=False):
        assert (before.part, before.quantity) == (after.part, after.quantity)
        assert after.kept >= 0.0
        assert after.bought >= 0.0
        assert after.kept + after.bought == pytest.approx(after.quantity)
        if parts[after.part].counted_in == "count":
            assert after.bought == int(after.bought)
        assert (after.kept > 0) == (after.state != "replace") == (after.kept_working is not None)
    marks = [p.mark for p in sheets.ordered] + [k.piece.mark for k in sheets.kept]
    assert sorted(marks) == sorted(p.mark for p in found.cover.pieces)
    bought = {line.key: line.needed - line.kept for line in order.lines}
    for key in {need.part for need in needs}:
        whole = sum(need.bought for need in needs if need.part == key)
        assert bought.get(key, 0.0) == pytest.approx(whole)


@given(CONDITIONS)
@settings(max_examples=40, deadline=None)
def test_keeping_never_costs_more_goods_beyond_the_tape_for_repairs(
    condition: tuple[PartState, ...],
) -> None:
    no_tape = tuple(line for line in condition if line.family != "Film")
    _, _, order = stay(no_tape)
    _, _, plain = stay(())
    assert order.goods <= plain.goods
    # Parts alone: what is saved is exactly what is not bought.
    assert order.goods + order.saved == plain.goods


@given(CONDITIONS)
@settings(max_examples=40, deadline=None)
def test_lines_that_replace_all_in_the_end_are_like_no_line(
    condition: tuple[PartState, ...],
) -> None:
    last = tuple(PartState(family=family, state="replace") for family in ("Film", *GROUPS))
    assert stay((*condition, *last)) == stay(())


def test_without_a_line_all_is_as_counted() -> None:
    _, found, counted = laid()
    needs, sheets, order = stay(())
    assert needs == counted
    assert sheets == Sheets(ordered=found.cover.pieces)
    assert order == place_order((("T", counted),), (("T", found.cover.pieces),), found.catalogue)
    assert order.reused == ()


@given(CONDITIONS, st.sampled_from(GROUPS))
@settings(max_examples=40, deadline=None)
def test_a_line_of_one_family_leaves_the_others_as_they_were(
    condition: tuple[PartState, ...], family: str
) -> None:
    _, found, _ = laid()
    parts = {part.key: part for part in found.catalogue.parts}
    needs, _, _ = stay(condition)
    more, _, _ = stay((*condition, PartState(family=family, state="keep")))
    for before, after in zip(needs, more, strict=True):
        if parts[before.part].group == family:
            assert (after.kept, after.bought) == (after.quantity, 0.0)
        else:
            assert (after.kept, after.state) == (before.kept, before.state)
