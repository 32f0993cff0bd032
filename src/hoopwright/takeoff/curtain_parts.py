"""What each curtain takes: bar, grip, joints, what keeps the wind out; its drive in `drive_parts`.

Sticks are never shared between bars: a joint that lands in the next curtain helps nobody. A hem in
which a bar lies is sewn or welded when the curtain is made and takes no part.
"""

from collections.abc import Callable, Iterator

from hoopwright.curtain.curtain import CurtainWork
from hoopwright.farm.bar import Bar, Joint
from hoopwright.farm.catalogue import Catalogue
from hoopwright.farm.frame import SideBoards
from hoopwright.farm.side import BottomEdge, Side
from hoopwright.quantity.remembered import Remembered
from hoopwright.quantity.working import DERIVED, Phrase, Term, phrase
from hoopwright.takeoff.drive_parts import count_drive
from hoopwright.takeoff.need import Need
from hoopwright.takeoff.site import CurtainSite, Site, count_spaced, need

JOINT_SCREWS: dict[Joint, int] = {"swage": 2, "splice": 4}
BOTTOM_PARTS: dict[BottomEdge, tuple[str, str]] = {
    "hat_purlin": ("hat_purlin", "hat_purlin_screw"),
    "seal_profile": ("bottom_seal", "bottom_seal_screw"),
    "skirt": ("skirt", "skirt_fastener"),
}

Rule = Callable[[CurtainSite, CurtainWork, Phrase], Iterator[Need]]


def count_curtains(site: Site) -> Iterator[Need]:
    """Return what all curtains take; one that its neighbours leave no room for takes nothing."""
    for work in site.curtains:
        if work.length_m > 0:
            boards = site.frame.boards[work.side]
            yield from _curtain(work, site.sides[work.side], boards, site.catalogue)


def _count_curtain(
    work: CurtainWork, side: Side, boards: SideBoards, catalogue: Catalogue
) -> tuple[Need, ...]:
    site = CurtainSite(side.panels[work.index], boards, catalogue)
    where = phrase("{side}: curtain {number}", side=side.name, number=work.index + 1)
    return tuple(found for rule in _RULES for found in rule(site, work, where))


_curtain = Remembered(_count_curtain)


def _count_bar(site: CurtainSite, work: CurtainWork, where: Phrase) -> Iterator[Need]:
    bar = site.catalogue.bar(site.panel.bar)
    part = site.catalogue.part(bar.part)
    yield need(
        bar.part,
        work.bar_sticks * part.holds,
        where,
        work.mark,
        "Whole sticks for this bar alone; what is left of the last one serves no other bar",
        Term("bar", work.length_m, "m"),
        Term("sticks", work.bar_sticks, "count"),
        Term("one stick", part.holds, "m"),
        source=DERIVED,
    )
    lone = work.kind != "drop_down" and work.cranked != "middle"
    yield need("bar_end_cap", 1 if lone else 2, where, work.mark, "One at each free end of the bar")
    yield from _count_joints(bar, work, where)


def _count_joints(bar: Bar, work: CurtainWork, where: Phrase) -> Iterator[Need]:
    if not work.bar_joints:
        return
    joints = Term("joints", work.bar_joints, "count")
    if bar.joint == "splice":
        rule = "One inserted splice at each joint"
        yield need("bar_splice", work.bar_joints, where, work.mark, rule, joints)
    screws = JOINT_SCREWS[bar.joint]
    yield need(
        "bar_joint_screw",
        work.bar_joints * screws,
        where,
        work.mark,
        "Screws at each joint: two in a swaged one, four in an inserted splice",
        joints,
        Term("screws at a joint", screws, "count"),
    )


def _count_grip(site: CurtainSite, work: CurtainWork, where: Phrase) -> Iterator[Need]:
    """Return what holds the film on the bar; the second half of a bar comes with its stick.

    Source:
        Cap or wire along the whole bar: common practice, no published source.
    """
    bar = site.catalogue.bar(site.panel.bar)
    length = Term("bar", work.length_m, "m")
    if bar.grip == "own_channel":
        rule = "One run of wire in the bar's own channel"
        yield need("spring_wire", work.length_m, where, work.mark, rule, length)
    elif bar.grip == "clamp_on_cap":
        rule = "Cap along the whole bar"
        yield need("bar_cap", work.length_m, where, work.mark, rule, length)
        yield _spaced(site, "bar_cap_screw", work, where)
    elif bar.grip == "closes_on_film":
        yield _spaced(site, f"bar_close_{bar.closed_by}", work, where)


def _count_rope(site: CurtainSite, work: CurtainWork, where: Phrase) -> Iterator[Need]:
    """Return rope or straps with their eyes.

    Source:
        n legs of a zigzag turn at n + 1 eyes, top and bottom by turns, the first at the top; a
        strap hangs between an eye at the top and one at the bottom: derived here.
    """
    if work.rope_m <= 0:
        return
    straps = site.panel.rope == "straps"
    legs = Term("straps" if straps else "legs of the zigzag", work.rope_legs, "count")
    length = Term("straps with tails" if straps else "rope with tails", work.rope_m, "m")
    rule = "The straps and their tails" if straps else "The zigzag's legs and the tails"
    part = "strap" if straps else "rope"
    yield need(part, work.rope_m, where, work.mark, rule, legs, length, source=DERIVED)
    yield from _count_eyes(site, work, where, straps)


def _count_eyes(
    site: CurtainSite, work: CurtainWork, where: Phrase, straps: bool
) -> Iterator[Need]:
    boards = site.boards
    top = work.eyes // 2 if straps else (work.eyes + 1) // 2
    rule = "The eyes stand at the top and at the bottom by turns, the first at the top"
    if straps:
        rule = "One eye at the top and one at the bottom of each strap"
    for count, material, text in (
        (top, boards.hip_board, ", top eyes"),
        (work.eyes - top, boards.baseboard, ", bottom eyes"),
    ):
        yield need(
            f"eye_{material}",
            count,
            Phrase(where.template + text, where.terms),
            work.mark,
            rule,
            Term("eyes, top and bottom", work.eyes, "count"),
            source=DERIVED,
        )


def _count_bottom(site: CurtainSite, work: CurtainWork, where: Phrase) -> Iterator[Need]:
    """Return what closes the gap under the bar; a drop-down curtain is held at the baseboard.

    Source:
        Along the whole bar: common practice, no published source.
    """
    bottom = site.panel.bottom
    if bottom == "none" or work.kind == "drop_down":
        return
    part, fastener = BOTTOM_PARTS[bottom]
    length = Term("bar", work.length_m, "m")
    yield need(part, work.length_m, where, work.mark, "Along the whole bar", length)
    yield _spaced(site, fastener, work, where)


def _spaced(site: CurtainSite, part: str, work: CurtainWork, where: Phrase) -> Need:
    spacing_m = site.spacing_m(part)
    return need(
        part,
        count_spaced(work.length_m, spacing_m),
        where,
        work.mark,
        "Length of the bar divided by the spacing, rounded up, and one more for the end",
        Term("bar", work.length_m, "m"),
        Term("spacing", spacing_m, "m"),
    )


_RULES: tuple[Rule, ...] = (_count_bar, _count_grip, count_drive, _count_rope, _count_bottom)
