"""A stock width that may be too narrow: found above 1 in 20, told with what makes it sure."""

from checks.looked import assert_told, found
from fit.fitted import BENT, bent_tunnel, stocked
from hoopwright.farm import Farm, PartState, Tunnel
from hoopwright.quantity.working import words
from samples import small_farm

CODE = "sheet.may_be_short"
# 19 of 22 bows, one like the other.
EVEN = {bow: BENT[1] + 0.0005 * bow for bow in range(1, 20)}


def farm_of(
    made: Tunnel, minus_share: float = 0.0, stocks_ft: tuple[float, ...] = (24, 34, 40)
) -> Farm:
    plain = small_farm(made)
    return plain.but(catalogue=plain.catalogue.but(films=stocked(minus_share, stocks_ft)))


def test_a_width_that_is_sure_is_not_found() -> None:
    assert not found(farm_of(bent_tunnel(EVEN)), CODE)
    # 5 bows read: 34 ft is 1 in some 190.
    assert not found(farm_of(bent_tunnel()), CODE)


def test_a_roll_that_may_be_narrower_makes_the_width_doubtful() -> None:
    # 34 ft less up to 4 % is 32.64 ft or more; with 5 % it is 32.3, and 32.67 ft are needed.
    findings = found(farm_of(bent_tunnel(), 0.05), CODE)
    assert_told(findings, "caution")
    mend = words(findings[0].mend, "imperial")
    assert mend.startswith("Take the stock 40")
    assert "read the girths of the other 17 bows" in mend
    assert "measure bow 22 again" in mend
    assert findings[0].where == "piece/roof-sheet/single/-/0"


def test_a_sheet_that_stays_needs_no_width() -> None:
    plain = bent_tunnel()
    kept = plain.but(condition=(PartState(family="Film", where="roof", state="keep"),))
    assert found(farm_of(plain, 0.05), CODE)
    assert not found(farm_of(kept, 0.05), CODE)
    # The outlier at bow 22 is told all the same, without a width to buy.
    (told,) = found(farm_of(kept, 0.05), "tape.outlier")
    assert words(told.mend, "imperial").endswith("the sheet is planned by that.")


def test_a_width_that_is_more_often_short_than_not_is_a_fault() -> None:
    # All bows read; the sheet is cut to the stock width, and every roll is narrower.
    every = dict.fromkeys(range(1, 23), BENT[22])
    findings = found(farm_of(bent_tunnel(every), 0.05, (24, 32 + 8 / 12)), CODE)
    assert_told(findings, "fault")
    mend = words(findings[0].mend, "imperial")
    assert mend == "Measure bow 1 again, the longest." or mend.startswith("Measure bow ")


def test_two_readings_of_many_bows_make_no_width_sure() -> None:
    findings = found(farm_of(bent_tunnel({1: BENT[1], 2: BENT[22]})), CODE)
    assert_told(findings, "caution")
    assert "2 of 22 bows were read" in words(findings[0].why, "imperial")


def test_without_spread_nothing_is_found() -> None:
    assert not found(farm_of(bent_tunnel({})), CODE)
    assert not found(farm_of(bent_tunnel({3: BENT[22]})), CODE)
