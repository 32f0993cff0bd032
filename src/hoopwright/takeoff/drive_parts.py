"""What works each curtain: crank or drum with all that belongs to it, and its lock.

A guide pipe is one piece. A stick is cut into as many whole pipes as it gives, and each pipe takes
its share of the stick, so that pipes of one length add up to the sticks that they really take.
"""

import math
from collections.abc import Iterator

from hoopwright.curtain.curtain import CurtainWork
from hoopwright.farm.drive import Drive, GearedCrank, HandCrank
from hoopwright.quantity.working import DERIVED, Phrase, Term
from hoopwright.takeoff.need import Need
from hoopwright.takeoff.site import CurtainSite, need

GUIDE_BRACKETS = 2
ROUNDING = 1e-9


def count_drive(site: CurtainSite, work: CurtainWork, where: Phrase) -> Iterator[Need]:
    """Return what works a curtain.

    Source:
        One drive for each curtain, a lock where the drive does not hold by itself: common
        practice, no published source.
    """
    drive = site.catalogue.drive(site.panel.drive)
    yield need(drive.part, 1, where, work.mark, "One for each curtain")
    yield from _count_with_drive(site, drive, work, where)
    if not drive.holds:
        rule = "One lock pin or pawl, as the drive does not hold by itself"
        yield need("crank_lock", 1, where, work.mark, rule)


def guide_share(guide_m: float, stick_m: float) -> float:
    """Return what one guide pipe takes of the sticks it is cut from, m.

    Args:
        guide_m: Length of the pipe, m, above zero.
        stick_m: Length of a stick, m, above zero.

    Returns:
        A stick divided by the whole pipes it gives; whole sticks when none gives a pipe.

    Source:
        Derived here.
    """
    pipes = math.floor(stick_m / guide_m + ROUNDING)
    if pipes >= 1:
        return stick_m / pipes
    return math.ceil(guide_m / stick_m - ROUNDING) * stick_m


def _count_with_drive(
    site: CurtainSite, drive: Drive, work: CurtainWork, where: Phrase
) -> Iterator[Need]:
    if isinstance(drive, HandCrank):
        for key in (drive.extension_part, drive.joint_part):
            yield need(key, 1, where, work.mark, "One for each curtain")
    elif isinstance(drive, GearedCrank):
        yield from _count_guide(site, drive, work, where)
    else:
        yield from _count_lines(work, where)


def _count_guide(
    site: CurtainSite, drive: GearedCrank, work: CurtainWork, where: Phrase
) -> Iterator[Need]:
    if work.guide_m <= 0:
        return
    part = site.catalogue.part(drive.guide_part)
    guide = Term("guide pipe", work.guide_m, "m")
    if part.counted_in == "m":
        yield need(
            drive.guide_part,
            guide_share(work.guide_m, part.holds),
            where,
            work.mark,
            "A guide pipe is one piece: a stick divided by the whole pipes that it gives; when the "
            "pipe is longer, whole sticks joined",
            guide,
            Term("one stick", part.holds, "m"),
            source=DERIVED,
        )
    else:
        yield need(drive.guide_part, 1, where, work.mark, "One for each curtain", guide)
    rule = "One at the hip board and one at the baseboard"
    yield need("guide_bracket", GUIDE_BRACKETS, where, work.mark, rule)


def _count_lines(work: CurtainWork, where: Phrase) -> Iterator[Need]:
    """Return lift lines with the cable they are tied to, pulleys and clamps.

    Source:
        A clamp ties each line to the cable: common practice, no published source.
    """
    lines = Term("lift lines", work.lift_lines, "count")
    length = Term("lines and cable", work.lift_line_m, "m")
    pulleys = Term("pulleys", work.pulleys, "count")
    rule = "All lift lines and the cable they are tied to"
    yield need("lift_line", work.lift_line_m, where, work.mark, rule, lines, length, source=DERIVED)
    rule = "One over each lift line, and where the cable turns"
    yield need("pulley", work.pulleys, where, work.mark, rule, lines, pulleys)
    rule = "One ties each lift line to the cable"
    yield need("line_clamp", work.lift_lines, where, work.mark, rule, lines)
