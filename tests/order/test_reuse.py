from decimal import Decimal

from hoopwright.cover.cover import Piece
from hoopwright.order import Order, place_order
from hoopwright.quantity.working import Working, explain, phrase, words
from hoopwright.takeoff import KeptSheet, Need
from order.rolls_checked import sheet
from order.test_packs import catalogue, part

CHANNEL = part("channel", "9.60", counted_in="m", holds=2.4, sold_as="stick", spare_share=0.05)
SCREW = part("screw", "16.50", holds=100.0, sold_as="box")


def need(key: str, quantity: float, kept: float, where: str = "hip") -> Need:
    told = Working("kept", "Kept by a line", ()) if kept else None
    return Need(
        part=key,
        quantity=quantity,
        where=phrase(where),
        marks=(f"side/0/{where}",),
        working=Working("quantity", "As entered for a test."),
        kept=kept,
        state="keep" if kept else "replace",
        kept_working=told,
    )


def stays(piece: Piece) -> KeptSheet:
    told = Working("repair_share", "As entered for a test.")
    return KeptSheet(piece=piece, state="keep", repair_share=0.0, tape_m=0.0, workings=(told,))


def order(*needs: Need) -> Order:
    return place_order((("T1", needs),), (), catalogue(CHANNEL, SCREW))


def test_only_what_does_not_stay_is_bought() -> None:
    # Worked by hand: 24 + 12 = 36 m needed, 15 m stay: 21 m and 5 % = 22.05 m, 9.19 sticks of
    # 2.4 m, so 10. All new: 36 m and 5 % = 37.8 m, 15.75, so 16 sticks; six more at 9.60.
    placed = order(need("channel", 24.0, 15.0), need("channel", 12.0, 0.0, "baseboard"))
    (line,) = placed.lines
    assert (line.needed, line.kept, line.packs) == (36.0, 15.0, 10)
    assert round(line.spares, 9) == 1.05
    assert round(line.left_over, 9) == 1.95
    (stay,) = placed.reused
    assert (stay.key, stay.needed, stay.kept, stay.state) == ("channel", 36.0, 15.0, "keep")
    assert [words(w, "metric") for w in stay.where] == ["hip"]
    assert stay.marks == ("side/0/hip",)
    assert (stay.spared, stay.price) == (6.0, Decimal("9.60"))
    assert stay.saved == placed.saved == Decimal("57.60")
    assert placed.goods == Decimal("96.00")


def test_part_that_stays_whole_makes_no_order_line() -> None:
    placed = order(need("channel", 24.0, 24.0), need("screw", 41.0, 0.0))
    assert [line.key for line in placed.lines] == ["screw"]
    assert [line.key for line in placed.reused] == ["channel"]
    # 24 m and 5 % = 25.2 m, 10.5 sticks, so 11.
    assert placed.saved == Decimal("105.60")


def test_places_of_an_order_line_are_those_that_something_is_bought_for() -> None:
    placed = order(need("channel", 24.0, 24.0), need("channel", 12.0, 0.0, "baseboard"))
    assert placed.lines[0].marks == ("side/0/baseboard",)
    assert placed.reused[0].marks == ("side/0/hip",)


def test_what_fits_in_a_pack_that_is_bought_anyway_saves_nothing() -> None:
    # 90 screws or 60: one box of a hundred either way.
    placed = order(need("screw", 90.0, 30.0))
    assert (placed.lines[0].packs, placed.saved) == (1, Decimal("0.00"))


def test_kept_sheet_is_on_no_roll_and_is_worth_its_share_of_one() -> None:
    # Rolls of 9 x 50 m at 300.25 and 4 x 50 m at 140.10. Sheet b of 4 x 25 m is half of the narrow
    # one: 70.05 to the cent.
    laid = sheet("a", 8.0, 40.0), sheet("b", 4.0, 25.0)
    placed = place_order(
        (), (("T1", laid[:1]),), catalogue(), (("T1", tuple(stays(p) for p in laid[1:])),)
    )
    assert [cut.piece for roll in placed.rolls for cut in roll.cuts] == ["a"]
    (stay,) = placed.reused
    assert (stay.group, stay.key, stay.marks) == ("Film", "film/clear", ("b",))
    assert (stay.spared, stay.saved) == (0.5, Decimal("70.05"))
    assert [words(w, "metric") for w in stay.where] == ["sheet b"]


def test_kept_sheet_that_no_roll_holds_is_not_priced() -> None:
    placed = place_order((), (), catalogue(), (("T1", (stays(sheet("wide", 20.0, 10.0)),)),))
    assert (placed.saved, placed.unplaced) == (Decimal("0.00"), ())


def test_with_several_tunnels_the_place_names_the_tunnel() -> None:
    kept = (stays(sheet("b", 4.0, 25.0)),)
    needs = (need("channel", 24.0, 24.0),)
    placed = place_order(
        (("T1", needs), ("T2", needs)), (), catalogue(CHANNEL), (("T1", kept), ("T2", kept))
    )
    assert [words(w, "metric") for line in placed.reused for w in line.where] == [
        "T1: sheet b",
        "T2: sheet b",
        "T1: hip",
        "T2: hip",
    ]


def test_every_number_of_a_line_that_stays_says_how_it_was_got() -> None:
    kept = (("T1", (stays(sheet("b", 4.0, 25.0)),)),)
    needs = (("T1", (need("channel", 24.0, 9.0),)),)
    placed = place_order(needs, (), catalogue(CHANNEL), kept)
    for line in placed.reused:
        for figure in ("needed", "kept", "spared", "price", "saved"):
            assert explain(line.working(figure), "metric")
    assert explain(placed.working("saved"), "metric")
    assert explain(placed.lines[0].working("kept"), "metric")
