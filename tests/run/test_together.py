"""Several logs put together: sums, names, units and seasons of the common record; what is refused."""

import datetime as dt
import itertools
import re
from collections import Counter
from collections.abc import Callable, Mapping
from pathlib import Path

import openpyxl
import pytest

from reporter.run.build import build
from reporter.run.jobs import plan
from reporter.run.together import CannotPutTogether, build_together
from tests.conftest import Change, WriteLog
from tests.demo import make
from tests.recalculate import disagreements
from tests.season_logs import Trip, put_together, season_sheets, table, write_seasons

JIG, CRANK = "Drop shot", "Jerkbait"
DEMO = [make.SAMPLES / make.EARLIER, make.SAMPLES / make.CLEAN]
SUMS = ("trips", "rod_hours", "boat_hours", "fish", "kept", "released", "fate_unknown", "bites")


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("together")
    put_together(DEMO, folder)
    return folder


@pytest.fixture(scope="module")
def singly(tmp_path_factory: pytest.TempPathFactory) -> list[Path]:
    """The same logs each with a report of its own: folders with their tables."""
    folders = []
    for log in DEMO:
        folder = tmp_path_factory.mktemp("singly")
        (job,) = plan([log], folder, folder / "tables")
        build(job, [log])
        folders.append(folder)
    return folders


def summed(folders: list[Path], name: str, key: str, column: str) -> dict[str, float]:
    sums: Counter[str] = Counter()
    for folder in folders:
        for row in table(folder, name):
            sums[row[key]] += float(row[column] or 0)
    return dict(sums)


@pytest.mark.parametrize(
    ("name", "key"),
    [
        ("techniques", "technique"),
        ("styles", "style"),
        ("waters", "water"),
        ("months", "month"),
        ("season", "season"),
    ],
)
def test_sums_of_the_common_record_are_those_of_the_single_reports(
    name: str, key: str, demo: Path, singly: list[Path]
) -> None:
    for column in SUMS:
        assert summed([demo], name, key, column) == pytest.approx(summed(singly, name, key, column))


def test_rows_of_the_common_record_are_those_of_the_single_reports(demo: Path, singly: list[Path]) -> None:
    for name in ("trips", "trip_techniques", "stints", "fish", "rows", "log_trips", "problems"):
        own = {"season": "", "technique_no": ""}
        together = [{k: v for k, v in row.items() if k not in own} for row in table(demo, name)]
        assert together == [row for folder in singly for row in table(folder, name)]
        assert (
            Counter(row["season"] for row in table(demo, name))
            == Counter({"2025": len(table(singly[0], name)), "2026": len(table(singly[1], name))}) - Counter()
        )


def test_each_season_has_the_rates_of_its_own_report_but_for_a_borrowed_spread(
    demo: Path, singly: list[Path]
) -> None:
    for row, folder in zip(table(demo, "seasons"), singly, strict=True):
        (own,) = table(folder, "season")
        assert {key: row[key] for key in own if key != "season"} == {
            key: own[key] for key in own if key != "season"
        }
        by_technique = {one["technique"]: one for one in table(folder, "techniques")}
        here = [one for one in table(demo, "season_techniques") if one["season"] == row["season"]]
        assert {one["technique"] for one in here if one["change"] != "lost"} == set(by_technique)
        for one in here:
            if one["interval_rule"] == "own_trips":
                same = ("trips", "rod_hours", "fish", "fish_per_rod_hour", "low", "high")
                assert [one[key] for key in same] == [by_technique[one["technique"]][key] for key in same]


def test_demo_lost_one_technique_and_gained_one(demo: Path) -> None:
    changed = [(row["season"], row["technique"], row["change"]) for row in table(demo, "season_techniques")]
    assert {row for row in changed if row[2]} == {
        ("2026", "Spinnerbait", "lost"),
        ("2026", "Bladed jig", "gained"),
    }


def test_demo_seasons_of_one_truth_are_not_said_to_differ(demo: Path) -> None:
    assert {row["claim"] for row in table(demo, "season_ratios")} <= {"cannot_tell", "disagree"}


def contents(folder: Path) -> dict[str, bytes]:
    return {str(path.relative_to(folder)): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def test_neither_order_nor_repetition_changes_a_byte(demo: Path, tmp_path: Path) -> None:
    put_together([*reversed(DEMO)], tmp_path)
    again = contents(tmp_path)
    assert again == contents(demo)
    assert "Seasons 2025 to 2026 report.xlsx" in again
    put_together(DEMO, tmp_path)
    assert contents(tmp_path) == again


SHORT = [Trip(5, day, 60, {JIG: (120, fish), CRANK: (120, 1)}) for day, fish in ((2, 3), (9, 0), (16, 2))]


def test_trips_of_one_number_in_two_seasons_stay_two(write_log: WriteLog, tmp_path: Path) -> None:
    other = [Trip(6, day, 60, {JIG: (240, 4)}) for day in (1, 8, 15)]
    logs = write_seasons(
        write_log, tmp_path, {"a": season_sheets(2024, SHORT), "b": season_sheets(2025, other)}
    )
    put_together(logs, tmp_path)
    trips = table(tmp_path, "trips")
    assert [(row["season"], row["trip"], row["fish"]) for row in trips] == [
        ("2024", "T1", "4"),
        ("2024", "T2", "1"),
        ("2024", "T3", "3"),
        ("2025", "T1", "4"),
        ("2025", "T2", "4"),
        ("2025", "T3", "4"),
    ]
    (jig,) = (row for row in table(tmp_path, "techniques") if row["technique"] == JIG)
    assert (jig["trips"], jig["fish"], jig["rod_hours"]) == ("6", "17", "18")


def test_report_shows_the_units_of_the_last_season_whatever_the_others_are(
    write_log: WriteLog, tmp_path: Path
) -> None:
    us, metric = season_sheets(2024, SHORT), season_sheets(2025, SHORT, Units="metric")
    us["Catch"] = [["Trip", "Technique", "Species", "Length (in)"], ["T1", JIG, "largemouth bass", 20]]
    metric["Catch"] = [["Trip", "Technique", "Species", "Length (cm)"], ["T1", JIG, "largemouth bass", 40]]
    put_together(write_seasons(write_log, tmp_path, {"a": us, "b": metric}), tmp_path)
    assert [row["length_mm"] for row in table(tmp_path, "fish")] == ["508", "400"]
    book = openpyxl.load_workbook(tmp_path / "Seasons 2024 to 2025 report.xlsx", data_only=True)
    rows = [row for row in book["Fish rows"].iter_rows(values_only=True) if any(row)]
    heading = next(row for row in rows if "Species" in row)
    at = heading.index("Length (cm)")
    assert [row[at] for row in rows[rows.index(heading) + 1 :]] == [50.8, 40]


def test_names_follow_the_last_log_and_what_any_log_calls_them_also(
    write_log: WriteLog, tmp_path: Path
) -> None:
    def fished(name: str) -> list[Trip]:
        return [Trip(5, 2, 60, {name: (120, 1), CRANK: (120, 0)})]

    seasons = {
        "a": season_sheets(2023, fished("Worm"), [("Worm", "moving", ""), ("jerk bait", "slow", "")]),
        "b": season_sheets(2024, fished("DS rig"), [("DS rig", "moving", "Worm"), (CRANK, "moving", "")]),
        "c": season_sheets(2025, fished(JIG), [(JIG, "slow", "DS-rig")]),
    }
    put_together(write_seasons(write_log, tmp_path, seasons), tmp_path)
    found = {row["technique"]: (row["style"], row["trips"]) for row in table(tmp_path, "techniques")}
    assert found == {JIG: ("slow", "3"), CRANK: ("moving", "3")}


def test_two_techniques_of_one_log_stay_two_whatever_a_later_log_calls_them(
    write_log: WriteLog, tmp_path: Path
) -> None:
    both = [Trip(5, 2, 60, {"Worm": (120, 1), JIG: (120, 2)})]
    seasons = {
        "a": season_sheets(2024, both, [("Worm", "", ""), (JIG, "slow", "")]),
        "b": season_sheets(2025, SHORT, [(JIG, "slow", "Worm"), (CRANK, "moving", "")]),
    }
    put_together(write_seasons(write_log, tmp_path, seasons), tmp_path)
    found = {row["technique"]: row["fish"] for row in table(tmp_path, "techniques")}
    assert found == {JIG: "7", CRANK: "3", "Worm": "1"}


def test_three_seasons_are_each_held_against_the_one_before(write_log: WriteLog, tmp_path: Path) -> None:
    def season(year: int, fish: int) -> dict[str, Change]:
        trips = [Trip(5, day, 60, {JIG: (240, fish + day % 2)}) for day in range(1, 13)]
        return season_sheets(year, trips)

    seasons = {"c": season(2025, 12), "a": season(2023, 2), "b": season(2024, 12)}
    built = put_together(write_seasons(write_log, tmp_path, seasons), tmp_path)
    rows = table(tmp_path, "season_ratios")
    assert [(row["this"], row["against"], row["claim"]) for row in rows if row["method"] == "same_month"] == [
        ("2024", "2023", "this"),
        ("2025", "2024", "cannot_tell"),
    ]
    # 12.5 fish against 2.5 fish on every pair of days, the same rod-hours.
    assert float(rows[0]["ratio"]) == pytest.approx(5.0)
    assert built.logs == (("a.xlsx", "2023"), ("b.xlsx", "2024"), ("c.xlsx", "2025"))
    assert built.outcome.findings[-1].startswith("2024 gave more fish per rod-hour than 2023, with the same")


def test_season_without_a_fish_gives_counts_and_no_ratio(write_log: WriteLog, tmp_path: Path) -> None:
    full, empty = ([Trip(5, day, 60, {JIG: (240, fish)}) for day in range(1, 9)] for fish in (3, 0))
    seasons = {"a": season_sheets(2024, full), "b": season_sheets(2025, empty)}
    put_together(write_seasons(write_log, tmp_path, seasons), tmp_path)
    (row, _) = table(tmp_path, "season_ratios")
    assert (row["claim"], row["ratio"], row["fish_this"], row["fish_against"]) == ("no_ratio", "", "0", "24")
    _, last = table(tmp_path, "seasons")
    assert (last["fish_per_rod_hour"], last["interval_rule"], last["blank_trips"]) == (
        "0",
        "none_caught",
        "8",
    )


def test_season_without_a_trip_in_the_rates_is_told_all_the_same(write_log: WriteLog, tmp_path: Path) -> None:
    bare = season_sheets(2025, SHORT)
    bare["Effort"] = [["Trip", "Technique", "Minutes", "Landed"]]
    put_together(write_seasons(write_log, tmp_path, {"a": season_sheets(2024, SHORT), "b": bare}), tmp_path)
    rows = table(tmp_path, "seasons")
    assert [(row["trips"], row["fish_per_rod_hour"]) for row in rows] == [("3", f"{8 / 12:.12g}"), ("0", "")]
    assert {row["claim"] for row in table(tmp_path, "season_ratios")} == {"no_overlap"}


def test_logs_of_one_year_are_called_by_their_files(write_log: WriteLog, tmp_path: Path) -> None:
    autumn = [Trip(9, day, 60, {JIG: (240, 2)}) for day in (1, 8)]
    seasons = {
        "spring": season_sheets(2025, SHORT),
        "autumn": season_sheets(2025, autumn),
        "old": season_sheets(2024, SHORT),
    }
    built = put_together(write_seasons(write_log, tmp_path, seasons), tmp_path)
    assert [label for _, label in built.logs] == ["2024", "spring", "autumn"]
    assert built.title == "Seasons 2024 to 2025"


def test_line_of_rows_to_fix_says_which_log_it_is_of(write_log: WriteLog, tmp_path: Path) -> None:
    wrong = [Trip(5, 2, 60, {JIG: (120, 1)}), Trip(5, 3, 600, {JIG: (120, 1)})]
    seasons = {"a": season_sheets(2024, wrong), "b": season_sheets(2025, wrong)}
    put_together(write_seasons(write_log, tmp_path, seasons), tmp_path)
    sheet = openpyxl.load_workbook(tmp_path / "Seasons 2024 to 2025 report.xlsx")["Rows to fix"]
    rows = [row for row in sheet.iter_rows(values_only=True) if row[0] in ("a.xlsx", "b.xlsx")]
    named = {(row[0], row[3], row[5]) for row in rows if row[3] == "Trips"}
    assert named >= {("a.xlsx", "Trips", "G3"), ("b.xlsx", "Trips", "G3")}


Sheets = dict[str, Change]


def _copied(first: Sheets, second: Sheets) -> tuple[Sheets, Sheets]:
    return first, {**first, "Waters": [["Water"], ["Lake Arden"], ["Bell River"]]}


def _with(**settings: object) -> Callable[[Sheets, Sheets], tuple[Sheets, Sheets]]:
    def made(first: Sheets, second: Sheets) -> tuple[Sheets, Sheets]:
        return tuple(
            season_sheets(year, SHORT, **{key: value[place] for key, value in settings.items()})  # type: ignore[index]
            for place, year in enumerate((2024, 2025))
        )  # type: ignore[return-value]

    return made


REFUSED: Mapping[str, tuple[Callable[[Sheets, Sheets], tuple[Sheets, Sheets]], str]] = {
    "one log twice": (lambda first, second: (first, first), "one and the same log"),
    "a copy with a row more": (_copied, "trip T1 of 2024-05-02 stands in both"),
    "two guide codes": (_with(Guide_code=("G1", "G2")), r"'G1' and 'G2' are two guides.* reporter rollup"),
    "two guides without codes": (
        _with(Guide_or_outfit=("Ann", "Bo")),
        "is 'Ann' in one and 'Bo' in the other",
    ),
    "other species counted": (
        _with(Species_counted=("black bass", None)),
        "Species counted on Season differs",
    ),
}


@pytest.mark.parametrize("case", REFUSED)
def test_what_cannot_be_counted_together_is_refused_in_a_sentence_and_nothing_written(
    case: str, write_log: WriteLog, tmp_path: Path
) -> None:
    change, said = REFUSED[case]
    first, second = change(season_sheets(2024, SHORT), season_sheets(2025, SHORT))
    logs = write_seasons(write_log, tmp_path, {"a": first, "b": second})
    if case == "one log twice":
        logs[1].write_bytes(logs[0].read_bytes())
    with pytest.raises(CannotPutTogether, match=said) as refused:
        build_together(logs, tmp_path / "out", tmp_path / "out" / "tables")
    assert len(str(refused.value)) <= 220
    assert not (tmp_path / "out").exists()


def test_one_guide_code_holds_whatever_the_guide_is_called(write_log: WriteLog, tmp_path: Path) -> None:
    change = _with(Guide_code=("G1", "g-1"), Guide_or_outfit=("Ann", "Ann and sons"))
    first, second = change({}, {})
    assert put_together(write_seasons(write_log, tmp_path, {"a": first, "b": second}), tmp_path).job


def test_log_with_a_stop_stops_the_whole(write_log: WriteLog, tmp_path: Path) -> None:
    stopped: Sheets = {**season_sheets(2025, SHORT), "Trips": [["Trip", "Water"], ["T1", "Lake Arden"]]}
    logs = write_seasons(write_log, tmp_path, {"a": season_sheets(2024, SHORT), "b": stopped})
    built = build_together(logs, tmp_path / "out", None)
    assert [reading.path.name for reading in built.stopped] == ["b.xlsx"]
    assert not (tmp_path / "out").exists()


def test_trips_of_no_date_that_were_not_fished_are_no_copy_of_each_other(
    write_log: WriteLog, tmp_path: Path
) -> None:
    seasons = {}
    for year in (2024, 2025):
        sheets = season_sheets(year, [trip._replace(day=trip.day + year - 2024) for trip in SHORT])
        heading, *trips = sheets["Trips"]  # type: ignore[misc]
        void = ["T9", None, "Lake Arden", None, None, None, None, "void"]
        sheets["Trips"] = [[*heading, "Status"], *trips, void]
        seasons[f"season {year}"] = sheets
    put_together(write_seasons(write_log, tmp_path, seasons), tmp_path)
    assert len(table(tmp_path, "seasons")) == 2


def test_seasons_that_cannot_be_compared_are_not_said_to_be_alike(
    write_log: WriteLog, tmp_path: Path
) -> None:
    """Three trips of a jig against three of a crankbait."""
    seasons = {
        str(year): season_sheets(year, [Trip(5, day, 60, {name: (240, 5)}) for day in (2, 9, 16)])
        for year, name in ((2024, JIG), (2025, CRANK))
    }
    put_together(write_seasons(write_log, tmp_path, seasons), tmp_path)
    page = openpyxl.load_workbook(tmp_path / "Seasons 2024 to 2025 report.xlsx")["At a glance"]
    said = [str(cell) for row in page.iter_rows(values_only=True) for cell in row if cell]
    assert "No season can be held against the one before it yet." in said
    assert not any("no difference that your record can bear" in text for text in said)


def test_little_record_is_grey_and_claims_nothing(write_log: WriteLog, tmp_path: Path) -> None:
    more = [trip._replace(fished={JIG: (240, 9)}) for trip in SHORT]
    seasons = {"a": season_sheets(2024, SHORT), "b": season_sheets(2025, more)}
    put_together(write_seasons(write_log, tmp_path, seasons), tmp_path)
    assert {row["claim"] for row in table(tmp_path, "season_ratios")} == {"not_enough"}
    sheet = openpyxl.load_workbook(tmp_path / "Seasons 2024 to 2025 report.xlsx")["Seasons"]
    said = [str(row[0].value) for row in sheet.iter_rows() if row[0].value]
    assert any(re.match("2025 against 2024: too little that they have in common", text) for text in said)
    rows = list(
        itertools.takewhile(lambda row: row[0].value != "Techniques gained and lost", sheet.iter_rows())
    )
    lines = [row for row in rows if {"2024", "2025"} & {row[1].value, row[2].value}]
    assert len(lines) == 6
    assert all(row[2].font.italic for row in lines)
    assert not any("gave more" in text or "gave fewer" in text for text in said)


def test_reading_of_a_date_serves_trips_of_its_own_log_alone(write_log: WriteLog, tmp_path: Path) -> None:
    day = dt.date(2025, 5, 2)

    def season(technique: str, temp: float, fish: int) -> dict[str, Change]:
        made = season_sheets(2025, [Trip(5, 2, 0, {technique: (240, fish)})])
        trips = made["Trips"]
        assert isinstance(trips, list)
        read: list[list[object]] = [["Trip", "Date", "Water temp (°F)"], [None, day, temp]]
        return {**made, "Trips": [row[:6] for row in trips], "Conditions": read}

    seasons = {"a": season(JIG, 45, 1), "b": season(CRANK, 75, 2)}
    put_together(write_seasons(write_log, tmp_path, seasons), tmp_path)
    bands = {
        (row["group"], row["band"])
        for row in table(tmp_path, "conditions")
        if row["condition"] == "water_temperature" and row["of"] == "technique"
    }
    assert bands == {(JIG, "under 50 °F"), (CRANK, "70 °F and over")}


def test_pairs_of_seasons_are_looked_at_the_stricter_the_more_there_are(
    write_log: WriteLog, tmp_path: Path
) -> None:
    # The second season is as far ahead of the first in both records; of many pairs it must stand out more.
    fish = {2021: (3, 5, 4, 2, 6, 4), 2022: (6, 10, 7, 5, 11, 8)}
    seasons = {
        str(year): season_sheets(
            year, [Trip(5, day, 60, {JIG: (240, n)}) for day, n in enumerate(caught, start=1)]
        )
        for year, caught in (*fish.items(), *((year, fish[2022]) for year in range(2023, 2030)))
    }
    said = []
    for count in (2, 9):
        folder = tmp_path / str(count)
        folder.mkdir()
        put_together(write_seasons(write_log, folder, dict(itertools.islice(seasons.items(), count))), folder)
        first = table(folder, "season_ratios")[0]
        said.append((first["ratio"], first["low"], first["claim"]))
    assert said[0][:2] == said[1][:2]
    assert float(said[0][1]) > 1
    assert [claim for *_, claim in said] == ["this", "cannot_tell"]


@pytest.mark.libreoffice
def test_formulas_of_seasons_of_which_no_day_can_be_told_recalculate(
    write_log: WriteLog, tmp_path: Path
) -> None:
    # Thirds of an hour: what is left of a difference of such sums would be no 0.
    odd = [Trip(5, day, 60, {JIG: (100, 2), CRANK: (7 * day, 1)}) for day in range(1, 8)]
    seasons = {"a": season_sheets(2024, odd), "b": season_sheets(2025, SHORT)}
    put_together(write_seasons(write_log, tmp_path, seasons), tmp_path)
    assert disagreements(tmp_path / "Seasons 2024 to 2025 report.xlsx", tmp_path) == []
