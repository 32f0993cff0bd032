"""What the checks found, and what mends it."""

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication
from PySide6.QtWidgets import QHeaderView

from hoopwright.desktop.session import Session
from hoopwright.desktop.table_rows import Cell, Column, Row, Total
from hoopwright.desktop.table_tab import Tab
from hoopwright.farm import Tunnel
from hoopwright.farm.change import with_tunnel
from hoopwright.quantity.finding import Finding, Severity
from hoopwright.quantity.working import words

COLUMNS = (
    Column(QT_TRANSLATE_NOOP("Tables", "Severity"), 12),
    Column(QT_TRANSLATE_NOOP("Tables", "Tunnel"), 14),
    Column(QT_TRANSLATE_NOOP("Tables", "What"), 46),
    Column(QT_TRANSLATE_NOOP("Tables", "Why"), 40),
    Column(QT_TRANSLATE_NOOP("Tables", "Mend"), 40),
)
SEVERITIES: dict[Severity, object] = {
    "fault": QT_TRANSLATE_NOOP("Tables", "fault"),
    "caution": QT_TRANSLATE_NOOP("Tables", "caution"),
    "note": QT_TRANSLATE_NOOP("Tables", "note"),
}
COUNTED: dict[Severity, object] = {
    "fault": QT_TRANSLATE_NOOP("Tables", "Faults"),
    "caution": QT_TRANSLATE_NOOP("Tables", "Cautions"),
    "note": QT_TRANSLATE_NOOP("Tables", "Notes"),
}


def check_rows(session: Session) -> tuple[Row, ...]:
    """Return the findings of the whole farm, faults first."""
    return tuple(_row(finding, n, session) for n, finding in enumerate(session.plan.findings))


def _row(finding: Finding, number: int, session: Session) -> Row:
    units = session.units
    whole = QCoreApplication.translate("Tables", "whole farm")
    severity = QCoreApplication.translate("Tables", str(SEVERITIES[finding.severity]))
    source = QCoreApplication.translate("Tables", "Source: {source}").format(source=finding.source)
    return Row(
        key=("check", finding.code, finding.tunnel, finding.where, number),
        cells=(
            Cell(severity, tip=source),
            Cell(finding.tunnel or whole),
            Cell(words(finding.what, units)),
            Cell(words(finding.why, units)),
            Cell(words(finding.mend, units)),
        ),
        marks=(finding.where,) if finding.where else (),
        sign=finding.severity,
    )


def count_severity(session: Session, severity: Severity) -> int:
    """Return how many findings of a severity are open."""
    return sum(1 for finding in session.plan.findings if finding.severity == severity)


def check_totals(session: Session) -> tuple[Total, ...]:
    """Return how many findings of each severity are open."""
    return tuple(
        Total(QCoreApplication.translate("Tables", str(label)), str(count_severity(session, which)))
        for which, label in COUNTED.items()
    )


class ChecksTab(Tab):
    """The findings; Enter or the button mends what can be mended by itself."""

    def __init__(self, session: Session, title: str) -> None:
        """Make the list of findings."""
        super().__init__(session, title, COLUMNS, check_rows, check_totals)
        self.view.setWordWrap(True)
        self.view.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        self.mend_button = self.add_act(
            QCoreApplication.translate("Tables", "Mend this"), self.mend_chosen
        )
        self.view.row_entered.connect(lambda _row: self.mend_chosen())
        self.view.selectionModel().selectionChanged.connect(self.on_selection_changed)

    def refresh(self) -> None:
        """Show the findings as they are now."""
        super().refresh()
        self.on_selection_changed()

    def on_selection_changed(self) -> None:
        """Offer the mend where there is one."""
        finding = self.chosen_finding()
        self.mend_button.setEnabled(finding is not None and finding.mended is not None)

    def chosen_finding(self) -> Finding | None:
        """Return the finding of the row that is chosen, as the plan has it now."""
        rows = self.view.chosen_rows()
        if not rows:
            return None
        return next((f for f in self.session.plan.findings if _is_of(rows[0], f)), None)

    def mend_chosen(self) -> None:
        """Mend the chosen finding, as one undo step."""
        session, finding = self.session, self.chosen_finding()
        if finding is None or not isinstance(finding.mended, Tunnel):
            return
        names = [tunnel.name for tunnel in session.farm.tunnels]
        text = QCoreApplication.translate("Tables", "Mend: {mend}")
        farm = with_tunnel(session.farm, names.index(finding.tunnel), finding.mended)
        session.apply(farm, text.format(mend=words(finding.mend, session.units)))


def _is_of(row: Row, finding: Finding) -> bool:
    return row.key[1:4] == (finding.code, finding.tunnel, finding.where)
