import pytest

from hoopwright.quantity.tokens import SI_OF, find_token


@pytest.mark.parametrize(
    ("typed", "measures"),
    [
        ("lb", "mass"),
        ("LBS", "mass"),
        ("lbs.", "mass"),
        ("Kg", "mass"),
        ("N\u00b7m", "torque or energy"),
        ("N m", "torque or energy"),
        ("in-lb", "torque or energy"),
        ("ft\u00b7lbf", "torque or energy"),
        ("in. w.c.", "pressure"),
        ("in H2O", "pressure"),
        ("cfm", "flow"),
        ("CFM", "flow"),
        ("m\u00b3/h", "flow"),
        ("sq ft", "area"),
        ("ft^2", "area"),
        ("\u00b0", "angle"),
        ("%", "share"),
        ("mil", "length"),
    ],
)
def test_tokens_of_the_trade_are_known_however_spelled(typed, measures):
    found = find_token(typed, measures)
    assert found is not None
    assert found.measures == measures


@pytest.mark.parametrize("typed", ["M", "MN", "PA", "mW", "stone", "", "H", "kg/kg"])
def test_other_tokens_are_left_to_the_unit_library(typed):
    assert find_token(typed, "mass") is None


@pytest.mark.parametrize(
    ("typed", "wanted", "size"),
    [
        # One pound-force is 4.448222 N, one lbf/ft 14.5939 N/m, one lbf/ft2 47.88026 Pa:
        # NIST Special Publication 811, appendix B (read in a copy).
        ("lb", "force", 4.448222),
        ("lbs", "force", 4.448222),
        ("lb/ft", "force per length", 14.5939),
        ("lb/ft\u00b2", "pressure", 47.88026),
    ],
)
def test_pounds_in_a_field_of_force_are_pounds_force(typed, wanted, size):
    found = find_token(typed, wanted)
    assert found is not None
    assert found.measures == wanted
    assert found.size == pytest.approx(size, rel=5e-7)


@pytest.mark.parametrize("wanted", ["force", "pressure"])
def test_kilograms_stay_a_mass(wanted):
    found = find_token("kg", wanted)
    assert found is not None
    assert found.measures == "mass"


def test_every_dimension_has_one_word():
    assert len(set(SI_OF.values())) == len(SI_OF)
