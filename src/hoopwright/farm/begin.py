"""A first tunnel from five answers: shape, span, length, bow spacing, layers.

Everything else starts from common sizes and can be changed at once. The sizes chosen here are
common practice without a published source; what was measured always goes before them.
"""

import math
from typing import Annotated, Literal

from hoopwright.farm.air import Air
from hoopwright.farm.catalogue import Catalogue
from hoopwright.farm.entered import Entered, choice, measure
from hoopwright.farm.entry_error import EntryError
from hoopwright.farm.farm import Farm, Tunnel
from hoopwright.farm.frame import EvenBows, Frame, SideBoards
from hoopwright.farm.profile import GothicBow, Profile, RoundBow, StraightRafters
from hoopwright.farm.side import Panel, Side
from hoopwright.farm.skin import Covering, Door, End, LayerCount, Layers, Skin

Shape = Literal["round", "gothic", "rafters"]
Units = Literal["imperial", "metric"]

LEG_M = {"imperial": 1.524, "metric": 1.5}
BASEBOARD_M = {"imperial": 0.3048, "metric": 0.3}
TUBE_M = {"imperial": 0.0483, "metric": 0.048}
RISE_SHARE = {"round": 0.27, "gothic": 0.36, "rafters": 0.25}
GOTHIC_RADIUS = 1.3
BLOWER = "blower"
DOOR_M = (1.2, 2.0)


class Answers(Entered, frozen=True):
    """The five answers, and a name.

    Attributes:
        name: What the tunnel is called.
        shape: Round bow, gothic bow or straight rafters.
        span_m: Between tube centres at the ground, m.
        length_m: First to last bow, m.
        spacing_m: From bow to bow, m.
        layers: Layers of the roof.
        covering: One sheet, or roof and sides apart.
        leg_height_m: Straight leg, m; None takes a common one.
        peak_height_m: Ridge, m; None takes a common one for the shape.
        hip_height_m: Hip board, m; None puts it at the top of the leg.
    """

    name: str
    shape: Annotated[Shape, choice("shape of the bows")]
    span_m: Annotated[float, measure("span", "m", 1.0, 60.0)]
    length_m: Annotated[float, measure("length, first to last bow", "m", 0.4, 1000.0)]
    spacing_m: Annotated[float, measure("bow spacing", "m", 0.2, 10.0)]
    layers: Annotated[LayerCount, choice("layers of the roof")] = 1
    covering: Annotated[Covering, choice("covering")] = "roof_and_sides"
    leg_height_m: Annotated[float, measure("leg height", "m", 0.0, 15.0)] | None = None
    peak_height_m: Annotated[float, measure("peak height", "m", 0.5, 30.0)] | None = None
    hip_height_m: Annotated[float, measure("hip board height", "m", 0.1, 20.0)] | None = None

    def __post_init__(self) -> None:
        """Refuse a spacing that is longer than the tunnel."""
        Entered.__post_init__(self)
        if self.spacing_m > self.length_m:
            raise EntryError(
                "spacing_m",
                "a bow spacing of {spacing} is longer than the tunnel of {length}; enter the "
                "spacing from bow to bow",
                spacing=(self.spacing_m, "m"),
                length=(self.length_m, "m"),
            )


def begin_farm(name: str, units: Units, catalogue: Catalogue, answers: Answers) -> Farm:
    """Return a farm with one tunnel made from the answers."""
    return Farm(
        name=name,
        units=units,
        note="",
        tunnels=(begin_tunnel(catalogue, units, answers),),
        catalogue=catalogue,
    )


def begin_tunnel(catalogue: Catalogue, units: Units, answers: Answers) -> Tunnel:
    """Return a tunnel made from the answers.

    Raises:
        ValueError: The answers do not make a tunnel that can stand; the field is named.
    """
    frame = _frame(units, answers)
    outer = catalogue.films[0].key
    inner = catalogue.films[min(1, len(catalogue.films) - 1)].key
    single = Layers(count=1, outer=outer, inner=inner)
    roof = single.but(count=answers.layers)
    has_blower = any(b.key == BLOWER for b in catalogue.blowers)
    doors = (Door(width_m=DOOR_M[0], height_m=DOOR_M[1]),)
    tall = frame.profile.peak_height_m > DOOR_M[1] + 0.3
    return Tunnel(
        name=answers.name,
        frame=frame,
        skin=Skin(covering=answers.covering, roof=roof, sides=single, pockets=single),
        sides=(_side("West side", catalogue, frame), _side("East side", catalogue, frame)),
        ends=(
            End(name="Front end", film=single, doors=doors if tall else ()),
            End(name="Back end", film=single, doors=doors if tall else ()),
        ),
        air=Air(blower=BLOWER if answers.layers == 2 and has_blower else None),
    )


def _frame(units: Units, answers: Answers) -> Frame:
    leg_m = LEG_M[units] if answers.leg_height_m is None else answers.leg_height_m
    rise_m = RISE_SHARE[answers.shape] * answers.span_m
    peak_m = leg_m + rise_m if answers.peak_height_m is None else answers.peak_height_m
    base_m = BASEBOARD_M[units]
    hip_m = max(leg_m, base_m + 0.3) if answers.hip_height_m is None else answers.hip_height_m
    boards = SideBoards(hip_height_m=hip_m, baseboard_height_m=base_m)
    bays = max(1, round(answers.length_m / answers.spacing_m))
    return Frame(
        profile=profile_of_shape(answers.shape, answers.span_m, leg_m, peak_m),
        tube_diameter_m=TUBE_M[units],
        length_m=answers.length_m,
        bows=EvenBows(count=bays + 1, spacing_m=answers.spacing_m),
        boards=(boards, boards),
    )


def profile_of_shape(shape: Shape, span_m: float, leg_m: float, peak_m: float) -> Profile:
    """Return a profile of a shape with its common bends; gothic arcs get a radius that fits.

    Args:
        shape: Round bow, gothic bow or straight rafters.
        span_m: Between tube centres at the ground, m.
        leg_m: Straight leg, m.
        peak_m: Ridge, m.

    Raises:
        ValueError: No such bow can stand; the field is named.
    """
    if shape == "round":
        return RoundBow(span_m=span_m, leg_height_m=leg_m, peak_height_m=peak_m)
    if shape == "rafters":
        return StraightRafters(span_m=span_m, leg_height_m=leg_m, peak_height_m=peak_m)
    rise_m = peak_m - leg_m
    if rise_m >= span_m / 2 or rise_m <= 0:
        return GothicBow(span_m=span_m, leg_height_m=leg_m, peak_height_m=peak_m)
    dip_m = ((span_m / 2) ** 2 + rise_m**2) / (2 * rise_m)
    radius_m = math.ceil(GOTHIC_RADIUS * dip_m * 100) / 100
    return GothicBow(span_m=span_m, leg_height_m=leg_m, peak_height_m=peak_m, arc_radius_m=radius_m)


def _side(name: str, catalogue: Catalogue, frame: Frame) -> Side:
    panel = Panel(crank_end="front", bar=catalogue.bars[0].key, drive=catalogue.drives[0].key)
    bows = frame.bows
    pockets = (1, 1) if isinstance(bows, EvenBows) and bows.count > 3 else (0, 0)
    return Side(
        name=name,
        kind="roll_up",
        shut_height_m=max(0.0, frame.boards[0].baseboard_height_m - 0.05),
        pocket_bays=pockets,
        splits=(),
        panels=(panel,),
    )
