"""What is known of the widths a sheet can be bought in. The stage function is in `widths`."""

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Literal

from hoopwright.cover.cover import LayerName
from hoopwright.quantity.working import Explained
from hoopwright.survey.taped import Over

Untold = Literal["", "no girth", "one girth", "no stock"]
"""Why no chance can be told of the width that is chosen; empty when it is told."""


@dataclass(frozen=True, slots=True)
class WidthFit:
    """One stock width of the film.

    Attributes:
        width_m: Stock width, m.
        margin_m: Stock width less cut width, m; below zero the sheet cannot be cut from it.
        chance: That the roll is too narrow for the longest bow, 0 to 1; None when it cannot be
            told.
        chosen: Whether it is the narrowest that holds the sheet as cut.
    """

    width_m: float
    margin_m: float
    chance: float | None
    chosen: bool


@dataclass(frozen=True, slots=True)
class Remeasured:
    """What would change if the longest girth were read again and came out as the next longest.

    Attributes:
        bow: Bow with the longest girth, 1 at the front.
        from_m: Its girth as read, m.
        to_m: The next longest girth, m.
        cut_width_m: Cut width then, m.
        stock_width_m: Narrowest stock that would hold it, m; None when there is none.
        changes: Whether that is another stock than now.
    """

    bow: int
    from_m: float
    to_m: float
    cut_width_m: float
    stock_width_m: float | None
    changes: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetFit(Explained):
    """The sheet over the bows in one layer, and the widths its film is sold in.

    Attributes:
        name: What people call it.
        marks: Marks of its sheets, from the front; several when cross seams divide it.
        layer: Single, outer or inner.
        film: Catalogue key of its film.
        cut_width_m: Width it is cut to, m.
        over: Lines between which the girths were read that its width rests on; None when it rests
            on no reading.
        bow_count: Bows of the tunnel.
        read_count: Bows whose girth was read.
        governing_bow: Bow with the longest girth read; None when none was read.
        governing_m: That girth, m; 0 when none was read.
        middle_m: Mean of the girths read, m; 0 when none was read.
        deviation_m: What the girths of the bows scatter by, the error of the tape taken out, m;
            None below two readings.
        fixed_m: What the sheet needs beyond the girth, the measuring tolerance left out, m; 0 when
            none was read.
        minus_share: How much narrower than its stock width a roll may be, as a share.
        chosen_m: Narrowest stock width that holds the sheet as cut, of rolls long enough, m; None
            when there is none.
        chance: That a roll of that width is too narrow, 0 to 1; None when it cannot be told.
        untold: Why it cannot be told.
        remeasured: What reading the longest girth again could change; None below two readings.
        widths_made: Gives every stock width; worked out when somebody asks for it.
    """

    name: str
    marks: tuple[str, ...]
    layer: LayerName
    film: str
    cut_width_m: float
    over: Over | None
    bow_count: int
    read_count: int
    governing_bow: int | None
    governing_m: float
    middle_m: float
    deviation_m: float | None
    fixed_m: float
    minus_share: float
    chosen_m: float | None
    chance: float | None
    untold: Untold
    remeasured: Remeasured | None
    widths_made: Callable[[], tuple[WidthFit, ...]] = field(compare=False, repr=False)

    @property
    def widths(self) -> tuple[WidthFit, ...]:
        """All stock widths whose rolls are long enough for it, the narrowest first."""
        return self.widths_made()


@dataclass(frozen=True, slots=True, kw_only=True)
class Fit(Explained):
    """How the sheets over the bows fit the widths their films are sold in.

    Attributes:
        sheets: One for each layer over the bows that is cut new, the outer one first.
    """

    sheets: tuple[SheetFit, ...]

    def of(self, mark: str) -> SheetFit | None:
        """Return what is known of a sheet by its mark; None of sheets that lie elsewhere."""
        return next((sheet for sheet in self.sheets if mark in sheet.marks), None)
