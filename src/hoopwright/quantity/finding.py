"""What is wrong or doubtful in a plan: a value in a list, never an exception."""

from dataclasses import dataclass
from typing import Literal

from hoopwright.quantity.working import DERIVED, Phrase

Severity = Literal["fault", "caution", "note"]


@dataclass(frozen=True, slots=True)
class Finding:
    """One fault, caution or note of the plan.

    Attributes:
        code: `subject.fault`, stable for ever.
        severity: `fault` must be mended before ordering, `caution` wants a look, `note` tells.
        tunnel: Name of the tunnel, or "" for the farm.
        where: Mark of the place on the canvas, for example `side/0/split/1`.
        what: What is the matter.
        why: What happens if it stays.
        mend: What to do about it.
        mended: A whole tunnel in which it is mended, or None when there is no such choice to
            make by itself. The type is left open so that this package need not know the farm.
        source: Where the rule comes from.
    """

    code: str
    severity: Severity
    tunnel: str
    where: str
    what: Phrase
    why: Phrase
    mend: Phrase
    mended: object | None = None
    source: str = DERIVED
