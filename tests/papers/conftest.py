"""What tests of the papers share."""

import pytest

from hoopwright.farm import Farm
from papers.invented_plan import invented_farm


@pytest.fixture(params=["imperial", "metric"])
def farm(request: pytest.FixtureRequest) -> Farm:
    """Return the invented farm, in each system of units."""
    return invented_farm(request.param)
