"""Blowers with their curves, and hoses for air."""

from typing import Annotated

from hoopwright.farm.entered import Entered, measure

ROUGHEST = 0.1


class FanPoint(Entered, frozen=True):
    """One point of a blower's curve.

    Attributes:
        flow_m3_s: Air it gives, m3/s.
        pressure_pa: Against this pressure, Pa.
    """

    flow_m3_s: Annotated[float, measure("air", "m3/s", 0.0, 5.0)]
    pressure_pa: Annotated[float, measure("pressure", "Pa", 0.0, 5000.0)]


class Blower(Entered, frozen=True):
    """A fan that keeps two layers apart.

    Attributes:
        key: Name in the file.
        name: Generic name.
        curve: Two points for a straight line or three for a parabola, from no flow on.
        power_w: Electric power, W.
        part: Catalogue key of the blower.
    """

    key: str
    name: str
    curve: tuple[FanPoint, ...]
    power_w: Annotated[float, measure("power of the blower", "W", 1.0, 5000.0)]
    part: str

    def __post_init__(self) -> None:
        """Refuse a curve that is too short or rises."""
        Entered.__post_init__(self)
        if len(self.curve) not in (2, 3):
            raise ValueError("curve: give two points for a straight line or three for a parabola")
        flows = [p.flow_m3_s for p in self.curve]
        pressures = [p.pressure_pa for p in self.curve]
        if flows != sorted(set(flows)) or pressures != sorted(set(pressures), reverse=True):
            raise ValueError(
                "curve: the pressure of a blower must fall while its flow rises; "
                "check the points against its data sheet"
            )
        if len(self.curve) == 3 and not _falls(flows, pressures):
            raise ValueError(
                "curve: the parabola through these points rises somewhere; take the middle point "
                "nearer to the straight line, or give two points"
            )


def _falls(flows: list[float], pressures: list[float]) -> bool:
    """Return whether the parabola through three points falls from the first to the last.

    Source:
        Slopes of a parabola in Newton's form: f01 plus or minus the second difference.
    """
    (q0, q1, q2), (p0, p1, p2) = flows, pressures
    first, second = (p1 - p0) / (q1 - q0), (p2 - p1) / (q2 - q1)
    bend = (second - first) / (q2 - q0)
    return first - bend * (q1 - q0) <= 0 and second + bend * (q2 - q1) <= 0


class Hose(Entered, frozen=True):
    """A hose for air.

    Attributes:
        key: Name in the file.
        name: Generic name.
        bore_m: Inner diameter, m.
        roughness_m: Height of its roughness inside, m.
        part: Catalogue key of the hose.
    """

    key: str
    name: str
    bore_m: Annotated[float, measure("bore of the hose", "m_thin", 0.005, 0.5)]
    roughness_m: Annotated[float, measure("roughness of the hose", "m_thin", 0.0, 0.01)]
    part: str

    def __post_init__(self) -> None:
        """Refuse a roughness that fills the hose."""
        Entered.__post_init__(self)
        if self.roughness_m > ROUGHEST * self.bore_m:
            raise ValueError(
                "roughness_m: the roughness of a hose is a small part of its bore; "
                "enter 0.5 mm when it is not known"
            )
