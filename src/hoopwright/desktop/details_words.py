"""Words that the forms show for the choices of the model, and names of fields that have none."""

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication

WORDS: dict[object, object] = {
    "round": QT_TRANSLATE_NOOP("Choice", "round bow"),
    "gothic": QT_TRANSLATE_NOOP("Choice", "gothic bow"),
    "rafters": QT_TRANSLATE_NOOP("Choice", "straight rafters"),
    "one_sheet": QT_TRANSLATE_NOOP("Choice", "one sheet"),
    "roof_and_sides": QT_TRANSLATE_NOOP("Choice", "roof and sides apart"),
    1: QT_TRANSLATE_NOOP("Choice", "one layer"),
    2: QT_TRANSLATE_NOOP("Choice", "two layers"),
    "wood": QT_TRANSLATE_NOOP("Choice", "wood"),
    "metal": QT_TRANSLATE_NOOP("Choice", "metal"),
    "fixed": QT_TRANSLATE_NOOP("Choice", "fixed film"),
    "roll_up": QT_TRANSLATE_NOOP("Choice", "roll-up curtains"),
    "front": QT_TRANSLATE_NOOP("Choice", "front end"),
    "back": QT_TRANSLATE_NOOP("Choice", "back end"),
    "lap": QT_TRANSLATE_NOOP("Choice", "a lap on the bow"),
    "strip": QT_TRANSLATE_NOOP("Choice", "a fixed film strip"),
    "into": QT_TRANSLATE_NOOP("Choice", "into the tunnel side"),
    "out": QT_TRANSLATE_NOOP("Choice", "to the outside"),
    "imperial": QT_TRANSLATE_NOOP("Choice", "feet and inches"),
    "metric": QT_TRANSLATE_NOOP("Choice", "metres"),
    None: QT_TRANSLATE_NOOP("Choice", "none"),
}


def choice_words(value: object) -> str:
    """Return the words for a choice of the model."""
    return QCoreApplication.translate("Choice", str(WORDS.get(value, value)))
