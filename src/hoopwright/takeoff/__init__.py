"""Count what the skin takes, and what of the old one stays."""

from hoopwright.takeoff.condition import keep_parts
from hoopwright.takeoff.kept_film import KeptSheet, Sheets, keep_film, mend_film
from hoopwright.takeoff.need import Need
from hoopwright.takeoff.parts import count_parts

__all__ = ["KeptSheet", "Need", "Sheets", "count_parts", "keep_film", "keep_parts", "mend_film"]
