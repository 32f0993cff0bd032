"""The sentences about cells under pressure, and the published figures in them."""

from hoopwright.pressure.held_workings import told_state, told_window
from hoopwright.quantity.working import words
from inflated import filled
from samples import tunnel


# The conventional inch of water is 249.0889 Pa (NIST Special Publication 811, appendix B): 40 and
# 60 Pa are 0.1606 and 0.2409 in, 50 and 75 Pa are 0.2007 and 0.3011 in.
def test_both_bands_of_pressure_are_told_in_inches_of_water() -> None:
    text = words(told_window(filled().held()), "imperial")
    for inches in ("0.161 in", "0.241 in", "0.201 in", "0.301 in"):
        assert inches in text
    assert "no published source" in text


def test_how_the_cells_stand_is_told_for_every_state() -> None:
    made = filled(low_pa=20.0, high_pa=120.0)
    assert "all in range" in words(told_state(made.held(), made.tunnel.air), "metric")
    high = filled(low_pa=20.0, high_pa=30.0)
    assert "5 of 5 not in range" in words(told_state(high.held(), high.tunnel.air), "metric")
    still = filled(blower=None)
    assert "No blower runs" in words(told_state(still.held(), still.tunnel.air), "metric")
    single = filled(tunnel())
    assert "No part" in words(told_state(single.held(), single.tunnel.air), "metric")
