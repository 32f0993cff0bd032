"""What is added to the skin is what was entered, side by side."""

from hoopwright.farm import Rain, Screen, Shade
from outfit.fitted import fitted, with_gutters
from samples import tunnel


def test_nothing_entered_adds_nothing() -> None:
    added = fitted(tunnel())
    assert (added.rain, added.shade, added.screens) == (None, None, ())


def test_all_that_is_entered_is_fitted() -> None:
    made = with_gutters(tunnel(), 1).but(rain=Rain(), shade=Shade(part="cloth"))
    first, second = made.sides
    added = fitted(made.but(sides=(first, second.but(screen=Screen(part="net")))))
    assert added.rain is not None
    assert [gutter.side for gutter in added.rain.gutters] == [1]
    assert added.shade is not None
    assert [screen.side for screen in added.screens] == [1]
