"""The blank log: everything the schema says of a column stands in the workbook, in both systems of units."""

import datetime as dt
import re
import zipfile
from pathlib import Path
from typing import Any

import openpyxl
import pytest
from openpyxl import Workbook
from openpyxl.utils import get_column_letter, range_boundaries
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.worksheet import Worksheet

from reporter.books.blank import blank_book
from reporter.books.blank.lists import LONGEST_LITERAL, TIME_ZONES, choice_for
from reporter.books.blocks import Book, Table, Text
from reporter.schema.column import Column
from reporter.schema.defaults import TECHNIQUES
from reporter.schema.log import BY_KEY, SHEETS, TEXT_SHEETS
from reporter.schema.sheets.effort import COVERS
from reporter.schema.sheets.season import SETTINGS
from reporter.schema.species import SPECIES
from reporter.schema.units import System
from reporter.write.workbook import write_book
from tests.books.printed import pages_printed

SYSTEMS: tuple[System, ...] = ("us", "metric")
COLUMNS = [(sheet.key, column) for sheet in SHEETS for column in sheet.columns]
EVERY = [*COLUMNS, *(("season", setting) for setting in SETTINGS)]
LABELS = {label for _, column in EVERY for label in column.allowed}
OFFERED = {*LABELS, *COVERS, *TIME_ZONES, *(kind.name for kind in SPECIES)}


@pytest.fixture(scope="module", params=SYSTEMS)
def system(request: pytest.FixtureRequest) -> System:
    chosen: System = request.param
    return chosen


@pytest.fixture(scope="module")
def drawn(system: System, tmp_path_factory: pytest.TempPathFactory) -> Workbook:
    path = tmp_path_factory.mktemp("blank") / "log.xlsx"
    write_book(blank_book(system, 2026), path)
    return openpyxl.load_workbook(path)


def test_sheets_stand_in_the_order_of_the_log(drawn: Workbook) -> None:
    first, second, last = TEXT_SHEETS
    assert drawn.sheetnames == [first, second, *(sheet.name for sheet in SHEETS), last]


def test_headings_are_those_of_the_schema_with_their_units(drawn: Workbook, system: System) -> None:
    for sheet in SHEETS:
        headings = [cell.value for cell in drawn[sheet.name][1]]
        assert headings == [column.headed(system) for column in sheet.columns], sheet.name


def test_every_closed_list_is_a_drop_down_that_warns(drawn: Workbook) -> None:
    for sheet, column in COLUMNS:
        if column.allowed:
            validation = _validation(drawn, sheet, column)
            assert _offered(drawn, validation) == list(column.allowed), (sheet, column.key)
            assert validation.showErrorMessage
            assert validation.errorStyle == "warning"


def test_names_of_other_sheets_are_offered_and_others_may_be_typed(drawn: Workbook) -> None:
    for sheet, column in COLUMNS:
        if column.refers:
            validation = _validation(drawn, sheet, column)
            other = BY_KEY[column.refers]
            assert re.fullmatch(rf"'?{other.name}'?!\$A\$2:\$A\$\d\d+", str(validation.formula1))
            assert not validation.showErrorMessage


def test_fish_can_be_picked_and_a_day_without_one_too(drawn: Workbook) -> None:
    validation = _validation(drawn, "catch", BY_KEY["catch"].column("species"))
    offered = _offered(drawn, validation)
    assert offered == [*(kind.name for kind in SPECIES), "none"]
    assert not validation.showErrorMessage


def test_drop_downs_reach_past_the_first_evening(drawn: Workbook) -> None:
    for key, rows in (("trips", 300), ("effort", 2000), ("catch", 4000), ("weather", 366)):
        status = next(column for column in BY_KEY[key].columns if column.allowed or column.refers)
        *_, last_row = range_boundaries(str(_validation(drawn, key, status).sqref))
        assert last_row is not None
        assert last_row > rows


def test_every_cell_says_what_goes_in(drawn: Workbook) -> None:
    for sheet, column in COLUMNS:
        if sheet != "season":
            assert _validation(drawn, sheet, column).prompt == column.help


def test_every_setting_has_its_own_help_drop_down_and_format(drawn: Workbook) -> None:
    season = drawn["Season"]
    formats = {"date": "yy", "time": "mm", "choice": "General"}
    for row, setting in enumerate(SETTINGS, 2):
        assert season.cell(row, 1).value == setting.heading
        validation = _at(season, row, 2)
        assert str(validation.prompt).startswith(setting.help)
        if setting.allowed:
            assert _offered(drawn, validation) == list(setting.allowed)
        assert formats.get(setting.kind, "") in season.cell(row, 2).number_format


def test_settings_that_the_units_and_the_season_decide_are_filled_in(system: System, drawn: Workbook) -> None:
    season = {row[0]: row[1] for row in drawn["Season"].iter_rows(min_row=2, values_only=True)}
    filled = {name: value for name, value in season.items() if value is not None}
    assert filled == {
        "Season name": "Season 2026",
        "First day": dt.datetime(2026, 1, 1),
        "Last day": dt.datetime(2026, 12, 31),
        "Units": system,
        "Date order": "month first" if system == "us" else "day first",
    }


def test_without_a_season_nothing_is_dated(system: System) -> None:
    season = _table(blank_book(system), "season")
    filled = [value for value in season.columns["value"] if value is not None]
    assert len(filled) == 2


def test_cells_that_a_spreadsheet_would_mangle_are_text(drawn: Workbook) -> None:
    for sheet, key in (
        ("trips", "trip"),
        ("effort", "trip"),
        ("effort", "size"),
        ("catch", "length_mm"),
        ("catch", "weight_g"),
        ("clients", "client"),
        ("clients", "licence_number"),
        ("waters", "agency_code"),
        ("keep_rules", "from"),
        ("keep_rules", "to"),
    ):
        assert _format(drawn, sheet, key) == "@", (sheet, key)


def test_numbers_kept_as_text_get_no_warning_sign(system: System, tmp_path: Path) -> None:
    write_book(blank_book(system), tmp_path / "log.xlsx")
    with zipfile.ZipFile(tmp_path / "log.xlsx") as archive:
        catch = archive.read(f"xl/worksheets/sheet{_sheet_names().index('Catch') + 1}.xml").decode()
    (quiet,) = re.findall(r'<ignoredError sqref="([^"]*)" numberStoredAsText="1"/>', catch)
    for key in ("trip", "length_mm", "weight_g"):
        letter = get_column_letter(_column_number("catch", key))
        assert f"{letter}2:{letter}1048576" in quiet.split()


def test_numbers_that_are_counted_with_stay_numbers_and_show_as_typed(drawn: Workbook) -> None:
    for sheet, column in COLUMNS:
        if column.kind == "count" or column.quantity in ("temperature", "speed", "hours", "minutes"):
            assert _format(drawn, sheet, column.key) == "General", (sheet, column.key)


def test_headings_stay_in_sight_and_on_every_printed_page(drawn: Workbook, system: System) -> None:
    for sheet in SHEETS:
        page = drawn[sheet.name]
        assert page.freeze_panes == "A2"
        assert page.print_title_rows == "$1:$1"
        assert page.page_setup.paperSize == (1 if system == "us" else 9)
        assert page.sheet_properties.pageSetUpPr is not None
        assert page.sheet_properties.pageSetUpPr.fitToPage


def test_no_sheet_prints_more_columns_on_a_page_than_can_be_read(drawn: Workbook) -> None:
    for sheet in SHEETS:
        pages = drawn[sheet.name].page_setup.fitToWidth or 1
        assert len(sheet.columns) / int(pages) <= 14
        if int(pages) > 1:
            assert drawn[sheet.name].print_title_cols == "$A:$A"


def test_needed_headings_look_unlike_the_others(drawn: Workbook) -> None:
    trips = drawn["Trips"]
    looks: dict[bool, set[tuple[object, object]]] = {True: set(), False: set()}
    for cell, column in zip(trips[1], BY_KEY["trips"].columns, strict=True):
        looks[bool(column.required)].add((cell.fill.fgColor.rgb, cell.font.bold))
    assert len(looks[True]) == len(looks[False]) == 1
    assert looks[True].isdisjoint(looks[False])


def test_usual_techniques_are_there_to_begin_with(drawn: Workbook) -> None:
    rows = list(drawn["Techniques"].iter_rows(min_row=2, max_col=2, values_only=True))
    assert rows == [(usual.technique, usual.style) for usual in TECHNIQUES]


def test_boat_card_has_the_headings_of_the_log_in_typing_order(system: System) -> None:
    cards = {table.key: [field.heading for field in table.fields] for table in _tables(blank_book(system), 1)}
    for sheet, parts in (
        ("trips", ("card_trip", "card_day")),
        ("effort", ("card_effort",)),
        ("catch", ("card_catch",)),
    ):
        order = [column.headed(system) for column in BY_KEY[sheet].columns]
        places = [order.index(heading) for part in parts for heading in cards[part]]
        assert places == sorted(places)


def test_start_here_names_sheets_columns_and_commands_that_exist(system: System) -> None:
    (text,) = blank_book(system).sheets[0].blocks
    assert isinstance(text, Text)
    words = " ".join(line.text for line in text.lines)
    for sheet in ("Trips", "Effort", "Catch", "Season", "Techniques", "Waters", "Clients", "Weather"):
        assert BY_KEY[sheet.lower()].name in words
    for heading in ("Parts", "Minutes", "Landed", "Missed", "Count", "Status", "Reach", "For the client"):
        assert any(column.heading == heading for _, column in COLUMNS)
        assert heading in words
    assert f'reporter check "season log {system}.xlsx"' in words
    assert text.lines[-1].style == "caution"


@pytest.mark.libreoffice
@pytest.mark.parametrize("place", [0, 1], ids=["start here", "boat card"])
def test_pages_to_print_are_single_pages(place: int, system: System, tmp_path: Path) -> None:
    book = blank_book(system)
    alone = Book(book.title, book.mark, (book.sheets[place],), book.paper, book.created)
    path = tmp_path / "page.xlsx"
    write_book(alone, path)
    assert pages_printed(path, tmp_path) == 1


def test_rows_given_stand_above_the_blank_ones(tmp_path: Path) -> None:
    rows = {"waters": [{"water": "Otter Mere", "agency_code": "0003"}], "techniques": []}
    path = tmp_path / "log.xlsx"
    write_book(blank_book("us", rows=rows, settings={"guide": "Somebody"}), path)
    book = openpyxl.load_workbook(path)
    assert [cell.value for cell in book["Waters"][2]][:5] == ["Otter Mere", None, None, None, "0003"]
    assert book["Techniques"]["A2"].value is None
    assert book["Season"]["B2"].value == "Somebody"


@pytest.mark.parametrize(
    "given",
    [
        {"rows": {"lakes": []}},
        {"rows": {"waters": [{"lake": "Otter Mere"}]}},
        {"settings": {"favourite": "Otter Mere"}},
    ],
    ids=["sheet", "column", "setting"],
)
def test_rows_for_what_the_log_does_not_have_are_refused(given: dict[str, Any]) -> None:
    with pytest.raises(KeyError):
        blank_book("us", **given)


def test_same_log_gives_the_same_bytes(system: System, tmp_path: Path) -> None:
    for name in ("one", "two"):
        write_book(blank_book(system, 2026), tmp_path / name)
    assert (tmp_path / "one").read_bytes() == (tmp_path / "two").read_bytes()
    assert (tmp_path / "one").stat().st_size < 150_000


def test_log_says_that_it_is_a_log(system: System, tmp_path: Path) -> None:
    write_book(blank_book(system), tmp_path / "log.xlsx")
    with zipfile.ZipFile(tmp_path / "log.xlsx") as archive:
        assert b">log<" in archive.read("docProps/custom.xml")


def test_headings_help_and_names_keep_to_what_a_spreadsheet_holds() -> None:
    for sheet, column in EVERY:
        for system in SYSTEMS:
            assert len(column.headed(system)) <= 32, (sheet, column.key)
        assert 0 < len(column.help) <= 255
    assert all(len(name) <= 31 for name in (*TEXT_SHEETS, *(sheet.name for sheet in SHEETS)))


def test_lists_inside_a_drop_down_keep_to_what_a_spreadsheet_holds() -> None:
    for sheet, column in EVERY:
        choice = choice_for(sheet, column)
        if choice and choice.labels:
            assert len(",".join(choice.labels)) <= LONGEST_LITERAL
            assert not any("," in label for label in choice.labels)


@pytest.mark.parametrize(
    "labels", [tuple(f"a long label number {n}" for n in range(14)), ("one, two", "three")]
)
def test_list_that_a_drop_down_cannot_hold_goes_to_lists(labels: tuple[str, ...]) -> None:
    choice = choice_for("effort", Column("cast", "Cast", "choice", "How it was cast.", allowed=labels))
    assert choice is not None
    assert choice.labels == ()
    assert choice.symbol == "list_effort_cast.label"


@pytest.mark.parametrize("label", sorted(OFFERED))
def test_no_label_turns_into_a_number_a_date_or_a_formula(label: str) -> None:
    assert not _changes_on_typing(label)


@pytest.mark.parametrize(
    "label",
    ["50-55", "3/8", "4-8", "1.5", "1e5", "5%", "6:30", "May 5", "5 Oct", "mar-2", "=a", "TRUE", "50 °"],
)
def test_labels_that_would_turn_are_told_apart(label: str) -> None:
    assert _changes_on_typing(label) == (label != "50 °")


def _changes_on_typing(label: str) -> bool:
    """Whether a spreadsheet makes something else of a label that is typed or picked."""
    month = "jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec"
    return bool(
        re.fullmatch(r"[-+(]?[\d.,]+([eE][-+]?\d+)?[)%]?", label)
        or re.fullmatch(r"\d+[-/.:]\d+([-/.:]\d+)?( ?[ap]m)?", label, re.IGNORECASE)
        or re.fullmatch(rf"({month})[a-z]*[-/ .]*\d*|\d+[-/ .]*({month})[a-z]*", label, re.IGNORECASE)
        or re.match(r"[=+@-]", label)
        or label.casefold() in {"true", "false"}
    )


def _sheet_names() -> list[str]:
    return [sheet.name for sheet in blank_book("us").sheets]


def _tables(book: Book, place: int) -> list[Table]:
    return [block for block in book.sheets[place].blocks if isinstance(block, Table)]


def _table(book: Book, key: str) -> Table:
    return next(
        block
        for sheet in book.sheets
        for block in sheet.blocks
        if isinstance(block, Table) and block.key == key
    )


def _column_number(sheet: str, key: str) -> int:
    return 1 + [column.key for column in BY_KEY[sheet].columns].index(key)


def _validation(book: Workbook, sheet: str, column: Column) -> DataValidation:
    return _at(book[BY_KEY[sheet].name], 2, _column_number(sheet, column.key))


def _at(sheet: Worksheet, row: int, column: int) -> DataValidation:
    cell = f"{get_column_letter(column)}{row}"
    found: list[DataValidation] = [one for one in sheet.data_validations.dataValidation if cell in one.sqref]
    assert len(found) == 1, f"{sheet.title} {cell}: {len(found)} validations"
    return found[0]


def _offered(book: Workbook, validation: DataValidation) -> list[object]:
    source = str(validation.formula1)
    if source.startswith('"'):
        return list(source.strip('"').split(","))
    name, _, cells = source.replace("'", "").partition("!")
    return [row[0].value for row in book[name][cells.replace("$", "")]]


def _format(book: Workbook, sheet: str, key: str) -> str:
    number = _column_number(sheet, key)
    for dimension in book[BY_KEY[sheet].name].column_dimensions.values():
        if int(dimension.min or 0) <= number <= int(dimension.max or 0):
            return str(dimension.number_format)
    raise AssertionError(f"no format for {key} on {sheet}")
