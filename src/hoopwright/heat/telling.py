"""What is said of the second layer and its heat, in whole sentences."""

from collections.abc import Iterator, Sequence
from decimal import Decimal

from hoopwright.farm import Climate, End, Film, Heating
from hoopwright.farm.change_ends import cover_of
from hoopwright.heat.second_layer import SecondLayer
from hoopwright.heat.surfaces import NAMES, CoverPart
from hoopwright.heat.warmth import Warmth
from hoopwright.heat.winter import told_base
from hoopwright.quantity.money import format_money
from hoopwright.quantity.working import Phrase, phrase

END_NAMES = (NAMES["end0"], NAMES["end1"])
DOES = "drips less, flutters less, so that its film lasts longer, and passes less light"
WOULD = "drip less, flutter less, so that its film would last longer, and pass less light"


def pay_back_words(warmth: Warmth) -> Phrase:
    """Return after how many years the second layer is paid, or that it never is."""
    if warmth.payback_years is None:
        return phrase("never")
    return phrase("{years}", years=(round(warmth.payback_years, 1), "year"))


def tell_second_layer(
    warmth: Warmth, blown: bool, heated: bool, blower_cost_year: Decimal, currency: str
) -> Phrase:
    """Return what the second layer does for this tunnel.

    Args:
        warmth: The figures.
        blown: Whether air is blown between two layers anywhere on it.
        heated: Whether the tunnel is heated.
        blower_cost_year: Power of the blower for a year.
        currency: Three-letter code of the farm's money.
    """
    could = round(1 - warmth.loss_two_w_k / warmth.loss_one_w_k, 2)
    power = format_money(blower_cost_year, currency)
    if not blown and heated:
        return phrase(
            "Nowhere are two layers blown apart, so no heat is saved; two layers all over would "
            "lose {could} less.",
            could=(could, "share"),
        )
    if not blown:
        return phrase(
            "The tunnel is not heated, so a second layer would save no fuel: with air between, it "
            f"would lose {{could}} less of its warmth at night, {WOULD}.",
            could=(could, "share"),
        )
    share = (round(warmth.saved_share, 2), "share")
    if not heated:
        return phrase(
            "The tunnel is not heated, so the second layer saves no fuel: it loses {share} less of "
            f"its warmth at night, {DOES}. Its blower takes {{power}} a year.",
            share=share,
            power=power,
        )
    if warmth.payback_years is None:
        return phrase(
            "The second layer saves {share} of the heat, but that fuel is worth no more than the "
            "{power} that its blower takes a year: by fuel alone it never pays.",
            share=share,
            power=power,
        )
    return phrase(
        "The second layer saves {share} of the heat and {saved} a year, its blower's {power} taken "
        "off. It costs {cost} and is paid back in {years}.",
        share=share,
        saved=format_money(warmth.saved_cost, currency),
        power=power,
        cost=format_money(warmth.second_layer_cost, currency),
        years=(round(warmth.payback_years, 1), "year"),
    )


def tell_assumed(
    parts: Sequence[CoverPart],
    ends: tuple[End, End],
    films: Sequence[Film],
    second: SecondLayer,
    payback_years: float | None,
) -> Iterator[Phrase]:
    """Yield what was assumed about the skin and its price.

    Args:
        parts: The parts of the cover.
        ends: Front and back end wall.
        films: Films that the inner layer is made of.
        second: What the second layer costs.
        payback_years: Years until it is paid, or None.
    """
    flat = [part.name for part in parts if part.doubled and not part.two_m2]
    if flat:
        yield phrase(
            "Two layers that no air is blown between count as one: {places}.",
            places=", ".join(flat),
        )
    bare = [name for name, end in zip(END_NAMES, ends, strict=True) if cover_of(end) == "open"]
    if bare:
        yield phrase(
            "What is not covered with film counts as one layer of it: {places}.",
            places=", ".join(bare),
        )
    rigid = [name for name, end in zip(END_NAMES, ends, strict=True) if end.rigid is not None]
    if rigid:
        yield phrase(
            "Rigid sheets let through what is entered for them, whichever way the film is laid: "
            "{places}. The value that stands there at first is from memory; take the seller's.",
            places=", ".join(rigid),
        )
    if second.unpriced:
        yield phrase(
            "No stock roll yields these sheets, so the second layer costs more than is said: "
            "{sheets}.",
            sheets=", ".join(second.unpriced),
        )
    life = min((film.life_years for film in films), default=None)
    if life is not None and payback_years is not None and payback_years > life:
        yield phrase(
            "The inner film is stated to last {life}, so it is worn out before it is paid back.",
            life=(life, "year"),
        )


def tell_winter(climate: Climate, heating: Heating) -> Iterator[Phrase]:
    """Yield what was done with degree-days of another base."""
    told = told_base(climate, heating.inside_k - heating.gain_k)
    if told is not None:
        yield told
