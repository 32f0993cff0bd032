"""The window: headline above, drawing and tables in the middle, details at the right."""

from collections.abc import Callable
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QByteArray, QSettings, Qt, QTimer
from PySide6.QtGui import QAction, QCloseEvent, QGuiApplication, QKeySequence, QShowEvent
from PySide6.QtWidgets import (
    QApplication,
    QLabel,
    QMainWindow,
    QMenu,
    QMessageBox,
    QSplitter,
    QTabWidget,
    QToolBar,
    QVBoxLayout,
    QWidget,
)

from hoopwright.desktop.acts import Acts
from hoopwright.desktop.details import Details
from hoopwright.desktop.filing import Filing
from hoopwright.desktop.headline import Headline
from hoopwright.desktop.help_pages import CAUTION, show_about, show_cautions, show_keys
from hoopwright.desktop.palette import app_palette
from hoopwright.desktop.session import Session
from hoopwright.desktop.tables import Tables
from hoopwright.desktop.tunnel_list import TunnelList
from hoopwright.files.fault import FileFault
from hoopwright.files.storage import sample_farms

if TYPE_CHECKING:
    from hoopwright.desktop.canvas import Canvas

DARK = "dark"
GEOMETRY = "window_geometry"
LEAST_SIZE = (960, 520)
FIRST_SIZE = (1366, 720)
DETAILS_PX = 330


class MainWindow(QMainWindow):
    """The window of one session."""

    def __init__(self, session: Session) -> None:
        """Build the shell; the drawing comes after the first paint."""
        super().__init__()
        self.session = session
        session.setParent(self)
        self.filing = Filing(session, self)
        self.acts = Acts(session, self.filing, self)
        self.canvas: Canvas | None = None
        self.setMinimumSize(*LEAST_SIZE)
        self.resize(*FIRST_SIZE)
        self.headline = Headline(session, self)
        self.tunnels = TunnelList(session, self)
        self.tables = Tables(session, self)
        self.details = Details(session, self)
        self._place = QLabel(self.tr("The drawing is being made…"), self)
        self._place.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self._arrange()
        self._notice = QLabel(CAUTION, self)
        self._notice.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.statusBar().addWidget(self._notice, 1)
        self._fill_menus()
        self._listen()
        self.show_title()
        self._restore()

    def _arrange(self) -> None:
        self.middle = QSplitter(Qt.Orientation.Vertical, self)
        self.middle.addWidget(self._place)
        self.middle.addWidget(self.tables)
        self.middle.setStretchFactor(0, 3)
        self.middle.setStretchFactor(1, 2)
        self.middle.setSizes([380, 230])
        self.middle.setChildrenCollapsible(False)
        across = QSplitter(Qt.Orientation.Horizontal, self)
        across.addWidget(self.middle)
        across.addWidget(self.details)
        across.setStretchFactor(0, 1)
        across.setSizes([FIRST_SIZE[0] - DETAILS_PX, DETAILS_PX])
        across.setChildrenCollapsible(False)
        whole = QWidget(self)
        column = QVBoxLayout(whole)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.headline)
        column.addWidget(self.tunnels)
        column.addWidget(across, 1)
        self.setCentralWidget(whole)

    def _listen(self) -> None:
        session = self.session
        session.noticed.connect(self.show_notice)
        session.file_changed.connect(self.show_title)
        session.farm_changed.connect(self.refresh_actions)
        session.mark_picked.connect(self.refresh_actions)
        session.tunnel_shown.connect(self.refresh_actions)
        session.stack.undoTextChanged.connect(self.refresh_actions)
        session.stack.redoTextChanged.connect(self.refresh_actions)
        self.tunnels.new_wanted.connect(self.acts.add_tunnel)
        self.tables.lit.connect(self.light)
        self.headline.checks_wanted.connect(self.show_checks)

    def _fill_menus(self) -> None:
        """Fill the menus from tables of text, keys and act."""
        keys = QKeySequence.StandardKey
        filing = self.filing
        self._menu(
            self.tr("&File"),
            (
                (self.tr("New farm…"), keys.New, self.acts.new_farm),
                (self.tr("Open…"), keys.Open, filing.open),
                (self.tr("Save"), keys.Save, filing.save),
                (self.tr("Save as…"), keys.SaveAs, filing.save_as),
                (self.tr("Export workbook…"), "Ctrl+E", filing.export),
                (self.tr("Quit"), keys.Quit, self.close),
            ),
        )
        self._add_file_lists()
        self.undo_action, self.redo_action = self._menu(
            self.tr("&Edit"),
            (
                (self.tr("Undo"), keys.Undo, self.session.stack.undo),
                (self.tr("Redo"), keys.Redo, self.session.stack.redo),
            ),
        )
        self._menu(self.tr("&Tunnel"), self._tunnel_acts())
        self._menu(self.tr("&View"), self._view_acts())
        self._menu(
            self.tr("&Help"),
            (
                (self.tr("Keys"), keys.HelpContents, lambda: show_keys(self)),
                (self.tr("Cautions"), None, lambda: show_cautions(self)),
                (self.tr("About"), None, lambda: show_about(self)),
            ),
        )
        self._fill_toolbar()
        self.refresh_actions()

    def _tunnel_acts(self) -> tuple[tuple[str, object, Callable[[], object]], ...]:
        return (
            (self.tr("Add tunnel…"), None, self.acts.add_tunnel),
            (self.tr("Copy tunnel"), None, self.tunnels.copy),
            (self.tr("Rename tunnel…"), "F2", self.tunnels.rename),
            (self.tr("Remove tunnel"), None, self.tunnels.remove),
            (self.tr("Split the first side"), "Ctrl+1", lambda: self.acts.split_side(0)),
            (self.tr("Split the second side"), "Ctrl+2", lambda: self.acts.split_side(1)),
            (self.tr("Add cross seam"), "Ctrl+3", self.acts.add_seam),
            (self.tr("Remove what is picked"), "Delete", self.acts.remove_picked),
            (self.tr("Crank to the other end"), None, self.acts.turn_crank),
            (self.tr("One sheet"), None, lambda: self.acts.cover("one_sheet")),
            (self.tr("Roof and sides apart"), None, lambda: self.acts.cover("roof_and_sides")),
            (self.tr("List the bows one by one"), None, self.acts.list_bows),
        )

    def _view_acts(self) -> tuple[tuple[str, object, Callable[[], object]], ...]:
        return (
            (self.tr("Show all"), "Ctrl+0", lambda: self.on_canvas("fit_all")),
            (self.tr("To what is picked"), None, lambda: self.on_canvas("zoom_picked")),
            (self.tr("Larger"), keys_of("ZoomIn"), lambda: self.on_canvas("zoom_in")),
            (self.tr("Smaller"), keys_of("ZoomOut"), lambda: self.on_canvas("zoom_out")),
            (self.tr("Feet and inches"), None, lambda: self.acts.set_units("imperial")),
            (self.tr("Metres"), None, lambda: self.acts.set_units("metric")),
            (self.tr("Light"), None, lambda: self.set_dark(False)),
            (self.tr("Dark"), None, lambda: self.set_dark(True)),
            (self.tr("Larger tables or back"), "F9", self.enlarge_tables),
            (self.tr("Next area"), "F6", self.next_area),
        )

    def _menu(
        self, title: str, acts: tuple[tuple[str, object, Callable[[], object]], ...]
    ) -> list[QAction]:
        menu = self.menuBar().addMenu(title)
        made = []
        for text, keys, act in acts:
            action = QAction(text, self)
            if keys is not None:
                action.setShortcut(QKeySequence(keys))  # type: ignore[call-overload]  # both kinds
            action.triggered.connect(lambda _checked=False, act=act: self.act(act))
            menu.addAction(action)
            made.append(action)
        return made

    def _add_file_lists(self) -> None:
        file_menu = self.menuBar().actions()[0].menu()
        assert isinstance(file_menu, QMenu)
        before = file_menu.actions()[2]
        samples = QMenu(self.tr("Open sample"), file_menu)
        for path in sample_farms():
            name = path.stem.replace("-", " ")
            samples.addAction(name, partial(self.acts.open_sample, path))
        self._recent = QMenu(self.tr("Open recent"), file_menu)
        self._recent.aboutToShow.connect(self.fill_recent)
        file_menu.insertMenu(before, samples)
        file_menu.insertMenu(before, self._recent)

    def _fill_toolbar(self) -> None:
        bar = QToolBar(self.tr("Tools"), self)
        bar.setObjectName("tools")
        bar.setMovable(False)
        wanted = {
            self.tr("Open…"): self.tr("Open"),
            self.tr("Save"): "",
            self.tr("Export workbook…"): self.tr("Export workbook"),
            self.tr("Split the first side"): "",
            self.tr("Split the second side"): "",
            self.tr("Add cross seam"): "",
            self.tr("Remove what is picked"): self.tr("Remove picked"),
            self.tr("One sheet"): "",
            self.tr("Roof and sides apart"): "",
            self.tr("Show all"): "",
        }
        bar.addAction(self.undo_action)
        bar.addAction(self.redo_action)
        for action in self.findChildren(QAction):
            if action.text() in wanted:
                action.setIconText(wanted[action.text()] or action.text())
                bar.addAction(action)
        self.addToolBar(bar)

    def act(self, act: Callable[[], object]) -> None:
        """Run an act of the menu; what cannot be done is told in words."""
        try:
            act()
        except (ValueError, FileFault) as fault:
            self.show_notice("fault", str(fault))

    def refresh_actions(self, *_told: object) -> None:
        """Name the steps that can be undone, and allow none while a hand drags."""
        stack, free = self.session.stack, not self.session.dragging
        self.undo_action.setEnabled(free and stack.canUndo())
        self.redo_action.setEnabled(free and stack.canRedo())
        for action, name, text in (
            (self.undo_action, self.tr("Undo"), stack.undoText()),
            (self.redo_action, self.tr("Redo"), stack.redoText()),
        ):
            action.setText(f"{name}: {text}" if text else name)
            action.setIconText(name)

    def show_title(self) -> None:
        """Show the farm's name and whether it is saved."""
        session = self.session
        name = session.path.name if session.path is not None else self.tr("not saved yet")
        self.setWindowTitle(f"{session.farm.name} ({name})[*]")
        self.setWindowModified(not session.stack.isClean())

    def show_notice(self, severity: str, text: str) -> None:
        """Show what happened, with how severe it is in words."""
        word = {"fault": self.tr("Fault"), "caution": self.tr("Caution")}.get(severity, "")
        self._notice.setText(f"{word}: {text}" if word else text)
        self._notice.setToolTip(text)

    def showEvent(self, event: QShowEvent) -> None:
        """Make the drawing once the shell is painted."""
        super().showEvent(event)
        if self.canvas is None:
            QTimer.singleShot(0, self.make_canvas)

    def make_canvas(self) -> None:
        """Put the drawing in its place."""
        if self.canvas is not None:
            return
        from hoopwright.desktop.canvas import Canvas

        self.canvas = Canvas(self.session, self)
        sizes = self.middle.sizes()
        self.middle.replaceWidget(0, self.canvas)
        self.middle.setStretchFactor(0, 3)
        self.middle.setSizes(sizes)
        self._place.deleteLater()
        self.canvas.show()

    def on_canvas(self, act: str) -> None:
        """Do something on the drawing when it is there."""
        if self.canvas is not None:
            getattr(self.canvas, act)()

    def light(self, marks: tuple[str, ...]) -> None:
        """Light up places on the drawing."""
        if self.canvas is not None:
            self.canvas.show_marks(marks)

    def show_checks(self) -> None:
        """Bring the checks to the front."""
        tabs = self.tables
        assert isinstance(tabs, QTabWidget)
        for index in range(tabs.count()):
            if tabs.tabText(index).startswith(self.tr("Checks")):
                tabs.setCurrentIndex(index)

    def set_dark(self, dark: bool) -> None:
        """Dress the window light or dark."""
        QSettings().setValue(DARK, dark)
        app = QApplication.instance()
        assert isinstance(app, QApplication)
        app.setPalette(app_palette(dark))
        if self.canvas is not None:
            self.canvas.set_dark(dark)

    def enlarge_tables(self) -> None:
        """Let the tables take most of the height, or give it back to the drawing."""
        above, below = self.middle.sizes()
        whole = above + below
        large = below > above
        share = 0.62 if large else 0.3
        self.middle.setSizes([int(whole * share), int(whole * (1 - share))])

    def next_area(self) -> None:
        """Give the focus to the next area: drawing, tables, details, headline."""
        areas: list[QWidget] = [self.tables, self.details, self.tunnels]
        if self.canvas is not None:
            areas.insert(0, self.canvas)
        focus = QApplication.focusWidget()
        holds = [a is focus or (focus is not None and a.isAncestorOf(focus)) for a in areas]
        chosen = areas[(holds.index(True) + 1) % len(areas) if True in holds else 0]
        target: QWidget | None = chosen
        if chosen.focusPolicy() == Qt.FocusPolicy.NoFocus and chosen.focusProxy() is None:
            target = next(
                (
                    w
                    for w in chosen.findChildren(QWidget)
                    if w.isVisible() and w.focusPolicy() & Qt.FocusPolicy.TabFocus
                ),
                None,
            )
        if target is not None:
            target.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def fill_recent(self) -> None:
        """Fill the list of files opened last."""
        self._recent.clear()
        for path in self.filing.recent():
            self._recent.addAction(str(path), partial(self.filing.open_path, path))
        if self._recent.isEmpty():
            self._recent.addAction(self.tr("No files yet")).setEnabled(False)

    def offer_recovery(self) -> None:
        """Offer unsaved work of a program that ended without saving, once."""
        for found in self.filing.offered():
            answer = QMessageBox.question(
                self,
                self.tr("Unsaved work found"),
                f"Unsaved work on {found.farm.name} was kept at {found.kept_at:%Y-%m-%d %H:%M}. "
                "Open it as a copy?",
            )
            if answer == QMessageBox.StandardButton.Yes:
                self.filing.recover(found)
                return

    def closeEvent(self, event: QCloseEvent) -> None:
        """Close when nothing unsaved is lost against the user's will."""
        if not self.filing.may_leave():
            event.ignore()
            return
        QSettings().setValue(GEOMETRY, self.saveGeometry())
        self.filing.close()
        event.accept()

    def _restore(self) -> None:
        kept = QSettings().value(GEOMETRY)
        if isinstance(kept, QByteArray):
            self.restoreGeometry(kept)
        screens = QGuiApplication.screens()
        if not any(s.availableGeometry().intersects(self.frameGeometry()) for s in screens):
            self.move(screens[0].availableGeometry().topLeft())


def keys_of(name: str) -> QKeySequence.StandardKey:
    """Return a standard key of the desktop by name."""
    return QKeySequence.StandardKey[name]
