"""Which sides have sheets of their own, and the films their curtains are made of."""

from hoopwright.cover.cover import LayerName
from hoopwright.farm import Layers, Side, Skin
from hoopwright.farm.skin import Covering

NamedFilm = tuple[LayerName, str]


def own_sheets(side: Side, covering: Covering) -> bool:
    """Return whether a side has sheets of its own, so that the roof's sheet ends at its hip.

    A woven curtain slides into a profile and a drop-down one hangs from below: neither can be the
    tail of one sheet from baseboard to baseboard.
    """
    return covering == "roof_and_sides" or side.kind in ("woven", "drop_down")


def layer_films(layers: Layers) -> tuple[NamedFilm, ...]:
    """Return name and film key of each layer, the outer one first."""
    if layers.count == 1:
        return (("single", layers.outer),)
    return (("outer", layers.outer), ("inner", layers.inner))


def curtain_films(side: Side, skin: Skin, covering: Covering) -> tuple[NamedFilm, ...]:
    """Return name and film key of each layer of a side's curtains, the outer one first.

    Curtains of one sheet are of the roof's film. A woven or a drop-down curtain, and one that is
    given a film of its own, has one layer.
    """
    if not own_sheets(side, covering):
        return layer_films(skin.roof)
    if side.film is None and side.kind not in ("woven", "drop_down"):
        return layer_films(skin.sides)
    return (("single", side.film or skin.sides.outer),)
