"""The lines of what stays of the old skin: keep, repair or replace, by parts and by place."""

from collections.abc import Iterator

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication

from hoopwright.desktop.details_items import (
    Act,
    Entry,
    Figure,
    Heading,
    Hint,
    Item,
    entries,
    explained,
)
from hoopwright.desktop.session import Session
from hoopwright.quantity.money import format_money
from hoopwright.quantity.units import show
from hoopwright.quantity.working import words as in_words

FILM_KEY = "film/"
LABELS: dict[str, object] = {
    "family": QT_TRANSLATE_NOOP("Details", "line {number}, parts"),
    "where": QT_TRANSLATE_NOOP("Details", "line {number}, where"),
    "from_bow": QT_TRANSLATE_NOOP("Details", "line {number}, from bow"),
    "to_bow": QT_TRANSLATE_NOOP("Details", "line {number}, to bow"),
    "state": QT_TRANSLATE_NOOP("Details", "line {number}, what is done"),
    "replace_share": QT_TRANSLATE_NOOP("Details", "line {number}, share to replace"),
}
MEANT = QT_TRANSLATE_NOOP(
    "Details",
    "What no line speaks of is bought new. Where two lines speak of the same parts, the later "
    "one holds.",
)


def condition_items(session: Session) -> Iterator[Item]:
    """Give the lines of condition, and the act that adds one."""
    yield Hint(QCoreApplication.translate("Details", str(MEANT)))
    for index in range(len(session.tunnel.condition)):
        yield from state_items(session, index)
    yield Act("add state", (), QCoreApplication.translate("Details", "Add a line"))
    yield from _kept(session)


def state_items(session: Session, index: int) -> Iterator[Item]:
    """Give one line of condition; a share belongs to a repair alone."""
    state = session.tunnel.condition[index]
    for entry in entries("tunnel", ("condition", index), state):
        if entry.name == "replace_share" and state.state != "repair":
            continue
        words = QCoreApplication.translate("Details", str(LABELS[entry.name]))
        label = words.format(number=index + 1)
        yield Entry("tunnel", entry.path, entry.owner, entry.name, label)
    words = QCoreApplication.translate("Details", "Remove line {number}")
    yield Act("remove state", (index,), words.format(number=index + 1))


def _kept(session: Session) -> Iterator[Item]:
    """Give what stays of each part and each sheet, and what that saves; nothing when all is new."""
    order = session.tunnel_plan.chosen.order
    if not order.reused:
        return
    yield Heading(QCoreApplication.translate("Details", "What stays"))
    words = QCoreApplication.translate("Details", "{kept} of {needed}")
    for line in order.reused:
        kept, needed = (
            show(amount, line.counted_in, session.units) for amount in (line.kept, line.needed)
        )
        # One film has many sheets: each is called by its place.
        sheet = line.key.startswith(FILM_KEY)
        name = in_words(line.where[0], session.units) if sheet else line.name
        yield Figure(name, words.format(kept=kept, needed=needed), explained(line, "kept"))
    saved = format_money(order.saved, session.farm.money.currency)
    label = QCoreApplication.translate("Details", "not bought")
    yield Figure(label, saved, explained(order, "saved"))
