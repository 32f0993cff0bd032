"""The strip of deciding numbers shows what the plan says, at every width, and never a stale one.

1 ft² = 0.09290304 m² exactly (NIST Special Publication 811, appendix B).
"""

from collections.abc import Callable
from decimal import ROUND_HALF_UP, Decimal

import pytest
from PySide6.QtCore import QRect, Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from hoopwright.desktop.headline import Headline, head_figures
from hoopwright.desktop.session import Session
from hoopwright.farm import Farm, Screen
from hoopwright.farm.change import move_split
from samples import double_tunnel, side, small_farm, tunnel

SQUARE_FOOT_M2 = Decimal("0.09290304")
Opened = Callable[..., tuple[Session, Headline]]


@pytest.fixture
def opened(qtbot: QtBot) -> Opened:
    """Open the strip in a window of a width."""
    kept: list[QWidget] = []

    def open_strip(farm: Farm | None = None, width: int = 1366) -> tuple[Session, Headline]:
        window = QWidget()
        session = Session(farm or small_farm(double_tunnel()), parent=window)
        box = QVBoxLayout(window)
        box.setContentsMargins(0, 0, 0, 0)
        strip = Headline(session)
        box.addWidget(strip)
        box.addStretch(1)
        qtbot.addWidget(window)
        kept.append(window)
        window.resize(width, 300)
        window.show()
        qtbot.waitExposed(window)
        return session, strip

    return open_strip


def _shown(strip: Headline) -> dict[str, str]:
    return {box.caption.text(): box.value.text() for box in strip.boxes}


def test_numbers_are_those_of_the_plan(opened: Opened) -> None:
    session, strip = opened()
    chosen = session.tunnel_plan.chosen
    shown = _shown(strip)
    assert shown["To pay, tunnel"] == f"${chosen.cost.to_pay:,}"
    assert shown["To pay, farm"] == f"${session.plan.cost.to_pay:,}"
    least = min(session.tunnel_plan.held.cells, key=lambda air: air.pressure_pa)
    said = shown["Jumpers · least pressure"].split(", ")
    assert said[0] == f"{len(chosen.inflation.jumpers)} · {least.pressure_pa:.1f} Pa"
    assert said[1:] == ([] if least.state == "in range" else [least.state])
    hardest = max(work.hardest_n for work in chosen.curtains)
    assert shown["Hardest crank"] == f"{hardest:.0f} N"
    hours = chosen.inflation.bench_min / 60
    assert shown["Seals · bench"].endswith(f"{hours:.1f} h")


def test_floor_is_reckoned_in_the_units_of_the_farm(opened: Opened) -> None:
    session, strip = opened(small_farm(tunnel()).but(units="imperial"))
    per_m2 = session.tunnel_plan.chosen.cost.per_floor_m2
    per_ft2 = (per_m2 * SQUARE_FOOT_M2).quantize(Decimal("0.01"), ROUND_HALF_UP)
    assert _shown(strip)["For the floor"] == f"${per_ft2} per ft²"


def test_both_widths_are_shown_and_the_chosen_one_is_marked(opened: Opened) -> None:
    session, strip = opened()
    plan = session.tunnel_plan
    one, apart = plan.other.cover.sheet_width_m, plan.chosen.cover.sheet_width_m
    said = _shown(strip)["Width: one sheet · roof apart"]
    assert said == f"{one:.3f} m · ✓ {apart:.3f} m"
    skin = session.tunnel.skin.but(covering="one_sheet")
    session.apply_tunnel(session.tunnel.but(skin=skin), "Use one sheet")
    assert _shown(strip)["Width: one sheet · roof apart"].startswith("✓ ")


def test_every_number_but_a_count_says_how_it_was_got(opened: Opened) -> None:
    session, strip = opened()
    for box in strip.boxes:
        assert "Source:" in box.tip() or box.caption.text() == "Jumpers"
        assert box.value.accessibleName().startswith(box.caption.text())
    assert len(list(head_figures(session))) == len(strip.boxes)


def test_opening_is_shown_with_its_share_of_the_floor_and_no_verdict(opened: Opened) -> None:
    session, strip = opened(small_farm(tunnel()))
    airing = session.tunnel_plan.chosen.airing
    share = f"{100 * airing.opening_m2 / 192:.2f}%"
    assert _shown(strip)["Opening · of the floor"] == f"{airing.opening_m2:.1f} m² · {share}"
    (box,) = (b for b in strip.boxes if b.caption.text().startswith("Opening"))
    assert "is no measure of a tunnel with open sides alone" in box.tip()


def test_screened_opening_is_shown_beside_the_clear_one(opened: Opened) -> None:
    screened = side("West side", screen=Screen(part="crank", flow_share=0.5))
    farm = small_farm(tunnel(sides=(screened, screened.but(name="East side"))))
    session, strip = opened(farm)
    airing = session.tunnel_plan.chosen.airing
    said = _shown(strip)["Opening · of the floor · screened"]
    shares = [float(text.rstrip("%")) for text in said.split(" · ")[1:]]
    assert shares == pytest.approx(
        [100 * airing.opening_m2 / 192, 50 * airing.opening_m2 / 192], abs=0.005
    )
    (box,) = (b for b in strip.boxes if b.caption.text().startswith("Opening"))
    assert "advise against screens" in box.tip()
    session.apply_tunnel(tunnel(), "Take the screens away")
    assert "Opening · of the floor" in _shown(strip)


def test_opening_follows_the_hip_while_it_is_dragged(opened: Opened) -> None:
    session, strip = opened(small_farm(tunnel()))
    before = _shown(strip)["Opening · of the floor"]
    frame = session.tunnel.frame
    lower = tuple(b.but(hip_height_m=1.2) for b in frame.boards)
    session.begin()
    session.preview(session.tunnel.but(frame=frame.but(boards=lower)))
    during = _shown(strip)["Opening · of the floor"]
    assert float(during.split()[0]) < float(before.split()[0])
    session.commit("Lower the hip boards")


def test_checks_are_counted_and_wanted_by_key(qtbot: QtBot, opened: Opened) -> None:
    session, strip = opened()
    faults = sum(f.severity == "fault" for f in session.plan.findings)
    cautions = sum(f.severity == "caution" for f in session.plan.findings)
    assert strip.checks.text() == f"Faults {faults} · cautions {cautions}"
    with qtbot.waitSignal(strip.checks_wanted):
        qtbot.keyClick(strip.checks, Qt.Key.Key_Space)


@pytest.mark.parametrize("width", [1366, 1093, 960, 480])
def test_nothing_is_clipped_or_hidden_behind_another(opened: Opened, width: int) -> None:
    _session, strip = opened(small_farm(double_tunnel()).but(units="imperial"), width)
    parts = [*strip.boxes, strip.checks]
    inside = QRect(0, 0, width, strip.height())
    for part in parts:
        assert inside.contains(part.geometry())
        assert part.width() >= part.sizeHint().width()
    for n, part in enumerate(parts):
        for other in parts[n + 1 :]:
            assert not part.geometry().intersects(other.geometry())


@pytest.mark.parametrize("units", ["imperial", "metric"])
def test_one_row_is_enough_for_a_laptop(opened: Opened, units: str) -> None:
    plain = double_tunnel()
    screen = Screen(part="crank", flow_share=0.5)
    sides = tuple(s.but(screen=screen) for s in plain.sides)
    _session, strip = opened(small_farm(plain.but(sides=sides)).but(units=units), 1366)
    assert len({part.y() for part in (*strip.boxes, strip.checks)}) == 1


def test_numbers_of_the_farm_wait_while_a_hand_drags_in_a_farm_of_two(opened: Opened) -> None:
    session, strip = opened(small_farm(double_tunnel(), tunnel().but(name="Brook")))
    before = _shown(strip)
    session.begin()
    session.preview(move_split(session.tunnel, 0, 0, 15.0))
    during = _shown(strip)
    assert during["To pay, farm"] == "…"
    assert during["Hardest crank"] != before["Hardest crank"], "the tunnel's own are fresh"
    session.commit("Move split")
    assert _shown(strip)["To pay, farm"] == f"${session.plan.cost.to_pay:,}"


def test_another_tunnel_shows_its_own_numbers(opened: Opened) -> None:
    session, strip = opened(small_farm(double_tunnel(), tunnel().but(name="Brook")))
    session.show_tunnel(1)
    assert _shown(strip)["Jumpers"] == "0"
    assert _shown(strip)["To pay, tunnel"] == f"${session.plan.tunnels[1].chosen.cost.to_pay:,}"
