"""The end walls: areas, openings, rails and seams, sheets of film or rigid sheets."""

from collections.abc import Iterator
from typing import NamedTuple

from hoopwright.cover.cover import Piece
from hoopwright.cover.end_laid import Column, Crossing, EndLaid, Opening, RigidWall
from hoopwright.farm.farm import Farm, Tunnel
from hoopwright.papers.sheet import NOTE, TITLE, Sheet, wide_row
from hoopwright.papers.sheet_figures import Figure, listed_rows
from hoopwright.papers.sheets_film import caution_note
from hoopwright.plan import Plan, TunnelPlan
from hoopwright.quantity.units import show
from hoopwright.quantity.working import Explained

ENDS_WIDTHS = (20.0, 20.0, *(13.0 for _ in range(9)))
LAST = len(ENDS_WIDTHS)
CLOSED = {"film": "film", "rigid": "rigid sheets", "open": "nothing"}
SEEN = (
    "Left edges are seen from outside and measured from the middle between the feet of the bow; to "
    "the left of it they are negative. At the back end the second side is at the left."
)


class _Wall(NamedTuple):
    tunnel: Tunnel
    number: int
    laid: EndLaid

    @property
    def name(self) -> str:
        """Name of the end wall."""
        return self.tunnel.ends[self.number].name


class _Cut(NamedTuple):
    wall: _Wall
    opening: Opening


class _Level(NamedTuple):
    wall: _Wall
    kind: str
    line: Crossing


class _Sheet(NamedTuple):
    wall: _Wall
    piece: Piece
    tail: str


class _Rigid(NamedTuple):
    wall: _Wall
    laid: RigidWall


class _Upright(NamedTuple):
    wall: _Wall
    number: int
    column: Column


WALLS: tuple[Figure[_Wall], ...] = (
    Figure("Tunnel", lambda w: w.tunnel.name),
    Figure("End wall", lambda w: w.name),
    Figure("Closed with", lambda w: CLOSED[w.laid.closed]),
    Figure("Widest", lambda w: w.laid.widest_m, "m"),
    Figure("Height of that", lambda w: w.laid.widest_at_m, "m"),
    Figure("Ridge", lambda w: w.laid.height_m, "m"),
    Figure("Inside the bow", lambda w: w.laid.gross_m2, "m2"),
    Figure("Openings", lambda w: w.laid.openings_m2, "m2"),
    Figure("Closed", lambda w: w.laid.net_m2, "m2"),
    Figure("Foot on the ground", lambda w: w.laid.foot_m, "m"),
)
OPENINGS: tuple[Figure[_Cut], ...] = (
    Figure("Tunnel", lambda c: c.wall.tunnel.name),
    Figure("End wall", lambda c: c.wall.name),
    Figure("Opening", lambda c: f"{c.opening.use} {c.opening.number + 1}"),
    Figure("Wide", lambda c: c.opening.width_m, "m"),
    Figure("High", lambda c: c.opening.height_m, "m"),
    Figure("Left edge", lambda c: c.opening.box.left_m, "m"),
    Figure("Sill", lambda c: c.opening.box.low_m, "m"),
    Figure("Lies in the wall", lambda c: "yes" if c.opening.inside else "no"),
)
LEVELS: tuple[Figure[_Level], ...] = (
    Figure("Tunnel", lambda v: v.wall.tunnel.name),
    Figure("End wall", lambda v: v.wall.name),
    Figure("What", lambda v: v.kind),
    Figure("Height", lambda v: v.line.at_m, "m"),
    Figure("From side to side", lambda v: v.line.right_m - v.line.left_m, "m"),
    Figure("Free of openings", lambda v: v.line.free_m, "m"),
)
FILM: tuple[Figure[_Sheet], ...] = (
    Figure("Tunnel", lambda s: s.wall.tunnel.name),
    Figure("Sheet", lambda s: s.piece.name),
    Figure("Across the roll", lambda s: s.piece.width_m, "size"),
    Figure("Along the roll", lambda s: s.piece.length_m, "size"),
    Figure("From height", lambda s: s.piece.areas[0].low_m, "m"),
    Figure("To height", lambda s: s.piece.areas[0].high_m, "m"),
    Figure("Tail at each edge", lambda s: s.tail, width=16.0),
)
RIGID: tuple[Figure[_Rigid], ...] = (
    Figure("Tunnel", lambda r: r.wall.tunnel.name),
    Figure("End wall", lambda r: r.wall.name),
    Figure("Sheets", lambda r: r.laid.sheet_count, "count"),
    Figure("Their area", lambda r: r.laid.sheet_area_m2, "m2"),
    Figure("Waste", lambda r: r.laid.waste_m2, "m2"),
)
COLUMNS: tuple[Figure[_Upright], ...] = (
    Figure("Tunnel", lambda u: u.wall.tunnel.name),
    Figure("End wall", lambda u: u.wall.name),
    Figure("Column from the left", lambda u: u.number, "count"),
    Figure("Left edge", lambda u: u.column.left_m, "m"),
    Figure("Right edge", lambda u: u.column.right_m, "m"),
    Figure("Lowest sheet", lambda u: u.column.cuts_m[0], "size"),
    Figure("Sheet above", lambda u: u.column.cuts_m[-1] if u.column.cuts_m[1:] else None, "size"),
    Figure("Sheets", lambda u: len(u.column.cuts_m), "count"),
)


def ends_sheet(farm: Farm, plan: Plan) -> Sheet:
    """Return the end walls of all tunnels: areas, openings, rails, seams and sheets."""
    units = farm.units
    planned = list(zip(farm.tunnels, plan.tunnels, strict=True))
    walls = [wall for tunnel, made in planned for wall in _walls(tunnel, made)]
    openings = [_Cut(wall, opening) for wall in walls for opening in wall.laid.openings]
    levels = [level for wall in walls for level in _levels(wall)]
    sheets = [
        sheet
        for tunnel, made in planned
        for sheet in _sheets(
            tunnel, made, show(tunnel.skin.allowances.end_wall_tail_m, "m", farm.units)
        )
    ]
    rigid = [_Rigid(wall, wall.laid.rigid) for wall in walls if wall.laid.rigid is not None]
    columns = [
        _Upright(one.wall, number, column)
        for one in rigid
        for number, column in enumerate(one.laid.columns, start=1)
    ]
    none = "No end wall has one."
    rows = [
        wide_row("End walls", TITLE, LAST),
        wide_row(SEEN, NOTE, LAST),
        *listed_rows("End walls", WALLS, walls, units, LAST, none),
        *listed_rows("Doors, vents and fan openings", OPENINGS, openings, units, LAST, none),
        *listed_rows("Rails and seams", LEVELS, levels, units, LAST, none),
        *listed_rows("Sheets of film", FILM, sheets, units, LAST, none),
        *listed_rows("Rigid sheets", RIGID, rigid, units, LAST, none),
        *listed_rows("Columns of rigid sheets", COLUMNS, columns, units, LAST, none),
        wide_row(caution_note("film"), NOTE, LAST),
    ]
    return Sheet(name="Ends", widths=ENDS_WIDTHS, rows=tuple(rows))


def ends_explained(tunnel: Tunnel, made: TunnelPlan) -> Iterator[tuple[str, Explained]]:
    """Give every result of the end walls of a tunnel with its name."""
    for wall in _walls(tunnel, made):
        yield f"{tunnel.name}, {wall.name}", wall.laid
        if wall.laid.rigid is not None:
            yield f"{tunnel.name}, {wall.name}: rigid sheets", wall.laid.rigid


def _walls(tunnel: Tunnel, made: TunnelPlan) -> Iterator[_Wall]:
    for number, laid in enumerate(made.chosen.cover.ends):
        yield _Wall(tunnel, number, laid)


def _levels(wall: _Wall) -> Iterator[_Level]:
    yield from (_Level(wall, "rail", line) for line in wall.laid.rails)
    yield from (_Level(wall, "seam", line) for line in wall.laid.seams)


def _sheets(tunnel: Tunnel, made: TunnelPlan, tail: str) -> Iterator[_Sheet]:
    for wall in _walls(tunnel, made):
        surface = f"end{wall.number}"
        for piece in made.chosen.cover.pieces:
            if piece.role == "end wall" and piece.areas[0].surface == surface:
                yield _Sheet(wall, piece, tail)
