"""What of the old skin stays: for each family of parts, by place, keep, repair or replace."""

from typing import Annotated, Literal

from hoopwright.farm.entered import Entered, choice, measure

State = Literal["keep", "repair", "replace"]
Where = Literal["everywhere", "roof", "first_side", "second_side", "front_end", "back_end"]

FILM = "Film"
"""Family of all film; every other family is a group of the catalogue's parts."""


class PartState(Entered, frozen=True):
    """How one family of parts was found at one place.

    Where two lines speak of the same parts, the later one holds.

    Attributes:
        family: Film, or a group of the catalogue's parts.
        where: Part of the tunnel.
        from_bow: First bow of it, or None from the front end.
        to_bow: Last bow of it, or None to the back end.
        state: Keep as it is; repair and replace a share of it; replace all of it.
        replace_share: Share to replace where it is repaired.
    """

    family: Annotated[str, choice("parts")]
    where: Annotated[Where, choice("where")] = "everywhere"
    from_bow: Annotated[int, measure("from bow", "count", 1, 1000)] | None = None
    to_bow: Annotated[int, measure("to bow", "count", 1, 1000)] | None = None
    state: Annotated[State, choice("state")] = "replace"
    replace_share: Annotated[float, measure("share to replace", "share", 0.0, 1.0)] = 0.25

    def __post_init__(self) -> None:
        """Refuse a stretch that runs backwards or has no bay."""
        Entered.__post_init__(self)
        if not self.family.strip():
            raise ValueError("family: say which parts were looked at")
        first, last = self.from_bow, self.to_bow
        if first is not None and last is not None and last <= first:
            raise ValueError("to_bow: the last bow must come after the first")
