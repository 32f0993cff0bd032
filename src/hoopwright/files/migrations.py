"""Raise a farm file of an older format to the one this program writes, step by step.

A step takes the whole file as plain values and returns it at the next format. It only moves,
names and fills in; whether the result is a possible farm is judged after the last step. Every
format keeps a sample among the tests.
"""

from collections.abc import Callable
from typing import Any

from hoopwright.files.fault import FileFault

Raw = dict[str, Any]

FORMAT = 3


def _name_and_fill(raw: Raw) -> Raw:
    """Raise from format 1: rope and bottom seal were yes or no, a blower was a part alone."""
    farm = raw["farm"]
    tunnels = [
        {**tunnel, "sides": [_with_named_edges(side) for side in tunnel["sides"]]}
        for tunnel in farm["tunnels"]
    ]
    catalogue = _with_air(_with_sticks_in_metres(farm["catalogue"]))
    return {**raw, "farm": {**farm, "tunnels": tunnels, "catalogue": catalogue}}


def _with_named_edges(side: Raw) -> Raw:
    panels = []
    for panel in side["panels"]:
        kept = {k: v for k, v in panel.items() if k not in ("rope", "bottom_seal")}
        kept["rope"] = "zigzag" if panel.get("rope", True) else "none"
        kept["bottom"] = "seal_profile" if panel.get("bottom_seal", True) else "none"
        panels.append(kept)
    return {**side, "panels": panels}


def _with_sticks_in_metres(catalogue: Raw) -> Raw:
    """Name the joints of the bars; what a stick holds was always read as metres."""
    bars = [
        {**bar, "joint": "splice" if bar["grip"] == "own_channel" else "swage"}
        for bar in catalogue["bars"]
    ]
    sticks = {bar["part"] for bar in bars}
    parts = [
        {**part, "counted_in": "m"} if part["key"] in sticks else part
        for part in catalogue["parts"]
    ]
    return {**catalogue, "bars": bars, "parts": parts}


def _with_air(catalogue: Raw) -> Raw:
    """Give blowers a curve and hoses a bore; both are invented, as the parts had none."""
    parts = catalogue["parts"]
    curve = [{"flow_m3_s": 0.0, "pressure_pa": 150.0}, {"flow_m3_s": 0.045, "pressure_pa": 0.0}]
    blowers = [
        {"key": p["key"], "name": p["name"], "curve": curve, "power_w": 60.0, "part": p["key"]}
        for p in parts
        if p["key"].startswith("blower")
    ]
    hoses = [
        {
            "key": p["key"],
            "name": p["name"],
            "bore_m": 0.0508,
            "roughness_m": 0.0005,
            "part": p["key"],
        }
        for p in parts
        if p["key"] == "jumper_hose"
    ]
    return {**catalogue, "blowers": blowers, "hoses": hoses}


def _name_screens(raw: Raw) -> Raw:
    """Raise from format 2: a screen was the share of the air that it lets through, and no part."""
    farm = raw["farm"]
    shares = [s.get("screen_flow_share", 1.0) for t in farm["tunnels"] for s in t["sides"]]
    tunnels = [
        {**tunnel, "sides": [_with_screen(side) for side in tunnel["sides"]]}
        for tunnel in farm["tunnels"]
    ]
    catalogue = farm["catalogue"]
    screened = any(share < 1.0 for share in shares)
    if screened and all(part["key"] != SCREEN["key"] for part in catalogue["parts"]):
        catalogue = {**catalogue, "parts": [*catalogue["parts"], SCREEN]}
    return {**raw, "farm": {**farm, "tunnels": tunnels, "catalogue": catalogue}}


def _with_screen(side: Raw) -> Raw:
    kept = {k: v for k, v in side.items() if k != "screen_flow_share"}
    share = side.get("screen_flow_share", 1.0)
    if share < 1.0:
        kept["screen"] = {"part": SCREEN["key"], "flow_share": share}
    return kept


SCREEN: Raw = {
    "key": "insect_screen",
    "group": "Shade and screen",
    "name": "Insect screen",
    "counted_in": "m",
    "holds": 30.48,
    "sold_as": "roll",
    "price": "120.00",
}

STEPS: dict[int, Callable[[Raw], Raw]] = {1: _name_and_fill, 2: _name_screens}


def raise_format(raw: Raw, name: str) -> Raw:
    """Return the contents of a farm file at the present format.

    Args:
        raw: The whole file as plain values.
        name: File named in the fault.

    Raises:
        FileFault: The format is missing, is no format, is newer than this program, or the file
            is damaged where an older format differs.
    """
    number = raw.get("format")
    if type(number) is not int or number < 1:
        found = "is missing" if "format" not in raw else "must be a whole number from 1"
        raise FileFault(
            f"the format number {found}",
            file=name,
            path="format",
            mend="The file is damaged; open a kept copy.",
        )
    if number > FORMAT:
        raise FileFault(
            f"was written by a newer hoopwright (format {number}); this one reads up to {FORMAT}",
            file=name,
            mend="Update the program. The file is left as it is.",
        )
    for step in range(number, FORMAT):
        try:
            raw = {**STEPS[step](raw), "format": step + 1}
        except (LookupError, TypeError, ValueError, AttributeError) as error:
            raise FileFault(
                f"cannot be raised from format {step}: it is damaged ({error})",
                file=name,
                mend="Open a kept copy.",
            ) from error
    return raw
