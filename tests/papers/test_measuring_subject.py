"""What a measuring sheet says of its tunnel, its units and its families of parts."""

from hoopwright.farm.condition import FILM
from hoopwright.papers.measuring_subject import families_of, named, shortened, usual_paper
from papers.sheets_to_measure import A4, LETTER, blank, measured, measured_farm


def test_sizes_are_written_in_the_units_of_the_sheet() -> None:
    # 1.524 m = 5 ft.
    assert measured(units="metric").size(1.524) == "1.524 m"
    assert measured(units="imperial").size(1.524) == "5' 0\""
    assert measured().size(None) == ""
    assert (measured(units="metric").thin_unit, measured(units="imperial").thin_unit) == (
        "mm",
        "in",
    )
    assert measured(units="metric").thin(0.006) == "6.0 mm"


def test_sides_and_ends_have_their_place_and_their_name() -> None:
    subject = measured()
    tunnel = subject.tunnel
    assert tunnel is not None
    assert subject.side_name(0) == f"first side: {tunnel.sides[0].name}"
    assert subject.end_name(1) in ("back end", f"back end: {tunnel.ends[1].name}")
    assert (blank().side_name(1), blank().end_name(0)) == ("second side", "front end")


def test_name_that_says_the_place_is_not_said_twice() -> None:
    assert named("front end", " Front  end ", 20) == "front end"
    assert named("front end", "", 20) == "front end"


def test_long_name_is_shortened() -> None:
    assert shortened("packing shed", 12) == "packing shed"
    assert shortened("packing sheds", 12) == "packing she…"


def test_families_are_film_and_the_groups_of_the_catalogue() -> None:
    catalogue = measured_farm().catalogue
    families = families_of(catalogue)
    assert families[0] == FILM
    assert set(families[1:]) == {part.group for part in catalogue.parts}
    assert len(set(families)) == len(families)


def test_paper_follows_the_units() -> None:
    assert usual_paper("imperial") == LETTER
    assert usual_paper("metric") == A4
