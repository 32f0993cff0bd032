from decimal import Decimal

import pytest

from hoopwright.cover.cover import Piece
from hoopwright.farm import Film
from hoopwright.order.cut_plan import cut_sheets
from hoopwright.order.filling import fill_rolls
from hoopwright.order.order import Cut, Roll
from hoopwright.order.stock import stock_table
from order.rolls_checked import FT_M, faults, film_of, sheet, sheet_ft

RATE = Decimal("0.115")


def by_area(*sizes_ft: tuple[str, str]) -> Film:
    """Return a film whose rolls all cost 0.115 for a square foot."""
    rolls = ((float(w), float(n), str(Decimal(w) * Decimal(n) * RATE)) for w, n in sizes_ft)
    return film_of(*rolls, unit_m=FT_M)


def lay(pieces: list[Piece], film: Film) -> tuple[Roll, ...]:
    """Return the rolls after the checker has found nothing wrong with them."""
    named = [("T1", piece) for piece in pieces]
    rolls, _, unplaced = cut_sheets(named, (film,))
    assert unplaced == ()
    assert faults(rolls, named, film) == []
    return rolls


def cost(rolls: tuple[Roll, ...]) -> Decimal:
    return sum((roll.price for roll in rolls), Decimal(0))


def test_roof_and_sides_apart_take_4123_square_feet() -> None:
    # Worked by hand: roof 34 x 88 = 2,992; two curtains 77 x 6.5 = 1,001; four pockets
    # 5 x 6.5 = 130; together 4,123 ft2, at 0.115 for a square foot 474.145.
    film = by_area(("34", "88"), ("6.5", "77"), ("6.5", "5"), ("48", "88"))
    pieces = [
        sheet_ft("roof", 32.67, 88),
        *(sheet_ft(f"curtain {n}", 6.5, 77) for n in range(2)),
        *(sheet_ft(f"pocket {n}", 6.5, 5) for n in range(4)),
    ]
    rolls = lay(pieces, film)
    area_ft2 = sum(roll.width_m * roll.length_m for roll in rolls) / FT_M**2
    assert area_ft2 == pytest.approx(4123)
    assert cost(rolls) == Decimal("474.145")


def test_one_sheet_misses_the_42_foot_width_by_a_hand() -> None:
    # Worked by hand: 30.77 over the bows and 6.0 down each side make 42.77 ft. From 48 ft stock
    # 48 x 88 = 4,224 ft2 = 485.76; 42 x 88 = 3,696 ft2 = 425.04, that is 60.72 less.
    film = by_area(("42", "88"), ("48", "88"))
    rolls, near_misses, _ = cut_sheets([("T1", sheet_ft("whole", 30.77 + 2 * 6.0, 88))], (film,))
    assert cost(rolls) == Decimal("485.76")
    (miss,) = near_misses
    assert miss.stock_width_m / FT_M == pytest.approx(42)
    assert miss.over_m / FT_M == pytest.approx(0.77)
    assert miss.saving == Decimal("60.72")


@pytest.mark.parametrize(
    ("lengths_ft", "bought_ft", "price"),
    [
        # 88 + 64 = 152 ft misses a roll of 150 ft, so each long sheet takes a roll of its own and
        # the two short ones share, 64 + 64 = 128 ft: 2 x 362 + 540, less than 4 x 362 = 1,448.
        ((88.0, 88.0, 64.0, 64.0), [100, 100, 150], "1264"),
        # With 0.6 ft less at each end 86.8 + 62.8 = 149.6 ft: 2 x 540.
        ((86.8, 86.8, 62.8, 62.8), [150, 150], "1080"),
        # 87 + 63 = 150.0 ft fits a roll of 150 ft to the inch.
        ((87.0, 87.0, 63.0, 63.0), [150, 150], "1080"),
    ],
)
def test_two_roofs_share_a_longer_roll_when_they_fit(
    lengths_ft: tuple[float, ...], bought_ft: list[int], price: str
) -> None:
    film = film_of((34, 100, "362"), (34, 150, "540"), unit_m=FT_M)
    pieces = [sheet_ft(f"roof {n}", 32.9, long) for n, long in enumerate(lengths_ft)]
    rolls = lay(pieces, film)
    assert [round(roll.length_m / FT_M) for roll in rolls] == bought_ft
    assert cost(rolls) == Decimal(price)


def test_narrow_sheets_ride_beside_a_wide_one() -> None:
    # 8 + 2 + 2 m across and 40 m along are one roll of 12 x 50 m, dearer than 9 x 50 m by less
    # than a second roll.
    film = film_of((9.0, 50.0, "300"), (12.0, 50.0, "390"), (4.0, 50.0, "140"))
    pieces = [sheet("roof", 8.0, 40.0), sheet("a", 2.0, 40.0), sheet("b", 2.0, 40.0)]
    (roll,) = lay(pieces, film)
    assert roll.price == Decimal(390)
    assert roll.left_m == pytest.approx(10.0)
    assert roll.used_m2 == pytest.approx(480.0)


def test_film_left_at_the_end_of_a_roll_is_used() -> None:
    # 40 m of roof leave 10 m in full width: two end sheets of 4 x 9 m stand there side by side.
    film = film_of((9.0, 50.0, "300"), (5.0, 50.0, "170"))
    (roll,) = lay([sheet("roof", 8.0, 40.0), sheet("a", 4.0, 9.0), sheet("b", 4.0, 9.0)], film)
    assert roll.price == Decimal(300)


def test_sheets_keep_their_direction() -> None:
    _, _, unplaced = cut_sheets([("T1", sheet("end", 5.0, 3.0))], (film_of((4.0, 50.0, "9")),))
    (left,) = unplaced
    assert (left.over_width_m, left.over_length_m) == (pytest.approx(1.0), 0.0)
    assert left.stock_m == 4.0


def test_sheet_longer_than_every_roll_of_its_width_says_by_how_much() -> None:
    film = film_of((4.0, 100.0, "9"), (8.0, 50.0, "9"))
    _, _, unplaced = cut_sheets([("T1", sheet("roof", 5.0, 62.5))], (film,))
    (left,) = unplaced
    assert (left.over_width_m, left.over_length_m) == (0.0, pytest.approx(12.5))
    assert left.stock_m == 50.0


def test_sheet_of_the_stock_width_fits_exactly() -> None:
    # 40 ft as a sum of halves with float digits, and 40 ft stock.
    width_m = sum([FT_M / 2] * 80)
    film = film_of((40, 100, "500"), (42, 100, "530"), unit_m=FT_M)
    rolls, near_misses, _ = cut_sheets([("T1", sheet("roof", width_m, 30.0))], (film,))
    assert [roll.price for roll in rolls] == [Decimal(500)]
    assert near_misses == ()


@pytest.mark.parametrize(
    ("width_m", "named_m"),
    [
        (10.2, 10.0),  # 0.2 m over: near
        (10.6, 10.0),  # 0.6 m over: the limit
        (10.7, None),  # more than 0.6 m over
        (3.15, 3.0),  # 5 % over
        (3.4, None),  # more than a tenth over, though only 0.4 m
    ],
)
def test_near_is_a_tenth_and_at_most_60_cm(width_m: float, named_m: float | None) -> None:
    film = film_of((3.0, 50.0, "90"), (6.0, 50.0, "190"), (10.0, 50.0, "300"), (14.0, 50.0, "400"))
    _, near_misses, _ = cut_sheets([("T1", sheet("roof", width_m, 40.0))], (film,))
    assert [miss.stock_width_m for miss in near_misses] == ([] if named_m is None else [named_m])


def test_narrower_stock_is_no_near_miss_unless_long_enough_and_cheaper() -> None:
    one = [("T1", sheet("roof", 10.2, 40.0))]
    short = film_of((10.0, 30.0, "100"), (12.0, 50.0, "390"))
    dear = film_of((10.0, 50.0, "390"), (12.0, 50.0, "390"))
    assert cut_sheets(one, (short,))[1] == ()
    assert cut_sheets(one, (dear,))[1] == ()


def test_sheet_that_rides_beside_others_is_no_near_miss() -> None:
    # The roll has to be 12 m wide for the sheet beside, whatever the first one's width.
    film = film_of((8.0, 50.0, "250"), (12.0, 50.0, "390"))
    _, near_misses, _ = cut_sheets(
        [("T1", sheet("roof", 8.2, 40.0)), ("T1", sheet("curtain", 3.5, 40.0))], (film,)
    )
    assert near_misses == ()


def test_films_never_share_a_roll() -> None:
    films = (film_of((9.0, 50.0, "300")), film_of((9.0, 50.0, "330"), key="inner"))
    pieces = [("T1", sheet("a", 4.0, 20.0)), ("T1", sheet("b", 4.0, 20.0, "inner"))]
    rolls, _, _ = cut_sheets(pieces, films)
    assert [(r.film, [c.piece for c in r.cuts]) for r in rolls] == [
        ("clear", ["a"]),
        ("inner", ["b"]),
    ]


def test_every_number_of_a_roll_is_explained() -> None:
    (roll,) = lay([sheet("a", 4.0, 20.0)], film_of((9.0, 50.0, "300")))
    for figure in ("width_m", "length_m", "price", "used_m2", "left_m"):
        assert roll.working(figure).rule


def test_sheet_that_fits_nowhere_is_a_broken_promise_when_filling() -> None:
    with pytest.raises(ValueError, match="sheet a fits on no stock roll"):
        fill_rolls([("T1", sheet("a", 5.0, 5.0))], stock_table(film_of((4.0, 50.0, "9"))))


INCH_M = 0.0254

# Small problems in whole inches. The least costs were proved by an explicit model of strips,
# sections and rolls in two independent solvers, which could do more than this rule of thumb: turn
# end sheets, and in the first and the last problem use part rolls and film cut to length, left out
# here. So they are true lower bounds. Cost over the bound when this was written: 1.08, 1.06, and
# 1.79 where a part roll nearly for free is left out.
PROVED = [
    pytest.param(
        [(485, 1200)] * 2 + [(72, 1176)] * 2 + [(185, 378)] * 2 + [(36, 84)] * 4,
        [
            (72, 1200, "79"),
            (144, 1200, "157"),
            (192, 1200, "210"),
            (384, 1200, "416"),
            (504, 1200, "543"),
            (504, 2400, "1065"),
            (576, 1200, "618"),
            (576, 1800, "916"),
            (600, 1320, "706"),
        ],
        "1320.40",
        id="two roofs",
    ),
    pytest.param(
        [(420, 1160)] * 2 + [(66, 1150)] * 7 + [(170, 400)] * 2,
        [
            (72, 1200, "82"),
            (120, 1200, "133"),
            (288, 1200, "310"),
            (432, 1200, "463"),
            (480, 1200, "514"),
            (480, 2400, "1010"),
            (576, 1200, "625"),
            (576, 1800, "910"),
            (408, 1200, "441"),
        ],
        "1633.00",
        id="curtains beside roofs",
    ),
    pytest.param(
        [(300, 780)] + [(60, 750)] * 2 + [(150, 300)] * 4 + [(30, 84)] * 2,
        [(72, 1200, "78"), (144, 1200, "156"), (312, 1200, "335"), (384, 1200, "412")],
        "375.00",
        id="one small tunnel",
    ),
]


@pytest.mark.parametrize(("sizes", "stock", "proved"), PROVED)
def test_cost_lies_between_the_proved_least_and_a_roll_for_each_sheet(
    sizes: list[tuple[int, int]], stock: list[tuple[float, float, str]], proved: str
) -> None:
    film = film_of(*stock, unit_m=INCH_M)
    pieces = [
        sheet(str(n), width * INCH_M, length * INCH_M) for n, (width, length) in enumerate(sizes)
    ]
    alone = sum(
        min(int(p) for w, s, p in stock if w >= width and s >= length) for width, length in sizes
    )
    assert Decimal(proved) <= cost(lay(pieces, film)) < alone


def rolls_with(*placed: tuple[float, float, float, float]) -> tuple[list[Piece], Roll]:
    """Return sheets and a roll of 3 x 3 m; each place is along, across, length, width."""
    pieces = [sheet(str(n), width, length) for n, (_, _, length, width) in enumerate(placed)]
    cuts = tuple(
        Cut(
            tunnel="T1",
            piece=str(n),
            name="",
            along_m=along,
            across_m=across,
            length_m=length,
            width_m=width,
        )
        for n, (along, across, length, width) in enumerate(placed)
    )
    roll = Roll(
        film="clear",
        width_m=3.0,
        length_m=3.0,
        price=Decimal(9),
        cuts=cuts,
        used_m2=0.0,
        left_m=0.0,
    )
    return pieces, roll


@pytest.mark.parametrize(
    ("placed", "fault"),
    [
        (((0, 0, 2, 2), (1, 1, 2, 2)), "overlap"),
        (((0, 0, 3, 2), (0, 2, 3, 2)), "past the side"),
        (((0, 0, 2, 3), (2, 0, 2, 3)), "past the end"),
        # Four sheets around a hole, like the sails of a mill: no straight cut goes through.
        (((0, 0, 2, 1), (2, 0, 1, 2), (1, 2, 2, 1), (0, 1, 1, 2)), "straight cuts"),
    ],
)
def test_checker_finds_what_cannot_be_cut(
    placed: tuple[tuple[float, float, float, float], ...], fault: str
) -> None:
    pieces, roll = rolls_with(*placed)
    named = [("T1", piece) for piece in pieces]
    found = faults((roll,), named, film_of((3.0, 3.0, "9")))
    assert any(fault in line for line in found)
    missing = faults((), named, film_of((3.0, 3.0, "9")))
    assert len(missing) == 1
