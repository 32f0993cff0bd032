"""Every rule the plan must satisfy: what is wrong, where, why, and what mends it."""

from hoopwright.checks.case import Case
from hoopwright.checks.rules import check_farm, check_tunnel, sort_findings
from hoopwright.checks.variant import TunnelPlan, Variant

__all__ = [
    "Case",
    "TunnelPlan",
    "Variant",
    "check_farm",
    "check_tunnel",
    "sort_findings",
]
