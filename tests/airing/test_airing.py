"""A result of airing: the way from shut to open is worked when somebody reads it."""

from dataclasses import replace

from airing.aired import aired
from hoopwright.airing.airing import AiringStep


def test_way_from_shut_to_open_is_worked_when_it_is_read() -> None:
    steps: tuple[AiringStep, ...] = ((0.0, 0.0, 0.0), (1.0, 0.2, 3.0))
    asked: list[str] = []

    def made() -> tuple[AiringStep, ...]:
        asked.append("course")
        return steps

    airing = replace(aired(), course_made=made)
    assert airing.working("floor_share").figure == "floor_share"
    assert not asked
    assert airing.course == steps
    assert asked == ["course"]
