"""The covering that was not chosen: worked out when asked for, and then as if it were chosen."""

from hoopwright.checks import TunnelPlan
from hoopwright.farm.change import with_tunnel_value
from hoopwright.plan import plan
from samples import double_tunnel, small_farm


def planned(covering: str) -> TunnelPlan:
    chosen = with_tunnel_value(double_tunnel(), ("skin", "covering"), covering)
    return plan(small_farm(chosen)).tunnels[0]


def test_other_covering_is_what_it_is_when_it_is_chosen() -> None:
    one, apart = planned("one_sheet"), planned("roof_and_sides")
    assert one.other == apart.chosen
    assert apart.other == one.chosen
    for this, that in ((one, apart), (apart, one)):
        sheet, cover = this.other_sheet, that.chosen.cover
        assert (sheet.covering, sheet.sheet_width_m) == (cover.covering, cover.sheet_width_m)
        assert sheet.working("sheet_width_m") == cover.working("sheet_width_m")


def test_other_covering_is_worked_out_once() -> None:
    one = planned("one_sheet")
    assert one.other is one.other
