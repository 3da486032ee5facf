"""The season report, drawn from the samples."""

import csv
import zipfile
from collections.abc import Iterator
from datetime import datetime
from pathlib import Path

import openpyxl
import pytest
from openpyxl.workbook import Workbook

from reporter.run.build import build
from reporter.run.jobs import plan

SAMPLES = Path(__file__).parent.parent.parent / "sample_workbooks"
LOGS = {
    "clean": "demo season.xlsx",
    "messy": "demo season with mistakes.xlsx",
    "metric": "demo season metric, saved by LibreOffice Calc.xlsx",
}
SHEETS = [
    "At a glance",
    "Contents",
    "Techniques",
    "Side by side",
    "What worked",
    "Conditions",
    "Front days",
    "Front days by date",
    "What the days did",
    "Hunches",
    "Fish",
    "Tackle",
    "Waters",
    "Water cards",
    "Weeks",
    "Trips",
    "Paperwork",
    "Rows to fix",
    "How it is worked out",
    "Worked through",
    "Behind Techniques",
    "Behind Side by side",
    "Side by side by kind of day",
    "Side by side trip by trip",
    "Behind Hunches",
    "Hunches trip by trip",
    "Condition rates",
    "Behind What worked",
    "Behind Paperwork",
    "Stint conditions",
    "Stints",
    "Trip techniques",
    "Fish rows",
]


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("built")
    for name, log in LOGS.items():
        (job,) = plan([SAMPLES / log], folder / name, folder / name / "tables")
        assert build(job, [job.log]).reading.season is not None
    return folder


def report(built: Path, name: str) -> Path:
    return built / name / f"{Path(LOGS[name]).stem} report.xlsx"


def table(built: Path, name: str, csv_name: str) -> list[dict[str, str]]:
    with (built / name / "tables" / f"{csv_name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def values(book: Workbook, sheet: str) -> Iterator[tuple[object, ...]]:
    yield from book[sheet].iter_rows(values_only=True)


def below(book: Workbook, sheet: str, heading: str) -> list[dict[str, object]]:
    """Return the rows under the first heading row that holds a heading, as far as the first column goes."""
    rows = list(values(book, sheet))
    top = next(index for index, row in enumerate(rows) if heading in row)
    names = [str(cell) for cell in rows[top] if cell is not None]
    found = []
    for row in rows[top + 1 :]:
        if row[0] is None:
            break
        found.append(dict(zip(names, row, strict=False)))
    return found


def test_sheets_stand_in_reading_order(built: Path) -> None:
    assert openpyxl.load_workbook(report(built, "clean")).sheetnames == SHEETS


def test_totals_and_rates_are_formulas_and_not_pasted_numbers(built: Path) -> None:
    book = openpyxl.load_workbook(report(built, "clean"))
    lines = below(book, "Techniques", "Fish per rod-hour")
    for heading in ("Trips", "Rod-hours", "Hours fished", "Landed", "Kept", "Released", "Fish per rod-hour"):
        assert all(str(line[heading]).startswith("=") for line in lines), heading
    trips = below(book, "Trips", "Fish per rod-hour")
    assert all(str(line["Landed"]).startswith("=SUMIFS(") for line in trips)


def test_techniques_on_the_page_are_those_of_the_tables(built: Path) -> None:
    book = openpyxl.load_workbook(report(built, "clean"), data_only=True)
    page = {line["Technique"]: line for line in below(book, "Techniques", "Fish per rod-hour")}
    for row in table(built, "clean", "techniques"):
        line = page[row["technique"]]
        assert line["Trips"] == int(row["trips"])
        for heading, name in (
            ("Rod-hours", "rod_hours"),
            ("Fish per rod-hour", "fish_per_rod_hour"),
            ("To", "high"),
        ):
            assert line[heading] == pytest.approx(float(row[name]), rel=1e-9)


def test_technique_rows_add_up_to_the_season_line(built: Path) -> None:
    for name in LOGS:
        (season,) = table(built, name, "season")
        for column in ("rod_hours", "fish", "kept", "released", "fate_unknown"):
            parts = sum(float(row[column]) for row in table(built, name, "techniques"))
            assert parts == pytest.approx(float(season[column]), rel=1e-9)


def test_a_glance_names_no_client_no_water_and_no_reach(built: Path) -> None:
    log = openpyxl.load_workbook(SAMPLES / LOGS["clean"], data_only=True)
    private = {
        str(row[0])
        for sheet in ("Clients", "Waters")
        for row in log[sheet].iter_rows(min_row=2, values_only=True)
        if row[0]
    }
    book = openpyxl.load_workbook(report(built, "clean"), data_only=True)
    shown = " ".join(str(cell) for row in values(book, "At a glance") for cell in row if cell is not None)
    assert private
    assert not [name for name in private if name in shown]


def test_a_technique_under_five_trips_is_not_in_the_chart(built: Path) -> None:
    book = openpyxl.load_workbook(report(built, "metric"), data_only=True)
    charted = {line["Technique"] for line in below(book, "Techniques", "Down to the low end")}
    few = {row["technique"] for row in table(built, "metric", "techniques") if int(row["trips"]) < 5}
    assert few
    assert not few & charted


def test_metric_log_prints_on_a4_and_shows_centimetres(built: Path) -> None:
    book = openpyxl.load_workbook(report(built, "metric"))
    assert {sheet.page_setup.paperSize for sheet in book.worksheets} == {9}
    assert "Length (cm)" in [cell for row in values(book, "Fish rows") for cell in row]


def test_report_carries_the_log_it_was_made_from_and_nothing_of_the_machine(built: Path) -> None:
    path = report(built, "clean")
    book = openpyxl.load_workbook(path)
    said = " ".join(str(cell) for row in values(book, "How it is worked out") for cell in row if cell)
    assert "Log: demo season.xlsx" in said
    assert "SHA-256" in said
    assert book.properties.created == datetime(2026, 11, 30)
    with zipfile.ZipFile(path) as archive:
        everything = b"".join(archive.read(name) for name in archive.namelist())
    assert str(SAMPLES).encode() not in everything


def test_rows_to_fix_starts_with_what_wins_back_most(built: Path) -> None:
    book = openpyxl.load_workbook(report(built, "messy"), data_only=True)
    lines = below(book, "Rows to fix", "Rows won back")
    assert len(lines) == len(table(built, "messy", "problems"))
    effects = [line["Effect"] for line in lines]
    assert effects == sorted(effects, reverse=True)  # set aside before note
    won = [line["Rows won back"] or 0 for line in lines if line["Effect"] == "set aside"]
    assert won == sorted(won, reverse=True)
    assert won[0] > 1  # a trip brings back its own rows too


def test_every_fish_on_the_log_is_in_the_account(built: Path) -> None:
    for name in LOGS:
        fish = sum(float(row["fish"]) for row in table(built, name, "fish"))
        pairs = table(built, name, "trip_techniques")
        in_and_out = sum(float(row["fish"]) for row in pairs)
        not_counted = sum(
            float(row["fish"]) for row in table(built, name, "fish") if row["counted"] == "false"
        )
        assert in_and_out + not_counted >= fish
