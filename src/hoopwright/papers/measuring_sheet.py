"""The measuring sheet: pages to fill in by pencil beside the tunnel, in the order of the window."""

from hoopwright.papers.form_flow import fill_pages
from hoopwright.papers.form_page import Page
from hoopwright.papers.measuring_bows import first_bows, other_bows
from hoopwright.papers.measuring_condition import condition_parts
from hoopwright.papers.measuring_ends import ends_parts
from hoopwright.papers.measuring_frame import frame_block, points_parts
from hoopwright.papers.measuring_head import (
    caution_block,
    drawing_block,
    title_line,
    way_block,
    who_block,
)
from hoopwright.papers.measuring_subject import MeasuringSubject


def measuring_pages(subject: MeasuringSubject) -> tuple[Page, ...]:
    """Return the pages of the sheet of one tunnel, or of a blank sheet."""
    parts = (
        who_block(),
        drawing_block(subject),
        way_block(subject),
        first_bows(subject),
        frame_block(subject),
        *other_bows(subject),
        *points_parts(subject),
        *ends_parts(subject),
        *condition_parts(subject),
    )
    return fill_pages(
        parts,
        subject.paper,
        lambda number, count: title_line(subject, number, count),
        caution_block(subject),
    )
