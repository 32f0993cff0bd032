"""What filling the skin with air takes. The stage function is `fill_cells` in `cells`."""

from dataclasses import dataclass
from typing import Literal

from hoopwright.quantity.working import Explained


@dataclass(frozen=True, slots=True, kw_only=True)
class Seal(Explained):
    """One sealed edge of a double-layer sheet.

    Attributes:
        mark: Mark of the sheet's place, for example `side/0/panel/1`.
        edge: top, bottom, front or back.
        length_m: Length of the edge, m.
        passes: Seals along it.
        total_m: Length times passes, m.
        minutes: Bench time, minutes.
    """

    mark: str
    edge: Literal["top", "bottom", "front", "back"]
    length_m: float
    passes: int
    total_m: float
    minutes: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Cell(Explained):
    """One closed space between two layers.

    Attributes:
        mark: `cell/roof/0` or `cell/side/0/panel/1`.
        name: What people call it.
        place: Mark of what it lies in: `roof`, `side/0/panel/1`.
        from_m: Front of it, m.
        to_m: Back of it, m.
        volume_m3: Air in it when full, m3.
        fed: Whether the blower blows straight into it.
    """

    mark: str
    name: str
    place: str
    from_m: float
    to_m: float
    volume_m3: float
    fed: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Jumper:
    """A hose that carries air from one cell to the next.

    Attributes:
        mark: `jumper/0`.
        from_cell: Mark of the cell the air comes from.
        to_cell: Mark of the cell it fills.
        side: Side it hangs on, 0 or 1; None over the ridge (across a cross seam).
        at_m: Where along the tunnel, m.
    """

    mark: str
    from_cell: str
    to_cell: str
    side: int | None
    at_m: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Inflation(Explained):
    """Seals, cells and jumpers of one tunnel.

    Attributes:
        seals: Sealed edges.
        cells: Closed spaces.
        jumpers: Hoses between them.
        seal_m: All seals together, m.
        bench_min: Bench time for them, minutes.
        volume_m3: All cells together, m3.
        blower: Catalogue key of the blower part, or None.
    """

    seals: tuple[Seal, ...]
    cells: tuple[Cell, ...]
    jumpers: tuple[Jumper, ...]
    seal_m: float
    bench_min: float
    volume_m3: float
    blower: str | None
