from dataclasses import replace

import openpyxl
import pytest

from reporter.books.blocks import Chart, Line, Series, Text
from tests.write.samples import book_of, table, written


def page_of(book, folder):
    return openpyxl.load_workbook(written(book, folder)).active


def sheet_of(book, **changes):
    (sheet,) = book.sheets
    return book._replace(sheets=(replace(sheet, **changes),))


@pytest.mark.parametrize(("paper", "code"), [("letter", 1), ("a4", 9)])
def test_a_sheet_prints_on_its_paper_on_one_page_of_width(tmp_path, paper, code):
    page = page_of(book_of(table("t", a=[1]))._replace(paper=paper), tmp_path)
    assert int(page.page_setup.paperSize or 1) == code
    assert page.sheet_properties.pageSetUpPr.fitToPage
    assert int(page.page_setup.fitToWidth or 1) == 1
    assert int(page.page_setup.fitToHeight) == 0


def test_a_wide_sheet_prints_on_several_pages_and_repeats_its_first_column(tmp_path):
    page = page_of(sheet_of(book_of(table("t", a=[1], b=[2]), bare=True), pages_wide=3), tmp_path)
    assert int(page.page_setup.fitToWidth) == 3
    assert page.print_title_cols == "$A:$A"


@pytest.mark.parametrize("landscape", [True, False])
def test_a_sheet_lies_on_its_side_when_it_asks_to(tmp_path, landscape):
    page = page_of(sheet_of(book_of(table("t", a=[1])), landscape=landscape), tmp_path)
    assert page.page_setup.orientation == ("landscape" if landscape else "portrait")


def test_header_and_footer_say_title_sheet_and_page(tmp_path):
    page = page_of(book_of(table("t", a=[1]), name="Fish & more", title="R&G of 2026 & Sons"), tmp_path)
    assert page.oddHeader.left.text == "R&& G of 2026 && Sons"
    assert page.oddFooter.left.text == "Fish && more"
    assert page.oddFooter.right.text == "Page &P of &N"


def test_a_private_sheet_says_so_on_every_page(tmp_path):
    page = page_of(sheet_of(book_of(table("t", a=[1])), private=True), tmp_path)
    assert page.oddFooter.left.text.endswith("private: names and places")


def test_tabs_are_coloured_by_group(tmp_path):
    colours = {
        page_of(sheet_of(book_of(table("t", a=[1])), group=group), tmp_path).sheet_properties.tabColor.rgb
        for group in ("me", "books", "behind", "log")
    }
    assert len(colours) == 4


def test_a_page_begins_before_a_chart_that_would_be_cut(tmp_path):
    data = table("t", name=["a"], rate=[1.0])
    chart = Chart("bar", "T", "L", "V", (Series("S", "t.name", "t.rate"),), rows=20)
    lines = Text(tuple(Line(f"line {number}") for number in range(30)))
    page = page_of(book_of(data, lines, chart), tmp_path)
    # 2 rows, 1 free, 30 lines, 1 free: the chart starts in row 35, and the page ends with row 34.
    assert [found.id for found in page.row_breaks.brk] == [34]


def test_a_long_table_runs_on_over_the_pages(tmp_path):
    assert page_of(book_of(table("t", a=["x"] * 200)), tmp_path).row_breaks.brk == []


def test_what_prints_is_bounded_on_a_sheet_to_read_and_open_on_one_to_type_in(tmp_path):
    lines = Text((Line("x"),))
    assert page_of(book_of(table("t", a=["x"]), lines), tmp_path).print_area.startswith("'Page'!$A$1:")
    assert page_of(book_of(table("t", a=["x"]), bare=True), tmp_path).print_area == ""


def test_a_heading_goes_to_the_next_page_with_the_chart_below_it(tmp_path):
    data = table("t", name=["a"], rate=[1.0])
    chart = Chart("bar", "T", "L", "V", (Series("S", "t.name", "t.rate"),), rows=20)
    lines = Text(tuple(Line(f"line {number}") for number in range(30)))
    page = page_of(book_of(data, lines, Text((Line("Rates", "heading"),)), chart), tmp_path)
    assert page["A35"].value == "Rates"
    assert [found.id for found in page.row_breaks.brk] == [34]
