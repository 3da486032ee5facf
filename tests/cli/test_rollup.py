"""`reporter rollup` as an association runs it."""

import datetime as dt
import os
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.cli.conftest import Run
from tests.rollup_logs import WATERS, Day, GuideLog, save_all

Contents = Callable[[Path], dict[str, bytes]]


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    day = Day(dt.date(2026, 6, 2), "Lake Arden", 2, 4, (("walleye", 2, "kept"), ("bluegill", 3, None)))
    save_all([GuideLog(f"G{number}", [day], WATERS) for number in range(1, 5)], tmp_path / "logs")
    return tmp_path / "logs"


def test_totals_are_printed_by_hand(run: Run, folder: Path, tmp_path: Path) -> None:
    """Four guides, each one trip of 2 anglers x 4 h, 2 walleye kept and 3 bluegill of fate not written."""
    ran = run("rollup", folder, "--out", tmp_path / "r.xlsx")
    assert (ran.code, ran.err) == (0, "")
    assert "4 trips, 8 anglers, 32.0 angler-hours" in ran.out
    assert "8 kept, 0 released, 12 of fate not written" in ran.out
    assert "4 read, none kept from before" in ran.out
    assert "0 read, 4 kept from before" in run("rollup", folder, "--out", tmp_path / "r.xlsx").out


def test_log_that_is_not_counted_gives_its_sentence_and_exit_1(
    run: Run, folder: Path, tmp_path: Path
) -> None:
    (folder / "torn.xlsx").write_bytes(b"PK\x03\x04 torn")
    ran = run("rollup", folder, "--out", tmp_path / "r.xlsx")
    assert ran.code == 1
    assert "Not counted: log 5, torn.xlsx (cannot be read). I cannot read torn.xlsx" in ran.err
    assert "4 trips" in ran.out
    assert (tmp_path / "r.xlsx").exists()


def test_without_pyarrow_a_sentence_says_how_to_install_it(
    run: Run, folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, contents: Contents
) -> None:
    monkeypatch.setitem(sys.modules, "pyarrow", None)
    monkeypatch.setitem(sys.modules, "pyarrow.parquet", None)
    before = contents(tmp_path)
    ran = run("rollup", folder, "--out", tmp_path / "r.xlsx", "--tables", tmp_path / "t", "--parquet")
    assert ran.code == 1
    assert "python -m pip install 'season-reporter[parquet]'" in ran.err
    assert contents(tmp_path) == before


def test_command_lines_that_cannot_be_meant_give_2(run: Run, folder: Path, tmp_path: Path) -> None:
    out = ("--out", tmp_path / "r.xlsx")
    for more in (("--parquet",), ("--month", "2026-13"), ("--month", "2026-06", "--from", "2026-06-01")):
        assert run("rollup", folder, *out, *more).code == 2, more
    assert run("rollup", folder, "--out", tmp_path / "r.pdf").code == 2


def test_what_is_no_folder_of_logs_is_a_sentence(run: Run, folder: Path, tmp_path: Path) -> None:
    (tmp_path / "empty").mkdir()
    for what in (folder / "log 01.xlsx", tmp_path / "nothing there", tmp_path / "empty"):
        ran = run("rollup", what, "--out", tmp_path / "r.xlsx")
        assert ran.code == 1
        assert ran.err.startswith("I cannot")
    assert not (tmp_path / "r.xlsx").exists()


def test_roll_up_replaces_itself_and_no_other_workbook(run: Run, folder: Path, tmp_path: Path) -> None:
    assert run("rollup", folder, "--out", folder / "r.xlsx").code == 0  # among the logs, and no log itself
    assert "4 kept from before" in run("rollup", folder, "--out", folder / "r.xlsx").out
    before = (folder / "log 01.xlsx").read_bytes()
    ran = run("rollup", folder, "--out", folder / "log 01.xlsx")
    assert (ran.code, (folder / "log 01.xlsx").read_bytes()) == (1, before)
    assert "that is a file I am reading" in ran.err


def test_days_narrow_the_totals(run: Run, tmp_path: Path) -> None:
    days = [Day(dt.date(2026, month, 2), "Lake Arden") for month in (5, 6, 7)]
    save_all([GuideLog(f"G{number}", days, WATERS) for number in range(3)], tmp_path / "logs")
    out = ("--out", tmp_path / "r.xlsx")
    assert "9 trips" in run("rollup", tmp_path / "logs", *out).out
    assert "3 trips" in run("rollup", tmp_path / "logs", *out, "--month", "2026-06").out
    assert "6 trips" in run("rollup", tmp_path / "logs", *out, "--from", "2026-06-02").out
    assert "6 trips" in run("rollup", tmp_path / "logs", *out, "--to", "2026-06-02").out
    assert "0 trips" in run("rollup", tmp_path / "logs", *out, "--month", "2027-01").out


def test_file_names_that_are_no_text_are_no_traceback(run: Run, folder: Path, tmp_path: Path) -> None:
    (folder / "log 01.xlsx").rename(folder / os.fsdecode(b"\xff log.xlsx"))
    (folder / os.fsdecode(b"\xfe torn.xlsx")).write_bytes(b"PK\x03\x04 torn")
    out = ("--out", tmp_path / "r.xlsx", "--tables", tmp_path / "t", "--names")
    ran = run("rollup", folder, *out)
    assert ran.code == 1
    assert "4 trips" in ran.out
    assert r"\xfe torn.xlsx" in (tmp_path / "t" / "guides" / "logs.csv").read_text(encoding="utf-8")
