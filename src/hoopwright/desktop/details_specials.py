"""Values that are entered as one and stand in several places: how each is read and changed."""

from collections.abc import Callable

from msgspec import Struct

from hoopwright.desktop.details_items import SpecialKind
from hoopwright.farm import (
    Catalogue,
    Heating,
    ListedBows,
    MeasuredBow,
    Tunnel,
    bow_positions,
    change,
)
from hoopwright.farm.change_ends import cover_of, set_end_cover
from hoopwright.farm.change_extras import set_rain, set_screen, set_shade
from hoopwright.farm.change_shape import (
    SHAPES,
    outline_step,
    point_taken,
    with_point_taken,
    with_shape,
)
from hoopwright.survey.bow_curve import bow_curve

Read = Callable[[Tunnel, int], object]
Change = Callable[[Tunnel, int, object, Catalogue], Tunnel]


class Known(Struct, frozen=True):
    """How a special value is read from a tunnel and written to one.

    Attributes:
        read: Returns the value at a place.
        change: Returns the tunnel with another value there; ValueError says why it cannot be.
    """

    read: Read
    change: Change


def _shape(tunnel: Tunnel, _place: int) -> object:
    return SHAPES[type(tunnel.frame.profile)]


def _with_shape(tunnel: Tunnel, _place: int, shape: object, _catalogue: Catalogue) -> Tunnel:
    profile = tunnel.frame.profile
    assert shape in ("round", "gothic", "rafters", "measured")
    if shape != "measured":
        return with_shape(tunnel, shape, ())
    outline = bow_curve(profile, 0.0).outline(outline_step(profile))
    return with_shape(tunnel, shape, outline)


def _taken(tunnel: Tunnel, place: int) -> object:
    bow = tunnel.frame.profile
    assert isinstance(bow, MeasuredBow)
    return point_taken(bow.points[place])


def _with_taken(tunnel: Tunnel, place: int, taken: object, _catalogue: Catalogue) -> Tunnel:
    assert taken in ("across_up", "two_tapes")
    return with_point_taken(tunnel, place, taken)


def _positions(tunnel: Tunnel, _place: int) -> object:
    return bow_positions(tunnel.frame.bows)


def _with_positions(tunnel: Tunnel, _place: int, spots: object, _catalogue: Catalogue) -> Tunnel:
    assert isinstance(spots, tuple)
    return change.with_tunnel_value(tunnel, ("frame", "bows"), ListedBows(positions_m=spots))


def _end_cover(tunnel: Tunnel, place: int) -> object:
    return cover_of(tunnel.ends[place])


def _with_end_cover(tunnel: Tunnel, place: int, cover: object, catalogue: Catalogue) -> Tunnel:
    assert cover in ("film", "rigid", "open")
    return set_end_cover(tunnel, place, cover, catalogue)


def _heated(tunnel: Tunnel, _place: int) -> object:
    return tunnel.heating is not None


def _with_heated(tunnel: Tunnel, _place: int, heated: object, _catalogue: Catalogue) -> Tunnel:
    return change.with_tunnel_value(tunnel, ("heating",), Heating() if heated else None)


def _rain(tunnel: Tunnel, _place: int) -> object:
    return tunnel.rain is not None


def _with_rain(tunnel: Tunnel, _place: int, have: object, _catalogue: Catalogue) -> Tunnel:
    return set_rain(tunnel, bool(have))


def _shade(tunnel: Tunnel, _place: int) -> object:
    return tunnel.shade is not None


def _with_shade(tunnel: Tunnel, _place: int, have: object, catalogue: Catalogue) -> Tunnel:
    return set_shade(tunnel, bool(have), catalogue)


def _screen(tunnel: Tunnel, place: int) -> object:
    return tunnel.sides[place].screen is not None


def _with_screen(tunnel: Tunnel, place: int, have: object, catalogue: Catalogue) -> Tunnel:
    return set_screen(tunnel, place, bool(have), catalogue)


SPECIALS: dict[SpecialKind, Known] = {
    "shape": Known(_shape, _with_shape),
    "taken": Known(_taken, _with_taken),
    "positions": Known(_positions, _with_positions),
    "end_cover": Known(_end_cover, _with_end_cover),
    "heated": Known(_heated, _with_heated),
    "rain": Known(_rain, _with_rain),
    "shade": Known(_shade, _with_shade),
    "screen": Known(_screen, _with_screen),
}
