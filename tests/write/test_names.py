import openpyxl
import pytest

from reporter.books.blocks import Chart, Choice, Field, Figure, Figures, Live, Series, Sheet, Table
from reporter.write.functions import portable
from tests.write.samples import book_of, book_with, table, written


def formulas_of(path, sheet="Page"):
    cells = (cell for row in openpyxl.load_workbook(path)[sheet].iter_rows() for cell in row)
    return {cell.coordinate: cell.value for cell in cells if cell.data_type == "f"}


def names_of(path):
    return {name: found.attr_text for name, found in openpyxl.load_workbook(path).defined_names.items()}


def test_a_column_symbol_becomes_a_name_on_an_absolute_bounded_range(tmp_path):
    sums = table("sums", all=[Live("SUM({stint.fish})", 6)])
    stints = Sheet("Stints of mine", (table("stint", trip=["a", "b", "c"], fish=[1, 2, 3]),), "behind")
    path = written(book_with(Sheet("Page", (sums,), "me"), stints), tmp_path)
    assert names_of(path) == {"stint_fish": "'Stints of mine'!$B$2:$B$4"}
    assert formulas_of(path) == {"A2": "=SUM(stint_fish)"}


def test_a_row_symbol_becomes_the_cell_of_that_column_in_the_formulas_own_row(tmp_path):
    shares = [Live("{row.fish}/{row.hours}", 0.5), Live("{row.fish}/{row.hours}", 2.0)]
    path = written(book_of(table("t", fish=[1, 4], hours=[2, 2], rate=shares)), tmp_path)
    assert formulas_of(path) == {"C2": "=$A2/$B2", "C3": "=$A3/$B3"}


def test_a_row_symbol_in_the_total_line_means_the_total_lines_own_cells(tmp_path):
    fields = (Field("fish", "Fish"), Field("double", "Double"))
    total = {"fish": Live("SUM({t.fish})", 5), "double": Live("{row.fish}*2", 10)}
    path = written(book_of(Table("t", fields, {"fish": [2, 3], "double": [4, 6]}, total=total)), tmp_path)
    assert formulas_of(path) == {"A4": "=SUM(t_fish)", "B4": "=$A4*2"}
    assert names_of(path) == {"t_fish": "'Page'!$A$2:$A$3"}


def test_a_figure_symbol_becomes_a_name_on_its_value_cell(tmp_path):
    figures = Figures(
        "season", (Figure("hours", "Hours", 12.5), Figure("twice", "Twice", Live("{season.hours}*2", 25)))
    )
    path = written(book_of(figures), tmp_path)
    assert names_of(path) == {"season_hours": "'Page'!$B$1"}
    assert formulas_of(path) == {"B2": "=season_hours*2"}


def test_columns_that_no_formula_uses_get_no_name(tmp_path):
    assert names_of(written(book_of(table("t", fish=[1], hours=[2])), tmp_path)) == {}


def test_an_empty_table_gives_a_range_of_one_blank_row(tmp_path):
    path = written(book_of(table("sums", all=[Live("SUM({t.fish})", 0)]), table("t", fish=[])), tmp_path)
    assert names_of(path) == {"t_fish": "'Page'!$A$5:$A$5"}
    assert openpyxl.load_workbook(path)["Page"]["A5"].value is None


def test_array_constants_and_text_in_formulas_are_left_alone(tmp_path):
    live = Live('SUM({1,2})+LEN("{a}, XLOOKUP(")', 16)
    with pytest.raises(ValueError, match="'a'"):
        written(book_of(table("t", n=[live])), tmp_path)
    path = written(book_of(table("t", n=[Live('SUM({1,2})+LEN("OFFSET(A:B")', 13)])), tmp_path)
    assert formulas_of(path) == {"A2": '=SUM({1,2})+LEN("OFFSET(A:B")'}


@pytest.mark.parametrize("symbol", ["stint.fish", "t.fishes", "t", "row.fishes", "season.hours", "t.fish.x"])
def test_an_unknown_symbol_is_an_error_that_names_it_and_writes_nothing(tmp_path, symbol):
    with pytest.raises(ValueError, match=symbol.removeprefix("row")):
        written(book_of(table("t", fish=[1], sum=[Live(f"SUM({{{symbol}}})", 1)])), tmp_path)
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("where", ["choice", "chart"])
def test_an_unknown_symbol_of_a_choice_or_a_chart_is_an_error(tmp_path, where):
    chosen = Table("c", (Field("a", "A", choice=Choice(symbol="no.where")),), {"a": []})
    chart = Chart("bar", "T", "L", "V", (Series("S", "no.where", "no.where"),))
    with pytest.raises(ValueError, match=r"no\.where"):
        written(book_of(chosen if where == "choice" else chart), tmp_path)


def test_two_symbols_that_would_give_one_name_are_an_error(tmp_path):
    live = Live("SUM({a_b.c})+SUM({a.b_c})", 0)
    book = book_of(table("t", x=[live]), table("a_b", c=[0]), table("a", b_c=[0]))
    with pytest.raises(ValueError, match="a_b_c"):
        written(book, tmp_path)


@pytest.mark.parametrize("key", ["Stint", "1st", "a b", "row", ""])
def test_a_key_that_cannot_be_part_of_a_name_is_an_error(tmp_path, key):
    with pytest.raises(ValueError, match="key"):
        written(book_of(Table(key, (Field("a", "A"),), {"a": [1]})), tmp_path)


def test_a_formula_longer_than_a_cell_takes_is_an_error(tmp_path):
    with pytest.raises(ValueError, match="8192"):
        written(book_of(table("t", a=[Live("1" + "+1" * 4_096, 4_097)])), tmp_path)
    written(book_of(table("t", a=[Live("1" + "+1" * 4_095, 4_096)])), tmp_path)


@pytest.mark.parametrize(
    "formula",
    [
        "XLOOKUP(1,{t.a},{t.a})",
        "MAXIFS({t.a},{t.a},1)",
        "OFFSET({t.a},1,0)",
        "SUM(A:A)",
        "SUM($B:$C)",
        "SUM(t[a])",
    ],
)
def test_what_not_every_spreadsheet_can_reckon_is_an_error(tmp_path, formula):
    with pytest.raises(ValueError, match=r"every spreadsheet|bounded"):
        written(book_of(table("t", a=[Live(formula, 1)])), tmp_path)


@pytest.mark.parametrize(
    ("formula", "stored"),
    [
        ("STDEV.S(a_b)", "_xlfn.STDEV.S(a_b)"),
        ('IFNA(T.INV.2T(0.1,5),"IFNA(")', '_xlfn.IFNA(_xlfn.T.INV.2T(0.1,5),"IFNA(")'),
        ("SUM(A1:B2)", "SUM(A1:B2)"),
    ],
)
def test_newer_functions_get_the_prefix_that_a_file_wants(formula, stored):
    assert portable(formula) == stored
