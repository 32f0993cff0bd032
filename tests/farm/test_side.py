"""Kinds of side: what fits them, what a change of kind takes along, what is refused."""

import pytest

from files.varied import varied_catalogue, varied_farm
from hoopwright.farm import Farm, change
from hoopwright.farm.drive import drive_parts
from samples import rafter_tunnel, small_catalogue, tunnel


def test_a_side_that_drops_down_gets_a_drum_and_gives_it_back() -> None:
    catalogue = varied_catalogue()
    dropping = change.set_side_kind(tunnel(), 0, "drop_down", catalogue)
    assert [p.drive for p in dropping.sides[0].panels] == ["drum"]
    assert dropping.sides[1] == tunnel().sides[1]
    again = change.set_side_kind(dropping, 0, "roll_up", catalogue)
    assert [p.drive for p in again.sides[0].panels] == ["crank"]


def test_a_woven_side_gets_a_hem_bar_and_a_woven_film() -> None:
    woven = change.set_side_kind(tunnel(), 1, "woven", varied_catalogue()).sides[1]
    assert (woven.film, [p.bar for p in woven.panels]) == ("woven", ["hem"])


def test_a_kind_without_its_hardware_in_the_catalogue_is_refused() -> None:
    with pytest.raises(ValueError, match="no bar for a hem"):
        change.set_side_kind(tunnel(), 0, "woven", small_catalogue())
    with pytest.raises(ValueError, match="no drive for this kind"):
        change.set_side_kind(tunnel(), 0, "drop_down", small_catalogue())


@pytest.mark.parametrize(
    ("kind", "why"), [("drop_down", "choose a line drum"), ("woven", "choose a bar for a hem")]
)
def test_hardware_that_cannot_work_a_side_is_refused(kind: str, why: str) -> None:
    farm = varied_farm()
    wrong = rafter_tunnel().but(name="Wrong")
    wrong = wrong.but(sides=(wrong.sides[0].but(kind=kind), wrong.sides[1]))
    with pytest.raises(ValueError, match=why):
        change.add_tunnel(farm, wrong)


def test_a_film_of_a_side_must_be_in_the_catalogue() -> None:
    farm: Farm = varied_farm()
    side = farm.tunnels[0].sides[0].but(film="silk")
    changed = farm.tunnels[0].but(sides=(side, farm.tunnels[0].sides[1]))
    with pytest.raises(ValueError, match="no film 'silk'"):
        change.with_tunnel(farm, 0, changed)


def test_every_part_of_a_drive_is_named() -> None:
    parts = {d.key: drive_parts(d) for d in varied_catalogue().drives}
    assert parts == {
        "crank": ("crank", "crank_pipe", "joint"),
        "geared": ("crank", "bar_stick"),
        "drum": ("crank",),
    }
