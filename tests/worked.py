"""The curtains of the small tunnel as worked, for the tests of what stands on them."""

from hoopwright.curtain import CurtainWork, work_curtains
from hoopwright.farm import Limits, LineDrum, Side, Weather
from hoopwright.survey import survey_frame
from laying import laid
from samples import side, small_catalogue, tunnel

SURVEY = survey_frame(tunnel().frame)
PAIR = (side("West side"), side("East side"))
SHUT = side("East side", kind="fixed")
DRUM = LineDrum(key="drum", name="drum", arm_m=0.2, ratio=1, efficiency=0.8, drum_m=0.05, part="x")


def dropping(name: str = "East side") -> Side:
    """Return a drop-down side worked by a drum."""
    plain = side(name, kind="drop_down", bunch_m=0.2)
    return plain.but(panels=(plain.panels[0].but(drive="drum"),))


def curtains(
    sides: tuple[Side, Side] = PAIR, limits: Limits | None = None
) -> tuple[CurtainWork, ...]:
    """Return how the curtains of the small tunnel with these sides work."""
    made, catalogue = tunnel(sides=sides), small_catalogue()
    return work_curtains(
        made.frame.boards,
        SURVEY,
        sides,
        laid(made),
        catalogue.bars,
        (*catalogue.drives, DRUM),
        catalogue.parts,
        limits or Limits(),
        Weather(),
        made.skin.allowances.bar_wrap_m,
    )
