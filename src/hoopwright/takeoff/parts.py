"""Count the parts of one tunnel: a table of rules, each a small function from the site to needs."""

from collections.abc import Callable, Iterator

from hoopwright.cover.cover import Cover
from hoopwright.curtain.curtain import CurtainWork
from hoopwright.farm.air import Air
from hoopwright.farm.catalogue import Catalogue
from hoopwright.farm.frame import Frame
from hoopwright.farm.side import Side
from hoopwright.farm.skin import End, Skin
from hoopwright.inflation.inflation import Inflation
from hoopwright.outfit.outfit import Outfit
from hoopwright.survey.survey import Survey
from hoopwright.takeoff.air_parts import count_air, count_tapes
from hoopwright.takeoff.curtain_parts import count_curtains
from hoopwright.takeoff.end_parts import count_rigid
from hoopwright.takeoff.need import Need
from hoopwright.takeoff.outfit_parts import count_outfit
from hoopwright.takeoff.runs import count_boards, count_channel
from hoopwright.takeoff.site import Site

RULES: tuple[Callable[[Site], Iterator[Need]], ...] = (
    count_channel,
    count_boards,
    count_rigid,
    count_curtains,
    count_air,
    count_tapes,
    count_outfit,
)


def count_parts(
    frame: Frame,
    survey: Survey,
    skin: Skin,
    sides: tuple[Side, Side],
    ends: tuple[End, End],
    air: Air,
    cover: Cover,
    curtains: tuple[CurtainWork, ...],
    inflation: Inflation,
    outfit: Outfit,
    catalogue: Catalogue,
) -> tuple[Need, ...]:
    """Return what each place of a tunnel needs of each part, film apart.

    Args:
        frame: The frame as measured.
        survey: The frame as built.
        skin: What goes on it; the covering counted is that of `cover`.
        sides: First and second side.
        ends: Front and back end wall.
        air: Air between two layers.
        cover: The skin as laid.
        curtains: How each curtain works.
        inflation: Seals, cells, jumpers.
        outfit: Gutters, shade cloth, insect screens.
        catalogue: What can be bought. A part it lacks is counted all the same.

    Returns:
        Needs in metres of run or in pieces, none of them zero.

    Source:
        Rule by rule in the functions of the table.
    """
    site = Site(
        frame=frame,
        survey=survey,
        skin=skin,
        sides=sides,
        ends=ends,
        air=air,
        cover=cover,
        curtains=curtains,
        inflation=inflation,
        outfit=outfit,
        catalogue=catalogue,
    )
    return tuple(found for rule in RULES for found in rule(site) if found.quantity > 0)
