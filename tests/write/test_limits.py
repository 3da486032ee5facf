import pytest

from reporter.books.blocks import Book, Choice, Field, Figure, Figures, Line, Sheet, Table, Text
from tests.write.samples import DAY, book_of, book_with, table, written


@pytest.mark.parametrize(
    "name", ["x" * 32, "a/b", "a:b", "[a]", "'a", "a'", "History", "", " ", "\x00", "🐟" * 16]
)
def test_a_sheet_name_that_a_spreadsheet_refuses_is_an_error(tmp_path, name):
    with pytest.raises(ValueError, match="name for a sheet"):
        written(book_of(table("t", a=[1]), name=name), tmp_path)


def test_sheet_names_that_differ_in_case_alone_are_an_error(tmp_path):
    sheets = [Sheet(name, (), "me") for name in ("Fish", "FISH")]
    with pytest.raises(ValueError, match="twice"):
        written(book_with(*sheets), tmp_path)


def test_a_kind_of_workbook_that_the_mark_does_not_know_is_an_error(tmp_path):
    with pytest.raises(ValueError, match="poem"):
        written(Book("t", "poem", (), "a4", DAY), tmp_path)


@pytest.mark.parametrize(
    "broken",
    [
        Table("t", (Field("a", "A"), Field("b", "B")), {"a": [1], "b": [1, 2]}),
        Table("t", (Field("a", "A"),), {"a": [1]}, grey=[True, False]),
        Table("t", (Field("a", "A"),), {"b": [1]}),
        Table("t", (Field("a", "A"),), {"a": [1]}, total={"b": 1}),
        Table("t", (Field("a", "A"), Field("a", "A")), {"a": [1]}),
        Table("t", (), {}),
        Table("t", (Field("a", "A", help="x" * 256),), {"a": [1]}),
        Table("t", (Field("a", "A"),), {"a": [1]}, own_fields={1: {"a": Field("a", "A")}}),
        Table("t", (Field("a", "A"),), {"a": [1]}, own_fields={0: {"b": Field("b", "B")}}),
        Table("t", (Field("a", "A"),), {"a": [1]}, own_fields={0: {"a": Field("a", "A", help="x" * 256)}}),
    ],
)
def test_a_table_whose_parts_do_not_fit_together_is_an_error(tmp_path, broken):
    with pytest.raises(ValueError, match=r"'t'|t\.a"):
        written(book_of(broken), tmp_path)


def test_a_key_used_twice_is_an_error(tmp_path):
    with pytest.raises(ValueError, match="twice"):
        written(book_of(table("t", a=[1]), Figures("t", (Figure("a", "A", 1),))), tmp_path)
    with pytest.raises(ValueError, match="twice"):
        written(book_of(Figures("f", (Figure("a", "A", 1), Figure("a", "B", 2)))), tmp_path)


def test_two_filters_on_a_sheet_are_an_error(tmp_path):
    one, two = (Table(key, (Field("a", "A"),), {"a": [1]}, filtered=True) for key in ("one", "two"))
    with pytest.raises(ValueError, match="more than one"):
        written(book_of(one, two), tmp_path)


def test_a_sheet_to_type_in_takes_its_table_alone_in_row_1(tmp_path):
    sheet_table = Table("t", (Field("a", "A"),), {"a": []})
    with pytest.raises(ValueError, match="row 1"):
        written(book_of(Text((Line("x"),)), sheet_table, bare=True), tmp_path)
    with pytest.raises(ValueError, match="row 1"):
        written(book_of(Table("t", (Field("a", "A"),), {"a": []}, title="T"), bare=True), tmp_path)


@pytest.mark.parametrize("labels", [("a, b", "c"), tuple(f"label {n:03d}" for n in range(30))])
def test_labels_that_a_literal_list_cannot_hold_are_an_error(tmp_path, labels):
    with pytest.raises(ValueError, match="symbol"):
        written(
            book_of(Table("t", (Field("a", "A", choice=Choice(labels)),), {"a": []}), bare=True), tmp_path
        )


def test_a_heading_with_help_is_no_longer_than_the_title_of_a_message(tmp_path):
    fits = Field("a", "x" * 32 + " (°F)", help="Help.")
    written(book_of(Table("t", (fits,), {"a": []}), bare=True), tmp_path)
    long = Field("a", "x" * 33 + " (°F)", help="Help.")
    with pytest.raises(ValueError, match="32"):
        written(book_of(Table("t", (long,), {"a": []}), bare=True), tmp_path)


@pytest.mark.parametrize(
    "block",
    [
        Text((Line("there", sheet="Nowhere"),)),
        Figures("f", (Figure("a", "A", 1, sheet="Nowhere"),)),
        Table("t", (Field("a", "A"),), {"a": [1]}, title="T", behind="Nowhere"),
    ],
)
def test_what_leads_to_a_sheet_that_is_not_there_is_an_error(tmp_path, block):
    with pytest.raises(ValueError, match="Nowhere"):
        written(book_of(block), tmp_path)
