"""A tunnel laid with film and filled with air, for the tests of cover and inflation."""

from hoopwright.cover import Cover, Piece, lay_skin
from hoopwright.farm import Bench, Tunnel
from hoopwright.farm.skin import Covering
from hoopwright.inflation import Inflation, fill_cells
from hoopwright.survey import survey_frame
from samples import small_catalogue


def laid(tunnel: Tunnel, covering: Covering = "roof_and_sides") -> Cover:
    """Return the tunnel's skin laid one way."""
    return lay_skin(
        covering,
        survey_frame(tunnel.frame),
        tunnel.skin,
        tunnel.sides,
        tunnel.ends,
        small_catalogue().films,
        tunnel.air.inflated_sides,
    )


def filled(
    tunnel: Tunnel,
    covering: Covering = "roof_and_sides",
    bench: Bench | None = None,
    old_places: frozenset[str] = frozenset(),
) -> Inflation:
    """Return the tunnel's cells with the skin laid one way."""
    return fill_cells(
        survey_frame(tunnel.frame),
        tunnel.skin,
        tunnel.sides,
        tunnel.ends,
        tunnel.air,
        laid(tunnel, covering),
        bench or Bench(),
        old_places,
    )


def of_role(cover: Cover, role: str) -> list[Piece]:
    """Return the sheets of one role, in order."""
    return [piece for piece in cover.pieces if piece.role == role]
