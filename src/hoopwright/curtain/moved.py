"""What moving a curtain yields, before its limits and its rope are looked at."""

from msgspec import Struct

from hoopwright.curtain.curtain import Three
from hoopwright.curtain.lift import Lift
from hoopwright.curtain.lines import NO_LINES, LiftLines
from hoopwright.curtain.trailing import NO_LAG, Lag


class Moved(Struct, frozen=True, kw_only=True):
    """One curtain through its travel.

    Attributes:
        places: Shut, half way and open.
        hardest: The one where the handle is hardest.
        turns: Turns of the bar or drum for the whole travel.
        energy_j: Energy of the raised curtain, J.
        runaway_m_s: Speed at the bottom when the handle is let go, m/s; 0 where the drive holds.
        low_radius_m: Lever at the bottom of a runaway, m: radius of the roll or of the drum.
        edge_m: Half the thickness of what moves when the curtain is open, m: roll or rod.
        trailing_length_m: Longest bar within the trailing limit, m.
        diameters_m: Roll diameters, m; 0 where nothing is rolled.
        lag: What the farthest place hangs behind at worst.
        joint_angles_rad: Angle of the universal joint, rad.
        guide_m: Guide pipe of a geared crank, m.
        lines: Lift lines.
    """

    places: tuple[Lift, Lift, Lift]
    hardest: Lift
    turns: float
    energy_j: float
    runaway_m_s: float
    low_radius_m: float
    edge_m: float
    trailing_length_m: float
    diameters_m: Three = (0.0, 0.0, 0.0)
    lag: Lag = NO_LAG
    joint_angles_rad: Three = (0.0, 0.0, 0.0)
    guide_m: float = 0.0
    lines: LiftLines = NO_LINES
