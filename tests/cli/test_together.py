"""`reporter build --together`: what is printed, what is refused, and that nothing is half written."""

import shutil
from collections.abc import Callable
from pathlib import Path

import openpyxl
import pytest

from tests.cli.conftest import Run
from tests.cli.every_command import SAMPLES
from tests.conftest import WriteLog
from tests.season_logs import Trip, season_sheets, write_seasons

Contents = Callable[[Path], dict[str, bytes]]
REPORT = "Seasons 2024 to 2025 report.xlsx"
TRIPS = [Trip(5, day, 60, {"Drop shot": (240, 3)}) for day in (2, 9, 16)]


@pytest.fixture
def logs(tmp_path: Path, write_log: WriteLog) -> list[Path]:
    seasons = {name: season_sheets(year, TRIPS) for name, year in (("new", 2025), ("old", 2024))}
    return write_seasons(write_log, tmp_path, seasons)


def test_report_stands_beside_the_log_of_the_earliest_season(
    logs: list[Path], run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(logs[0].parent)
    Path("attic").mkdir()
    logs[1].rename(Path("attic") / "old.xlsx")
    ran = run("build", "new.xlsx", "attic/old.xlsx", "--together")
    assert (ran.code, ran.err) == (0, "")
    assert (Path("attic") / REPORT).exists()
    lines = ran.out.splitlines()
    assert lines[:3] == ["Seasons 2024 to 2025", "  logs      old.xlsx: 2024", "            new.xlsx: 2025"]
    assert "18 fish in 24 rod-hours on 6 trips" in ran.out
    assert max(map(len, lines)) <= 80


def test_folder_stands_for_every_log_in_it_and_never_for_a_report(logs: list[Path], run: Run) -> None:
    folder = logs[0].parent
    assert run("build", folder, "--together").code == 0
    ran = run("build", folder, "--together", "--quiet", "--tables", folder / "tables")
    assert (ran.code, ran.out, ran.err) == (0, "", "")
    assert (folder / "tables" / "seasons.csv").exists()


def test_one_log_alone_gives_its_ordinary_report(logs: list[Path], run: Run, contents: Contents) -> None:
    assert run("build", logs[0], "--out", logs[0].parent / "plain").code == 0
    ran = run("build", logs[0], "--together", "--out", logs[0].parent / "alone")
    assert ran.code == 0
    assert ran.out.startswith("One log alone has no other season to be set against")
    assert contents(logs[0].parent / "alone") == contents(logs[0].parent / "plain")


@pytest.mark.parametrize("more", [("--workers", "2"), ("--cluster", "tcp://h:1"), ("--summary", "all.csv")])
def test_what_is_for_many_reports_is_refused(more: tuple[str, str], logs: list[Path], run: Run) -> None:
    ran = run("build", *logs, "--together", *more)
    assert (ran.code, ran.out) == (2, "")
    assert "--together makes one report" in ran.err


def test_one_log_named_twice_is_refused(logs: list[Path], run: Run) -> None:
    ran = run("build", logs[0], logs[0].parent / "." / logs[0].name, "--together")
    assert (ran.code, ran.out) == (2, "")
    assert "is named twice; name the log of each season once." in ran.err


def test_nothing_is_written_where_one_log_cannot_be_read_or_has_a_stop(
    logs: list[Path], run: Run, write_log: WriteLog, contents: Contents
) -> None:
    folder = logs[0].parent
    (folder / "no workbook.xlsx").write_text("no workbook")
    write_log({"Catch": None}, "stops.xlsx", folder=folder)
    before = contents(folder)
    for bad, said in (
        ("no workbook.xlsx", "I cannot read"),
        ("stops.xlsx", "No report, because of stops.xlsx"),
    ):
        ran = run("build", *logs, folder / bad, "--together", "--out", folder / "out")
        assert (ran.code, ran.out) == (1, "")
        assert said in ran.err
        assert bad in ran.err
    empty = folder / "empty"
    empty.mkdir()
    ran = run("build", *logs, empty, "--together", "--out", folder / "out")
    assert (ran.code, ran.out) == (1, "")
    assert contents(folder) == before


def test_two_guides_are_told_of_the_roll_up(tmp_path: Path, run: Run, write_log: WriteLog) -> None:
    seasons = {
        name: season_sheets(year, TRIPS, Guide_code=name) for name, year in (("ann", 2024), ("bo", 2025))
    }
    ran = run("build", *write_seasons(write_log, tmp_path, seasons), "--together")
    assert (ran.code, ran.out) == (1, "")
    assert "reporter rollup" in ran.err


def test_file_that_is_not_ours_is_left_alone(logs: list[Path], run: Run) -> None:
    target = logs[1].parent / REPORT
    target.write_text("mine")
    ran = run("build", *logs, "--together")
    assert ran.code == 1
    assert REPORT in ran.err
    assert target.read_text() == "mine"


def test_weather_that_serves_one_of_the_seasons_is_not_said_to_serve_none(tmp_path: Path, run: Run) -> None:
    names = ("demo season.xlsx", "demo season 2025.xlsx", "demo season hourly weather.csv")
    log, earlier, weather = (Path(shutil.copy(SAMPLES / name, tmp_path)) for name in names)
    assert "2 notes" in run("build", earlier, "--weather", weather).out
    ran = run("build", log, earlier, "--together", "--weather", weather)
    assert ran.code == 0
    book = openpyxl.load_workbook(tmp_path / "Seasons 2025 to 2026 report.xlsx")
    found = [cell for row in book["Rows to fix"].iter_rows(values_only=True) for cell in row]
    assert not any("hold no date of this log" in str(cell) for cell in found)
    alone = run("build", log, "--weather", weather)
    assert alone.code == 0
    mend = [line for line in (ran.out + alone.out).splitlines() if "to mend" in line]
    assert mend[0] == mend[1]
