"""Tunnels laid and counted with the parts of the demo catalogue."""

from collections.abc import Iterable
from importlib.resources import files

import msgspec

from hoopwright.airing import air_tunnel
from hoopwright.cover import lay_skin
from hoopwright.curtain import work_curtains
from hoopwright.farm import Bench, Catalogue, Limits, Tunnel, Weather
from hoopwright.farm.skin import Covering
from hoopwright.inflation import fill_cells
from hoopwright.outfit import fit_out
from hoopwright.quantity.working import words
from hoopwright.survey import survey_frame
from hoopwright.takeoff import Need, count_parts
from hoopwright.takeoff.site import Site
from samples import small_catalogue


def demo_catalogue() -> Catalogue:
    """Return the catalogue that comes with the program."""
    text = files("hoopwright.resources").joinpath("catalogue.json").read_bytes()
    return msgspec.json.decode(text, type=Catalogue)


def whole_catalogue() -> Catalogue:
    """Return the demo parts, bars and drives, and what the small tunnels name.

    The small bar comes in sticks of 6 m of which a joint takes 0.1 m.
    """
    small, demo = small_catalogue(), demo_catalogue()
    parts = tuple(p for p in small.parts if p.key not in ("blower", "jumper_hose"))
    return small.but(
        bars=(*small.bars, *demo.bars),
        drives=(*small.drives, *demo.drives),
        parts=(*parts, *demo.parts),
    )


def site(
    tunnel: Tunnel,
    covering: Covering = "roof_and_sides",
    catalogue: Catalogue | None = None,
) -> Site:
    """Return a tunnel after survey, cover, curtains and air, ready to be counted."""
    catalogue = catalogue or whole_catalogue()
    survey = survey_frame(tunnel.frame)
    skin, sides, ends, air = tunnel.skin, tunnel.sides, tunnel.ends, tunnel.air
    cover = lay_skin(covering, survey, skin, sides, ends, catalogue.films, air.inflated_sides)
    curtains = work_curtains(
        tunnel.frame.boards,
        survey,
        sides,
        cover,
        catalogue.bars,
        catalogue.drives,
        catalogue.parts,
        Limits(),
        Weather(),
        skin.allowances.bar_wrap_m,
    )
    return Site(
        frame=tunnel.frame,
        survey=survey,
        skin=skin,
        sides=sides,
        ends=ends,
        air=air,
        cover=cover,
        curtains=curtains,
        inflation=fill_cells(survey, skin, sides, ends, air, cover, Bench()),
        outfit=fit_out(
            survey,
            tunnel.frame.boards,
            sides,
            cover,
            air_tunnel(survey, sides, curtains, Weather()),
            tunnel.rain,
            tunnel.shade,
        ),
        catalogue=catalogue,
    )


def count(
    tunnel: Tunnel,
    covering: Covering = "roof_and_sides",
    catalogue: Catalogue | None = None,
) -> tuple[Need, ...]:
    """Return the needs of a tunnel."""
    s = site(tunnel, covering, catalogue)
    return count_parts(
        s.frame,
        s.survey,
        s.skin,
        s.sides,
        s.ends,
        s.air,
        s.cover,
        s.curtains,
        s.inflation,
        s.outfit,
        s.catalogue,
    )


def places(needs: Iterable[Need], part: str) -> list[tuple[str, float]]:
    """Return where a part goes and how much of it, to the millimetre."""
    return [(words(n.where, "metric"), round(n.quantity, 3)) for n in needs if n.part == part]


def total(needs: Iterable[Need], part: str, mark: str = "") -> float:
    """Return how much of a part is needed, at one mark or everywhere."""
    return sum(n.quantity for n in needs if n.part == part and (not mark or mark in n.marks))
