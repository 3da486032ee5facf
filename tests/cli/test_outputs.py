"""What is written: the same bytes from the same log, tables as the schema says, and nothing that runs."""

import csv
import json
import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import openpyxl
import pytest

from reporter.schema.tables import TABLES
from tests.cli.conftest import Run
from tests.conftest import WriteLog

Contents = Callable[[Path], dict[str, bytes]]
TABLES_BY_FILE = {f"{table.name}.csv": table for table in TABLES}


def rows_of(path: Path) -> list[dict[str, str]]:
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def test_same_log_gives_the_same_bytes_wherever_it_lies(
    tmp_path: Path, write_log: WriteLog, run: Run, contents: Contents
) -> None:
    log = write_log({"Trips": {"C4": "Lk Arden"}, "Catch": {"A4": "T-045"}})
    (tmp_path / "other").mkdir()
    copy = Path(shutil.copy(log, tmp_path / "other" / log.name))
    made = []
    for source, out in ((log, "one"), (copy, "two"), (copy, "two")):
        ran = run("build", source, "--out", tmp_path / out, "--tables", tmp_path / out / "tables")
        assert ran.code == 0
        made.append(contents(tmp_path / out))
    assert set(made[0]) == {
        "log report.xlsx",
        "tables/datapackage.json",
        *(f"tables/{f}" for f in TABLES_BY_FILE),
    }
    assert made[0] == made[1] == made[2]


def test_same_log_gives_the_same_bytes_in_another_process_zone_and_order_of_hashing(
    tmp_path: Path, write_log: WriteLog, contents: Contents
) -> None:
    log = write_log({"Trips": {"C4": "Lk Arden"}, "Effort": {"B3": "Hair jig"}})
    command = Path(sys.executable).with_name("reporter")
    made = []
    for seed, zone in (("1", "Pacific/Auckland"), ("2", "America/Anchorage")):
        out = tmp_path / seed
        arguments = [command, "build", log, "--out", out, "--tables", out / "tables"]
        environment = {**os.environ, "PYTHONHASHSEED": seed, "TZ": zone, "LC_ALL": "C"}
        subprocess.run(arguments, env=environment, check=True, capture_output=True)
        made.append(contents(out))
    assert len(made[0]) == 2 + len(TABLES)
    assert made[0] == made[1]


def test_input_is_never_changed(write_log: WriteLog, run: Run, tmp_path: Path) -> None:
    log = write_log({"Trips": {"C4": "Lk Arden"}})
    before, stamp = log.read_bytes(), log.stat().st_mtime_ns
    run("check", log)
    run("build", log, "--tables", tmp_path / "tables")
    assert log.read_bytes() == before
    assert log.stat().st_mtime_ns == stamp


def test_nothing_is_left_beside_the_report(write_log: WriteLog, run: Run) -> None:
    log = write_log()
    run("build", log)
    assert sorted(path.name for path in log.parent.iterdir()) == ["log report.xlsx", "log.xlsx"]


def test_report_of_ours_is_replaced(write_log: WriteLog, run: Run) -> None:
    log = write_log()
    assert run("build", log).code == 0
    before = (log.parent / "log report.xlsx").read_bytes()
    write_log({"Effort": {"E4": 5}}, folder=log.parent)
    assert run("build", log).code == 0
    assert (log.parent / "log report.xlsx").read_bytes() != before


@pytest.fixture
def tables(tmp_path: Path, write_log: WriteLog, run: Run) -> Path:
    log = write_log({"Effort": {"A3": None}, "Catch": {"A5": "T-045", "B5": "Jerkbait", "C5": "LMB"}})
    assert run("build", log, "--tables", tmp_path / "tables").code == 0
    return tmp_path / "tables"


def test_every_table_has_just_the_columns_of_the_schema(tables: Path) -> None:
    assert {path.name for path in tables.iterdir()} == {"datapackage.json", *TABLES_BY_FILE}
    for name, table in TABLES_BY_FILE.items():
        with (tables / name).open(encoding="utf-8", newline="") as file:
            heading, *rows = csv.reader(file)
        assert heading == [field.name for field in table.fields]
        assert all(len(row) == len(heading) for row in rows)


def test_package_lists_every_file_and_every_field(tables: Path) -> None:
    package = json.loads((tables / "datapackage.json").read_text(encoding="utf-8"))
    assert package["profile"] == "tabular-data-package"
    resources = {resource["path"]: resource for resource in package["resources"]}
    assert set(resources) == set(TABLES_BY_FILE)
    for name, table in TABLES_BY_FILE.items():
        fields = resources[name]["schema"]["fields"]
        assert [(f["name"], f["type"], f["description"], f.get("unit", "")) for f in fields] == [
            (field.name, field.type, field.description, field.unit) for field in table.fields
        ]


def test_values_of_the_tables_are_of_their_types(tables: Path) -> None:
    readers: dict[str, Callable[[str], object]] = {
        "integer": int,
        "number": float,
        "boolean": {"true": True, "false": False}.__getitem__,
        "date": lambda text: tuple(map(int, text.split("-"))),
        "time": lambda text: tuple(map(int, text.split(":"))),
        "string": str,
    }
    for name, table in TABLES_BY_FILE.items():
        for row in rows_of(tables / name):
            for field in table.fields:
                if row[field.name]:
                    readers[field.type](row[field.name])


def test_tables_say_what_the_log_says(tables: Path) -> None:
    trips = rows_of(tables / "trips.csv")
    assert [(trip["trip"], trip["date"], trip["rod_hours"], trip["fish"]) for trip in trips] == [
        ("T-001", "2026-04-18", "8", "3"),
        ("T-002", "2026-07-04", "8", "1"),
        ("T-003", "2026-09-12", "8", "2"),
    ]
    (season,) = rows_of(tables / "season.csv")
    assert (season["trips"], season["rod_hours"], season["fish"], season["fish_per_rod_hour"]) == (
        "3",
        "24",
        "6",
        "0.25",
    )
    (problem,) = rows_of(tables / "problems.csv")
    assert (problem["sheet"], problem["row"], problem["code"], problem["effect"]) == (
        "Catch",
        "5",
        "trip_unknown",
        "set aside",
    )
    fish = rows_of(tables / "fish.csv")
    assert [(row["species_code"], row["length_mm"]) for row in fish] == [
        ("LMB", "393.7"),
        ("SMB", "355.6"),
        ("LMB", "463.55"),
    ]
    counts = {row["sheet"]: row for row in rows_of(tables / "rows.csv")}
    assert (counts["Catch"]["read"], counts["Catch"]["used"], counts["Catch"]["set_aside"]) == ("4", "3", "1")


@pytest.mark.parametrize(
    "text", ["=1+1", "+1+1", "-dragged", "@SUM(A1)", "=HYPERLINK('http://x')", "\n=1", "＝1+1"]
)
def test_text_that_a_spreadsheet_would_run_is_neutralised(
    text: str, tmp_path: Path, write_log: WriteLog, run: Run
) -> None:
    log = write_log({"Effort": {"F1": "Variant", "F2": "placeholder", "G1": "Retrieve", "G2": "-4.5"}})
    replace_text(log, "placeholder", text)
    assert run("build", log, "--tables", tmp_path / "tables").code == 0
    stint = rows_of(tmp_path / "tables/stints.csv")[0]
    assert stint["variant"] == f"'{text.strip()}"
    assert rows_of(tmp_path / "tables/log_effort.csv")[0]["variant"] == f"'{text}"
    assert stint["retrieve"] == "-4.5"


def replace_text(path: Path, old: str, new: str) -> None:
    """Put text into a workbook that the library that writes it would make a formula."""
    book = openpyxl.load_workbook(path)
    for cell in (cell for row in book["Effort"].iter_rows() for cell in row if cell.value == old):
        cell.value = new
        cell.data_type = "s"
    book.save(path)


@pytest.mark.parametrize("name", ["datapackage.json", "fish.csv"])
def test_tables_are_never_written_over_files_of_others(
    name: str, tmp_path: Path, write_log: WriteLog, run: Run, contents: Contents
) -> None:
    folder = tmp_path / "tables"
    folder.mkdir()
    (folder / name).write_text('{"profile": "tabular-data-package"}')
    log = write_log()
    before = contents(tmp_path)
    ran = run("build", log, "--tables", folder)
    assert ran.code == 1
    assert ran.err.startswith(f"I cannot write tables into {folder}: {name} is there")
    assert contents(tmp_path) == before
    assert [path.name for path in log.parent.iterdir()] == ["log.xlsx"]


def test_tables_may_lie_beside_files_of_other_names_and_are_replaced(
    tmp_path: Path, write_log: WriteLog, run: Run
) -> None:
    (tmp_path / "notes.txt").write_text("mine")
    log = write_log()
    for _ in range(2):
        assert run("build", log, "--tables", tmp_path).code == 0
    assert (tmp_path / "notes.txt").read_text() == "mine"


def test_log_as_typed_is_among_the_tables_with_the_headings_above_it(
    tmp_path: Path, write_log: WriteLog, run: Run
) -> None:
    changes = {
        "Catch": {"A6": "T-002", "F1": "Notes", "F6": "as typed"},
        "Trips": {"D2": "6.45p", "A6": "Total"},
    }
    assert run("build", write_log(changes), "--tables", tmp_path / "tables").code == 0
    catch = rows_of(tmp_path / "tables" / "log_catch.csv")
    assert [line["row"] for line in catch] == ["2", "3", "4", "6"]
    assert [line["length"] for line in catch] == ["15.5", "14", "18.25", ""]
    trips = rows_of(tmp_path / "tables" / "log_trips.csv")
    assert [(line["date"], line["start"]) for line in trips[:2]] == [
        ("2026-04-18", "6.45p"),
        ("2026-07-04", "06:00:00"),
    ]
    assert trips[3]["trip"] == "Total"
    headings = rows_of(tmp_path / "tables" / "log_columns.csv")
    assert {"sheet": "Catch", "name": "length", "heading": "Length (in)", "column": "D"} in headings


def test_no_two_columns_of_a_sheet_share_a_name_as_typed() -> None:
    for table in TABLES:
        names = [field.name for field in table.fields]
        assert len(set(names)) == len(names), table.name
