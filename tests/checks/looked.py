"""Farms looked at for findings of one code, and mends taken one after the other."""

from hoopwright.farm import (
    Farm,
    GearedCrank,
    LineDrum,
    RoundTube,
    Side,
    Tunnel,
)
from hoopwright.plan import plan
from hoopwright.quantity.finding import Finding
from hoopwright.quantity.working import words
from samples import INSIDE, side, small_farm, tunnel


def found(farm: Farm, code: str) -> list[Finding]:
    """Return the findings of that code."""
    return [f for f in plan(farm).findings if f.code == code]


def assert_told(findings: list[Finding], severity: str) -> None:
    """Fail unless there are findings that say in whole sentences what, why and what to do."""
    assert findings
    for finding in findings:
        assert finding.severity == severity
        assert finding.source
        for text in (finding.what, finding.why, finding.mend):
            for units in ("imperial", "metric"):
                said = words(text, units)  # type: ignore[arg-type]
                assert said.endswith("."), said
                assert "{" not in said


def assert_mended(farm: Farm, code: str) -> None:
    """Fail unless taking the mends one after the other takes every finding away."""
    left = found(farm, code)
    while left:
        mended = left[0].mended
        assert isinstance(mended, Tunnel)
        farm = farm.but(tunnels=(mended,))
        rest = found(farm, code)
        assert len(rest) < len(left), f"{code} stays after its mend"
        left = rest


def rich_farm(made: Tunnel | None = None, **limits: float) -> Farm:
    """Return the small farm with bars, drives and films of every kind in its catalogue.

    The small crank holds by itself, and the limits are wide unless given.
    """
    farm = small_farm()
    bar, crank = farm.catalogue.bars[0], farm.catalogue.drives[0]
    tube = bar.section
    heavy = RoundTube(outside_m=tube.outside_m, wall_m=2 * tube.wall_m)
    geared = GearedCrank(
        key="geared",
        name="geared crank",
        arm_m=0.2,
        ratio=8.0,
        efficiency=0.45,
        mass_kg=5.0,
        part="crank",
        guide_part="crank_pipe",
    )
    drum = LineDrum(
        key="drum", name="drum", arm_m=0.2, ratio=10.0, efficiency=0.4, drum_m=0.05, part="crank"
    )
    catalogue = farm.catalogue.but(
        films=(
            *farm.catalogue.films,
            farm.catalogue.films[0].but(key="woven", name="woven film", woven=True),
        ),
        bars=(
            bar,
            bar.but(key="slit", name="slit bar", slit=True),
            bar.but(key="heavy", name="heavy bar", section=heavy),
            bar.but(key="hem", name="hem bar", grip="hem"),
        ),
        drives=(
            crank.but(holds=True),
            crank.but(key="loose", name="loose crank"),
            geared,
            geared.but(key="doubtful", name="smooth geared crank", efficiency=0.7),
            drum,
            drum.but(key="loose_drum", name="loose drum", holds=False),
        ),
    )
    wide = {"hand_force_n": 500.0, "trailing_m": 2.0}
    return farm.but(
        tunnels=(made or sound_tunnel(),),
        catalogue=catalogue,
        limits=farm.limits.but(**{**wide, **limits}),
    )


def with_panel(name: str = "West side", **changes: object) -> Side:
    """Return a side that winds into the tunnel, its curtain changed."""
    plain = side(name)
    return plain.but(panels=(plain.panels[0].but(**{"winding": "into", **changes}),))


def sound_tunnel(first: Side | None = None, second: Side | None = None) -> Tunnel:
    """Return a tunnel that none of the rules about curtains finds fault with."""
    made = tunnel(sides=(first or with_panel(), second or with_panel("East side")))
    boards = tuple(b.but(stand_off_m=0.1) for b in made.frame.boards)
    return made.but(frame=made.frame.but(boards=boards))


def woven_side(name: str = "West side", film: str = "woven") -> Side:
    """Return a woven side on a hem bar."""
    return with_panel(name, bar="hem").but(kind="woven", film=film)


def drop_side(name: str = "West side", drive: str = "drum") -> Side:
    """Return a drop-down side of the thin film, worked by a drum."""
    return with_panel(name, drive=drive).but(kind="drop_down", film=INSIDE)
