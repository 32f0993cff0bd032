"""The plan as lines of text: readings, widths, what is added, what stays."""

from hoopwright.farm import BowReading, PartState, Rain, Tape, Tunnel
from hoopwright.papers.plan_text import findings_to_text, plan_to_text
from hoopwright.plan import plan
from samples import small_farm, tunnel

GIRTHS_M = {1: 9.50, 5: 9.51, 9: 9.49, 13: 9.52, 17: 9.60}


def told(made: Tunnel) -> str:
    farm = small_farm(made)
    return plan_to_text(farm, plan(farm))


def standing(made: Tunnel) -> Tunnel:
    rows = tuple(BowReading(bow=bow, over_hips_m=girth_m) for bow, girth_m in GIRTHS_M.items())
    return made.but(frame=made.frame.but(tape=Tape(bows=rows)))


def test_what_was_not_read_added_or_kept_is_not_told() -> None:
    text = told(tunnel())
    assert "bow 17" not in text
    assert "What stays" not in text
    assert "gutter" not in text.lower()


def test_readings_tell_the_governing_bow_and_each_width() -> None:
    text = told(standing(tunnel()))
    assert "bow 17" in text
    # The widths of the small catalogue that can hold it: 10 m is too narrow or not, 12 m never is.
    assert "12.000 m: never in this spread" in text


def test_what_stays_is_told_with_what_it_saves() -> None:
    text = told(tunnel().but(condition=(PartState(family="Film", where="roof", state="keep"),)))
    head, _, rest = text.partition("What stays of the old skin\n")
    assert head
    assert rest.splitlines()[0].strip().startswith("Roof sheet: clear film stays as it is")
    assert "would cost" in rest
    # What the price of a covering leaves out stands beside it; one sheet cannot keep a roof.
    chosen, other = (line for line in head.splitlines() if "goods and tax" in line)
    assert "roof and sides apart" in chosen
    assert "; what stays is left out, " in chosen
    assert "what stays" not in other


def test_rain_is_told_in_litres() -> None:
    made = tunnel()
    boards = tuple(b.but(gutter_drop_m=0.1) for b in made.frame.boards)
    made = made.but(frame=made.frame.but(boards=(boards[0], boards[1])), rain=Rain())
    text = told(made)
    # By hand: a roof 8.048 m wide over the tube, 24 m long, 12.7 mm of rain, 0.95 of it runs off.
    litres = round(8.048 * 24 * 12.7 * 0.95)
    assert f"{litres:,} L" in text


def test_findings_alone_are_told_with_their_mend() -> None:
    farm = small_farm(tunnel())
    findings = plan(farm).findings
    lines = findings_to_text(farm, findings).splitlines()
    assert len(lines) == 2 * len(findings)
    assert findings_to_text(farm, ()) == "No faults, cautions or notes.\n"
