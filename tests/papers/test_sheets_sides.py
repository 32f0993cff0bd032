"""Curtains and air, with places named as people call them."""

import dataclasses

from hoopwright.farm import Farm
from papers.invented_plan import invented_plan
from papers.spreadsheet import made, open_book, texts


def test_places_are_named_as_people_call_them(farm: Farm) -> None:
    book = open_book(made(farm, invented_plan(farm)))
    assert "West side, curtain 2" in texts(book["Curtains"])
    air = texts(book["Air"])
    assert "side/0" not in air
    assert "cell/" not in air


def test_plan_without_curtains_air_or_checks_says_so(farm: Farm) -> None:
    plan = invented_plan(farm)
    (tunnel,) = plan.tunnels
    bare = dataclasses.replace(tunnel.chosen.inflation, seals=(), cells=(), jumpers=(), blower=None)
    chosen = dataclasses.replace(tunnel.chosen, curtains=(), inflation=bare)
    plan = dataclasses.replace(
        plan, tunnels=(dataclasses.replace(tunnel, chosen=chosen),), findings=()
    )
    book = open_book(made(farm, plan))
    assert "No side rolls up." in texts(book["Curtains"])
    assert "No edge has to be sealed." in texts(book["Air"])
    assert "Every check passed." in texts(book["Checks"])
