"""Start the window, or run one verb without a screen."""

import gc
import sys
from collections.abc import Sequence

BAD_INPUT = 2
NO_WINDOW = (
    "hoopwright: {fault}; without a window use the verbs plan, takeoff, measure, check or "
    "new (see 'hoopwright --help')\n"
)


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command line; return the exit status."""
    # Nothing made while loading is garbage, and a plan makes no cycles: looking for some takes
    # longer than a verb. The window collects by itself once it is open.
    gc.disable()
    from hoopwright.verbs import read_arguments, run_verb

    options = read_arguments(sys.argv[1:] if arguments is None else arguments)
    if options.run is not None:
        return run_verb(options)
    from hoopwright.desktop.screen import screen_fault

    fault = screen_fault()
    if fault:
        sys.stderr.write(NO_WINDOW.format(fault=fault))
        return BAD_INPUT
    from hoopwright.desktop.application import run_window

    return run_window(options.file)


if __name__ == "__main__":
    sys.exit(main())
