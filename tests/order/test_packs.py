from decimal import Decimal

import pytest

from hoopwright.farm import Catalogue, Part
from hoopwright.order import Order, place_order
from hoopwright.order.amounts import whole_packs
from hoopwright.order.order import Line
from hoopwright.quantity.working import Working, phrase, words
from hoopwright.takeoff import Need
from order.rolls_checked import film_of, sheet
from samples import small_catalogue


def part(key: str, price: str, **changes: object) -> Part:
    plain = Part(
        key=key,
        group="Fixing",
        name=key.replace("_", " "),
        counted_in="count",
        holds=1.0,
        sold_as="piece",
        price=Decimal(price),
    )
    return plain.but(**changes)


def catalogue(*parts: Part) -> Catalogue:
    plain = small_catalogue()
    film = film_of((9.0, 50.0, "300.25"), (4.0, 50.0, "140.10"))
    return plain.but(films=(film,), parts=(*plain.parts, *parts))


def need(key: str, quantity: float, where: str = "hip", mark: str = "side/0/hip") -> Need:
    return Need(
        part=key,
        quantity=quantity,
        where=phrase(where),
        marks=(mark,),
        working=Working("quantity", "As entered for a test."),
    )


def order(*needs: Need, parts: tuple[Part, ...] = ()) -> Order:
    return place_order((("T1", needs),), (), catalogue(*parts))


def only_line(*needs: Need, parts: tuple[Part, ...]) -> Line:
    (line,) = order(*needs, parts=parts).lines
    return line


def test_runs_of_one_part_are_added_up_before_they_are_divided_by_the_stick() -> None:
    # Worked by hand: 3 x 2.2 m = 6.6 m of sticks of 2.4 m: 2.75, so 3 sticks, 0.6 m left;
    # run by run it would be one stick each as well, but 4 x 2.2 = 8.8 m still take only 4.
    channel = part("channel", "9.60", counted_in="m", holds=2.4, sold_as="stick")
    line = only_line(*(need("channel", 2.2),) * 3, parts=(channel,))
    assert (line.packs, line.total) == (3, Decimal("28.80"))
    assert line.needed == pytest.approx(6.6)
    assert line.left_over == pytest.approx(0.6)
    assert only_line(*(need("channel", 2.2),) * 4, parts=(channel,)).packs == 4


def test_spares_of_pieces_are_whole_and_come_before_the_packs() -> None:
    # Worked by hand: 97 screws and 5 % = 4.85, so 5 spares: 102 screws take two boxes of 100.
    screw = part("screw", "16.50", holds=100.0, sold_as="box", spare_share=0.05)
    line = only_line(need("screw", 97.0), parts=(screw,))
    assert (line.needed, line.spares, line.packs, line.left_over) == (97.0, 5.0, 2, 98.0)
    assert line.total == Decimal("33.00")


def test_spares_of_a_run_are_a_length() -> None:
    wire = part("wire", "2.35", counted_in="m", holds=2.0, spare_share=0.05)
    line = only_line(need("wire", 39.0), parts=(wire,))
    # 39 + 1.95 = 40.95 m of wire of 2 m: 20.475, so 21.
    assert (line.spares, line.packs) == (pytest.approx(1.95), 21)


@pytest.mark.parametrize(
    ("amount", "holds", "packs"),
    [
        (0.0, 10.0, 0),
        (10.0, 10.0, 1),
        (10.000001, 10.0, 2),
        # Seven sticks of 0.1 m added up in binary are a little over 0.7 m.
        (sum([0.1] * 7), 0.1, 7),
        # 32.004 / 6.4008 is 5 on paper, five sticks of 21 ft.
        (5 * 6.4008, 6.4008, 5),
        (1.1, 0.1, 11),
    ],
)
def test_whole_packs(amount: float, holds: float, packs: int) -> None:
    assert whole_packs(amount, holds) == packs


@pytest.mark.parametrize(("amount", "holds"), [(-1.0, 2.0), (1.0, 0.0)])
def test_packs_of_nothing_are_a_broken_promise(amount: float, holds: float) -> None:
    with pytest.raises(ValueError, match="amount must be zero or more and holds above zero"):
        whole_packs(amount, holds)


def test_line_is_rounded_once_half_up() -> None:
    # 3 x 48.505 = 145.515, half a cent up: 145.52. Rounding the price first would give 145.53.
    piece = part("piece", "48.505")
    assert only_line(need("piece", 3.0), parts=(piece,)).total == Decimal("145.52")


def test_part_that_the_catalogue_lacks_is_named_and_not_on_a_line() -> None:
    placed = order(need("eye_wood", 4.0), need("eye_wood", 2.0), need("crank", 1.0))
    assert placed.missing == ("eye_wood",)
    assert [line.key for line in placed.lines] == ["crank"]
    assert placed.goods == Decimal("10.00")


def test_film_comes_first_then_groups_and_parts_as_the_catalogue_lists_them() -> None:
    later = (part("b", "1", group="Later"), part("late_crank", "1", group="Curtains"))
    keys = ("b", "late_crank", "crank", "bar_stick")
    placed = place_order(
        (("T1", tuple(need(key, 1.0) for key in keys)),),
        (("T1", (sheet("roof", 8.0, 40.0),)),),
        catalogue(*later),
    )
    assert [line.key for line in placed.lines] == [
        "film/clear/9.0/50.0",
        "bar_stick",
        "crank",
        "late_crank",
        "b",
    ]


def test_equal_rolls_make_one_line_that_says_the_size() -> None:
    pieces = (sheet("a", 8.0, 40.0), sheet("b", 8.0, 40.0), sheet("c", 3.5, 45.0))
    placed = place_order((), (("T1", pieces),), catalogue())
    wide, narrow = placed.lines
    assert (wide.packs, wide.price, wide.total) == (2, Decimal("300.25"), Decimal("600.50"))
    assert (narrow.packs, narrow.total) == (1, Decimal("140.10"))
    assert (wide.group, wide.sold_as, wide.counted_in, wide.left_over) == (
        "Film",
        "roll",
        "count",
        0,
    )
    assert [words(where, "metric") for where in wide.where] == [
        "roll 9.000 m wide, 50.000 m long",
        "sheet a",
        "sheet b",
    ]
    assert wide.marks == ("a", "b")
    assert placed.goods == Decimal("740.60")


def test_waste_is_the_share_of_the_bought_film_in_no_sheet() -> None:
    # 8 x 40 = 320 m2 of a roll of 9 x 50 = 450 m2: 130 / 450.
    placed = place_order((), (("T1", (sheet("a", 8.0, 40.0),)),), catalogue())
    assert (placed.film_bought_m2, placed.film_used_m2) == (450.0, 320.0)
    assert placed.waste_share == pytest.approx(130 / 450)


def test_order_of_nothing_costs_nothing() -> None:
    placed = order()
    assert (placed.lines, placed.rolls, placed.goods) == ((), (), Decimal("0.00"))
    assert placed.waste_share == 0.0


def test_tunnels_share_packs_and_rolls() -> None:
    box = part("screw", "16.50", holds=100.0, sold_as="box")
    needs = (need("screw", 40.0),)
    pieces = (sheet("roof", 8.0, 25.0),)
    both = place_order(
        (("T1", needs), ("T2", needs)), (("T1", pieces), ("T2", pieces)), catalogue(box)
    )
    film, screws = both.lines
    assert (screws.needed, screws.packs) == (80.0, 1)
    assert film.packs == 1
    assert [(cut.tunnel, cut.along_m) for cut in both.rolls[0].cuts] == [("T1", 0.0), ("T2", 25.0)]
    assert [words(where, "metric") for where in screws.where] == ["T1: hip", "T2: hip"]
    assert [words(where, "metric") for where in film.where[1:]] == [
        "T1: sheet roof",
        "T2: sheet roof",
    ]


def test_places_and_marks_are_named_once() -> None:
    screw = part("screw", "1")
    line = only_line(
        need("screw", 2.0), need("screw", 3.0), need("screw", 1.0, "base", "end/0"), parts=(screw,)
    )
    assert [words(where, "metric") for where in line.where] == ["hip", "base"]
    assert line.marks == ("side/0/hip", "end/0")


def test_name_with_braces_is_shown_as_typed() -> None:
    placed = place_order(
        (("{T1}", (need("crank", 1.0),)), ("T2", (need("crank", 1.0),))), (), catalogue()
    )
    assert words(placed.lines[0].where[0], "metric") == "{T1}: hip"


def test_invented_prices_are_marked_until_they_are_entered() -> None:
    typed = part("typed", "3", origin="entered")
    placed = order(need("typed", 1.0), need("crank", 1.0), parts=(typed,))
    assert {line.key: line.invented for line in placed.lines} == {"typed": False, "crank": True}
    by_key = {line.key: line for line in placed.lines}
    assert by_key["typed"].working("price").source == "the user's entry"
    assert by_key["crank"].working("price").source == "invented demo price"


def test_every_number_of_order_and_lines_is_explained() -> None:
    placed = place_order(
        (("T1", (need("crank", 1.0),)),), (("T1", (sheet("roof", 8.0, 40.0),)),), catalogue()
    )
    for figure in ("film_bought_m2", "film_used_m2", "waste_share", "goods"):
        assert placed.working(figure).rule
    for line in placed.lines:
        for figure in ("needed", "spares", "holds", "packs", "left_over", "price", "total"):
            assert line.working(figure).source
