"""Sheets over the bows fitted to stock widths: the worked story, and what cannot be told."""

from decimal import Decimal

import pytest

from fit.fitted import BENT, bent_tunnel, fitted, stocked
from hoopwright.farm import BowReading, FilmRoll, Tape
from hoopwright.fit.shortness import Girths, chance_short
from hoopwright.quantity.units import FOOT_M, INCH_M


def test_the_bent_bow_needs_34_feet_and_would_need_them_if_read_again() -> None:
    (sheet,) = fitted(bent_tunnel()).sheets
    # 31 ft 2 in and twice 9 in are 32.67 ft; 34 ft leave 1.33 ft.
    assert sheet.cut_width_m / FOOT_M == pytest.approx(32 + 8 / 12)
    assert sheet.fixed_m / FOOT_M == pytest.approx(1.5)
    assert sheet.chosen_m == pytest.approx(34 * FOOT_M)
    margins = {round(w.width_m / FOOT_M): w.margin_m / FOOT_M for w in sheet.widths}
    assert margins[34] == pytest.approx(1 + 4 / 12)
    assert margins[32] == pytest.approx(-8 / 12)
    # Read again as 30 ft 10 in: 32.33 ft, still 34 ft.
    again = sheet.remeasured
    assert again is not None
    assert (again.bow, again.changes) == (22, False)
    assert again.to_m / FOOT_M == pytest.approx(30 + 10 / 12)
    assert again.cut_width_m / FOOT_M == pytest.approx(32 + 4 / 12)
    assert again.stock_width_m == pytest.approx(34 * FOOT_M)


def test_every_stock_width_is_there_once_and_the_chances_fall() -> None:
    (sheet,) = fitted(bent_tunnel(), stocked(0.02)).sheets
    assert [round(w.width_m / FOOT_M) for w in sheet.widths] == [24, 28, 32, 34, 36, 40, 42, 48]
    assert [w.chosen for w in sheet.widths].count(True) == 1
    chances = [w.chance for w in sheet.widths]
    assert chances == sorted(chances, reverse=True)
    # 32 ft leave 30 ft 6 in for a bow of 31 ft 2 in.
    assert chances[:3] == [1.0, 1.0, 1.0]
    chosen = next(w for w in sheet.widths if w.chosen)
    assert chosen.chance == sheet.chance
    girths = Girths(tuple(BENT.values()), 17, 0.006)
    assert sheet.chance == pytest.approx(
        chance_short(girths, 1.5 * FOOT_M, 34 * FOOT_M, 0.02), rel=1e-6
    )


def test_a_width_sold_in_short_rolls_alone_is_no_choice() -> None:
    # The sheet is 84 ft and two tails long; the 33 ft film is sold in rolls of 50 ft.
    short = FilmRoll(width_m=33 * FOOT_M, length_m=50 * FOOT_M, price=Decimal(100))
    films = tuple(film.but(rolls=(*film.rolls, short)) for film in stocked())
    (sheet,) = fitted(bent_tunnel(), films).sheets
    assert sheet.chosen_m == pytest.approx(34 * FOOT_M)
    assert 33 * FOOT_M not in [w.width_m for w in sheet.widths]
    # Of two sheets of 42 ft with a cross seam between them one roll each is long enough.
    plain = bent_tunnel()
    halved = plain.but(skin=plain.skin.but(cross_seams_m=(42 * FOOT_M,)))
    (sheet,) = fitted(halved, films).sheets
    assert sheet.chosen_m == pytest.approx(33 * FOOT_M)


def test_measuring_tolerance_widens_the_sheet_and_is_not_counted_twice() -> None:
    plain = bent_tunnel()
    allowances = plain.skin.allowances.but(measuring_tolerance_m=INCH_M)
    wider = plain.but(skin=plain.skin.but(allowances=allowances))
    (before,), (after,) = fitted(plain).sheets, fitted(wider).sheets
    assert after.cut_width_m == pytest.approx(before.cut_width_m + INCH_M)
    assert after.fixed_m == pytest.approx(before.fixed_m)
    assert after.chance == pytest.approx(before.chance)


def test_reading_again_can_change_the_stock() -> None:
    # 32.67 ft against a stock of 32.5 ft, which holds the 32.33 ft of the next longest bow.
    (sheet,) = fitted(bent_tunnel(), stocked(stocks_ft=(24, 32.5, 34))).sheets
    assert sheet.remeasured is not None
    assert sheet.remeasured.changes
    assert sheet.remeasured.stock_width_m == pytest.approx(32.5 * FOOT_M)


def test_two_layers_are_two_sheets_and_the_outer_bulges() -> None:
    outer, inner = fitted(bent_tunnel(layers=2)).sheets
    assert [outer.layer, inner.layer] == ["outer", "inner"]
    assert outer.fixed_m > inner.fixed_m
    assert outer.chance is not None
    assert inner.chance is not None
    assert outer.chance > inner.chance


def test_cross_seams_leave_one_sheet_with_all_marks() -> None:
    plain = bent_tunnel()
    seamed = plain.but(skin=plain.skin.but(cross_seams_m=(12 * FOOT_M,)))
    fit = fitted(seamed)
    (sheet,) = fit.sheets
    assert len(sheet.marks) == 2
    assert all(fit.of(mark) is sheet for mark in sheet.marks)
    assert fit.of("piece/curtain/single/0/0") is None


def test_no_girth_and_one_girth_tell_no_chance_but_still_a_stock() -> None:
    (none,) = fitted(bent_tunnel({})).sheets
    assert (none.untold, none.chance, none.over, none.remeasured) == ("no girth", None, None, None)
    assert none.chosen_m is not None
    (one,) = fitted(bent_tunnel({4: BENT[22]})).sheets
    assert (one.untold, one.chance, one.deviation_m) == ("one girth", None, None)
    assert one.remeasured is None
    assert [w.chance for w in one.widths] == [None] * len(one.widths)
    assert [w.margin_m for w in one.widths if w.chosen] == pytest.approx([(1 + 4 / 12) * FOOT_M])


def test_no_stock_wide_enough_is_said() -> None:
    (sheet,) = fitted(bent_tunnel(), stocked(stocks_ft=(24, 32.5))).sheets
    assert (sheet.chosen_m, sheet.chance, sheet.untold) == (None, None, "no stock")
    assert sheet.remeasured is not None
    assert sheet.remeasured.changes
    (narrow,) = fitted(bent_tunnel(), stocked(stocks_ft=(24, 28))).sheets
    assert narrow.remeasured is not None
    assert narrow.remeasured.stock_width_m is None


def test_one_sheet_rests_on_the_girths_from_baseboard_to_baseboard() -> None:
    plain = bent_tunnel()
    rows = tuple(BowReading(bow=bow, over_baseboards_m=m + 8 * FOOT_M) for bow, m in BENT.items())
    made = plain.but(frame=plain.frame.but(tape=Tape(bows=rows)))
    (sheet,) = fitted(made, stocked(stocks_ft=(40, 44, 50)), "one_sheet").sheets
    assert sheet.name == "Whole sheet"
    assert sheet.over == "baseboards"
    assert sheet.governing_m == pytest.approx(BENT[22] + 8 * FOOT_M)
    assert sheet.fixed_m == pytest.approx(sheet.cut_width_m - sheet.governing_m)
    assert sheet.fixed_m > 0


def test_a_roof_sheet_rests_on_baseboard_girths_where_no_others_were_read() -> None:
    plain = bent_tunnel()
    rows = tuple(BowReading(bow=bow, over_baseboards_m=m + 8 * FOOT_M) for bow, m in BENT.items())
    (sheet,) = fitted(plain.but(frame=plain.frame.but(tape=Tape(bows=rows)))).sheets
    (direct,) = fitted(plain).sheets
    assert sheet.over == "baseboards"
    # The spread is the same and the sides are taken off, so that the chance is that of the same
    # cut width over girths read from hip to hip.
    assert sheet.deviation_m == pytest.approx(direct.deviation_m)
    longest_m = BENT[22] + 8 * FOOT_M
    assert sheet.fixed_m == pytest.approx(sheet.cut_width_m - longest_m)
    assert sheet.fixed_m < 0
