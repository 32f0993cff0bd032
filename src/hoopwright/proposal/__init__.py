"""Propose splits: the fewest curtains on the bows that the limits allow, compared with now."""

from hoopwright.proposal.proposal import Aim, Proposal
from hoopwright.proposal.propose import propose_splits

__all__ = ["Aim", "Proposal", "propose_splits"]
