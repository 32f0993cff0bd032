"""The drawing of a tunnel: two elevations, the plan and an end, as shapes in metres.

The two elevations and the plan share one length axis and unfold the tunnel: the first side above
the plan, the second below, all with the front end at the left. Beside them stands the end section,
or the front or the back end wall seen from outside.
"""

from typing import Literal

from msgspec import Struct

from hoopwright.checks.variant import TunnelPlan
from hoopwright.farm import Tunnel
from hoopwright.papers.scene import View
from hoopwright.papers.subject import Subject
from hoopwright.papers.view_end import draw_end
from hoopwright.papers.view_roof import draw_plan
from hoopwright.papers.view_section import draw_section
from hoopwright.papers.view_side import draw_side
from hoopwright.quantity.units import Units

SAME_M = 1e-6

Beside = Literal["section", "front_end", "back_end"]


class Views(Struct, frozen=True):
    """The four views of a tunnel.

    Attributes:
        first_side: Elevation of the first side.
        plan: From above.
        second_side: Elevation of the second side, seen from inside.
        section: Section at the front end, or the end wall that is shown in its place.
    """

    first_side: View
    plan: View
    second_side: View
    section: View


def draw_tunnel(
    tunnel: Tunnel,
    tunnel_plan: TunnelPlan,
    units: Units,
    proposed: tuple[tuple[int, float], ...] = (),
    *,
    pressures: bool = False,
    beside: Beside = "section",
) -> Views:
    """Return the drawing of a tunnel.

    Args:
        tunnel: The tunnel as entered.
        tunnel_plan: Its plan.
        units: Units of the sizes written on the drawing.
        proposed: Splits that are offered: side, position from the first bow in m.
        pressures: Whether cells are named by their pressures.
        beside: What stands beside the long views.
    """
    subject = Subject(tunnel, tunnel_plan, units, proposed, pressures)
    return Views(
        first_side=draw_side(subject, 0),
        plan=draw_plan(subject),
        second_side=draw_side(subject, 1),
        section=draw_section(subject)
        if beside == "section"
        else draw_end(subject, int(beside == "back_end")),
    )


def drawn_marks(mark: str, tunnel_plan: TunnelPlan) -> tuple[str, ...]:
    """Return the marks under which something is drawn.

    A roof sheet is drawn as itself. The sheet of a curtain, a pocket, a strip or an end wall is
    found where it hangs.

    Args:
        mark: Any mark of the plan.
        tunnel_plan: Plan of the tunnel.
    """
    cover = tunnel_plan.chosen.cover
    piece = next((p for p in cover.pieces if p.mark == mark), None)
    if piece is None:
        return (mark,) if mark else ()
    found = [mark]
    hung = [(c.mark, c.side, c.from_m, c.to_m) for c in cover.curtains]
    hung += [(f.mark, f.side, f.from_m, f.to_m) for f in cover.fixed]
    for area in piece.areas:
        if area.surface in ("end0", "end1"):
            found.append(f"end/{area.surface[-1]}")
        for place, side, from_m, to_m in hung:
            there = area.surface == f"side{side}" and abs(area.from_m - from_m) < SAME_M
            if there and abs(area.to_m - to_m) < SAME_M:
                found.append(place)
    return tuple(found)
