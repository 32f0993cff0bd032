"""The figures of a curtain's way that can be seen as a curve, their limits, and named places."""

from dataclasses import dataclass

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication

from hoopwright.curtain import CurtainWork
from hoopwright.desktop.session import Session
from hoopwright.farm.drive import HandCrank

STEPS = 40
PLACES: dict[int, object] = {
    0: QT_TRANSLATE_NOOP("Tables", "shut"),
    STEPS // 2: QT_TRANSLATE_NOOP("Tables", "half way"),
    STEPS: QT_TRANSLATE_NOOP("Tables", "open"),
}
"""Names of steps on the way."""


@dataclass(frozen=True, slots=True)
class Curve:
    """One figure of the way as the picture shows it.

    Attributes:
        key: Name of the figures in a course.
        title: What it is, still to be translated.
        unit: Unit code.
        limit: What its limit is called, still to be translated, or None without one.
    """

    key: str
    title: object
    unit: str
    limit: object | None = None


CURVES = (
    Curve(
        "hand_forces_n",
        QT_TRANSLATE_NOOP("Tables", "Hand force"),
        "N",
        QT_TRANSLATE_NOOP("Tables", "hand force limit"),
    ),
    Curve("torques_nm", QT_TRANSLATE_NOOP("Tables", "Torque"), "N m"),
    Curve(
        "trailing_m",
        QT_TRANSLATE_NOOP("Tables", "Trailing"),
        "m_thin",
        QT_TRANSLATE_NOOP("Tables", "trailing limit"),
    ),
    Curve(
        "joint_angles_rad",
        QT_TRANSLATE_NOOP("Tables", "Joint angle"),
        "rad",
        QT_TRANSLATE_NOOP("Tables", "limit of the joint"),
    ),
    Curve("openings_m2", QT_TRANSLATE_NOOP("Tables", "Opening"), "m2"),
)


def limit_of(curve: Curve, work: CurtainWork, session: Session) -> float | None:
    """Return the limit of a figure in its unit, or None where there is none."""
    limits = session.farm.limits
    if curve.key == "hand_forces_n":
        return limits.hand_force_n
    if curve.key == "trailing_m":
        return limits.trailing_m
    panel = session.tunnel.sides[work.side].panels[work.index]
    drive = session.farm.catalogue.drive(panel.drive)
    if curve.key == "joint_angles_rad" and isinstance(drive, HandCrank):
        return drive.joint_limit_rad
    return None


def place_words(step: int) -> str:
    """Return the name of a step on the way, or nothing."""
    return QCoreApplication.translate("Tables", str(PLACES.get(step, "")))
