"""The lines for what is picked: what can be changed of it, and its figures with their workings."""

from collections.abc import Callable, Iterator

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication

from hoopwright.desktop.cranks import numbers_in
from hoopwright.desktop.details_air import air_items, jumper_acts, jumper_items
from hoopwright.desktop.details_curtain import curtain_items
from hoopwright.desktop.details_ends import (
    cut_items,
    door_items,
    end_seam_items,
    one_end_items,
    rail_items,
)
from hoopwright.desktop.details_fit import piece_fit_items, roof_fit_items
from hoopwright.desktop.details_frame import frame_items, survey_items
from hoopwright.desktop.details_items import (
    Act,
    Entry,
    Figure,
    Heading,
    Item,
    entries,
    explained,
    figure,
    figures,
)
from hoopwright.desktop.details_readings import height_hints
from hoopwright.desktop.details_tunnel import (
    keep_items,
    one_side_items,
    pocket_items,
    seam_items,
    split_items,
)
from hoopwright.desktop.session import Session
from hoopwright.desktop.tags import place_name
from hoopwright.farm import ListedBows
from hoopwright.quantity.working import Term

Rows = tuple[tuple[str, str, object], ...]

CELL_FIGURES: Rows = (
    ("from_m", "m", QT_TRANSLATE_NOOP("Details", "from")),
    ("to_m", "m", QT_TRANSLATE_NOOP("Details", "to")),
    ("volume_m3", "m3", QT_TRANSLATE_NOOP("Details", "air in it")),
    ("area_m2", "m2", QT_TRANSLATE_NOOP("Details", "film that leaks")),
)
FILM_LINES = ("width_minus_share", "thermal", "modulus_pa", "yield_pa", "expansion_per_k")


def picked_lines(session: Session) -> tuple[str, tuple[Item, ...]]:
    """Return the name of what is picked and its lines; nothing for what is no longer there."""
    mark = session.mark
    maker = _MAKERS.get(mark.split("/")[0])
    if maker is None:
        return "", ()
    try:
        items = tuple(maker(session, mark))
        title = place_name(mark, session.tunnel, session.tunnel_plan, session.units)
    except LookupError:
        return "", ()
    return title, items


def _rows(rows: Rows) -> Iterator[tuple[str, str, str]]:
    return ((n, unit, QCoreApplication.translate("Details", str(words))) for n, unit, words in rows)


def _side(session: Session, mark: str) -> Iterator[Item]:
    parts = mark.split("/")
    n, kind, rest = int(parts[1]), (parts[2] if len(parts) > 2 else ""), parts[3:]
    side = session.tunnel.sides[n]
    if kind in ("hip", "baseboard"):
        boards = session.tunnel.frame.boards[n]
        name = "hip_height_m" if kind == "hip" else "baseboard_height_m"
        made = "hip_board" if kind == "hip" else "baseboard"
        yield from entries("tunnel", ("frame", "boards", n), boards, name, made)
        read = "hip_m" if kind == "hip" else "baseboard_m"
        yield from height_hints(session.tunnel.frame.tape, n, read)
    elif kind == "split":
        yield from split_items(session, n, int(rest[0]))
        yield from keep_items(session, n)
    elif kind == "panel":
        yield from curtain_items(session, n, int(rest[0]))
    elif kind == "pocket":
        yield from pocket_items(n, 0 if rest[0] == "front" else 1)
        yield from _fixed(session, mark)
    elif kind in ("strip", "fixed"):
        yield from split_items(session, n, int(rest[0])) if kind == "strip" else ()
        yield from entries("tunnel", ("sides", n), side, "kind") if kind == "fixed" else ()
        yield from _fixed(session, mark)
    else:
        yield from one_side_items(session, n)


def _fixed(session: Session, mark: str) -> Iterator[Item]:
    spans = session.tunnel_plan.chosen.cover.fixed
    span = next((s for s in spans if s.mark == mark), None)
    if span is not None:
        first = QCoreApplication.translate("Details", "from")
        last = QCoreApplication.translate("Details", "to")
        yield figure(first, span.from_m, "m", session.units, None)
        yield figure(last, span.to_m, "m", session.units, None)


def _roof(session: Session, mark: str) -> Iterator[Item]:
    parts = mark.split("/")
    skin, cover = session.tunnel.skin, session.tunnel_plan.chosen.cover
    if parts[1:2] == ["seam"]:
        assert skin.cross_seams_m[int(parts[2])] >= 0
        yield from seam_items(int(parts[2]))
        return
    yield from entries("tunnel", ("skin",), skin, "covering")
    yield from entries("tunnel", ("skin", "roof"), skin.roof)
    yield from entries("tunnel", ("skin", "allowances"), skin.allowances, "end_tail_m")
    label = QCoreApplication.translate("Details", "width of the sheet")
    how = explained(cover, "sheet_width_m")
    yield figure(label, cover.sheet_width_m, "m", session.units, how)
    yield from roof_fit_items(session)
    yield Act("add seam", (), QCoreApplication.translate("Details", "Add a cross seam"))


def _end(session: Session, mark: str) -> Iterator[Item]:
    parts = mark.split("/")
    n, kind = int(parts[1]), (parts[2] if len(parts) > 2 else "")
    if kind == "door":
        yield from door_items(session, n, int(parts[3]))
    elif kind == "cut":
        yield from cut_items(session, n, int(parts[3]))
    elif kind == "rail":
        assert session.tunnel.ends[n].rails_m[int(parts[3])] > 0
        yield from rail_items(n, int(parts[3]))
    elif kind == "seam":
        assert session.tunnel.ends[n].seams_m[int(parts[3])] > 0
        yield from end_seam_items(n, int(parts[3]))
    else:
        yield from one_end_items(session, n)


def _piece(session: Session, mark: str) -> Iterator[Item]:
    piece = next((p for p in session.tunnel_plan.chosen.cover.pieces if p.mark == mark), None)
    if piece is None:
        raise KeyError(mark)
    place = next(n for n, f in enumerate(session.farm.catalogue.films) if f.key == piece.film)
    film = session.farm.catalogue.films[place]
    yield Figure(QCoreApplication.translate("Details", "film"), film.name)
    width = QCoreApplication.translate("Details", "Width across the roll")
    length = QCoreApplication.translate("Details", "Length along the roll")
    for words, terms, value_m, name in (
        (width, piece.width_terms, piece.width_m, "width_m"),
        (length, piece.length_terms, piece.length_m, "length_m"),
    ):
        yield Heading(words)
        yield from _terms(terms, session)
        total = QCoreApplication.translate("Details", "together")
        yield figure(total, value_m, "m", session.units, explained(piece, name))
    yield from piece_fit_items(session, mark)
    yield Heading(QCoreApplication.translate("Details", "Sheet"))
    area = QCoreApplication.translate("Details", "area")
    mass = QCoreApplication.translate("Details", "mass")
    rows = (("area_m2", "m2", area), ("mass_kg", "kg", mass))
    yield from figures(piece, rows, session.units)
    title = QCoreApplication.translate("Details", "Film, wherever it is used: {name}")
    yield Heading(title.format(name=film.name))
    yield from entries("farm", ("catalogue", "films", place), film, *FILM_LINES)


def _terms(terms: tuple[Term, ...], session: Session) -> Iterator[Figure]:
    return (figure(t.name, t.value, t.unit, session.units, None) for t in terms)


def _bow(session: Session, mark: str) -> Iterator[Item]:
    n = int(mark.split("/")[1])
    bows, spots = session.tunnel.frame.bows, session.tunnel_plan.survey.bows_m
    label = QCoreApplication.translate("Details", "bow {number}, from the front")
    label = label.format(number=n + 1)
    if isinstance(bows, ListedBows) and n > 0:
        path = ("frame", "bows", "positions_m", n)
        assert spots[n] > 0
        yield Entry("tunnel", path, ListedBows, "positions_m", label)
    else:
        yield figure(label, spots[n], "m", session.units, None)
    if not isinstance(bows, ListedBows):
        yield from entries("tunnel", ("frame", "bows"), bows, "spacing_m")
        yield Act("list bows", (), QCoreApplication.translate("Details", "List the bows"))
    for side in range(len(session.tunnel.sides)):
        yield from keep_items(session, side)


def _cell(session: Session, mark: str) -> Iterator[Item]:
    cells = session.tunnel_plan.chosen.inflation.cells
    cell = next((c for c in cells if c.mark == mark), None)
    if cell is None:
        raise KeyError(mark)
    yield from figures(cell, _rows(CELL_FIGURES), session.units)
    yield from air_items(session)


def _jumper(session: Session, mark: str) -> Iterator[Item]:
    inflation = session.tunnel_plan.chosen.inflation
    jumper = next((j for j in inflation.jumpers if j.mark == mark), None)
    if jumper is None:
        raise KeyError(mark)
    names = {cell.mark: cell.name for cell in inflation.cells}
    first = QCoreApplication.translate("Details", "air comes from")
    last = QCoreApplication.translate("Details", "and fills")
    yield from jumper_items(numbers_in(mark)[0])
    yield Figure(first, names.get(jumper.from_cell, ""))
    yield Figure(last, names.get(jumper.to_cell, ""))
    yield from jumper_acts(session)


def _air(session: Session, _mark: str) -> Iterator[Item]:
    return air_items(session)


def _frame(session: Session, _mark: str) -> Iterator[Item]:
    yield from frame_items(session)
    yield Heading(QCoreApplication.translate("Details", "Figures of the frame"))
    yield from survey_items(session)


_MAKERS: dict[str, Callable[[Session, str], Iterator[Item]]] = {
    "side": _side,
    "roof": _roof,
    "end": _end,
    "piece": _piece,
    "bow": _bow,
    "cell": _cell,
    "jumper": _jumper,
    "air": _air,
    "frame": _frame,
}
