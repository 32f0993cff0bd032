"""The curtains: what each is made of, what it takes to work it, and its whole way up or down."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from hoopwright.cover.cover import CurtainSpan
from hoopwright.curtain import course
from hoopwright.curtain.curtain import Course, CurtainWork
from hoopwright.farm.catalogue import Catalogue
from hoopwright.farm.drive import Drive
from hoopwright.farm.farm import Farm, Tunnel
from hoopwright.farm.side import Panel
from hoopwright.papers.cautions import caution_texts
from hoopwright.papers.sheet import (
    NOTE,
    SECTION,
    TITLE,
    Chart,
    Row,
    Sheet,
    heading_row,
    list_row,
    list_sheet,
    wide_row,
)
from hoopwright.papers.sheet_figures import Figure, list_figures, listed_rows
from hoopwright.papers.side_words import (
    BOTTOMS,
    BOUNDS,
    EXPOSURES,
    KINDS,
    ROPES,
    WINDINGS,
    place_name,
)
from hoopwright.plan import Plan
from hoopwright.quantity.units import Units, show

CRANK_WIDTHS = (14.0, 22.0, *(9.5 for _ in range(13)))
TRAVEL_STEPS = 10
TRAVEL_WIDTHS = (11.0, *(11.0 for _ in range(9)), 2.0, *(9.0 for _ in range(6)))
CHART_COLUMN = 12
CHART_CM = (12, 6)
NAMED = 3
TABLES_ON_PAGE = 3
NO_CURTAIN = "No side opens."


@dataclass(frozen=True, slots=True)
class Listed:
    """One curtain with what its lines are made from.

    Attributes:
        tunnel: Its tunnel.
        span: Where it hangs.
        work: How it moves.
        catalogue: What can be bought.
    """

    tunnel: Tunnel
    span: CurtainSpan
    work: CurtainWork
    catalogue: Catalogue

    @property
    def name(self) -> str:
        """What people call it."""
        return place_name(self.tunnel, self.work.mark)

    @property
    def panel(self) -> Panel:
        """The curtain as chosen."""
        return self.tunnel.sides[self.work.side].panels[self.work.index]

    @property
    def drive(self) -> Drive:
        """What turns it."""
        return self.catalogue.drive(self.panel.drive)


MADE: tuple[Figure[Listed], ...] = (
    Figure("Tunnel", lambda c: c.tunnel.name, width=12),
    Figure("Curtain", lambda c: c.name, width=17),
    Figure("Kind", lambda c: KINDS[c.work.kind], width=9),
    Figure("From", lambda c: c.span.from_m, "m", 8),
    Figure("To", lambda c: c.span.to_m, "m", 8),
    Figure("Bar and curtain", lambda c: c.work.length_m, "size"),
    Figure("Bar or rod", lambda c: c.catalogue.bar(c.panel.bar).name, width=16),
    Figure("Sticks", lambda c: c.work.bar_sticks, "count", 6.5),
    Figure("Joints", lambda c: c.work.bar_joints, "count", 6.5),
    Figure("Drive", lambda c: c.drive.name, width=15),
    Figure("Crank at", lambda c: c.work.cranked, width=7.5),
    Figure("Guide pipe", lambda c: c.work.guide_m or None, "m", 7),
    Figure("Roll lies", lambda c: None if _drops(c) else WINDINGS[c.panel.winding], width=9),
    Figure("Bottom edge", lambda c: None if _drops(c) else BOTTOMS[c.panel.bottom], width=9),
    Figure("Clear opening", lambda c: c.work.opening_m2, "m2", 8.5),
    Figure("Against the wind", lambda c: ROPES[c.panel.rope], width=10),
    Figure("Rope or straps", lambda c: c.work.rope_m or None, "m", 8),
    Figure("Legs or straps", lambda c: c.work.rope_legs or None, "count", 7),
    Figure("Eyes", lambda c: c.work.eyes or None, "count", 6),
    Figure("Lift lines", lambda c: c.work.lift_lines or None, "count", 6.5),
    Figure("Lines and cable", lambda c: c.work.lift_line_m or None, "m", 8),
    Figure("Pulleys", lambda c: c.work.pulleys or None, "count", 8),
)
HAND: tuple[Figure[Listed], ...] = (
    Figure("Tunnel", lambda c: c.tunnel.name),
    Figure("Curtain", lambda c: c.name),
    Figure("Crank at", lambda c: c.work.cranked),
    Figure("Hand force shut", lambda c: c.work.hand_forces_n[0], "N"),
    Figure("Hand force half way", lambda c: c.work.hand_forces_n[1], "N"),
    Figure("Hand force open", lambda c: c.work.hand_forces_n[2], "N"),
    Figure("Hardest hand force", lambda c: c.work.hardest_n, "N"),
    Figure("Hangs there when shut", lambda c: c.work.weights_n[0], "N"),
    Figure("Hangs there when open", lambda c: c.work.weights_n[2], "N"),
    Figure("Turns of the handle", lambda c: c.work.handle_turns, "turns"),
    Figure("Time to open", lambda c: c.work.minutes, "min"),
    Figure("Joint angle shut", lambda c: _angle(c, 0), "rad"),
    Figure("Joint angle half way", lambda c: _angle(c, 1), "rad"),
    Figure("Joint angle open", lambda c: _angle(c, 2), "rad"),
    Figure("Handle swings, peak to mean", lambda c: _swing(c), "ratio"),
)
BAR: tuple[Figure[Listed], ...] = (
    Figure("Tunnel", lambda c: c.tunnel.name),
    Figure("Curtain", lambda c: c.name),
    Figure("Roll diameter shut", lambda c: _rolled(c, c.work.diameters_m[0]), "m_thin"),
    Figure("Roll diameter open", lambda c: _rolled(c, c.work.diameters_m[2]), "m_thin"),
    Figure("Behind by twist", lambda c: _rolled(c, c.work.twist_trailing_m), "m_thin"),
    Figure("Behind by play in joints", lambda c: _rolled(c, c.work.play_trailing_m), "m_thin"),
    Figure("Behind by uneven winding", lambda c: _rolled(c, c.work.uneven_trailing_m), "m_thin"),
    Figure("Farthest place behind", lambda c: _rolled(c, c.work.trailing_m), "m_thin"),
    Figure("Longest by hand force", lambda c: c.work.hand_length_m, "m"),
    Figure("Longest by trailing", lambda c: _rolled(c, c.work.trailing_length_m), "m"),
    Figure("Longest by all limits", lambda c: c.work.longest_m, "m"),
    Figure("Which limit that is", lambda c: BOUNDS[c.work.bound_by]),
    Figure("Gap to the gutter, open", lambda c: c.work.gutter_gap_m, "m_thin"),
    Figure("Gap to pocket film, open", lambda c: c.work.pocket_gap_m, "m_thin"),
)
LET_GO: tuple[Figure[Listed], ...] = (
    Figure("Tunnel", lambda c: c.tunnel.name),
    Figure("Curtain", lambda c: c.name),
    Figure("Holds by itself", lambda c: "yes" if c.drive.holds else "no"),
    Figure("Energy when raised", lambda c: c.work.energy_j, "J"),
    Figure("Bar at most", lambda c: c.work.runaway_m_s or None, "m/s"),
    Figure("Handle at most", lambda c: c.work.runaway_handle_m_s or None, "m/s"),
)
PULL: tuple[Figure[Listed], ...] = (
    Figure("Tunnel", lambda c: c.tunnel.name),
    Figure("Curtain", lambda c: c.name),
    Figure("It has", lambda c: ROPES[c.panel.rope]),
    Figure("Pull in a leg", lambda c: c.work.rope_tension_n, "N"),
    Figure("Pull on an eye, straight out", lambda c: c.work.eye_load_n, "N"),
)


def _drops(listed: Listed) -> bool:
    return listed.work.kind == "drop_down"


def _rolled(listed: Listed, value: float) -> float | None:
    """Return a figure of a bar that is turned; the rod of a drop-down curtain is not."""
    return None if _drops(listed) else value


def _has_joint(listed: Listed) -> bool:
    return any(listed.work.joint_angles_rad)


def _angle(listed: Listed, place: int) -> float | None:
    return listed.work.joint_angles_rad[place] if _has_joint(listed) else None


def _swing(listed: Listed) -> float | None:
    return listed.work.joint_swing if _has_joint(listed) else None


def listed_curtains(farm: Farm, plan: Plan) -> list[Listed]:
    """Return every curtain of a farm, from the front to the back of each side."""
    found = []
    for tunnel, planned in zip(farm.tunnels, plan.tunnels, strict=True):
        spans = {span.mark: span for span in planned.chosen.cover.curtains}
        found += [
            Listed(tunnel, spans[work.mark], work, farm.catalogue)
            for work in planned.chosen.curtains
        ]
    return found


def crank_cautions() -> tuple[str, ...]:
    """Return in full what has to be minded at every crank."""
    return tuple(f"{caution.title}: {caution.text}" for caution in caution_texts("crank"))


def curtains_sheet(farm: Farm, plan: Plan) -> Sheet:
    """Return the curtains with their bars, drives, edges and ropes."""
    columns, lines = list_figures(MADE, listed_curtains(farm, plan), farm.units)
    return list_sheet(
        "Curtains",
        "Curtains and what they are made of",
        crank_cautions(),
        columns,
        lines,
        empty=NO_CURTAIN,
        frozen_columns=2,
    )


def cranks_sheet(farm: Farm, plan: Plan) -> Sheet:
    """Return what it takes to work the curtains, and what can happen."""
    units, last = farm.units, len(CRANK_WIDTHS)
    curtains = listed_curtains(farm, plan)
    roped = [c for c in curtains if c.work.rope_tension_n]
    rows = [
        wide_row("Cranks: force, time, bar and gaps", TITLE, last),
        *(wide_row(text, NOTE, last) for text in (*crank_cautions(), _limits(farm))),
        *listed_rows("At the handle", HAND, curtains, units, last, NO_CURTAIN),
        *listed_rows("Along the bar", BAR, curtains, units, last, NO_CURTAIN),
        *listed_rows("When the handle is let go", LET_GO, curtains, units, last, NO_CURTAIN),
        wide_row(
            "Speeds are an upper bound: nothing rubs and nothing holds. They are a warning, not a "
            "forecast. Keep hold of the handle until the lock is in.",
            NOTE,
            last,
        ),
        *listed_rows(
            "Pull of the wind on ropes and straps, for reference only",
            PULL,
            roped,
            units,
            last,
            "No rope or strap is pulled.",
        ),
        wide_row(_storm(farm), NOTE, last),
    ]
    return Sheet(name="Cranks", widths=CRANK_WIDTHS, rows=tuple(rows))


def _limits(farm: Farm) -> str:
    limits, units = farm.limits, farm.units
    return (
        f"Limits set on the farm: hand force {show(limits.hand_force_n, 'N', units)}, the farthest "
        f"place hangs behind by {show(limits.trailing_m, 'm_thin', units)}, one person lifts "
        f"{show(limits.lift_kg, 'kg', units)}. Forces include "
        f"{show(limits.rubbing_share, 'share', units)} for rubbing, for which there is no "
        f"published figure; time is at {show(limits.handle_rate_per_min, '1/min', units)}."
    )


def _storm(farm: Farm) -> str:
    weather, units = farm.weather, farm.units
    return (
        f"Gust {show(weather.storm_m_s, 'm/s', units)}, ground around {EXPOSURES[weather.exposure]}"
        f", {show(weather.rope_share, 'share', units)} of the pull taken by the rope, which bows "
        f"out {show(weather.rope_bow_m, 'm_thin', units)}. For reference only: it designs neither "
        "rope nor frame; local codes and licensed practice come first."
    )


class Step(NamedTuple):
    """One step of a curtain's way, in the order of the fields of `Course`.

    What has no roll, no trailing or no joint has None there.
    """

    share: float
    height_m: float
    radius_m: float | None
    weight_n: float
    torque_nm: float
    hand_n: float
    trailing_m: float | None
    angle_rad: float | None
    opening_m2: float
    minutes: float


WAY: tuple[Figure[Step], ...] = (
    Figure("Share of the way", lambda s: s.share, "share"),
    Figure("Bar above ground", lambda s: s.height_m, "m"),
    Figure("Hand force", lambda s: s.hand_n, "N"),
    Figure("Time so far", lambda s: s.minutes, "min"),
    Figure("Opening", lambda s: s.opening_m2, "m2"),
    Figure("Hangs behind", lambda s: s.trailing_m, "m_thin"),
    Figure("Weight there", lambda s: s.weight_n, "N"),
    Figure("Torque", lambda s: s.torque_nm, "N m"),
    Figure("Roll radius", lambda s: s.radius_m, "m_thin"),
    Figure("Joint angle", lambda s: s.angle_rad, "rad"),
)
HEIGHT_COLUMN, FORCE_COLUMN = 2, 3


def travel_sheet(farm: Farm, plan: Plan) -> Sheet:
    """Return the way of each curtain from shut to open, step by step, with a chart of the force.

    Curtains whose tables would read the same share one.
    """
    last = len(TRAVEL_WIDTHS)
    alike: dict[tuple[Row, ...], list[Listed]] = {}
    for curtain in listed_curtains(farm, plan):
        table = _way_rows(course(curtain.work, TRAVEL_STEPS), farm.units)
        alike.setdefault(table, []).append(curtain)
    rows = [
        wide_row("Way of the curtains from shut to open", TITLE, last),
        *(wide_row(text, NOTE, last) for text in crank_cautions()),
    ]
    charts: list[Chart] = []
    breaks = []
    for table, curtains in alike.items():
        if charts and len(charts) % TABLES_ON_PAGE == 0:
            breaks.append(len(rows))
        rows += [Row(), wide_row(_names(curtains), SECTION, last)]
        charts.append(_chart(len(rows) + 1, farm.units))
        rows += table
    if not alike:
        rows.append(wide_row(NO_CURTAIN, NOTE, last))
    return Sheet(
        name="Travel",
        widths=TRAVEL_WIDTHS,
        rows=tuple(rows),
        charts=tuple(charts),
        breaks=tuple(breaks),
    )


def _names(curtains: Sequence[Listed]) -> str:
    names = [f"{c.tunnel.name}: {c.name}" for c in curtains]
    more = len(names) - NAMED
    return "; ".join(names[:NAMED]) + (f"; and {more} more that are alike" if more > 0 else "")


def _way_rows(way: Course, units: Units) -> tuple[Row, ...]:
    steps = [
        Step(*values)
        for values in zip(
            way.shares,
            way.heights_m,
            _if_any(way.radii_m),
            way.weights_n,
            way.torques_nm,
            way.hand_forces_n,
            _if_any(way.trailing_m),
            _if_any(way.joint_angles_rad),
            way.openings_m2,
            way.minutes,
            strict=True,
        )
    ]
    columns, lines = list_figures(WAY, steps, units)
    return (heading_row(columns), *(list_row(columns, line) for line in lines))


def _if_any(values: tuple[float, ...]) -> tuple[float | None, ...]:
    """Return the values, or nothing for each where there is no roll or joint: all are 0."""
    return values if any(values) else (None,) * len(values)


def _chart(heading: int, units: Units) -> Chart:
    """Return the chart beside a table whose headings stand in a row of the sheet."""
    columns, _lines = list_figures(WAY, (), units)
    return Chart(
        at=(heading, CHART_COLUMN),
        size_cm=CHART_CM,
        first=heading + 1,
        last=heading + 1 + TRAVEL_STEPS,
        across=HEIGHT_COLUMN,
        up=FORCE_COLUMN,
        across_title=columns[HEIGHT_COLUMN - 1].heading,
        up_title=columns[FORCE_COLUMN - 1].heading,
    )
