"""What the lines of a form offer: every code of the model with words of its own."""

from typing import Any, Literal, get_args, get_origin

import pytest

from files.varied import standing_tunnel, varied_catalogue
from hoopwright.desktop.details_choices import choices_of, special_choices
from hoopwright.desktop.details_items import Entry, Special, SpecialKind, entries
from hoopwright.desktop.details_made import plain_kind
from hoopwright.desktop.details_tunnel import GROUPS
from hoopwright.desktop.details_words import WORDS, WORDS_OF_FIELD, choice_words
from hoopwright.desktop.session import Session
from hoopwright.farm import Catalogue, End, Farm, PartState, RigidSheet, Tunnel
from hoopwright.farm.change_shape import Taken
from hoopwright.farm.condition import State, Where
from hoopwright.farm.extras import ShadeOver
from hoopwright.farm.measured_bow import BowJoin
from hoopwright.farm.skin import CutKind
from samples import small_farm, tunnel


def offered(item: Entry, made: Tunnel, catalogue: Catalogue) -> list[tuple[object, str]]:
    farm = small_farm().but(catalogue=catalogue)
    return list(choices_of(item, plain_kind(item)[0], farm, made) or ())


@pytest.mark.parametrize("codes", [Taken, State, CutKind, BowJoin])
def test_every_code_has_words(codes: Any) -> None:
    assert set(get_args(codes)) <= set(WORDS)


@pytest.mark.parametrize(("field", "codes"), [("over", ShadeOver), ("where", Where)])
def test_code_of_two_meanings_has_words_of_its_field(field: str, codes: Any) -> None:
    common = {code for code in get_args(codes) if (field, code) not in WORDS_OF_FIELD}
    # Sides and ends are called by their own names.
    assert common <= {"everywhere", "first_side", "second_side", "front_end", "back_end"}
    assert choice_words("roof", field) != choice_words("roof")


@pytest.mark.parametrize("kind", get_args(SpecialKind))
def test_special_line_offers_words_or_nothing(kind: SpecialKind) -> None:
    choices = special_choices(Special(kind, 0, "label"))
    listed = kind in ("shape", "taken", "end_cover")
    assert (choices is not None) == listed
    assert all(words != code for code, words in choices or () if code != "film")


def test_places_are_called_by_their_names() -> None:
    (item,) = entries("tunnel", ("condition", 0), PartState(family="Film"), "where")
    found = offered(item, tunnel(), varied_catalogue())
    assert [code for code, _words in found] == list(get_args(Where))
    assert [words for _code, words in found][2:] == [
        "West side",
        "East side",
        "Front end",
        "Back end",
    ]


def test_families_are_film_and_each_group_once() -> None:
    (item,) = entries("tunnel", ("condition", 0), PartState(family="Film"), "family")
    found = offered(item, tunnel(), varied_catalogue())
    assert [code for code, _words in found] == ["Film", "Curtains", "Shade and screen"]


def test_rigid_sheet_is_offered_with_what_is_counted_like_it() -> None:
    made = standing_tunnel()
    (item,) = entries("tunnel", ("ends", 1, "rigid"), RigidSheet(part="rigid"), "part")
    assert offered(item, made, varied_catalogue()) == [("rigid", "rigid")]


def test_seam_is_offered_the_rails_between_its_neighbours() -> None:
    plain = tunnel()
    end = plain.ends[0].but(rails_m=(0.5, 1.0, 2.0, 3.0), seams_m=(1.0, 2.5))
    made = plain.but(ends=(end, plain.ends[1]))
    upper = Entry("tunnel", ("ends", 0, "seams_m", 1), End, "seams_m", "seam")
    assert offered(upper, made, varied_catalogue()) == [
        (2.5, "2.500 m, on no rail"),
        (2.0, "on rail 3, 2.000 m"),
        (3.0, "on rail 4, 3.000 m"),
    ]
    lower = Entry("tunnel", ("ends", 0, "seams_m", 0), End, "seams_m", "seam")
    assert [height for height, _words in offered(lower, made, varied_catalogue())] == [
        0.5,
        1.0,
        2.0,
    ]


def test_every_line_with_codes_offers_each_of_them() -> None:
    farm: Farm = small_farm()
    session = Session(farm)
    for _title, items in GROUPS:
        for item in items(session):
            if isinstance(item, Entry) and get_origin(plain_kind(item)[0]) is Literal:
                kind = plain_kind(item)[0]
                choices = choices_of(item, kind, farm, session.tunnel)
                assert [code for code, _words in choices or ()] == list(get_args(kind))
    session.deleteLater()
