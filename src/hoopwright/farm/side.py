"""A side as chosen: fixed or rolling up, end pockets, splits, panels and what turns them."""

from typing import Annotated, Literal

from hoopwright.farm.entered import Entered, choice, measure

SideKind = Literal["fixed", "roll_up"]
EndName = Literal["front", "back"]
Join = Literal["lap", "strip"]
Winding = Literal["into", "out"]

PositionM = Annotated[float, measure("position from the front", "m", 0.0, 1000.0)]
PocketBays = Annotated[int, measure("pocket bays", "count", 0, 100)]


class Panel(Entered, frozen=True):
    """One curtain and what works it.

    Attributes:
        crank_end: End at which the crank is.
        bar: Catalogue key of the roll bar.
        drive: Catalogue key of the drive.
        winding: Whether the film winds into the tunnel side of the bar or out of it.
        rope: Whether a wind rope zigzags outside.
        bottom_seal: Whether a seal profile hangs under the bar.
    """

    crank_end: Annotated[EndName, choice("crank at the")]
    bar: Annotated[str, choice("roll bar")]
    drive: Annotated[str, choice("drive")]
    winding: Annotated[Winding, choice("winds")] = "out"
    rope: Annotated[bool, choice("wind rope")] = True
    bottom_seal: Annotated[bool, choice("bottom seal")] = True


class Split(Entered, frozen=True):
    """Where two curtains of one side meet.

    Attributes:
        at_m: Position from the first bow, m.
        join: The two curtains lap on the bow, or both close against a fixed film strip that
            stands behind them in the bay after this bow.
    """

    at_m: PositionM
    join: Annotated[Join, choice("split made with")] = "lap"


class Side(Entered, frozen=True):
    """One side of the tunnel.

    Attributes:
        name: What people call it, best by compass.
        kind: Fixed film, or curtains that roll up from the bottom.
        shut_height_m: Height of the bar above the ground when the curtain is shut, m.
        pocket_bays: Bays with fixed film at the front and at the back end.
        splits: Splits from front to back.
        panels: Curtains from front to back, one more than splits.
        slack_m: Film left loose between hip board and bar, m.
        rope_step_m: Along the side from a top eye to the next bottom eye, m.
    """

    name: Annotated[str, choice("name")]
    kind: Annotated[SideKind, choice("kind of side")]
    shut_height_m: Annotated[float, measure("bar height when shut", "m", 0.0, 5.0)]
    pocket_bays: tuple[PocketBays, PocketBays]
    splits: tuple[Split, ...]
    panels: tuple[Panel, ...]
    slack_m: Annotated[float, measure("slack at the bar", "m", 0.0, 1.0)] = 0.05
    rope_step_m: Annotated[float, measure("rope step", "m", 0.2, 5.0)] = 1.2192

    def __post_init__(self) -> None:
        """Refuse splits out of order and panels that do not match them."""
        Entered.__post_init__(self)
        spots = [s.at_m for s in self.splits]
        if spots != sorted(set(spots)):
            raise ValueError("splits: enter each split once, from the front to the back")
        if len(self.panels) != len(self.splits) + 1:
            raise ValueError(
                f"panels: {len(self.splits)} splits make {len(self.splits) + 1} curtains, "
                f"and {len(self.panels)} are entered"
            )


class Air(Entered, frozen=True):
    """Air between two layers.

    Attributes:
        blower: Catalogue key of the blower part, or None.
        inflated_sides: Whether the curtains of each side are sealed and inflated, when they
            have two layers.
        seals_per_edge: Passes of the sealer along each edge.
        long_cell_m: A cell longer than this gets a second jumper, m.
    """

    blower: Annotated[str, choice("blower")] | None
    inflated_sides: tuple[bool, bool] = (False, False)
    seals_per_edge: Annotated[int, measure("seals on each edge", "count", 1, 4)] = 2
    long_cell_m: Annotated[float, measure("two jumpers above", "m", 1.0, 1000.0)] = 30.0
