"""A net of cells, hoses and a blower, as it is told to the searches for its pressures.

Source:
    Leak as a power of the pressure, Q = C A p**n: common practice for leaks of buildings; 0.5 is
    an orifice, 1 creeping flow, 0.65 between.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from msgspec import Struct

from hoopwright.pressure.fan import FanCurve
from hoopwright.pressure.graph import groups_without_feed
from hoopwright.pressure.hose import Hose

EXPONENT = 0.65
LEAST_EXPONENT, MOST_EXPONENT = 0.5, 1.0

Way = tuple[int, int, Hose]


@dataclass(frozen=True, slots=True)
class AirCell:
    """A closed space between two layers.

    Attributes:
        mark: Its name.
        unit_leak_m3_s: Leak at a pressure of one pascal, m3/s: coefficient times area; zero or
            more.
        exponent: Power of the pressure that the leak follows, from 0.5 to 1.
    """

    mark: str
    unit_leak_m3_s: float
    exponent: float = EXPONENT

    def leak_m3_s(self, pressure_pa: float) -> float:
        """Return what leaks at a pressure, m3/s.

        Source:
            Power of the pressure, see the module.
        """
        return self.unit_leak_m3_s * math.pow(max(pressure_pa, 0.0), self.exponent)


class Jump(Struct, frozen=True):
    """A hose from one cell to another.

    Attributes:
        from_cell: Mark of the cell at its start.
        to_cell: Mark of the cell at its end; air that runs there counts as positive.
        hose: The hose.
    """

    from_cell: str
    to_cell: str
    hose: Hose


@dataclass(frozen=True, slots=True)
class Feed:
    """A hose from the blower into a cell.

    Attributes:
        into: Mark of the cell.
        hose: The hose.
        damper_k: Velocity pressures that a damper in the hose takes, zero or more.
    """

    into: str
    hose: Hose
    damper_k: float = 0.0

    @property
    def damped(self) -> Hose:
        """The hose with its damper."""
        return replace(self.hose, loss_k=self.hose.loss_k + self.damper_k)


@dataclass(frozen=True, slots=True)
class AirNet:
    """Cells, the hoses between them, and the blower with its feeds.

    Attributes:
        cells: Every cell.
        jumps: Hoses between cells.
        feeds: Hoses from the blower, at least one.
        fan: The blower's curve.
    """

    cells: tuple[AirCell, ...]
    jumps: tuple[Jump, ...]
    feeds: tuple[Feed, ...]
    fan: FanCurve

    @property
    def marks(self) -> tuple[str, ...]:
        """The marks of the cells."""
        return tuple(cell.mark for cell in self.cells)

    @property
    def links(self) -> tuple[tuple[str, str], ...]:
        """The two cells of each hose."""
        return tuple((jump.from_cell, jump.to_cell) for jump in self.jumps)

    @property
    def fed(self) -> tuple[str, ...]:
        """The cell of each feed."""
        return tuple(feed.into for feed in self.feeds)


def check_net(net: AirNet) -> None:
    """Refuse a net that cannot be settled.

    Args:
        net: The net.

    Raises:
        ValueError: The blower feeds no cell, or a leak, exponent or damper is out of its range;
            the message names the field and the mend.
    """
    if not net.feeds:
        raise ValueError("feeds: the blower feeds no cell. Lead a hose from it into one cell.")
    for cell in net.cells:
        if not 0 <= cell.unit_leak_m3_s < math.inf:
            raise ValueError(
                f"unit_leak_m3_s of {cell.mark!r} must be zero or more, not "
                f"{cell.unit_leak_m3_s!r}. Enter what leaks at one pascal."
            )
        if not LEAST_EXPONENT <= cell.exponent <= MOST_EXPONENT:
            raise ValueError(
                f"exponent of {cell.mark!r} must be from 0.5 to 1, not {cell.exponent!r}. "
                f"Enter {EXPONENT} when it is not known."
            )
    for feed in net.feeds:
        if not 0 <= feed.damper_k < math.inf:
            raise ValueError(
                f"damper_k into {feed.into!r} must be zero or more, not {feed.damper_k!r}. "
                "Enter 0 for an open damper."
            )


def split_joined(net: AirNet) -> tuple[tuple[AirCell, ...], tuple[str, ...]]:
    """Return the cells that the blower's air reaches, and the marks of the others."""
    alone = groups_without_feed(net.marks, net.links, net.fed)
    unjoined = {mark for group in alone for mark in group}
    joined = tuple(cell for cell in net.cells if cell.mark not in unjoined)
    return joined, tuple(mark for mark in net.marks if mark in unjoined)


def joined_ways(net: AirNet, joined: Sequence[AirCell]) -> tuple[Way, ...]:
    """Return the hoses that carry air as places of their ends; the blower stands after the cells.

    Args:
        net: The net.
        joined: The cells that the blower's air reaches.

    Returns:
        Start, end and hose: first the hoses between joined cells, then the feeds.
    """
    place = {cell.mark: at for at, cell in enumerate(joined)}
    between = [
        (place[jump.from_cell], place[jump.to_cell], jump.hose)
        for jump in net.jumps
        if jump.from_cell in place
    ]
    return (*between, *((len(joined), place[feed.into], feed.damped) for feed in net.feeds))
