"""Straights and arcs, the two things a bow is bent from.

Axes: x across from the centre line, y up from the ground line. A chain of segments runs from the
left base over the ridge to the right base, so every arc turns clockwise and the outside of the
tube lies on the left hand. Angles are in radians, anticlockwise from the x axis.
"""

import math

from msgspec import Struct


class Straight(Struct, frozen=True):
    """A straight run.

    Attributes:
        x0_m: Start across, m.
        y0_m: Start height, m.
        x1_m: End across, m.
        y1_m: End height, m.
    """

    x0_m: float
    y0_m: float
    x1_m: float
    y1_m: float

    @property
    def length_m(self) -> float:
        """Return the length, m."""
        return math.hypot(self.x1_m - self.x0_m, self.y1_m - self.y0_m)

    @property
    def start_heading_rad(self) -> float:
        """Return the direction of travel, rad."""
        return math.atan2(self.y1_m - self.y0_m, self.x1_m - self.x0_m)

    @property
    def end_heading_rad(self) -> float:
        """Return the direction of travel, rad."""
        return self.start_heading_rad

    @property
    def area_m2(self) -> float:
        """Return the area between the run and the ground line, m2, signed by the way it runs."""
        return (self.x1_m - self.x0_m) * (self.y0_m + self.y1_m) / 2

    @property
    def reach_m(self) -> tuple[float, float]:
        """Return how far it lies to the left and to the right, m from the centre line, signed."""
        return min(self.x0_m, self.x1_m), max(self.x0_m, self.x1_m)

    def point_at(self, along_m: float) -> tuple[float, float]:
        """Return the point some way along the run, m."""
        share = along_m / self.length_m
        return (
            self.x0_m + share * (self.x1_m - self.x0_m),
            self.y0_m + share * (self.y1_m - self.y0_m),
        )

    def along_to(self, height_m: float) -> float:
        """Return how far along a rising run a height is reached, m.

        Source:
            Similar triangles.
        """
        return self.length_m * (height_m - self.y0_m) / (self.y1_m - self.y0_m)

    def shifted(self, outward_m: float) -> "Straight":
        """Return the run moved outward, m."""
        length_m = self.length_m
        dx_m = -(self.y1_m - self.y0_m) / length_m * outward_m
        dy_m = (self.x1_m - self.x0_m) / length_m * outward_m
        return Straight(self.x0_m + dx_m, self.y0_m + dy_m, self.x1_m + dx_m, self.y1_m + dy_m)

    def grounded(self) -> "Straight":
        """Return a rising run lengthened or cut so that it starts on the ground line."""
        slope = (self.x1_m - self.x0_m) / (self.y1_m - self.y0_m)
        return Straight(self.x0_m - slope * self.y0_m, 0.0, self.x1_m, self.y1_m)

    def mirrored(self) -> "Straight":
        """Return the same run on the other side of the centre line, run the other way."""
        return Straight(-self.x1_m, self.y1_m, -self.x0_m, self.y0_m)


class Arc(Struct, frozen=True):
    """A circle arc, run clockwise.

    Attributes:
        centre_x_m: Centre across, m.
        centre_y_m: Centre height, m.
        radius_m: Radius, m.
        start_rad: Angle of the start seen from the centre, rad.
        turn_rad: How far it turns, rad, above zero.
    """

    centre_x_m: float
    centre_y_m: float
    radius_m: float
    start_rad: float
    turn_rad: float

    @property
    def length_m(self) -> float:
        """Return the length, m."""
        return self.radius_m * self.turn_rad

    @property
    def start_heading_rad(self) -> float:
        """Return the direction of travel at the start, rad."""
        return self.start_rad - math.pi / 2

    @property
    def end_heading_rad(self) -> float:
        """Return the direction of travel at the end, rad."""
        return self.start_heading_rad - self.turn_rad

    @property
    def area_m2(self) -> float:
        """Return the area between the arc and the ground line, m2, signed by the way it runs.

        Source:
            Derived here: the integral of y dx with x = xc + r cos a and y = yc + r sin a.
        """
        end_rad = self.start_rad - self.turn_rad
        across_m = self.radius_m * (math.cos(end_rad) - math.cos(self.start_rad))
        waves = (math.sin(2 * self.start_rad) - math.sin(2 * end_rad)) / 2
        return self.centre_y_m * across_m + self.radius_m**2 / 2 * (self.turn_rad - waves)

    @property
    def reach_m(self) -> tuple[float, float]:
        """Return how far it lies to the left and to the right, m from the centre line, signed."""
        end_rad = self.start_rad - self.turn_rad
        widest = (a for a in (math.pi, 0.0) if self.start_rad >= a >= end_rad)
        across = [self._point(a)[0] for a in (self.start_rad, end_rad, *widest)]
        return min(across), max(across)

    def point_at(self, along_m: float) -> tuple[float, float]:
        """Return the point some way along the arc, m."""
        return self._point(self.start_rad - along_m / self.radius_m)

    def along_to(self, height_m: float) -> float:
        """Return how far along a rising arc, left of its centre, a height is reached, m.

        Source:
            Circle geometry: y = yc + r sin a, with a in the left half.
        """
        rise = (height_m - self.centre_y_m) / self.radius_m
        angle_rad = math.pi - math.asin(max(-1.0, min(1.0, rise)))
        return self.radius_m * (self.start_rad - angle_rad)

    def shifted(self, outward_m: float) -> "Arc":
        """Return the arc with its radius grown outward, m."""
        return Arc(
            self.centre_x_m,
            self.centre_y_m,
            self.radius_m + outward_m,
            self.start_rad,
            self.turn_rad,
        )

    def starting_at(self, angle_rad: float) -> "Arc":
        """Return the arc with another start and the same end."""
        turn_rad = self.turn_rad + angle_rad - self.start_rad
        return Arc(self.centre_x_m, self.centre_y_m, self.radius_m, angle_rad, turn_rad)

    def grounded(self) -> "Arc":
        """Return a rising arc lengthened or cut so that it starts on the ground line."""
        drop = max(-1.0, min(1.0, self.centre_y_m / self.radius_m))
        return self.starting_at(math.pi + math.asin(drop))

    def mirrored(self) -> "Arc":
        """Return the same arc on the other side of the centre line, run clockwise again."""
        start_rad = math.pi - (self.start_rad - self.turn_rad)
        return Arc(-self.centre_x_m, self.centre_y_m, self.radius_m, start_rad, self.turn_rad)

    def _point(self, angle_rad: float) -> tuple[float, float]:
        return (
            self.centre_x_m + self.radius_m * math.cos(angle_rad),
            self.centre_y_m + self.radius_m * math.sin(angle_rad),
        )


Segment = Straight | Arc
