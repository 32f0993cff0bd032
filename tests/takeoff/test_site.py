import pytest

from hoopwright.quantity.working import phrase
from hoopwright.takeoff.site import count_spaced, need
from samples import small_catalogue, tunnel
from takeoff.counted import site


@pytest.mark.parametrize(
    ("length_m", "spacing_m", "pieces"),
    [
        (6.0, 2.0, 4),  # at 0, 2, 4 and 6 m
        (6.1, 2.0, 5),  # closer than 2 m, and one at the very end
        (0.5, 2.0, 2),  # one at each end
        (sum([0.1] * 3), 0.1, 4),  # a little over 0.3 m in binary
    ],
)
def test_pieces_along_a_run(length_m: float, spacing_m: float, pieces: int) -> None:
    assert count_spaced(length_m, spacing_m) == pieces


@pytest.mark.parametrize(("length_m", "spacing_m"), [(0.0, 1.0), (1.0, 0.0)])
def test_run_of_nothing_is_a_broken_promise(length_m: float, spacing_m: float) -> None:
    with pytest.raises(ValueError, match="length and spacing must be above zero"):
        count_spaced(length_m, spacing_m)


def test_need_says_how_it_was_got() -> None:
    one = need("channel", 3, phrase("hip"), "side/0/hip", "The whole length")
    assert (one.quantity, one.marks, one.working.figure) == (3.0, ("side/0/hip",), "quantity")
    assert one.working.source == "common practice, no published source"


def test_spacing_is_the_catalogues_or_else_60_cm() -> None:
    plain = site(tunnel())
    assert plain.spacing_m("channel_screw_wood") == 0.4572
    assert plain.spacing_m("channel") == 0.6
    assert site(tunnel(), catalogue=small_catalogue()).spacing_m("channel_screw_wood") == 0.6
