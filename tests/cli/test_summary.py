"""`reporter build --summary`: what it may write over, and where it may not lie."""

import errno
import os
from pathlib import Path

import pytest

from tests.cli.conftest import Run
from tests.conftest import WriteLog


@pytest.fixture
def log(tmp_path: Path, write_log: WriteLog) -> Path:
    return write_log(name="log.xlsx", folder=tmp_path)


def no_report(folder: Path) -> bool:
    return not list(folder.rglob("*report.xlsx"))


def test_summary_of_ours_is_written_over_and_its_folder_is_made(log: Path, run: Run) -> None:
    summary = log.parent / "new" / "all.csv"
    for _ in range(2):
        assert run("build", log, "--summary", summary).code == 0
    heading, row = summary.read_text(encoding="utf-8").splitlines()
    assert heading.startswith("log,state,")
    assert row.startswith(f"{log},done,20,20,0,0,0,0,3,24,6,0.25,{log.parent / 'log report.xlsx'}")
    assert [path.name for path in summary.parent.iterdir()] == ["all.csv"]


@pytest.mark.parametrize("content", ["mine\n", "", "log,state\n", "\0\0", "log" * 100_000])
def test_file_that_is_no_summary_is_left_alone_and_nothing_is_built(
    log: Path, run: Run, content: str
) -> None:
    mine = log.parent / "all.csv"
    mine.write_text(content)
    ran = run("build", log, "--summary", mine)
    assert (ran.code, ran.out) == (1, "")
    assert "is no summary of reporter's" in ran.err
    assert mine.read_text() == content
    assert no_report(log.parent)


def test_weather_file_is_never_the_summary(log: Path, run: Run) -> None:
    summary = log.parent / "all.csv"
    assert run("build", log, "--summary", summary).code == 0
    (log.parent / "log report.xlsx").unlink()
    ran = run("build", log, "--weather", summary, "--summary", summary)
    assert ran.code == 1
    assert "a file I am reading" in ran.err
    assert no_report(log.parent)


@pytest.mark.parametrize("name", ["all.xlsx", "all", "all.txt"])
def test_summary_is_a_csv_file(log: Path, run: Run, name: str) -> None:
    ran = run("build", log, "--summary", log.parent / name)
    assert ran.code == 2
    assert ".csv" in ran.err
    assert no_report(log.parent)


def test_summary_lies_neither_among_tables_nor_in_a_log(log: Path, run: Run) -> None:
    tables = log.parent / "tables"
    ran = run("build", log, "--tables", tables, "--summary", tables / "fish.csv")
    assert ran.code == 1
    assert "tables go into its folder" in ran.err
    csv_log = log.parent / "csv"
    csv_log.mkdir()
    (csv_log / "Trips.csv").write_text("Trip,Date\n")
    ran = run("build", log, "--summary", csv_log / "all.csv")
    assert ran.code == 1
    assert "a log of .csv files" in ran.err
    assert no_report(log.parent)


def test_summary_that_would_make_a_log_of_its_folder_is_refused(log: Path, run: Run) -> None:
    ran = run("build", log.parent, "--summary", log.parent / "trips.csv")
    assert ran.code == 1
    assert "would be taken for a log" in ran.err
    assert no_report(log.parent)


def test_summary_that_cannot_be_put_in_its_place_is_a_sentence_and_the_reports_are_there(
    log: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(*_: object) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr("reporter.write.summary._write", full)
    ran = run("build", log, "--summary", log.parent / "all.csv")
    assert ran.code == 1
    assert "the disk is full" in ran.err
    assert not no_report(log.parent)
    assert not (log.parent / "all.csv").exists()


def test_text_of_a_summary_is_never_a_formula(
    tmp_path: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    assert run("build", "=1+1.xlsx", "--summary", "all.csv").code == 1
    assert Path("all.csv").read_text().splitlines()[1].startswith("'=1+1.xlsx,unreadable,,")
