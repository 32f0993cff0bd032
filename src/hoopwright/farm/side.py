"""A side as chosen: its kind, end pockets, splits, panels, what turns them and what holds them."""

from typing import Annotated, Literal

from hoopwright.farm.entered import Entered, choice, measure
from hoopwright.farm.extras import Screen

SideKind = Literal["fixed", "roll_up", "drop_down", "woven"]
CrankPlace = Literal["front", "back", "middle"]
Join = Literal["lap", "strip"]
Winding = Literal["into", "out"]
RopeKind = Literal["none", "zigzag", "straps"]
BottomEdge = Literal["none", "hat_purlin", "seal_profile", "skirt"]
TopEdge = Literal["own_channel", "shared_channel"]

ROLLING: tuple[SideKind, ...] = ("roll_up", "woven")
"""Kinds of side whose curtain winds on a bar from the bottom."""
MOVING: tuple[SideKind, ...] = ("roll_up", "woven", "drop_down")
"""Kinds of side that open."""

PositionM = Annotated[float, measure("position from the front", "m", 0.0, 1000.0)]
PocketBays = Annotated[int, measure("pocket bays", "count", 0, 100)]


class Panel(Entered, frozen=True):
    """One curtain and what works it.

    Attributes:
        crank_end: End at which the crank is, or the middle.
        bar: Catalogue key of the roll bar, or of the curtain rod of a drop-down side.
        drive: Catalogue key of the drive.
        winding: Where the roll lies. Into: on the tunnel side of the film, so that rain runs off
            over it. Out: on the outside, where rain that runs down the film gathers in the roll.
        rope: What keeps the wind from lifting the curtain: nothing, a rope in a zigzag, or
            straight straps.
        bottom: What closes the gap under the shut bar.
    """

    crank_end: Annotated[CrankPlace, choice("crank at the")]
    bar: Annotated[str, choice("roll bar")]
    drive: Annotated[str, choice("drive")]
    winding: Annotated[Winding, choice("winds")] = "out"
    rope: Annotated[RopeKind, choice("against the wind")] = "zigzag"
    bottom: Annotated[BottomEdge, choice("bottom edge")] = "seal_profile"


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
        kind: Fixed film; curtains that roll up from the bottom; curtains that drop from the top
            on a rod and bunch at the bottom; or woven curtains whose top slides into a profile and
            whose hem holds the roll bar.
        shut_height_m: Height of the bar above the ground when the curtain is shut, m.
        pocket_bays: Bays with fixed film at the front and at the back end.
        splits: Splits from front to back.
        panels: Curtains from front to back, one more than splits.
        slack_m: Film left loose between hip board and bar, m.
        rope_step_m: Along the side from a top eye to the next bottom eye, or from strap to strap,
            m; None sets one at each bow.
        film: Catalogue key of the curtains' film where it is not that of the skin, else None.
            Such a curtain has one layer, as a woven and a drop-down one always have.
        top: Whether the side film has a channel of its own on the hip board, so that it can be
            renewed without the roof's, or shares the roof's. A woven curtain has its profile.
        stop_m: How far below the hip board the bar of an open curtain stops, m.
        bunch_m: Height that a drop-down curtain keeps at the bottom when it is open, m.
        screen: Insect screen in its opening, or None.
    """

    name: Annotated[str, choice("name")]
    kind: Annotated[SideKind, choice("kind of side")]
    shut_height_m: Annotated[float, measure("bar height when shut", "m", 0.0, 5.0)]
    pocket_bays: tuple[PocketBays, PocketBays]
    splits: tuple[Split, ...]
    panels: tuple[Panel, ...]
    slack_m: Annotated[float, measure("slack at the bar", "m", 0.0, 1.0)] = 0.05
    rope_step_m: Annotated[float, measure("rope step", "m", 0.2, 5.0)] | None = 1.2192
    film: Annotated[str, choice("film of its curtains")] | None = None
    top: Annotated[TopEdge, choice("top of the side film in")] = "own_channel"
    stop_m: Annotated[float, measure("bar stops below the hip", "m", 0.0, 2.0)] = 0.0
    bunch_m: Annotated[float, measure("bunch at the bottom", "m", 0.0, 2.0)] = 0.3
    screen: Screen | None = None

    @property
    def screen_flow_share(self) -> float:
        """Return the share of the air that the insect screen lets through; 1 without one."""
        return 1.0 if self.screen is None else self.screen.flow_share

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
