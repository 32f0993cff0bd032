"""What cannot be entered is told in the reader's units, and in metric as text."""

import pytest

from hoopwright.farm import RoundBow, SideReading
from hoopwright.farm.entry_error import EntryError
from samples import tunnel


def test_numbers_take_the_units_of_the_reader() -> None:
    refusal = EntryError("span_m", "{span} is too wide for {name}", span=(3.048, "m"), name="a bow")
    assert refusal.told("imperial") == "10' 0\" is too wide for a bow"
    assert str(refusal) == "span_m: 3.048 m is too wide for a bow"


def test_limits_are_told_in_feet_where_feet_are_read() -> None:
    with pytest.raises(EntryError) as caught:
        RoundBow(span_m=0.3048, leg_height_m=1.5, peak_height_m=4.0)
    assert caught.value.field == "span_m"
    # By hand: 1 m is 3 ft 3.37 in, 60 m is 196 ft 10.2 in.
    assert caught.value.told("imperial") == (
        "span, tube centre to tube centre must be from 3' 3 3/8\" to 196' 10 1/4\", not 1' 0\""
    )


def test_thin_sizes_are_told_in_their_own_unit() -> None:
    boards = tunnel().frame.boards[0]
    with pytest.raises(EntryError, match=r"must be from 0\.0 mm to 500\.0 mm, not 600\.0 mm"):
        boards.but(stand_off_m=0.6)


@pytest.mark.parametrize("value", [float("nan"), "high"])
def test_what_is_no_number_is_quoted(value: object) -> None:
    with pytest.raises(EntryError, match=r"must be from .* not ('high'|nan)"):
        SideReading(hip_m=value)  # type: ignore[arg-type]
