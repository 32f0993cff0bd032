"""The PDF: true size, words that can be found, boxes where they are described."""

import io
import re
from types import ModuleType

import pypdf
import pytest

from hoopwright.papers.form_page import Box, Page, Text
from hoopwright.papers.measuring_sheet import measuring_pages
from papers.sheets_to_measure import A4, LETTER, bows, every_subject, measured

MM_PT = 72 / 25.4


@pytest.fixture
def painter(request: pytest.FixtureRequest) -> ModuleType:
    """Return the module, with an application of the toolkit where that is installed."""
    pytest.importorskip("PySide6")
    pytest.importorskip("pytestqt")
    request.getfixturevalue("qapp")
    from hoopwright.papers import form_painter

    return form_painter


def opened(data: bytes) -> pypdf.PdfReader:
    return pypdf.PdfReader(io.BytesIO(data))


def squeezed(text: str) -> str:
    """Return a text without its white space, which line breaks change."""
    return re.sub(r"\s", "", text)


def without_time(data: bytes) -> bytes:
    data = re.sub(rb"\(D:\d{14}[^)]*\)", b"", data)
    return re.sub(rb"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d[^<\"]*", b"", data)


@pytest.mark.parametrize("paper", [LETTER, A4], ids=lambda paper: paper.name)
def test_pages_have_the_size_of_the_paper(painter: ModuleType, paper) -> None:
    pages = measuring_pages(measured(paper))
    reader = opened(painter.pdf_bytes(pages, "Measuring sheet"))
    assert len(reader.pages) == len(pages)
    for page in reader.pages:
        # Whole points, as the file has them.
        size = (float(page.mediabox.width), float(page.mediabox.height))
        assert size == pytest.approx((paper.width_mm * MM_PT, paper.height_mm * MM_PT), abs=0.5)
    assert reader.metadata is not None
    assert reader.metadata.title == "Measuring sheet"


def test_every_word_can_be_found_on_its_page(painter: ModuleType) -> None:
    pages = measuring_pages(measured(LETTER, "imperial"))
    reader = opened(painter.pdf_bytes(pages, "Measuring sheet"))
    for page, printed in zip(pages, reader.pages, strict=True):
        found = squeezed(printed.extract_text())
        for shape in page.shapes:
            words = shape.words if isinstance(shape, Text) else getattr(shape, "entered", "")
            assert squeezed(words) in found


def test_boxes_are_painted_where_they_are_described(painter: ModuleType) -> None:
    (page, *_others) = measuring_pages(measured())
    (printed, *_rest) = opened(painter.pdf_bytes((page,), "Measuring sheet")).pages
    painted: list[tuple[float, ...]] = []

    def look(operator: bytes, operands: list, matrix: list, _text: list) -> None:
        if operator == b"re":
            a, _b, _c, d, e, f = matrix
            x, y, width, height = (float(n) for n in operands)
            points = (a * x + e, A4.height_mm * MM_PT - (d * y + f), a * width, -d * height)
            painted.append(tuple(n / MM_PT for n in points))

    printed.extract_text(visitor_operand_before=look)
    assert page.boxes
    for box in page.boxes:
        wanted = (box.left, box.top, box.width, box.height)
        assert any(spot == pytest.approx(wanted, abs=0.1) for spot in painted), box


def test_same_pages_make_the_same_file_apart_from_the_time(painter: ModuleType) -> None:
    pages = measuring_pages(bows(5))
    once, again = (painter.pdf_bytes(pages, "Measuring sheet") for _ in range(2))
    assert without_time(once) == without_time(again)
    other = painter.pdf_bytes(measuring_pages(bows(6)), "Measuring sheet")
    assert without_time(other) != without_time(once)


def test_no_text_of_any_sheet_has_to_be_made_smaller(painter: ModuleType) -> None:
    texts = {
        shape
        for subject in every_subject()
        for page in measuring_pages(subject)
        for shape in page.shapes
        if isinstance(shape, Text)
    }
    assert len(texts) > 100
    assert not [text for text in texts if painter.fitting_share(text) < 1]


def test_text_too_long_for_its_area_is_made_smaller(painter: ModuleType) -> None:
    text = Text(0, 0, 20, 4.3, "A name that is far too long for its place", align="centre")
    assert 0 < painter.fitting_share(text) < 1


def test_machine_without_a_font_is_told(
    painter: ModuleType, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(painter.QFontDatabase, "families", list)
    page = Page(A4, (Box(("paper", "date"), 20, 20, 30, 9),))
    with pytest.raises(ValueError, match="no font"):
        painter.pdf_bytes((page,), "Measuring sheet")
