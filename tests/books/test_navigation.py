"""Finding one's way in the report: contents list, ways back, links to the rows behind."""

import re
from collections.abc import Iterator
from pathlib import Path

import openpyxl
import pytest
from openpyxl.workbook import Workbook

from tests.books.test_side_by_side import built
from tests.demo import make

CONTENTS = "Contents"
TARGET = re.compile(r"'(.+)'!A1")


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Workbook:
    return openpyxl.load_workbook(built(make.SAMPLES / make.CLEAN, tmp_path_factory.mktemp("demo")))


def links(book: Workbook, sheet: str) -> Iterator[tuple[str, str]]:
    """Text and target of every link of a sheet; none leaves the book."""
    for row in book[sheet].iter_rows():
        for cell in row:
            if cell.hyperlink is not None:
                assert cell.hyperlink.target is None
                found = TARGET.fullmatch(str(cell.hyperlink.location))
                assert found is not None
                yield str(cell.value), found[1].replace("''", "'")


def test_contents_list_leads_to_every_sheet_in_reading_order(book: Workbook) -> None:
    listed = list(links(book, CONTENTS))
    assert [text for text, _ in listed] == [name for name in book.sheetnames if name != CONTENTS]
    assert all(text == target for text, target in listed)


def test_every_sheet_has_a_line_beside_it_that_says_what_it_answers(book: Workbook) -> None:
    rows = [[cell for cell in row if cell is not None] for row in book[CONTENTS].iter_rows(values_only=True)]
    said = {str(row[0]): str(row[-1]) for row in rows if len(row) > 1}
    assert set(said) == set(book.sheetnames) - {CONTENTS}
    assert len(set(said.values())) == len(said)


def test_every_other_sheet_leads_back_to_the_contents(book: Workbook) -> None:
    for name in book.sheetnames:
        if name != CONTENTS:
            assert ("To the contents", CONTENTS) in links(book, name), name


def test_every_link_leads_to_a_sheet_of_the_report(book: Workbook) -> None:
    for name in book.sheetnames:
        assert {target for _, target in links(book, name)} <= set(book.sheetnames), name


@pytest.mark.parametrize(
    ("sheet", "title", "behind"),
    [
        ("Techniques", "Fish per rod-hour by technique", "Trip techniques"),
        ("Conditions", "Clarity", "Condition rates"),
        ("Fish", "By species", "Fish rows"),
        ("Paperwork", "Use against what is allowed", "Behind Paperwork"),
        ("Tackle", "Hang-ups and lures lost by technique", "Stints"),
        ("At a glance", "Fish per rod-hour", "Trip techniques"),
    ],
)
def test_headline_leads_to_the_rows_behind_it(book: Workbook, sheet: str, title: str, behind: str) -> None:
    assert (title, behind) in links(book, sheet)


def test_groups_of_sheets_have_a_tab_colour_each(book: Workbook) -> None:
    colours = {name: book[name].sheet_properties.tabColor.rgb for name in book.sheetnames}
    for_me, books, behind = (colours[name] for name in ("At a glance", "Paperwork", "Stints"))
    assert len({for_me, books, behind}) == 3
    assert {colours[name] for name in (CONTENTS, "Techniques", "Weeks", "Trips")} == {for_me}
    assert colours["Rows to fix"] == books
    assert {colours[name] for name in ("How it is worked out", "Trip techniques", "Fish rows")} == {behind}


def test_nothing_is_hidden_and_nothing_runs_by_itself(book: Workbook, tmp_path: Path) -> None:
    assert all(sheet.sheet_state == "visible" for sheet in book.worksheets)
    hidden = [
        (sheet.title, key)
        for sheet in book.worksheets
        for sizes in (sheet.row_dimensions, sheet.column_dimensions)
        for key, size in sizes.items()
        if size.hidden
    ]
    assert hidden == []
    assert book.vba_archive is None
