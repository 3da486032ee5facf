import openpyxl
import pytest

from reporter.books.blocks import Chart, Field, Figure, Figures, Line, Series, Table, Text
from tests.write.samples import book_of, parts, table, written


def page_of(path):
    return openpyxl.load_workbook(path)["Page"]


def column(page, letter):
    return [cell.value for cell in page[letter]]


def test_blocks_stand_from_top_to_bottom_with_a_row_between_them(tmp_path):
    text = Text((Line("Title", "title"), Line("Body")))
    figures = Figures("f", (Figure("a", "Label", 5, remark="remark"),), title="Figures")
    fields = (Field("a", "Heading"),)
    whole = Table("t", fields, {"a": ["x", "y"]}, title="Table", note="Note", total={"a": "Total"})
    page = page_of(written(book_of(text, figures, whole), tmp_path))
    assert column(page, "A") == [
        *("Title", "Body", None),
        *("Figures", "Label", None),
        *("Table", "Heading", "x", "y", "Total", "Note"),
    ]
    assert (page["B5"].value, page["C5"].value) == (5, "remark")


def test_the_total_line_is_bold_below_a_line(tmp_path):
    page = page_of(
        written(book_of(Table("t", (Field("a", "A"),), {"a": ["x"]}, total={"a": "All"})), tmp_path)
    )
    assert (page["A2"].font.b, page["A3"].font.b) == (False, True)
    assert page["A3"].border.top.style == "thin"


def test_a_grey_row_is_in_italics_and_no_other(tmp_path):
    grey = Table("t", (Field("a", "A"),), {"a": ["x", "y", "z"]}, grey=[False, True, False])
    page = page_of(written(book_of(grey), tmp_path))
    assert [page[f"A{row}"].font.i for row in (2, 3, 4)] == [False, True, False]


def filtered(rows=3, above=1, **extra):
    fields = (Field("a", "A"), Field("b", "B", "whole"))
    columns = {"a": [None, *["x"] * (rows - 1)], "b": list(range(rows))} if rows else {"a": [], "b": []}
    text = Text(tuple(Line(f"line {number}") for number in range(above)))
    return book_of(text, Table("t", fields, columns, filtered=True, **extra))


def test_a_table_to_filter_counts_the_rows_shown_by_a_column_without_blanks(tmp_path):
    page = page_of(written(filtered(), tmp_path))
    assert page.auto_filter.ref == "A4:B7"
    assert page["A3"].value == '="Rows shown: "&SUBTOTAL(103,$B$5:$B$7)&" of 3"'


def test_the_stored_count_of_rows_shown_is_that_of_all_rows(tmp_path):
    path = written(filtered(), tmp_path)
    assert openpyxl.load_workbook(path, data_only=True)["Page"]["A3"].value == "Rows shown: 3 of 3"


def test_without_a_column_that_is_full_no_count_is_claimed(tmp_path):
    gaps = Table("t", (Field("a", "A"), Field("b", "B")), {"a": ["x", None], "b": [None, "x"]}, filtered=True)
    page = page_of(written(book_of(gaps), tmp_path))
    assert column(page, "A") == ["A", "x", None]


def test_a_row_keeps_the_total_out_of_what_is_filtered(tmp_path):
    page = page_of(written(filtered(total={"a": "Total"}), tmp_path))
    assert page["A8"].value is None
    assert page["A9"].value == "Total"
    assert page.auto_filter.ref == "A4:B7"


def test_an_empty_table_to_filter_is_drawn_with_one_blank_row(tmp_path):
    page = page_of(written(filtered(rows=0), tmp_path))
    assert page.auto_filter.ref == "A4:B5"


def test_the_heading_of_a_table_to_filter_stays_in_sight_and_repeats_on_paper(tmp_path):
    page = page_of(written(filtered(), tmp_path))
    assert page.freeze_panes == "A5"
    assert page.print_title_rows == "$4:$4"


def test_a_heading_too_far_down_is_not_frozen_as_nothing_would_be_left_to_scroll(tmp_path):
    assert page_of(written(filtered(above=30), tmp_path)).freeze_panes is None


def test_help_is_a_note_on_the_heading_of_results_without_an_author(tmp_path):
    noted = Table("t", (Field("a", "A", help="What it says."), Field("b", "B")), {"a": [1], "b": [2]})
    path = written(book_of(noted), tmp_path)
    page = page_of(path)
    assert page["A1"].comment.text == "What it says."
    assert "<authors><author></author></authors>" in parts(path)["xl/comments1.xml"]
    assert page["B1"].comment is None


def test_a_text_too_long_for_its_column_is_wrapped_in_a_row_high_enough(tmp_path):
    long = "every word of this note is to be seen on the page " * 6
    page = page_of(written(book_of(table("t", a=["short", long])), tmp_path))
    assert page["A3"].alignment.wrap_text
    letters_a_line = page.column_dimensions["A"].width * 1.25
    assert page.row_dimensions[3].height >= 12.75 * len(long) / letters_a_line
    assert page.row_dimensions[2].height is None


def test_a_column_is_as_wide_as_the_widest_table_below_one_another_needs(tmp_path):
    def width(*tables):
        return page_of(written(book_of(*tables), tmp_path)).column_dimensions["A"].width

    wide = table("wide", a=["x" * 30])
    assert width(table("t", a=["x"]), wide) == width(wide) >= 30


@pytest.mark.parametrize(("given", "stored"), [(25.0, 25.7109375), (None, None)])
def test_a_width_that_a_field_asks_for_is_kept(tmp_path, given, stored):
    asked = Table("t", (Field("a", "A", width=given),), {"a": ["x" * 40]})
    width = page_of(written(book_of(asked), tmp_path)).column_dimensions["A"].width
    assert width == stored if stored else width > 40


def test_long_text_is_merged_over_the_page_and_wrapped_and_short_text_is_not(tmp_path):
    long = "The range that your record supports stands beside every rate and says how much it is worth. " * 3
    page = page_of(written(book_of(Text((Line("short"), Line(long)))), tmp_path))
    (merged,) = page.merged_cells.ranges
    assert (merged.min_row, merged.max_row, merged.min_col) == (2, 2, 1)
    assert page["A2"].alignment.wrap_text
    assert page.row_dimensions[2].height >= 3 * 12.75


def test_a_caution_has_a_frame_and_begins_with_its_word_once(tmp_path):
    lines = Text((Line("Cold water kills.", "caution"), Line("Caution: so does lightning.", "caution")))
    page = page_of(written(book_of(lines), tmp_path))
    assert column(page, "A") == ["Caution: Cold water kills.", "Caution: so does lightning."]
    assert page["A1"].border.left.style == "medium"


def charts_of(path):
    return [text for name, text in sorted(parts(path).items()) if name.startswith("xl/charts/chart")]


def chart(kind="bar", count=1, rates=(1.0, 2.5), **ends):
    data = table("t", name=["a & b", "c"], rate=list(rates), down=[0.5, None], up=[0.9, 0.6])
    series = tuple(Series(f"series {n}", "t.name", "t.rate", **ends) for n in range(count))
    return book_of(data, Chart(kind, "Rates", "Technique", "Fish", series, rows=10, alt="Bars of rates"))


def test_a_chart_is_native_with_its_titles_labels_and_values(tmp_path):
    (drawn,) = charts_of(written(chart(), tmp_path))
    for text in ("Rates", "Technique", "Fish"):
        assert f"<a:t>{text}</a:t>" in drawn
    assert "<c:f>'Page'!$A$2:$A$3</c:f>" in drawn
    assert "<c:f>'Page'!$B$2:$B$3</c:f>" in drawn
    assert "<c:v>a &amp; b</c:v>" in drawn
    assert "<c:dispBlanksAs" not in drawn  # blanks are gaps unless a chart says otherwise


def test_bars_read_from_the_top_in_the_tables_order(tmp_path):
    (drawn,) = charts_of(written(chart(), tmp_path))
    categories = drawn[drawn.index("<c:catAx>") : drawn.index("</c:catAx>")]
    assert '<c:orientation val="maxMin"/>' in categories
    assert "Technique" in categories


def test_error_bars_take_their_lengths_from_columns_and_the_axis_reaches_their_ends(tmp_path):
    (drawn,) = charts_of(written(chart(minus="t.down", plus="t.up"), tmp_path))
    minus = drawn[drawn.index("<c:minus>") : drawn.index("</c:minus>")]
    plus = drawn[drawn.index("<c:plus>") : drawn.index("</c:plus>")]
    assert "'Page'!$C$2:$C$3" in minus
    assert "'Page'!$D$2:$D$3" in plus
    assert '<c:max val="4.0"/>' in drawn  # the bar of 2.5 and 0.6 above it
    assert '<c:min val="0"/>' in drawn


def test_bars_below_zero_are_not_cut_off(tmp_path):
    (drawn,) = charts_of(written(chart(rates=(-1.0, 2.5)), tmp_path))
    assert "<c:min " not in drawn


@pytest.mark.parametrize(("count", "legend"), [(1, False), (2, True)])
def test_only_a_chart_of_several_series_has_a_legend(tmp_path, count, legend):
    (drawn,) = charts_of(written(chart("column", count), tmp_path))
    assert ("<c:legend>" in drawn) is legend


def test_series_differ_by_more_than_their_colour(tmp_path):
    (lines,) = charts_of(written(chart("line", 2), tmp_path))
    assert '<c:symbol val="circle"/>' in lines
    assert '<c:symbol val="square"/>' in lines
    (bars,) = charts_of(written(chart("bar", 2), tmp_path))
    assert "<a:pattFill" in bars


def test_a_chart_has_its_alternative_text(tmp_path):
    drawing = parts(written(chart(), tmp_path))["xl/drawings/drawing1.xml"]
    assert 'descr="Bars of rates"' in drawing


def test_a_figure_that_is_a_long_text_runs_on_over_the_page_and_keeps_its_own_cell(tmp_path):
    long = "compared on the same mix of days the two are much closer than they look at first sight " * 2
    says = Figure("says", "What stands out", long)
    path = written(book_of(Figures("f", (says, Figure("n", "Trips", 5, "whole", "finished ones")))), tmp_path)
    page = page_of(path)
    assert page["B1"].value == long
    (merged,) = page.merged_cells.ranges
    assert (merged.min_row, merged.min_col) == (1, 2)
    assert page["B1"].alignment.wrap_text
    assert (page["B2"].value, page["C2"].value) == (5, "finished ones")


def test_values_of_figures_line_up_on_the_left_right_of_the_longest_label(tmp_path):
    data = table("t", a=["x"], b=["y"], c=["z"])
    figures = Figures("f", (Figure("n", "A label that is wider than one narrow column", 5, "whole"),))
    page = page_of(written(book_of(data, figures), tmp_path))
    (value,) = [cell for cell in page[4] if cell.value == 5]
    room = sum(page.column_dimensions[letter].width for letter in "ABCDEFGHI"[: value.column - 1])
    assert value.column > 2
    assert room > len("A label that is wider than one narrow column") * 0.85
    assert value.alignment.horizontal == "left"
