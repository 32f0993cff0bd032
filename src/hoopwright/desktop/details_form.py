"""A form: the lines of a part of the farm as labels, fields, buttons and figures."""

from PySide6.QtCore import QCoreApplication, QEvent, Qt, Signal
from PySide6.QtWidgets import (
    QAbstractButton,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QSizePolicy,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from hoopwright.desktop.details_edits import (
    JUMPER_ACTS,
    limits_of,
    value_of,
    with_act,
    with_entered,
)
from hoopwright.desktop.details_items import Act, Entry, Figure, Heading, Hint, Item, Special
from hoopwright.desktop.details_made import choices_for, label_of, make_field
from hoopwright.desktop.field import Field, refusal_words
from hoopwright.desktop.fields import LengthField, NumberField
from hoopwright.desktop.jumpers import with_placed
from hoopwright.desktop.palette import is_dark
from hoopwright.desktop.proposing import PROPOSALS, propose_on
from hoopwright.desktop.session import Session
from hoopwright.desktop.signs import severity_icon
from hoopwright.farm import Farm
from hoopwright.farm.change import with_tunnel
from hoopwright.papers.cautions import Caution
from hoopwright.quantity.units import Units
from hoopwright.quantity.working import Working, explain

LABEL_SHARE, FIELD_SHARE = 2, 3
LABEL_LETTERS = 16
SIGN_PX = 16
SHORT_SENTENCES = 2


class FigureLine(QWidget):
    """A figure; pressing it shows below how it was got."""

    def __init__(self, label: str, parent: QWidget | None = None) -> None:
        """Make an empty line; the label is what readers call it."""
        super().__init__(parent)
        self._label = label
        self._working: Working | None = None
        self._units: Units = "metric"
        self.button = QToolButton(self)
        self.button.setAutoRaise(True)
        self.button.setCheckable(True)
        self.button.setArrowType(Qt.ArrowType.RightArrow)
        self.button.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
        self.button.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.button.toggled.connect(self.on_toggled)
        self.plain = QLabel(self)
        self.plain.setWordWrap(True)
        self.told = QLabel(self)
        self.told.setWordWrap(True)
        self.told.setTextFormat(Qt.TextFormat.PlainText)
        self.told.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.told.hide()
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(0)
        box.addWidget(self.button)
        box.addWidget(self.plain)

    def show_figure(self, figure: Figure, units: Units) -> None:
        """Show the figure as it is now."""
        self._working = figure.working
        self._units = units
        self.button.setVisible(figure.working is not None)
        self.plain.setVisible(figure.working is None)
        shown = self.button if figure.working is not None else self.plain
        if shown.text() != figure.text:
            shown.setText(figure.text)
            how = QCoreApplication.translate("Details", "{label}: {figure}")
            shown.setAccessibleName(how.format(label=self._label, figure=figure.text))
        if self.told.isVisible():
            self._tell()

    def on_toggled(self, open_now: bool) -> None:
        """Show or hide how the figure was got."""
        self.button.setArrowType(Qt.ArrowType.DownArrow if open_now else Qt.ArrowType.RightArrow)
        self._tell()
        self.told.setVisible(open_now)

    def _tell(self) -> None:
        if self._working is not None:
            self.told.setText(explain(self._working, self._units))
            self.button.setAccessibleDescription(self.told.text())


class CautionLine(QWidget):
    """A caution with its sign; all of it is told when the pointer rests on it."""

    def __init__(self, caution: Caution, parent: QWidget | None = None) -> None:
        """Show a caution."""
        super().__init__(parent)
        self.sign = QLabel(self)
        words = QCoreApplication.translate("Details", "{title}: {text}")
        self.words = _label(words.format(title=caution.title, text=in_short(caution)))
        self.words.setAccessibleDescription(caution.text)
        self.setToolTip(caution.text)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 2, 0, 2)
        row.addWidget(self.sign, 0, Qt.AlignmentFlag.AlignTop)
        row.addWidget(self.words, 1)
        self._show_sign()

    def changeEvent(self, event: QEvent) -> None:
        """Follow the window's palette."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange:
            self._show_sign()

    def _show_sign(self) -> None:
        icon = severity_icon("caution", is_dark(self.palette()))
        self.sign.setPixmap(icon.pixmap(SIGN_PX, SIGN_PX))


class Form(QWidget):
    """The lines of one part, filled from the session and writing back to it.

    Signals:
        rebuilt(): When lines were added or taken away, so that the order of Tab is new.
    """

    rebuilt = Signal()

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        """Make a form without lines."""
        super().__init__(parent)
        self._session = session
        self._context = ""
        self._built: tuple[object, ...] = ()
        self._holder: QWidget | None = None
        self._fields: list[tuple[Entry | Special, Field]] = []
        self._figures: list[FigureLine] = []
        self._stops: list[tuple[Item, QWidget]] = []
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)

    @property
    def stops(self) -> list[QWidget]:
        """Where Tab stops, in reading order."""
        return [widget for _item, widget in self._stops]

    def show_items(self, items: tuple[Item, ...], context: str) -> None:
        """Show lines; the context is said before their names when they are read aloud."""
        farm, tunnel = self._session.farm, self._session.tunnel
        choices = tuple(
            choices_for(i, farm, tunnel) for i in items if isinstance(i, Entry | Special)
        )
        built = (items, context, farm.units, farm.money.currency, choices)
        if built != self._built:
            self._context, self._built = context, built
            self._rebuild(items)
        self._fill(items)

    def _rebuild(self, items: tuple[Item, ...]) -> None:
        held = next((i for i, w in self._stops if w.hasFocus()), None)
        if self._holder is not None:
            self._holder.hide()
            self._holder.deleteLater()
        self._fields, self._figures, self._stops = [], [], []
        self._holder = QWidget(self)
        grid = QGridLayout(self._holder)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setColumnStretch(0, LABEL_SHARE)
        grid.setColumnStretch(1, FIELD_SHARE)
        grid.setColumnMinimumWidth(0, LABEL_LETTERS * self.fontMetrics().averageCharWidth())
        for row, item in enumerate(items):
            self._add(grid, 2 * row, item)
        box = self.layout()
        assert box is not None
        box.addWidget(self._holder)
        # At once and not with the next turn of the event loop: what is hidden takes no focus.
        self._holder.show()
        self.rebuilt.emit()
        for item, widget in self._stops:
            if held is not None and item == held:
                widget.setFocus()

    def _add(self, grid: QGridLayout, row: int, item: Item) -> None:
        if isinstance(item, Heading):
            words = _label(item.text)
            font = words.font()
            font.setBold(True)
            words.setFont(font)
            grid.addWidget(words, row, 0, 1, 2)
        elif isinstance(item, Hint):
            grid.addWidget(_label(item.text), row, 0, 1, 2)
        elif isinstance(item, Caution):
            grid.addWidget(CautionLine(item), row, 0, 1, 2)
        elif isinstance(item, Act):
            wide = item.kind in (*PROPOSALS, *JUMPER_ACTS)
            grid.addWidget(self._act_button(item), row, 0 if wide else 1, 1, 2 if wide else 1)
        elif isinstance(item, Figure):
            self._add_figure(grid, row, item)
        else:
            self._add_field(grid, row, item)

    def _add_figure(self, grid: QGridLayout, row: int, item: Figure) -> None:
        line = FigureLine(item.label)
        grid.addWidget(_label(item.label), row, 0, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(line, row, 1)
        grid.addWidget(line.told, row + 1, 0, 1, 2)
        self._figures.append(line)
        self._stops.append((item, line.button))

    def _add_field(self, grid: QGridLayout, row: int, item: Entry | Special) -> None:
        session, label = self._session, label_of(item)
        name = QCoreApplication.translate("Details", "{part}: {label}")
        name = name.format(part=self._context, label=label)
        tunnel = with_placed(session.tunnel, session.tunnel_plan)
        field = make_field(item, name, session.farm, tunnel)
        words = _label(label)
        words.setBuddy(field.editor)
        grid.addWidget(words, row, 0, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(field, row, 1)
        field.entered.connect(lambda value: self.on_entered(item, field, value))
        self._fields.append((item, field))
        self._stops.append((item, field.editor))

    def _act_button(self, act: Act) -> QAbstractButton:
        button = QPushButton(act.text)
        button.setAutoDefault(False)
        # A long text is cut and told by the tip; it never makes the panel wider.
        button.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        button.setToolTip(act.text)
        spoken = QCoreApplication.translate("Details", "{part}: {label}")
        button.setAccessibleName(spoken.format(part=self._context, label=act.text))
        button.clicked.connect(lambda: self.on_act(act))
        self._stops.append((act, button))
        return button

    def _fill(self, items: tuple[Item, ...]) -> None:
        session = self._session
        tunnel = with_placed(session.tunnel, session.tunnel_plan)
        for item, field in self._fields:
            if isinstance(item, Entry) and isinstance(field, LengthField | NumberField):
                field.between = limits_of(item, tunnel)
            field.set_value(value_of(item, session.farm, tunnel))
        shown = (item for item in items if isinstance(item, Figure))
        for line, figure in zip(self._figures, shown, strict=True):
            line.show_figure(figure, session.units)

    def on_entered(self, item: Entry | Special, field: Field, value: object) -> None:
        """Make one undo step of what was entered, or say at the field why it cannot be."""
        session = self._session
        words = QCoreApplication.translate("Details", "Change {label}")
        try:
            farm = with_entered(item, self._farm_for(item), session.index, value)
        except ValueError as error:
            field.show_refusal(refusal_words(error, session.units))
            return
        session.apply(farm, words.format(label=label_of(item)))

    def _farm_for(self, item: Entry | Special) -> Farm:
        """Return the farm that a line changes: for a jumper, with the jumpers written down."""
        session = self._session
        if not isinstance(item, Entry) or item.path[:2] != ("air", "jumpers"):
            return session.farm
        tunnel = with_placed(session.tunnel, session.tunnel_plan)
        return with_tunnel(session.farm, session.index, tunnel)

    def on_act(self, act: Act) -> None:
        """Make one undo step of an act, or tell why it cannot be done."""
        session = self._session
        try:
            if act.kind in PROPOSALS:
                propose_on(session, act.places[0], PROPOSALS[act.kind])
                return
            tunnel = session.tunnel
            if act.kind in JUMPER_ACTS:
                tunnel = with_placed(tunnel, session.tunnel_plan)
            farm = with_tunnel(session.farm, session.index, with_act(act, tunnel))
        except ValueError as error:
            session.noticed.emit("caution", refusal_words(error, session.units))
            return
        session.apply(farm, act.text)


def in_short(caution: Caution) -> str:
    """Return the first sentences of a caution, as many as are read at a glance."""
    ends = [n + 1 for n, letter in enumerate(caution.text) if letter == "."]
    return caution.text[: ends[min(SHORT_SENTENCES, len(ends)) - 1]]


def _label(text: str) -> QLabel:
    words = QLabel(text[:1].upper() + text[1:])
    words.setWordWrap(True)
    words.setTextFormat(Qt.TextFormat.PlainText)
    return words
