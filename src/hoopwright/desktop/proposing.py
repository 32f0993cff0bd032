"""Splits proposed for a side: where they are asked for, and what is said of them."""

from PySide6.QtCore import (
    QCoreApplication,
    QObject,
    QRunnable,
    QThreadPool,
    Signal,
    SignalInstance,
)

from hoopwright.desktop.field import refusal_words
from hoopwright.desktop.session import Session
from hoopwright.desktop.table_coverings import hardest_crank
from hoopwright.farm import Farm
from hoopwright.proposal import Aim, Proposal, propose_splits

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
    """Propose splits on a side of the shown tunnel; those with least film come when found.

    Raises:
        ValueError: Nothing fits within the limits, or nothing is picked that could be kept.
    """
    keep_m = kept_place(session) if aim == "keep bow" else None
    if aim == "keep bow" and keep_m is None:
        words = QCoreApplication.translate("Proposal", "Pick the split or the bow to keep first.")
        raise ValueError(words)
    if aim == "least film":
        film_search(session).start(side)
    else:
        session.propose(propose_splits(session.farm, session.index, side, aim, keep_m))


class _Looking(QRunnable):
    """Looks for splits; it holds frozen values alone."""

    def __init__(self, found: SignalInstance, farm: Farm, index: int, side: int) -> None:
        super().__init__()
        self._found, self._farm, self._index, self._side = found, farm, index, side

    def run(self) -> None:
        """Look, and hand over what was found or what went wrong."""
        result: Proposal | Exception
        try:
            result = propose_splits(self._farm, self._index, self._side, "least film")
        except Exception as error:  # noqa: BLE001  # told, or raised where the window sees it
            result = error
        self._found.emit(self._farm, self._index, result)


class FilmSearch(QObject):
    """Looks for the splits with least film, which takes a second or two for a long tunnel.

    Signals:
        found(Farm farm, int index, object result): When a search ended, for which farm and tunnel,
            with a proposal or the exception that ended it.
    """

    found = Signal(object, int, object)

    def __init__(self, session: Session) -> None:
        """Search for a session, and rest when it ends."""
        super().__init__(session)
        self._session = session
        self._pool = QThreadPool(self)
        self._pool.setMaxThreadCount(1)
        self.found.connect(self.on_found)

    def start(self, side: int) -> None:
        """Begin a search; one that has not begun yet gives way."""
        session = self._session
        words = QCoreApplication.translate("Proposal", "Looking for the splits with least film…")
        session.noticed.emit("note", words)
        self._pool.clear()
        self._pool.start(_Looking(self.found, session.farm, session.index, side))

    def rest(self) -> None:
        """Wait until nothing is looked for."""
        self._pool.clear()
        self._pool.waitForDone()

    def on_found(self, farm: Farm, index: int, result: object) -> None:
        """Propose what was found, unless the farm or the tunnel is another one by now."""
        session = self._session
        if session.farm is not farm or session.index != index or session.dragging:
            return
        if isinstance(result, Proposal):
            session.propose(result)
        elif isinstance(result, ValueError):
            session.noticed.emit("fault", refusal_words(result, session.units))
        else:
            assert isinstance(result, Exception)
            raise result


def film_search(session: Session) -> FilmSearch:
    """Return the search of a session, made when it is wanted first."""
    kept = session.findChild(FilmSearch)
    return kept if isinstance(kept, FilmSearch) else FilmSearch(session)
