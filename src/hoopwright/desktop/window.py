"""The window: headline above, drawing and tables in the middle, details at the right.

The shell is built and painted without the plot library; the drawing takes its place right after.
"""

from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QByteArray, QEvent, QSettings, Qt, QTimer, Signal
from PySide6.QtGui import QCloseEvent, QGuiApplication, QPaintEvent, QScreen
from PySide6.QtWidgets import (
    QApplication,
    QLabel,
    QMainWindow,
    QSplitter,
    QVBoxLayout,
    QWidget,
)

from hoopwright.desktop.actions import ADD_JUMPER, Actions
from hoopwright.desktop.acts import Acts
from hoopwright.desktop.details import Details
from hoopwright.desktop.field import refusal_words
from hoopwright.desktop.filing import Filing
from hoopwright.desktop.headline import Headline
from hoopwright.desktop.look import Look, saved_look, wear_look
from hoopwright.desktop.notice_bar import CAUTION, NoticeBar
from hoopwright.desktop.palette import is_dark
from hoopwright.desktop.proposing import film_search
from hoopwright.desktop.questions import Questions
from hoopwright.desktop.session import Session
from hoopwright.desktop.tables import Tables
from hoopwright.desktop.tunnel_list import TunnelList
from hoopwright.farm import Farm
from hoopwright.files.storage import sample_farms
from hoopwright.quantity.working import words

if TYPE_CHECKING:
    from hoopwright.desktop.canvas import Canvas

GEOMETRY = "window_geometry"
SPLITS = {"middle": "window_middle", "across": "window_across"}
LEAST_SIZE = (960, 520)
FIRST_SIZE = (1366, 728)
FRAME_PX = 40
DETAILS_PX = 330
DRAWING_SHARE = 0.66
LARGE_TABLES_SHARE = 0.28


class _Place(QLabel):
    """Stands where the drawing will be.

    Signals:
        painted(): When it was painted for the first time.
    """

    painted = Signal()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint, and tell it once."""
        super().paintEvent(event)
        if not self.property("painted"):
            self.setProperty("painted", True)
            QTimer.singleShot(0, self.painted.emit)


class MainWindow(QMainWindow):
    """The window of one session.

    Attributes:
        session: The farm that is open.
        filing: What is done with its file.
        acts: What is done to it.
        actions_by_key: The menus' actions.
        canvas: The drawing, or None until the shell was painted.
    """

    def __init__(self, session: Session) -> None:
        """Build the shell; the drawing comes after the first paint."""
        super().__init__()
        self.session = session
        session.setParent(self)
        self.filing = Filing(session, Questions(self), self)
        self.acts = Acts(session, self.filing, self)
        self.canvas: Canvas | None = None
        self.setMinimumSize(*LEAST_SIZE)
        self.headline = Headline(session, self)
        self.tables = Tables(session, self)
        self.details = Details(session, self)
        self.notices = NoticeBar(self.tr(CAUTION), self)
        self.menu = Actions(self, self._menu_acts())
        keys = ("add_tunnel", "copy_tunnel", "rename_tunnel", "remove_tunnel")
        self.tunnels = TunnelList(session, [self.menu[key] for key in keys])
        # In the window on every system: the list of tunnels stands at the end of the menu bar.
        self.menuBar().setNativeMenuBar(False)
        self.menuBar().setCornerWidget(self.tunnels)
        self._arrange()
        self._fill_samples()
        self.menu.submenus["recent"].aboutToShow.connect(self.fill_recent)
        self._listen()
        self.menu.set_dark(is_dark(self.palette()))
        self.menu[saved_look()].setChecked(True)
        self.menu["pressures"].setChecked(True)
        self.refresh()
        self.show_title()
        self._restore()

    def _arrange(self) -> None:
        self._place = _Place(self.tr("The drawing is being made…"))
        self._place.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self._place.painted.connect(self.make_canvas)
        self.middle = QSplitter(Qt.Orientation.Vertical)
        self.middle.addWidget(self._place)
        self.middle.addWidget(self.tables)
        self.across = QSplitter(Qt.Orientation.Horizontal)
        self.across.addWidget(self.middle)
        self.across.addWidget(self.details)
        for splitter in (self.middle, self.across):
            splitter.setStretchFactor(0, 1)
            splitter.setStretchFactor(1, 0)
            splitter.setChildrenCollapsible(False)
        whole = QWidget()
        column = QVBoxLayout(whole)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.headline)
        column.addWidget(self.across, 1)
        column.addWidget(self.notices)
        self.setCentralWidget(whole)

    def _listen(self) -> None:
        session = self.session
        session.noticed.connect(self.notices.show_notice)
        session.file_changed.connect(self.show_title)
        session.farm_changed.connect(self.on_farm_changed)
        session.mark_picked.connect(self.refresh)
        session.tunnel_shown.connect(self.refresh)
        session.stack.indexChanged.connect(self.refresh)
        session.proposal_changed.connect(self.on_proposal_changed)
        self.notices.taken.connect(session.take_proposal)
        self.notices.left.connect(partial(session.propose, None))
        self.tables.lit.connect(self.light)
        self.headline.checks_wanted.connect(self.show_checks)

    def _menu_acts(self) -> dict[str, Callable[[], object]]:
        """Return what each entry of the menus does."""
        filing, acts = self.filing, self.acts
        changing: dict[str, Callable[[], object]] = {
            "new_farm": acts.new_farm,
            "add_tunnel": acts.add_tunnel,
            "copy_tunnel": acts.copy_tunnel,
            "rename_tunnel": acts.rename_tunnel,
            "remove_tunnel": acts.remove_tunnel,
            "split_first": partial(acts.add_split, 0),
            "split_second": partial(acts.add_split, 1),
            "add_seam": acts.add_seam,
            "remove_picked": acts.remove_picked,
            "turn_crank": acts.turn_crank,
            **{key: partial(acts.add_jumper, n) for n, key in enumerate(ADD_JUMPER)},
            "work_out_jumpers": acts.work_out_jumpers,
            "propose_even": partial(acts.propose, "even"),
            "propose_film": partial(acts.propose, "least film"),
            "propose_keep": partial(acts.propose, "keep bow"),
            "one_sheet": partial(acts.cover, "one_sheet"),
            "apart": partial(acts.cover, "roof_and_sides"),
            "list_bows": acts.list_bows,
            "imperial": partial(acts.set_units, "imperial"),
            "metric": partial(acts.set_units, "metric"),
        }
        return {
            **{key: partial(self.run, act) for key, act in changing.items()},
            "open": filing.open,
            "save": filing.save,
            "save_as": filing.save_as,
            "export": filing.export,
            "measuring": filing.export_measuring,
            "quit": self.close,
            "undo": self.undo,
            "redo": self.redo,
            "copy_table": self.copy_table,
            **self._view_acts(),
        }

    def _view_acts(self) -> dict[str, Callable[[], object]]:
        looks: tuple[Look, ...] = ("light", "dark", "system")
        views = ("zoom_in", "zoom_out", "zoom_picked")
        return {
            "zoom_all": partial(self.on_canvas, "fit_all"),
            **{key: partial(self.on_canvas, key) for key in views},
            **{look: partial(self.wear, look) for look in looks},
            "large_tables": self.enlarge_tables,
            "pressures": self.show_pressures,
            "next_area": partial(self.go_to_area, 1),
            "last_area": partial(self.go_to_area, -1),
            "keys": partial(self._help, self.tr("Keys"), "keys"),
            "cautions": partial(self._help, self.tr("Cautions"), "cautions"),
            "about": partial(self._help, self.tr("About Hoopwright"), "about"),
        }

    def _help(self, title: str, page: str) -> None:
        # Loaded when it is asked for: the window must not wait for it to start.
        from hoopwright.desktop.help_pages import PAGES, show_page

        show_page(title, PAGES[page](), self)

    def run(self, act: Callable[[], object]) -> None:
        """Do an act of the menu; what cannot be done is told in words."""
        self.session.cancel()
        try:
            act()
        except ValueError as refusal:
            self.session.noticed.emit("fault", refusal_words(refusal, self.session.units))
            self.refresh()

    def undo(self) -> None:
        """Undo the last step, unless a hand drags."""
        if not self.session.dragging:
            self.session.stack.undo()

    def redo(self) -> None:
        """Do the step again that was undone, unless a hand drags."""
        if not self.session.dragging:
            self.session.stack.redo()

    def refresh(self, *_told: object) -> None:
        """Say in the menus what is possible now."""
        self.menu.refresh(self.session)

    def on_farm_changed(self, before: Farm, after: Farm) -> None:
        """Follow an edit."""
        self.refresh()
        if before.name != after.name:
            self.show_title()

    def on_proposal_changed(self) -> None:
        """Tell of proposed splits in the line at the foot, with Take and Leave."""
        proposal = self.session.proposal
        if proposal is None:
            self.notices.drop_offer()
        else:
            self.notices.show_offer(words(proposal.told, self.session.units))

    def show_title(self) -> None:
        """Show the farm's name, its file, and whether it is saved."""
        session = self.session
        name = session.path.name if session.path is not None else self.tr("no file yet")
        self.setWindowTitle(f"{session.farm.name} ({name})[*]")
        self.setWindowModified(not session.stack.isClean())

    def make_canvas(self) -> None:
        """Put the drawing in its place."""
        from hoopwright.desktop.canvas import Canvas

        self.canvas = Canvas(self.session)
        self.show_pressures()
        sizes = self.middle.sizes()
        self.middle.replaceWidget(0, self.canvas)
        self._place.deleteLater()
        self.middle.setStretchFactor(0, 1)
        self.middle.setCollapsible(0, False)
        self.middle.setSizes(sizes)
        self.canvas.show()
        if self.focusWidget() is None:
            self.canvas.setFocus()

    def on_canvas(self, act: str) -> None:
        """Show another part of the drawing, when it is there."""
        if self.canvas is not None:
            getattr(self.canvas, act)()

    def light(self, marks: tuple[str, ...]) -> None:
        """Light on the drawing what a row of a table means."""
        if self.canvas is not None:
            self.canvas.show_marks(marks)

    def show_checks(self) -> None:
        """Bring the checks to the front and go there."""
        tab = self.tables.show_tab("checks")
        tab.view.setFocus(Qt.FocusReason.OtherFocusReason)

    def copy_table(self) -> None:
        """Copy the table that is seen, or its chosen rows, for a spreadsheet."""
        QGuiApplication.clipboard().setText(self.tables.shown.view.copied_text())
        self.session.noticed.emit("note", self.tr("The table is copied."))

    def wear(self, look: Look) -> None:
        """Dress the program light, dark, or as the desktop."""
        app = QApplication.instance()
        assert isinstance(app, QApplication)
        wear_look(look, app)

    def changeEvent(self, event: QEvent) -> None:
        """Follow the palette with the pictures of the tools."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange and hasattr(self, "menu"):
            self.menu.set_dark(is_dark(self.palette()))

    def show_pressures(self) -> None:
        """Show the pressures of the cells on the drawing, or leave them away."""
        if self.canvas is not None:
            self.canvas.show_pressures(self.menu["pressures"].isChecked())

    def enlarge_tables(self) -> None:
        """Give the tables most of the height, or give it back to the drawing."""
        large = self.menu["large_tables"].isChecked()
        whole = sum(self.middle.sizes())
        drawing = round(whole * (LARGE_TABLES_SHARE if large else DRAWING_SHARE))
        self.middle.setSizes([drawing, whole - drawing])

    def go_to_area(self, steps: int) -> None:
        """Give the focus to another area: drawing, tables, details, an open notice, tunnels."""
        drawing = self.canvas or self._place
        areas = [drawing, self.tables, self.details, self.notices, self.tunnels]
        focus = self.focusWidget()
        here = next((i for i, a in enumerate(areas) if _holds(a, focus)), None)
        start = 0 if here is None else here + steps
        for offset in range(len(areas)):
            target = _first_stop(areas[(start + offset * steps) % len(areas)])
            if target is not None:
                target.setFocus(Qt.FocusReason.ShortcutFocusReason)
                return

    def _fill_samples(self) -> None:
        for path in sample_farms():
            name = path.stem.replace("-", " ").capitalize()
            self.menu.submenus["samples"].addAction(name, partial(self._open_sample, path))

    def _open_sample(self, path: Path) -> None:
        if self.filing.may_leave():
            self.filing.open_sample(path)

    def fill_recent(self) -> None:
        """List the files opened or saved last."""
        menu = self.menu.submenus["recent"]
        menu.clear()
        for path in self.filing.recent():
            menu.addAction(str(path).replace("&", "&&"), partial(self.filing.open_path, path))
        if menu.isEmpty():
            menu.addAction(self.tr("No files yet")).setEnabled(False)

    def closeEvent(self, event: QCloseEvent) -> None:
        """Close, unless unsaved work would be lost against the user's will."""
        if not self.filing.may_leave():
            event.ignore()
            return
        settings = QSettings()
        settings.setValue(GEOMETRY, self.saveGeometry())
        for name, key in SPLITS.items():
            settings.setValue(key, getattr(self, name).saveState())
        self.filing.close()
        film_search(self.session).rest()
        event.accept()

    def _restore(self) -> None:
        """Take back size and place of the last time, on a screen that is there."""
        settings = QSettings()
        room = QGuiApplication.primaryScreen().availableGeometry()
        self.resize(*FIRST_SIZE)
        kept = settings.value(GEOMETRY)
        if isinstance(kept, QByteArray):
            self.restoreGeometry(kept)
            if not _is_seen(self, QGuiApplication.screens()):
                self.move(room.topLeft())
        elif room.width() < FIRST_SIZE[0] + FRAME_PX or room.height() < FIRST_SIZE[1] + FRAME_PX:
            self.setWindowState(Qt.WindowState.WindowMaximized)
        self.across.setSizes([self.width() - DETAILS_PX, DETAILS_PX])
        self.middle.setSizes(
            [round(self.height() * share) for share in (DRAWING_SHARE, 1 - DRAWING_SHARE)]
        )
        for name, key in SPLITS.items():
            state = settings.value(key)
            if isinstance(state, QByteArray):
                getattr(self, name).restoreState(state)


def _is_seen(window: QWidget, screens: list[QScreen]) -> bool:
    """Return whether the middle of a window's title is on a screen."""
    place = window.frameGeometry()
    grip = place.topLeft() + (place.topRight() - place.topLeft()) / 2
    return any(s.availableGeometry().contains(grip) for s in screens)


def _holds(area: QWidget, focus: QWidget | None) -> bool:
    return focus is not None and (area is focus or area.isAncestorOf(focus))


def _first_stop(area: QWidget) -> QWidget | None:
    """Return what takes the focus in an area, or None when nothing does."""
    if area.focusProxy() is not None or area.focusPolicy() & Qt.FocusPolicy.TabFocus:
        return area
    return next(
        (
            w
            for w in area.findChildren(QWidget)
            if w.isVisible() and w.isEnabled() and w.focusPolicy() & Qt.FocusPolicy.TabFocus
        ),
        None,
    )
