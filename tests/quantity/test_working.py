"""Workings that wait to be asked for, and sentences in the reader's units."""

from dataclasses import dataclass

from hoopwright.quantity.working import (
    Explained,
    LaterWorkings,
    Term,
    Working,
    explain,
    phrase,
    words,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Doubled(Explained):
    length_m: float


def test_workings_are_written_once_and_only_when_asked_for() -> None:
    written = []

    def write() -> tuple[Working, ...]:
        written.append("now")
        return (Working("length_m", "Twice.", (Term("one", 1.5, "m"),)),)

    result = Doubled(length_m=3.0, workings=LaterWorkings(write))
    assert result == Doubled(length_m=3.0)
    assert written == []
    told = explain(result.working("length_m"), "metric")
    assert told.startswith("Twice.\nFrom: one 1.500 m")
    assert len(result.workings) == 1
    assert [w.figure for w in result.workings] == [result.workings[0].figure]
    assert written == ["now"]


def test_a_unit_that_ends_in_a_stop_takes_no_second_one() -> None:
    told = phrase("It stands at {high}. Wanted: {low}.", high=(60.0, "Pa"), low=(50.0, "Pa"))
    assert words(told, "imperial") == "It stands at 0.241 in w.c. Wanted: 0.201 in w.c."
    assert words(told, "metric") == "It stands at 60.0 Pa. Wanted: 50.0 Pa."
