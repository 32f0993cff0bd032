"""Changes of the readings of a frame: one number at a time, as the tape is read."""

from hoopwright.farm.change import with_value
from hoopwright.farm.farm import Tunnel
from hoopwright.farm.frame import bow_positions
from hoopwright.farm.tape import BowReading

BowField = tuple[str | int, ...]

LEAST_BOWS = 5
"""Girths are taken at this many bows or more; common practice, no published source."""


def with_bow_value(tunnel: Tunnel, bow: int, field: BowField, value: float | None) -> Tunnel:
    """Return the tunnel with one reading at a bow written, changed or taken away.

    Args:
        tunnel: The tunnel as entered.
        bow: Number of the bow, 1 at the front end.
        field: Path inside the row of the bow, such as ("over_hips_m",) or ("sides", 0, "hip_m").
        value: The reading, m; None when there is none.

    Raises:
        ValueError: The reading cannot be; the field is named.
    """
    tape = tunnel.frame.tape
    row = with_value(tape.at(bow), field, value)
    assert isinstance(row, BowReading)
    kept = [reading for reading in tape.bows if reading.bow != bow]
    if not row.is_empty:
        kept.append(row)
    rows = tuple(sorted(kept, key=lambda reading: reading.bow))
    return tunnel.but(frame=tunnel.frame.but(tape=tape.but(bows=rows)))


def suggested_bows(tunnel: Tunnel) -> tuple[int, ...]:
    """Return the bows to measure: both ends and three spread between, or all where there are fewer.

    Source:
        Common practice, no published source.
    """
    count = len(bow_positions(tunnel.frame.bows))
    if count <= LEAST_BOWS:
        return tuple(range(1, count + 1))
    steps = LEAST_BOWS - 1
    return tuple(1 + round(n * (count - 1) / steps) for n in range(LEAST_BOWS))
