"""The columns file of a filing: read as documented, refused in a sentence where it is not."""

from pathlib import Path

import pytest

from reporter.read.asked_columns import read_asked_columns
from reporter.read.errors import Unreadable

TEMPLATES = Path(__file__).parent.parent.parent / "templates"
COLUMN = '[[column]]\nheading = "Day"\nfield = "date"\n'


def read(folder: Path, text: str) -> object:
    path = folder / "columns.toml"
    path.write_text(text, encoding="utf-8")
    return read_asked_columns(path)


def test_example_of_a_row_a_trip_says_what_it_says() -> None:
    asked = read_asked_columns(TEMPLATES / "columns, a row a trip.toml")
    assert (asked.name, asked.rows, asked.date, asked.hours) == (
        "Lake trip sheet",
        "trip",
        "MM/DD/YYYY",
        "decimal",
    )
    assert [column.heading for column in asked.columns][:4] == ["Sheet no.", "Void", "Day", "Lake no."]
    assert asked.columns[3].codes == {"Lake Arden": "0042", "Hollin Pool": "0260"}
    assert (asked.columns[-1].key, asked.columns[-1].text) == ("", "no")


def test_example_of_a_row_a_species_says_what_it_says() -> None:
    asked = read_asked_columns(TEMPLATES / "columns, a row a species.toml")
    assert (asked.rows, asked.date, asked.hours, asked.decimal_mark) == ("species", "DD.MM.YYYY", "h:mm", ",")
    assert asked.columns[3].codes["LMB"] == "11"
    assert asked.columns[-1].decimals == 1


def test_what_is_left_out_is_as_usual(tmp_path: Path) -> None:
    asked = read_asked_columns_of(tmp_path, COLUMN)
    assert asked == ("As asked for", "trip", "YYYY-MM-DD", "decimal", ".")


def read_asked_columns_of(folder: Path, text: str) -> tuple[str, ...]:
    path = folder / "columns.toml"
    path.write_text(text, encoding="utf-8")
    asked = read_asked_columns(path)
    return asked.name, asked.rows, asked.date, asked.hours, asked.decimal_mark


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "it has no [[column]]"),
        ("name = Lake", "it is not TOML"),
        ('nane = "x"\n' + COLUMN, "the file has 'nane', which is nothing I know"),
        ("name = 3\n" + COLUMN, "the file: name is text between quotes"),
        ('rows = "fish"\n' + COLUMN, "rows is 'fish'; write one of: trip, species"),
        ('date = "day first"\n' + COLUMN, "date is 'day first'"),
        ('hours = "minutes"\n' + COLUMN, "hours is 'minutes'; write one of: decimal, h:mm"),
        ("column = [3]", "column 1 is no table"),
        ('[[column]]\nfield = "date"', "column 1 has no heading"),
        ('[[column]]\nheading = "Day"', "column 1 (Day) needs either a field or a fixed text"),
        ('[[column]]\nheading = "Day"\nfield = "date"\ntext = ""', "needs either a field or a fixed text"),
        ('[[column]]\nheading = "Day"\nfield = "dates"', "column 1 (Day): there is no field 'dates'"),
        ('[[column]]\nheading = "Fish"\nfield = "species"', "species is told only where a row is a species"),
        (COLUMN + 'codes = "x"', "codes are written as codes ="),
        (COLUMN + "decimals = 9", "decimals is a whole number from 0 to 6"),
        (COLUMN + 'colour = "x"', "column 1 has 'colour'"),
        ("column = " + "[" * 2000 + "]" * 2000, "it is not TOML"),
    ],
)
def test_slip_is_a_sentence_that_names_it(text: str, said: str, tmp_path: Path) -> None:
    with pytest.raises(Unreadable) as refused:
        read(tmp_path, text)
    assert str(refused.value).startswith("I cannot read the columns file columns.toml: ")
    assert said in str(refused.value)


def test_file_that_is_not_there_or_no_text_is_a_sentence(tmp_path: Path) -> None:
    with pytest.raises(Unreadable, match="there is no such file"):
        read_asked_columns(tmp_path / "none.toml")
    (tmp_path / "x.toml").write_bytes(b"\xff\xfe\x00")
    with pytest.raises(Unreadable, match="it is not text in UTF-8"):
        read_asked_columns(tmp_path / "x.toml")
    with pytest.raises(Unreadable, match="I cannot read"):
        read_asked_columns(tmp_path)
