"""A first tunnel from five answers."""

import pytest

from hoopwright.farm import GothicBow, RoundBow, StraightRafters
from hoopwright.farm.begin import Answers, begin_farm, begin_tunnel, profile_of_shape
from samples import small_catalogue

FT = 0.3048


def answers(**changes: object) -> Answers:
    plain = Answers(name="T", shape="round", span_m=26 * FT, length_m=84 * FT, spacing_m=4 * FT)
    return plain.but(**changes)


@pytest.mark.parametrize("shape", ["round", "gothic", "rafters"])
@pytest.mark.parametrize("layers", [1, 2])
def test_five_answers_make_a_farm(shape: str, layers: int) -> None:
    farm = begin_farm("F", "imperial", small_catalogue(), answers(shape=shape, layers=layers))
    tunnel = farm.tunnels[0]
    # 84 ft at 4 ft is 21 bays, so 22 bows.
    assert tunnel.frame.bows.count == 22  # type: ignore[union-attr]
    assert tunnel.skin.roof.count == layers
    assert (tunnel.air.blower is not None) == (layers == 2)


def test_high_gothic_leaves_its_legs_without_a_kink() -> None:
    made = begin_tunnel(
        small_catalogue(), "metric", answers(shape="gothic", leg_height_m=1.5, peak_height_m=6.0)
    )
    assert isinstance(made.frame.profile, GothicBow)
    assert made.frame.profile.arc_radius_m is None


def test_spacing_longer_than_the_tunnel_is_refused() -> None:
    with pytest.raises(ValueError, match=r"spacing_m.*longer than the tunnel"):
        answers(spacing_m=5.0, length_m=4.0)


def test_peak_below_the_leg_is_refused_by_name() -> None:
    with pytest.raises(ValueError, match="peak_height_m"):
        begin_tunnel(small_catalogue(), "metric", answers(leg_height_m=3.0, peak_height_m=2.0))


def test_profile_of_each_shape_keeps_span_leg_and_peak() -> None:
    kinds = {"round": RoundBow, "gothic": GothicBow, "rafters": StraightRafters}
    for shape, kind in kinds.items():
        made = profile_of_shape(shape, 8.0, 1.5, 4.0)  # type: ignore[arg-type]
        assert type(made) is kind
        assert (made.span_m, made.leg_height_m, made.peak_height_m) == (8.0, 1.5, 4.0)
