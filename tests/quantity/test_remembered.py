"""Tests of what is remembered by the identity of its inputs."""

from hoopwright.quantity.remembered import Remembered

Lengths = list[float]


class Totals:
    """Adds lengths up and keeps a note of what was asked."""

    def __init__(self, limit: int = 10) -> None:
        self.asked: list[Lengths] = []
        self.of = Remembered(self._add_up, limit)

    def _add_up(self, *lengths_m: Lengths) -> Lengths:
        self.asked.extend(lengths_m)
        return [sum(map(sum, lengths_m))]


def test_same_objects_are_computed_once() -> None:
    totals, hip, seam = Totals(), [1.5, 2.5], [3.5]
    found = totals.of(hip, seam)
    assert found == [7.5]
    assert totals.of(hip, seam) is found
    assert totals.asked == [hip, seam]


def test_equal_but_other_objects_are_computed_again() -> None:
    totals = Totals()
    assert totals.of([1.5, 2.5]) == totals.of([1.5, 2.5])
    assert totals.asked == [[1.5, 2.5], [1.5, 2.5]]


def test_the_one_unused_longest_goes_first() -> None:
    totals, hip, seam, vent = Totals(limit=2), [1.0], [2.0], [3.0]
    for lengths_m in (hip, seam, hip, vent, hip, seam):
        totals.of(lengths_m)
    assert totals.asked == [hip, seam, vent, seam]
