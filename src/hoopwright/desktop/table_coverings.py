"""Both coverings side by side, figure by figure; the chosen one is marked."""

from collections.abc import Callable, Iterator
from decimal import Decimal
from functools import partial

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication

from hoopwright.checks import Variant
from hoopwright.cost import Cost
from hoopwright.curtain import CurtainWork
from hoopwright.desktop.details_items import explained
from hoopwright.desktop.details_words import choice_words
from hoopwright.desktop.session import Session
from hoopwright.desktop.table_rows import MIXED, Cell, Column, Row
from hoopwright.desktop.table_tab import Tab
from hoopwright.farm.skin import Covering
from hoopwright.quantity.money import format_money
from hoopwright.quantity.units import from_display, unit_label

COVERINGS: tuple[Covering, Covering] = ("one_sheet", "roof_and_sides")
FIGURE_COLUMN = Column(QT_TRANSLATE_NOOP("Tables", "Figure"), 40)
LETTERS = 30

PLAIN: tuple[tuple[str, str, str, object], ...] = (
    ("order", "film_bought_m2", "m2", QT_TRANSLATE_NOOP("Tables", "Film bought")),
    ("order", "film_used_m2", "m2", QT_TRANSLATE_NOOP("Tables", "Film in sheets")),
    ("order", "waste_share", "share", QT_TRANSLATE_NOOP("Tables", "Waste of film")),
    ("inflation", "seal_m", "m", QT_TRANSLATE_NOOP("Tables", "Seals on the bench")),
    ("inflation", "bench_min", "min", QT_TRANSLATE_NOOP("Tables", "Bench time")),
)
MONEY: tuple[tuple[str, object], ...] = (
    ("goods", QT_TRANSLATE_NOOP("Tables", "Goods")),
    ("film_waste", QT_TRANSLATE_NOOP("Tables", "Price of the film wasted")),
    ("to_pay", QT_TRANSLATE_NOOP("Tables", "To pay, without freight")),
    ("saved", QT_TRANSLATE_NOOP("Tables", "What stays, if it were new")),
)


def hardest_crank(variant: Variant) -> CurtainWork | None:
    """Return the curtain that is hardest to crank, or None where nothing is cranked."""
    return max(variant.curtains, key=lambda work: work.hardest_n, default=None)


def per_floor_words(cost: Cost, session: Session) -> str:
    """Return what is to pay for one unit of floor, in the farm's units."""
    units = session.units
    one_m2 = Decimal(str(from_display(1.0, "m2", units)))
    amount = format_money(cost.per_floor_m2 * one_m2, session.farm.money.currency)
    words = QCoreApplication.translate("Tables", "{amount} per {unit}")
    return words.format(amount=amount, unit=unit_label("m2", units))


def both_ways(session: Session) -> tuple[Variant, Variant]:
    """Return the tunnel in one sheet, and with roof and sides apart."""
    shown = session.tunnel_plan
    if session.tunnel.skin.covering == "one_sheet":
        return shown.chosen, shown.other
    return shown.other, shown.chosen


def covering_columns(session: Session) -> tuple[Column, ...]:
    """Return the headings: the chosen covering says so."""
    chosen = QCoreApplication.translate("Tables", "{covering} (chosen)")
    heads = []
    for covering in COVERINGS:
        words = choice_words(covering)
        is_chosen = covering == session.tunnel.skin.covering
        title = chosen.format(covering=words) if is_chosen else words
        heads.append(Column(title, LETTERS, MIXED, strong=is_chosen))
    return (FIGURE_COLUMN, *heads)


def covering_rows(session: Session) -> tuple[Row, ...]:
    """Return the figures of both coverings."""
    return tuple(_rows(session))


def _rows(session: Session) -> Iterator[Row]:
    ways = both_ways(session)
    sheet = QCoreApplication.translate("Tables", "Width of the roof sheet")
    yield _row(sheet, ways, partial(_plain, "cover", "sheet_width_m", "m"))
    for n, side in enumerate(session.tunnel.sides):
        height = QCoreApplication.translate("Tables", "Height of the side film, {side}")
        yield _row(height.format(side=side.name), ways, partial(_side_film, n))
    for stage, name, unit, words in PLAIN:
        label = QCoreApplication.translate("Tables", str(words))
        yield _row(label, ways, partial(_plain, stage, name, unit))
    jumpers = QCoreApplication.translate("Tables", "Jumpers")
    yield _row(jumpers, ways, lambda v: Cell(len(v.inflation.jumpers), "count"))
    crank = QCoreApplication.translate("Tables", "Hardest crank")
    yield _row(crank, ways, _crank)
    for name, words in MONEY:
        label = QCoreApplication.translate("Tables", str(words))
        yield _row(label, ways, partial(_money, name, session))
    floor = QCoreApplication.translate("Tables", "To pay for the floor")
    yield _row(
        floor,
        ways,
        lambda v: Cell(per_floor_words(v.cost, session), "text", explained(v.cost, "per_floor_m2")),
    )


def _row(label: str, ways: tuple[Variant, Variant], cell: Callable[[Variant], Cell]) -> Row:
    return Row(key=("figure", label), cells=(Cell(label), cell(ways[0]), cell(ways[1])))


def _side_film(side: int, variant: Variant) -> Cell:
    height_m, how = variant.cover.side_height_m[side], explained(variant.cover, "side_height_m")
    if variant.cover.covering == "one_sheet":
        return Cell(QCoreApplication.translate("Tables", "in the sheet"), tip=how)
    return Cell(height_m, "m", how)


def _plain(stage: str, name: str, unit: str, variant: Variant) -> Cell:
    thing = getattr(variant, stage)
    return Cell(getattr(thing, name), unit, explained(thing, name))


def _money(name: str, session: Session, variant: Variant) -> Cell:
    amount = format_money(getattr(variant.cost, name), session.farm.money.currency)
    return Cell(amount, tip=explained(variant.cost, name))


def _crank(variant: Variant) -> Cell:
    work = hardest_crank(variant)
    return Cell(None) if work is None else Cell(work.hardest_n, "N", explained(work, "hardest_n"))


class CoveringsTab(Tab):
    """Both coverings, and the button that takes the other one."""

    def __init__(self, session: Session, title: str) -> None:
        """Make the comparison for the shown tunnel."""
        super().__init__(session, title, covering_columns(session), covering_rows)
        self.use = self.add_act("", self.use_other)

    def refresh(self) -> None:
        """Show both coverings as they are now."""
        self.model.set_columns(covering_columns(self.session))
        super().refresh()
        self.use.setText(self._use_words())

    def use_other(self) -> None:
        """Cover the tunnel the other way, as one undo step."""
        session = self.session
        skin = session.tunnel.skin.but(covering=self._other())
        session.apply_tunnel(session.tunnel.but(skin=skin), self._use_words())

    def _other(self) -> Covering:
        one, apart = COVERINGS
        return apart if self.session.tunnel.skin.covering == one else one

    def _use_words(self) -> str:
        words = QCoreApplication.translate("Tables", "Use this covering: {covering}")
        return words.format(covering=choice_words(self._other()))
