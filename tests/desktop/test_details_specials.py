"""Values of forms that stand in several places: what is read is what was written."""

from typing import get_args

import pytest

from files.varied import varied_catalogue
from hoopwright.desktop.details_items import SpecialKind
from hoopwright.desktop.details_specials import SPECIALS
from hoopwright.farm import MeasuredBow
from samples import tunnel


def test_every_kind_of_special_line_is_known() -> None:
    assert set(SPECIALS) == set(get_args(SpecialKind))


@pytest.mark.parametrize(
    ("kind", "before", "after"),
    [
        ("shape", "round", "gothic"),
        ("shape", "round", "measured"),
        ("end_cover", "film", "open"),
        ("heated", False, True),
        ("rain", False, True),
        ("shade", False, True),
        ("screen", False, True),
    ],
)
def test_what_is_written_is_read_and_taken_back(
    kind: SpecialKind, before: object, after: object
) -> None:
    known, catalogue, plain = SPECIALS[kind], varied_catalogue(), tunnel()
    assert known.read(plain, 1) == before
    changed = known.change(plain, 1, after, catalogue)
    assert known.read(changed, 1) == after
    # Only the place that was named is changed.
    untouched = known.change(changed, 1, before, catalogue)
    assert known.read(untouched, 1) == before
    if kind in ("end_cover", "screen"):
        assert known.read(changed, 0) == before


def test_point_of_a_measured_bow_is_told_the_other_way() -> None:
    catalogue = varied_catalogue()
    measured = SPECIALS["shape"].change(tunnel(), 0, "measured", catalogue)
    taken = SPECIALS["taken"]
    assert taken.read(measured, 2) == "across_up"
    changed = taken.change(measured, 2, "two_tapes", catalogue)
    assert [taken.read(changed, n) for n in (1, 2, 3)] == ["across_up", "two_tapes", "across_up"]
    bows = (changed.frame.profile, measured.frame.profile)
    there, before = (bow.spots for bow in bows if isinstance(bow, MeasuredBow))
    for spot, spot_before in zip(there, before, strict=True):
        assert spot == pytest.approx(spot_before)


def test_positions_are_listed() -> None:
    spots = (0.0, 1.4, 3.0, 4.5)
    changed = SPECIALS["positions"].change(tunnel(), 0, spots, varied_catalogue())
    assert SPECIALS["positions"].read(changed, 0) == spots
