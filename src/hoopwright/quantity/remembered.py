"""What was computed once and whose inputs did not change is not computed again.

Everything that goes into a stage is frozen, and a changed farm shares all that did not change with
the farm before. So the identity of the inputs tells whether a result still holds.
"""

from collections import OrderedDict
from collections.abc import Callable
from contextlib import suppress
from typing import Generic, ParamSpec, TypeVar

P = ParamSpec("P")
R = TypeVar("R")

REMEMBERED = 400


class Remembered(Generic[P, R]):
    """A pure function that remembers its last results by the identity of its arguments.

    The arguments are kept with the result, so that no identity can be given away meanwhile. Several
    threads may ask at once: what another one has let go of meanwhile is still returned.
    """

    def __init__(self, function: Callable[P, R], limit: int = REMEMBERED) -> None:
        """Remember up to `limit` results; the one unused longest goes first."""
        self._function = function
        self._limit = limit
        self._kept: OrderedDict[tuple[int, ...], tuple[object, R]] = OrderedDict()

    def __call__(self, *args: P.args, **kwargs: P.kwargs) -> R:
        """Return the result for these very objects, computed at most once."""
        key = tuple(map(id, args))
        found = self._kept.get(key)
        if found is not None:
            with suppress(KeyError):
                self._kept.move_to_end(key)
            return found[1]
        result = self._function(*args, **kwargs)
        self._kept[key] = (args, result)
        if len(self._kept) > self._limit:
            self._kept.popitem(last=False)
        return result
