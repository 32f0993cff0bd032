"""The strip of the few numbers that decide, always seen and always fresh."""

from collections.abc import Iterator

from msgspec import Struct
from PySide6.QtCore import QCoreApplication, QEvent, QPoint, QRect, QSize, Qt, Signal
from PySide6.QtGui import QHelpEvent, QResizeEvent
from PySide6.QtWidgets import (
    QLabel,
    QSizePolicy,
    QToolButton,
    QToolTip,
    QVBoxLayout,
    QWidget,
)

from hoopwright.cover import Cover, SheetWidth
from hoopwright.desktop.air_words import least_pressure
from hoopwright.desktop.details_items import explained
from hoopwright.desktop.palette import is_dark
from hoopwright.desktop.session import Session
from hoopwright.desktop.signs import severity_icon
from hoopwright.desktop.table_air_rows import state_words
from hoopwright.desktop.table_checks import count_severity
from hoopwright.desktop.table_coverings import hardest_crank, per_floor_words
from hoopwright.desktop.table_rows import PENDING
from hoopwright.farm import Farm
from hoopwright.quantity.finding import Severity
from hoopwright.quantity.money import format_money
from hoopwright.quantity.units import Units, format_length, show
from hoopwright.quantity.working import Explained, explain

GAP_PX, LEAST_GAP_PX, EDGE_PX, ROW_GAP_PX = 22, 10, 8, 4
MINUTES_IN_HOUR = 60
SMALL_SHARE = 0.86


Way = tuple[Explained, str]
"""A result and the name of its figure; how it was got is asked when somebody wants to read it."""


class Headfigure(Struct, frozen=True):
    """One number of the strip.

    Attributes:
        caption: What it is.
        text: The number with its unit.
        ways: How it was got.
    """

    caption: str
    text: str
    ways: tuple[Way, ...] = ()


class FigureBox(QWidget):
    """A caption with its number below; hovering tells how it was got."""

    def __init__(self, parent: QWidget | None = None) -> None:
        """Make an empty box."""
        super().__init__(parent)
        self._units: Units = "metric"
        self._ways: tuple[Way, ...] = ()
        self.caption, self.value = QLabel(self), QLabel(self)
        for label in (self.caption, self.value):
            label.setTextFormat(Qt.TextFormat.PlainText)
        small, bold = self.caption.font(), self.value.font()
        small.setPointSizeF(small.pointSizeF() * SMALL_SHARE)
        bold.setBold(True)
        self.caption.setFont(small)
        self.value.setFont(bold)
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(0)
        box.addWidget(self.caption)
        box.addWidget(self.value)

    def show_figure(self, figure: Headfigure, units: Units) -> bool:
        """Show a number; return whether the box needs another width."""
        self._ways, self._units = figure.ways, units
        if (self.caption.text(), self.value.text()) == (figure.caption, figure.text):
            return False
        self.caption.setText(figure.caption)
        self.value.setText(figure.text)
        words = QCoreApplication.translate("Headline", "{caption}: {figure}")
        self.value.setAccessibleName(words.format(caption=figure.caption, figure=figure.text))
        return True

    def tip(self) -> str:
        """Return how the number was got."""
        found = (explained(thing, name) for thing, name in self._ways)
        return "\n\n".join(explain(way, self._units) for way in found if way is not None)

    def event(self, event: QEvent) -> bool:
        """Tell how the number was got when the pointer rests on it."""
        if isinstance(event, QHelpEvent) and event.type() == QEvent.Type.ToolTip:
            QToolTip.showText(event.globalPos(), self.tip(), self)
            return True
        return super().event(event)


class Headline(QWidget):
    """The strip above the drawing; it takes a second row where one is too short.

    Signals:
        checks_wanted(): When the number of open checks was pressed.
    """

    checks_wanted = Signal()

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        """Show the numbers of what a session shows."""
        super().__init__(parent)
        self._session = session
        self.boxes = [FigureBox(self) for _figure in head_figures(session)]
        self.checks = QToolButton(self)
        self._said: tuple[Severity, str, bool] | None = None
        self.checks.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
        self.checks.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.checks.setToolTip(QCoreApplication.translate("Headline", "Show the checks"))
        self.checks.clicked.connect(self.checks_wanted)
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self.setAccessibleName(QCoreApplication.translate("Headline", "Headline"))
        session.farm_changed.connect(self.on_farm_changed)
        session.tunnel_shown.connect(self.on_tunnel_shown)
        self.refresh()

    def on_farm_changed(self, _before: Farm, _after: Farm) -> None:
        """Show the numbers as they are now."""
        self.refresh()

    def on_tunnel_shown(self, _index: int) -> None:
        """Show the numbers of another tunnel."""
        self.refresh()

    def refresh(self) -> None:
        """Show every number as it is now."""
        session = self._session
        wider = False
        for box, figure in zip(self.boxes, head_figures(session), strict=True):
            wider |= box.show_figure(figure, session.units)
        wider |= self._show_checks()
        if wider:
            self._place()

    def _show_checks(self) -> bool:
        counts = {s: count_severity(self._session, s) for s in ("fault", "caution", "note")}
        worst: Severity = "fault" if counts["fault"] else "caution" if counts["caution"] else "note"
        words = QCoreApplication.translate("Headline", "Faults {faults} · cautions {cautions}")
        text = words.format(faults=counts["fault"], cautions=counts["caution"])
        said = (worst, text, is_dark(self.palette()))
        if said == self._said:
            return False
        self._said = said
        self.checks.setIcon(severity_icon(worst, said[2]))
        spoken = QCoreApplication.translate("Headline", "Open checks: {counts}")
        self.checks.setAccessibleName(spoken.format(counts=text))
        changed = self.checks.text() != text
        self.checks.setText(text)
        return changed

    def sizeHint(self) -> QSize:
        """Return the size of one long row."""
        parts = self._parts()
        width = sum(p.sizeHint().width() + GAP_PX for p in parts) + 2 * EDGE_PX - GAP_PX
        return QSize(width, self.heightForWidth(width))

    def minimumSizeHint(self) -> QSize:
        """Return the size of its widest number."""
        width = max(p.sizeHint().width() for p in self._parts()) + 2 * EDGE_PX
        return QSize(width, self.heightForWidth(max(width, self.width())))

    def hasHeightForWidth(self) -> bool:
        """Return that it grows higher when it gets narrower."""
        return True

    def heightForWidth(self, width: int) -> int:
        """Return the height of as many rows as a width needs, px."""
        return _height(self._places(width))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Place the numbers anew."""
        super().resizeEvent(event)
        self._place()

    def changeEvent(self, event: QEvent) -> None:
        """Follow the window's palette and font."""
        super().changeEvent(event)
        if event.type() in (QEvent.Type.PaletteChange, QEvent.Type.FontChange):
            self.refresh()
            self._place()

    def _parts(self) -> list[QWidget]:
        return [*self.boxes, self.checks]

    def _place(self) -> None:
        places = self._places(self.width())
        for part, place in zip(self._parts(), places, strict=True):
            part.setGeometry(place)
        height = _height(places)
        if (self.minimumHeight(), self.maximumHeight()) != (height, height):
            self.setFixedHeight(height)

    def _places(self, width: int) -> list[QRect]:
        """Return where each number stands: closer together first, then in a next row."""
        sizes = [part.sizeHint() for part in self._parts()]
        room = max(1, width - 2 * EDGE_PX)
        spare = (room - sum(size.width() for size in sizes)) // (len(sizes) - 1)
        gap = min(GAP_PX, max(LEAST_GAP_PX, spare))
        places = []
        at, row_px = QPoint(EDGE_PX, ROW_GAP_PX), 0
        for size in sizes:
            if at.x() > EDGE_PX and at.x() + size.width() > width - EDGE_PX:
                at, row_px = QPoint(EDGE_PX, at.y() + row_px + ROW_GAP_PX), 0
            places.append(QRect(at, QSize(min(size.width(), room), size.height())))
            at.setX(at.x() + size.width() + gap)
            row_px = max(row_px, size.height())
        return places


def _height(places: list[QRect]) -> int:
    return max(place.bottom() for place in places) + 1 + ROW_GAP_PX


def head_figures(session: Session) -> Iterator[Headfigure]:
    """Give the numbers of the strip in order."""
    yield from _costs(session)
    yield from _films(session)
    yield from _works(session)


def _costs(session: Session) -> Iterator[Headfigure]:
    cost, whole = session.tunnel_plan.chosen.cost, session.plan.cost
    currency = session.farm.money.currency
    tunnel = QCoreApplication.translate("Headline", "To pay, tunnel")
    yield Headfigure(tunnel, format_money(cost.to_pay, currency), ((cost, "to_pay"),))
    farm = QCoreApplication.translate("Headline", "To pay, farm")
    text = format_money(whole.to_pay, currency) if session.plan.settled else PENDING
    yield Headfigure(farm, text, ((whole, "to_pay"),))
    floor = QCoreApplication.translate("Headline", "For the floor")
    yield Headfigure(floor, per_floor_words(cost, session), ((cost, "per_floor_m2"),))


def _films(session: Session) -> Iterator[Headfigure]:
    order, units = session.tunnel_plan.chosen.order, session.units
    film = QCoreApplication.translate("Headline", "Film bought · waste")
    bought, waste = show(order.film_bought_m2, "m2", units), show(order.waste_share, "share", units)
    how = ((order, "film_bought_m2"), (order, "waste_share"))
    yield Headfigure(film, f"{bought} · {waste}", how)
    width = QCoreApplication.translate("Headline", "Width: one sheet · roof apart")
    plan = session.tunnel_plan
    both: tuple[Cover | SheetWidth, ...] = (plan.chosen.cover, plan.other_sheet)
    sheets = sorted(both, key=lambda sheet: sheet.covering)
    texts = [_width(sheet, session) for sheet in sheets]
    ways = tuple((sheet, "sheet_width_m") for sheet in sheets)
    yield Headfigure(width, " · ".join(texts), ways)


def _width(sheet: Cover | SheetWidth, session: Session) -> str:
    text = format_length(sheet.sheet_width_m, session.units)
    chosen = QCoreApplication.translate("Headline", "✓ {width}")
    is_chosen = sheet is session.tunnel_plan.chosen.cover
    return chosen.format(width=text) if is_chosen else text


def _works(session: Session) -> Iterator[Headfigure]:
    chosen, units = session.tunnel_plan.chosen, session.units
    inflation = chosen.inflation
    work = hardest_crank(chosen)
    crank = QCoreApplication.translate("Headline", "Hardest crank")
    none = QCoreApplication.translate("Headline", "none")
    force = none if work is None else show(work.hardest_n, "N", units)
    yield Headfigure(crank, force, () if work is None else ((work, "hardest_n"),))
    yield _opening(session)
    seals = QCoreApplication.translate("Headline", "Seals · bench")
    length = show(inflation.seal_m, "m", units)
    hours = show(inflation.bench_min / MINUTES_IN_HOUR, "h", units)
    how = ((inflation, "seal_m"), (inflation, "bench_min"))
    yield Headfigure(seals, f"{length} · {hours}", how)
    yield _air(session)


def _opening(session: Session) -> Headfigure:
    """Return what opens, its share of the floor, and that behind insect screens where there are."""
    airing, units = session.tunnel_plan.chosen.airing, session.units
    area, share = show(airing.opening_m2, "m2", units), show(airing.floor_share, "share", units)
    how = tuple((airing, name) for name in ("opening_m2", "floor_share"))
    if airing.free_m2 >= airing.opening_m2:
        caption = QCoreApplication.translate("Headline", "Opening · of the floor")
        return Headfigure(caption, f"{area} · {share}", how)
    caption = QCoreApplication.translate("Headline", "Opening · of the floor · screened")
    free = show(airing.free_share, "share", units)
    ways = (*how, (airing, "free_m2"), (airing, "free_share"))
    return Headfigure(caption, f"{area} · {share} · {free}", ways)


def _air(session: Session) -> Headfigure:
    """Return how many jumpers there are, and the cell with the least pressure."""
    units = session.units
    jumpers = show(len(session.tunnel_plan.chosen.inflation.jumpers), "count", units)
    least = least_pressure(session.tunnel_plan)
    if least is None:
        return Headfigure(QCoreApplication.translate("Headline", "Jumpers"), jumpers)
    caption = QCoreApplication.translate("Headline", "Jumpers · least pressure")
    pressure = show(least.pressure_pa, "Pa", units)
    if least.state != "in range":
        pressure = f"{pressure}, {state_words(least.state)}"
    how = (least, "pressure_pa")
    return Headfigure(caption, f"{jumpers} · {pressure}", (how,))
