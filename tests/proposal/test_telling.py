"""What is said of proposed splits."""

from decimal import Decimal

from hoopwright.proposal.telling import tell_proposal
from hoopwright.quantity.working import words
from samples import side, small_farm


def _told(cost_more: str, priced: int = 0) -> str:
    told = tell_proposal(
        small_farm(), side("West side"), (6.0, 12.0), 41.0, 0.02, Decimal(cost_more), priced
    )
    return words(told, "metric")


def test_sentence_names_splits_crank_trailing_and_cost() -> None:
    assert _told("12.50") == (
        "West side: 3 curtains, split at 6.000 m, 12.000 m: hardest crank 41 N, trailing 20.0 mm, "
        "$12.50 more than now."
    )
    assert _told("-3").endswith("$3.00 less than now.")
    assert _told("0").endswith("the same cost as now.")


def test_sentence_says_when_not_every_way_was_priced() -> None:
    assert "60 of the ways to split were priced, there are more" in _told("0", 60)
