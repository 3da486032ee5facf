"""A roll-up of logs as files: against the logs' own tables, resumed, killed, with logs not counted."""

import csv
import datetime as dt
import os
import random
import shutil
import signal
import sqlite3
import time
from collections import Counter
from collections.abc import Iterable
from pathlib import Path

import pytest

from reporter.beside.finished import finished_path
from reporter.compute.paperwork.period import OPEN, Period
from reporter.files.errors import CannotWrite
from reporter.run import rollup_logs
from reporter.run.build import build, plan
from reporter.run.filing import FilingJob, file_pages
from reporter.run.logs import logs_in
from reporter.run.rollup import RolledUp, RollupJob, roll_up
from reporter.run.tell import silent
from tests.demo import make
from tests.rollup_logs import Day, GuideLog, random_association, save_all

KILLS = 12
MOST_TRIES = 100
DAMAGES = 20


def rolled(folder: Path, out: Path, *, names: bool = False, period: Period = OPEN) -> RolledUp:
    job = RollupJob(logs_in(folder), out / "roll.xlsx", period, out / "tables", False, names)
    return roll_up(job, silent)


def table(folder: Path, name: str) -> list[dict[str, str]]:
    """Rows of a table in a folder, or in that of the guides in it."""
    if not (folder / f"{name}.csv").exists():
        folder /= "guides"
    with (folder / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def contents(folder: Path) -> dict[str, bytes]:
    """Every file but the temporary ones, which a killed process cannot take away."""
    files = (path for path in sorted(folder.rglob("*")) if path.is_file())
    return {
        str(path.relative_to(folder)): path.read_bytes() for path in files if not path.name.startswith(".")
    }


@pytest.fixture
def association(tmp_path: Path) -> Path:
    save_all(random_association(5, 6), tmp_path / "logs")
    return tmp_path / "logs"


@pytest.fixture
def reads(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Names of the logs that are read, as they are."""
    found: list[str] = []
    read_season = rollup_logs.read_season

    def noted(path: Path) -> object:
        found.append(path.name)
        return read_season(path)

    monkeypatch.setattr(rollup_logs, "read_season", noted)
    return found


def test_totals_are_the_sums_of_the_samples_own_tables(tmp_path: Path) -> None:
    """Effort by `trips` of each build, fish by `harvest` of each filing."""
    folder = tmp_path / "logs"
    folder.mkdir()
    effort: Counter[str] = Counter()
    fish: Counter[tuple[str, str]] = Counter()
    for sample in (make.CLEAN, make.MESSY, make.METRIC):
        own = own_tables(Path(shutil.copy(make.SAMPLES / sample, folder)), tmp_path / "own" / sample)
        for trip in own["trips"]:
            if trip["kind"] == "guided" and trip["status"] not in ("cancelled", "void"):
                effort["trips"] += 1
                effort["anglers"] += int(trip["anglers"] or 0)
                effort["angler_hours"] += int(trip["anglers"] or 0) * float(trip["boat_hours"])
                effort["rod_hours"] += float(trip["rod_hours"])
        fish += fish_of(own["harvest"])
    assert rolled(folder, tmp_path / "out", names=True).read == 3
    (whole,) = [row for row in table(tmp_path / "out" / "tables", "rollup_effort") if row["by"] == "all"]
    for name, value in effort.items():
        assert float(whole[name]) == pytest.approx(value, abs=1e-6), name
    for way in ("all", "water", "month", "permit"):
        rows = table(tmp_path / "out" / "tables", "rollup_fish")
        assert fish_of(row for row in rows if row["by"] == way) == pytest.approx(fish)


def own_tables(log: Path, folder: Path) -> dict[str, list[dict[str, str]]]:
    """The tables of a log's own report and filing that a roll-up adds up."""
    (job,) = plan([log], folder, folder / "tables")
    build(job, [log])
    file_pages(FilingJob(log, folder / "filing.xlsx", OPEN, None, folder / "filing", None, None))
    return {"trips": table(folder / "tables", "trips"), "harvest": table(folder / "filing", "harvest")}


def fish_of(rows: Iterable[dict[str, str]]) -> Counter[tuple[str, str]]:
    """Fish by species and fate, where there are any."""
    found: Counter[tuple[str, str]] = Counter()
    for row in rows:
        for fate in ("kept", "released", "fate_unknown"):
            found[row["species"], fate] += float(row[fate])  # type: ignore[assignment]
    return +found


def test_every_line_is_what_was_typed_in_the_logs(tmp_path: Path) -> None:
    """A second count in plain Python, from the rows typed: by water, month and permit; fish by species."""
    logs = random_association(11, 5)
    save_all(logs, tmp_path / "logs")
    rolled(tmp_path / "logs", tmp_path / "out", names=True)
    trips: Counter[tuple[str, str]] = Counter()
    hours: Counter[tuple[str, str]] = Counter()
    fish: Counter[tuple[str, str, str, str]] = Counter()
    permits = {name: permit for name, _, _, permit in logs[0].waters}
    for log in logs:
        for day in log.days:
            permit = day.permit or permits[day.water] or "no permit written"
            keys = [("all", ""), ("water", day.water), ("month", f"{day.date:%Y-%m}"), ("permit", permit)]
            for key in keys:
                trips[key] += 1
                hours[key] += day.anglers * day.hours
                for species, count, fate in day.fish:
                    fish[*key, species, fate or "fate_unknown"] += count
    found = table(tmp_path / "out" / "tables", "rollup_effort")
    assert {(row["by"], row["name"]): int(row["trips"]) for row in found} == trips
    assert {(row["by"], row["name"]): float(row["angler_hours"]) for row in found} == hours
    assert {(row["by"], row["name"]): float(row["rod_hours"]) for row in found} == hours
    shown = Counter(
        {
            (row["by"], row["name"], row["species"], fate): int(float(row[fate]))
            for row in table(tmp_path / "out" / "tables", "rollup_fish")
            for fate in ("kept", "released", "fate_unknown")
        }
    )
    assert +shown == fish


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
    monkeypatch.setattr(rollup_logs, "__version__", "99.0")
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


def test_log_that_stops_or_cannot_be_read_is_named_and_never_counted(
    association: Path, tmp_path: Path
) -> None:
    rolled(association, tmp_path / "good")
    stops = association / "zz stops.xlsx"
    GuideLog("G99", [Day(dt.date(2026, 6, 2), "Lake Arden")]).save(stops)
    book_without(stops, "Trips")
    (association / "zz torn.xlsx").write_bytes((association / "log 01.xlsx").read_bytes()[:2000])
    made = rolled(association, tmp_path / "out").made
    assert [(log.log, log.file, log.state) for log in made.missed] == [
        (7, "zz stops.xlsx", "stops"),
        (8, "zz torn.xlsx", "cannot be read"),
    ]
    assert all(log.sentences for log in made.missed)
    for name in ("rollup_effort", "rollup_fish", "guide_effort", "guide_fish", "missing_months"):
        assert table(tmp_path / "out" / "tables", name) == table(tmp_path / "good" / "tables", name)
    assert [row["state"] for row in table(tmp_path / "out" / "tables", "logs")][-2:] == [
        "stops",
        "cannot be read",
    ]


def book_without(path: Path, sheet: str) -> None:
    import openpyxl

    book = openpyxl.load_workbook(path)
    del book[sheet]
    book.save(path)


def test_store_that_is_not_ours_is_left_alone(association: Path, tmp_path: Path) -> None:
    store = finished_path(tmp_path / "roll.xlsx")
    for content in (b"some notes of mine, no database at all", None):
        store.unlink(missing_ok=True)
        if content is None:
            with sqlite3.connect(store) as other:
                other.execute("CREATE TABLE log (mine TEXT)")
            other.close()
        else:
            store.write_bytes(content)
        before = store.read_bytes()
        with pytest.raises(CannotWrite, match="move it away"):
            rolled(association, tmp_path)
        assert store.read_bytes() == before


def test_logs_of_one_code_are_one_guide_and_logs_without_code_have_their_number(tmp_path: Path) -> None:
    june = [Day(dt.date(2026, 6, 2), "Lake Arden")]
    logs = [GuideLog("G 1", june), GuideLog(None, june), GuideLog("g-1", june), GuideLog("guide 2", june)]
    save_all(logs, tmp_path / "logs")
    rolled(tmp_path / "logs", tmp_path / "out")
    rows = table(tmp_path / "out" / "tables", "guide_effort")
    assert [(row["guide"], row["logs"], row["trips"]) for row in rows] == [
        ("G 1", "2", "2"),
        ("guide 2", "1", "1"),
        ("guide 2 (log 4)", "1", "1"),
    ]


def test_month_without_a_trip_is_said_of_guides_whose_log_is_about_it(tmp_path: Path) -> None:
    """June and July are fished. B cancelled in July, C has a torn date, D's season ends in June.

    E fished in July alone. F was out scouting in July, which is a trip in the log.
    """
    june, july = Day(dt.date(2026, 6, 2), "Lake Arden"), Day(dt.date(2026, 7, 2), "Lake Arden")
    logs = [
        GuideLog("A", [june]),
        GuideLog("B", [june, Day(dt.date(2026, 7, 2), "Lake Arden", status="cancelled")]),
        GuideLog("C", [june, Day("some day", "Lake Arden")]),  # type: ignore[arg-type]
        GuideLog("D", [june], settings={"Last day": dt.date(2026, 6, 30)}),
        GuideLog("E", [july], settings={"First day": dt.date(2026, 6, 1)}),
        GuideLog("F", [june, Day(dt.date(2026, 7, 2), "Lake Arden", anglers=0, kind="scouting")]),
    ]
    save_all(logs, tmp_path / "logs")
    rolled(tmp_path / "logs", tmp_path / "out")
    rows = table(tmp_path / "out" / "tables", "missing_months")
    assert [(row["guide"], row["month"], row["said"]) for row in rows] == [
        ("A", "2026-07", "no trip in the log"),
        ("C", "2026-07", "no trip read; rows not used may lie in it"),
        ("E", "2026-06", "no trip in the log"),
    ]


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
    read_season = rollup_logs.read_season

    def saved_meanwhile(path: Path) -> object:
        found = read_season(path)
        if path.name == "log 03.xlsx":
            GuideLog("G02", [Day(dt.date(2026, 6, 2), "Lake Arden")]).save(path)
        return found

    monkeypatch.setattr(rollup_logs, "read_season", saved_meanwhile)
    (missed,) = rolled(association, tmp_path / "out").made.missed
    assert missed.sentences == ("I cannot read log 03.xlsx: it changed meanwhile; run it again.",)
    monkeypatch.setattr(rollup_logs, "read_season", read_season)
    assert rolled(association, tmp_path / "out").read == 1
    rolled(association, tmp_path / "anew")
    assert contents(tmp_path / "out") == contents(tmp_path / "anew")


def test_store_of_another_layout_is_made_anew(association: Path, tmp_path: Path, reads: list[str]) -> None:
    rolled(association, tmp_path / "out")
    before = contents(tmp_path / "out")
    with sqlite3.connect(finished_path(tmp_path / "out" / "roll.xlsx")) as store:
        store.execute("CREATE TABLE older (mine TEXT)")
        store.execute("PRAGMA user_version = 999")
    store.close()
    reads.clear()
    rolled(association, tmp_path / "out")
    assert len(reads) == 6
    assert contents(tmp_path / "out") == before


def test_number_changed_in_the_store_is_read_again_from_its_log(
    association: Path, tmp_path: Path, reads: list[str]
) -> None:
    rolled(association, tmp_path / "out")
    before = contents(tmp_path / "out")
    with sqlite3.connect(finished_path(tmp_path / "out" / "roll.xlsx")) as store:
        changed = store.execute("UPDATE figure SET value = value + 1 WHERE name = 'log 04.xlsx'").rowcount
    store.close()
    assert changed > 0
    reads.clear()
    rolled(association, tmp_path / "out")
    assert reads == ["log 04.xlsx"]
    assert contents(tmp_path / "out") == before


def test_damaged_store_is_refused_or_read_again_and_never_believed(association: Path, tmp_path: Path) -> None:
    rolled(association, tmp_path / "out")
    before, store = contents(tmp_path / "out"), finished_path(tmp_path / "out" / "roll.xlsx")
    whole = store.read_bytes()
    chance = random.Random(20260712)  # noqa: S311 - guards nothing
    refused = 0
    for torn in range(DAMAGES):
        content = bytearray(whole)
        at = chance.randrange(100, len(whole) - 64)
        content[at : at + 8] = bytes(chance.randrange(256) for _ in range(8))
        store.write_bytes(bytes(content[: at + 8]) if torn % 4 == 0 else bytes(content))
        try:
            rolled(association, tmp_path / "out")
        except CannotWrite as refusal:
            assert "delete it, and the next run reads all logs again" in str(refusal)  # noqa: PT017 - either may be
            refused += 1
        else:
            names = [name for name in before if not name.endswith(".sqlite")]
            after = contents(tmp_path / "out")
            assert [name for name in names if after[name] != before[name]] == [], at
    assert 0 < refused < DAMAGES
