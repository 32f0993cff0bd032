"""Readings of the whole frame, and what all readings come to, each with how it was got."""

from collections.abc import Iterator, Sequence

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication, QModelIndex, Qt
from PySide6.QtWidgets import QFrame, QLabel, QScrollArea, QSplitter, QVBoxLayout, QWidget

from hoopwright.desktop.details_form import Form
from hoopwright.desktop.details_items import Entry, Heading, Item, entries, explained
from hoopwright.desktop.session import Session
from hoopwright.desktop.table_order import figure_cell
from hoopwright.desktop.table_rows import MIXED, Cell, Column, Row, tip_text
from hoopwright.desktop.table_tab import Tab
from hoopwright.farm import Tape
from hoopwright.quantity.working import Explained
from hoopwright.survey.taped import GirthSpread, Taped

COLUMNS = (
    Column(QT_TRANSLATE_NOOP("Tables", "Figure"), 42),
    Column(QT_TRANSLATE_NOOP("Tables", "Here"), 13, MIXED),
)
SPREAD: tuple[tuple[str, str, object], ...] = (
    ("middle_m", "m", QT_TRANSLATE_NOOP("Tables", "{girth}: median")),
    ("spread_m", "m", QT_TRANSLATE_NOOP("Tables", "{girth}: spread, longest less shortest")),
    ("deviation_m", "m", QT_TRANSLATE_NOOP("Tables", "{girth}: standard deviation")),
    ("governing_bow", "count", QT_TRANSLATE_NOOP("Tables", "{girth}: bow that governs")),
    (
        "governing_m",
        "m",
        QT_TRANSLATE_NOOP("Tables", "{girth}: longest, it governs"),
    ),
    ("computed_m", "m", QT_TRANSLATE_NOOP("Tables", "{girth}: computed from the profile")),
    (
        "disagreement_share",
        "share",
        QT_TRANSLATE_NOOP("Tables", "{girth}: median off the computed"),
    ),
)
WHOLE: tuple[tuple[str, object], ...] = (
    ("length_m", QT_TRANSLATE_NOOP("Tables", "Length that governs")),
    ("skew_m", QT_TRANSLATE_NOOP("Tables", "Second side runs ahead at the back")),
    ("skew_cost_m", QT_TRANSLATE_NOOP("Tables", "Skew adds to the length of a sheet")),
    ("lean_cost_m", QT_TRANSLATE_NOOP("Tables", "Leaning end bows add to the length")),
    ("dip_m", QT_TRANSLATE_NOOP("Tables", "Deepest dip of the ridge")),
    ("dip_cost_m", QT_TRANSLATE_NOOP("Tables", "Dip takes off the width there")),
)
GIRTHS: tuple[tuple[str, object], ...] = (
    ("hips", QT_TRANSLATE_NOOP("Tables", "Over hips")),
    ("baseboards", QT_TRANSLATE_NOOP("Tables", "Over baseboards")),
)
FORM_PX, TABLE_PX, TOLD_PX = 310, 460, 270


def _say(text: object) -> str:
    return QCoreApplication.translate("Tables", str(text))


def frame_reading_items(session: Session) -> tuple[Item, ...]:
    """Return the lines for readings of the whole frame, in the order of the measuring sheet."""
    return tuple(_items(session))


def _items(session: Session) -> Iterator[Item]:
    first, second = (side.name for side in session.tunnel.sides)
    front, back = (end.name for end in session.tunnel.ends)
    pairs: tuple[tuple[str, str, tuple[str, str]], ...] = (
        (
            _say("First to last bow"),
            "hip_lengths_m",
            _each(_say("along the hip, {name}"), first, second),
        ),
        ("", "base_lengths_m", _each(_say("along the baseboard, {name}"), first, second)),
        (
            _say("Corner to corner at the ground"),
            "diagonals_m",
            _each(_say("{name}, from its front corner"), first, second),
        ),
        (
            _say("Ridge stands outside the feet"),
            "leans_m",
            _each(_say("{name}, inward is negative"), front, back),
        ),
    )
    for heading, name, labels in pairs:
        if heading:
            yield Heading(heading)
        for n, label in enumerate(labels):
            yield Entry("tunnel", ("frame", "tape", name, n), Tape, name, label)
    yield Heading(_say("How far the tape is believed"))
    names = ("error_m", "agreement_share", "outlier_m")
    yield from entries("tunnel", ("frame", "tape"), session.tunnel.frame.tape, *names)


def _each(words: str, first: str, second: str) -> tuple[str, str]:
    return words.format(name=first), words.format(name=second)


def frame_reading_rows(session: Session) -> tuple[Row, ...]:
    """Return what the readings come to."""
    return tuple(_rows(session.tunnel_plan.survey.taped))


def _rows(taped: Taped) -> Iterator[Row]:
    for name, girth in GIRTHS:
        spread: GirthSpread | None = getattr(taped, name)
        if spread is None:
            yield _row(name, _say("{girth}: not read").format(girth=_say(girth)), Cell(None))
            continue
        for figure, unit, words in SPREAD:
            label = _say(words).format(girth=_say(girth))
            yield _row(f"{name}/{figure}", label, figure_cell(spread, figure, unit))
    for figure, words in WHOLE:
        yield _row(figure, _say(words), _length(taped, figure))


def _length(thing: Explained, name: str) -> Cell:
    value_m = getattr(thing, name)
    if value_m is None:
        return Cell(_say("not read"), tip=explained(thing, name))
    return Cell(value_m, "m", explained(thing, name))


def _row(name: str, label: str, cell: Cell) -> Row:
    return Row(key=("reading", name), cells=(Cell(label, tip=cell.tip), cell))


class FrameReadingsTab(Tab):
    """A form at the left, figures beside it; how the chosen figure was got stands at the right."""

    def __init__(self, session: Session, title: str) -> None:
        """Make an empty part."""
        super().__init__(session, title, COLUMNS, frame_reading_rows)
        self.form = Form(session)
        self.working = QLabel()
        self.working.setWordWrap(True)
        self.working.setTextFormat(Qt.TextFormat.PlainText)
        self.working.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.working.setMargin(6)
        selectable = Qt.TextInteractionFlag.TextSelectableByMouse
        self.working.setTextInteractionFlags(
            selectable | Qt.TextInteractionFlag.TextSelectableByKeyboard
        )
        self.working.setAccessibleName(_say("How the chosen figure was got"))
        across = QSplitter(Qt.Orientation.Horizontal)
        across.setChildrenCollapsible(False)
        box = self.layout()
        assert isinstance(box, QVBoxLayout)
        box.insertWidget(0, across, 1)
        for widget in (_scrolled(self.form), self.view, _scrolled(self.working)):
            across.addWidget(widget)
        across.setSizes([FORM_PX, TABLE_PX, TOLD_PX])
        self.view.selectionModel().currentChanged.connect(self.on_current_changed)

    def refresh(self) -> None:
        """Show the readings and what they come to as they are now."""
        super().refresh()
        self.form.show_items(frame_reading_items(self.session), _say("Readings"))
        self.tell()

    def on_current_changed(self, _now: QModelIndex, _before: QModelIndex) -> None:
        """Tell of another figure."""
        self.tell()

    def tell(self) -> None:
        """Say how the current figure was got."""
        at = self.view.currentIndex()
        hint = _say("Choose a figure: how it was got stands here.")
        rows: Sequence[Row] = self.model.rows
        here = at.isValid() and at.row() < len(rows)
        row = rows[self.view.sorted_rows.mapToSource(at).row()] if here else None
        told = tip_text(row.cells[-1].tip, self.session.units) if row is not None else ""
        self.working.setText(told or hint)


def _scrolled(widget: QWidget) -> QScrollArea:
    area = QScrollArea()
    area.setWidgetResizable(True)
    area.setFrameShape(QFrame.Shape.NoFrame)
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    area.setWidget(widget)
    return area
