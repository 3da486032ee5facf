"""A roll-up run again: what is read anew, what is counted once, killed at any moment."""

import datetime as dt
import os
import random
import shutil
import signal
import sqlite3
import time
from pathlib import Path

import pytest

from reporter.beside.finished import finished_path
from reporter.compute.paperwork.period import Period
from reporter.run import rollup_read
from tests.rollup_logs import Day, GuideLog
from tests.run.rolled import contents, rolled, table

KILLS = 12
MOST_TRIES = 100


def test_finished_logs_are_not_read_again_unless_changed(
    association: Path, tmp_path: Path, reads: list[str]
) -> None:
    rolled(association, tmp_path / "out")
    assert len(reads) == 6
    before = contents(tmp_path / "out")
    reads.clear()
    assert rolled(association, tmp_path / "out").kept == 6
    assert reads == []
    assert contents(tmp_path / "out") == before
    GuideLog("G02", [Day(dt.date(2026, 6, 2), "Lake Arden")]).save(association / "log 03.xlsx")
    rolled(association, tmp_path / "out")
    assert reads == ["log 03.xlsx"]
    rolled(association, tmp_path / "anew")
    assert contents(tmp_path / "out") == contents(tmp_path / "anew")


def test_log_taken_from_the_folder_leaves_the_roll_up(association: Path, tmp_path: Path) -> None:
    rolled(association, tmp_path / "out")
    (association / "log 04.xlsx").unlink()
    rolled(association, tmp_path / "out")
    rolled(association, tmp_path / "anew")
    assert contents(tmp_path / "out") == contents(tmp_path / "anew")


def test_other_days_another_reporter_or_another_layout_read_the_logs_again(
    association: Path, tmp_path: Path, reads: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    rolled(association, tmp_path / "out")
    reads.clear()
    june = Period(dt.date(2026, 6, 1), dt.date(2026, 6, 30))
    rolled(association, tmp_path / "out", period=june)
    assert len(reads) == 6
    months = [row for row in table(tmp_path / "out" / "tables", "rollup_effort") if row["by"] == "month"]
    assert {row["name"] for row in months} <= {"2026-06", "others"}
    reads.clear()
    monkeypatch.setattr(rollup_read, "__version__", "99.0")
    rolled(association, tmp_path / "out", period=june)
    assert len(reads) == 6
    reads.clear()
    (association / "log 02 layout.xlsx").write_bytes(b"no workbook")
    rolled(association, tmp_path / "out", period=june)
    assert set(reads) == {"log 02.xlsx", "log 02 layout.xlsx"}  # the second is no layout of ours, so a log


def _forked(association: Path, out: Path) -> int:
    child = os.fork()
    if not child:
        try:
            rolled(association, out)
        finally:
            os._exit(0)
    return child


@pytest.mark.skipif(not hasattr(os, "fork"), reason="needs fork")
def test_killed_and_started_again_it_gives_the_same_files(association: Path, tmp_path: Path) -> None:
    out, whole = tmp_path / "out", tmp_path / "whole"
    begun = time.perf_counter()
    os.waitpid(_forked(association, whole), 0)
    seconds = time.perf_counter() - begun
    moments = random.Random(20260711)  # noqa: S311 - guards nothing
    killed = finished_between = 0
    for _ in range(MOST_TRIES):
        if out.exists() and moments.random() < 0.5:
            shutil.rmtree(out)
        child = _forked(association, out)
        time.sleep(moments.uniform(0, seconds))
        os.kill(child, signal.SIGKILL)
        _, status = os.waitpid(child, 0)
        killed += os.WIFSIGNALED(status)
        finished_between += 0 < _finished(out) < 6
        if killed >= KILLS and finished_between >= 3:
            break
    assert killed >= KILLS
    assert finished_between >= 3
    rolled(association, out)
    assert contents(out) == contents(whole)


def _finished(out: Path) -> int:
    path = finished_path(out / "roll.xlsx")
    if not path.exists():
        return 0
    try:
        with sqlite3.connect(path) as store:
            return int(store.execute("SELECT COUNT(*) FROM log").fetchone()[0])
    except sqlite3.OperationalError:
        return 0  # killed before its tables were made


def test_log_that_is_there_twice_is_counted_once(association: Path, tmp_path: Path, reads: list[str]) -> None:
    rolled(association, tmp_path / "good")
    reads.clear()
    shutil.copy(association / "log 02.xlsx", association / "zz copy of log 02.xlsx")
    for read in (6, 0):
        done = rolled(association, tmp_path / "out")
        assert done.read == read
        (twice,) = done.made.missed
        assert (twice.log, twice.state, twice.lacking) == (7, "there twice", False)
        assert twice.sentences == ("Log 2, log 02.xlsx, is the same; that one is counted.",)
    for name in ("rollup_effort", "rollup_fish", "guide_effort", "guide_fish", "missing_months"):
        assert table(tmp_path / "out" / "tables", name) == table(tmp_path / "good" / "tables", name)


def test_mended_copy_stands_for_its_log(association: Path, tmp_path: Path) -> None:
    """Log 2 has its one trip changed in its mended copy: only what is mended counts."""
    log, mended = association / "log 02.xlsx", association / "log 02 mended.xlsx"
    GuideLog("G01", [Day(dt.date(2026, 6, 2), "Lake Arden", anglers=3)]).save(log)
    GuideLog("G01", [Day(dt.date(2026, 6, 2), "Lake Arden", anglers=2)]).save(mended)
    made = rolled(association, tmp_path / "out").made
    assert [(log.file, log.sentences) for log in made.missed] == [
        ("log 02.xlsx", ("Log 2, log 02 mended.xlsx, is its mended copy; that one is counted.",))
    ]
    (row,) = [row for row in table(tmp_path / "out" / "tables", "guide_effort") if row["guide"] == "G01"]
    assert (row["logs"], row["trips"], row["anglers"]) == ("1", "1", "2")


def test_mended_copy_is_read_again_where_the_layout_of_its_log_changes(
    association: Path, tmp_path: Path, reads: list[str]
) -> None:
    """A mended copy has no layout of its own: it is read by that of the log that it was made from."""
    (association / "log 02.xlsx").rename(association / "log 02 mended.xlsx")
    rolled(association, tmp_path / "out")
    reads.clear()
    (association / "log 02 layout.xlsx").write_bytes(b"no workbook")
    rolled(association, tmp_path / "out")
    assert "log 02 mended.xlsx" in reads


def test_log_that_changes_while_it_is_read_is_not_counted(
    association: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    read_season = rollup_read.read_season

    def saved_meanwhile(path: Path) -> object:
        found = read_season(path)
        if path.name == "log 03.xlsx":
            GuideLog("G02", [Day(dt.date(2026, 6, 2), "Lake Arden")]).save(path)
        return found

    monkeypatch.setattr(rollup_read, "read_season", saved_meanwhile)
    (missed,) = rolled(association, tmp_path / "out").made.missed
    assert missed.sentences == ("I cannot read log 03.xlsx: it changed meanwhile; run it again.",)
    monkeypatch.setattr(rollup_read, "read_season", read_season)
    assert rolled(association, tmp_path / "out").read == 1
    rolled(association, tmp_path / "anew")
    assert contents(tmp_path / "out") == contents(tmp_path / "anew")
