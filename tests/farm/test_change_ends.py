"""Edits of an end wall: what each changes, where it holds, what it keeps."""

import pytest

from hoopwright.farm import Cut, Door, Part, RoundBow, Tunnel
from hoopwright.farm import change_ends as edit
from hoopwright.farm.end_places import opening_boxes
from samples import small_catalogue, tunnel

HALF_CIRCLE = RoundBow(span_m=8.0, leg_height_m=0.0, peak_height_m=4.0)
DOOR = Door(width_m=2.0, height_m=2.4)
VENT = Cut(left_m=-0.3, sill_m=3.0, width_m=0.6, height_m=0.6)


def walled(doors: tuple[Door, ...] = (), cuts: tuple[Cut, ...] = ()) -> Tunnel:
    plain = tunnel(HALF_CIRCLE)
    return edit.with_end(plain, 0, plain.ends[0].but(doors=doors, cuts=cuts))


def test_doors_and_cuts_are_added_and_taken_away_on_one_end_alone() -> None:
    made = edit.add_cut(edit.add_door(walled(), 0), 0, "fan")
    assert [len(made.ends[0].doors), made.ends[0].cuts[0].kind] == [1, "fan"]
    assert made.ends[1] == walled().ends[1]
    assert edit.remove_cut(edit.remove_door(made, 0, 0), 0, 0).ends[0] == walled().ends[0]


def test_new_vents_do_not_lie_on_each_other() -> None:
    made = walled(doors=(DOOR,))
    for _ in range(4):
        made = edit.add_cut(made, 1, "vent")
    _doors, cuts = opening_boxes(made.ends[1], 8.0)
    assert len(cuts) == 4
    assert not any(a.overlaps(b) for n, a in enumerate(cuts) for b in cuts[:n])


def test_a_door_that_is_moved_is_placed_and_held_in_the_bow() -> None:
    # 2.4 m high in a half circle of 4 m there is room from -3.2 to 3.2 m.
    made = walled(doors=(DOOR, DOOR))
    moved = edit.move_opening(made, 0, "door", 0, left_m=-9.0)
    assert moved.ends[0].doors[0].left_m == pytest.approx(-3.2)
    assert moved.ends[0].doors[1] == DOOR
    assert edit.opening_place(moved, 0, "door", 1) == edit.opening_place(made, 0, "door", 1)
    far = edit.move_opening(made, 0, "door", 1, left_m=9.0, sill_m=1.0)
    assert edit.opening_place(far, 0, "door", 1) == (pytest.approx(1.2), 0.0)


def test_a_vent_that_goes_up_slides_along_the_bow() -> None:
    made = walled(cuts=(VENT.but(left_m=-3.5, sill_m=0.5),))
    up = edit.move_opening(made, 0, "cut", 0, sill_m=2.6)
    # Its top at 3.2 m: sqrt(16 - 10.24) = 2.4 m.
    assert (up.ends[0].cuts[0].left_m, up.ends[0].cuts[0].sill_m) == pytest.approx((-2.4, 2.6))
    assert edit.move_opening(made, 0, "cut", 0, sill_m=-2.0).ends[0].cuts[0].sill_m == 0.0
    # 0.6 m wide its top can be where the bow is 0.6 m wide: sqrt(16 - 0.09) = 3.9887 m, so its sill
    # at 3.3887 m, and at 3.35 m in steps of 5 cm.
    top = edit.move_opening(made, 0, "cut", 0, sill_m=9.0)
    assert top.ends[0].cuts[0].sill_m == pytest.approx(3.35)


def test_an_opening_that_has_no_room_stands_in_the_middle() -> None:
    made = walled(doors=(Door(width_m=9.0, height_m=2.0),))
    assert edit.left_range(made, 0, "door", 0) == (pytest.approx(-4.5), pytest.approx(-4.5))
    assert edit.fit_opening(made, 0, "door", 0) is None


def test_an_opening_is_fitted_where_it_has_room_nearest() -> None:
    made = walled(doors=(DOOR,), cuts=(VENT.but(left_m=-3.8, sill_m=3.2),))
    fitted = edit.fit_opening(made, 0, "cut", 0)
    assert fitted is not None
    left_m, sill_m = edit.opening_place(fitted, 0, "cut", 0)
    assert left_m**2 + (sill_m + 0.6) ** 2 <= 16.0 + 1e-9


def test_what_closes_an_end_wall_is_one_thing() -> None:
    plain, catalogue = tunnel(), small_catalogue()
    opened = edit.set_end_cover(plain, 0, "open", catalogue)
    assert edit.cover_of(opened.ends[0]) == "open"
    assert edit.set_end_cover(opened, 0, "film", catalogue).ends[0].film == plain.skin.pockets
    assert edit.set_end_cover(plain, 0, "film", catalogue) is plain
    without = tuple(part for part in catalogue.parts if part.key != edit.RIGID_PART)
    with pytest.raises(ValueError, match="no part 'rigid_sheet'"):
        edit.set_end_cover(plain, 0, "rigid", catalogue.but(parts=without))
    sheet = catalogue.parts[0].but(key=edit.RIGID_PART, group="End walls", counted_in="count")
    assert isinstance(sheet, Part)
    known = catalogue.but(parts=(*without, sheet))
    rigid = edit.set_end_cover(plain, 1, "rigid", known).ends[1]
    assert (rigid.film, edit.cover_of(rigid)) == (None, "rigid")


def test_a_rail_halves_the_wall_and_takes_its_seam_along() -> None:
    made = edit.add_seam(edit.add_rail(walled(), 0), 0)
    assert (made.ends[0].rails_m, made.ends[0].seams_m) == ((2.0,), (2.0,))
    moved = edit.move_rail(made, 0, 0, 2.5)
    assert (moved.ends[0].rails_m, moved.ends[0].seams_m) == ((2.5,), (2.5,))
    assert edit.move_rail(made, 0, 0, 99.0).ends[0].rails_m == pytest.approx((3.9,))
    assert edit.remove_rail(moved, 0, 0).ends[0].seams_m == (2.5,)
    assert edit.remove_seam(moved, 0, 0).ends[0].rails_m == (2.5,)


def test_a_seam_takes_a_free_rail_or_brings_one() -> None:
    made = edit.add_rail(edit.add_rail(walled(), 0, 1.0), 0, 2.2)
    first = edit.add_seam(made, 0)
    assert first.ends[0].seams_m == (2.2,)
    # Of the ground to 2.2 m and 2.2 to 4 m the lower is higher; its middle is 1.1, the rail at 1.
    second = edit.add_seam(first, 0)
    assert (second.ends[0].seams_m, second.ends[0].rails_m) == ((1.0, 2.2), (1.0, 2.2))
    third = edit.add_seam(second, 0)
    assert third.ends[0].rails_m == third.ends[0].seams_m == (1.0, 2.2, pytest.approx(3.1))
    moved = edit.move_end_seam(third, 0, 1, 0.0)
    assert moved.ends[0].seams_m[1] == pytest.approx(1.1)
