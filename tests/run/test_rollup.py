"""A roll-up of logs as files: against the logs' own tables, with logs not counted, missing months."""

import datetime as dt
import shutil
from collections import Counter
from collections.abc import Iterable
from pathlib import Path

import pytest

from reporter.compute.paperwork.period import OPEN
from reporter.run.build import build
from reporter.run.filing import FilingJob, file_pages
from reporter.run.jobs import plan
from tests.demo import make
from tests.rollup_logs import Day, GuideLog, random_association, save_all
from tests.run.rolled import rolled, table


@pytest.mark.parametrize("samples", [(make.CLEAN, make.METRIC), (make.MESSY,)])
def test_totals_are_the_sums_of_the_samples_own_tables(samples: tuple[str, ...], tmp_path: Path) -> None:
    """Effort by `trips` of each build, fish by `harvest` of each filing. The messy log is a copy."""
    folder = tmp_path / "logs"
    folder.mkdir()
    effort: Counter[str] = Counter()
    fish: Counter[tuple[str, str]] = Counter()
    for sample in samples:
        own = own_tables(Path(shutil.copy(make.SAMPLES / sample, folder)), tmp_path / "own" / sample)
        for trip in own["trips"]:
            if trip["kind"] == "guided" and trip["status"] not in ("cancelled", "void"):
                effort["trips"] += 1
                effort["anglers"] += int(trip["anglers"] or 0)
                effort["angler_hours"] += int(trip["anglers"] or 0) * float(trip["boat_hours"])
                effort["rod_hours"] += float(trip["rod_hours"])
        fish += fish_of(own["harvest"])
    assert rolled(folder, tmp_path / "out", names=True).read == len(samples)
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
