"""Whatever is handed in that cannot be done: one sentence, exit 1, nothing written."""

import errno
import os
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.cli.conftest import Run
from tests.conftest import WriteLog

Contents = Callable[[Path], dict[str, bytes]]
OLE = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"


def one_sentence(said: str, about: str) -> str:
    assert said.startswith("I cannot ")
    assert about in said
    assert said.endswith(".")
    assert ". " not in said
    assert "Error" not in said
    return said


def missing(folder: Path, _log: Path) -> Path:
    return folder / "nothing.xlsx"


def no_logs(folder: Path, _log: Path) -> Path:
    (folder / "empty").mkdir()
    (folder / "empty" / "notes.txt").write_text("x")
    return folder / "empty"


def not_a_spreadsheet(folder: Path, _log: Path) -> Path:
    (folder / "bad.xlsx").write_text("Trip,Date\n")
    return folder / "bad.xlsx"


def picture(folder: Path, _log: Path) -> Path:
    (folder / "bad.xlsx").write_bytes(b"\x89PNG\r\n\x1a\n" + bytes(200))
    return folder / "bad.xlsx"


def with_a_password(folder: Path, _log: Path) -> Path:
    (folder / "bad.xlsx").write_bytes(OLE + bytes(600) + "EncryptedPackage".encode("utf-16-le") + bytes(99))
    return folder / "bad.xlsx"


def truncated(folder: Path, log: Path) -> Path:
    (folder / "bad.xlsx").write_bytes(log.read_bytes()[:-2000])
    return folder / "bad.xlsx"


def nothing_in_it(folder: Path, _log: Path) -> Path:
    (folder / "bad.xlsx").write_bytes(b"")
    return folder / "bad.xlsx"


BAD_FILES = [missing, no_logs, not_a_spreadsheet, picture, with_a_password, truncated, nothing_in_it]


@pytest.mark.parametrize("command", ["check", "build"])
@pytest.mark.parametrize("make", BAD_FILES, ids=lambda make: make.__name__)
def test_file_that_cannot_be_read_is_one_sentence(
    make: Callable[[Path, Path], Path],
    command: str,
    tmp_path: Path,
    write_log: WriteLog,
    run: Run,
    contents: Contents,
) -> None:
    path = make(tmp_path, write_log())
    before = contents(tmp_path)
    ran = run(command, path)
    one_sentence(ran.err, path.name)
    assert (ran.code, ran.out) == (1, "")
    assert contents(tmp_path) == before


STOPPED = [
    ({"Catch": None}, "There is no sheet 'Catch'"),
    ({"Trips": {"C1": None}}, "There is no column 'Water'"),
    ({"Trips": []}, "Trips: The sheet is empty"),
    ({"Trips": [["Trip", "Date", "Water", "Start", "End", "Anglers"]]}, "Trips: The sheet holds no trip"),
    ({"Effort": {"C5": "=4*60"}}, "Effort row 5, Minutes"),
]


@pytest.mark.parametrize(("changes", "said"), STOPPED)
def test_log_with_a_stop_gives_no_report_and_says_why(
    changes: dict[str, object], said: str, write_log: WriteLog, run: Run, contents: Contents, tmp_path: Path
) -> None:
    log = write_log(changes)
    before = contents(log.parent)
    ran = run("build", log, "--out", tmp_path / "out", "--tables", tmp_path / "tables")
    assert ran.code == 1
    assert ran.out == ""
    assert ran.err.startswith("No report of log.xlsx: ")
    assert said in ran.err
    assert contents(log.parent) == before
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(("changes", "said"), STOPPED)
def test_check_prints_a_stop_as_its_result_and_exits_1(
    changes: dict[str, object], said: str, write_log: WriteLog, run: Run
) -> None:
    ran = run("check", write_log(changes))
    assert ran.code == 1
    assert ran.err == ""
    assert "Stop: no report until these are mended" in ran.out
    assert said in " ".join(ran.out.split())


@pytest.mark.parametrize("option", ["--out", "--tables"])
def test_folder_below_a_file_is_one_sentence(
    option: str, write_log: WriteLog, run: Run, contents: Contents
) -> None:
    log = write_log()
    before = contents(log.parent)
    ran = run("build", log, option, log / "reports")
    one_sentence(ran.err, str(log / "reports"))
    assert (ran.code, ran.out) == (1, "")
    assert contents(log.parent) == before


def into_a_file(command: str, log: Path, place: Path) -> tuple[str | Path, ...]:
    """A command line that would write into a file as if it were a folder."""
    lines: dict[str, tuple[str | Path, ...]] = {
        "build": ("build", log, "--out", place),
        "tables": ("build", log, "--tables", place),
        "filing": ("filing", log, "--out", place / "pages.xlsx"),
        "blank": ("blank", place / "new.xlsx"),
        "launcher": ("launcher", place),
    }
    return lines[command]


@pytest.mark.parametrize("command", ["build", "tables", "filing", "blank", "launcher"])
def test_file_in_the_place_of_a_folder_is_said_to_be_one(
    command: str, write_log: WriteLog, run: Run, contents: Contents
) -> None:
    log = write_log()
    place = log.parent / "place"
    place.write_text("mine")
    before = contents(log.parent)
    ran = run(*into_a_file(command, log, place))
    assert "is a file, not a folder; choose another name." in one_sentence(ran.err, str(place))
    assert "does not exist" not in ran.err
    assert (ran.code, ran.out) == (1, "")
    assert contents(log.parent) == before


@pytest.mark.parametrize("typed", ["x", "", "0", "-1", "1.5", "1e3", "2 3", "9" * 5000])
def test_number_of_workers_that_is_none_is_said_in_plain_words(
    typed: str, write_log: WriteLog, run: Run, contents: Contents
) -> None:
    log = write_log()
    before = contents(log.parent)
    ran = run("build", log, f"--workers={typed}")
    assert ran.err.replace(" ", "").endswith(f"'{typed}'isnowholenumberfrom1up.".replace(" ", ""))
    assert "'--workers'" in ran.err
    assert "range" not in ran.err
    assert (ran.code, ran.out) == (2, "")
    assert contents(log.parent) == before


@pytest.mark.parametrize("typed", ["1989", "2201", "9" * 5000])
def test_year_that_is_none_is_said_in_plain_words(typed: str, tmp_path: Path, run: Run) -> None:
    ran = run("blank", tmp_path / "new.xlsx", "--season", typed)
    assert "is no year from 1990 to 2200." in ran.err
    assert (ran.code, ran.out) == (2, "")
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(
    ("number", "said"),
    [(errno.EACCES, "no permission"), (errno.EROFS, "read-only"), (errno.ENOSPC, "disk is full")],
)
def test_folder_that_takes_no_file_is_one_sentence(
    number: int,
    said: str,
    write_log: WriteLog,
    run: Run,
    contents: Contents,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    log = write_log()
    before = contents(log.parent)
    opened = os.open

    def refuse(path: str, flags: int, *mode: int) -> int:
        if flags & os.O_CREAT:
            raise OSError(number, os.strerror(number))
        return opened(path, flags, *mode)

    monkeypatch.setattr(os, "open", refuse)
    ran = run("build", log)
    assert said in one_sentence(ran.err, "log report.xlsx")
    assert ran.code == 1
    assert contents(log.parent) == before


def test_report_that_is_open_elsewhere_is_one_sentence_and_stays_as_it_was(
    write_log: WriteLog, run: Run, contents: Contents, monkeypatch: pytest.MonkeyPatch
) -> None:
    log = write_log()
    assert run("build", log).code == 0
    before = contents(log.parent)

    def locked(self: Path, target: Path) -> None:
        raise PermissionError(errno.EACCES, "in use", str(target))

    monkeypatch.setattr(Path, "replace", locked)
    monkeypatch.setattr(time, "sleep", lambda _: None)
    ran = run("build", log)
    assert "open in another program" in one_sentence(ran.err, "log report.xlsx")
    assert ran.code == 1
    assert contents(log.parent) == before


def test_target_that_someone_else_made_is_refused(write_log: WriteLog, run: Run, contents: Contents) -> None:
    log = write_log()
    write_log(name="log report.xlsx", folder=log.parent)
    before = contents(log.parent)
    ran = run("build", log)
    assert "was not written by reporter" in one_sentence(ran.err, "log report.xlsx")
    assert (ran.code, ran.out) == (1, "")
    assert contents(log.parent) == before


@pytest.mark.parametrize("link", [None, Path.symlink_to, Path.hardlink_to])
def test_target_that_is_an_input_is_refused(
    link: Callable[[Path, Path], None] | None, write_log: WriteLog, run: Run, contents: Contents
) -> None:
    log = write_log()
    target = log.parent / "log report.xlsx"
    if link is None:
        write_log(name=target.name, folder=log.parent)
    else:
        link(target, log)
    before = contents(log.parent)
    ran = run("build", log, target) if link is None else run("build", log)
    assert "that is a file I am reading" in ran.err
    assert ran.code == 1
    after = contents(log.parent)
    assert before.items() <= after.items()
    assert set(after) - set(before) <= {"log report report.xlsx"}


def test_target_that_is_a_folder_is_refused(write_log: WriteLog, run: Run) -> None:
    log = write_log()
    (log.parent / "log report.xlsx").mkdir()
    ran = run("build", log)
    assert "that is a folder" in one_sentence(ran.err, "log report.xlsx")
    assert ran.code == 1
    assert list((log.parent / "log report.xlsx").iterdir()) == []


def test_folder_that_may_not_be_looked_into_is_one_sentence(
    tmp_path: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(self: Path) -> None:
        raise PermissionError(errno.EACCES, "Permission denied", str(self))

    monkeypatch.setattr(Path, "iterdir", refuse)
    for command in ("check", "build"):
        ran = run(command, tmp_path)
        one_sentence(ran.err, str(tmp_path))
        assert ran.code == 1
