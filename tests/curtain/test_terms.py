"""Terms of a curtain: named by place, the drive's weight only where the bar carries it."""

from hanging import dropping, rolling
from hoopwright.curtain.terms import handle_terms, mass_terms, places


def test_three_places_are_told_apart() -> None:
    names = [term.name for term in places("roll", (1.0, 2.0, 3.0), "m_thin")]
    assert names == ["roll shut", "roll half way", "roll open"]


def test_drum_weighs_nothing_on_the_rod() -> None:
    rolled = {term.name for term in mass_terms(rolling())}
    dropped = {term.name for term in mass_terms(dropping())}
    assert rolled - dropped == {"crank and joint on the bar"}


def test_handle_is_told_by_arm_ratio_and_efficiency() -> None:
    assert [term.value for term in handle_terms(dropping())][1:] == [2.0, 0.8]
