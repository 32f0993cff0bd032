"""Whatever was read and entered of a standing frame, it is planned, or refused in words."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from files.varied import varied_catalogue
from hoopwright.farm import (
    AcrossUp,
    BowReading,
    Cut,
    Door,
    EvenBows,
    Farm,
    MeasuredBow,
    PartState,
    Rain,
    RigidSheet,
    Screen,
    Shade,
    SideReading,
    Tape,
    Tunnel,
)
from hoopwright.farm.change import move_hip, with_tunnel
from hoopwright.farm.profile import Profile
from hoopwright.papers.plan_text import plan_to_text
from hoopwright.plan import plan
from hoopwright.quantity.finding import Finding
from samples import round_profile, small_farm, tunnel

BOWS = 9


def maybe(low: float, high: float) -> st.SearchStrategy[float | None]:
    return st.none() | st.floats(low, high)


SIDES = st.builds(
    SideReading, hip_m=maybe(1.3, 1.8), baseboard_m=maybe(0.1, 0.6), ground_m=maybe(-0.4, 0.6)
)


@st.composite
def profiles(draw: st.DrawFn) -> Profile:
    """Draw the round bow, or one measured by points that is not the same on both sides."""
    if draw(st.booleans()):
        return round_profile()
    off = st.floats(-0.05, 0.05)
    spots = ((0.05, 1.3), (0.6, 2.4), (1.9, 3.3), (3.6, 3.7), (5.2, 3.4), (7.2, 2.3), (7.9, 1.2))
    points = [AcrossUp(across_m=x + draw(off), up_m=y + draw(off)) for x, y in spots]
    join = draw(st.sampled_from(["curve", "corners"]))
    return MeasuredBow(span_m=8.0, points=tuple(points), join=join)  # type: ignore[arg-type]


def screens() -> st.SearchStrategy[Screen | None]:
    found = st.builds(
        Screen,
        part=st.just("screen"),
        hole_m=st.floats(1e-4, 1e-3),
        flow_share=st.sampled_from([0.3, 1.0]),
    )
    return st.none() | found


SHADES = st.none() | st.builds(
    Shade,
    part=st.just("cloth"),
    over=st.sampled_from(["roof", "roof_and_sides"]),
    from_bow=st.sampled_from([None, 2]),
    to_bow=st.sampled_from([None, 4, BOWS]),
)
RIGID = st.builds(
    RigidSheet,
    part=st.just("rigid"),
    cover_width_m=st.floats(0.5, 2.5),
    sheet_height_m=st.floats(0.8, 6.0),
    lap_m=st.floats(0.0, 0.3),
)
LEVELS = st.lists(st.floats(0.3, 5.0), max_size=2, unique=True).map(lambda ys: tuple(sorted(ys)))


@st.composite
def standing_tunnels(draw: st.DrawFn) -> Tunnel:
    """Draw tunnels of nine bows with whatever is read, measured, entered and added of them."""
    bows = sorted(draw(st.sets(st.integers(1, BOWS), max_size=5)))
    rows = [
        BowReading(
            bow=bow,
            over_hips_m=draw(maybe(9.8, 10.6)),
            over_baseboards_m=draw(maybe(11.9, 13.2)),
            dip_m=draw(maybe(-0.1, 0.2)),
            sides=(draw(SIDES), draw(SIDES)),
        )
        for bow in bows
    ]
    pairs = st.tuples(maybe(11.5, 12.6), maybe(11.5, 12.6))
    tape = Tape(
        bows=tuple(row for row in rows if not row.is_empty),
        hip_lengths_m=draw(pairs),
        base_lengths_m=draw(pairs),
        diagonals_m=draw(st.tuples(maybe(14.0, 15.0), maybe(14.0, 15.0))),
        leans_m=draw(st.tuples(maybe(-0.2, 0.2), maybe(-0.2, 0.2))),
    )
    made = tunnel(draw(profiles()))
    frame = made.frame.but(
        bows=EvenBows(count=BOWS, spacing_m=1.5),
        length_m=draw(st.sampled_from([12.0, 10.5, 13.5])),
        tape=tape,
    )
    cuts = draw(
        st.lists(st.builds(Cut, left_m=st.floats(-4, 4), sill_m=st.floats(0, 4)), max_size=2)
    )
    doors = draw(
        st.lists(st.builds(Door, width_m=st.floats(0.5, 5), height_m=st.floats(1, 4)), max_size=2)
    )
    front = made.ends[0].but(cuts=tuple(cuts), doors=tuple(doors))
    if draw(st.booleans()):
        front = front.but(film=None, rigid=draw(RIGID))
    else:
        front = front.but(rails_m=draw(LEVELS), seams_m=draw(LEVELS))
    first, second = made.sides
    sides = (first.but(screen=draw(screens())), second.but(screen=draw(screens())))
    families = ("Film", "Curtains", "Shade and screen")
    condition = draw(
        st.lists(
            st.builds(
                PartState,
                family=st.sampled_from(families),
                where=st.sampled_from(["everywhere", "roof", "first_side", "front_end"]),
                to_bow=st.sampled_from([None, 4, BOWS]),
                state=st.sampled_from(["keep", "repair", "replace"]),
            ),
            max_size=3,
        )
    )
    return made.but(
        frame=frame,
        ends=(front, made.ends[1]),
        condition=tuple(condition),
        sides=sides,
        rain=draw(st.sampled_from([None, Rain()])),
        shade=draw(SHADES),
    )


def farm_of(made: Tunnel) -> Farm:
    return small_farm().but(tunnels=(made,), catalogue=varied_catalogue())


@given(standing_tunnels())
@settings(max_examples=60, deadline=None)
def test_any_standing_frame_is_planned_and_every_mend_stands(made: Tunnel) -> None:
    farm = farm_of(made)
    planned = plan(farm)
    assert plan_to_text(farm, planned)
    for finding in planned.findings:
        if finding.mended is not None:
            again = plan(with_tunnel(farm, 0, finding.mended))
            # Of two seams above the ridge the second takes the mark of the first.
            codes = [f.code for f in again.findings if _same_place(f, finding)]
            before = [f.code for f in planned.findings if _same_place(f, finding)]
            assert codes.count(finding.code) < before.count(finding.code), finding.code


def _same_place(one: Finding, other: Finding) -> bool:
    if other.code == "end.seam_above_ridge":
        return one.where.partition("/seam")[0] == other.where.partition("/seam")[0]
    return one.where == other.where


@given(standing_tunnels(), st.floats(0.9, 2.4))
@settings(max_examples=40, deadline=None)
def test_a_hip_board_can_be_moved_over_any_readings_or_is_refused(
    made: Tunnel, height_m: float
) -> None:
    try:
        moved = move_hip(made, (0, 1), height_m)
    except ValueError as refusal:
        refused = str(refusal)
    else:
        refused = ""
        assert plan(farm_of(moved)).tunnels[0].survey.roof_girth_m > 0
    assert not refused or "over_hips_m" in refused


@given(standing_tunnels())
@settings(max_examples=40, deadline=None)
def test_the_longest_girth_read_governs_the_sheet(made: Tunnel) -> None:
    survey = plan(farm_of(made)).tunnels[0].survey
    rows = made.frame.tape.bows
    read_m = [r.over_hips_m for r in rows if r.over_hips_m is not None]
    first, second = survey.along
    left_m = [
        r.over_baseboards_m - first.sides_m[r.bow - 1] - second.sides_m[r.bow - 1]
        for r in rows
        if r.over_hips_m is None and r.over_baseboards_m is not None
    ]
    if read_m or left_m:
        assert survey.roof_girth_m == pytest.approx(max([*read_m, *left_m]))
    if read_m:
        assert survey.taped.hips is not None
        assert survey.taped.hips.governing_m == max(read_m)
    else:
        assert survey.taped.hips is None
