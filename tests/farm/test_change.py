"""Edits: what they change, what they keep, and what they refuse."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.farm import EvenBows, ListedBows, Split, Tunnel, change
from samples import double_tunnel, side, small_farm, tunnel


def split_tunnel(*spots: float) -> Tunnel:
    splits = tuple(Split(at_m=x) for x in spots)
    return tunnel(sides=(side("West", splits), side("East")))


def test_new_split_halves_the_longest_curtain_on_a_bow() -> None:
    # Opening from 1.5 to 22.5 m, bows every 1.5 m: the middle, 12 m, is a bow.
    cut = change.add_split(tunnel(), 0)
    assert [s.at_m for s in cut.sides[0].splits] == [12.0]
    assert [p.crank_end for p in cut.sides[0].panels] == ["front", "back"]


def test_split_added_and_removed_leaves_the_side_as_it_was() -> None:
    first = tunnel()
    assert change.remove_split(change.add_split(first, 1), 1, 0) == first


def test_split_outside_the_opening_is_refused() -> None:
    with pytest.raises(ValueError, match="inside the opening"):
        change.add_split(tunnel(), 0, 1.0)


@given(st.floats(-50, 80))
def test_split_stays_between_its_neighbours(at_m: float) -> None:
    moved = change.move_split(split_tunnel(6.0, 12.0, 18.0), 0, 1, at_m)
    spots = [s.at_m for s in moved.sides[0].splits]
    assert 6.0 < spots[1] < 18.0
    assert spots[1] == pytest.approx(min(max(at_m, 6.5), 17.5))


def test_shorter_tunnel_keeps_split_at_its_share_of_the_length() -> None:
    # 24 m to 12 m: the split at 12 m goes to 6 m, which is a bow.
    short = change.with_tunnel_value(split_tunnel(12.0), ("frame", "length_m"), 12.0)
    assert short.frame.bows == EvenBows(count=9, spacing_m=1.5)
    assert [s.at_m for s in short.sides[0].splits] == [6.0]


def test_tunnel_of_two_bays_gives_up_splits_and_a_pocket() -> None:
    short = change.with_tunnel_value(split_tunnel(6.0, 12.0), ("frame", "length_m"), 3.0)
    assert short.frame.bows == EvenBows(count=3, spacing_m=1.5)
    assert short.sides[0].pocket_bays == (0, 0)
    assert len(short.sides[0].panels) == len(short.sides[0].splits) + 1


def test_length_that_is_no_whole_number_of_bays_leaves_the_bows() -> None:
    odd = change.with_tunnel_value(tunnel(), ("frame", "length_m"), 23.3)
    assert odd.frame.bows == tunnel().frame.bows
    assert odd.frame.length_m == 23.3


def test_seams_follow_the_frame() -> None:
    seamed = change.add_seam(tunnel())
    assert seamed.skin.cross_seams_m == (12.0,)
    short = change.with_tunnel_value(seamed, ("frame", "length_m"), 12.0)
    assert short.skin.cross_seams_m == (6.0,)
    assert change.remove_seam(short, 0).skin.cross_seams_m == ()


def test_hip_stays_between_baseboard_and_ridge() -> None:
    high = change.move_hip(tunnel(), (0, 1), 99.0)
    low = change.move_hip(tunnel(), (0,), -5.0)
    assert high.frame.boards[1].hip_height_m == pytest.approx(3.6)
    assert low.frame.boards[0].hip_height_m == pytest.approx(0.4)
    assert low.frame.boards[1] == tunnel().frame.boards[1]


def test_copy_of_a_tunnel_gets_a_free_name() -> None:
    farm = small_farm()
    twice = change.add_tunnel(change.add_tunnel(farm, farm.tunnels[0]), farm.tunnels[0])
    assert [t.name for t in twice.tunnels] == [
        "Meadow tunnel",
        "Meadow tunnel 2",
        "Meadow tunnel 3",
    ]
    assert change.remove_tunnel(change.remove_tunnel(twice, 1), 1) == farm


def test_last_tunnel_stays() -> None:
    with pytest.raises(ValueError, match="at least one tunnel"):
        change.remove_tunnel(small_farm(), 0)


def test_two_tunnels_of_one_name_are_refused() -> None:
    with pytest.raises(ValueError, match="two tunnels are called"):
        small_farm(tunnel(), tunnel())


def test_choice_the_catalogue_lacks_is_named_with_its_place() -> None:
    strange = tunnel().but(air=tunnel().air.but(blower="windmill"))
    with pytest.raises(ValueError, match=r"Meadow tunnel.*air\.blower.*no blower 'windmill'"):
        small_farm(strange)


def test_bows_written_out_stand_where_they_stood() -> None:
    listed = change.with_listed_bows(double_tunnel())
    assert listed.frame.bows.positions_m == tuple(i * 1.5 for i in range(17))  # type: ignore[union-attr]


@pytest.mark.parametrize(
    ("at_m", "steps", "bow_m"), [(12.0, 1, 13.5), (12.2, -1, 12.0), (3.0, -5, 0.0), (20.0, 9, 24.0)]
)
def test_steps_go_from_bow_to_bow_and_stop_at_the_ends(
    at_m: float, steps: int, bow_m: float
) -> None:
    assert change.next_bow(tunnel(), at_m, steps) == bow_m


def test_even_bows_keep_their_number_and_the_length() -> None:
    # Listed at 0, 1, 2.5, 3.9 m: three bays over 3.9 m are 1.3 m each.
    listed = ListedBows(positions_m=(0.0, 1.0, 2.5, 3.9))
    uneven = change.with_tunnel_value(tunnel(), ("frame", "bows"), listed)
    even = change.with_even_bows(uneven)
    assert even.frame.bows == EvenBows(count=4, spacing_m=3.9 / 3)
