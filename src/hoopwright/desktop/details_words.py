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
    "drop_down": QT_TRANSLATE_NOOP("Choice", "drop-down curtains"),
    "woven": QT_TRANSLATE_NOOP("Choice", "woven curtains"),
    "front": QT_TRANSLATE_NOOP("Choice", "front end"),
    "back": QT_TRANSLATE_NOOP("Choice", "back end"),
    "middle": QT_TRANSLATE_NOOP("Choice", "middle"),
    "lap": QT_TRANSLATE_NOOP("Choice", "a lap on the bow"),
    "strip": QT_TRANSLATE_NOOP("Choice", "a fixed film strip"),
    "into": QT_TRANSLATE_NOOP("Choice", "inside; rain runs off over it"),
    "out": QT_TRANSLATE_NOOP("Choice", "outside; rain gathers in it"),
    "zigzag": QT_TRANSLATE_NOOP("Choice", "rope in a zigzag"),
    "straps": QT_TRANSLATE_NOOP("Choice", "straight straps"),
    "hat_purlin": QT_TRANSLATE_NOOP("Choice", "hat purlin"),
    "seal_profile": QT_TRANSLATE_NOOP("Choice", "seal profile"),
    "skirt": QT_TRANSLATE_NOOP("Choice", "film skirt"),
    "own_channel": QT_TRANSLATE_NOOP("Choice", "a channel of its own"),
    "shared_channel": QT_TRANSLATE_NOOP("Choice", "the roof's channel"),
    "swage": QT_TRANSLATE_NOOP("Choice", "swaged ends"),
    "splice": QT_TRANSLATE_NOOP("Choice", "inserted splices"),
    "screw": QT_TRANSLATE_NOOP("Choice", "screws"),
    "bolt": QT_TRANSLATE_NOOP("Choice", "bolts"),
    "square_on": QT_TRANSLATE_NOOP("Choice", "square on"),
    "diagonal": QT_TRANSLATE_NOOP("Choice", "slantwise"),
    "B": QT_TRANSLATE_NOOP("Choice", "B: houses and trees"),
    "C": QT_TRANSLATE_NOOP("Choice", "C: open land"),
    "D": QT_TRANSLATE_NOOP("Choice", "D: along open water"),
    "hand force": QT_TRANSLATE_NOOP("Choice", "hand force"),
    "trailing": QT_TRANSLATE_NOOP("Choice", "trailing"),
    "maker of the bar": QT_TRANSLATE_NOOP("Choice", "maker of the bar"),
    "maker of the drive": QT_TRANSLATE_NOOP("Choice", "maker of the drive"),
    "imperial": QT_TRANSLATE_NOOP("Choice", "feet and inches"),
    "metric": QT_TRANSLATE_NOOP("Choice", "metres"),
    "none": QT_TRANSLATE_NOOP("Choice", "none"),
    None: QT_TRANSLATE_NOOP("Choice", "none"),
}


def choice_words(value: object) -> str:
    """Return the words for a choice of the model."""
    return QCoreApplication.translate("Choice", str(WORDS.get(value, value)))
