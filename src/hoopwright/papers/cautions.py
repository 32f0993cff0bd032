"""The cautions that stand beside the work: one list for the window and for every paper.

They are the usual ones of the trade and replace neither local codes nor licensed practice.

Source:
    Ground-fault protection, ladders, power lines, lifting: common practice, no published source
    is quoted. 51 lb: the load constant of the revised lifting equation, NIOSH 94-110 (rev. 2021).
    Boards on organic ground: 7 CFR 205.206(f).
"""

from typing import Literal

from msgspec import Struct

Place = Literal["everywhere", "frame", "strip", "film", "rolls", "curtains", "crank", "air"]


class Caution(Struct, frozen=True):
    """One caution.

    Attributes:
        id: Name that stays for ever.
        title: A few words.
        text: What can happen and what to do.
        places: The parts of the job it applies to; "everywhere" is shown with all of them, and
            those of the crank stand in full wherever figures of a crank are shown.
    """

    id: str
    title: str
    text: str
    places: tuple[Place, ...]


CAUTIONS: tuple[Caution, ...] = (
    Caution(
        "wind",
        "Wind and sheets",
        "A loose sheet is a sail. Set a gust limit before you start, watch a wind meter, and name "
        "one person who calls stop. Never tie a rope to a person or wrap it round a hand.",
        ("film", "strip"),
    ),
    Caution(
        "ladder",
        "Ladders",
        "Firm level footing, about 1 out for 4 up, three points of contact, tied or held. Nobody "
        "stands above the second step from the top, and nobody is on a ladder in wind. Do not "
        "climb the frame.",
        ("film", "strip", "frame"),
    ),
    Caution(
        "power_line",
        "Overhead lines",
        "Look up first. Pipes, ladders and film stay at least 10 ft (3 m) away from power lines, "
        "more at higher voltage; ask the utility.",
        ("film", "frame", "curtains"),
    ),
    Caution(
        "crank",
        "Crank that runs away",
        "A raised bar wants to fall. Keep hold of the handle until the lock is in, stand aside of "
        "it, keep hands out of the roll and people from under it. Never lift a pawl under load. "
        "No power drill on a crank unless its maker allows it.",
        ("curtains", "crank"),
    ),
    Caution(
        "air_off",
        "Air off before rolling",
        "Stop the blower or close the curtain's shut-off and let the curtain go flat first. An "
        "inflated curtain that is rolled up bursts its seals.",
        ("curtains", "crank", "air"),
    ),
    Caution(
        "electricity",
        "Electricity",
        "Blowers and outlets outdoors need ground-fault protection and weatherproof fixed wiring "
        "by a licensed electrician under the local code. A cord is for the day's work only. Unplug "
        "before you touch a fan.",
        ("air",),
    ),
    Caution(
        "sealer",
        "Hot sealer",
        "It burns and it fumes. Wear gloves, let air in, keep the cord clear of water and film, "
        "and let it cool before you leave it.",
        ("air",),
    ),
    Caution(
        "blade",
        "Knives and springs",
        "Cut away from people and on a board; cover the blade when you walk. Spring wire whips: "
        "wear eye protection when it goes in and when it comes out.",
        ("film", "strip"),
    ),
    Caution(
        "lifting",
        "Lifting",
        "Rolls and bars are heavy and long. Use more than one person above the limit you set; "
        "51 lb (23 kg) is only the best case, held close and low. Lift with a plan and do not "
        "twist.",
        ("rolls", "film", "curtains"),
    ),
    Caution(
        "weather",
        "Heat, cold and sun",
        "Work on film is hot and bright: water, shade, rest, and nobody alone. Cold film cracks, "
        "and slippery boards hurt.",
        ("film", "strip"),
    ),
    Caution(
        "frame",
        "Frame and snow",
        "A bent, rusty or leaning frame, a cut brace, a wider door or the load of a gutter are "
        "questions for a qualified engineer. Do not stand under a loaded or moving frame, and do "
        "not pull a frame straight with film.",
        ("frame",),
    ),
    Caution(
        "dust",
        "Dust, treatment, chemicals",
        "Treated wood, old paint, cleaners and residues on old film: gloves and mask. Do not burn "
        "film or treated wood. On organic ground new wood treated with prohibited material must "
        "not touch soil.",
        ("strip", "frame"),
    ),
    Caution(
        "law",
        "Law and limits",
        "Local building, electrical, waste, labour and grant rules and the makers' instructions "
        "come before this plan. Its figures are estimates for planning. It does not design the "
        "frame, does not check snow or wind capacity, and does not replace licensed practice.",
        ("everywhere",),
    ),
    Caution(
        "old_cover",
        "Old cover off",
        "Work from the side away from the wind, cut nothing above a person, keep cut pieces "
        "weighted, and keep children and vehicles out.",
        ("strip",),
    ),
)


def caution_texts(place: Place) -> tuple[Caution, ...]:
    """Return the cautions of one part of the job; those for everywhere are left out."""
    return tuple(c for c in CAUTIONS if place in c.places)
