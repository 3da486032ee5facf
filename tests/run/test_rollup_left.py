"""Logs of a roll-up that are no files, or take for ever: told under Not counted, and the others go on."""

import os
import threading
import time
from pathlib import Path

import pytest

from reporter.compute.paperwork.period import OPEN
from reporter.run import rollup_read
from reporter.run.logs import logs_in
from reporter.run.rollup import RolledUp, RollupJob, roll_up
from reporter.run.tell import silent
from tests.run.rolled import contents, rolled, table

pytestmark = pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="needs pipes")

SECONDS = 1.5  # a log of the association takes a tenth of one


def limited(folder: Path, out: Path) -> RolledUp:
    return roll_up(RollupJob(logs_in(folder), out / "r.xlsx", OPEN, None, False, False, SECONDS), silent)


def test_pipe_and_link_that_leads_nowhere_are_told_at_once(association: Path, tmp_path: Path) -> None:
    rolled(association, tmp_path / "good")
    os.mkfifo(association / "zz pipe.xlsx")
    (association / "zz link.xlsx").symlink_to(tmp_path / "nowhere.xlsx")
    begun = time.monotonic()
    made = rolled(association, tmp_path / "out").made
    assert time.monotonic() - begun < 60
    assert [(log.file, log.state, log.sentences) for log in made.missed] == [
        (
            "zz link.xlsx",
            "cannot be read",
            ("I cannot read zz link.xlsx: there is no such file; check the name and the folder.",),
        ),
        (
            "zz pipe.xlsx",
            "cannot be read",
            (
                "I cannot read zz pipe.xlsx: that is a device or a pipe, not a file; give me the workbook "
                "itself.",
            ),
        ),
    ]
    for name in ("rollup_effort", "guide_effort"):
        assert table(tmp_path / "out" / "tables", name) == table(tmp_path / "good" / "tables", name)


def test_log_that_takes_too_long_is_left_and_the_others_go_on(
    association: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    read_season = rollup_read.read_season

    def slow(path: Path) -> object:
        time.sleep(600 if path.name == "log 03.xlsx" else 0)
        return read_season(path)

    monkeypatch.setattr(rollup_read, "read_season", slow)
    done = limited(association, tmp_path / "out")
    assert done.read == 5
    (missed,) = done.made.missed
    assert (missed.log, missed.state, missed.lacking) == (3, "too slow", True)
    assert missed.sentences[0].startswith("I cannot read log 03.xlsx: it was not read after 2 seconds")
    monkeypatch.setattr(rollup_read, "read_season", read_season)
    again = limited(association, tmp_path / "out")
    assert (again.read, again.kept) == (1, 5)
    limited(association, tmp_path / "anew")
    assert contents(tmp_path / "out") == contents(tmp_path / "anew")


def test_log_that_hangs_on_the_pipe_beside_it_is_left(association: Path, tmp_path: Path) -> None:
    """Who looks whether the log has a layout of its own waits for what never comes."""
    os.mkfifo(association / "log 02 layout.xlsx")
    done = limited(association, tmp_path / "out")
    assert done.read == 5
    assert [(log.file, log.state) for log in done.made.missed] == [
        ("log 02 layout.xlsx", "cannot be read"),
        ("log 02.xlsx", "too slow"),
    ]


def test_away_from_the_main_thread_a_log_is_left_too(association: Path, tmp_path: Path) -> None:
    """No signal reaches it there: the log has a thread of its own, and the store is none of its business."""
    os.mkfifo(association / "log 02 layout.xlsx")
    found: list[RolledUp] = []
    other = threading.Thread(target=lambda: found.append(limited(association, tmp_path / "out")))
    other.start()
    other.join(120)
    assert [(done.read, len(done.made.missed)) for done in found] == [(5, 2)]
    with (association / "log 02 layout.xlsx").open("wb"):
        pass  # lets the thread go that still waits
