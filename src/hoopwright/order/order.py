"""What an order is made of: lines to buy, what stays, rolls and the cuts from them.

The stage function is `place_order` in `packs`; `cut_plan` lays the sheets on rolls.
"""

from dataclasses import dataclass
from decimal import Decimal

from hoopwright.farm.condition import State
from hoopwright.quantity.working import Explained, Phrase


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """A sheet's place on a roll.

    Attributes:
        tunnel: Name of the tunnel.
        piece: Mark of the sheet.
        name: Name of the sheet.
        along_m: Where it starts along the roll, m.
        across_m: Where it starts across the roll, m.
        length_m: Its length, m.
        width_m: Its width, m.
    """

    tunnel: str
    piece: str
    name: str
    along_m: float
    across_m: float
    length_m: float
    width_m: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Roll(Explained):
    """One roll to open and what is cut from it.

    Attributes:
        film: Catalogue key of the film.
        width_m: Width, m.
        length_m: Length, m.
        price: Price of the roll.
        cuts: Sheets cut from it.
        used_m2: Area of the sheets, m2.
        left_m: Whole width left at the end of the roll, m.
    """

    film: str
    width_m: float
    length_m: float
    price: Decimal
    cuts: tuple[Cut, ...]
    used_m2: float
    left_m: float


@dataclass(frozen=True, slots=True, kw_only=True)
class NearMiss:
    """A sheet that is only just too wide for a narrower, cheaper stock width.

    Attributes:
        tunnel: Name of the tunnel.
        piece: Mark of the sheet.
        name: Name of the sheet.
        stock_width_m: The narrower stock width, m.
        over_m: How much the sheet is over it, m.
        saving: What the narrower roll would save.
    """

    tunnel: str
    piece: str
    name: str
    stock_width_m: float
    over_m: float
    saving: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class Unplaced:
    """A sheet that no stock roll of its film can yield.

    Attributes:
        tunnel: Name of the tunnel.
        piece: Mark of the sheet.
        name: Name of the sheet.
        over_width_m: How much it is over the widest stock width, m; 0 when it fits.
        over_length_m: How much it is over the longest roll of a width that fits, m; 0 when it fits.
        stock_m: The stock size it misses, m.
    """

    tunnel: str
    piece: str
    name: str
    over_width_m: float
    over_length_m: float
    stock_m: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Line(Explained):
    """One line of the takeoff and of the order.

    Attributes:
        key: Catalogue key of the part; for film `film/<key>/<width>/<length>`.
        group: Heading.
        name: Generic name.
        where: Where it is used.
        marks: Places on the canvas.
        counted_in: "m" or "count".
        needed: Metres or pieces that the tunnels take.
        kept: What of it stays on the tunnels and is not bought, in the same unit.
        spares: Spares on top, in the same unit.
        holds: What one pack holds, in the same unit.
        sold_as: What one pack is called.
        packs: Packs to buy.
        left_over: What stays over, in the same unit.
        price: Price of one pack.
        total: Packs times price.
        invented: Whether the price is invented.
    """

    key: str
    group: str
    name: str
    where: tuple[Phrase, ...]
    marks: tuple[str, ...]
    counted_in: str
    needed: float
    kept: float = 0.0
    spares: float
    holds: float
    sold_as: str
    packs: int
    left_over: float
    price: Decimal
    total: Decimal
    invented: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ReuseLine(Explained):
    """What stays of one part, or one sheet that stays.

    Attributes:
        key: Catalogue key of the part; of a sheet `film/<key>`.
        group: Heading.
        name: Generic name.
        where: Where it stays.
        marks: Places on the canvas.
        counted_in: "m" or "count".
        needed: Metres or pieces that the tunnels take.
        kept: What of it stays, in the same unit.
        state: Keep as it is, or repair.
        spared: Packs that need not be bought; of a sheet its share of a roll.
        sold_as: What one pack is called.
        price: Price of one pack.
        saved: Packs that need not be bought times price.
        invented: Whether the price is invented.
    """

    key: str
    group: str
    name: str
    where: tuple[Phrase, ...]
    marks: tuple[str, ...]
    counted_in: str
    needed: float
    kept: float
    state: State
    spared: float
    sold_as: str
    price: Decimal
    saved: Decimal
    invented: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Order(Explained):
    """Everything to buy, and what is not bought because it stays.

    Attributes:
        lines: Lines, film first, in the order of the catalogue's groups.
        reused: What stays, sheets first, then parts in the order of the catalogue's groups.
        rolls: Rolls to open.
        near_misses: Sheets just over a narrower stock width.
        unplaced: Sheets that no stock holds.
        film_bought_m2: Area of the rolls, m2.
        film_used_m2: Area of the sheets cut from them, m2.
        waste_share: Share of the bought film that is in no sheet.
        goods: Sum of the line totals.
        saved: Sum of what the kept parts and sheets would cost new.
        missing: Keys of parts that are needed and that the catalogue lacks.
    """

    lines: tuple[Line, ...]
    reused: tuple[ReuseLine, ...] = ()
    rolls: tuple[Roll, ...]
    near_misses: tuple[NearMiss, ...]
    unplaced: tuple[Unplaced, ...]
    film_bought_m2: float
    film_used_m2: float
    waste_share: float
    goods: Decimal
    saved: Decimal = Decimal("0.00")
    missing: tuple[str, ...]
