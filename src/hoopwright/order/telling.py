"""What stays of the old skin, in sentences."""

from hoopwright.order.order import Order, ReuseLine
from hoopwright.quantity.money import format_money
from hoopwright.quantity.working import Phrase, phrase


def tell_reuse(order: Order, currency: str) -> tuple[Phrase, ...]:
    """Return one sentence for each line that stays and one for all; none where all is new.

    Args:
        order: The order.
        currency: Code of the farm's currency.
    """
    if not order.reused:
        return ()
    return (
        *(_line(line, currency) for line in order.reused),
        phrase(
            "All that stays would cost {saved} new, before tax.",
            saved=format_money(order.saved, currency),
        ),
    )


def _line(line: ReuseLine, currency: str) -> Phrase:
    """Return what stays of a part, or which sheet stays."""
    said = "stays, repaired" if line.state == "repair" else "stays as it is"
    new = format_money(line.saved, currency)
    if line.key.startswith("film/"):
        (place,) = line.where
        named = phrase("{film} {said}; {new} new.", film=line.name, said=said, new=new)
        return Phrase(f"{place.template}: {named.template}", (*place.terms, *named.terms))
    return phrase(
        "{part}: {kept} of {needed} {said}; {new} new.",
        part=line.name,
        kept=(line.kept, line.counted_in),
        needed=(line.needed, line.counted_in),
        said=said,
        new=new,
    )
