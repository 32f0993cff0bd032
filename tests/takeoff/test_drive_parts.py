"""What drives take. The small tunnel has one curtain on each side; figures of the drives that the
working of the curtains yields are put in by hand."""

from dataclasses import replace

import pytest

from hoopwright.farm import Side, Tunnel
from hoopwright.takeoff.curtain_parts import count_curtains
from hoopwright.takeoff.drive_parts import guide_share
from hoopwright.takeoff.need import Need
from hoopwright.takeoff.site import Site
from samples import drop_side, side, tunnel, woven_side
from takeoff.counted import count, site, total, whole_catalogue

PANEL = "side/0/panel/0"


def with_panel(plain: Side, **changes: object) -> Tunnel:
    return tunnel(sides=(plain.but(panels=(plain.panels[0].but(**changes),)), side("East side")))


def worked(made: Site, **figures: object) -> tuple[Need, ...]:
    """Return the needs of the first curtain with figures of its working put in."""
    return tuple(count_curtains(replace(made, curtains=(replace(made.curtains[0], **figures),))))


def keys(needs: tuple[Need, ...]) -> set[str]:
    return {n.part for n in needs}


def test_hand_crank_comes_with_extension_joint_and_lock() -> None:
    needs = count(tunnel())
    for key in ("crank", "crank_pipe", "joint", "crank_lock"):
        assert total(needs, key, PANEL) == 1
    assert total(needs, "guide_bracket") == total(needs, "pulley") == 0


def test_drive_that_holds_by_itself_takes_no_lock() -> None:
    holding = whole_catalogue()
    crank = holding.drive("crank").but(holds=True)
    others = tuple(d for d in holding.drives if d.key != "crank")
    assert total(count(tunnel(), catalogue=holding.but(drives=(crank, *others))), "crank_lock") == 0


@pytest.mark.parametrize("one_side", [side(), woven_side()], ids=["roll_up", "woven"])
def test_geared_crank_climbs_on_a_guide_pipe(one_side: Side) -> None:
    # Sticks of 21 ft = 6.4008 m give two pipes of 2.5 m: half a stick for this one.
    made = site(with_panel(one_side, bar="hem_1375_058", drive="geared_8"))
    needs = worked(made, guide_m=2.5)
    assert total(needs, "crank_geared_8") == 1
    assert total(needs, "guide_pipe") == pytest.approx(6.4008 / 2)
    assert total(needs, "guide_bracket") == 2
    assert not keys(needs) & {"crank_pipe", "joint", "crank_extension", "crank_lock"}


def test_guide_pipe_bought_by_the_piece_is_one_piece() -> None:
    plain = whole_catalogue()
    parts = tuple(
        p.but(counted_in="count", holds=1.0) if p.key == "guide_pipe" else p for p in plain.parts
    )
    made = site(with_panel(side(), drive="geared_13"), catalogue=plain.but(parts=parts))
    assert total(worked(made, guide_m=2.5), "guide_pipe") == 1


@pytest.mark.parametrize(
    ("guide_m", "share_m"),
    [
        (2.0, 2.0),  # three out of a stick of 6 m, nothing left
        (2.1, 3.0),  # two, and 1.8 m that serve no pipe
        (3.1, 6.0),  # one
        (6.0, 6.0),
        (6.5, 12.0),  # two sticks joined
    ],
)
def test_guide_pipes_are_cut_whole_from_their_sticks(guide_m: float, share_m: float) -> None:
    assert guide_share(guide_m, 6.0) == pytest.approx(share_m)


def test_drum_takes_lines_pulleys_and_a_clamp_for_each_line() -> None:
    made = site(with_panel(drop_side(), drive="drum_direct"))
    needs = worked(made, lift_lines=16, lift_line_m=71.5, pulleys=17)
    assert total(needs, "line_drum") == 1
    assert total(needs, "lift_line") == 71.5
    assert total(needs, "pulley") == 17
    assert total(needs, "line_clamp") == 16
    assert total(needs, "crank_lock") == 1
    assert not keys(needs) & {"crank_pipe", "joint", "guide_pipe", "guide_bracket"}


def test_geared_drum_holds_the_rod_without_a_lock() -> None:
    needs = count(with_panel(drop_side(), drive="drum_geared_10"))
    assert total(needs, "line_drum_geared", PANEL) == 1
    assert total(needs, "crank_lock", PANEL) == 0
    assert total(needs, "crank_lock", "side/1/panel/0") == 1
    # A line at each of the bows over the opening and at both ends of the curtain, at the least.
    assert total(needs, "line_clamp", PANEL) >= 15
    assert total(needs, "pulley", PANEL) >= total(needs, "line_clamp", PANEL)
