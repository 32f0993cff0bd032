"""Ratios against floors measured in the same run: `python tests/benchmarks/ratios.py`.

Nothing here passes or fails by the clock. Each line prints what was measured, its floor, and
the ratio to reach. Middle of several runs; the slow end (p95) where the line says so.
"""

import datetime
import gc
import io
import os
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from hoopwright.farm import Farm, Tunnel
from hoopwright.farm.change import add_tunnel, move_hip, move_split, with_tunnel
from hoopwright.farm.change_ends import move_opening
from hoopwright.files.storage import open_farm, sample_farms
from hoopwright.plan import plan, preview

Move = Callable[[Tunnel, int], Tunnel]

FRAME_S = 1 / 60
TRIES = 9
STEPS = 60
MOVES: dict[str, Move] = {
    "split": lambda tunnel, n: move_split(tunnel, 0, 0, 10.003 + n * 0.07),
    "hip": lambda tunnel, n: move_hip(tunnel, (0, 1), 1.4 + n * 0.003),
    "vent": lambda tunnel, n: move_opening(tunnel, 1, "cut", 0, -0.4 + n * 0.005, 2.4 + n * 0.004),
}
START = """
import sys, time
begin = time.perf_counter()
{body}
sys.stdout.write(repr(time.perf_counter() - begin))
"""
BARE = """
from PySide6.QtWidgets import QApplication, QMainWindow
app = QApplication([])
window = QMainWindow()
window.resize(1366, 768)
window.show()
app.processEvents()
"""
BARE_PLOTS = BARE + "import pyqtgraph\n"
SHELL = """
import gc
gc.disable()  # As main does.
from hoopwright.desktop.application import begin_application, open_window
app = begin_application([])
window = open_window(None)
window.show()
app.processEvents()
"""
CANVAS = (
    SHELL
    + """
while window.canvas is None:
    app.processEvents()
app.processEvents()
"""
)


def main() -> None:
    """Print every ratio."""
    gc.disable()  # As in the window and in the verbs.
    farm = sample()
    print(f"{'what':<58}{'measured':>12}{'floor':>12}{'ratio':>8}  reach")
    start_up()
    drag(farm)
    growth(farm)
    workbook(farm)


def sample() -> Farm:
    """Return the sample farm with one gothic tunnel of 26 bows."""
    path = next(p for p in sample_farms() if p.stem == "brook-gothic")
    return open_farm(path)[0]


def line(what: str, measured_s: float, floor_s: float, reach: str) -> None:
    """Print one ratio."""
    print(
        f"{what:<58}{measured_s * 1e3:>9.2f} ms{floor_s * 1e3:>9.2f} ms"
        f"{measured_s / floor_s:>8.2f}  {reach}",
        flush=True,
    )


def start_up() -> None:
    """Compare the start of the window with a bare window, turn about in new processes.

    The first start of each kind is not counted: it compiles the modules, as it does once for users.
    """
    bodies = {"bare": BARE, "plots": BARE_PLOTS, "shell": SHELL, "canvas": CANVAS}
    times: dict[str, list[float]] = {name: [] for name in bodies}
    with tempfile.TemporaryDirectory() as compiled:
        for _ in range(TRIES + 1):
            for name, body in bodies.items():
                times[name].append(started(body, compiled))
    middle = {name: statistics.median(found[1:]) for name, found in times.items()}
    line("start to painted shell / bare window", middle["shell"], middle["bare"], "<= 2.0")
    line(
        "start to canvas drawn / bare window + plot library",
        middle["canvas"],
        middle["plots"],
        "<= 1.3",
    )


def started(body: str, compiled: str) -> float:
    """Return the seconds a start takes in a process of its own, its modules compiled before."""
    surroundings = {k: v for k, v in os.environ.items() if k != "PYTHONDONTWRITEBYTECODE"}
    done = subprocess.run(
        [sys.executable, "-c", START.format(body=body)],
        capture_output=True,
        text=True,
        check=True,
        env={**surroundings, "PYTHONPYCACHEPREFIX": compiled},
    )
    return float(done.stdout)


def drag(farm: Farm) -> None:
    """Measure one step of a drag in one tunnel, and in a farm of sixty."""
    for what, move in MOVES.items():
        spent = slow_end(steps(farm, move))
        line(f"drag step, recompute, {what}, p95 / one frame", spent, FRAME_S, "<= 0.5")
    one = steps(farm, MOVES["split"])
    many = farm
    while len(many.tunnels) < 60:
        many = add_tunnel(many, farm.tunnels[0])
    sixty = steps(many, MOVES["split"])
    line(
        "drag step in 60 tunnels / in one",
        statistics.median(sixty),
        statistics.median(one),
        "<= 1.5",
    )
    line("drag step on screen, p95 / one frame", slow_end(screen_steps(farm)), FRAME_S, "<= 1.0")


def steps(farm: Farm, move: Move) -> list[float]:
    """Return the seconds of each step from a tunnel changed by a drag to a new plan."""
    last = plan(farm)
    found = []
    for n in range(STEPS):
        begin = time.perf_counter()
        last = preview(with_tunnel(farm, 0, move(farm.tunnels[0], n)), last)
        found.append(time.perf_counter() - begin)
    return found


def screen_steps(farm: Farm) -> list[float]:
    """Return the seconds of each step from a moved split to the repainted window."""
    from hoopwright.desktop.application import begin_application, open_window

    app = begin_application([])
    window = open_window(None)
    window.resize(1366, 768)
    window.show()
    while window.canvas is None:
        app.processEvents()
    for _ in range(20):
        app.processEvents()
    session = window.session
    session.load(farm, None, None)
    app.processEvents()
    session.begin()
    found = []
    for n in range(STEPS):
        begin = time.perf_counter()
        session.preview(MOVES["split"](farm.tunnels[0], n))
        app.processEvents()
        found.append(time.perf_counter() - begin)
    session.cancel()
    window.close()
    return found


def slow_end(times: list[float]) -> float:
    """Return the time that 95 of 100 steps stay within."""
    return statistics.quantiles(times, n=20)[-1]


def growth(farm: Farm) -> None:
    """Compare the plan of many tunnels with as many times the plan of one."""
    one_s = statistics.median(fresh(farm, n) for n in range(TRIES))
    for count in (10, 100, 1000):
        spent = fresh(many_farm(farm, count), count)
        line(f"plan of {count} tunnels / {count} x one", spent, one_s * count, "<= 1.0 or so")


def many_farm(farm: Farm, count: int) -> Farm:
    """Return a farm of so many tunnels, each a little longer in its leg than the one before."""
    first = farm.tunnels[0]
    tunnels = tuple(
        first.but(
            name=f"T{n}",
            frame=first.frame.but(tube_diameter_m=first.frame.tube_diameter_m + n * 1e-6),
        )
        for n in range(count)
    )
    return farm.but(tunnels=tunnels)


def fresh(farm: Farm, salt: int) -> float:
    """Return the seconds of a plan that nothing remembered helps."""
    first = farm.tunnels[0]
    frame = first.frame.but(tube_diameter_m=first.frame.tube_diameter_m + salt * 1e-7)
    changed = with_tunnel(farm, 0, first.but(frame=frame, skin=first.skin.but()))
    begin = time.perf_counter()
    plan(changed)
    return time.perf_counter() - begin


def workbook(farm: Farm) -> None:
    """Compare the export with writing the same cells by the spreadsheet library alone."""
    import openpyxl

    from hoopwright.papers.workbook import workbook_bytes

    whole = plan(farm)
    today = datetime.date(2026, 1, 1)
    data = workbook_bytes(farm, whole, "0", today)
    cells = [
        (sheet.title, [[c.value for c in row] for row in sheet.iter_rows()])
        for sheet in openpyxl.load_workbook(io.BytesIO(data))
    ]

    def bare() -> None:
        book = openpyxl.Workbook()
        for title, rows in cells:
            sheet = book.create_sheet(title)
            for row in rows:
                sheet.append(row)
        book.save(io.BytesIO())

    floor_s = middle_of(bare)
    export_s = middle_of(lambda: workbook_bytes(farm, whole, "0", today))
    line("workbook export / the same cells alone", export_s, floor_s, "<= 1.3")


def middle_of(act: Callable[[], object]) -> float:
    """Return the middle of several times, in seconds."""
    found = []
    for _ in range(TRIES):
        begin = time.perf_counter()
        act()
        found.append(time.perf_counter() - begin)
    return statistics.median(found)


if __name__ == "__main__":
    main()
