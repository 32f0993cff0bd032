"""The cautions are complete and each stands somewhere."""

import pytest

from hoopwright.papers.cautions import CAUTIONS, caution_texts

USUAL = [
    "wind",
    "ladder",
    "power_line",
    "crank",
    "air_off",
    "electricity",
    "sealer",
    "blade",
    "lifting",
    "weather",
    "frame",
    "dust",
    "law",
    "old_cover",
]


def test_every_usual_caution_is_there_once() -> None:
    assert [c.id for c in CAUTIONS] == USUAL


@pytest.mark.parametrize("caution", CAUTIONS, ids=lambda c: c.id)
def test_caution_says_what_to_do_in_sentences(caution) -> None:
    assert caution.title[0].isupper()
    assert caution.text.endswith(".")
    assert caution.places


def test_curtain_is_never_rolled_up_with_air_in_it() -> None:
    assert "air_off" in {c.id for c in caution_texts("curtains")}
    assert "air_off" in {c.id for c in caution_texts("air")}


def test_crank_runaway_and_air_stand_at_the_crank() -> None:
    runaway, air_off = caution_texts("crank")
    assert (runaway.id, air_off.id) == ("crank", "air_off")
    assert "Never lift a pawl under load." in runaway.text
    assert "go flat first" in air_off.text


def test_blower_names_a_licensed_electrician() -> None:
    (found,) = (c for c in caution_texts("air") if c.id == "electricity")
    assert "licensed electrician" in found.text
    assert "local code" in found.text


def test_law_stands_everywhere_and_defers_to_licensed_practice() -> None:
    (found,) = caution_texts("everywhere")
    assert found.id == "law"
    assert "licensed practice" in found.text
