"""The command line: `hoopwright [FARM]` for the window, and verbs that need no screen.

Each verb loads the papers it writes; the window, which writes none at its start, loads none.
"""

import argparse
import datetime
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

from hoopwright import __version__
from hoopwright.farm import Farm, Tunnel
from hoopwright.farm.begin import Answers, begin_farm
from hoopwright.farm.change import add_split
from hoopwright.farm.side import MOVING
from hoopwright.files.fault import FileFault
from hoopwright.files.storage import demo_catalogue, open_farm, save_farm, write_whole
from hoopwright.plan import plan
from hoopwright.proposal import Aim, propose_splits
from hoopwright.quantity.units import ReadError, Units, read_length
from hoopwright.quantity.working import words

if TYPE_CHECKING:
    from hoopwright.papers.measuring_subject import MeasuringSubject

FAULTS_OPEN = 1
BAD_INPUT = 2

AIMS: tuple[Aim, ...] = ("even", "least film")
SIDES = {"first": 0, "second": 1}
LENGTHS = (
    ("--span", "span_m", True, "between the tube centres at the ground"),
    ("--length", "length_m", True, "first to last bow"),
    ("--spacing", "spacing_m", True, "from bow to bow"),
    ("--leg", "leg_height_m", False, "straight leg (a common one when left out)"),
    ("--peak", "peak_height_m", False, "tube centre at the ridge (a common one when left out)"),
    ("--hip", "hip_height_m", False, "hip board (top of the leg when left out)"),
)
EPILOG = (
    "Figures are estimates for planning. Local codes, makers' instructions and licensed practice "
    "come before them. Verbs without a window: plan, takeoff, measure, check, new; "
    "'hoopwright plan --help' tells about each. Exit status: 0 well, 1 a fault is open "
    "(check), 2 bad input."
)


class _Parser(argparse.ArgumentParser):
    """A parser that says what is wrong in one line."""

    def error(self, message: str) -> NoReturn:
        """Print one line and leave with the status of bad input."""
        self.exit(BAD_INPUT, f"{self.prog}: {message}; see '{self.prog} --help'\n")


def read_arguments(arguments: Sequence[str]) -> argparse.Namespace:
    """Return the options; `run` is the verb's function, or None for the window."""
    first = arguments[0] if arguments else ""
    if first in VERBS:
        help_text, fill, run = VERBS[first]
        parser = _Parser(prog=f"hoopwright {first}", description=help_text, epilog=EPILOG)
        fill(parser)
        options = parser.parse_args(arguments[1:])
        options.run = run
        return options
    parser = _Parser(
        prog="hoopwright",
        description="Lays out and costs the complete film skin of a high tunnel.",
        epilog=EPILOG,
    )
    parser.add_argument("file", metavar="FARM", nargs="?", type=Path, help="farm file to open")
    parser.add_argument("--version", action="version", version=f"hoopwright {__version__}")
    options = parser.parse_args(arguments)
    options.run = None
    return options


def run_verb(options: argparse.Namespace) -> int:
    """Run a verb; return the exit status. Bad input is one line on standard error."""
    run: Callable[[argparse.Namespace], int] = options.run
    try:
        return run(options)
    except (FileFault, ReadError, ValueError) as fault:
        sys.stderr.write(f"hoopwright: {' '.join(str(fault).split())}\n")
        return BAD_INPUT


def _fill_plan(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("file", metavar="FARM", type=Path, help="farm file")
    shown = parser.add_mutually_exclusive_group()
    shown.add_argument("--json", action="store_true", help="print the whole plan as JSON, in SI")
    shown.add_argument(
        "--propose", action="store_true", help="print where each side could be split, and stop"
    )


def _run_plan(options: argparse.Namespace) -> int:
    farm, _ = open_farm(options.file)
    if options.propose:
        sys.stdout.write("\n".join(_proposed_lines(farm)) + "\n")
        return 0
    from hoopwright.papers.plan_json import plan_to_json
    from hoopwright.papers.plan_text import plan_to_text

    whole = plan(farm)
    sys.stdout.write(plan_to_json(farm, whole) if options.json else plan_to_text(farm, whole))
    return 0


def _proposed_lines(farm: Farm) -> list[str]:
    """Return what is proposed for every side that opens, or why nothing is."""
    lines = [farm.name]
    for index, tunnel in enumerate(farm.tunnels):
        lines += ["", tunnel.name]
        for side, chosen in enumerate(tunnel.sides):
            for aim in AIMS if chosen.kind in MOVING else ():
                try:
                    told = words(propose_splits(farm, index, side, aim).told, farm.units)
                except ValueError as refused:
                    told = str(refused)
                lines.append(f"  {aim}: {told}")
    return lines


def _fill_takeoff(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("file", metavar="FARM", type=Path, help="farm file")
    parser.add_argument(
        "-o", "--output", metavar="FILE.xlsx", type=Path, required=True, help="workbook to write"
    )


def _run_takeoff(options: argparse.Namespace) -> int:
    from hoopwright.papers.workbook import workbook_bytes

    farm, _ = open_farm(options.file)
    data = workbook_bytes(farm, plan(farm), __version__, datetime.date.today())
    write_whole(options.output, data)
    sys.stdout.write(f"{options.output}\n")
    return 0


def _fill_measure(parser: argparse.ArgumentParser) -> None:
    from hoopwright.papers.form_page import PAPER_NAMES

    parser.add_argument(
        "file", metavar="FARM", nargs="?", type=Path, help="farm file (blank when left out)"
    )
    parser.add_argument(
        "-o", "--output", metavar="FILE.pdf", type=Path, required=True, help="PDF to write"
    )
    parser.add_argument("--tunnel", metavar="NAME", help="one tunnel (all when left out)")
    parser.add_argument(
        "--paper", choices=PAPER_NAMES, help="letter for feet, a4 for metres when left out"
    )
    parser.add_argument(
        "--units", choices=("imperial", "metric"), help="units to write in (the farm's)"
    )


def _run_measure(options: argparse.Namespace) -> int:
    from hoopwright.papers.measuring_sheet import measuring_pages

    subjects = _measured(options)
    try:
        # Loads the toolkit, which the other verbs do without.
        from hoopwright.papers.form_painter import pdf_bytes
    except ImportError as fault:
        raise ValueError(f"no PDF can be painted here: {fault}") from fault
    pages = [page for subject in subjects for page in measuring_pages(subject)]
    write_whole(options.output, pdf_bytes(pages, "Measuring sheet"))
    sys.stdout.write(f"{options.output}\n")
    return 0


def _measured(options: argparse.Namespace) -> "tuple[MeasuringSubject, ...]":
    """Return what is measured: the tunnels of a farm that were asked for, or any tunnel."""
    from hoopwright.papers.form_page import PAPERS
    from hoopwright.papers.measuring_subject import blank_subject, subject_of, usual_paper

    farm = None if options.file is None else open_farm(options.file)[0]
    units: Units = options.units or (farm.units if farm else "imperial")
    paper = PAPERS[options.paper] if options.paper else usual_paper(units)
    if farm is None:
        if options.tunnel is not None:
            raise ValueError("--tunnel: name the farm file that the tunnel is in")
        return (blank_subject(demo_catalogue(), paper, units),)
    tunnels = [t for t in farm.tunnels if options.tunnel in (None, t.name)]
    if not tunnels:
        names = ", ".join(tunnel.name for tunnel in farm.tunnels)
        raise ValueError(f"--tunnel: there is no tunnel {options.tunnel!r}; the farm has {names}")
    return tuple(subject_of(farm, tunnel, paper, units) for tunnel in tunnels)


def _fill_check(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("file", metavar="FARM", type=Path, help="farm file")


def _run_check(options: argparse.Namespace) -> int:
    from hoopwright.papers.plan_text import findings_to_text

    farm, _ = open_farm(options.file)
    findings = plan(farm).findings
    sys.stdout.write(findings_to_text(farm, findings))
    return FAULTS_OPEN if any(f.severity == "fault" for f in findings) else 0


def _fill_new(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "-o", "--output", metavar="FARM", type=Path, required=True, help="farm file to write"
    )
    parser.add_argument("--farm", default="My farm", help="name of the farm")
    parser.add_argument("--name", default="Tunnel 1", help="name of the tunnel")
    parser.add_argument("--shape", choices=("round", "gothic", "rafters"), default="round")
    for flag, field, needed, text in LENGTHS:
        parser.add_argument(
            flag,
            dest=field,
            metavar="LENGTH",
            required=needed,
            help=f'{text}, such as 26\' or "5\' 6\\"" or 7.9m',
        )
    parser.add_argument("--layers", type=int, choices=(1, 2), default=1, help="layers of the roof")
    parser.add_argument(
        "--covering", choices=("one_sheet", "roof_and_sides"), default="roof_and_sides"
    )
    parser.add_argument(
        "--split",
        action="append",
        default=[],
        metavar="SIDE:LENGTH",
        help="split of the first or second side, such as first:36' (may be repeated)",
    )
    parser.add_argument(
        "--units", choices=("imperial", "metric"), default="imperial", help="units shown"
    )


def _run_new(options: argparse.Namespace) -> int:
    if options.output.exists():
        raise FileFault(
            "There is a file of that name already.",
            file=str(options.output),
            mend="Choose another name, or remove the file first.",
        )
    units: Units = options.units
    sizes = {
        field: _length(flag, getattr(options, field), units)
        for flag, field, _, _ in LENGTHS
        if getattr(options, field) is not None
    }
    answers = Answers(
        name=options.name,
        shape=options.shape,
        layers=options.layers,
        covering=options.covering,
        **sizes,
    )
    farm = begin_farm(options.farm, units, demo_catalogue(), answers)
    tunnel = farm.tunnels[0]
    for text in options.split:
        tunnel = _split(tunnel, text, units)
    save_farm(options.output, farm.but(tunnels=(tunnel,)), None)
    sys.stdout.write(f"{options.output}\n")
    return 0


def _length(flag: str, text: str, units: Units) -> float:
    try:
        return read_length(text, units).value_m
    except ReadError as fault:
        raise ReadError(f"{flag}: {fault}") from fault


def _split(tunnel: Tunnel, text: str, units: Units) -> Tunnel:
    side, colon, place = text.partition(":")
    if not colon or side not in SIDES:
        raise ReadError(f"--split: write first:LENGTH or second:LENGTH, not {text!r}")
    try:
        return add_split(tunnel, SIDES[side], _length("--split", place, units))
    except ValueError as fault:
        raise ValueError(f"--split {text}: {fault}") from fault


VERBS: dict[
    str,
    tuple[
        str,
        Callable[[argparse.ArgumentParser], None],
        Callable[[argparse.Namespace], int],
    ],
] = {
    "plan": ("Print the plan of a farm.", _fill_plan, _run_plan),
    "takeoff": ("Write the takeoff workbook of a farm.", _fill_takeoff, _run_takeoff),
    "measure": (
        "Write the sheet to fill in when a tunnel is measured.",
        _fill_measure,
        _run_measure,
    ),
    "check": ("List faults, cautions and notes of a farm.", _fill_check, _run_check),
    "new": ("Write a farm file with one tunnel.", _fill_new, _run_new),
}
