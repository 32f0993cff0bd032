"""What working a curtain yields. The stage function is `work_curtains` in `cranking`."""

from dataclasses import dataclass

from hoopwright.quantity.working import Explained


@dataclass(frozen=True, slots=True, kw_only=True)
class CurtainWork(Explained):
    """How one curtain rolls, turns and hangs.

    Three values stand for the bar at the bottom (shut), half way and at the top (open).

    Attributes:
        mark: `side/0/panel/1`.
        side: 0 or 1.
        index: Number from the front, from 0.
        length_m: Length of the bar, m.
        travel_m: How far the bar climbs, m.
        diameters_m: Roll diameters, m.
        weights_n: Weight that hangs on the bar's film, N.
        torques_nm: Torque at the cranked end with rubbing, N m.
        hand_forces_n: Force at the handle, N.
        hardest_n: Greatest hand force through the travel, N.
        turns: Turns of the bar for the whole travel.
        handle_turns: Turns of the handle for the whole travel.
        twist_rad: Greatest twist between cranked and free end, rad.
        trailing_m: How far the free end hangs behind the cranked end at worst, m.
        energy_j: Energy of the raised curtain, J.
        hand_length_m: Longest bar that this drive turns within the hand force limit, m.
        trailing_length_m: Longest bar within the trailing limit, m.
        bar_sticks: Sticks the bar is made of.
        bar_joints: Joints in it.
        opening_m2: Clear opening when the bar is up, m2.
        rope_m: Wind rope with tails, m; 0 without.
        rope_legs: Legs of the zigzag.
        eyes: Eyes for the rope, top and bottom together.
    """

    mark: str
    side: int
    index: int
    length_m: float
    travel_m: float
    diameters_m: tuple[float, float, float]
    weights_n: tuple[float, float, float]
    torques_nm: tuple[float, float, float]
    hand_forces_n: tuple[float, float, float]
    hardest_n: float
    turns: float
    handle_turns: float
    twist_rad: float
    trailing_m: float
    energy_j: float
    hand_length_m: float
    trailing_length_m: float
    bar_sticks: int
    bar_joints: int
    opening_m2: float
    rope_m: float
    rope_legs: int
    eyes: int
