"""What a proposal says. It is made by `propose_splits` in `propose`."""

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from hoopwright.curtain import Bound, CurtainWork
from hoopwright.farm import Tunnel
from hoopwright.quantity.working import Explained, Phrase

Aim = Literal["even", "least film", "keep bow"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Proposal(Explained):
    """Splits proposed for one side, with what they bring. Nothing is changed until it is taken.

    Attributes:
        side: 0 or 1.
        aim: What was asked for: curtains as even as can be, the cheapest film, or a bow kept.
        spots_m: Proposed splits from the first bow, m.
        tunnel: The whole tunnel with them.
        curtains: How the curtains of that side work then.
        hardest_n: Hardest crank on that side then, N.
        trailing_m: Greatest trailing on that side then, m.
        bound_by: The limit that sets how long a bar may be.
        film_m2: Film to buy for the tunnel then, m2.
        cost_more: What the tunnel by itself costs more than now; below 0 it costs less.
        told: One sentence that says it.
    """

    side: int
    aim: Aim
    spots_m: tuple[float, ...]
    tunnel: Tunnel
    curtains: tuple[CurtainWork, ...]
    hardest_n: float
    trailing_m: float
    bound_by: Bound
    film_m2: float
    cost_more: Decimal
    told: Phrase
