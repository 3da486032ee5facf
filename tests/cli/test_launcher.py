"""`reporter launcher`: files to drop a log on. Those for a shell are run, with a log and with a folder."""

import csv
import stat
from pathlib import Path

import pytest

from tests.cli.desktop import OPENERS, Desk, launched, needs_shell, opened_in, run, script_of
from tests.conftest import clean_sheets
from tests.demo import make


@needs_shell
@pytest.mark.parametrize("desktop", OPENERS)
def test_log_that_is_dropped_gets_its_report_and_the_report_is_opened(desktop: Desk, tmp_path: Path) -> None:
    folder = tmp_path / "it's a $HOME"
    folder.mkdir()
    script = script_of(folder, desktop)
    log = folder / "my season; rm 2026.xlsx"
    log.write_bytes((make.SAMPLES / make.CLEAN).read_bytes())
    done = run(script, log, home=folder)
    report = folder / "my season; rm 2026 report.xlsx"
    assert report.exists(), done.stderr
    assert opened_in(folder) == [str(report)]
    assert "919 read" in done.stdout


@needs_shell
def test_log_that_cannot_be_done_is_said_and_the_others_are_built(tmp_path: Path) -> None:
    script = script_of(tmp_path)
    broken, good = tmp_path / "broken.xlsx", tmp_path / "good.xlsx"
    broken.write_bytes(b"no workbook")
    good.write_bytes((make.SAMPLES / make.CLEAN).read_bytes())
    done = run(script, broken, good, home=tmp_path)
    assert f"No report for {broken}: see above." in done.stdout
    assert opened_in(tmp_path) == [str(tmp_path / "good report.xlsx")]


def folder_of_logs(folder: Path, good: int, bad: int) -> Path:
    """A folder of logs, beside which lies an older report of a log of its name."""
    logs = folder / "guides"
    logs.mkdir()
    (folder / "guides report.xlsx").write_bytes(b"of another log")
    for number in range(good):
        (logs / f"good {number}.xlsx").write_bytes((make.SAMPLES / make.CLEAN).read_bytes())
    for number in range(bad):
        (logs / f"bad {number}.xlsx").write_bytes(b"no workbook")
    return logs


@needs_shell
@pytest.mark.parametrize("desktop", OPENERS)
@pytest.mark.parametrize(
    ("good", "bad", "said"),
    [
        (2, 0, None),
        (1, 1, "Not every log in {logs} has a new report: see above."),
        (0, 1, "No report for {logs}: see above."),
        (0, 0, "No report for {logs}: see above."),
    ],
)
def test_folder_that_is_dropped_is_opened_where_it_has_reports_and_what_has_none_is_said(
    good: int, bad: int, said: str | None, desktop: Desk, tmp_path: Path
) -> None:
    script = script_of(tmp_path, desktop)
    logs = folder_of_logs(tmp_path, good, bad)
    done = run(script, logs, home=tmp_path)
    assert len(list(logs.glob("* report.xlsx"))) == good
    assert opened_in(tmp_path) == ([str(logs)] if good else [])
    told = [line for line in done.stdout.splitlines() if "see above" in line]
    assert told == ([said.format(logs=logs)] if said else [])


@needs_shell
def test_folder_that_is_one_log_gets_its_report_opened_whatever_stands_in_its_path(tmp_path: Path) -> None:
    log = tmp_path / "v1.2 of all" / "season 2026"
    log.mkdir(parents=True)
    for name, rows in clean_sheets().items():
        with (log / f"{name}.csv").open("w", newline="") as file:
            csv.writer(file).writerows(rows)
    done = run(script_of(tmp_path), log, home=tmp_path)
    report = log.with_name("season 2026 report.xlsx")
    assert report.exists(), done.stderr
    assert opened_in(tmp_path) == [str(report)]


def test_files_can_be_read_and_run(tmp_path: Path) -> None:
    for desktop, names in (
        ("windows", ["Season report.bat"]),
        ("macos", ["Season report.command"]),
        ("linux", ["Season report.desktop", "Season report.sh"]),
    ):
        folder = tmp_path / desktop
        assert launched(str(folder), "--for", desktop).exit_code == 0
        assert sorted(path.name for path in folder.iterdir()) == names
        for path in folder.iterdir():
            assert path.stat().st_mode & stat.S_IXUSR
            assert "Written by: reporter launcher" in path.read_text(encoding="utf-8")


def test_launcher_is_written_anew_over_its_own_and_over_nothing_else(tmp_path: Path) -> None:
    assert launched(str(tmp_path), "--for", "windows").exit_code == 0
    assert launched(str(tmp_path), "--for", "windows").exit_code == 0
    other = tmp_path / "Season report.command"
    other.write_text("mine")
    refused = launched(str(tmp_path), "--for", "macos")
    assert refused.exit_code == 1
    assert "was not written by reporter" in " ".join(refused.stderr.split())
    assert other.read_text() == "mine"


def test_file_in_the_place_of_the_folder_is_a_sentence(tmp_path: Path) -> None:
    place = tmp_path / "a file"
    place.write_text("")
    refused = launched(str(place))
    assert refused.exit_code == 1
    assert refused.stderr.startswith("I cannot write")
