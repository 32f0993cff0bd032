"""What is told of the airing beside published figures."""

import pytest

from airing.aired import aired
from hoopwright.airing import told_flow, told_share
from hoopwright.airing.workings import SUMMER_M3_S_M2
from hoopwright.quantity.working import words

CFM_M3_S = 4.719474e-4
FT2_M2 = 0.09290304


def test_published_flow_of_fans_is_eight_cfm_per_square_foot() -> None:
    # New England Vegetable Management Guide, ventilation: 8 cfm for each square foot in summer.
    # A tunnel of 30 by 96 ft then takes 23,040 cfm.
    assert pytest.approx(8 * CFM_M3_S / FT2_M2) == SUMMER_M3_S_M2
    assert pytest.approx(23040, rel=1e-5) == SUMMER_M3_S_M2 * 30 * 96 * FT2_M2 / CFM_M3_S


def test_share_is_told_with_what_the_published_one_is_for() -> None:
    said = words(told_share(aired()), "metric")
    assert "25.81% of the floor" in said
    assert "15% to 20% is for roof vents and for side vents each" in said
    assert not {"fine", "enough", "good", "too"} & set(said.lower().replace(",", "").split())


def test_flow_is_told_beside_that_of_fans() -> None:
    said = words(told_flow(aired()), "imperial")
    assert "8.0 cfm/ft\u00b2" in said or "8 cfm/ft\u00b2" in said
    assert "changes/h" in said
