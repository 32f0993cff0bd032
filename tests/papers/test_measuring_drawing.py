"""The drawing shows every number that stands at a box of the frame, inside its area."""

import pytest

from hoopwright.papers.form_page import BADGE_MM, Badge, Stroke, Text
from hoopwright.papers.measuring_drawing import HEIGHT_MM, WIDTH_MM, centred, frame_drawing


def badges() -> dict[int, tuple[float, float]]:
    return {s.number: s.centre for s in frame_drawing() if isinstance(s, Badge)}


def test_numbers_run_from_the_bow_to_the_end_bows() -> None:
    numbers = [s.number for s in frame_drawing() if isinstance(s, Badge)]
    assert sorted(numbers) == list(range(1, 20))


def test_no_number_hides_another() -> None:
    spots = list(badges().values())
    for n, (x, y) in enumerate(spots):
        for other_x, other_y in spots[n + 1 :]:
            assert (x - other_x) ** 2 + (y - other_y) ** 2 > (2 * BADGE_MM) ** 2


def test_sides_mirror_each_other() -> None:
    spots = badges()
    middles = {(spots[n][0] + spots[n + 3][0]) / 2 for n in (5, 6, 7)}
    assert max(middles) - min(middles) < 1e-9
    assert all(spots[n][1] == spots[n + 3][1] for n in (5, 6, 7))


def test_all_of_it_lies_in_its_area() -> None:
    for shape in frame_drawing():
        if isinstance(shape, Stroke):
            corners = shape.points
        elif isinstance(shape, Badge):
            x, y = shape.centre
            corners = ((x - BADGE_MM, y - BADGE_MM), (x + BADGE_MM, y + BADGE_MM))
        else:
            assert isinstance(shape, Text)
            corners = (
                (shape.left, shape.top),
                (shape.left + shape.width, shape.top + shape.height),
            )
        assert all(0 <= x <= WIDTH_MM and 0 <= y <= HEIGHT_MM for x, y in corners), shape


def test_drawing_stands_in_the_middle_of_wider_paper() -> None:
    (moved,) = centred((Badge(1, (95.0, 10.0)),), 196.0)
    assert moved.centre == pytest.approx((98.0, 10.0))
