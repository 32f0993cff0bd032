"""Shade cloth: size, widths and ties by hand, and the way that takes less cloth."""

import math

import pytest

from hoopwright.farm import Shade, Tunnel
from hoopwright.outfit import ShadeLaid, told_shade
from hoopwright.quantity.working import explain, words
from outfit.fitted import fitted
from samples import side, tunnel


def _shade(made: Tunnel | None = None, **changes: object) -> ShadeLaid:
    shade = Shade(part="cloth", **changes)  # type: ignore[arg-type]
    laid = fitted((made or tunnel()).but(shade=shade)).shade
    assert laid is not None
    return laid


def _roof_m() -> float:
    """Return the arc of the small tunnel over the outside of its tube, from hip to hip.

    Rise 2.2 m over 8 m: R = (16 + 4.84) / 4.4 m, half angle asin(4 / R) as the arc is flatter than
    a half circle; half a tube farther out, and from there down the upright leg nothing more, as
    the hip board is at the shoulder; the kink there is rounded by half the tube.
    """
    radius_m = (16 + 2.2**2) / 4.4
    half_rad = math.asin(4 / radius_m)
    kink_rad = math.pi / 2 - half_rad
    return 2 * (half_rad * (radius_m + 0.024) + kink_rad * 0.024)


def test_size_is_roof_and_hanging_edges() -> None:
    laid = _shade(hang_m=0.2)
    assert laid.across_m == pytest.approx(_roof_m() + 0.4, abs=1e-6)
    assert laid.along_m == pytest.approx(24.4)
    assert laid.area_m2 == pytest.approx(laid.across_m * laid.along_m)
    assert (laid.floor_share, laid.shade_share) == (1.0, 0.3)


def test_sides_are_covered_down_to_the_shut_bar_or_the_baseboard() -> None:
    sides = (side("West side"), side("East side", kind="fixed"))
    roof, whole = (_shade(tunnel(sides=sides), over=over) for over in ("roof", "roof_and_sides"))
    # The hip is 1.5 m up, the shut bar 0.25 m, the baseboard 0.3 m, on upright legs.
    assert whole.across_m - roof.across_m == pytest.approx(1.25 + 1.2)


def test_stretch_from_bow_to_bow() -> None:
    laid = _shade(from_bow=3, to_bow=11, hang_m=0.0)
    assert (laid.from_m, laid.to_m, laid.along_m) == (3.0, 15.0, 12.0)
    assert laid.floor_share == pytest.approx(0.5)


def test_widths_lie_the_way_that_takes_less_cloth() -> None:
    # Across 9.9 m, along 24.3 m, widths of 3 m that lap 0.1 m: along the tunnel
    # (9.9 - 0.1) / 2.9 = 3.4, so 4 of 24.3 m = 97.2 m; across it (24.3 - 0.1) / 2.9 = 8.3, so 9 of
    # 9.9 m = 89 m.
    laid = _shade(cloth_width_m=3.0, lap_m=0.1)
    assert (laid.laid, laid.widths) == ("across", 9)
    assert laid.cut_m == laid.across_m
    assert laid.cloth_m == pytest.approx(9 * laid.across_m)
    one = _shade(cloth_width_m=12.0)
    assert (one.laid, one.widths, one.seam_ties) == ("along", 1, 0)
    assert one.cloth_m == one.along_m


def test_cloth_covers_what_it_has_to_with_its_laps() -> None:
    for width_m in (0.8, 1.5, 3.6576, 5.0):
        laid = _shade(cloth_width_m=width_m, lap_m=0.2)
        over_m = laid.across_m if laid.laid == "along" else laid.along_m
        covered_m = laid.widths * width_m - (laid.widths - 1) * 0.2
        assert covered_m >= over_m > covered_m - (width_m - 0.2)


def test_ties_around_the_edge_and_along_the_laps() -> None:
    laid = _shade(cloth_width_m=3.0, lap_m=0.1, tie_step_m=0.6)
    # Along 24.3 / 0.6 = 40.5, so 41; across 9.9 / 0.6 = 16.5, so 17; eight laps of 9.9 m.
    assert math.ceil(laid.across_m / 0.6) == 17
    assert laid.edge_ties == 2 * (41 + 17)
    assert laid.hooks == 2 * 41
    assert laid.seam_ties == 8 * 17


def test_every_number_says_how_it_was_got() -> None:
    laid = _shade(over="roof_and_sides")
    told = {w.figure for w in laid.workings}
    assert told == set(ShadeLaid.__dataclass_fields__) - {"part", "laid", "workings"}
    assert all("Source: " in explain(w, "metric") for w in laid.workings)
    said = words(told_shade(laid), "imperial")
    # Purdue University, Vegetable Crops Hotline: 30 % is usual; 119 to 109 degrees in one test.
    for published in ("30% is usual", "119\u00a0°F", "109\u00a0°F", "scratches the film"):
        assert published.replace("\u00a0", "") in said.replace("\u00a0", "").replace(" °", "°")
