"""Several logs at once: one that fails keeps no other from its report, and no two share a target."""

import os
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.cli.conftest import Run
from tests.conftest import WriteLog

Contents = Callable[[Path], dict[str, bytes]]


def test_batch_goes_on_past_every_kind_of_failure_and_exits_1(
    tmp_path: Path, write_log: WriteLog, run: Run
) -> None:
    logs = [
        write_log({"Catch": None}, "a.xlsx", folder=tmp_path),
        tmp_path / "b.xlsx",
        write_log(name="c.xlsx", folder=tmp_path),
        write_log(name="d.xlsx", folder=tmp_path),
        write_log(name="e.xlsx", folder=tmp_path),
    ]
    logs[1].write_text("no workbook")
    (tmp_path / "c report.xlsx").write_text("mine")
    ran = run("build", *logs, tmp_path / "nothing.xlsx")
    assert ran.code == 1
    for name in ("a.xlsx", "b.xlsx", "c report.xlsx", "nothing.xlsx"):
        assert name in ran.err
    assert "d.xlsx" in ran.out
    assert "e.xlsx" in ran.out
    assert {path.name for path in tmp_path.glob("* report.xlsx")} == {
        "c report.xlsx",
        "d report.xlsx",
        "e report.xlsx",
    }
    assert (tmp_path / "c report.xlsx").read_text() == "mine"


def test_check_goes_on_past_a_file_it_cannot_read(tmp_path: Path, write_log: WriteLog, run: Run) -> None:
    (tmp_path / "a.xlsx").write_text("no workbook")
    log = write_log(name="b.xlsx", folder=tmp_path)
    ran = run("check", tmp_path / "a.xlsx", log)
    assert ran.code == 1
    assert "a.xlsx" in ran.err
    assert "b.xlsx\n  Nothing to mend" in ran.out


def test_two_logs_of_one_target_are_refused_before_anything_is_written(
    tmp_path: Path, write_log: WriteLog, run: Run, contents: Contents
) -> None:
    for folder in ("north", "south"):
        (tmp_path / folder).mkdir()
        write_log(name="log.xlsx", folder=tmp_path / folder)
    other = write_log(name="other.xlsx", folder=tmp_path)
    before = contents(tmp_path)
    logs = (other, tmp_path / "north/log.xlsx", tmp_path / "south/log.xlsx")
    for more in (("--out", tmp_path / "out"), ("--tables", tmp_path / "tables")):
        ran = run("build", *logs, *more)
        assert ran.code == 2
        assert "log report.xlsx" in ran.err
        assert str(logs[1]) in ran.err
        assert str(logs[2]) in ran.err
        assert contents(tmp_path) == before


def test_logs_of_one_name_in_two_folders_are_built_beside_themselves(
    tmp_path: Path, write_log: WriteLog, run: Run
) -> None:
    for folder in ("north", "south"):
        (tmp_path / folder).mkdir()
        write_log(name="log.xlsx", folder=tmp_path / folder)
    assert run("build", tmp_path / "north", tmp_path / "south").code == 0
    assert len(list(tmp_path.glob("*/log report.xlsx"))) == 2


def test_log_named_twice_is_built_once(write_log: WriteLog, run: Run) -> None:
    log = write_log()
    ran = run("build", log, log, log.parent)
    assert ran.code == 0
    assert ran.out.count("log report.xlsx") == 1


def test_folder_stands_for_its_logs_and_our_reports_are_skipped(
    tmp_path: Path, write_log: WriteLog, run: Run
) -> None:
    for name in ("a.xlsx", "b.xlsx"):
        write_log(name=name, folder=tmp_path)
    (tmp_path / "~$a.xlsx").write_bytes(b"lock")
    (tmp_path / "notes.txt").write_text("x")
    for _ in range(2):
        ran = run("build", tmp_path)
        assert (ran.code, ran.err) == (0, "")
        assert {path.name for path in tmp_path.glob("*.xlsx")} == {
            "~$a.xlsx",
            "a.xlsx",
            "a report.xlsx",
            "b.xlsx",
            "b report.xlsx",
        }


def test_report_whose_name_was_changed_is_still_skipped(write_log: WriteLog, run: Run) -> None:
    log = write_log()
    assert run("build", log).code == 0
    (log.parent / "log report.xlsx").rename(log.parent / "spring.xlsx")
    log.unlink()
    ran = run("build", log.parent)
    assert ran.code == 1
    assert "I cannot find a season log" in ran.err


def test_blank_log_is_a_log_and_is_not_skipped(tmp_path: Path, run: Run) -> None:
    assert run("blank", tmp_path / "new.xlsx", "--season", "2026").code == 0
    ran = run("build", tmp_path)
    assert ran.code == 1
    assert "No report of new.xlsx" in ran.err
    assert "holds no trip" in ran.err


def test_reports_go_into_the_folder_that_is_named_and_it_is_made(
    tmp_path: Path, write_log: WriteLog, run: Run
) -> None:
    log = write_log()
    out = tmp_path / "some" / "where"
    assert run("build", log, "--out", out).code == 0
    assert [path.name for path in out.iterdir()] == ["log report.xlsx"]
    assert [path.name for path in log.parent.iterdir()] == ["log.xlsx"]


def test_tables_of_several_logs_go_into_a_folder_each(tmp_path: Path, write_log: WriteLog, run: Run) -> None:
    logs = [write_log(name=name, folder=tmp_path) for name in ("a.xlsx", "b.xlsx")]
    assert run("build", *logs, "--tables", tmp_path / "tables").code == 0
    assert {path.name for path in (tmp_path / "tables").iterdir()} == {"a", "b"}
    assert (tmp_path / "tables/a/trips.csv").is_file()
    assert (tmp_path / "tables/b/datapackage.json").is_file()


def test_report_that_is_another_log_of_the_run_is_never_written_over(
    tmp_path: Path, write_log: WriteLog, run: Run, contents: Contents
) -> None:
    """By another name of the same file: a hard link."""
    for workers in ("1", "2"):
        folder = tmp_path / workers
        folder.mkdir()
        log = write_log(name="log.xlsx", folder=folder)
        assert run("build", log).code == 0
        report = folder / "log report.xlsx"
        (folder / "other.xlsx").hardlink_to(report)
        before = contents(folder)
        ran = run("build", log, folder / "other.xlsx", "--workers", workers)
        assert ran.code == 1
        assert "that is a file I am reading" in ran.err
        assert contents(folder) == before


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="needs pipes")
def test_what_has_the_ending_of_a_workbook_and_is_no_file_is_told(
    tmp_path: Path, write_log: WriteLog, run: Run
) -> None:
    write_log(name="a.xlsx", folder=tmp_path)
    os.mkfifo(tmp_path / "b.xlsx")
    (tmp_path / "c.xlsx").symlink_to(tmp_path / "nowhere.xlsx")
    ran = run("build", tmp_path, "--out", tmp_path / "out")
    assert ran.code == 1
    assert "I cannot read b.xlsx: that is a device or a pipe" in ran.err
    assert "I cannot read c.xlsx: there is no such file" in ran.err
    assert [path.name for path in (tmp_path / "out").iterdir()] == ["a report.xlsx"]


def test_folder_that_cannot_be_written_to_is_told_for_each_log(
    tmp_path: Path, write_log: WriteLog, run: Run
) -> None:
    (tmp_path / "taken").write_text("a file")
    logs = [write_log(name=name, folder=tmp_path) for name in ("a.xlsx", "b.xlsx")]
    ran = run("build", *logs, "--out", tmp_path / "taken")
    assert (ran.code, ran.err.count("I cannot write to")) == (1, 2)
    assert ran.out.endswith("2 logs: 0 with a report, 2 without.\n  rows      0 read, 0 used, 0 set aside\n")


def test_workers_are_of_this_computer_or_of_a_cluster(write_log: WriteLog, run: Run) -> None:
    assert run("build", write_log(), "--workers", "2", "--cluster", "tcp://127.0.0.1:1").code == 2
    assert run("build", write_log(), "--workers", "0").code == 2
