"""Hang insect screen in the openings: its size, what it keeps out, what it leaves of the air."""

from hoopwright.airing.airing import Airing
from hoopwright.cover.cover import Cover
from hoopwright.farm import Screen, Side
from hoopwright.farm.side import MOVING
from hoopwright.outfit.outfit import SideScreen
from hoopwright.outfit.widths import count_widths
from hoopwright.quantity.working import ENTERED, LaterWorkings, Term, Working
from hoopwright.survey.survey import Survey

INSECT_SOURCE = "Rutgers Cooperative Extension FS640, insect exclusion with screens"
INSECTS: tuple[tuple[str, float], ...] = (
    ("leafminer", 640e-6),
    ("whitefly", 462e-6),
    ("aphid", 340e-6),
    ("flower thrips", 192e-6),
)
"""Insects and the largest hole that keeps each of them out, m: `INSECT_SOURCE`."""

ALIKE_M = 5e-7


def kept_out(hole_m: float) -> tuple[str, ...]:
    """Return which insects of the published table a hole keeps out.

    Args:
        hole_m: Size of a hole, m.

    Source:
        `INSECT_SOURCE`.
    """
    return tuple(name for name, largest_m in INSECTS if hole_m <= largest_m + ALIKE_M)


def hang_screens(
    survey: Survey, sides: tuple[Side, Side], cover: Cover, airing: Airing
) -> tuple[SideScreen, ...]:
    """Return the screen of each side that opens and has one.

    Args:
        survey: The frame as built.
        sides: Both sides as chosen.
        cover: Where the curtains hang.
        airing: What opens.

    Source:
        Each figure keeps its own working.
    """
    return tuple(
        _hang(n, side.screen, survey, cover, airing)
        for n, side in enumerate(sides)
        if side.screen is not None and side.kind in MOVING
    )


def _hang(n: int, screen: Screen, survey: Survey, cover: Cover, airing: Airing) -> SideScreen:
    spans = [span for span in cover.curtains if span.side == n]
    from_m, to_m = min(s.open_from_m for s in spans), max(s.open_to_m for s in spans)
    length_m = to_m - from_m + 2 * screen.edge_m
    height_m = survey.side_m[n] + 2 * screen.edge_m
    widths = count_widths(height_m, screen.screen_width_m, screen.lap_m)
    out = kept_out(screen.hole_m)
    free_m2 = airing.openings_m2[n] * screen.flow_share
    hung = SideScreen(
        mark=f"side/{n}",
        side=n,
        part=screen.part,
        from_m=from_m,
        to_m=to_m,
        length_m=length_m,
        height_m=height_m,
        widths=widths,
        screen_m=widths * length_m,
        hole_m=screen.hole_m,
        flow_share=screen.flow_share,
        keeps_out=out,
        lets_in=tuple(name for name, _ in INSECTS if name not in out),
        opening_m2=airing.openings_m2[n],
        free_m2=free_m2,
        free_share=free_m2 / survey.floor_area_m2,
        workings=LaterWorkings(
            lambda: (
                *_size_workings(hung, screen, survey.side_m[n]),
                *_hole_workings(hung),
                *_air_workings(hung, survey.floor_area_m2),
            )
        ),
    )
    return hung


def _size_workings(hung: SideScreen, screen: Screen, side_m: float) -> tuple[Working, ...]:
    starts, ends = Term("opening from", hung.from_m, "m"), Term("opening to", hung.to_m, "m")
    edge = Term("past each edge", screen.edge_m, "m")
    length = Term("along the side", hung.length_m, "m")
    return (
        Working("from_m", "From the front pocket.", (starts,)),
        Working("to_m", "To the back pocket.", (ends,)),
        Working(
            "length_m",
            "From pocket to pocket, behind the splits, and its edge at each end.",
            (starts, ends, edge),
        ),
        Working(
            "height_m",
            "From the baseboard to the hip board along the bow, and its edge above and below.",
            (Term("hip board to baseboard along the bow", side_m, "m"), edge),
        ),
        Working(
            "widths",
            "Height less one lap, over the width less one lap, rounded up.",
            (
                Term("height", hung.height_m, "m"),
                Term("width of the screen", screen.screen_width_m, "m"),
                Term("lap", screen.lap_m, "m"),
            ),
        ),
        Working(
            "screen_m",
            "Widths times the length of each.",
            (Term("widths", hung.widths, "count"), length),
        ),
    )


def _hole_workings(hung: SideScreen) -> tuple[Working, ...]:
    table = tuple(Term(f"{name} kept out up to", hole_m, "m_film") for name, hole_m in INSECTS)
    hole = Term("hole", hung.hole_m, "m_film")
    return (
        Working("hole_m", "As its maker states it.", (hole,), ENTERED),
        Working(
            "keeps_out", "Those whose largest hole is no smaller.", (hole, *table), INSECT_SOURCE
        ),
        Working("lets_in", "The others of the table.", (hole, *table), INSECT_SOURCE),
    )


def _air_workings(hung: SideScreen, floor_m2: float) -> tuple[Working, ...]:
    opening = Term("clear opening", hung.opening_m2, "m2")
    share = Term("air through the screen", hung.flow_share, "share")
    return (
        Working("opening_m2", "Clear opening with all curtains open.", (opening,)),
        Working(
            "flow_share",
            "A figure of each screen: two screens of nearly the same open share were found to "
            "differ by more than half in what they let through.",
            (share,),
            f"{ENTERED}; the finding: López et al., Sensors 16(5):690, 2016",
        ),
        Working("free_m2", "Clear opening times what the screen lets through.", (opening, share)),
        Working(
            "free_share",
            "That over the floor.",
            (Term("opening behind the screen", hung.free_m2, "m2"), Term("floor", floor_m2, "m2")),
        ),
    )
