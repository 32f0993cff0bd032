"""The menus and the tool bar: tables of texts, keys and pictures, and what is possible when."""

from collections.abc import Callable, Mapping

from msgspec import Struct
from PySide6.QtCore import QCoreApplication, QObject, QSize, Qt
from PySide6.QtGui import QAction, QActionGroup, QKeySequence
from PySide6.QtWidgets import QMainWindow, QMenu, QToolBar

from hoopwright.desktop.details_air import add_jumper_text
from hoopwright.desktop.end_moves import end_kind
from hoopwright.desktop.icons import tool_icon
from hoopwright.desktop.jumpers import is_jumper
from hoopwright.desktop.session import Session
from hoopwright.farm import EvenBows
from hoopwright.farm.side import MOVING

ICON_PX = 22


class Tool(Struct, frozen=True):
    """One entry of a menu.

    Attributes:
        key: Name of its act.
        text: What the menu says.
        keys: Its keys, the standard ones of the desktop by name (`Save`), or "".
        icon: Its picture, or "".
        short: What stands under the picture in the tool bar, or "" to leave it out.
        group: Entries of a group are ticked, one at a time; a single one by itself.
    """

    key: str
    text: str
    keys: str = ""
    icon: str = ""
    short: str = ""
    group: str = ""


LINE = Tool("", "")
ADD_JUMPER = (
    "jumper_first_side",
    "jumper_second_side",
    "jumper_roof",
    "jumper_front_end",
    "jumper_back_end",
)
"""The entries that add a jumper, in the order of the surfaces it can join."""
MENUS: tuple[tuple[str, tuple[Tool, ...]], ...] = (
    (
        "&File",
        (
            Tool("new_farm", "&New farm…", "New", "new"),
            Tool("open", "&Open…", "Open", "open", "Open"),
            Tool("samples", "Open sa&mple"),
            Tool("recent", "Open &recent"),
            LINE,
            Tool("save", "&Save", "Save", "save", "Save"),
            Tool("save_as", "Save &as…", "SaveAs"),
            LINE,
            Tool("export", "&Export workbook…", "Ctrl+E", "workbook", "Workbook"),
            Tool("measuring", "&Measuring sheet…", "Ctrl+M"),
            LINE,
            Tool("quit", "&Quit", "Quit"),
        ),
    ),
    (
        "&Edit",
        (
            Tool("undo", "&Undo", "Undo", "undo", "Undo"),
            Tool("redo", "&Redo", "Redo", "redo", "Redo"),
            LINE,
            Tool("copy_table", "Copy &table", "Ctrl+Shift+C"),
        ),
    ),
    (
        "&Tunnel",
        (
            Tool("add_tunnel", "&Add tunnel…", "Ctrl+T"),
            Tool("copy_tunnel", "&Copy tunnel"),
            Tool("rename_tunnel", "&Rename tunnel…"),
            Tool("remove_tunnel", "Remo&ve tunnel"),
            LINE,
            Tool("split_first", "Add split on the &first side", "Ctrl+1", "split", "Split 1"),
            Tool(
                "split_second",
                "Add split on the &second side",
                "Ctrl+2",
                "split",
                "Split 2",
            ),
            Tool("add_seam", "Add cross sea&m", "Ctrl+3", "seam", "Seam"),
            Tool("remove_picked", "Re&move what is picked", "Del", "remove", "Remove"),
            Tool("turn_crank", "Cran&k to its next place", "", "crank", "Crank"),
            LINE,
            Tool("propose_even", "Propose splits, &evenly", "Ctrl+4", "propose", "Propose"),
            Tool("propose_film", "Propose splits with least f&ilm"),
            Tool("propose_keep", "Propose splits that keep the picked split or &bow"),
            LINE,
            Tool("one_sheet", "Cover with &one sheet", "", "one-sheet", "One sheet", "cover"),
            Tool("apart", "Cover roof and sides a&part", "", "apart", "Apart", "cover"),
            LINE,
            Tool("list_bows", "&List bows one by one"),
        ),
    ),
    (
        "A&ir",
        (
            *(Tool(key, key) for key in ADD_JUMPER),
            LINE,
            Tool("work_out_jumpers", "&Work out the jumpers"),
        ),
    ),
    (
        "&View",
        (
            Tool("zoom_all", "Show &all", "Ctrl+0", "zoom-all", "Show all"),
            Tool("zoom_picked", "Show what is &picked", "Ctrl+9", "zoom-picked", "To picked"),
            Tool("zoom_in", "Lar&ger", "ZoomIn"),
            Tool("zoom_out", "&Smaller", "ZoomOut"),
            LINE,
            Tool("pressures", "Show pr&essures", group="pressures"),
            LINE,
            Tool("imperial", "&Feet and inches", group="units"),
            Tool("metric", "&Metres", group="units"),
            LINE,
            Tool("light", "&Light", group="look"),
            Tool("dark", "&Dark", group="look"),
            Tool("system", "As the des&ktop", group="look"),
            LINE,
            Tool("large_tables", "Larger &tables", "F9", group="tables"),
            Tool("next_area", "&Next area", "F6"),
            Tool("last_area", "Last a&rea", "Shift+F6"),
        ),
    ),
    (
        "&Help",
        (
            Tool("keys", "&Keys", "F1"),
            Tool("cautions", "&Cautions"),
            Tool("about", "&About, and how figures are got"),
        ),
    ),
)
TOOL_BAR = (
    ("open", "save", "export"),
    ("undo", "redo"),
    ("split_first", "split_second", "add_seam", "remove_picked", "turn_crank", "propose_even"),
    ("one_sheet", "apart"),
    ("zoom_all", "zoom_picked"),
)
SUBMENUS = ("samples", "recent")
SINGLE = ("tables", "pressures")
"""Groups of one entry that is ticked or not."""


def _said(text: str) -> str:
    return QCoreApplication.translate("Menu", text)


class Actions(QObject):
    """The actions of a window, by name.

    Attributes:
        by_key: Every action.
        submenus: The menus that are filled when they are opened.
    """

    def __init__(self, window: QMainWindow, acts: Mapping[str, Callable[[], object]]) -> None:
        """Fill menus and tool bar; each action calls its act."""
        super().__init__(window)
        self.by_key: dict[str, QAction] = {}
        self.submenus: dict[str, QMenu] = {}
        self._groups: dict[str, QActionGroup] = {}
        self._icons: dict[str, str] = {}
        for title, tools in MENUS:
            menu = window.menuBar().addMenu(_said(title))
            for tool in tools:
                self._add(menu, tool, acts)
        self.bar = QToolBar(_said("Tools"), window)
        self._fill_bar()
        window.addToolBar(self.bar)

    def __getitem__(self, key: str) -> QAction:
        return self.by_key[key]

    def _add(self, menu: QMenu, tool: Tool, acts: Mapping[str, Callable[[], object]]) -> None:
        if not tool.key:
            menu.addSeparator()
        elif tool.key in SUBMENUS:
            self.submenus[tool.key] = menu.addMenu(_said(tool.text))
        else:
            action = self._action(tool)
            act = acts[tool.key]
            action.triggered.connect(lambda _ticked=False: act())
            menu.addAction(action)

    def _action(self, tool: Tool) -> QAction:
        action = QAction(_said(tool.text), self)
        action.setShortcut(_keys(tool.keys))
        if tool.short:
            action.setIconText(_said(tool.short))
        if tool.icon:
            self._icons[tool.key] = tool.icon
        if tool.group:
            action.setCheckable(True)
            group = self._groups.setdefault(tool.group, QActionGroup(self))
            group.setExclusive(tool.group not in SINGLE)
            group.addAction(action)
        self.by_key[tool.key] = action
        return action

    def _fill_bar(self) -> None:
        self.bar.setObjectName("tools")
        self.bar.setMovable(False)
        self.bar.setContextMenuPolicy(Qt.ContextMenuPolicy.PreventContextMenu)
        self.bar.setIconSize(QSize(ICON_PX, ICON_PX))
        self.bar.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextUnderIcon)
        for number, keys in enumerate(TOOL_BAR):
            if number:
                self.bar.addSeparator()
            for key in keys:
                self.bar.addAction(self.by_key[key])

    def set_dark(self, dark: bool) -> None:
        """Draw the pictures for a light or a dark window."""
        for key, name in self._icons.items():
            self.by_key[key].setIcon(tool_icon(name, dark))

    def refresh(self, session: Session) -> None:
        """Say what is possible now, and tick what is so."""
        self._refresh_undo(session)
        tunnel, mark = session.tunnel, session.mark.split("/")
        for key, side in (("split_first", tunnel.sides[0]), ("split_second", tunnel.sides[1])):
            self._name(key, _said("Add split on {side}").format(side=side.name))
            self.by_key[key].setEnabled(side.kind in MOVING)
        splits = mark[2:3] == ["split"]
        self._refresh_remove(session.mark)
        self._refresh_air(session)
        self.by_key["turn_crank"].setEnabled(mark[2:3] == ["panel"])
        moving = any(side.kind in MOVING for side in tunnel.sides)
        for key in ("propose_even", "propose_film"):
            self.by_key[key].setEnabled(moving)
        self.by_key["propose_keep"].setEnabled(moving and (splits or mark[0] == "bow"))
        self.by_key["remove_tunnel"].setEnabled(len(session.farm.tunnels) > 1)
        even = isinstance(tunnel.frame.bows, EvenBows)
        self._name(
            "list_bows", _said("List bows one by one") if even else _said("Space bows evenly")
        )
        one = tunnel.skin.covering == "one_sheet"
        self.by_key["one_sheet" if one else "apart"].setChecked(True)
        self.by_key[session.units].setChecked(True)

    def _refresh_remove(self, mark: str) -> None:
        """Name what is picked and can be removed."""
        parts = mark.split("/")
        words = _said("Remove split, seam or jumper")
        kinds = (
            (parts[2:3] == ["split"], _said("Remove split")),
            (parts[:2] == ["roof", "seam"], _said("Remove cross seam")),
            (is_jumper(mark), _said("Remove jumper")),
            (bool(end_kind(mark)), _said("Remove from the end wall")),
        )
        named = next((text for is_it, text in kinds if is_it), None)
        self.by_key["remove_picked"].setEnabled(named is not None)
        self._name("remove_picked", named or words)

    def _refresh_air(self, session: Session) -> None:
        """Say where a jumper can be added, and whether they are placed by hand."""
        for n, key in enumerate(ADD_JUMPER):
            self._name(key, add_jumper_text(session, n))
            self.by_key[key].setEnabled(bool(session.tunnel_plan.chosen.inflation.cells))
        self.by_key["work_out_jumpers"].setEnabled(session.tunnel.air.jumpers is not None)

    def _refresh_undo(self, session: Session) -> None:
        """Name the steps that can be undone, and allow none while a hand drags."""
        stack, free = session.stack, not session.dragging
        for key, name, text, can in (
            ("undo", _said("Undo"), stack.undoText(), stack.canUndo()),
            ("redo", _said("Redo"), stack.redoText(), stack.canRedo()),
        ):
            self.by_key[key].setEnabled(free and can)
            self._name(key, f"{name}: {text}" if text else name)

    def _name(self, key: str, text: str) -> None:
        """Give an action another text; what stands under its picture keeps its width."""
        action = self.by_key[key]
        short = action.iconText()
        action.setText(text.replace("&", "&&"))
        if key in self._icons:
            action.setIconText(short)
        keys = action.shortcut().toString(QKeySequence.SequenceFormat.NativeText)
        action.setToolTip(f"{text} ({keys})" if keys else text)


def _keys(name: str) -> QKeySequence:
    """Return the keys written in the table: a standard key of the desktop by name, or keys."""
    standard = getattr(QKeySequence.StandardKey, name, None) if name else None
    return QKeySequence(standard) if standard is not None else QKeySequence(name)
