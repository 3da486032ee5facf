"""`reporter filing` as a guide runs it."""

import csv
import json
from collections.abc import Callable
from pathlib import Path

import openpyxl
import pytest

from reporter.files.mark import read_mark
from tests.cli.conftest import Run
from tests.conftest import WriteLog
from tests.filing_log import filing_log

TEMPLATES = Path(__file__).parent.parent.parent / "templates"
Contents = Callable[[Path], dict[str, bytes]]


def cells(path: Path) -> list[str]:
    book = openpyxl.load_workbook(path)
    return [
        str(cell)
        for sheet in book
        for row in sheet.iter_rows(values_only=True)
        for cell in row
        if cell is not None
    ]


def table(folder: Path, name: str) -> list[dict[str, str]]:
    with (folder / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def test_month_is_counted_by_hand(run: Run, write_log: WriteLog, tmp_path: Path) -> None:
    """July: (C01, C02) and (C01) are 3 client-days; 2 x 4 h + 1 x 4 h are 12 angler-hours."""
    log = filing_log(write_log, tmp_path)
    ran = run(
        "filing", log, "--out", tmp_path / "july.xlsx", "--month", "2026-07", "--tables", tmp_path / "t"
    )
    assert (ran.code, ran.err) == (0, "")
    assert "used 3 of 20, 17 left" in ran.out
    assert "postmarked by 2026-08-10" in ran.out
    (use, _report) = (*table(tmp_path / "t", "use"), None)[:2]
    assert (use["permit"], use["rule"], use["count"], use["allowed"]) == (
        "Lake permit",
        "client-days",
        "3",
        "20",
    )
    harvest = table(tmp_path / "t", "harvest")
    assert {row["species"]: (row["kept"], row["released"]) for row in harvest} == {
        "largemouth bass": ("2", "1"),
        "walleye": ("0", "1"),
    }
    assert {(row["trips"], row["anglers"], row["angler_hours"]) for row in harvest} == {("2", "3", "12")}
    (months,) = (row for row in table(tmp_path / "t", "nil_months") if row["period"] == "2026-07")
    assert (months["state"], months["due"]) == ("trips", "2026-08-10")
    (numbers,) = table(tmp_path / "t", "numbering")
    assert (numbers["first"], numbers["last"], numbers["void"], numbers["missing"]) == (
        "T-001",
        "T-004",
        "T-003",
        "",
    )
    assert read_mark(tmp_path / "july.xlsx") == "filing"


def test_every_page_says_what_it_rests_on(run: Run, write_log: WriteLog, tmp_path: Path) -> None:
    log = filing_log(write_log, tmp_path)
    run("filing", log, "--out", tmp_path / "all.xlsx")
    for sheet in openpyxl.load_workbook(tmp_path / "all.xlsx"):
        text = " ".join(
            str(cell) for row in sheet.iter_rows(values_only=True) for cell in row if cell is not None
        )
        assert "it is no agency's form" in text, sheet.title
        assert "rows of these days: trips" in text.casefold(), sheet.title
        assert "Rules last checked: not written on Reports" in text, sheet.title


def test_licence_numbers_stand_only_where_the_agency_asks_for_them(
    run: Run, write_log: WriteLog, tmp_path: Path
) -> None:
    log = filing_log(write_log, tmp_path)
    run("filing", log, "--out", tmp_path / "plain.xlsx")
    assert not [cell for cell in cells(tmp_path / "plain.xlsx") if "LX-" in cell]
    columns = tmp_path / "columns.toml"
    columns.write_text('[[column]]\nheading = "Licences"\nfield = "licences"\n', encoding="utf-8")
    run("filing", log, "--out", tmp_path / "asked.xlsx", "--columns", columns)
    assert "LX-1; LX-2" in cells(tmp_path / "asked.xlsx")


def test_columns_are_those_of_the_columns_file(run: Run, write_log: WriteLog, tmp_path: Path) -> None:
    log = filing_log(write_log, tmp_path)
    for name, rows in (
        ("columns, a row a trip", [["T-001", None, "07/04/2026", "0042", 2, 5, 2, 2, 1, "no"]]),
        ("columns, a row a species", [["04.07.2026", "0042", None, "11", "2", "0", "4:00", "8,0"]]),
    ):
        out = tmp_path / f"{name}.xlsx"
        ran = run("filing", log, "--out", out, "--month", "2026-07", "--columns", TEMPLATES / f"{name}.toml")
        assert ran.code == 0, ran.err
        found = [list(row) for row in openpyxl.load_workbook(out)["As asked for"].iter_rows(values_only=True)]
        assert rows[0] in [row[: len(rows[0])] for row in found], found


def test_what_was_filed_is_frozen_and_a_later_difference_is_told(
    run: Run, write_log: WriteLog, tmp_path: Path
) -> None:
    log = filing_log(write_log, tmp_path)
    july = ("--out", tmp_path / "july.xlsx", "--month", "2026-07")
    assert "AMENDED" not in run("filing", log, *july, "--freeze").out
    kept = tmp_path / "log filed.json"
    frozen = kept.read_bytes()
    assert "nothing has changed since" in run("filing", log, *july).out
    book = openpyxl.load_workbook(log)
    book["Catch"]["D2"] = 1
    book.save(log)
    ran = run("filing", log, *july)
    said = " ".join(ran.out.split())
    assert "AMENDED 1" in said
    assert "T-001, kept: 2 -> 1" in said
    assert "total kept: 2 -> 1" in said
    assert "T-001, fate not written: 0 -> 1" in said
    assert kept.read_bytes() == frozen
    assert [cell for cell in cells(tmp_path / "july.xlsx") if "AMENDED 1" in cell]
    run("filing", log, *july, "--freeze")
    assert len(json.loads(kept.read_text(encoding="utf-8"))["filings"]) == 2
    assert json.loads(kept.read_text(encoding="utf-8"))["filings"][0] == json.loads(frozen)["filings"][0]
    assert "AMENDED" not in run("filing", log, "--out", tmp_path / "august.xlsx", "--month", "2026-08").out


def test_month_whose_rows_are_not_read_is_no_nil_report(
    run: Run, write_log: WriteLog, tmp_path: Path
) -> None:
    log = filing_log(write_log, tmp_path)
    book = openpyxl.load_workbook(log)
    for row in (2, 3):
        book["Trips"].cell(row, 2).value = "31 June 2026"
    book.save(log)
    ran = run("filing", log, "--out", tmp_path / "july.xlsx", "--month", "2026-07")
    assert ran.code == 1
    assert "No filing from log.xlsx" in ran.err
    assert not (tmp_path / "july.xlsx").exists()


def test_month_without_a_trip_is_nil(run: Run, write_log: WriteLog, tmp_path: Path) -> None:
    log = filing_log(write_log, tmp_path)
    ran = run("filing", log, "--out", tmp_path / "june.xlsx", "--month", "2026-06")
    assert ran.code == 0
    assert "Monthly sheet, 2026-06: nil report, postmarked by 2026-07-10" in " ".join(ran.out.split())


def test_log_with_a_stop_gives_no_filing(run: Run, write_log: WriteLog, tmp_path: Path) -> None:
    log = filing_log(write_log, tmp_path, Catch=[["Trip", "Technique", "Beast"], ["T-001", "Drop shot", "x"]])
    ran = run("filing", log, "--out", tmp_path / "out.xlsx")
    assert (ran.code, "to mend first" in ran.err) == (1, True)
    assert not (tmp_path / "out.xlsx").exists()


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("--month", "July"), "'July' is no month; write it as 2026-07."),
        (("--month", "2026-13"), "is no month"),
        (("--month", "2026-07", "--from", "2026-07-01"), "Give --month, or --from and --to"),
        (("--from", "1 July"), "'1 July' is no day"),
        (("--out", "july.csv"), "a filing is an .xlsx workbook, not .csv"),
        (("--from", "2026-08-01", "--to", "2026-07-01"), "lies behind"),
    ],
)
def test_command_line_that_is_wrong_writes_nothing(
    run: Run, write_log: WriteLog, tmp_path: Path, arguments: tuple[str, ...], said: str
) -> None:
    log = filing_log(write_log, tmp_path)
    ran = run("filing", log, "--out", tmp_path / "out.xlsx", *arguments)
    assert (ran.code, said in ran.err) == (2, True), ran.err
    assert [path.name for path in tmp_path.iterdir()] == ["log.xlsx"]


def test_foreign_files_are_left_alone(run: Run, write_log: WriteLog, tmp_path: Path) -> None:
    log = filing_log(write_log, tmp_path)
    (tmp_path / "mine.xlsx").write_text("mine", encoding="utf-8")
    (tmp_path / "t").mkdir()
    (tmp_path / "t" / "use.csv").write_text("mine", encoding="utf-8")
    for arguments in (
        ("--out", tmp_path / "mine.xlsx"),
        ("--out", log),
        ("--out", tmp_path / "new.xlsx", "--tables", tmp_path / "t"),
    ):
        ran = run("filing", log, *arguments)
        assert (ran.code, "I cannot write" in ran.err) == (1, True), ran.err
    run("build", log, "--out", tmp_path / "r", "--tables", tmp_path / "report tables")
    ran = run("filing", log, "--out", tmp_path / "new.xlsx", "--tables", tmp_path / "report tables")
    assert "it holds other tables of reporter's" in ran.err
    assert not (tmp_path / "new.xlsx").exists()


def test_same_log_gives_the_same_bytes(
    run: Run, write_log: WriteLog, tmp_path: Path, contents: Contents
) -> None:
    log = filing_log(write_log, tmp_path)
    for name in ("one", "two"):
        folder = tmp_path / name
        run(
            "filing", log, "--out", folder / "f.xlsx", "--tables", folder / "t", "--darwin-core", folder / "d"
        )
    assert contents(tmp_path / "one") == contents(tmp_path / "two")
    assert len(contents(tmp_path / "one")) == 13
