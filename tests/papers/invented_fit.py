"""Invented chances of stock widths, put together by hand for the papers."""

from hoopwright.fit import Fit, Remeasured, SheetFit, WidthFit
from hoopwright.quantity.working import Working

WIDTHS = (
    WidthFit(width_m=9.1, margin_m=-0.2, chance=1.0, chosen=False),
    WidthFit(width_m=9.5, margin_m=0.2, chance=0.025, chosen=True),
    WidthFit(width_m=10.0, margin_m=0.7, chance=0.0, chosen=False),
)


def invented_fit(film: str) -> Fit:
    """Return the fit of one roof sheet of a film.

    Args:
        film: Catalogue key of the film.
    """
    return Fit(
        sheets=(
            SheetFit(
                name="Roof sheet",
                marks=("piece/roof-sheet/single/-/0",),
                layer="single",
                film=film,
                cut_width_m=9.3,
                over="hips",
                bow_count=20,
                read_count=5,
                governing_bow=3,
                governing_m=8.8,
                middle_m=8.7,
                deviation_m=0.05,
                fixed_m=0.5,
                minus_share=0.0,
                chosen_m=9.5,
                chance=0.025,
                untold="",
                remeasured=Remeasured(
                    bow=3,
                    from_m=8.8,
                    to_m=8.7,
                    cut_width_m=9.2,
                    stock_width_m=9.5,
                    changes=False,
                ),
                widths_made=lambda: WIDTHS,
                workings=tuple(
                    Working(figure, "Invented.")
                    for figure in ("governing_m", "widths", "chance", "remeasured")
                ),
            ),
        )
    )
