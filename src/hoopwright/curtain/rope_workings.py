"""How the wind rope or the straps of a curtain were got."""

from hoopwright.curtain.hung import HungCurtain
from hoopwright.curtain.rope import ROPE_END_M, STRAP_END_M
from hoopwright.curtain.roped import Roped
from hoopwright.curtain.terms import not_here
from hoopwright.quantity.working import DERIVED, PRACTICE, Term, Working

NO_ROPE = "Nothing is chosen against the wind."
ROPE_FIGURES = ("rope_m", "rope_legs", "eyes", "rope_tension_n", "eye_load_n")


def explain_rope(hung: HungCurtain, roped: Roped) -> tuple[Working, ...]:
    """Return a working for each figure of a curtain's wind rope.

    Args:
        hung: The curtain.
        roped: Its wind rope.
    """
    if not roped.legs:
        return not_here(ROPE_FIGURES, NO_ROPE)
    straps = hung.panel.rope == "straps"
    length = Term("length of the curtain", hung.span.length_m, "m")
    legs = Term("straps" if straps else "legs", roped.legs, "count")
    height = Term("between the rows of eyes", roped.height_m, "m")
    return (
        _rope(straps, legs, length, height),
        _legs(hung, straps, length),
        Working("eyes", "Two for each strap." if straps else "One more than legs.", (legs,)),
        *_storm(hung, roped, height),
    )


def _rope(straps: bool, legs: Term, length: Term, height: Term) -> Working:
    if straps:
        return Working(
            "rope_m",
            "Each strap runs straight down from an eye in the hip board to one at the lower edge "
            "of the shut curtain; an end to tie at both.",
            (legs, height, Term("end of a strap", STRAP_END_M, "m")),
            f"{DERIVED}; ends: {PRACTICE}",
        )
    return Working(
        "rope_m",
        "Each leg runs slantwise from an eye in the hip board to one at the lower edge of the shut "
        "curtain; tail and knot at both ends.",
        (legs, length, height, Term("tail and knot at each end", ROPE_END_M, "m")),
        f"{DERIVED}; tail and knot: {PRACTICE}",
    )


def _legs(hung: HungCurtain, straps: bool, length: Term) -> Working:
    step_m = hung.side.rope_step_m
    if step_m is None:
        return Working(
            "rope_legs",
            "One at each bow and at both ends." if straps else "One in each bay of the curtain.",
            (Term("bows between the ends", hung.inner_bows(), "count"),),
        )
    return Working(
        "rope_legs",
        "Length over the step, rounded up" + (", and one more." if straps else "."),
        (length, Term("step", step_m, "m")),
    )


def _storm(hung: HungCurtain, roped: Roped, height: Term) -> tuple[Working, ...]:
    weather = hung.weather
    source = (
        "derived here: a line that bows in a parabola; pressure after ASCE 7-05 to 7-16; share and "
        "bow: the user's entry; for reference only, no design of eyes or frame"
    )
    load = (
        Term("pressure of the storm", roped.pressure_pa, "Pa"),
        Term("share taken", weather.rope_share, "share"),
        Term("step", roped.step_m, "m"),
        height,
    )
    return (
        Working(
            "rope_tension_n",
            "A leg takes the pull on one step of the curtain, evenly along it, and bows out.",
            (*load, Term("leg", roped.leg_m, "m"), Term("bow", weather.rope_bow_m, "m_thin")),
            source,
        ),
        Working(
            "eye_load_n",
            "Half of what each leg takes goes to the eye at its end, straight out.",
            load,
            source,
        ),
    )
