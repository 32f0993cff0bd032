"""How each figure of an aired tunnel was got, and what published figures stand beside it."""

from dataclasses import replace

from hoopwright.airing.airing import Airing
from hoopwright.airing.draught import (
    TOGETHER_SOURCE,
    WARMTH_SOURCE,
    WIND_SHARE,
    WIND_SOURCE,
    discharge_share,
)
from hoopwright.farm import Side, Weather
from hoopwright.quantity.factors import CFM_M3_S, SQUARE_FOOT_M2
from hoopwright.quantity.working import (
    DERIVED,
    ENTERED,
    LaterWorkings,
    Phrase,
    Term,
    Working,
    phrase,
)
from hoopwright.survey.survey import Survey

SUMMER_M3_S_M2 = 8 * CFM_M3_S / SQUARE_FOOT_M2
SUMMER_SOURCE = "New England Vegetable Management Guide, ventilation of high tunnels"
VENT_SHARES = (0.15, 0.20)
VENT_SOURCE = (
    "Bartok, Natural ventilation guidelines, Greenhouse Management, August 2015, citing the "
    "agricultural engineers' standard"
)


def told_share(airing: Airing) -> Phrase:
    """Return how much of the floor opens, beside the published figure and what that is for."""
    screened = airing.free_m2 < airing.opening_m2
    behind = " Behind insect screens it is worth {free} of the floor." if screened else ""
    return phrase(
        "Open, the sides are {share} of the floor: {first} and {second}." + behind + " The "
        "published {least} to {most} is for roof vents and for side vents each; no figure was "
        "found for a tunnel with open sides alone.",
        share=(airing.floor_share, "share"),
        first=(airing.side_shares[0], "share"),
        second=(airing.side_shares[1], "share"),
        free=(airing.free_share, "share"),
        least=(VENT_SHARES[0], "share"),
        most=(VENT_SHARES[1], "share"),
    )


def told_flow(airing: Airing) -> Phrase:
    """Return the flow for each area of floor beside the published one of fans."""
    return phrase(
        "On the day entered {flow} passes, {changes}; fans of a tunnel are sized for {fans} in "
        "summer.",
        flow=(airing.per_floor_m3_s_m2, "m3/s/m2"),
        changes=(airing.changes_per_h, "1/h"),
        fans=(SUMMER_M3_S_M2, "m3/s/m2"),
    )


def explain_airing(
    airing: Airing, survey: Survey, sides: tuple[Side, Side], weather: Weather
) -> Airing:
    """Return the airing with a working for each of its figures."""
    openings = tuple(
        Term(f"opening of {side.name}", opening_m2, "m2")
        for side, opening_m2 in zip(sides, airing.openings_m2, strict=True)
    )
    screens = tuple(
        Term(f"air through the screen of {side.name}", side.screen_flow_share, "share")
        for side in sides
        if side.screen is not None
    )
    return replace(
        airing,
        workings=LaterWorkings(
            lambda: (
                *_openings(airing, survey, openings),
                *_behind_screens(airing, survey, openings, screens),
                *_flows(airing, survey, weather, (*openings, *screens)),
            )
        ),
    )


def _openings(airing: Airing, survey: Survey, openings: tuple[Term, ...]) -> tuple[Working, ...]:
    floor = Term("floor", survey.floor_area_m2, "m2")
    total = Term("opening of both sides", airing.opening_m2, "m2")
    return (
        Working("openings_m2", "Clear openings of the curtains of each side together.", openings),
        Working("opening_m2", "Both sides together.", openings),
        Working(
            "floor_share",
            "Opening over floor. The published 15 to 20 % is for roof vents and for side vents "
            "each and is no measure of a tunnel with open sides alone.",
            (total, floor),
            f"{DERIVED}; published share: {VENT_SOURCE}",
        ),
        Working("side_shares", "Opening of each side over floor.", (*openings, floor)),
    )


def _behind_screens(
    airing: Airing, survey: Survey, openings: tuple[Term, ...], screens: tuple[Term, ...]
) -> tuple[Working, ...]:
    if screens:
        rule = (
            "Clear opening of each side times what its insect screen lets through of the air, a "
            "figure of each screen. Published guidelines advise against screens with natural "
            "ventilation."
        )
        source = f"{ENTERED}; advice: {VENT_SOURCE}"
    else:
        rule, source = "No side has an insect screen: the clear opening itself.", DERIVED
    free = Term("opening for the air", airing.free_m2, "m2")
    return (
        Working("free_m2", rule, (*openings, *screens), source),
        Working(
            "free_share",
            "Opening for the air over floor.",
            (free, Term("floor", survey.floor_area_m2, "m2")),
        ),
    )


def _flows(
    airing: Airing, survey: Survey, weather: Weather, openings: tuple[Term, ...]
) -> tuple[Working, ...]:
    wind = Term("air by wind", airing.wind_m3_s, "m3/s")
    warmth = Term("air by warmth", airing.warmth_m3_s, "m3/s")
    flow = Term("air by both", airing.flow_m3_s, "m3/s")
    drop_k = weather.inside_k - weather.outside_k
    return (
        Working(
            "wind_m3_s",
            "Wind times the lesser opening, each less what its screen holds back, times what the "
            "edges and the slant to the wind leave of it. With one side shut nothing blows "
            "through.",
            (
                *openings,
                Term("wind", weather.wind_m_s, "m/s"),
                Term("left of it", WIND_SHARE[weather.wind_from], "share"),
            ),
            WIND_SOURCE,
        ),
        Working(
            "warmth_m3_s",
            "Each side is one tall opening: fresh air comes in below, warm air leaves above; both "
            "sides share one neutral level. None when it is no warmer inside.",
            (
                *openings,
                Term("air inside", weather.inside_k, "K"),
                Term("air outside", weather.outside_k, "K"),
                Term("left by the edges", discharge_share(max(drop_k, 0.0), 0.0), "share"),
            ),
            WARMTH_SOURCE,
        ),
        Working("flow_m3_s", "Root of the sum of squares.", (wind, warmth), TOGETHER_SOURCE),
        Working(
            "changes_per_h",
            "Air that passes in an hour over the air inside.",
            (flow, Term("air inside the tunnel", survey.volume_m3, "m3")),
        ),
        Working(
            "per_floor_m3_s_m2",
            "Air that passes over floor. Fans of a tunnel are sized for 8 cfm on each square foot "
            "in summer.",
            (flow, Term("floor", survey.floor_area_m2, "m2")),
            f"{DERIVED}; fans: {SUMMER_SOURCE}",
        ),
        Working(
            "course",
            "The same at each quarter of the travel, all curtains moving at once.",
            openings,
        ),
    )
