"""A bow measured as it stands: by points, by a string, or by a tape along and across."""

from itertools import pairwise

from PySide6.QtCore import QCoreApplication, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from hoopwright.desktop.bow_measuring_picture import MeasuringPicture
from hoopwright.desktop.bow_measuring_points import PointError, PointsForm
from hoopwright.desktop.bow_measuring_ways import (
    LENGTHS,
    WAYS,
    Measured,
    Way,
    first_lengths,
    first_way,
    length_limits,
    measured_by_lengths,
    measured_by_points,
    points_taken,
)
from hoopwright.desktop.details_form import FigureLine
from hoopwright.desktop.details_items import Figure
from hoopwright.desktop.details_words import choice_words
from hoopwright.desktop.field import LineField, refusal_words
from hoopwright.desktop.fields import ChoiceField, LengthField
from hoopwright.farm import MeasuredBow, Tunnel
from hoopwright.farm.measured_bow import BowJoin
from hoopwright.quantity.units import Units

JOINS: tuple[BowJoin, ...] = ("curve", "corners")
WIDEST_CHOICE = 30
LEAST_SIZE = (800, 420)
FORM_SHARE, PICTURE_SHARE = 1, 1


def _said(text: str) -> str:
    return QCoreApplication.translate("Measuring", text)


class BowMeasuringDialog(QDialog):
    """Asks how the bow was measured and for its lengths, and draws what they make.

    Attributes:
        tunnel: The tunnel with the measured bow, or None until it is accepted.
    """

    def __init__(self, tunnel: Tunnel, units: Units, parent: QWidget | None = None) -> None:
        """Ask with what is known of the bow filled in."""
        super().__init__(parent)
        self.setWindowTitle(_said("Measure a bow"))
        self.setMinimumSize(*LEAST_SIZE)
        self.tunnel: Tunnel | None = None
        self._before, self._units = tunnel, units
        self.way = ChoiceField(_said("Measured by"), [(w, _said(str(t))) for w, t in WAYS.items()])
        self.way.box.setMinimumContentsLength(WIDEST_CHOICE)
        self.join = ChoiceField(
            _said("Between the points"), [(join, choice_words(join)) for join in JOINS]
        )
        self.lengths: dict[str, LengthField] = {}
        self.points: PointsForm | None = None
        first, second = tunnel.sides
        self.picture = MeasuringPicture((first.name, second.name))
        self.told = QLabel()
        self.told.setWordWrap(True)
        self.told.setTextFormat(Qt.TextFormat.PlainText)
        self._asked = QScrollArea()
        self._asked.setWidgetResizable(True)
        self._figures = QVBoxLayout()
        self.figures: list[FigureLine] = []
        self._lay_out()
        profile = tunnel.frame.profile
        self._way: Way = first_way(profile)
        self._join: BowJoin = profile.join if isinstance(profile, MeasuredBow) else "curve"
        self.way.set_value(self._way)
        self.join.set_value(self._join)
        self.way.entered.connect(self.on_way_chosen)
        self.join.entered.connect(self.on_join_chosen)
        self._ask()

    def _lay_out(self) -> None:
        top = QFormLayout()
        top.addRow(_said("Measured by"), self.way)
        asked = QVBoxLayout()
        asked.addLayout(top)
        asked.addWidget(self._asked, 1)
        seen = QVBoxLayout()
        seen.addWidget(self.picture, 1)
        seen.addLayout(self._figures)
        seen.addWidget(self.told)
        beside = QHBoxLayout()
        beside.addLayout(asked, FORM_SHARE)
        beside.addLayout(seen, PICTURE_SHARE)
        standard = QDialogButtonBox.StandardButton
        self.buttons = QDialogButtonBox(standard.Ok | standard.Cancel)
        self.buttons.accepted.connect(self.accept)
        self.buttons.rejected.connect(self.reject)
        column = QVBoxLayout(self)
        column.addLayout(beside, 1)
        column.addWidget(self.buttons)

    def on_way_chosen(self, chosen: object) -> None:
        """Ask for what another way needs."""
        self._way = next(way for way in WAYS if way == chosen)
        self._ask()

    def on_join_chosen(self, chosen: object) -> None:
        """Join the points in another way."""
        self._join = next(join for join in JOINS if join == chosen)
        self.tell()

    def on_entered(self, _value: object) -> None:
        """Show what the lengths make by now."""
        self.tell()

    def on_points_changed(self) -> None:
        """Show what the points make, and let Tab go along them: an empty line may be new."""
        self.tell()
        standard = QDialogButtonBox.StandardButton
        stops = [
            self.way.editor,
            *(field.editor for field in self.lengths.values()),
            *([self.join.editor] if self.points is not None else []),
            *(field.editor for field in self._typed() if field not in self.lengths.values()),
            *(line.button for line in self.figures),
            *(self.buttons.button(kind) for kind in (standard.Ok, standard.Cancel)),
        ]
        for before, after in pairwise(stops):
            self.setTabOrder(before, after)

    def _ask(self) -> None:
        """Put the fields of the chosen way in their place, with what is known filled in."""
        way, known = self._way, first_lengths(self._before.frame.profile)
        # What was typed for one way is kept for the next one that asks for it.
        known |= {name: f.value for name, f in self.lengths.items() if isinstance(f.value, float)}
        # The choice outlives the form that it stood in.
        self.join.setParent(self)
        self.join.hide()
        holder, form = QWidget(), QFormLayout()
        holder.setLayout(form)
        form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapLongRows)
        self.lengths, self.points = {}, None
        for name, words in LENGTHS[way].items():
            label = _said(str(words))
            field = LengthField(label, self._units, length_limits(name), optional=True)
            field.set_value(known.get(name))
            field.entered.connect(self.on_entered)
            form.addRow(label, field)
            self.lengths[name] = field
        if way == "across_up" or way == "two_tapes":
            self.points = PointsForm(way, points_taken(self._before, way), self._units)
            self.points.changed.connect(self.on_points_changed)
            form.addRow(_said("Between the points"), self.join)
            self.join.show()
            form.addRow(self.points)
        self._asked.setWidget(holder)
        holder.show()
        self.on_points_changed()

    def measured(self, finished: bool) -> Measured:
        """Return what was measured so far.

        Args:
            finished: Whether a point of which one length is missing is refused, not passed over.

        Raises:
            ValueError: It makes no bow that can stand here; the message begins with a field.
        """
        values = {}
        for name, field in self.lengths.items():
            if field.value is None:
                raise ValueError(f"{name}: {_said('Enter the lengths that are still missing.')}")
            assert isinstance(field.value, float | int)
            values[name] = float(field.value)
        if self.points is None:
            return measured_by_lengths(self._before, self._way, values)
        points = self.points.points(finished)
        return measured_by_points(self._before, values["span_m"], points, self._join)

    def tell(self, finished: bool = False) -> bool:
        """Show what the lengths make, or what is the matter; return whether all is well.

        Args:
            finished: Whether a length that is missing is marked, too.
        """
        for field in self._typed():
            if not field.line.isModified():
                field.set_value(field.value)
        try:
            found = self.measured(finished)
        except ValueError as fault:
            self._refuse(fault, finished)
            return False
        self.picture.show_frame(found.tunnel.frame)
        self._show_figures(found.figures(self._units))
        dashed = "Dashed: the bow as its other side would have it."
        self.told.setText(_said(dashed) if self.points is not None else "")
        self.picture.setAccessibleDescription("; ".join(f.text for f in found.figures(self._units)))
        return True

    def accept(self) -> None:
        """Close with the bow, or stay at the field that is still to be mended."""
        wrong = next((field for field in self._typed() if field.line.isModified()), None)
        if wrong is not None:
            wrong.setFocus()
        elif self.tell(finished=True):
            self.tunnel = self.measured(finished=True).tunnel
            super().accept()
        else:
            faulty = (f for f in self._typed() if f.line.property("faulty"))
            next(faulty, self.way).setFocus()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Go on to the next field by Enter; Ctrl+Enter accepts."""
        by_enter = event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter)
        if by_enter and event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.accept()
        elif by_enter and isinstance(self.focusWidget(), QLineEdit):
            self.focusNextChild()
        else:
            super().keyPressEvent(event)

    def _typed(self) -> list[LineField]:
        points = self.points.fields() if self.points is not None else []
        return [*self.lengths.values(), *points]

    def _refuse(self, fault: ValueError, finished: bool) -> None:
        """Show a refusal at the field it names, and below the drawing."""
        self.picture.show_frame(None)
        self.picture.setAccessibleDescription("")
        self._show_figures(())
        words = refusal_words(fault, self._units)
        self.told.setText(words)
        if isinstance(fault, PointError):
            return
        name, _, rest = str(fault).partition(":")[0].partition("[")
        if name in self.lengths and (finished or self.lengths[name].value is not None):
            self.lengths[name].show_refusal(words)
        elif name == "points" and rest and self.points is not None:
            self.points.refuse(int(rest.removesuffix("]")), words)

    def _show_figures(self, figures: tuple[Figure, ...]) -> None:
        while len(self.figures) < len(figures):
            line = FigureLine(_said("Figure"))
            self._figures.addWidget(line)
            self._figures.addWidget(line.told)
            self.figures.append(line)
        for n, line in enumerate(self.figures):
            line.setVisible(n < len(figures))
            if n < len(figures):
                line.show_figure(figures[n], self._units)
            else:
                line.button.setChecked(False)
