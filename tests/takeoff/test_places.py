import pytest

from hoopwright.takeoff.need import Place
from hoopwright.takeoff.places import place_at, stretches_by_mark
from samples import double_tunnel, tunnel
from takeoff.counted import site


@pytest.mark.parametrize(
    ("mark", "place"),
    [
        ("side/0/hip", Place("first_side", 0.0, 24.0)),
        ("side/1/baseboard", Place("second_side", 0.0, 24.0)),
        ("side/1/panel/0", Place("second_side", 1.5, 22.5)),
        ("side/0/pocket/back", Place("first_side", 22.5, 24.0)),
        ("end/0", Place("front_end", 0.0, 0.0)),
        ("end/1", Place("back_end", 24.0, 24.0)),
        ("roof", Place("roof", 0.0, 24.0)),
        ("air/blower", Place("everywhere", 0.0, 24.0)),
    ],
)
def test_mark_stands_for_a_part_of_the_tunnel_and_a_stretch(mark: str, place: Place) -> None:
    laid = site(tunnel())
    assert place_at(mark, laid.survey, stretches_by_mark(laid.cover)) == place


def test_curtains_and_strips_beside_a_split_have_their_own_stretch() -> None:
    # The second side is split at 9 m with a strip to the next bow, 10.5 m.
    found = stretches_by_mark(site(double_tunnel()).cover)
    assert found["side/0/panel/0"] == (1.5, 12.0)
    assert found["side/0/panel/1"] == (12.0, 22.5)
    assert found["side/1/strip/0"] == (9.0, 10.5)
    assert found["side/1/panel/1"] == (10.5, 22.5)
