"""Parts of gutters, shade cloth and screens against counts by hand."""

import pytest

from hoopwright.farm import Rain, Screen, Shade, Tunnel
from hoopwright.quantity.working import explain, words
from hoopwright.takeoff import Need
from hoopwright.takeoff.outfit_parts import count_outfit
from outfit.fitted import fitted, with_gutters
from samples import side, tunnel
from takeoff.counted import places, site, total, whole_catalogue


def _count(made: Tunnel) -> tuple[Need, ...]:
    return tuple(count_outfit(site(made)))


def test_nothing_added_takes_nothing() -> None:
    assert _count(tunnel()) == ()
    assert _count(with_gutters(tunnel(), 0)) == (), "no rain is entered"


def test_gutter_and_its_pipes() -> None:
    needs = _count(with_gutters(tunnel(), 0).but(rain=Rain(outlets=3)))
    # 24 m in sticks of 3.048 m are 8 sticks with 7 joints; brackets 0.6096 m apart
    # 24 / 0.6096 = 39.4, so 40 and 1; pipes of 1.35 m with straps 1.2192 m apart: 2 and 1 on each.
    assert [(n.part, round(n.quantity, 3)) for n in needs] == [
        ("gutter", 24.0),
        ("gutter_joint", 7.0),
        ("gutter_bracket", 41.0),
        ("gutter_end", 2.0),
        ("gutter_outlet", 3.0),
        ("downpipe", 4.05),
        ("downpipe_strap", 9.0),
    ]
    assert {n.marks for n in needs} == {("side/0/hip",)}
    assert places(needs, "gutter") == [("West side: gutter", 24.0)]


def test_two_gutters_take_twice_as_much() -> None:
    rain = Rain()
    one = _count(with_gutters(tunnel(), 1).but(rain=rain))
    both = _count(with_gutters(tunnel(), 0, 1).but(rain=rain))
    for part in {n.part for n in one}:
        assert total(both, part) == pytest.approx(2 * total(one, part))


def test_gutter_that_hangs_to_the_ground_has_no_pipe() -> None:
    made = tunnel()
    low = made.frame.boards[0].but(hip_height_m=0.6)
    made = made.but(
        frame=made.frame.but(boards=(low, made.frame.boards[1])),
        sides=(side("West side", kind="fixed"), made.sides[1]),
    )
    needs = _count(with_gutters(made, 0, drop_m=0.6).but(rain=Rain()))
    assert total(needs, "gutter_outlet") == 2
    assert total(needs, "downpipe") == total(needs, "downpipe_strap") == 0


def test_shade_cloth_and_what_ties_it() -> None:
    shade = Shade(part="shade_cloth", cloth_width_m=3.0, lap_m=0.1, tie_step_m=0.6, to_bow=9)
    made = tunnel().but(shade=shade)
    laid = fitted(made).shade
    assert laid is not None
    needs = _count(made)
    # Along 12.3 m, across 9.9 m: four widths of 12.3 m along, five of 9.9 m across; along is less.
    assert (laid.laid, laid.widths) == ("along", 4)
    assert total(needs, "shade_cloth") == pytest.approx(4 * 12.3)
    assert total(needs, "shade_cord") == pytest.approx(2 * laid.across_m)
    # 12.3 / 0.6 = 20.5, so 21; 9.9 / 0.6 = 16.5, so 17; three laps of 21 ties.
    assert total(needs, "shade_tie") == 2 * (21 + 17) + 3 * 21
    assert total(needs, "shade_grommet") == 2 * (21 + 17) + 2 * 3 * 21
    assert total(needs, "shade_hook") == 2 * 21
    for found in needs:
        assert found.place is not None
        assert (found.place.part, found.place.from_m, found.place.to_m) == ("roof", 0.0, 12.0)


def test_screen_is_counted_at_its_side() -> None:
    screen = Screen(part="insect_screen", screen_width_m=0.9, lap_m=0.1)
    made = tunnel(sides=(side("West side"), side("East side", screen=screen)))
    needs = _count(made)
    # From pocket to pocket 21 m, hip to baseboard 1.2 m. Screws 0.3048 m apart: 21 / 0.3048 = 68.9,
    # so 69 and 1; 1.2 / 0.3048 = 3.9, so 4 and 1; each twice.
    assert [(n.part, round(n.quantity, 3), n.marks) for n in needs] == [
        ("insect_screen", 2 * 21.2, ("side/1",)),
        ("screen_batten", 2 * (21.0 + 1.2), ("side/1",)),
        ("screen_screw", 2 * (70 + 5), ("side/1",)),
    ]
    assert words(needs[0].where, "metric") == "East side: insect screen"
    for found in needs:
        assert found.place is not None
        assert (found.place.part, found.place.from_m, found.place.to_m) == (
            "second_side",
            1.5,
            22.5,
        )


def test_every_need_is_told_and_in_the_catalogue() -> None:
    sides = (side("West side", screen=Screen(part="insect_screen")), side("East side"))
    made = with_gutters(tunnel(sides=sides), 0, 1).but(
        rain=Rain(), shade=Shade(part="shade_cloth", cloth_width_m=2.0)
    )
    needs = _count(made)
    assert {n.part for n in needs} <= {p.key for p in whole_catalogue().parts}
    for found in needs:
        assert found.quantity > 0
        assert not found.working.rule.endswith(".")
        assert "Source: " in explain(found.working, "metric")
