"""Insect screens: the published holes, the size of the opening, what is left of it for the air."""

import pytest

from hoopwright.farm import Screen, Split, Tunnel
from hoopwright.outfit import SideScreen, told_screen
from hoopwright.outfit.screen import kept_out
from hoopwright.quantity.working import explain, words
from outfit.fitted import fitted
from samples import side, tunnel


def _screened(**changes: object) -> Tunnel:
    screen = Screen(part="screen", **changes)  # type: ignore[arg-type]
    return tunnel(sides=(side("West side", screen=screen), side("East side")))


def _screen(made: Tunnel | None = None, **changes: object) -> SideScreen:
    (hung,) = fitted(made or _screened(**changes)).screens
    return hung


@pytest.mark.parametrize(
    ("hole_um", "kept"),
    [
        # Rutgers Cooperative Extension FS640: leafminer 640, whitefly 462, aphid 340, thrips 192.
        (641, ()),
        (640, ("leafminer",)),
        (462, ("leafminer", "whitefly")),
        (340, ("leafminer", "whitefly", "aphid")),
        (193, ("leafminer", "whitefly", "aphid")),
        (192, ("leafminer", "whitefly", "aphid", "flower thrips")),
    ],
)
def test_holes_keep_out_what_the_published_table_says(hole_um: int, kept: tuple[str, ...]) -> None:
    assert kept_out(hole_um * 1e-6) == kept
    hung = _screen(hole_m=hole_um / 1e6)
    assert hung.keeps_out == kept
    assert set(hung.lets_in) | set(kept) == {"leafminer", "whitefly", "aphid", "flower thrips"}
    assert not set(hung.lets_in) & set(kept)


def test_size_is_opening_and_edges() -> None:
    # From pocket to pocket 24 - 2 x 1.5 m; from the hip at 1.5 m to the baseboard at 0.3 m.
    hung = _screen(edge_m=0.1)
    assert (hung.from_m, hung.to_m) == (1.5, 22.5)
    assert hung.length_m == pytest.approx(21.2)
    assert hung.height_m == pytest.approx(1.4)
    assert (hung.widths, hung.screen_m) == (1, hung.length_m)


def test_narrow_screen_takes_two_widths() -> None:
    hung = _screen(screen_width_m=0.9, lap_m=0.1)
    assert hung.widths == 2
    assert hung.screen_m == pytest.approx(2 * 21.2)
    assert _screen(screen_width_m=0.7, lap_m=0.1).widths == 3


def test_screen_runs_on_behind_splits() -> None:
    split = side("West side", (Split(at_m=9.0, join="strip"),), screen=Screen(part="screen"))
    hung = _screen(tunnel(sides=(split, side("East side"))))
    assert (hung.from_m, hung.to_m) == (1.5, 22.5)


def test_opening_is_worth_what_the_screen_lets_through() -> None:
    half, bare = _screen(flow_share=0.5), _screen(flow_share=1.0)
    assert half.opening_m2 == bare.opening_m2 == bare.free_m2
    assert half.free_m2 == pytest.approx(0.5 * half.opening_m2)
    assert half.free_share == pytest.approx(0.5 * half.opening_m2 / (8 * 24))


def test_side_that_does_not_open_has_no_screen() -> None:
    shut = side("West side", kind="fixed", screen=Screen(part="screen"))
    assert fitted(tunnel(sides=(shut, side("East side")))).screens == ()
    assert fitted(tunnel()).screens == ()


def test_every_number_says_how_it_was_got() -> None:
    hung = _screen(hole_m=0.000192)
    told = {w.figure for w in hung.workings}
    assert told == set(SideScreen.__dataclass_fields__) - {"mark", "side", "part", "workings"}
    assert all("Source: " in explain(w, "metric") for w in hung.workings)
    said = words(told_screen(hung), "metric")
    assert "let in none of the published table" in said
    assert "advise against screens with natural ventilation" in said
    assert words(told_screen(_screen(hole_m=0.001)), "metric").startswith(
        "Holes of 1,000 µm keep out none of the published table"
    )
