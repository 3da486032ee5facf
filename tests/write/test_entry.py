import datetime as dt

import openpyxl
import pytest

from reporter.books.blocks import Book, Choice, Field, Sheet, Table
from tests.write.samples import DAY, book_of, book_with, parts, table, written


def entry_table(*fields, rows=200, **columns):
    return Table("trips", fields, columns or {field.key: [] for field in fields}, blank_rows=rows)


def validations(path, sheet="Page"):
    found = openpyxl.load_workbook(path)[sheet].data_validations.dataValidation
    return {str(one.sqref): one for one in found}


def test_a_literal_choice_is_a_drop_down_over_all_rows_to_type_in(tmp_path):
    field = Field("sky", "Sky", choice=Choice(("sun", 'half "sun"')))
    (where, rule), *_ = validations(written(book_of(entry_table(field), bare=True), tmp_path)).items()
    assert where == "A2:A201"
    assert rule.type == "list"
    assert rule.formula1 == '"sun,half ""sun"""'


def test_a_strict_choice_warns_and_any_other_is_silent(tmp_path):
    fields = [Field(key, key, choice=Choice(("x",), strict=key == "a")) for key in "ab"]
    rules = validations(written(book_of(entry_table(*fields), bare=True), tmp_path))
    assert rules["A2:A201"].showErrorMessage
    assert rules["A2:A201"].errorStyle == "warning"
    assert not rules["B2:B201"].showErrorMessage


def test_a_choice_by_symbol_takes_the_labels_without_the_blanks_below_them(tmp_path):
    lists = Sheet(
        "My lists", (table("list", sky=["sun", "rain", None, None], wind=list("abcd")),), "log", bare=True
    )
    field = Field("sky", "Sky", choice=Choice(symbol="list.sky"))
    path = written(book_with(Sheet("Page", (entry_table(field),), "log", bare=True), lists), tmp_path)
    assert validations(path)["A2:A201"].formula1 == "'My lists'!$A$2:$A$3"


def test_a_choice_from_a_table_to_type_in_offers_what_is_typed_later_too(tmp_path):
    names = Sheet(
        "Techniques",
        (Table("technique", (Field("name", "Technique"),), {"name": ["a"]}, blank_rows=9),),
        "log",
        bare=True,
    )
    field = Field("technique", "Technique", choice=Choice(symbol="technique.name", strict=False))
    path = written(book_with(Sheet("Page", (entry_table(field),), "log", bare=True), names), tmp_path)
    assert validations(path)["A2:A201"].formula1 == "'Techniques'!$A$2:$A$11"


def test_a_cell_with_a_field_of_its_own_has_that_fields_look_help_and_drop_down(tmp_path):
    fields = Field("setting", "Setting"), Field("value", "Value", "typed", help="Any text.")
    own = {
        1: {"value": Field("units", "Units", choice=Choice(("us", "metric")), help="Of all numbers.")},
        2: {"value": Field("first", "First day", "date", help="Of the season.")},
    }
    columns = {
        "setting": ["Name", "Units", "First day", "Other"],
        "value": ["x", "us", dt.date(2026, 3, 1), None],
    }
    path = written(book_of(Table("season", fields, columns, own_fields=own), bare=True), tmp_path)
    rules = validations(path)
    assert {where: rule.prompt for where, rule in rules.items()} == {
        "B2": "Any text.",
        "B3": "Of all numbers.",
        "B4": "Of the season.",
        "B5": "Any text.",
    }
    assert rules["B3"].formula1 == '"us,metric"'
    page = openpyxl.load_workbook(path)["Page"]
    assert [page[f"B{row}"].number_format for row in (2, 3, 4)] == ["@", "General", "ddd d mmm yyyy"]
    assert page["B4"].value == dt.datetime(2026, 3, 1)


def test_help_stands_beside_the_cell_under_the_heading_without_its_unit(tmp_path):
    field = Field("temp", "Water temp (°F)", help="At the surface.")
    path = written(book_of(entry_table(field), bare=True), tmp_path)
    rule = validations(path)["A2:A201"]
    assert (rule.promptTitle, rule.prompt) == ("Water temp", "At the surface.")
    assert not [name for name in parts(path) if "comments" in name]


def test_the_heading_is_in_row_1_and_stays_in_sight(tmp_path):
    sheet = openpyxl.load_workbook(written(book_of(entry_table(Field("a", "Trip")), bare=True), tmp_path))[
        "Page"
    ]
    assert sheet["A1"].value == "Trip"
    assert sheet.freeze_panes == "A2"
    assert sheet.print_title_rows == "$1:$1"


def test_a_required_heading_is_bold_and_any_other_is_not(tmp_path):
    fields = Field("a", "Trip", required=True), Field("b", "Notes")
    sheet = openpyxl.load_workbook(written(book_of(entry_table(*fields), bare=True), tmp_path))["Page"]
    assert (sheet["A1"].font.b, sheet["B1"].font.b) == (True, False)
    assert sheet["A1"].fill.fgColor.rgb != sheet["B1"].fill.fgColor.rgb


@pytest.mark.parametrize(
    ("paper", "date", "time"),
    [("a4", "ddd d mmm yyyy", "hh:mm"), ("letter", "ddd mmm d, yyyy", "h:mm AM/PM")],
)
def test_columns_are_formatted_whole_so_that_blank_rows_cost_nothing(tmp_path, paper, date, time):
    fields = Field("d", "Date", "date"), Field("t", "Start", "time"), Field("p", "Parts", "typed")
    sheet = Sheet(
        "Page",
        (entry_table(*fields, rows=5_000, d=[dt.date(2026, 5, 1)], t=[None], p=["4-8"]),),
        "log",
        bare=True,
    )
    path = written(Book("t", "log", (sheet,), paper, DAY), tmp_path)
    page = openpyxl.load_workbook(path)["Page"]
    assert [page.column_dimensions[column].number_format for column in "ABC"] == [date, time, "@"]
    assert page["A2"].number_format == date
    assert page["C2"].value == "4-8"
    assert page.max_row == 2
    assert path.stat().st_size < 12_000


def test_a_card_to_fill_in_with_a_pencil_has_a_frame_around_every_cell(tmp_path):
    card = Table(
        "card", (Field("a", "A"), Field("b", "B")), {"a": ["x"], "b": [None]}, blank_rows=2, ruled=True
    )
    page = openpyxl.load_workbook(written(book_of(card), tmp_path))["Page"]
    for row in (2, 3, 4):
        for column in "AB":
            assert page[f"{column}{row}"].border.left.style == "thin"


def test_a_cell_to_choose_in_among_results_is_framed_and_filled(tmp_path):
    picked = Table("pick", (Field("a", "Sky", choice=Choice(("sun", "rain"))),), {"a": ["sun"]})
    path = written(book_of(picked), tmp_path)
    cell = openpyxl.load_workbook(path)["Page"]["A2"]
    assert cell.fill.fill_type == "solid"
    assert cell.border.left.style == "thin"
    assert validations(path)["A2"].formula1 == '"sun,rain"'
