"""The small tunnel of two layers, filled and held under pressure, for the tests of what follows."""

from dataclasses import dataclass, replace

from hoopwright.cover import Cover
from hoopwright.farm import Bench, Catalogue, Climate, Tunnel
from hoopwright.inflation import Inflation, fill_cells
from hoopwright.pressure import Held, hold_air
from hoopwright.survey import Survey, survey_frame
from laying import laid
from samples import double_tunnel, small_catalogue


@dataclass(frozen=True)
class Filled:
    """A tunnel up to the stage before its cells are held under pressure."""

    tunnel: Tunnel
    survey: Survey
    cover: Cover
    inflation: Inflation
    catalogue: Catalogue

    def held(self, bench: Bench | None = None, climate: Climate | None = None) -> Held:
        """Return its cells under pressure."""
        return hold_air(
            self.inflation,
            self.tunnel.air,
            self.tunnel.skin,
            self.tunnel.sides,
            self.catalogue.films,
            self.catalogue.blowers,
            self.catalogue.hoses,
            bench or Bench(),
            climate or Climate(),
            self.survey,
            self.cover,
        )

    def with_catalogue(self, **changes: object) -> "Filled":
        """Return the same with another catalogue."""
        return replace(self, catalogue=self.catalogue.but(**changes))


def filled(tunnel: Tunnel | None = None, **air: object) -> Filled:
    """Return a tunnel filled, the double one unless given, with its air changed."""
    made = tunnel or double_tunnel()
    made = made.but(air=made.air.but(**air))
    survey = survey_frame(made.frame)
    cover = laid(made, made.skin.covering)
    inflation = fill_cells(survey, made.skin, made.sides, made.ends, made.air, cover, Bench())
    return Filled(made, survey, cover, inflation, small_catalogue())


def with_ends(tunnel: Tunnel) -> Tunnel:
    """Return the tunnel with inflated end walls of two layers."""
    return tunnel.but(
        ends=tuple(end.but(film=tunnel.skin.roof) for end in tunnel.ends),
        air=tunnel.air.but(inflated_ends=(True, True)),
    )
