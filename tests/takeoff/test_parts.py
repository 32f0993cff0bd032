import pytest

from hoopwright.farm import Tunnel
from hoopwright.farm.begin import BLOWER
from hoopwright.farm.farm import fits_bar, fits_drive
from hoopwright.order import place_order
from hoopwright.quantity.working import words
from samples import (
    double_tunnel,
    drop_side,
    gothic_tunnel,
    rafter_tunnel,
    side,
    small_catalogue,
    tunnel,
    woven_side,
)
from takeoff.counted import count, demo_catalogue, whole_catalogue


def every_kind(bottom: str, rope: str, drives: tuple[str, str]) -> Tunnel:
    """Return a woven and a drop-down side with bars and drives of the demo catalogue."""
    woven, drop = woven_side(), drop_side("East side")
    woven_panel = woven.panels[0].but(
        bar="hem_1375_058", drive=drives[0], bottom=bottom, rope=rope, crank_end="middle"
    )
    drop_panel = drop.panels[0].but(bar="two_piece_1375_058", drive=drives[1], rope=rope)
    sides = (woven.but(panels=(woven_panel,)), drop.but(panels=(drop_panel,)))
    return tunnel(sides=sides)


def sliding(bar: str, bottom: str) -> Tunnel:
    """Return two roll-up sides of a bar of the demo catalogue, with a geared crank."""
    plain = side()
    panel = plain.panels[0].but(bar=bar, drive="geared_8", bottom=bottom, rope="straps")
    return tunnel(sides=(plain.but(panels=(panel,)), side("East side", top="shared_channel")))


TUNNELS = {
    "round": tunnel(),
    "gothic": gothic_tunnel(),
    "rafters": rafter_tunnel(),
    "double": double_tunnel(),
    "hand and drum": every_kind("hat_purlin", "straps", ("hand_12in", "drum_direct")),
    "geared": every_kind("skirt", "zigzag", ("geared_13", "drum_geared_10")),
    "slotted": sliding("aluminium_1500_063_slotted", "skirt"),
    "bolted": sliding("two_piece_1660_065", "hat_purlin"),
}


@pytest.mark.parametrize("covering", ["one_sheet", "roof_and_sides"])
@pytest.mark.parametrize("plain", TUNNELS.values(), ids=TUNNELS)
def test_every_need_is_whole_where_it_is_counted_explained_and_in_the_catalogue(
    plain: Tunnel, covering: str
) -> None:
    catalogue = whole_catalogue()
    for need in count(plain, covering):
        part = catalogue.part(need.part)
        assert need.quantity > 0
        assert part.counted_in == "m" or need.quantity == int(need.quantity)
        assert need.marks
        assert need.working.rule
        assert need.working.source
        for units in ("metric", "imperial"):
            assert words(need.where, units)


def test_poor_catalogue_is_counted_all_the_same_and_what_it_lacks_is_named() -> None:
    poor = small_catalogue()
    order = place_order((("T1", count(tunnel(), catalogue=poor)),), (), poor)
    assert "channel" in order.missing
    assert "rope" in order.missing
    assert {line.key for line in order.lines} == {"bar_stick", "crank", "crank_pipe", "joint"}


def test_same_tunnel_is_counted_alike() -> None:
    assert count(double_tunnel()) == count(double_tunnel())


def test_longer_opening_never_needs_less_channel_wire_or_rope() -> None:
    # One bay more adds 1.5 m to four hip runs and to the boards.
    short = tunnel()
    bows = short.frame.bows.but(count=18)
    long = short.but(frame=short.frame.but(bows=bows, length_m=25.5))
    grown = dict.fromkeys(("channel", "hip_board_wood", "baseboard_wood", "bar_cap"), 0.0)
    for key in grown:
        grown[key] = sum(n.quantity for n in count(long) if n.part == key) - sum(
            n.quantity for n in count(short) if n.part == key
        )
    assert grown == pytest.approx(
        {"channel": 6.0, "hip_board_wood": 3.0, "baseboard_wood": 3.0, "bar_cap": 3.0}
    )


def test_demo_catalogue_says_that_its_prices_are_invented() -> None:
    demo = demo_catalogue()
    assert "invented" in demo.note
    assert {p.origin for p in demo.parts} == {"invented"}
    assert {r.origin for film in demo.films for r in film.rolls} == {"invented"}


def test_demo_catalogue_serves_every_kind_of_side() -> None:
    demo = demo_catalogue()
    for kind in ("roll_up", "woven", "drop_down"):
        assert any(fits_bar(kind, bar) for bar in demo.bars)
        assert any(fits_drive(kind, drive) for drive in demo.drives)
    assert any(film.woven for film in demo.films)
    assert {bar.grip for bar in demo.bars} == {
        "clamp_on_cap",
        "own_channel",
        "closes_on_film",
        "hem",
    }
    assert [bar.key for bar in demo.bars if bar.slit] == ["aluminium_1500_063_slotted"]


def test_demo_drives_that_hold_by_themselves_lose_more_than_half() -> None:
    # Derived here: a worm of lead angle a holds when a is not above the friction angle f, so its
    # efficiency tan a / tan(a + f) is at most tan f / tan 2f = (1 - tan^2 f) / 2, below one half.
    holding = [drive for drive in demo_catalogue().drives if drive.holds]
    assert len(holding) == 3
    assert all(drive.efficiency < 0.5 for drive in holding)


def test_demo_catalogue_has_what_a_first_tunnel_starts_from() -> None:
    demo = demo_catalogue()
    assert demo.part(BLOWER).counted_in == "count"
    assert len(demo.films) >= 2


@pytest.mark.parametrize("film", demo_catalogue().films, ids=lambda film: film.key)
def test_larger_demo_roll_costs_more_but_less_for_its_area(film: object) -> None:
    rolls = sorted(film.rolls, key=lambda r: r.width_m * r.length_m)  # type: ignore[attr-defined]
    for small in rolls:
        for large in rolls:
            if large.width_m >= small.width_m and large.length_m >= small.length_m:
                rates = [float(r.price) / (r.width_m * r.length_m) for r in (small, large)]
                assert large.price >= small.price
                assert rates[1] <= rates[0] * 1.02
