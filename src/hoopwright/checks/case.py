"""What a rule looks at, and how it speaks."""

from collections.abc import Callable
from dataclasses import dataclass

from hoopwright.checks.variant import Variant
from hoopwright.farm import Catalogue, Limits, Tunnel
from hoopwright.fit import Fit
from hoopwright.heat import Warmth
from hoopwright.pressure import Held
from hoopwright.quantity.finding import Finding, Severity
from hoopwright.quantity.working import DERIVED, Phrase
from hoopwright.survey import Survey


def mend_or_none(make: Callable[[], Tunnel]) -> Tunnel | None:
    """Return the mended tunnel, or None where other entries do not allow it."""
    try:
        return make()
    except ValueError:
        return None


@dataclass(frozen=True, slots=True)
class Case:
    """One tunnel and all that is known of it.

    Attributes:
        tunnel: The tunnel as entered.
        survey: The frame as built.
        chosen: The covering that was chosen.
        other_made: Gives the other covering.
        fit: How sure it is that each stock width is wide enough.
        held: The cells under pressure.
        warmth: What is lost in heat and saved.
        catalogue: What can be bought.
        limits: What people can do.
        coupon_n_m: What a coupon of the seal held, N/m, or None.
        currency: Code of the farm's currency.
    """

    tunnel: Tunnel
    survey: Survey
    chosen: Variant
    other_made: Callable[[], Variant]
    fit: Fit
    held: Held
    warmth: Warmth
    catalogue: Catalogue
    limits: Limits
    coupon_n_m: float | None
    currency: str

    def finding(
        self,
        code: str,
        severity: Severity,
        where: str,
        what: Phrase,
        why: Phrase,
        mend: Phrase,
        mended: Tunnel | None = None,
        source: str = DERIVED,
    ) -> Finding:
        """Return a finding about this tunnel."""
        return Finding(
            code=code,
            severity=severity,
            tunnel=self.tunnel.name,
            where=where,
            what=what,
            why=why,
            mend=mend,
            mended=mended,
            source=source,
        )
