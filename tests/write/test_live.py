import pytest

from reporter.books.blocks import Live
from tests.recalculate import disagreements, formula_cells, recalculated
from tests.write.samples import book_of, table, written
from tests.write.specimen import specimen

pytestmark = pytest.mark.libreoffice


def test_live_formulas_recalculate_to_the_values_stored_beside_them(tmp_path):
    path = written(specimen(), tmp_path)
    assert len(formula_cells(path)) == 21
    assert disagreements(path, tmp_path) == []


def test_a_stored_value_that_is_wrong_is_found_out(tmp_path):
    path = written(
        book_of(table("t", n=[1, 2], sum=[Live("SUM({t.n})", 4), Live("SUM({t.n})", 3)])), tmp_path
    )
    (found,) = disagreements(path, tmp_path)
    assert found == "Page!B2 =SUM(t_n): stored 4, recalculated 3"


def test_formulas_that_end_in_nothing_or_in_words_agree_too(tmp_path):
    cells = [Live('IF({row.n}>1,"","many")', value) for value in ("many", "")]
    path = written(book_of(table("t", n=[1, 2], say=cells)), tmp_path)
    assert formula_cells(recalculated(path, tmp_path))["Page", "B2"][1] == "many"
    assert disagreements(path, tmp_path) == []
