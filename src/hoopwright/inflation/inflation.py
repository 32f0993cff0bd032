"""What filling the skin with air takes. The stage function is `fill_cells` in `cells`."""

from dataclasses import dataclass
from typing import Literal

from hoopwright.quantity.working import Explained


@dataclass(frozen=True, slots=True, kw_only=True)
class Seal(Explained):
    """One sealed edge of a double-layer sheet.

    Attributes:
        mark: Mark of the sheet's place, for example `side/0/panel/1` or `end/0`.
        edge: top, bottom, front or back.
        length_m: Length of the edge, m.
        passes: Seals along it.
        spacing_m: From one seal to the next, m; 0 with a single one.
        total_m: Length times passes, m.
        strokes: Strokes of the sealing bar for all passes; 0 with a sealer that runs on.
        minutes: Bench time, minutes.
        there: Whether the sheet stays with its seals, so that this one need not be made.
    """

    mark: str
    edge: Literal["top", "bottom", "front", "back"]
    length_m: float
    passes: int
    spacing_m: float
    total_m: float
    strokes: int
    minutes: float
    there: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Cell(Explained):
    """One closed space between two layers.

    Attributes:
        mark: `cell/roof/0`, `cell/side/0/panel/1` or `cell/end/0`.
        name: What people call it.
        place: Mark of what it lies in: `roof`, `side/0/panel/1`, `end/0`.
        from_m: Front of it, m; of an end wall its end bow.
        to_m: Back of it, m; of an end wall its end bow.
        volume_m3: Air in it when full, m3.
        area_m2: Film of its outer layer, through which it leaks, m2.
        unit_leak_m3_s: Air that it loses at 1 Pa, m3/s.
        fed: Whether the blower blows straight into it.
    """

    mark: str
    name: str
    place: str
    from_m: float
    to_m: float
    volume_m3: float
    area_m2: float
    unit_leak_m3_s: float
    fed: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Jumper:
    """A hose that carries air from one cell to the next.

    Attributes:
        mark: `jumper/0`; the number of one placed by hand is its number in the entry.
        from_cell: Mark of the cell the air comes from.
        to_cell: Mark of the cell it fills.
        side: Side it hangs on, 0 or 1; None over the ridge (across a cross seam) and at an end.
        at_m: Where along the tunnel, m.
        placed: Whether it was placed by hand.
    """

    mark: str
    from_cell: str
    to_cell: str
    side: int | None
    at_m: float
    placed: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Inflation(Explained):
    """Seals, cells and jumpers of one tunnel.

    Attributes:
        seals: Sealed edges.
        cells: Closed spaces.
        jumpers: Hoses between them.
        seal_m: All seals that have to be made, m.
        strokes: Strokes of the sealing bar for all of them; 0 with a sealer that runs on.
        elements: Heating elements used up by them.
        bench_min: Bench time for them, minutes.
        volume_m3: All cells together, m3.
        blower: Catalogue key of the blower, or None.
        no_feed: Marks of the cells that no chain of jumpers joins to a fed cell.
        idle: Jumpers placed by hand that find no two cells: their numbers in the entry, from 0.
    """

    seals: tuple[Seal, ...]
    cells: tuple[Cell, ...]
    jumpers: tuple[Jumper, ...]
    seal_m: float
    strokes: int
    elements: int
    bench_min: float
    volume_m3: float
    blower: str | None
    no_feed: tuple[str, ...]
    idle: tuple[int, ...]
