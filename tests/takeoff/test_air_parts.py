import math

import pytest

from hoopwright.takeoff.air_parts import count_air, count_tapes
from samples import double_tunnel, tunnel
from takeoff.counted import count, places, site, total


def test_single_layer_takes_no_air_and_no_sealing() -> None:
    needs = count(tunnel())
    for key in ("blower", "air_inlet", "jumper_hose", "jumper_flange", "hose_clamp"):
        assert total(needs, key) == 0
    assert total(needs, "seal_element") == 0


def test_blower_takes_one_inlet_and_one_hose_with_a_flange_and_two_clamps() -> None:
    needs = tuple(count_air(site(tunnel(roof_layers=2))))
    assert [(n.part, n.quantity, n.marks) for n in needs] == [
        ("blower", 1.0, ("air/blower",)),
        ("air_inlet", 1.0, ("air/blower",)),
        ("jumper_hose", 0.9, ("air/blower",)),
        ("jumper_flange", 1.0, ("air/blower",)),
        ("hose_clamp", 2.0, ("air/blower",)),
    ]


def test_blower_is_counted_only_when_one_is_chosen() -> None:
    plain = tunnel(roof_layers=2)
    needs = count(plain.but(air=plain.air.but(blower=None)))
    assert total(needs, "blower") == total(needs, "air_inlet") == 0


def test_each_jumper_takes_a_hose_two_flanges_and_two_clamps() -> None:
    made = site(double_tunnel())
    needs = tuple(count_air(made))
    jumpers = made.inflation.jumpers
    assert len(jumpers) >= 4
    for jumper in jumpers:
        assert total(needs, "jumper_hose", jumper.mark) == 0.9
        assert total(needs, "jumper_flange", jumper.mark) == 2
        assert total(needs, "hose_clamp", jumper.mark) == 2
    assert len(places(needs, "jumper_hose")) == len(jumpers) + 1


def test_hoses_sold_as_kits_are_counted_by_the_piece() -> None:
    whole = site(tunnel()).catalogue
    kits = tuple(
        p.but(counted_in="count", holds=1.0) if p.key == "jumper_hose" else p for p in whole.parts
    )
    needs = tuple(count_air(site(tunnel(roof_layers=2), catalogue=whole.but(parts=kits))))
    assert total(needs, "jumper_hose") == 1


def test_tape_for_bows_and_for_repairs() -> None:
    # 17 bows at 0.9 m; 0.05 m for each square metre of film.
    made = site(tunnel())
    needs = tuple(count_tapes(made))
    assert total(needs, "bow_tape") == pytest.approx(15.3)
    assert total(needs, "repair_tape") == pytest.approx(made.cover.film_area_m2 / 20)


def test_sealer_takes_one_element_for_each_150_m_of_seal() -> None:
    made = site(double_tunnel())
    elements = total(tuple(count_tapes(made)), "seal_element")
    assert made.inflation.seal_m > 0
    assert elements == math.ceil(made.inflation.seal_m / 150)
