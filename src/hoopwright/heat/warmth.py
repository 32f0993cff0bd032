"""What keeping a tunnel warm takes. The stage function is `warm_tunnel` in `warming`."""

from dataclasses import dataclass
from decimal import Decimal

from hoopwright.quantity.working import Explained, Phrase


@dataclass(frozen=True, slots=True, kw_only=True)
class Warmth(Explained):
    """What a tunnel loses, what a season burns, and whether the second layer pays.

    A tunnel that is not heated burns and saves nothing: its peak, season, fuel and savings are 0.

    Attributes:
        loss_one_w_k: Loss for one kelvin with one layer everywhere, W/K.
        loss_two_w_k: The same with two layers blown apart everywhere, W/K.
        loss_now_w_k: The same as the skin is chosen, W/K.
        peak_w: What the heater must bring in the coldest hour, W.
        degree_days: Degree-days of the season to where this heater starts, K d.
        season_j: Heat of a season, J.
        fuel_units: Fuel of a season, in the unit it is sold in.
        fuel_cost: What that fuel costs.
        saved_share: Share of the loss that the second layer saves as it is chosen; below zero
            when the entries say that two layers lose more.
        saved_units: Fuel that it saves in a season.
        saved_cost: What that fuel costs, less the blower's power; may be below zero.
        second_layer_cost: What the second layer costs: film, parts for the air, sealing wage.
        payback_years: Years until its savings have paid it, without interest; None when never.
        told: What the second layer does here, in one sentence or two.
        notes: What was assumed on the way.
    """

    loss_one_w_k: float
    loss_two_w_k: float
    loss_now_w_k: float
    peak_w: float
    degree_days: float
    season_j: float
    fuel_units: float
    fuel_cost: Decimal
    saved_share: float
    saved_units: float
    saved_cost: Decimal
    second_layer_cost: Decimal
    payback_years: float | None
    told: Phrase
    notes: tuple[Phrase, ...]
