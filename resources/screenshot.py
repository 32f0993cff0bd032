"""Take the picture of the README from the real window: `python resources/screenshot.py`."""

import os
import time
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from hoopwright.desktop.application import begin_application, open_window

SIZE = (1366, 768)
PICKED = "side/0/panel/0"
WAIT_S = 10.0


def main() -> None:
    """Open the sample farm, pick a curtain, and keep what the window shows."""
    app = begin_application()
    window = open_window(None)
    window.show()
    window.showNormal()
    window.resize(*SIZE)
    end = time.monotonic() + WAIT_S
    while window.canvas is None and time.monotonic() < end:
        app.processEvents()
    window.session.pick(PICKED)
    for _ in range(20):
        app.processEvents()
    window.grab().save(str(Path(__file__).parent / "screenshot.png"))
    window.close()


if __name__ == "__main__":
    main()
