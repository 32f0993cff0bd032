"""Figures of a drop-down curtain, worked again by hand from their workings."""

import pytest

from hanging import dropping, inputs_of
from hoopwright.curtain.cranking import work_curtain
from hoopwright.curtain.drop_workings import NO_BOUND, NO_TWIST

G_M_S2 = 9.80665


def test_energy_of_a_rod_follows_from_its_working() -> None:
    work = work_curtain(dropping())
    given = inputs_of(work, "energy_j")
    way_m = given["way of the rod"]
    carried_m = (
        given["film hanging from the rod when shut"] + given["film wrapped on the rod"] - way_m / 2
    )
    line_kg_m = given["bar with what grips the film"] + given["film, all layers"] * carried_m
    assert work.energy_j == pytest.approx(G_M_S2 * line_kg_m * given["length of the bar"] * way_m)


def test_lines_of_a_drop_down_curtain_follow_from_their_working() -> None:
    work = work_curtain(dropping())
    given = inputs_of(work, "lift_line_m")
    line_m = given["way of the rod"] + given["reach to the cable"] + 2 * given["knot"]
    run_m = given["way of the rod"] + given["down to the drum"] + given["turns left on the drum"]
    cable_m = given["length of the curtain"] + given["runs of cable from the drum"] * run_m
    assert work.lift_line_m == pytest.approx(given["lift lines"] * line_m + cable_m)


def test_trailing_that_is_not_worked_out_is_said_to_be_so() -> None:
    work = work_curtain(dropping())
    assert work.working("trailing_m").rule == NO_TWIST
    assert work.working("trailing_length_m").rule == NO_BOUND
