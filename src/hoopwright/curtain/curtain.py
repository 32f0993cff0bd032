"""What working a curtain yields. The stage function is `work_curtains` in `cranking`."""

from dataclasses import dataclass, field
from typing import Literal

from hoopwright.curtain.hung import HungCurtain
from hoopwright.farm.side import CrankPlace, SideKind
from hoopwright.quantity.working import Explained

Bound = Literal["hand force", "trailing", "maker of the bar", "maker of the drive"]

Three = tuple[float, float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Course:
    """A curtain on its whole way from shut to open, in even steps; every tuple is as long.

    Attributes:
        shares: Share of the travel behind it, 0 shut to 1 open.
        heights_m: Height of the bar (of a drop-down curtain its rod) above the ground, m.
        radii_m: Radius of the roll, m; 0 where nothing is rolled.
        weights_n: Weight that hangs on the bar's film or on the lines, N.
        torques_nm: Torque at the cranked place with rubbing, N m.
        hand_forces_n: Force at the handle, N.
        trailing_m: How far the farthest place of the bar hangs behind the crank, m.
        joint_angles_rad: Angle of the universal joint, rad; 0 where there is none.
        openings_m2: Clear opening, m2.
        minutes: Time at the handle since the curtain was shut, min.
    """

    shares: tuple[float, ...]
    heights_m: tuple[float, ...]
    radii_m: tuple[float, ...]
    weights_n: tuple[float, ...]
    torques_nm: tuple[float, ...]
    hand_forces_n: tuple[float, ...]
    trailing_m: tuple[float, ...]
    joint_angles_rad: tuple[float, ...]
    openings_m2: tuple[float, ...]
    minutes: tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CurtainWork(Explained):
    """How one curtain rolls or drops, turns and hangs.

    Three values stand for the curtain shut, half way and open. Of a drop-down curtain the bar is
    its rod, and the roll figures are 0.

    Attributes:
        mark: `side/0/panel/1`.
        side: 0 or 1.
        index: Number from the front, from 0.
        kind: Kind of side.
        cranked: Where the crank is.
        length_m: Length of the bar, m.
        travel_m: How far the bar moves, m.
        diameters_m: Roll diameters, m.
        weights_n: Weight that hangs on the bar's film or on the lines, N.
        torques_nm: Torque at the cranked place (of a drop-down curtain at its drum) with rubbing,
            N m.
        hand_forces_n: Force at the handle, N.
        hardest_n: Greatest hand force through the travel, N.
        turns: Turns of the bar or drum for the whole travel.
        handle_turns: Turns of the handle for the whole travel.
        minutes: Time at the handle for one opening, min.
        twist_rad: Greatest twist between the crank and the farthest place of the bar, rad.
        twist_trailing_m: Trailing by twist, m.
        play_trailing_m: Trailing by play in the joints, m.
        uneven_trailing_m: Trailing by uneven winding radius, m.
        trailing_m: The three together: how far the farthest place hangs behind at worst, m.
        joint_angles_rad: Angle of the universal joint, rad; 0 where there is none.
        joint_swing: Greatest swing of the handle torque by the universal joint: peak over mean;
            1 where there is none.
        guide_m: Guide pipe of a geared crank, m; 0 without.
        energy_j: Energy of the raised curtain (of a drop-down one, of the rod up and shut), J.
        runaway_m_s: Speed at the bottom when the handle is let go at the top and nothing rubs, an
            upper bound, m/s; 0 where the drive holds by itself.
        runaway_handle_m_s: Speed of the handle then, m/s.
        hand_length_m: Longest bar that this drive turns within the hand force limit, m.
        trailing_length_m: Longest bar within the trailing limit, m.
        longest_m: Longest bar that all limits allow, m.
        bound_by: The limit that sets it.
        bar_sticks: Sticks the bar is made of.
        bar_joints: Joints in it.
        opening_m2: Clear opening when it is open, m2.
        gutter_gap_m: From the roll, open, up to the gutter, m; None without a gutter.
        pocket_gap_m: From the roll, open, to pocket film and bows behind it, m; below 0 it rubs.
        rope_m: Wind rope with tails, or all straps, m; 0 without.
        rope_legs: Legs of the zigzag, or straps.
        eyes: Eyes for it, top and bottom together.
        rope_tension_n: Pull in a leg in the storm of the farm's weather, N; 0 without.
        eye_load_n: Pull of the rope on an eye straight out in that storm, N; 0 without. For
            reference only.
        lift_lines: Lift lines of a drop-down curtain.
        lift_line_m: All lift lines and the cable they are tied to, m.
        pulleys: Pulleys they run over.
        hung: The curtain it was worked from, for its course.
    """

    mark: str
    side: int
    index: int
    kind: SideKind
    cranked: CrankPlace
    length_m: float
    travel_m: float
    diameters_m: Three
    weights_n: Three
    torques_nm: Three
    hand_forces_n: Three
    hardest_n: float
    turns: float
    handle_turns: float
    minutes: float
    twist_rad: float
    twist_trailing_m: float
    play_trailing_m: float
    uneven_trailing_m: float
    trailing_m: float
    joint_angles_rad: Three
    joint_swing: float
    guide_m: float
    energy_j: float
    runaway_m_s: float
    runaway_handle_m_s: float
    hand_length_m: float
    trailing_length_m: float
    longest_m: float
    bound_by: Bound
    bar_sticks: int
    bar_joints: int
    opening_m2: float
    gutter_gap_m: float | None
    pocket_gap_m: float
    rope_m: float
    rope_legs: int
    eyes: int
    rope_tension_n: float
    eye_load_n: float
    lift_lines: int
    lift_line_m: float
    pulleys: int
    hung: HungCurtain = field(compare=False, repr=False)
