"""Wind and warmth that the airing of a tunnel and the pull on its wind rope are looked at with."""

from typing import Annotated, Literal

from hoopwright.farm.entered import Entered, choice, measure

Exposure = Literal["B", "C", "D"]
WindSide = Literal["square_on", "diagonal"]


class Weather(Entered, frozen=True):
    """A day on which the tunnel is aired, and a storm.

    Attributes:
        wind_m_s: Wind on the day, m/s.
        wind_from: Whether it meets the open side square on or slantwise.
        outside_k: Air outside on the day, K.
        inside_k: Air inside on the day, K.
        storm_m_s: Three-second gust that the rope is looked at with, m/s.
        exposure: Ground around, as wind standards name it: B houses and trees, C open land,
            D along open water.
        rope_share: Share of the wind's pull on the curtain that the rope carries.
        rope_bow_m: How far a leg of the rope bows out under load, m.
    """

    wind_m_s: Annotated[float, measure("wind while airing", "m/s", 0.0, 30.0)] = 1.0
    wind_from: Annotated[WindSide, choice("wind meets the side")] = "diagonal"
    outside_k: Annotated[float, measure("air outside", "K", 223.15, 333.15)] = 298.15
    inside_k: Annotated[float, measure("air inside", "K", 223.15, 353.15)] = 308.15
    storm_m_s: Annotated[float, measure("gust in a storm", "m/s", 0.0, 100.0)] = 40.0
    exposure: Annotated[Exposure, choice("ground around")] = "C"
    rope_share: Annotated[float, measure("pull taken by the rope", "share", 0.0, 1.0)] = 0.5
    rope_bow_m: Annotated[float, measure("rope bows out", "m", 0.005, 1.0)] = 0.1
