"""Blowers and hoses as entered: what their curve may be."""

import pytest

from hoopwright.farm import Blower, FanPoint, Hose


def blower(*points: tuple[float, float]) -> Blower:
    curve = tuple(FanPoint(flow_m3_s=q, pressure_pa=p) for q, p in points)
    return Blower(key="fan", name="fan", curve=curve, power_w=60.0, part="fan")


def test_two_points_make_a_line_and_three_a_parabola() -> None:
    assert len(blower((0.0, 150.0), (0.04, 0.0)).curve) == 2
    assert len(blower((0.0, 150.0), (0.02, 120.0), (0.045, 0.0)).curve) == 3


@pytest.mark.parametrize("points", [((0.0, 100.0),), ((0.0, 4.0),) * 4])
def test_too_few_and_too_many_points_are_refused(points: tuple[tuple[float, float], ...]) -> None:
    with pytest.raises(ValueError, match="two points for a straight line or three"):
        blower(*points)


def test_points_whose_parabola_rises_are_refused() -> None:
    # Newton's form: f01 = -100, f12 = -3900, bend -95 000 a unit; the slope at the start is
    # -100 + 95 000 * 0.02 = +1800.
    with pytest.raises(ValueError, match="parabola through these points rises"):
        blower((0.0, 100.0), (0.02, 98.0), (0.04, 20.0))


def test_roughness_that_fills_the_hose_is_refused() -> None:
    with pytest.raises(ValueError, match=r"roughness_m: .* small part of its bore"):
        Hose(key="hose", name="hose", bore_m=0.02, roughness_m=0.005, part="hose")


@pytest.mark.parametrize(
    "points",
    [
        ((0.0, 100.0), (0.04, 120.0)),
        ((0.0, 100.0), (0.04, 100.0)),
        ((0.04, 100.0), (0.0, 50.0)),
        ((0.0, 100.0), (0.02, 40.0), (0.03, 60.0)),
    ],
)
def test_a_curve_that_rises_is_refused(points: tuple[tuple[float, float], ...]) -> None:
    with pytest.raises(ValueError, match="curve: the pressure of a blower must fall"):
        blower(*points)
