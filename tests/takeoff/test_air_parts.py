import pytest

from hoopwright.farm import Catalogue, Hose, PlacedJumper
from hoopwright.takeoff.air_parts import count_air, count_tapes
from samples import double_tunnel, tunnel
from takeoff.counted import count, places, site, total, whole_catalogue


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
        ("jumper_hose", 1.5, ("air/blower",)),
        ("jumper_flange", 1.0, ("air/blower",)),
        ("hose_clamp", 2.0, ("air/blower",)),
    ]


def test_blower_is_counted_only_when_one_is_chosen() -> None:
    plain = tunnel(roof_layers=2)
    needs = count(plain.but(air=plain.air.but(blower=None)))
    assert total(needs, "blower") == total(needs, "air_inlet") == 0


def test_inlet_is_counted_only_for_air_from_outdoors() -> None:
    plain = tunnel(roof_layers=2)
    needs = count(plain.but(air=plain.air.but(outside_air=False)))
    assert (total(needs, "blower"), total(needs, "air_inlet")) == (1, 0)


def test_blower_is_bought_by_its_part() -> None:
    made = whole_catalogue()
    large = made.blowers[0].but(key="large", part="blower_90w")
    plain = tunnel(roof_layers=2)
    chosen = plain.but(air=plain.air.but(blower="large"))
    needs = count(chosen, catalogue=made.but(blowers=(*made.blowers, large)))
    assert (total(needs, "blower"), total(needs, "blower_90w")) == (0, 1)


def test_each_jumper_takes_a_hose_two_flanges_and_two_clamps() -> None:
    made = site(double_tunnel())
    needs = tuple(count_air(made))
    jumpers = made.inflation.jumpers
    assert len(jumpers) == 4
    for jumper in jumpers:
        assert total(needs, "jumper_hose", jumper.mark) == 0.9
        assert total(needs, "jumper_flange", jumper.mark) == 2
        assert total(needs, "hose_clamp", jumper.mark) == 2
    assert len(places(needs, "jumper_hose")) == len(jumpers) + 1


def _with_hoses(*hoses: tuple[str, float, str]) -> Catalogue:
    """Return the parts with hoses of these keys, bores and parts."""
    return whole_catalogue().but(
        hoses=tuple(
            Hose(key=key, name=key, bore_m=bore_m, roughness_m=0.0005, part=part)
            for key, bore_m, part in hoses
        )
    )


def test_hoses_are_bought_by_their_parts_and_lengths() -> None:
    # The widest hose feeds the roof, the first one joins the four curtains: 2 m and 4 x 1.2 m.
    double = double_tunnel()
    filled = double.but(air=double.air.but(feed_hose_m=2.0, jumper_hose_m=1.2))
    stock = _with_hoses(("thin", 0.0508, "jumper_hose"), ("wide", 0.0762, "hose_3in"))
    needs = tuple(count_air(site(filled, catalogue=stock)))
    assert total(needs, "hose_3in") == total(needs, "hose_3in", "air/blower") == 2.0
    assert total(needs, "jumper_hose") == pytest.approx(4.8)


def test_chosen_hoses_go_before_the_plain_choice() -> None:
    double = double_tunnel()
    stock = _with_hoses(("thin", 0.0508, "jumper_hose"), ("wide", 0.0762, "hose_3in"))
    swapped = double.but(air=double.air.but(feed_hose="thin", jumper_hose="wide"))
    needs = tuple(count_air(site(swapped, catalogue=stock)))
    assert total(needs, "jumper_hose") == 1.5
    assert total(needs, "hose_3in") == pytest.approx(4 * 0.9)


def test_without_a_list_of_hoses_they_are_counted_all_the_same() -> None:
    needs = tuple(count_air(site(double_tunnel(), catalogue=_with_hoses())))
    assert total(needs, "jumper_hose") == pytest.approx(1.5 + 4 * 0.9)


def test_hose_placed_by_hand_keeps_its_number() -> None:
    # The first one finds no cross seam and is not bought.
    double = double_tunnel()
    placed = (
        PlacedJumper(surface="roof", at_m=6.0),
        PlacedJumper(surface="first_side", at_m=5.0),
    )
    needs = tuple(count_air(site(double.but(air=double.air.but(jumpers=placed)))))
    assert places(needs, "jumper_hose") == [
        ("inflation blower", 1.5),
        ("jumper 2 at 5.000 m", 0.9),
    ]


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
    # Four curtains of two layers, sealed twice all round, more than 150 m and less than 300 m.
    made = site(double_tunnel())
    assert 150 < made.inflation.seal_m < 300
    assert total(tuple(count_tapes(made)), "seal_element") == 2
