"""What is said of proposed splits: one sentence, how each figure was got, or why none fit."""

from dataclasses import replace
from decimal import Decimal

from hoopwright.checks import TunnelPlan
from hoopwright.curtain import Bound
from hoopwright.curtain.bounds import REMEDY, limit_words
from hoopwright.curtain.splitting import Opening
from hoopwright.farm import Farm, Side, Tunnel
from hoopwright.proposal.proposal import Proposal
from hoopwright.quantity.money import format_money
from hoopwright.quantity.working import Phrase, Term, Working, phrase, words


def refused(
    farm: Farm, tunnel: Tunnel, side: int, opening: Opening, longest_m: float, bound: Bound
) -> str:
    """Return why no splits fit, in the units of the farm."""
    chosen = tunnel.sides[side]
    if opening.kept_m is not None:
        start = "{side}: with a split kept at {kept} no curtains on the bows stay within the limits"
    else:
        start = "{side}: even with a split on every bow a bar is too long"
    said = phrase(
        start + "; {bound} allows {longest}. To mend it, " + REMEDY[bound] + ".",
        side=chosen.name,
        kept=(opening.kept_m or 0.0, "m"),
        bound=limit_words(bound),
        longest=(longest_m, "m"),
    )
    return words(said, farm.units)


def tell_proposal(
    farm: Farm,
    side: Side,
    spots_m: tuple[float, ...],
    hardest_n: float,
    trailing_m: float,
    cost_more: Decimal,
    priced: int,
) -> Phrase:
    """Return the sentence that says what is proposed.

    Args:
        farm: The farm, for its currency.
        side: The side with the splits.
        spots_m: The splits, m.
        hardest_n: Hardest crank then, N.
        trailing_m: Greatest trailing then, m.
        cost_more: What it costs more than now.
        priced: Ways that were priced when there are more; 0 when all were looked at.
    """
    spots = {f"at{n}": (at_m, "m") for n, at_m in enumerate(spots_m, start=1)}
    where = ", ".join(f"{{{name}}}" for name in spots)
    start = f"{{count}} curtains, split at {where}" if spots else "one curtain without a split"
    if cost_more == 0:
        cost = "the same cost as now"
    else:
        cost = "{cost} " + ("more" if cost_more > 0 else "less") + " than now"
    tail = "; {priced} of the ways to split were priced, there are more" if priced else ""
    return phrase(
        "{side}: " + start + ": hardest crank {hardest}, trailing {trailing}, " + cost + tail + ".",
        side=side.name,
        count=len(spots_m) + 1,
        hardest=(hardest_n, "N"),
        trailing=(trailing_m, "m_thin"),
        cost=format_money(abs(cost_more), farm.money.currency),
        priced=priced,
        **spots,
    )


def explain_proposal(made: Proposal, before: TunnelPlan, longest_m: float) -> Proposal:
    """Return the proposal with a working for each of its figures."""
    now = before.chosen.cost.to_pay
    lengths = tuple(Term(f"bar {w.index + 1}", w.length_m, "m") for w in made.curtains)
    return replace(
        made,
        workings=(
            Working(
                "spots_m",
                "The fewest curtains on the bows whose bars are no longer than the limits allow; "
                "of those the best for the aim.",
                (*lengths, Term(f"longest bar by {made.bound_by}", longest_m, "m")),
            ),
            Working(
                "hardest_n",
                "The hardest of the side's cranks.",
                tuple(Term(f"crank {w.index + 1}", w.hardest_n, "N") for w in made.curtains),
            ),
            Working(
                "trailing_m",
                "The most that a bar of the side hangs behind.",
                tuple(Term(f"bar {w.index + 1}", w.trailing_m, "m_thin") for w in made.curtains),
            ),
            Working("film_m2", "All rolls to open for this tunnel by itself.", lengths),
            Working(
                "cost_more",
                "To pay for this tunnel by itself with these splits, less what it is now; without "
                "freight.",
                (Term("to pay now", now, "money"),),
            ),
        ),
    )
