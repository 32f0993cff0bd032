"""Condition, end openings, rain, shade and screen as entered: what is refused, in which words."""

import pytest

from hoopwright.farm import Cut, PartState, Rain, RigidSheet, Screen, Shade
from samples import layers, small_farm, tunnel


def test_a_stretch_that_runs_backwards_is_refused() -> None:
    with pytest.raises(ValueError, match="to_bow: the last bow must come after the first"):
        PartState(family="Film", from_bow=5, to_bow=5)
    with pytest.raises(ValueError, match="to_bow"):
        Shade(part="cloth", from_bow=4, to_bow=3)


def test_a_stretch_past_the_last_bow_is_refused_with_the_count() -> None:
    with pytest.raises(ValueError, match=r"condition\[0\]\.to_bow: there is no bow 20; .* 17 bows"):
        tunnel().but(condition=(PartState(family="Film", to_bow=20),))
    with pytest.raises(ValueError, match=r"shade\.from_bow: there is no bow 18"):
        tunnel().but(shade=Shade(part="cloth", from_bow=18))


def test_a_family_that_the_catalogue_lacks_is_refused_by_name() -> None:
    state = PartState(family="Chimneys", state="keep")
    with pytest.raises(ValueError, match="there is no family of parts 'Chimneys'"):
        small_farm(tunnel().but(condition=(state,)))
    kept = small_farm(tunnel().but(condition=(state.but(family="Curtains"),)))
    assert kept.tunnels[0].condition[0].state == "keep"


def test_parts_of_screen_shade_and_rigid_wall_must_be_in_the_catalogue() -> None:
    plain = tunnel()
    screened = plain.sides[0].but(screen=Screen(part="net"))
    for changed, label in (
        (plain.but(sides=(screened, plain.sides[1])), r"sides\[0\]\.screen"),
        (plain.but(shade=Shade(part="net")), "shade"),
        (
            plain.but(ends=(plain.ends[0].but(film=None, rigid=RigidSheet(part="net")),) * 2),
            r"ends\[0\]\.rigid",
        ),
    ):
        with pytest.raises(ValueError, match=rf"{label}: there is no part 'net'"):
            small_farm(changed)


def test_an_end_is_film_or_rigid_and_its_heights_go_up() -> None:
    end = tunnel().ends[0]
    with pytest.raises(ValueError, match="rigid: an end wall is closed with film or"):
        end.but(rigid=RigidSheet(part="rigid"))
    with pytest.raises(ValueError, match="rails_m: enter each height once, from the ground up"):
        end.but(rails_m=(2.0, 1.0))
    with pytest.raises(ValueError, match="seams_m: each height must be above 0"):
        end.but(seams_m=(0.0,))
    assert end.but(cuts=(Cut(),)).film == layers()


def test_screen_lets_through_what_is_entered_and_none_all() -> None:
    side = tunnel().sides[0]
    assert side.screen_flow_share == 1.0
    assert side.but(screen=Screen(part="net", flow_share=0.35)).screen_flow_share == 0.35


def test_limits_name_the_field() -> None:
    with pytest.raises(ValueError, match="runoff_share: share that runs off must be from"):
        Rain(runoff_share=1.2)
    with pytest.raises(ValueError, match="lap_m: the lap of two widths"):
        Shade(part="cloth", cloth_width_m=1.0, lap_m=1.0)
    with pytest.raises(ValueError, match="lap_m: the lap of two widths"):
        Screen(part="net", screen_width_m=0.5, lap_m=0.5)
