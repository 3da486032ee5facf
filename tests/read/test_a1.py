import openpyxl.utils
import pytest

from reporter.schema.a1 import address, column_letters, corners, row_and_column


def test_letters_are_those_of_openpyxl_for_every_column_of_a_sheet() -> None:
    assert [column_letters(n) for n in range(1, 16385)] == [
        openpyxl.utils.get_column_letter(n) for n in range(1, 16385)
    ]


def test_an_address_leads_back_to_its_cell() -> None:
    for row, column in ((1, 1), (7, 2), (31, 26), (1048576, 16384), (10, 27), (9, 702), (9, 703)):
        assert row_and_column(address(row, column)) == (row, column)


def test_addresses_are_written_as_a_spreadsheet_shows_them() -> None:
    assert address(7, 2) == "B7"
    assert address(1048576, 16384) == "XFD1048576"


def test_dollar_signs_do_not_matter() -> None:
    assert row_and_column("$C$12") == (12, 3)


def test_corners_of_a_range_and_of_a_single_cell() -> None:
    assert corners("B2:D9") == (2, 2, 9, 4)
    assert corners("B2") == (2, 2, 2, 2)
    assert corners("D9:B2") == (2, 2, 9, 4)


@pytest.mark.parametrize("wrong", ["", "7", "B", "B0", "b7", "B7x", "A:A", "ABCD1", "B-1"])
def test_what_is_no_address_is_refused(wrong: str) -> None:
    with pytest.raises(ValueError, match="not a cell address"):
        row_and_column(wrong)


def test_there_is_no_column_zero() -> None:
    with pytest.raises(ValueError, match="count from 1"):
        column_letters(0)
