"""Which hoses are used: the ones chosen, else the first for jumpers and the widest to feed."""

from hoopwright.farm import Air, Hose
from hoopwright.inflation import feed_hose, jumper_hose

THIN, WIDE, MIDDLE = (
    Hose(key=key, name=key, bore_m=bore_m, roughness_m=0.0005, part="hose")
    for key, bore_m in (("thin", 0.038), ("wide", 0.076), ("middle", 0.051))
)
HOSES = (THIN, WIDE, MIDDLE)
PLAIN = Air(blower=None)


def test_without_a_choice_jumpers_take_the_first_and_the_blower_the_widest() -> None:
    assert jumper_hose(PLAIN, HOSES) == THIN
    assert feed_hose(PLAIN, HOSES) == WIDE


def test_choices_go_first() -> None:
    chosen = PLAIN.but(jumper_hose="wide", feed_hose="middle")
    assert jumper_hose(chosen, HOSES) == WIDE
    assert feed_hose(chosen, HOSES) == MIDDLE


def test_without_hoses_there_is_none_to_use() -> None:
    assert jumper_hose(PLAIN, ()) is None
    assert feed_hose(PLAIN, ()) is None
