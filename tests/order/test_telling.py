from hoopwright.order import place_order
from hoopwright.order.telling import tell_reuse
from hoopwright.quantity.working import words
from order.rolls_checked import sheet
from order.test_packs import catalogue
from order.test_reuse import CHANNEL, need, order, stays


def test_nothing_is_told_where_all_is_new() -> None:
    assert tell_reuse(order(need("channel", 24.0, 0.0)), "USD") == ()


def test_what_stays_is_told_line_by_line_and_in_one_sum() -> None:
    # The sums were worked by hand in the tests of re-use: half of a roll at 140.10, and 16 sticks
    # against 10 at 9.60.
    needs = (need("channel", 24.0, 15.0), need("channel", 12.0, 0.0))
    kept = (("T1", (stays(sheet("b", 4.0, 25.0)),)),)
    placed = place_order((("T1", needs),), (), catalogue(CHANNEL), kept)
    assert [words(told, "metric") for told in tell_reuse(placed, "USD")] == [
        "sheet b: clear film stays as it is; $70.05 new.",
        "channel: 15.000 m of 36.000 m stays as it is; $57.60 new.",
        "All that stays would cost $127.65 new, before tax.",
    ]


def test_tunnel_is_named_where_there_are_several() -> None:
    kept = (stays(sheet("b", 4.0, 25.0)),)
    placed = place_order((), (), catalogue(), (("T1", kept), ("T2", kept)))
    told = [words(one, "imperial") for one in tell_reuse(placed, "USD")]
    assert told[1].startswith("T2: sheet b: ")
