"""What each curtain takes: bar, grip, joints, crank, rope, bottom seal.

Sticks are never shared between bars: a joint that lands in the next curtain helps nobody.
"""

from collections.abc import Callable, Iterator

from hoopwright.curtain.curtain import CurtainWork
from hoopwright.farm.catalogue import Bar
from hoopwright.quantity.working import DERIVED, Phrase, Term, phrase
from hoopwright.takeoff.need import Need
from hoopwright.takeoff.site import Site, count_spaced, need

SWAGE_SCREWS = 2
SPLICE_SCREWS = 4

Rule = Callable[[Site, CurtainWork, Phrase], Iterator[Need]]


def count_curtains(site: Site) -> Iterator[Need]:
    """Return what all curtains take; one that its neighbours leave no room for takes nothing."""
    for work in site.curtains:
        if work.length_m <= 0:
            continue
        where = phrase(
            "{side}: curtain {number}", side=site.sides[work.side].name, number=work.index + 1
        )
        for rule in _RULES:
            yield from rule(site, work, where)


def _count_bar(site: Site, work: CurtainWork, where: Phrase) -> Iterator[Need]:
    bar = site.catalogue.bar(site.panel(work).bar)
    part = site.catalogue.part(bar.part)
    yield need(
        bar.part,
        work.bar_sticks * part.holds,
        where,
        work.mark,
        "Whole sticks for this bar alone; what is left of the last one serves no other bar",
        Term("bar", work.length_m, "m"),
        Term("sticks", work.bar_sticks, "count"),
        Term("one stick", part.holds, "m" if part.counted_in == "m" else "count"),
        source=DERIVED,
    )
    yield need("bar_end_cap", 1, where, work.mark, "One at the free end of the bar")
    yield from _count_joints(bar, work, where)


def _count_joints(bar: Bar, work: CurtainWork, where: Phrase) -> Iterator[Need]:
    if not work.bar_joints:
        return
    joints = Term("joints", work.bar_joints, "count")
    spliced = bar.grip == "own_channel"
    if spliced:
        rule = "One inserted splice at each joint"
        yield need("bar_splice", work.bar_joints, where, work.mark, rule, joints)
    screws = SPLICE_SCREWS if spliced else SWAGE_SCREWS
    yield need(
        "bar_joint_screw",
        work.bar_joints * screws,
        where,
        work.mark,
        "Screws at each joint: two in a swaged one, four in an inserted splice",
        joints,
        Term("screws at a joint", screws, "count"),
    )


def _count_grip(site: Site, work: CurtainWork, where: Phrase) -> Iterator[Need]:
    """Return what holds the film on the bar.

    Source:
        Cap or wire along the whole bar: common practice, no published source.
    """
    bar = site.catalogue.bar(site.panel(work).bar)
    length = Term("bar", work.length_m, "m")
    mark = work.mark
    if bar.grip == "own_channel":
        rule = "One run of wire in the bar's own channel"
        yield need("spring_wire", work.length_m, where, mark, rule, length)
        return
    yield need("bar_cap", work.length_m, where, mark, "Cap along the whole bar", length)
    yield _spaced(site, "bar_cap_screw", work, where)


def _count_crank(site: Site, work: CurtainWork, where: Phrase) -> Iterator[Need]:
    drive = site.catalogue.drive(site.panel(work).drive)
    for key in (drive.part, drive.extension_part, drive.joint_part):
        yield need(key, 1, where, work.mark, "One for each curtain")


def _count_rope(site: Site, work: CurtainWork, where: Phrase) -> Iterator[Need]:
    """Return rope and eyes; the zigzag starts at the top.

    Source:
        n legs of a zigzag turn at n + 1 eyes, top and bottom by turns: derived here.
    """
    if work.rope_m <= 0:
        return
    boards = site.frame.boards[work.side]
    legs = Term("legs of the zigzag", work.rope_legs, "count")
    rope = Term("rope with tails", work.rope_m, "m")
    eyes = Term("eyes, top and bottom", work.eyes, "count")
    rule = "The zigzag's legs and the tails"
    yield need("rope", work.rope_m, where, work.mark, rule, legs, rope, source=DERIVED)
    top = (work.eyes + 1) // 2
    for count, material, text in (
        (top, boards.hip_board, ", top eyes"),
        (work.eyes - top, boards.baseboard, ", bottom eyes"),
    ):
        yield need(
            f"eye_{material}",
            count,
            Phrase(where.template + text, where.terms),
            work.mark,
            "The eyes stand at the top and at the bottom by turns, the first at the top",
            eyes,
            source=DERIVED,
        )


def _count_bottom_seal(site: Site, work: CurtainWork, where: Phrase) -> Iterator[Need]:
    if not site.panel(work).bottom_seal:
        return
    yield need(
        "bottom_seal",
        work.length_m,
        where,
        work.mark,
        "Along the whole bar",
        Term("bar", work.length_m, "m"),
    )
    yield _spaced(site, "bottom_seal_screw", work, where)


def _spaced(site: Site, part: str, work: CurtainWork, where: Phrase) -> Need:
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


_RULES: tuple[Rule, ...] = (_count_bar, _count_grip, _count_crank, _count_rope, _count_bottom_seal)
