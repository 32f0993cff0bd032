"""The rules in the order of the job, and how their findings are sorted."""

from collections.abc import Callable, Iterable, Iterator

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
from hoopwright.order.order import Order
from hoopwright.quantity.finding import Finding

Rule = Callable[[Case], Iterator[Finding]]

RULES: tuple[Rule, ...] = (
    frame_rules.bows_not_bays,
    frame_rules.length_not_list,
    tape_rules.one_girth,
    tape_rules.outlier,
    tape_rules.girth_disagrees,
    tape_rules.lengths_disagree,
    tape_rules.diagonals_disagree,
    tape_rules.skew,
    tape_rules.lean,
    height_rules.heights_crossed,
    height_rules.not_a_circle,
    height_rules.unequal_sides,
    frame_rules.door_too_large,
    end_rules.opening_outside,
    end_rules.openings_overlap,
    end_rules.seam_off_rail,
    end_rules.seam_lap_short,
    end_rules.seam_parts_air,
    frame_rules.hip_above_shoulder,
    frame_rules.bow_leans_in,
    frame_rules.wider_above_legs,
    frame_rules.bar_above_baseboard,
    height_rules.gap,
    height_rules.bar_on_ground,
    skin_rules.sheet_without_stock,
    fit_rules.sheet_may_be_short,
    skin_rules.seam_off_bow,
    skin_rules.one_sheet_slit,
    side_rules.split_off_bow,
    side_rules.strip_without_bay,
    side_rules.curtain_tiny,
    side_rules.pocket_short,
    side_rules.pocket_missing,
    limit_rules.bars_too_long,
    drive_rules.hand_crank_in_the_middle,
    drive_rules.joint_bent,
    drive_rules.drive_runs_back,
    drive_rules.gears_doubtful,
    roll_rules.bar_slit,
    roll_rules.wall_heavier,
    roll_rules.roll_meets_gutter,
    roll_rules.roll_rubs,
    roll_rules.rain_in_roll,
    side_rules.slack_short,
    curtain_rules.curtain_loose,
    curtain_rules.woven_without_film,
    curtain_rules.channel_shared,
    curtain_rules.own_sheet,
    curtain_rules.air_in_one_layer,
    curtain_rules.opening_share,
    outfit_rules.gutter_missing,
    outfit_rules.outlets_few,
    outfit_rules.gutter_load,
    outfit_rules.screen_without_loss,
    outfit_rules.screen_idle,
    outfit_rules.shade_scratches,
    outfit_rules.shade_over_opening,
    air_rules.blower_missing,
    air_rules.hose_missing,
    air_rules.cell_not_fed,
    air_rules.cell_cut_off,
    air_rules.jumper_idle,
    air_rules.air_from_inside,
    air_rules.layers_flat,
    pressure_rules.never_fills,
    pressure_rules.cells_low,
    pressure_rules.cells_high,
    pressure_rules.chain_starves,
    pressure_rules.hose_cuts_off,
    pressure_rules.film_strained,
    pressure_rules.seal_weak,
    pressure_rules.leak_found,
    pressure_rules.second_layer_pays,
    condition_rules.film_in_part,
    condition_rules.film_off_new_channel,
    condition_rules.channel_on_new_board,
    condition_rules.line_about_nothing,
    skin_rules.near_miss,
    skin_rules.sheet_heavy,
)

RANK = {"fault": 0, "caution": 1, "note": 2}


def check_tunnel(case: Case) -> tuple[Finding, ...]:
    """Return what every rule finds in one tunnel, faults first."""
    return sort_findings(finding for rule in RULES for finding in rule(case))


def check_farm(order: Order) -> tuple[Finding, ...]:
    """Return what is the matter with the order of the whole farm."""
    return (*skin_rules.parts_missing(order), *skin_rules.prices_invented(order))


def sort_findings(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Return findings with faults first, then cautions, then notes; the order within stays."""
    return tuple(sorted(findings, key=lambda f: RANK[f.severity]))
