"""What is told of the airing beside published figures."""

import pytest

from airing.aired import aired
from hoopwright.airing import told_flow, told_share
from hoopwright.airing.workings import SUMMER_M3_S_M2
from hoopwright.farm import Screen
from hoopwright.quantity.working import words
from worked import PAIR

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


def test_screens_are_told_where_there_are_any() -> None:
    screened = PAIR[0].but(screen=Screen(part="screen", flow_share=0.5))
    said = words(told_share(aired((screened, PAIR[1]))), "metric")
    # Half of 12.905 % on one side and the whole of it on the other: 19.36 %.
    assert "Behind insect screens it is worth 19.36% of the floor." in said
    assert "screen" not in words(told_share(aired()), "metric")


def test_workings_name_the_screens_and_no_others() -> None:
    screened = PAIR[0].but(screen=Screen(part="screen", flow_share=0.5))
    for sides, named in (((screened, PAIR[1]), ["West side"]), (PAIR, [])):
        airing = aired(sides)
        for figure in ("free_m2", "wind_m3_s", "warmth_m3_s"):
            inputs = airing.working(figure).inputs
            through = [t.name for t in inputs if t.name.startswith("air through the screen")]
            assert through == [f"air through the screen of {name}" for name in named]


def test_flow_is_told_beside_that_of_fans() -> None:
    said = words(told_flow(aired()), "imperial")
    assert "8.0 cfm/ft\u00b2" in said or "8 cfm/ft\u00b2" in said
    assert "changes/h" in said
