"""Every check: found where it should be, silent where all is well, mended by its mend."""

import inspect
import re
from collections.abc import Callable
from decimal import Decimal
from pathlib import Path

import pytest

import hoopwright.checks
from hoopwright.checks import (
    air_rules,
    condition_rules,
    curtain_rules,
    drive_rules,
    end_rules,
    fit_rules,
    frame_rules,
    height_rules,
    limit_rules,
    outfit_rules,
    pressure_rules,
    roll_rules,
    side_rules,
    skin_rules,
    tape_rules,
)
from hoopwright.checks.case import Case
from hoopwright.checks.rules import RULES
from hoopwright.farm import (
    Door,
    EvenBows,
    Farm,
    ListedBows,
    PartState,
    RoundBow,
    Split,
    Tunnel,
)
from hoopwright.farm.change import with_tunnel_value
from hoopwright.farm.change_tape import with_bow_value
from hoopwright.plan import plan
from hoopwright.quantity.finding import Finding
from hoopwright.quantity.working import phrase, words
from samples import double_tunnel, layers, side, small_farm, tunnel

FT = 0.3048
MODULES = (
    air_rules,
    condition_rules,
    curtain_rules,
    drive_rules,
    end_rules,
    fit_rules,
    frame_rules,
    height_rules,
    limit_rules,
    outfit_rules,
    pressure_rules,
    roll_rules,
    side_rules,
    skin_rules,
    tape_rules,
)


def found(made: Tunnel, code: str, farm: Farm | None = None) -> list[Finding]:
    whole = (farm or small_farm()).but(tunnels=(made,))
    return [f for f in plan(whole).findings if f.code == code]


def with_sides(**changes: object) -> Tunnel:
    return tunnel(sides=(side("West side", **changes), side("East side")))


def frame_of(bows: EvenBows | ListedBows, length_m: float) -> Tunnel:
    plain = tunnel()
    return plain.but(frame=plain.frame.but(bows=bows, length_m=length_m))


def bays_counted_as_bows() -> Tunnel:
    # 22 bays of 4 ft were meant, and the tape says 84 ft: 22 bows make 21 bays = 84 ft.
    return frame_of(EvenBows(count=23, spacing_m=4 * FT), 84 * FT)


def list_and_tape_differ() -> Tunnel:
    return frame_of(ListedBows(positions_m=(0.0, 2.0, 4.0, 6.0, 8.0)), 9.0)


def door_over_the_ridge() -> Tunnel:
    plain = tunnel()
    end = plain.ends[0].but(doors=(Door(width_m=2.0, height_m=9.0),))
    return plain.but(ends=(end, plain.ends[1]))


def hip_over_the_leg() -> Tunnel:
    return with_tunnel_value(tunnel(), ("frame", "boards", 0, "hip_height_m"), 1.8)


def horseshoe() -> Tunnel:
    return tunnel(RoundBow(span_m=5.0, leg_height_m=1.5, peak_height_m=5.0))


def bar_over_the_board() -> Tunnel:
    return with_sides(shut_height_m=0.5)


def sheet_too_long() -> Tunnel:
    return frame_of(EvenBows(count=41, spacing_m=1.5), 60.0)


def sheet_too_wide() -> Tunnel:
    wide = tunnel(RoundBow(span_m=9.0, leg_height_m=1.5, peak_height_m=3.9))
    return wide.but(skin=wide.skin.but(covering="one_sheet"))


def curtain_too_long() -> Tunnel:
    return frame_of(EvenBows(count=36, spacing_m=1.5), 52.5)


def seam_in_mid_air() -> Tunnel:
    plain = tunnel()
    return plain.but(skin=plain.skin.but(cross_seams_m=(12.4,)))


def one_sheet_with_a_split() -> Tunnel:
    cut = with_sides(splits=(Split(at_m=12.0),))
    return cut.but(skin=cut.skin.but(covering="one_sheet"))


def split_between_bows() -> Tunnel:
    return with_sides(splits=(Split(at_m=12.7),))


def strip_at_the_end() -> Tunnel:
    return with_sides(splits=(Split(at_m=21.0, join="strip"),))


def split_beside_the_pocket() -> Tunnel:
    return with_sides(splits=(Split(at_m=1.7),))


def pocket_under_the_lap() -> Tunnel:
    spots = (0.0, 0.25, *(1.5 * i for i in range(1, 17)))
    return frame_of(ListedBows(positions_m=spots), 24.0)


def no_pocket() -> Tunnel:
    return with_sides(pocket_bays=(0, 1))


def tight_curtain() -> Tunnel:
    return with_sides(slack_m=0.0)


def no_blower() -> Tunnel:
    plain = double_tunnel()
    return plain.but(air=plain.air.but(blower=None))


def flat_roof_inflated_side() -> Tunnel:
    plain = double_tunnel()
    return plain.but(skin=plain.skin.but(roof=layers(1)))


def two_layers_flat() -> Tunnel:
    plain = double_tunnel()
    return plain.but(air=plain.air.but(inflated_sides=(False, True)))


Maker = Callable[[], Tunnel]

MENDED: tuple[tuple[str, str, Maker], ...] = (
    ("frame.bows_not_bays", "fault", bays_counted_as_bows),
    ("frame.length_not_list", "fault", list_and_tape_differ),
    ("hip.above_shoulder", "caution", hip_over_the_leg),
    ("bar.above_baseboard", "caution", bar_over_the_board),
    ("film.no_stock", "fault", sheet_too_long),
    ("film.no_stock", "fault", sheet_too_wide),
    ("film.no_stock", "fault", curtain_too_long),
    ("seam.off_bow", "caution", seam_in_mid_air),
    ("split.off_bow", "caution", split_between_bows),
    ("split.strip_without_bay", "fault", strip_at_the_end),
    ("pocket.shorter_than_lap", "fault", pocket_under_the_lap),
    ("pocket.missing", "caution", no_pocket),
    ("slack.short", "caution", tight_curtain),
    ("air.blower_missing", "fault", no_blower),
    ("air.cell_not_fed", "fault", flat_roof_inflated_side),
    ("air.layers_flat", "note", two_layers_flat),
)

TOLD: tuple[tuple[str, str, Maker], ...] = (
    ("door.too_large", "fault", door_over_the_ridge),
    ("frame.wider_above_legs", "note", horseshoe),
    ("one_sheet.slit", "note", one_sheet_with_a_split),
    ("curtain.no_opening", "fault", split_beside_the_pocket),
)


@pytest.mark.parametrize(("code", "severity", "make"), MENDED + TOLD)
def test_fault_is_found_with_its_reason(code: str, severity: str, make: Maker) -> None:
    findings = found(make(), code)
    assert findings, f"{code} was not found"
    for finding in findings:
        assert finding.severity == severity
        assert finding.source
        for units in ("imperial", "metric"):
            for text in (finding.what, finding.why, finding.mend):
                said = words(text, units)  # type: ignore[arg-type]
                assert said.endswith("."), said
                assert "{" not in said


@pytest.mark.parametrize(("code", "severity", "make"), MENDED)
def test_mend_takes_the_fault_away(code: str, severity: str, make: Maker) -> None:
    before = make()
    left = found(before, code)
    while left:
        mended = left[0].mended
        assert isinstance(mended, Tunnel)
        rest = found(mended, code)
        assert len(rest) < len(left), f"{code} stays after its mend"
        left = rest


@pytest.mark.parametrize("code", [code for code, _, _ in MENDED + TOLD])
def test_sound_tunnel_has_none_of_it(code: str) -> None:
    assert found(tunnel(), code) == []


def test_bows_and_bays_are_told_in_words() -> None:
    (finding,) = found(bays_counted_as_bows(), "frame.bows_not_bays")
    assert "23 bows make 22 bays" in words(finding.what, "imperial")
    assert "22 bows make 21 bays of 4' 0\" = 84' 0\"" in words(finding.mend, "imperial")


def test_readings_of_a_bow_past_the_last_stand_against_fewer_bows() -> None:
    made = bays_counted_as_bows()
    read = with_bow_value(made, 23, ("dip_m",), 0.02)
    (finding,) = found(read, "frame.bows_not_bays")
    assert finding.mended is None
    assert words(finding.mend, "imperial").startswith("First clear what is entered for bows past")
    (free,) = found(with_bow_value(made, 22, ("dip_m",), 0.02), "frame.bows_not_bays")
    assert free.mended is not None


def test_near_miss_tells_the_amount_and_the_saving() -> None:
    # Made so that the narrower stock is 0.1 m under the sheet and costs 50 less.
    bare = tunnel(sides=(side("West", kind="fixed"), side("East", kind="fixed")))
    bare = bare.but(ends=tuple(e.but(film=None) for e in bare.ends))
    farm = small_farm(bare)
    width_m = plan(farm).tunnels[0].chosen.cover.sheet_width_m
    film = farm.catalogue.films[0]
    rolls = (
        film.rolls[0].but(width_m=width_m - 0.1, length_m=50.0, price=Decimal(100)),
        film.rolls[0].but(width_m=width_m + 0.5, length_m=50.0, price=Decimal(150)),
    )
    catalogue = farm.catalogue.but(films=(film.but(rolls=rolls), farm.catalogue.films[1]))
    hits = found(bare, "film.near_miss", farm.but(catalogue=catalogue))
    assert any("0.100 m over" in words(f.what, "metric") for f in hits)
    assert any("$50.00" in words(f.why, "metric") for f in hits)


def test_heavy_sheet_wants_more_hands() -> None:
    farm = small_farm()
    light = farm.but(limits=farm.limits.but(lift_kg=100.0))
    heavy = farm.but(limits=farm.limits.but(lift_kg=1.0))
    assert found(tunnel(), "sheet.heavy", light) == []
    assert all("NIOSH 94-110" in f.source for f in found(tunnel(), "sheet.heavy", heavy))
    assert found(tunnel(), "sheet.heavy", heavy)
    # A roof that stays on the bows is not carried.
    kept = tunnel().but(condition=(PartState(family="Film", where="roof", state="keep"),))
    marks = {f.where for f in found(tunnel(), "sheet.heavy", heavy)}
    roof = {"piece/roof-sheet/single/-/0"}
    assert marks - {f.where for f in found(kept, "sheet.heavy", heavy)} == roof


def test_missing_part_and_invented_prices_are_told_for_the_farm() -> None:
    findings = plan(small_farm()).findings
    missing = [f for f in findings if f.code == "catalogue.part_missing"]
    assert any("channel" in words(f.what, "metric") for f in missing)
    assert [f.code for f in findings if f.code == "price.invented"] == ["price.invented"]


def test_faults_stand_before_cautions_before_notes() -> None:
    order = {"fault": 0, "caution": 1, "note": 2}
    ranks = [order[f.severity] for f in plan(small_farm(tight_curtain())).findings]
    assert ranks == sorted(ranks)


def test_every_code_has_a_test() -> None:
    folder = Path(hoopwright.checks.__file__).parent
    source = "".join(p.read_text(encoding="utf-8") for p in folder.glob("*.py"))
    codes = set(re.findall(r'"([a-z_]+\.[a-z_]+)"', source))
    assert len(codes) >= 40
    here = "".join(p.read_text(encoding="utf-8") for p in Path(__file__).parent.glob("test_*.py"))
    assert [c for c in sorted(codes) if f'"{c}"' not in here] == []


def test_every_rule_is_asked() -> None:
    written = {
        rule
        for module in MODULES
        for name, rule in vars(module).items()
        if inspect.isfunction(rule)
        and rule.__module__ == module.__name__
        and not name.startswith("_")
        and list(inspect.signature(rule).parameters) == ["case"]
    }
    assert written == set(RULES)
    assert len(RULES) == len(set(RULES))


def test_finding_of_a_case_names_its_tunnel() -> None:
    farm = small_farm()
    result = plan(farm).tunnels[0]
    case = Case(
        tunnel=farm.tunnels[0],
        survey=result.survey,
        chosen=result.chosen,
        other_made=result.other_made,
        fit=result.fit,
        held=result.held,
        warmth=result.warmth,
        catalogue=farm.catalogue,
        limits=farm.limits,
        coupon_n_m=None,
        currency="EUR",
    )
    made = case.finding("a.b", "note", "roof", phrase("What."), phrase("Why."), phrase("Mend."))
    assert (made.tunnel, made.where, made.mended) == ("Meadow tunnel", "roof", None)
