"""When to show what costs more than one frame while a hand drags: as soon as the hand rests."""

from PySide6.QtCore import QElapsedTimer, QObject, QTimer


class Rest(QTimer):
    """A timer that waits for a hand to rest, and no longer than a while when it does not."""

    def __init__(self, pause_ms: int, most_ms: int, parent: QObject) -> None:
        """Wait for nothing yet.

        Args:
            pause_ms: How long a hand has to rest.
            most_ms: How long to wait at most from the first step on.
            parent: Who waits.
        """
        super().__init__(parent, singleShot=True)
        self._pause_ms, self._most_ms = pause_ms, most_ms
        self._waited = QElapsedTimer()

    def step(self) -> None:
        """Wait from this step on."""
        if not self.isActive():
            self._waited.start()
        left_ms = self._most_ms - self._waited.elapsed()
        self.start(max(0, min(self._pause_ms, left_ms)))
