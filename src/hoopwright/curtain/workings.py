"""How those figures of a curtain were got that every kind of curtain has."""

from hoopwright.curtain.bar import bar_mass
from hoopwright.curtain.curtain import CurtainWork
from hoopwright.curtain.hung import HungCurtain
from hoopwright.curtain.rope import ROPE_END_M, STRAP_END_M
from hoopwright.curtain.roped import Roped
from hoopwright.quantity.working import DERIVED, ENTERED, PRACTICE, Term, Working

LEVER = "derived here; rubbing: the user's entry"
NO_ROPE = "Nothing is chosen against the wind."
ROPE_FIGURES = ("rope_m", "rope_legs", "eyes", "rope_tension_n", "eye_load_n")


def places(name: str, values: tuple[float, float, float], unit: str) -> tuple[Term, ...]:
    """Return one value at the three places of a curtain as terms."""
    shut, half_way, high = values
    return (
        Term(f"{name} shut", shut, unit),
        Term(f"{name} half way", half_way, unit),
        Term(f"{name} open", high, unit),
    )


def not_here(figures: tuple[str, ...], rule: str) -> tuple[Working, ...]:
    """Return a working for figures that a curtain of this kind does not have."""
    return tuple(Working(figure, rule, (), ENTERED) for figure in figures)


def mass_terms(hung: HungCurtain) -> tuple[Term, ...]:
    """Return what weighs: bar and film, and the drive where the bar carries it."""
    terms = (
        Term("bar with what grips the film", bar_mass(hung.bar), "kg/m"),
        Term("film, all layers", hung.span.film_mass_kg_m2, "kg/m2"),
        Term("length of the bar", hung.span.length_m, "m"),
    )
    if hung.drops:
        return terms
    return (*terms, Term("crank and joint on the bar", hung.carried_kg, "kg"))


def handle_terms(hung: HungCurtain) -> tuple[Term, ...]:
    """Return what stands between torque and hand."""
    drive = hung.drive
    return (
        Term("crank arm", drive.arm_m, "m_thin"),
        Term("ratio", drive.ratio, "ratio"),
        Term("efficiency", drive.efficiency, "share"),
    )


def explain_common(hung: HungCurtain, work: CurtainWork, roped: Roped) -> tuple[Working, ...]:
    """Return a working for each figure that every kind of curtain has in common."""
    return (*_handle(hung, work), *_longest(hung, work), *_bars(hung, work), *_ropes(hung, roped))


def _handle(hung: HungCurtain, work: CurtainWork) -> tuple[Working, ...]:
    torques = places("torque", work.torques_nm, "N m")
    handle = handle_terms(hung)
    ratio = handle[1]
    return (
        Working("length_m", "The bar is as long as its curtain.", (_length(work),)),
        Working(
            "hand_forces_n",
            "Torque over arm, ratio and efficiency. Shut, half way, open. A bent joint lets it "
            "swing about that.",
            (*torques, *handle),
        ),
        Working(
            "handle_turns",
            "Turns of the bar or drum times the ratio.",
            (Term("turns", work.turns, "turns"), ratio),
        ),
        Working(
            "minutes",
            "Turns of the handle over the turns made in a minute, without a rest.",
            (
                Term("handle turns", work.handle_turns, "turns"),
                Term("in a minute", hung.limits.handle_rate_per_min, "1/min"),
            ),
            "derived here; rate at the handle: the user's entry",
        ),
    )


def _longest(hung: HungCurtain, work: CurtainWork) -> tuple[Working, ...]:
    terms = [
        Term("by the hand force limit", work.hand_length_m, "m"),
        Term("by the trailing limit", work.trailing_length_m, "m"),
    ]
    for name, most_m in (
        ("maker of the bar", hung.bar.max_length_m),
        ("maker of the drive", hung.drive.max_length_m),
    ):
        if most_m is not None:
            terms.append(Term(name, most_m, "m"))
    return (
        Working(
            "longest_m",
            "The least of what hand, trailing and the makers of bar and drive allow.",
            tuple(terms),
            "derived here; limits: the user's entry",
        ),
    )


def _bars(hung: HungCurtain, work: CurtainWork) -> tuple[Working, ...]:
    stick = Term("stick", hung.stick_m, "m")
    overlap = Term("overlap at a joint", hung.bar.overlap_m, "m_thin")
    return (
        Working(
            "bar_sticks",
            "The first stick gives its whole length, each further one its length less the overlap; "
            "rounded up.",
            (_length(work), stick, overlap),
        ),
        Working("bar_joints", "One less than sticks.", (Term("sticks", work.bar_sticks, "count"),)),
    )


def _ropes(hung: HungCurtain, roped: Roped) -> tuple[Working, ...]:
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


def _length(work: CurtainWork) -> Term:
    return Term("length of the bar", work.length_m, "m")
