"""The skin as chosen: covering, layers, films, tails and laps, cross seams, end walls."""

import math
from typing import Annotated, Literal

from hoopwright.farm.entered import Entered, choice, measure

Covering = Literal["one_sheet", "roof_and_sides"]
LayerCount = Literal[1, 2]

Tail = Annotated[float, measure("tail", "m", 0.0, 3.0)]


class Layers(Entered, frozen=True):
    """What one part of the skin is made of.

    Attributes:
        count: One layer, or two with air between.
        outer: Catalogue key of the film outside.
        inner: Catalogue key of the film inside; used with two layers.
    """

    count: Annotated[LayerCount, choice("layers")]
    outer: Annotated[str, choice("outer film")]
    inner: Annotated[str, choice("inner film")]


class Allowances(Entered, frozen=True):
    """What is added to the net sizes so that every edge can be gripped.

    Attributes:
        hip_tail_m: Roof film beyond the hip board channel, each edge, m.
        curtain_top_tail_m: Side film above the hip board channel, m.
        baseboard_tail_m: Fixed film below the baseboard channel, m.
        end_tail_m: Roof film beyond each end bow, m.
        bar_wrap_m: Film held on the roll bar when the curtain is shut, m.
        curtain_lap_m: What a curtain laps over its neighbour or a pocket, each end, m.
        pocket_tail_m: Fixed side film beyond the bows that hold it, each end, m.
        seam_lap_m: Lap of two roof sheets at a cross seam, m.
        end_wall_tail_m: End wall film beyond the bow and the ground line, m.
        measuring_tolerance_m: What the tape may be wrong by, added once to each size, m.
    """

    hip_tail_m: Annotated[float, measure("roof tail at the hip", "m", 0.0, 3.0)] = 0.2286
    curtain_top_tail_m: Annotated[float, measure("curtain tail at the hip", "m", 0.0, 3.0)] = 0.1524
    baseboard_tail_m: Annotated[float, measure("tail at the baseboard", "m", 0.0, 3.0)] = 0.3048
    end_tail_m: Annotated[float, measure("roof tail past the end bow", "m", 0.0, 3.0)] = 0.6096
    bar_wrap_m: Annotated[float, measure("wrap on the roll bar", "m", 0.0, 3.0)] = 0.3048
    curtain_lap_m: Annotated[float, measure("curtain end lap", "m", 0.0, 3.0)] = 0.3048
    pocket_tail_m: Annotated[float, measure("pocket tail", "m", 0.0, 3.0)] = 0.1524
    seam_lap_m: Annotated[float, measure("lap at a cross seam", "m", 0.0, 3.0)] = 0.3048
    end_wall_tail_m: Annotated[float, measure("end wall tail", "m", 0.0, 3.0)] = 0.3048
    measuring_tolerance_m: Annotated[float, measure("tape tolerance", "m", 0.0, 1.0)] = 0.0


class Skin(Entered, frozen=True):
    """What goes on the frame.

    Attributes:
        covering: One sheet from baseboard to baseboard, or roof and sides apart.
        roof: Layers of the roof; of the whole sheet when it is one.
        sides: Layers of the curtains when they are apart.
        pockets: Layers of the fixed film at the ends of a side and behind splits.
        allowances: Tails, laps and wraps.
        cross_seams_m: Where two roof sheets lap, m from the first bow, in order.
        inflation_gap_m: Gap wanted between two layers at the ridge, m.
    """

    covering: Annotated[Covering, choice("covering")]
    roof: Layers
    sides: Layers
    pockets: Layers
    allowances: Allowances = Allowances()
    cross_seams_m: tuple[float, ...] = ()
    inflation_gap_m: Annotated[float, measure("air gap at the ridge", "m", 0.0, 1.0)] = 0.15

    def __post_init__(self) -> None:
        """Refuse cross seams out of order."""
        Entered.__post_init__(self)
        if list(self.cross_seams_m) != sorted(set(self.cross_seams_m)):
            raise ValueError("cross_seams_m: enter each position once, from the front to the back")


CutKind = Literal["vent", "fan"]
EdgeM = Annotated[float, measure("left edge from the middle", "m", -30.0, 30.0)]


class Door(Entered, frozen=True):
    """An opening in an end wall, framed and edged with channel.

    Attributes:
        width_m: Clear width, m.
        height_m: Clear height, m.
        left_m: Its left edge seen from outside, from the middle of the wall, m; None spreads the
            doors evenly over the wall.
    """

    width_m: Annotated[float, measure("door width", "m", 0.3, 20.0)]
    height_m: Annotated[float, measure("door height", "m", 0.3, 15.0)]
    left_m: EdgeM | None = None


class Cut(Entered, frozen=True):
    """An opening above the ground in an end wall, framed and edged with channel.

    Attributes:
        kind: A vent, or the place of a fan.
        left_m: Its left edge seen from outside, from the middle of the wall, m.
        sill_m: Its lower edge above the ground line, m.
        width_m: Clear width, m.
        height_m: Clear height, m.
    """

    kind: Annotated[CutKind, choice("opening for")] = "vent"
    left_m: EdgeM = -0.3
    sill_m: Annotated[float, measure("sill above the ground", "m", 0.0, 20.0)] = 2.0
    width_m: Annotated[float, measure("width of the opening", "m", 0.05, 10.0)] = 0.6096
    height_m: Annotated[float, measure("height of the opening", "m", 0.05, 10.0)] = 0.6096


class RigidSheet(Entered, frozen=True):
    """Rigid sheets that close an end wall, standing upright side by side.

    Attributes:
        part: Catalogue key of one sheet.
        cover_width_m: Width that one sheet covers, its side lap taken off, m.
        sheet_height_m: Height of one sheet, m.
        lap_m: What a sheet laps over the one below it, m.
    """

    part: Annotated[str, choice("rigid sheet")]
    cover_width_m: Annotated[float, measure("width one sheet covers", "m", 0.2, 5.0)] = 1.2192
    sheet_height_m: Annotated[float, measure("height of a sheet", "m", 0.5, 15.0)] = 3.6576
    lap_m: Annotated[float, measure("lap of rigid sheets", "m", 0.0, 1.0)] = 0.1

    def __post_init__(self) -> None:
        """Refuse a lap that takes the whole sheet."""
        Entered.__post_init__(self)
        if self.lap_m >= self.sheet_height_m:
            raise ValueError("lap_m: the lap must be less than the height of a sheet")


class End(Entered, frozen=True):
    """One end wall.

    Attributes:
        name: What people call it.
        film: Layers of the end wall, or None when it is not covered with film.
        doors: Doors in it.
        rigid: Rigid sheets instead of film, or None.
        cuts: Vents and fan openings in it.
        rails_m: Heights of the rails across it, from below, m.
        seams_m: Heights at which its film is joined, from below, m; a seam belongs on a rail.
    """

    name: Annotated[str, choice("name")]
    film: Layers | None
    doors: tuple[Door, ...] = ()
    rigid: RigidSheet | None = None
    cuts: tuple[Cut, ...] = ()
    rails_m: tuple[float, ...] = ()
    seams_m: tuple[float, ...] = ()

    def __post_init__(self) -> None:
        """Refuse two coverings at once, and rails and seams out of order."""
        Entered.__post_init__(self)
        if self.rigid is not None and self.film is not None:
            raise ValueError(
                "rigid: an end wall is closed with film or with rigid sheets, not both"
            )
        for name in ("rails_m", "seams_m"):
            heights_m = getattr(self, name)
            if list(heights_m) != sorted(set(heights_m)):
                raise ValueError(f"{name}: enter each height once, from the ground up")
            if not all(math.isfinite(y) and 0 < y <= 30 for y in heights_m):
                raise ValueError(f"{name}: each height must be above 0 and up to 30 m")
