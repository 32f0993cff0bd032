"""The whole plan as JSON for other programs: SI units in the key names, money as text.

The shape is the plan's own: every result class is an object with its fields, every working is
kept under `workings`. A field that is no part of a result (one that does not count when two are
compared) stays out; so does what is worked out on demand, such as the course of filling. The format
grows when a key changes its meaning or goes away: since format 2 the trailing of a curtain has play
and uneven winding in it. `held` and `warmth` of a tunnel came without a new format.
"""

import json
from dataclasses import Field, fields, is_dataclass
from decimal import Decimal
from typing import Any

from msgspec import Struct

from hoopwright.airing import Airing
from hoopwright.farm import Farm
from hoopwright.fit import SheetFit
from hoopwright.plan import Plan, TunnelPlan
from hoopwright.pressure import Held
from hoopwright.quantity.finding import Finding
from hoopwright.quantity.working import LaterWorkings, Phrase, words
from hoopwright.survey.bow_curve import BowCurve

PLAN_FORMAT = 2
# What is worked out when somebody asks for it, and told here.
LATER: dict[type, str] = {
    TunnelPlan: "other",
    SheetFit: "widths",
    Held: "tries",
    Airing: "course",
}


def plan_to_json(farm: Farm, plan: Plan) -> str:
    """Return the plan as indented JSON text, ending in a newline."""
    whole = {
        "program": "hoopwright",
        "plan_format": PLAN_FORMAT,
        "farm": farm.name,
        "currency": farm.money.currency,
        "plan": _plain(plan),
    }
    return json.dumps(whole, indent=2, ensure_ascii=False, allow_nan=False) + "\n"


def _plain(value: Any) -> Any:
    """Return a value made of dicts, lists, numbers and texts only."""
    if isinstance(value, Decimal):
        return str(value)
    if isinstance(value, Phrase):
        return words(value, "metric")
    if isinstance(value, BowCurve):
        return {"outline_m": [[round(x, 6), round(y, 6)] for x, y in value.outline()]}
    if isinstance(value, Finding):
        kept = {f.name: _plain(getattr(value, f.name)) for f in fields(value)}
        kept["mended"] = value.mended is not None
        return kept
    if is_dataclass(value) and not isinstance(value, type):
        kept = {f.name: _plain(getattr(value, f.name)) for f in fields(value) if _is_told(f)}
        later = LATER.get(type(value))
        return kept if later is None else {**kept, later: _plain(getattr(value, later))}
    if isinstance(value, Struct):
        return {name: _plain(getattr(value, name)) for name in value.__struct_fields__}
    if isinstance(value, frozenset):
        return sorted(value)
    if isinstance(value, tuple | list | LaterWorkings):
        return [_plain(v) for v in value]
    return value


def _is_told(entry: Field[Any]) -> bool:
    """Return whether a field is one of the figures and their workings, and no helper of a view."""
    return entry.compare or "told" in entry.metadata
