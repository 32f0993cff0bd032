"""Terms that several workings of a curtain share."""

from hoopwright.curtain.bar import bar_mass
from hoopwright.curtain.curtain import Three
from hoopwright.curtain.hung import HungCurtain
from hoopwright.curtain.moved import Moved
from hoopwright.quantity.working import ENTERED, Term, Working


def places(name: str, values: Three, unit: str) -> tuple[Term, ...]:
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
        length_term(hung),
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


def lift_terms(moved: Moved) -> tuple[tuple[Term, ...], tuple[Term, ...]]:
    """Return weight and torque at the three places of a curtain as terms."""
    shut, half, high = moved.places
    return (
        places("weight", (shut.weight_n, half.weight_n, high.weight_n), "N"),
        places("torque", (shut.torque_nm, half.torque_nm, high.torque_nm), "N m"),
    )


def length_term(hung: HungCurtain) -> Term:
    """Return the length of the bar as a term."""
    return Term("length of the bar", hung.span.length_m, "m")
