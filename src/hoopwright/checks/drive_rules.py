"""Rules about what turns a curtain: where it stands, how its joint bends, whether it holds."""

from collections.abc import Iterator

from hoopwright.checks.case import Case
from hoopwright.curtain import CurtainWork
from hoopwright.farm import GearedCrank, HandCrank, LineDrum, Tunnel
from hoopwright.farm.change import set_crank_end, with_tunnel_value
from hoopwright.quantity.finding import Finding
from hoopwright.quantity.working import PRACTICE, phrase

DOUBTFUL_SHARE = 0.5


def joint_bent(case: Case) -> Iterator[Finding]:
    """A universal joint that bends farther than it turns evenly."""
    for work in case.chosen.curtains:
        drive, angle_rad = work.hung.drive, max(work.joint_angles_rad)
        if not isinstance(drive, HandCrank) or angle_rad <= drive.joint_limit_rad:
            continue
        yield case.finding(
            "joint.angle",
            "caution",
            work.mark,
            phrase(
                "{side}, curtain {number}: the universal joint bends to {angle}, over the {limit} "
                "of this crank.",
                side=case.tunnel.sides[work.side].name,
                number=work.index + 1,
                angle=(angle_rad, "rad"),
                limit=(drive.joint_limit_rad, "rad"),
            ),
            phrase(
                "The handle turns by fits and starts: at its worst the torque is {swing} times the "
                "mean.",
                swing=(work.joint_swing, "ratio"),
            ),
            phrase(
                "Take a longer extension pipe than {pipe}, hold the handle nearer to the height of "
                "the bar, or take a geared crank on a guide pipe.",
                pipe=(drive.extension_m, "m"),
            ),
            None,
            "single universal joint (textbook); the limit of the angle: the user's entry",
        )


def hand_crank_in_the_middle(case: Case) -> Iterator[Finding]:
    """A hand crank in the middle of a bar, where its extension pipe has no place."""
    for work in case.chosen.curtains:
        if work.cranked != "middle" or not isinstance(work.hung.drive, HandCrank):
            continue
        geared = next((d for d in case.catalogue.drives if isinstance(d, GearedCrank)), None)
        path = ("sides", work.side, "panels", work.index, "drive")
        yield case.finding(
            "crank.hand_in_the_middle",
            "fault",
            work.mark,
            phrase(
                "{side}, curtain {number}: a hand crank cannot turn the bar from its middle.",
                side=case.tunnel.sides[work.side].name,
                number=work.index + 1,
            ),
            phrase(
                "Its extension pipe and joint sit on the end of the bar; from the middle a gearbox "
                "turns both halves and climbs with them on a guide pipe."
            ),
            phrase("Take the {geared}.", geared=geared.name)
            if geared
            else phrase("Crank it at the front, or enter a geared crank in the catalogue."),
            with_tunnel_value(case.tunnel, path, geared.key)
            if geared
            else set_crank_end(case.tunnel, work.side, work.index, "front"),
            PRACTICE,
        )


def drive_runs_back(case: Case) -> Iterator[Finding]:
    """A drive that does not hold a raised bar by itself; one finding for a side."""
    for n, side in enumerate(case.tunnel.sides):
        loose = [w for w in case.chosen.curtains if w.side == n and not w.hung.drive.holds]
        if not loose:
            continue
        worst = max(loose, key=lambda work: work.runaway_handle_m_s)
        yield case.finding(
            "crank.runs_back",
            "caution",
            worst.mark,
            phrase(
                "{side}: nothing in the drive holds a raised bar. Let go, the handle of curtain "
                "{number} would reach up to {handle} and the bar {bar} if nothing rubbed.",
                side=side.name,
                number=worst.index + 1,
                handle=(worst.runaway_handle_m_s, "m/s"),
                bar=(worst.runaway_m_s, "m/s"),
            ),
            phrase(
                "Flying handles break arms. The figure is an upper bound, not a forecast: rubbing "
                "makes it less."
            ),
            phrase(
                "Keep hold until the lock is in, stand aside of the handle, keep hands out of the "
                "roll and nobody under it; or take a drive that holds by itself."
            ),
            _holding(case, loose),
            "derived here: energy of the raised bar, nothing lost",
        )


def _holding(case: Case, works: list[CurtainWork]) -> Tunnel | None:
    """Return the tunnel with drives that hold where the catalogue has one, or None."""
    tunnel = case.tunnel
    for work in works:
        drops = work.kind == "drop_down"
        held = next(
            (d for d in case.catalogue.drives if d.holds and isinstance(d, LineDrum) == drops), None
        )
        if held is None:
            return None
        path = ("sides", work.side, "panels", work.index, "drive")
        tunnel = with_tunnel_value(tunnel, path, held.key)
    return tunnel


def gears_doubtful(case: Case) -> Iterator[Finding]:
    """Gears that are said to hold and lose too little to do so by friction."""
    seen = set()
    for work in case.chosen.curtains:
        drive = work.hung.drive
        geared = isinstance(drive, GearedCrank) or (isinstance(drive, LineDrum) and drive.ratio > 1)
        if not geared or not drive.holds or drive.efficiency < DOUBTFUL_SHARE:
            continue
        if (work.side, drive.key) in seen:
            continue
        seen.add((work.side, drive.key))
        yield case.finding(
            "drive.hold_doubtful",
            "note",
            work.mark,
            phrase(
                "{side}: the {drive} is entered as holding by itself, with an efficiency of "
                "{share}.",
                side=case.tunnel.sides[work.side].name,
                drive=drive.name,
                share=(drive.efficiency, "share"),
            ),
            phrase(
                "Gears that hold by friction lose more than half of the work; such a one holds "
                "only with a pawl or a brake."
            ),
            phrase("Try it under load, or correct one of the two entries in the catalogue."),
            None,
            "self-locking screw and worm (textbook), from memory",
        )
