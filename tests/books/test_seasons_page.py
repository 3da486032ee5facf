"""The sheet Seasons of two demo seasons, and what other sheets say of several logs."""

import re
from pathlib import Path

import openpyxl
import pytest
from openpyxl.workbook import Workbook

from tests.demo import make
from tests.season_logs import put_together

SHEET = "Seasons"


@pytest.fixture(scope="module")
def report(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("seasons")
    put_together([make.SAMPLES / make.CLEAN, make.SAMPLES / make.EARLIER], folder)
    return folder / "Seasons 2025 to 2026 report.xlsx"


@pytest.fixture(scope="module")
def shown(report: Path) -> Workbook:
    return openpyxl.load_workbook(report, data_only=True)


@pytest.fixture(scope="module")
def formulas(report: Path) -> Workbook:
    return openpyxl.load_workbook(report)


def below(book: Workbook, sheet: str, title: str) -> list[dict[str, object]]:
    """The rows of the table under a title, by heading."""
    rows = list(book[sheet].iter_rows(values_only=True))
    at = next(number for number, row in enumerate(rows) if row[0] == title)
    headings = [str(cell) for cell in rows[at + 1] if cell is not None]
    found = []
    for row in rows[at + 2 :]:
        if not isinstance(row[0], int) and row[1] is None:
            break
        found.append(dict(zip(headings, row, strict=False)))
    return found


def texts(book: Workbook, sheet: str) -> list[str]:
    cells = (cell for row in book[sheet].iter_rows(values_only=True) for cell in row)
    return [cell for cell in cells if isinstance(cell, str)]


def test_sheet_stands_behind_trips_among_those_for_the_guide(shown: Workbook) -> None:
    names = shown.sheetnames
    assert names.index(SHEET) == names.index("Trips") + 1
    assert names.index("Paperwork") == names.index(SHEET) + 1


def test_every_sum_and_rate_is_live_over_the_rows_by_our_own_number_of_the_season(formulas: Workbook) -> None:
    for title in ("Fish per rod-hour by season", "Techniques by season"):
        for row in below(formulas, SHEET, title):
            for heading in ("Trips", "Rod-hours", "Landed", "Fish per rod-hour"):
                assert str(row[heading]).startswith("="), (title, heading)
            if row.get("Season") != "All seasons":
                assert "pair_season_no" in str(row["Landed"])


def test_seasons_add_up_to_the_line_of_all(shown: Workbook) -> None:
    *each, every = below(shown, SHEET, "Fish per rod-hour by season")
    assert [row["Season"] for row in each] == ["2025", "2026"]
    for heading in ("Trips", "Rod-hours", "Landed", "Kept", "Released"):
        assert sum(float(str(row[heading])) for row in each) == pytest.approx(float(str(every[heading])))


def test_shares_behind_a_front_are_those_of_the_trips(shown: Workbook) -> None:
    trips = [
        row
        for row in below_filtered(shown, "Trips", "No.")
        if row["Status"] not in ("cancelled", "void", "log not finished")
    ]
    for row in below(shown, SHEET, "On what kind of days, and who caught"):
        own = [trip for trip in trips if trip["Season"] == row["Season"]]
        known = [trip for trip in own if trip["Type of day"] != "not known"]
        hard = [trip for trip in known if re.match("day [12] behind a front", str(trip["Type of day"]))]
        assert (row["Trips in the rates"], row["Trips behind a front"]) == (len(own), len(hard))
        assert row["Share of trips behind a front"] == pytest.approx(len(hard) / len(known))
        hours = [sum(float(str(trip["Rod-hours"])) for trip in of) for of in (hard, known)]
        assert row["Share of them behind a front"] == pytest.approx(hours[0] / hours[1])
        assert row["Blank trips"] == sum(trip["Landed"] == 0 for trip in own)


def below_filtered(book: Workbook, sheet: str, first: str) -> list[dict[str, object]]:
    """The rows of a sheet that is one long table, by heading."""
    rows = list(book[sheet].iter_rows(values_only=True))
    at = next(number for number, row in enumerate(rows) if row[0] == first)
    return [dict(zip(map(str, rows[at]), row, strict=True)) for row in rows[at + 1 :] if row[0] is not None]


def test_rates_are_never_called_a_number_of_fish_in_the_water(shown: Workbook) -> None:
    said = texts(shown, SHEET)
    assert any("They do not measure how many fish there are" in text for text in said)
    for sheet in (SHEET, "At a glance"):
        assert not any(re.search("more fish in|fewer fish in|abundan", text) for text in texts(shown, sheet))


def test_at_a_glance_has_a_line_on_seasons_that_leads_to_them(formulas: Workbook) -> None:
    (cell,) = (
        cell
        for row in formulas["At a glance"].iter_rows()
        for cell in row
        if cell.hyperlink is not None and SHEET in str(cell.hyperlink.location)
    )
    assert cell.value == "Season against season there is no difference that your record can bear."


def test_a_trip_is_named_with_its_season_wherever_it_is_named(shown: Workbook) -> None:
    for sheet in (
        "Trips",
        "Stints",
        "Trip techniques",
        "Fish rows",
        "Stint conditions",
        "Fish",
        "Worked through",
    ):
        for row in shown[sheet].iter_rows(values_only=True):
            if "Trip" in row:
                assert "Season" in row, sheet


def test_page_says_which_season_paperwork_and_hunches_are_of(shown: Workbook) -> None:
    assert any(text.endswith("Of 2026 alone, the last season.") for text in texts(shown, "Paperwork"))
    assert any(text.startswith("The hunches of 2026, held against") for text in texts(shown, "Hunches"))


def test_origin_names_every_log(shown: Workbook) -> None:
    said = texts(shown, "How it is worked out")
    for name in (make.CLEAN, make.EARLIER):
        assert f"Log: {name}" in said


def test_report_of_one_log_has_none_of_it(tmp_path: Path) -> None:
    from tests.books.test_side_by_side import built

    book = openpyxl.load_workbook(built(make.SAMPLES / make.EARLIER, tmp_path))
    assert SHEET not in book.sheetnames
    assert not any("Season no." in row for row in book["Stints"].iter_rows(values_only=True))
