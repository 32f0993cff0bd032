"""What each line of a form offers: read from the model, the catalogue and the tunnel."""

from collections.abc import Callable
from typing import Any, Literal, get_args, get_origin

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication

from hoopwright.desktop.details_items import Entry, Special
from hoopwright.desktop.details_words import choice_words
from hoopwright.farm import Air, End, Panel, PartState, RigidSheet, Screen, Shade, Side
from hoopwright.farm.change import is_close, value_at
from hoopwright.farm.change_ends import EndCover, end_seam_range
from hoopwright.farm.change_shape import SHAPES, Taken
from hoopwright.farm.condition import FILM
from hoopwright.farm.farm import Farm, Tunnel, fits_bar, fits_drive
from hoopwright.quantity.units import format_length

Choices = tuple[tuple[object, str], ...]

# Which hose is taken where none was chosen.
PLAIN_HOSE: dict[str, object] = {
    "feed_hose": QT_TRANSLATE_NOOP("Details", "the widest there is"),
    "jumper_hose": QT_TRANSLATE_NOOP("Details", "the first one listed"),
}


def special_choices(item: Special) -> Choices | None:
    """Return what a special line offers, or None when it is ticked or listed."""
    codes: tuple[object, ...]
    if item.kind == "shape":
        codes = tuple(SHAPES.values())
    elif item.kind == "taken":
        codes = get_args(Taken)
    elif item.kind == "end_cover":
        codes = get_args(EndCover)
    else:
        return None
    return tuple((code, choice_words(code, item.kind)) for code in codes)


def choices_of(item: Entry, kind: Any, farm: Farm, tunnel: Tunnel) -> Choices | None:
    """Return what a line offers to choose from, or None when it is typed or ticked.

    Args:
        item: The line.
        kind: The type that it holds.
        farm: The farm, for units and catalogue.
        tunnel: The shown tunnel, for what hangs on it.
    """
    if item.owner is PartState and item.name == "where":
        return _places(tunnel)
    if get_origin(kind) is Literal:
        return tuple((value, choice_words(value, item.name)) for value in get_args(kind))
    films = tuple((film.key, film.name) for film in farm.catalogue.films)
    if item.name in ("outer", "inner"):
        return films
    if item.name == "film" and item.owner is Side:
        return ((None, QCoreApplication.translate("Details", "as the skin says")), *films)
    of_owner = _OF_OWNER.get(item.owner)
    return None if of_owner is None else of_owner(item, farm, tunnel)


def _places(tunnel: Tunnel) -> Choices:
    """Return the parts of a tunnel, by the names that its sides and ends have."""
    names = {
        "everywhere": choice_words("everywhere"),
        "roof": choice_words("roof", "where"),
        **dict(zip(("first_side", "second_side"), (s.name for s in tunnel.sides), strict=True)),
        **dict(zip(("front_end", "back_end"), (e.name for e in tunnel.ends), strict=True)),
    }
    return tuple(names.items())


def _families(item: Entry, farm: Farm, _tunnel: Tunnel) -> Choices | None:
    """Return film and every group of the catalogue's parts, each once."""
    if item.name != "family":
        return None
    film = QCoreApplication.translate("Details", "film")
    groups = dict.fromkeys(part.group for part in farm.catalogue.parts)
    return ((FILM, film), *((group, group) for group in groups if group != FILM))


def _parts_like_it(item: Entry, farm: Farm, tunnel: Tunnel) -> Choices | None:
    """Return the parts of the group of what is chosen, those that are counted as it is."""
    if item.name != "part":
        return None
    chosen = farm.catalogue.part(value_at(tunnel, item.path))
    return tuple(
        (part.key, part.name)
        for part in farm.catalogue.parts
        if (part.group, part.counted_in) == (chosen.group, chosen.counted_in)
    )


def _seams(item: Entry, farm: Farm, tunnel: Tunnel) -> Choices | None:
    """Return the rails that a seam can lie on, and where it lies when that is no rail."""
    if item.name != "seams_m":
        return None
    end, index = item.path[1], item.path[3]
    assert isinstance(end, int)
    assert isinstance(index, int)
    wall, (low_m, high_m) = tunnel.ends[end], end_seam_range(tunnel, end, index)
    seam_m = wall.seams_m[index]
    on_rail = QCoreApplication.translate("Details", "on rail {number}, {height}")
    off = QCoreApplication.translate("Details", "{height}, on no rail")
    found: list[tuple[object, str]] = []
    for n, rail_m in enumerate(wall.rails_m):
        mine = is_close(rail_m, seam_m)
        if mine or low_m <= rail_m <= high_m:
            words = on_rail.format(number=n + 1, height=format_length(rail_m, farm.units))
            found.append((seam_m if mine else rail_m, words))
    if all(height_m != seam_m for height_m, _words in found):
        found.insert(0, (seam_m, off.format(height=format_length(seam_m, farm.units))))
    return tuple(found)


def _of_air(item: Entry, farm: Farm, _tunnel: Tunnel) -> Choices | None:
    """Return the blowers or hoses of the catalogue, each list with what None stands for."""
    catalogue = farm.catalogue
    if item.name == "blower":
        return ((None, choice_words(None)), *((b.key, b.name) for b in catalogue.blowers))
    if item.name not in PLAIN_HOSE:
        return None
    plain = QCoreApplication.translate("Details", str(PLAIN_HOSE[item.name]))
    return ((None, plain), *((h.key, h.name) for h in catalogue.hoses))


def _hardware(item: Entry, farm: Farm, tunnel: Tunnel) -> Choices:
    """Return the bars or drives that fit the kind of side a curtain hangs on."""
    side = item.path[1]
    assert isinstance(side, int)
    kind, catalogue = tunnel.sides[side].kind, farm.catalogue
    if item.name == "bar":
        return tuple((bar.key, bar.name) for bar in catalogue.bars if fits_bar(kind, bar))
    return tuple((drive.key, drive.name) for drive in catalogue.drives if fits_drive(kind, drive))


_OF_OWNER: dict[type, Callable[[Entry, Farm, Tunnel], Choices | None]] = {
    Panel: _hardware,
    Air: _of_air,
    PartState: _families,
    End: _seams,
    RigidSheet: _parts_like_it,
    Shade: _parts_like_it,
    Screen: _parts_like_it,
}
