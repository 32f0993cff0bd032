"""Splits proposed for a side: where they are asked for, and what is said of them."""

from PySide6.QtCore import QCoreApplication, Qt
from PySide6.QtGui import QGuiApplication

from hoopwright.desktop.session import Session
from hoopwright.desktop.table_coverings import hardest_crank
from hoopwright.proposal import Aim, propose_splits

PROPOSALS: dict[str, Aim] = {
    "propose even": "even",
    "propose least film": "least film",
    "propose keep bow": "keep bow",
}
"""The acts of a form that propose splits, and the aim of each."""


def side_in_hand(session: Session) -> int:
    """Return the side that is picked, or the one with the hardest crank.

    Raises:
        ValueError: No side of the tunnel has curtains.
    """
    parts = session.mark.split("/")
    if parts[0] == "side":
        return int(parts[1])
    work = hardest_crank(session.tunnel_plan.chosen)
    if work is None:
        words = "No side of {tunnel} has curtains; choose another kind of side first."
        said = QCoreApplication.translate("Proposal", words)
        raise ValueError(said.format(tunnel=session.tunnel.name))
    return work.side


def kept_place(session: Session) -> float | None:
    """Return where the picked split or bow stands from the first bow, m, or None."""
    parts = session.mark.split("/")
    try:
        if parts[0] == "bow":
            return session.tunnel_plan.survey.bows_m[int(parts[1])]
        if parts[2:3] == ["split"]:
            return session.tunnel.sides[int(parts[1])].splits[int(parts[3])].at_m
    except LookupError:
        # What was picked went with the last edit.
        return None
    return None


def propose_on(session: Session, side: int, aim: Aim) -> None:
    """Propose splits on a side of the shown tunnel.

    Raises:
        ValueError: Nothing fits within the limits, or nothing is picked that could be kept.
    """
    keep_m = kept_place(session) if aim == "keep bow" else None
    if aim == "keep bow" and keep_m is None:
        words = QCoreApplication.translate("Proposal", "Pick the split or the bow to keep first.")
        raise ValueError(words)
    QGuiApplication.setOverrideCursor(Qt.CursorShape.WaitCursor)
    try:
        proposal = propose_splits(session.farm, session.index, side, aim, keep_m)
    finally:
        QGuiApplication.restoreOverrideCursor()
    session.propose(proposal)
