"""The lines for a picked curtain: its choices, how it is worked, its bar and its drive.

Figures stand in groups as a person meets them: at the crank, at the limits, on the roll, at the
rope, in the opening. What has no meaning for a kind of curtain is left out.
"""

from collections.abc import Iterator

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication

from hoopwright.curtain import CurtainWork, gauge_words, section_figures
from hoopwright.desktop.details_air import AIR_CAUTIONS
from hoopwright.desktop.details_items import (
    Figure,
    Heading,
    Item,
    entries,
    explained,
    figures,
)
from hoopwright.desktop.details_tunnel import proposal_items
from hoopwright.desktop.details_words import choice_words
from hoopwright.desktop.session import Session
from hoopwright.farm import Panel
from hoopwright.farm.entered import describe
from hoopwright.papers.cautions import CAUTIONS
from hoopwright.quantity.units import Units
from hoopwright.quantity.working import words

Rows = tuple[tuple[str, str, object], ...]

CRANK: Rows = (
    ("hand_forces_n", "N", QT_TRANSLATE_NOOP("Details", "hand force, shut · half way · open")),
    ("hardest_n", "N", QT_TRANSLATE_NOOP("Details", "hardest on the way")),
    ("handle_turns", "turns", QT_TRANSLATE_NOOP("Details", "turns of the handle")),
    ("minutes", "min", QT_TRANSLATE_NOOP("Details", "time to open")),
    ("turns", "turns", QT_TRANSLATE_NOOP("Details", "turns of the bar or drum")),
    ("torques_nm", "N m", QT_TRANSLATE_NOOP("Details", "torque, shut · half way · open")),
    ("weights_n", "N", QT_TRANSLATE_NOOP("Details", "weight, shut · half way · open")),
    ("joint_angles_rad", "rad", QT_TRANSLATE_NOOP("Details", "angle of the joint")),
    ("joint_swing", "ratio", QT_TRANSLATE_NOOP("Details", "swing of the torque by the joint")),
    ("guide_m", "m", QT_TRANSLATE_NOOP("Details", "guide pipe")),
    ("energy_j", "J", QT_TRANSLATE_NOOP("Details", "energy of the raised curtain")),
    ("runaway_m_s", "m/s", QT_TRANSLATE_NOOP("Details", "bar at the bottom, when let go")),
    ("runaway_handle_m_s", "m/s", QT_TRANSLATE_NOOP("Details", "handle then")),
)
LIMITS: Rows = (
    ("longest_m", "m", QT_TRANSLATE_NOOP("Details", "longest within all limits")),
    ("hand_length_m", "m", QT_TRANSLATE_NOOP("Details", "longest for the hand")),
    ("trailing_length_m", "m", QT_TRANSLATE_NOOP("Details", "longest for trailing")),
    ("trailing_m", "m_thin", QT_TRANSLATE_NOOP("Details", "trailing of the far end")),
    ("twist_trailing_m", "m_thin", QT_TRANSLATE_NOOP("Details", "of it by twist")),
    ("play_trailing_m", "m_thin", QT_TRANSLATE_NOOP("Details", "of it by play in the joints")),
    ("uneven_trailing_m", "m_thin", QT_TRANSLATE_NOOP("Details", "of it by uneven winding")),
    ("twist_rad", "rad", QT_TRANSLATE_NOOP("Details", "twist of the bar")),
)
ROLL: Rows = (
    ("length_m", "m", QT_TRANSLATE_NOOP("Details", "length of the bar")),
    ("travel_m", "m", QT_TRANSLATE_NOOP("Details", "travel of the bar")),
    ("diameters_m", "m_thin", QT_TRANSLATE_NOOP("Details", "roll, shut · half way · open")),
    ("pocket_gap_m", "m_thin", QT_TRANSLATE_NOOP("Details", "roll to pocket film and bows")),
    ("gutter_gap_m", "m_thin", QT_TRANSLATE_NOOP("Details", "roll up to the gutter")),
    ("bar_sticks", "count", QT_TRANSLATE_NOOP("Details", "sticks of the bar")),
    ("bar_joints", "count", QT_TRANSLATE_NOOP("Details", "joints in the bar")),
    ("lift_lines", "count", QT_TRANSLATE_NOOP("Details", "lift lines")),
    ("lift_line_m", "m", QT_TRANSLATE_NOOP("Details", "line and cable")),
    ("pulleys", "count", QT_TRANSLATE_NOOP("Details", "pulleys")),
)
ROPE: Rows = (
    ("rope_m", "m", QT_TRANSLATE_NOOP("Details", "wind rope or straps")),
    ("rope_legs", "count", QT_TRANSLATE_NOOP("Details", "legs or straps")),
    ("eyes", "count", QT_TRANSLATE_NOOP("Details", "eyes")),
    ("rope_tension_n", "N", QT_TRANSLATE_NOOP("Details", "pull in a leg, storm")),
    ("eye_load_n", "N", QT_TRANSLATE_NOOP("Details", "pull on an eye, storm; for reference")),
)
AIRING: Rows = (("opening_m2", "m2", QT_TRANSLATE_NOOP("Details", "clear opening")),)
SPAN: Rows = (
    ("open_from_m", "m", QT_TRANSLATE_NOOP("Details", "opening from")),
    ("open_to_m", "m", QT_TRANSLATE_NOOP("Details", "opening to")),
    ("hang_m", "m", QT_TRANSLATE_NOOP("Details", "film from hip to bar")),
    ("cut_height_m", "m", QT_TRANSLATE_NOOP("Details", "cut height")),
)
SECTION: Rows = (
    ("mass_kg_m", "kg/m", QT_TRANSLATE_NOOP("Details", "mass with its grip")),
    ("radius_m", "m_thin", QT_TRANSLATE_NOOP("Details", "winding radius")),
    ("area_m2", "m2_thin", QT_TRANSLATE_NOOP("Details", "metal across the bar")),
    ("torsion_m4", "m4", QT_TRANSLATE_NOOP("Details", "torsion constant")),
    ("second_moment_m4", "m4", QT_TRANSLATE_NOOP("Details", "second moment of area")),
)
GROUPS: tuple[tuple[object, Rows], ...] = (
    (QT_TRANSLATE_NOOP("Details", "Crank"), CRANK),
    (QT_TRANSLATE_NOOP("Details", "Limits"), LIMITS),
    (QT_TRANSLATE_NOOP("Details", "Roll and bar"), ROLL),
    (QT_TRANSLATE_NOOP("Details", "Rope"), ROPE),
    (QT_TRANSLATE_NOOP("Details", "Airing"), AIRING),
)
UNUSED_OF_DROP = ("winding", "bottom")
ROLLED_ONLY = (
    "diameters_m",
    "pocket_gap_m",
    "gutter_gap_m",
    "trailing_length_m",
    "trailing_m",
    "twist_trailing_m",
    "play_trailing_m",
    "uneven_trailing_m",
    "twist_rad",
)
JOINTED_ONLY = ("joint_angles_rad", "joint_swing")
BAR_LINES = (
    "grip_mass_kg_m",
    "joint",
    "overlap_m",
    "joint_play_m",
    "slit",
    "max_length_m",
)
DRIVE_LINES = (
    "arm_m",
    "ratio",
    "efficiency",
    "mass_kg",
    "holds",
    "extension_m",
    "joint_limit_rad",
    "guide_buried_m",
    "drum_m",
    "inertia_kg_m2",
    "max_length_m",
)


def curtain_items(session: Session, n: int, index: int) -> Iterator[Item]:
    """Give the lines of one curtain."""
    side = session.tunnel.sides[n]
    panel = side.panels[index]
    unused = UNUSED_OF_DROP if side.kind == "drop_down" else ()
    names = [k.name for k in describe(Panel) if k.name not in unused]
    yield from entries("tunnel", ("sides", n, "panels", index), panel, *names)
    yield from proposal_items(n)
    mark = f"side/{n}/panel/{index}"
    chosen = session.tunnel_plan.chosen
    work = next((w for w in chosen.curtains if w.mark == mark), None)
    if work is not None:
        aired = any(cell.place == mark for cell in chosen.inflation.cells)
        yield from _work(work, session.units, ("crank", *AIR_CAUTIONS) if aired else ("crank",))
    span = next((s for s in chosen.cover.curtains if s.mark == mark), None)
    if span is not None:
        yield from figures(span, _said(SPAN), session.units)
    yield from _bar(session, panel.bar)
    yield from _drive(session, panel.drive)


def _work(work: CurtainWork, units: Units, cautions: tuple[str, ...]) -> Iterator[Item]:
    """Give the figures of a curtain, group by group, cautions where the hand is."""
    left_out = _meaningless(work)
    for title, rows in GROUPS:
        kept = tuple(row for row in rows if row[0] not in left_out)
        if not kept:
            continue
        yield Heading(_say(title))
        if rows is LIMITS:
            label = QCoreApplication.translate("Details", "what limits its length")
            yield Figure(label, choice_words(work.bound_by), explained(work, "longest_m"))
        yield from figures(work, _said(kept), units)
        if rows is CRANK:
            yield from (c for c in CAUTIONS if c.id in cautions)


def _meaningless(work: CurtainWork) -> set[str]:
    """Return the names of figures that say nothing of this curtain."""
    names: set[str] = set()
    if work.kind == "drop_down":
        names.update(ROLLED_ONLY)
    else:
        names.update(("lift_lines", "lift_line_m", "pulleys"))
    if not any(work.joint_angles_rad):
        names.update(JOINTED_ONLY)
    if work.gutter_gap_m is None:
        names.add("gutter_gap_m")
    if work.runaway_m_s == 0:
        names.update(("runaway_m_s", "runaway_handle_m_s"))
    if work.guide_m == 0:
        names.add("guide_m")
    if work.rope_m == 0:
        names.update(row[0] for row in ROPE)
    return names


def _bar(session: Session, key: str) -> Iterator[Item]:
    """Give the figures of a bar, and its sizes as they stand in the catalogue."""
    bars = session.farm.catalogue.bars
    place = next(n for n, bar in enumerate(bars) if bar.key == key)
    bar, path = bars[place], ("catalogue", "bars", place)
    title = QCoreApplication.translate("Details", "Bar, wherever it is used: {name}")
    yield Heading(title.format(name=bar.name))
    yield from entries("farm", (*path, "section"), bar.section)
    names = [*BAR_LINES, *(["closed_by"] if bar.grip == "closes_on_film" else [])]
    yield from entries("farm", path, bar, *names)
    gauge = QCoreApplication.translate("Details", "gauge of the wall")
    yield Figure(gauge, words(gauge_words(bar.section.wall_m), session.units))
    yield from figures(section_figures(bar), _said(SECTION), session.units)


def _drive(session: Session, key: str) -> Iterator[Item]:
    """Give the sizes of a drive as they stand in the catalogue."""
    drives = session.farm.catalogue.drives
    place = next(n for n, drive in enumerate(drives) if drive.key == key)
    drive = drives[place]
    title = QCoreApplication.translate("Details", "Drive, wherever it is used: {name}")
    yield Heading(title.format(name=drive.name))
    yield from entries("farm", ("catalogue", "drives", place), drive, *DRIVE_LINES)


def _say(text: object) -> str:
    return QCoreApplication.translate("Details", str(text))


def _said(rows: Rows) -> Iterator[tuple[str, str, str]]:
    return ((name, unit, _say(text)) for name, unit, text in rows)
