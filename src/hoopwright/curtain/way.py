"""What a curtain leaves open and free on its way: opening, gutter, pocket film."""

from hoopwright.curtain.hung import HungCurtain


def clear_opening(hung: HungCurtain, moved_m: float, radius_m: float) -> float:
    """Return the clear opening, m2.

    Under a roll it reaches from the shut bar, or from the baseboard where the bar shuts lower, up
    to the lower edge of the roll. Over a drop-down curtain it reaches from the rod to the hip.

    Args:
        hung: The curtain.
        moved_m: How far it has moved since it was shut, m.
        radius_m: Radius of the roll; of a drop-down curtain of its rod, m.

    Source:
        Derived here.
    """
    over_m = 0.0 if hung.drops else max(0.0, hung.covered_m - hung.side_m)
    height_m = max(0.0, moved_m - over_m - radius_m)
    return height_m * max(0.0, hung.span.open_to_m - hung.span.open_from_m)


def gutter_gap(hung: HungCurtain, radius_m: float) -> float | None:
    """Return the gap from the roll of the open curtain up to the gutter, m; None without one.

    Args:
        hung: The curtain.
        radius_m: Radius of the roll, or of the rod, m; its axis stops where the film says.

    Source:
        Derived here: upper edge of the roll against the lower edge of the gutter.
    """
    drop_m = hung.boards.gutter_drop_m
    if drop_m is None:
        return None
    below_m = hung.travel_m if hung.drops else hung.side.stop_m
    return below_m - radius_m - drop_m


def pocket_gap(hung: HungCurtain, radius_m: float) -> float:
    """Return the gap between the roll of the open curtain and pocket film or bows behind it, m.

    A roll outside the film leaves all that the hip board stands off; one inside the film takes
    its diameter of it; a rod on lines hangs in the plane of the film.

    Args:
        hung: The curtain.
        radius_m: Radius of the roll, or of the rod, m.

    Returns:
        Metres; below 0 it rubs.

    Source:
        Derived here.
    """
    if hung.drops:
        return hung.boards.stand_off_m - radius_m
    taken_m = 2 * radius_m if hung.panel.winding == "into" else 0.0
    return hung.boards.stand_off_m - taken_m
