"""The fix list as a workbook: its links, its drop-downs, its order, how it prints."""

from collections.abc import Callable
from pathlib import Path

import openpyxl
import pytest
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.worksheet import Worksheet

from reporter.run.fix_list import write_fix_list
from reporter.run.season import read_season
from reporter.schema.species import SPECIES
from tests.conftest import WriteLog

Made = Callable[..., Worksheet]

TRIPS = [
    ["Trip", "Date", "Water", "Start", "End", "Anglers"],
    ["T-001", "2026-04-18", "Lake Arden", "6:00", "10:00", 2],
    ["T-002", "?", "Lake Arden", "6:00", "10:00", 2],
    ["T-003", "2026-09-12", None, "6:00", "10:00", 2],
]
CLIENTS = [["Client", "Skill"], ["C01", None], ["C02", None]]


@pytest.fixture
def made(write_log: WriteLog, tmp_path: Path) -> Made:
    """Writes a log with changes and its fix list, and opens that."""

    def make(changes: object, target: Path | None = None, **options: object) -> Worksheet:
        log = write_log(changes, folder=tmp_path, **options)
        path = target or tmp_path / "fix.xlsx"
        write_fix_list(read_season(log), path)
        return openpyxl.load_workbook(path)["Fix list"]

    return make


def line(page: Worksheet, where: str) -> int:
    """The row of the line that begins with a place."""
    (row,) = [row[1].row for row in page.iter_rows() if str(row[1].value).partition(",")[0] == where]
    return int(row)


def choices(page: Worksheet, where: str) -> list[object]:
    """What the drop-down of a line offers."""
    cell = f"F{line(page, where)}"
    (validation,) = [v for v in page.data_validations.dataValidation if cell in v.sqref] or [None]
    return [] if validation is None else offered(page, validation)


def offered(page: Worksheet, validation: DataValidation) -> list[object]:
    if validation.formula1.startswith('"'):
        return list(validation.formula1.strip('"').split(","))
    name, _, cells = validation.formula1.partition("!")
    return [row[0].value for row in page.parent[name.strip("'")][cells.replace("$", "")]]


@pytest.mark.parametrize(
    ("changes", "where", "expected"),
    [
        ({"Catch": {"E2": "eaten by a bear"}}, "Catch E2", ["kept", "released"]),
        ({"Effort": {"B3": "Ned rig"}}, "Effort B3", ["Drop shot", "Jerkbait"]),
        ({"Trips": {"C3": "Lake Ardennes"}}, "Trips C3", ["Lake Arden", "Bell River"]),
        ({"Catch": {"A3": "T-999"}}, "Catch A3", ["T-001", "T-002", "T-003"]),
        ({"Clients": CLIENTS, "Trips": {"G1": "Client", "G2": "C9"}}, "Trips G2", ["C01", "C02"]),
        ({"Season": {"B2": "cubits"}}, "Season B2", ["us", "metric"]),
        ({"Season": {"B7": "north"}}, "Season B7", []),
        ({"Catch": {"D3": "long"}}, "Catch D3", []),
        ({"Trips": {"B3": "some day"}}, "Trips B3", []),
    ],
)
def test_corrected_value_offers_what_its_column_takes(
    changes: object, where: str, expected: list[str], made: Made
) -> None:
    found = choices(made(changes), where)
    assert found[: len(expected)] == expected
    assert bool(found) == bool(expected)


def test_fish_are_offered_by_their_names(made: Made) -> None:
    found = choices(made({"Catch": {"C3": "wallaye"}}), "Catch C3")
    assert set(found) == {*(kind.name for kind in SPECIES), "none"}


def test_names_are_those_in_use_where_the_log_lists_none(made: Made) -> None:
    page = made({"Waters": None, "Techniques": None, "Trips": {"C3": None}})
    assert choices(page, "Trips C3") == ["Lake Arden", "Bell River"]


def test_typed_weights_and_trip_numbers_stay_text_and_days_become_days(made: Made) -> None:
    sheet = [
        ["Trip", "Technique", "Species", "Length (in)", "Weight (lb)"],
        ["T-9", "Drop shot", "largemouth bass", 15.5, "heavy"],
    ]
    page = made({"Catch": sheet, "Trips": {"B3": "some day", "D4": "early"}})
    looks = {where: page.cell(line(page, where), 6).number_format for where in ("Catch A2", "Catch E2")}
    assert set(looks.values()) == {"@"}
    assert "yyyy" in page.cell(line(page, "Trips B3"), 6).number_format
    assert "h:mm" in page.cell(line(page, "Trips D4"), 6).number_format


def test_lines_below_each_other_that_take_the_same_share_a_drop_down(made: Made) -> None:
    page = made({"Catch": {"E2": "eaten", "E3": "eaten", "E4": "eaten"}})
    first = line(page, "Catch E2")
    (validation,) = page.data_validations.dataValidation
    assert str(validation.sqref) == f"F{first}:F{first + 2}"
    assert validation.errorStyle == "warning"  # a word of his own can be kept


def test_lines_stand_in_the_order_of_the_workbook_its_rows_and_its_columns(made: Made) -> None:
    far = [None] * 22
    catch = [
        ["Trip", "Fate", "Technique", "Species", *far, "Length (in)"],
        ["T-001", "eaten", "Drop shot", "largemouth bass", *far, "long"],
        ["T-002", "eaten", "Drop shot", "largemouth bass", *far, 14],
    ]
    # The workbook has Catch before Trips, the schema has it behind.
    page = made({"Trips": None, "Catch": None, "Catch!": catch, "TRIPS": TRIPS, "My notes": [["mine"]]})
    where = [str(row[1].value).partition(",")[0] for row in page.iter_rows(min_row=line(page, "Effort A4"))]
    assert where == [
        "Effort A4",
        "Effort A5",
        "Catch! B2",
        "Catch! AA2",
        "Catch! A3",
        "Catch! B3",
        "TRIPS B3",
        "TRIPS C4",
        "My notes",
    ]


@pytest.mark.parametrize(
    ("name", "folder", "target"),
    [
        ("log #1.xlsx", ".", "log%20%231.xlsx"),
        ("50% [a].xlsx", ".", "50%25%20%5Ba%5D.xlsx"),
        ("läng.xlsx", "lists", "..\\läng.xlsx"),
    ],
)
def test_links_lead_from_the_list_to_the_cell(
    name: str, folder: str, target: str, made: Made, tmp_path: Path
) -> None:
    (tmp_path / folder).mkdir(exist_ok=True)
    page = made({"Trips": {"B3": "?"}}, tmp_path / folder / "fix.xlsx", name=name)
    link = page.cell(line(page, "Trips B3"), 2).hyperlink
    assert (link.target, link.location) == (target, "'Trips'!B3")


def test_links_use_the_workbooks_own_name_of_a_sheet(made: Made) -> None:
    sheet = [
        ["Trip no", "Date", "Water", "Start", "End", "Anglers"],
        ["T-001", "?", "Lake Arden", "6:00", "9:00", 2],
    ]
    page = made({"Trips": None, "trips!": sheet})
    link = page.cell(line(page, "trips! B2"), 2).hyperlink
    assert link.location == "'trips!'!B2"


def test_problem_of_a_row_links_to_the_row_and_one_of_a_sheet_to_the_sheet(made: Made) -> None:
    page = made({"Effort": {"C3": None, "C1": "Minutes"}, "Catch": {"C1": "What we got"}})
    assert page.cell(line(page, "Effort row 3"), 2).hyperlink.location == "'Effort'!A3"
    assert page.cell(line(page, "Catch"), 2).hyperlink.location == "'Catch'!A1"
    for where in ("Effort row 3", "Catch"):
        assert page.cell(line(page, where), 6).value == "in the log itself"


def test_blank_cell_that_is_needed_has_a_place_for_its_value(made: Made) -> None:
    page = made({"Trips": {"C3": None}})
    cell = page.cell(line(page, "Trips C3"), 6)
    assert cell.value is None
    assert cell.fill.fill_type == "solid"


def test_merged_cells_are_to_be_mended_in_the_log(made: Made) -> None:
    page = made({"Trips": {"C3": None}}, merged={"Trips": "C2:C3"})
    assert page.cell(line(page, "Trips C3"), 6).value == "in the log itself"


def test_list_prints_on_the_width_of_a_page_with_its_heading_on_each(made: Made) -> None:
    page = made({"Trips": {"C3": None}})
    head = line(page, "Trips C3") - 1
    assert [cell.value for cell in page[head]] == [
        "No",
        "Where",
        "Found",
        "What was done",
        "What to do",
        "Corrected value",
    ]
    assert page.print_title_rows == f"${head}:${head}"
    assert page.page_setup.orientation == "landscape"
    assert (page.sheet_properties.pageSetUpPr.fitToPage, page.page_setup.fitToHeight) == (True, 0)
    assert page.freeze_panes == f"A{head + 1}"
    assert sum(page.column_dimensions[letter].width for letter in "ABCDEF") < 170
