"""Lines of what stays of the old skin come and go."""

from hoopwright.farm import PartState
from hoopwright.farm.change_condition import add_state, remove_state
from samples import tunnel


def test_line_is_added_at_the_end_and_keeps_something() -> None:
    first = PartState(family="Curtains", state="repair")
    made = add_state(tunnel().but(condition=(first,)))
    assert made.condition == (first, PartState(family="Film", where="everywhere", state="keep"))


def test_one_line_is_taken_away() -> None:
    lines = tuple(PartState(family=family) for family in ("Film", "Curtains", "Air"))
    kept = remove_state(tunnel().but(condition=lines), 1).condition
    assert kept == (lines[0], lines[2])
