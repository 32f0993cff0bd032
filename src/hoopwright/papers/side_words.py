"""Words of a side for every paper: places, kinds, edges, ropes, limits, sealers."""

from hoopwright.curtain.curtain import Bound
from hoopwright.farm.farm import Sealer, Tunnel
from hoopwright.farm.side import BottomEdge, RopeKind, SideKind, TopEdge, Winding
from hoopwright.farm.weather import Exposure, WindSide

KINDS: dict[SideKind, str] = {
    "fixed": "fixed film",
    "roll_up": "rolls up",
    "drop_down": "drops down",
    "woven": "woven, rolls up",
}
WINDINGS: dict[Winding, str] = {"into": "inside the film", "out": "outside the film"}
ROPES: dict[RopeKind, str] = {
    "none": "none",
    "zigzag": "rope in a zigzag",
    "straps": "straight straps",
}
BOTTOMS: dict[BottomEdge, str] = {
    "none": "none",
    "hat_purlin": "hat purlin",
    "seal_profile": "seal profile",
    "skirt": "film skirt",
}
TOPS: dict[TopEdge, str] = {
    "own_channel": "side film in a channel of its own",
    "shared_channel": "side film in the roof's channel",
}
SEALERS: dict[Sealer, str] = {
    "running": "runs on along the edge",
    "bar": "bar, stroke by stroke",
}
BOUNDS: dict[Bound, str] = {
    "hand force": "hand force",
    "trailing": "trailing",
    "maker of the bar": "maker of the bar",
    "maker of the drive": "maker of the drive",
}
WIND_SIDES: dict[WindSide, str] = {
    "square_on": "square on to the side",
    "diagonal": "slantwise to the side",
}
EXPOSURES: dict[Exposure, str] = {
    "B": "B, houses and trees",
    "C": "C, open land",
    "D": "D, along open water",
}


def place_name(tunnel: Tunnel, mark: str) -> str:
    """Return what people call the place of a mark such as `side/0/panel/1` or `end/0`."""
    parts = mark.split("/")
    if parts[0] == "end":
        return tunnel.ends[int(parts[1])].name
    if parts[0] != "side" or len(parts) < 3:
        return mark.replace("/", " ")
    side = tunnel.sides[int(parts[1])].name
    if parts[2] == "panel":
        return f"{side}, curtain {int(parts[3]) + 1}"
    if parts[2] == "strip":
        return f"{side}, strip {int(parts[3]) + 1}"
    return f"{side}, {' '.join(reversed(parts[2:]))}"
