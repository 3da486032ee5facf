"""Conditions: every stint in its band, no fish in two of them, and sums that come back to the season's."""

import csv
import datetime as dt
import re
from collections import defaultdict
from collections.abc import Callable, Sequence
from pathlib import Path

import openpyxl
import pytest

from reporter.compute.report import Report, make_report
from reporter.run.build import build
from reporter.run.jobs import plan
from reporter.run.season import read_season
from reporter.run.weather import open_all
from reporter.schema import bands
from reporter.schema.bands import Bands
from reporter.schema.fronts import DAYS
from reporter.schema.units import System
from tests.conftest import Change, WriteLog, clean_sheets
from tests.demo import make
from tests.run.test_weather_by_hand import front_hours, write_hours

Row = dict[str, str]
Rows = Sequence[Sequence[object]]

TRIPS = ["Trip", "Date", "Water", "Start", "End", "Anglers"]
EFFORT = [
    "Trip",
    "Technique",
    "Start",
    "End",
    "Minutes",
    "Anglers on it",
    "Landed",
    "Cover",
    "Stint",
    "Angler",
]
CATCH = ["Trip", "Technique", "Species", "Stint"]
OF_ALL = ("all", "all")

FAHRENHEIT, CELSIUS = (lambda typed: (typed - 32) * 5 / 9), (lambda typed: typed)
MPH, KMH = (lambda typed: typed * 0.44704), (lambda typed: typed / 3.6)
FEET, METRES = (lambda typed: typed * 0.3048), (lambda typed: typed)


def stint(
    trip: str,
    technique: str = "Jerkbait",
    clock: tuple[str, str] | None = None,
    landed: int | None = 0,
    cover: str = "",
    name: str = "",
    angler: str = "",
) -> list[object]:
    """An hour by minutes, or as long as the clock says, by one angler."""
    start, end = clock or (None, None)
    minutes = None if clock else 60
    return [trip, technique, start, end, minutes, 1, landed, cover or None, name or None, angler or None]


def report_of(write_log: WriteLog, changes: dict[str, Change], weather: Sequence[Path] = ()) -> Report:
    season = read_season(write_log(changes), open_all(weather)).season
    assert season is not None
    return make_report(season)


def placed(report: Report, key: str) -> list[str]:
    """The band of every stint in the order of Effort."""
    condition = report.record.condition(key)
    labels = ["left out", *(band.label for band in condition.bands), "not recorded"]
    return [labels[number] for number in condition.numbers.tolist()]


def hours_and_fish(report: Report, key: str, of: tuple[str, str] = OF_ALL) -> dict[str, tuple[float, float]]:
    table = report.by_condition
    rows = table[(table["condition"] == key) & (table["of"] == of[0]) & (table["group"] == of[1])]
    return {
        band: (hours, fish)
        for band, hours, fish in zip(rows["band"], rows["rod_hours"], rows["fish"], strict=True)
    }


@pytest.mark.parametrize(
    ("spans", "system", "inside", "labels"),
    [
        (bands.WATER_TEMP, "us", FAHRENHEIT, ["under 50 °F", "50 to 60 °F", "60 to 70 °F", "70 °F and over"]),
        (
            bands.WATER_TEMP,
            "metric",
            CELSIUS,
            ["under 10 °C", "10 to 16 °C", "16 to 21 °C", "21 °C and over"],
        ),
        (bands.WIND_SPEED, "us", MPH, ["under 5 mph", "5 to 10 mph", "10 to 15 mph", "15 mph and over"]),
        (
            bands.WIND_SPEED,
            "metric",
            KMH,
            ["under 8 km/h", "8 to 16 km/h", "16 to 24 km/h", "24 km/h and over"],
        ),
        (
            bands.DEPTH,
            "us",
            FEET,
            ["under 5 ft", "5 to 10 ft", "10 to 15 ft", "15 to 25 ft", "25 ft and over"],
        ),
        (
            bands.DEPTH,
            "metric",
            METRES,
            ["under 1.5 m", "1.5 to 3 m", "3 to 4.5 m", "4.5 to 7.5 m", "7.5 m and over"],
        ),
    ],
)
def test_value_on_an_edge_lies_in_the_band_above_it_in_both_systems(
    spans: Bands, system: System, inside: Callable[[float], float], labels: list[str]
) -> None:
    assert list(spans.labels(system)) == labels
    for place, label in enumerate(labels[1:], start=1):
        edge = float(re.findall(r"[\d.]+", label)[0])
        assert spans.place(inside(edge), system) == place
        assert spans.place(inside(edge - 0.1), system) == place - 1
        assert spans.place(inside(edge + 0.1), system) == place
    assert spans.place(inside(0), system) == 0
    assert spans.place(inside(200), system) == len(labels) - 1


@pytest.mark.parametrize(
    ("degrees", "expected"),
    [
        (0, "N"),
        (22.4, "N"),
        (22.5, "NE"),
        (90, "E"),
        (202.4, "S"),
        (292.5, "NW"),
        (337.4, "NW"),
        (337.5, "N"),
    ],
)
def test_wind_lies_in_the_eighth_of_the_compass_about_its_point(degrees: float, expected: str) -> None:
    assert bands.WIND_FROM[bands.wind_place(degrees)].label == f"from {expected}"


def test_edges_typed_in_a_log_of_either_system_find_the_same_bands(write_log: WriteLog) -> None:
    heads = {
        "us": ["Water temp (°F)", "Wind speed (mph)", "Depth (ft)"],
        "metric": ["Water temp (°C)", "Wind speed (km/h)", "Depth (m)"],
    }
    edges = {"us": (50, 5, 5), "metric": (10, 8, 1.5)}
    second = {
        "us": ("50 to 60 °F", "5 to 10 mph", "5 to 10 ft"),
        "metric": ("10 to 16 °C", "8 to 16 km/h", "1.5 to 3 m"),
    }
    for system, (temp, speed, depth) in edges.items():
        season = [[*row[:1], system] if row[0] == "Units" else row for row in clean_sheets()["Season"]]
        trip = ["T-001", "2026-04-18", "Lake Arden", "06:00", "10:00", 2]
        changes: dict[str, Change] = {
            "Season": season,
            "Trips": [[*TRIPS, *heads[system][:2]], [*trip, temp, speed]],
            "Effort": [[*EFFORT, heads[system][2]], [*stint("T-001"), depth]],
            "Catch": [CATCH],
        }
        made = report_of(write_log, changes)
        found = tuple(placed(made, key)[0] for key in ("water_temperature", "wind_speed", "depth"))
        assert found == second[system]


_MONTH = "jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec"
LIKE_A_DATE = re.compile(
    rf"\d+(\s*[-/.:]\s*\d+)+(\s*[ap]m)?|\d+\s*({_MONTH})[a-z]*|({_MONTH})[a-z]*[\s.,-]*\d+.*", re.IGNORECASE
)
LIKE_A_NUMBER = re.compile(r"[-+(]?[$€£]?\s*[\d.,]+\s*(e[-+]?\d+)?\s*[%)]?|true|false", re.IGNORECASE)


def test_no_label_reads_as_a_date_or_a_number() -> None:
    spans = (bands.WATER_TEMP, bands.WIND_SPEED, bands.DEPTH)
    systems: tuple[System, ...] = ("us", "metric")
    labels = [label for one in spans for system in systems for label in one.labels(system)]
    groups = (bands.WIND_FROM, bands.LIGHT, bands.TRIP_HOURS)
    labels += [band.label for group in groups for band in group]
    labels += [*bands.TIMES_OF_YEAR, *bands.MONTHS, *DAYS.values(), bands.NOT_RECORDED]
    assert len(labels) > 50
    assert not [one for one in labels if LIKE_A_DATE.fullmatch(one) or LIKE_A_NUMBER.fullmatch(one)]
    # What the patterns are there to find.
    assert all(LIKE_A_DATE.fullmatch(one) for one in ("50-60", "5/10", "1.3", "Mar 1", "1 March", "10:15"))
    assert all(LIKE_A_NUMBER.fullmatch(one) for one in ("50", "1.5", "-3", "10%", "1e5"))


@pytest.fixture(scope="module")
def demo() -> Report:
    season = read_season(make.SAMPLES / make.CLEAN).season
    assert season is not None
    return make_report(season)


@pytest.fixture(scope="module")
def tables(tmp_path_factory: pytest.TempPathFactory) -> dict[str, list[Row]]:
    folder = tmp_path_factory.mktemp("demo")
    (job,) = plan([make.SAMPLES / make.CLEAN], folder, folder / "tables")
    build(job, [job.log])
    names = ("conditions", "stints", "trip_techniques", "season")
    found = {}
    for name in names:
        with (folder / "tables" / f"{name}.csv").open(encoding="utf-8", newline="") as file:
            found[name] = list(csv.DictReader(file))
    return found


def test_bands_of_every_condition_add_up_to_the_season(demo: Report, tables: dict[str, list[Row]]) -> None:
    (season,) = tables["season"]
    whole = (float(season["rod_hours"]), float(season["fish"]))
    assert len(demo.record.conditions) >= 14
    complete = 0
    for condition in demo.record.conditions:
        out = demo.record.stints[condition.numbers == 0]
        parts = hours_and_fish(demo, condition.key).values()
        sums = [sum(part[place] for part in parts) for place in (0, 1)]
        left = (out["rod_hours"].sum(), out["counted_fish"].sum())
        assert sums[0] + left[0] == pytest.approx(whole[0], rel=1e-9), condition.key
        assert sums[1] + left[1] == pytest.approx(whole[1], rel=1e-9), condition.key
        assert (condition.left_out == 0) == (len(out) == 0), condition.key
        complete += condition.left_out == 0
    assert complete >= 5


def test_techniques_of_a_band_add_up_to_all_together(demo: Report) -> None:
    sums: dict[tuple[str, int, str], list[float]] = defaultdict(lambda: [0.0, 0.0])
    for row in demo.by_condition.to_dict("records"):
        both = sums[row["condition"], row["band_no"], row["of"]]
        both[0] += row["rod_hours"]
        both[1] += row["fish"]
    for (condition, band, of), both in sums.items():
        if of == "technique":
            assert both == pytest.approx(sums[condition, band, "all"], rel=1e-9)
            assert both == pytest.approx(sums[condition, band, "style"], rel=1e-9)


CHANGED_SKY: Rows = [
    ["Trip", "Time", "Water temp (°F)", "Sky"],
    ["T-001", "07:00", 55, "clear"],
    ["T-001", "11:00", 57, "overcast"],
    ["T-002", "09:00", 55, "rain"],
]
TWO_TRIPS: Rows = [
    TRIPS,
    ["T-001", "2026-04-18", "Lake Arden", "06:00", "12:00", 2],
    ["T-002", "2026-04-19", "Lake Arden", "06:00", "12:00", 2],
]


def changed_sky(stints: Rows, fish: Rows) -> dict[str, Change]:
    return {
        "Trips": [list(row) for row in TWO_TRIPS],
        "Conditions": [list(row) for row in CHANGED_SKY],
        "Effort": [EFFORT, *(list(row) for row in stints)],
        "Catch": [CATCH, *(list(row) for row in fish)],
    }


EARLY, LATE = ("06:00", "08:00"), ("10:00", "12:00")
BASS = "largemouth bass"


def test_fish_of_unknown_stint_leave_out_their_technique_where_its_stints_differ(write_log: WriteLog) -> None:
    stints = [
        stint("T-001", "Drop shot", EARLY, landed=None),
        stint("T-001", "Drop shot", LATE, landed=None),
        stint("T-001", "Jerkbait", EARLY, landed=1),
        stint("T-002", "Drop shot", EARLY, landed=2),
    ]
    fish = [["T-001", "Drop shot", BASS, None]] * 3
    report = report_of(write_log, changed_sky(stints, fish))
    sky, temperature = (report.record.condition(key) for key in ("sky", "water_temperature"))
    assert (sky.left_out, temperature.left_out) == (1, 0)
    assert placed(report, "sky") == ["left out", "left out", "clear", "rain"]
    assert hours_and_fish(report, "sky") == {"clear": (2, 1), "rain": (2, 2)}
    # 55 and 57 are one band: nothing is in doubt there, and all 6 fish in 8 rod-hours stand.
    assert hours_and_fish(report, "water_temperature") == {"50 to 60 °F": (8, 6)}
    drop_shot = ("technique", "Drop shot")
    assert hours_and_fish(report, "water_temperature", drop_shot) == {"50 to 60 °F": (6, 5)}
    assert hours_and_fish(report, "sky", drop_shot) == {"rain": (2, 2)}


def test_fish_that_name_their_stint_stay_in_every_condition(write_log: WriteLog) -> None:
    stints = [
        stint("T-001", "Drop shot", EARLY, landed=None, name="A"),
        stint("T-001", "Drop shot", LATE, landed=None, name="B"),
    ]
    fish = [["T-001", "Drop shot", BASS, name] for name in ("A", "B", "B")]
    report = report_of(write_log, changed_sky(stints, fish))
    assert report.record.condition("sky").left_out == 0
    assert hours_and_fish(report, "sky") == {"clear": (2, 1), "overcast": (2, 2)}


def test_technique_without_a_fish_is_never_in_doubt(write_log: WriteLog) -> None:
    stints = [stint("T-001", "Drop shot", clock, landed=None) for clock in (EARLY, LATE)]
    report = report_of(write_log, changed_sky(stints, []))
    assert report.record.condition("sky").left_out == 0
    assert hours_and_fish(report, "sky") == {"clear": (2, 0), "overcast": (2, 0)}


def test_one_stint_not_recorded_beside_one_that_is_leaves_its_technique_out(write_log: WriteLog) -> None:
    stints = [
        stint("T-001", "Drop shot", EARLY, landed=None, cover="dock"),
        stint("T-001", "Drop shot", LATE, landed=None),
        stint("T-002", "Drop shot", EARLY, landed=None, cover="dock"),
    ]
    fish = [[trip, "Drop shot", BASS, None] for trip in ("T-001", "T-002")]
    report = report_of(write_log, changed_sky(stints, fish))
    assert report.record.condition("cover").left_out == 1
    assert hours_and_fish(report, "cover") == {"dock": (2, 1)}


def left_out_on_page(
    write_log: WriteLog, folder: Path, stints: Rows, fish: Rows
) -> tuple[list[str], list[str]]:
    """What the page Conditions says of techniques left out, and what it lists as not recorded at all."""
    (job,) = plan([write_log(changed_sky(stints, fish))], folder, None)
    build(job, [job.log])
    page = openpyxl.load_workbook(job.report, data_only=True)["Conditions"]
    cells = [str(row[0]) for row in page.iter_rows(max_col=1, values_only=True) if row[0]]
    nothing = cells[cells.index("Not recorded at all") :] if "Not recorded at all" in cells else []
    return [cell for cell in cells if "Left out" in cell], nothing


IN_DOUBT: Rows = [
    stint(trip, "Drop shot", clock, landed=None) for trip in ("T-001", "T-002") for clock in (EARLY, LATE)
]
TWO_FISH: Rows = [[trip, "Drop shot", BASS, None] for trip in ("T-001", "T-002")]
"""The halves of either trip differ in their hours into the trip, those of the first in their sky too."""


def test_page_counts_the_techniques_that_it_leaves_out(write_log: WriteLog, tmp_path: Path) -> None:
    stints = [*IN_DOUBT, stint("T-001", "Jerkbait", EARLY)]
    said, _ = left_out_on_page(write_log, tmp_path, stints, TWO_FISH)
    assert len(said) == 2
    assert (
        "Left out: 1 technique on a trip in several bands whose fish the record cannot tell apart." in said[0]
    )
    assert (
        "Left out: 2 techniques on trips in several bands whose fish the record cannot tell apart." in said[1]
    )


def test_page_counts_them_where_nothing_of_a_condition_is_left(write_log: WriteLog, tmp_path: Path) -> None:
    said, nothing = left_out_on_page(write_log, tmp_path, IN_DOUBT, TWO_FISH)
    assert not any(line.startswith("Hours into the trip") for line in nothing)
    assert any("Left out: 2 techniques on trips in several bands" in line for line in said)


def test_not_recorded_is_a_row_of_its_own_at_the_end(write_log: WriteLog) -> None:
    stints = [stint("T-001", cover="dock", landed=1), stint("T-002", landed=2)]
    report = report_of(write_log, changed_sky(stints, []))
    assert hours_and_fish(report, "cover") == {"dock": (1, 1), "not recorded": (1, 2)}
    rows = report.by_condition[report.by_condition["condition"] == "cover"]
    last = rows[rows["band"] == "not recorded"].iloc[0]
    assert (last["band_no"], last["unit"]) == (2, "")
    assert rows["band_no"].is_monotonic_increasing


# USNO, Sun and Moon Data for One Day, 2026-10-10 at 38.57 N 109.55 W, Mountain Daylight Time: the sun rises
# at 07:23 and sets at 18:47 (the source stands beside the same figures in tests/published/test_almanac.py).
MOAB: Rows = [
    *[row for row in clean_sheets()["Season"] if row[0] not in ("Time zone", "Latitude")],
    ["Time zone", "America/Denver"],
    ["Latitude", 38.57],
    ["Longitude", -109.55],
]
LIGHT = [
    (("07:06", "07:30"), "before sunrise"),  # 07:18
    (("07:16", "07:40"), "first two hours of light"),  # 07:28
    (("09:08", "09:28"), "first two hours of light"),  # 09:18
    (("09:18", "09:38"), "two to four hours after sunrise"),  # 09:28
    (("11:08", "11:28"), "two to four hours after sunrise"),  # 11:18
    (("11:18", "11:38"), "middle of the day"),  # 11:28
    (("14:32", "14:52"), "middle of the day"),  # 14:42
    (("14:42", "15:02"), "two to four hours before sunset"),  # 14:52
    (("16:32", "16:52"), "two to four hours before sunset"),  # 16:42
    (("16:42", "17:02"), "last two hours of light"),  # 16:52
    (("18:32", "18:52"), "last two hours of light"),  # 18:42
    (("18:42", "19:02"), "after sunset"),  # 18:52
    (("07:20", "18:40"), "middle of the day"),  # 13:00: the middle counts
    (None, "not recorded"),
]


def moab(trip: Sequence[object], stints: Rows, season: Rows = MOAB) -> dict[str, Change]:
    return {
        "Season": [list(row) for row in season],
        "Trips": [TRIPS, ["T-001", "2026-10-10", "Lake Arden", *trip]],
        "Effort": [EFFORT, *(list(row) for row in stints)],
        "Catch": [CATCH],
    }


def test_light_is_told_by_hours_from_sunrise_and_sunset(write_log: WriteLog) -> None:
    stints = [stint("T-001", clock=clock) for clock, _ in LIGHT]
    report = report_of(write_log, moab(["06:00", "20:00", 3], stints))
    assert placed(report, "light") == [band for _, band in LIGHT]


def test_night_after_midnight_is_held_against_the_next_sunrise(write_log: WriteLog) -> None:
    clocks = [("21:00", "22:00"), ("02:00", "03:00"), ("07:30", "08:00")]
    report = report_of(write_log, moab(["20:00", "08:00", 2], [stint("T-001", clock=one) for one in clocks]))
    assert placed(report, "light") == ["after sunset", "before sunrise", "first two hours of light"]


@pytest.mark.parametrize("missing", ["Time zone", "Latitude", "Longitude"])
def test_light_is_not_recorded_without_zone_and_place(missing: str, write_log: WriteLog) -> None:
    season = [row for row in MOAB if row[0] != missing]
    report = report_of(
        write_log, moab(["06:00", "20:00", 3], [stint("T-001", clock=("08:00", "09:00"))], season)
    )
    assert placed(report, "light") == ["not recorded"]


@pytest.mark.parametrize(
    ("clock", "expected"),
    [
        (("06:00", "09:58"), "first two hours of the trip"),  # 1 h 59
        (("07:00", "09:00"), "later on the trip"),  # 2 h: out of the first, into the next
        (("09:00", "11:00"), "later on the trip"),
        (None, "not recorded"),
    ],
)
def test_hours_into_the_trip_go_by_the_midpoint(
    clock: tuple[str, str] | None, expected: str, write_log: WriteLog
) -> None:
    report = report_of(write_log, changed_sky([stint("T-001", clock=clock)], []))
    assert placed(report, "first_two_hours") == [expected]


def test_moon_and_month_go_by_the_date(write_log: WriteLog) -> None:
    # USNO, Phases of the Moon, 2026: full 2 April, last quarter 10, new 17, first quarter 24, full 1 May.
    dates = {"2026-04-02": "full moon", "2026-04-10": "last quarter", "2026-04-17": "new moon"}
    dates |= {"2026-04-24": "first quarter", "2026-05-01": "full moon"}
    trips = [[f"T-{day}", day, "Lake Arden", "06:00", "12:00", 2] for day in dates]
    effort = [stint(f"T-{day}") for day in dates]
    changes: dict[str, Change] = {"Trips": [TRIPS, *trips], "Effort": [EFFORT, *effort], "Catch": [CATCH]}
    report = report_of(write_log, changes)
    assert placed(report, "moon") == list(dates.values())
    assert placed(report, "month") == ["April"] * 4 + ["May"]


CLIENTS: Rows = [
    ["Client", "Skill"],
    ["C01", "new"],
    ["C02", "handy"],
    ["C03", "new"],
    ["C04", None],
]


@pytest.mark.parametrize(
    ("clients", "angler", "expected"),
    [
        ("C01; C02", "C02", "handy"),
        ("C01; C02", "", "mixed"),
        ("C01; C03", "", "new"),
        ("C02", "", "handy"),
        ("C01", "C02", "handy"),
        ("C01", "C04", "not recorded"),
        ("C01; C04", "", "not recorded"),
        (None, "", "not recorded"),
    ],
)
def test_skill_is_that_of_the_angler_else_of_the_clients(
    clients: str | None, angler: str, expected: str, write_log: WriteLog
) -> None:
    changes: dict[str, Change] = {
        "Clients": [list(row) for row in CLIENTS],
        "Trips": [[*TRIPS, "Client"], ["T-001", "2026-04-18", "Lake Arden", "06:00", "12:00", 2, clients]],
        "Effort": [EFFORT, stint("T-001", angler=angler)],
        "Catch": [CATCH],
    }
    assert placed(report_of(write_log, changes), "skill") == [expected]


@pytest.mark.parametrize(
    ("guides", "expected"),
    [
        (("Ann", "Bert", None), ["Ann", "Bert", "not recorded"]),
        (("Ann", "ann", "Ann"), None),
        (("Ann", None, None), None),
        ((None, None, None), None),
    ],
)
def test_guide_is_a_condition_only_where_the_log_has_several(
    guides: Sequence[str | None], expected: list[str] | None, write_log: WriteLog
) -> None:
    trips = [
        [f"T-{place}", f"2026-05-0{place}", "Lake Arden", "06:00", "12:00", 2, guide]
        for place, guide in enumerate(guides, start=1)
    ]
    effort = [stint(f"T-{place}") for place in (1, 2, 3)]
    changes: dict[str, Change] = {
        "Trips": [[*TRIPS, "Guide"], *trips],
        "Effort": [EFFORT, *effort],
        "Catch": [CATCH],
    }
    report = report_of(write_log, changes)
    there = "guide" in {condition.key for condition in report.record.conditions}
    assert there == (expected is not None)
    if expected:
        assert placed(report, "guide") == expected


def test_cover_is_one_however_it_is_spelled_and_our_own_words_come_first(write_log: WriteLog) -> None:
    covers = ["weed line", "Open water", "open-water", "dock", "Weed Line"]
    report = report_of(write_log, changed_sky([stint("T-001", cover=cover) for cover in covers], []))
    assert [band.label for band in report.record.condition("cover").bands] == [
        "dock",
        "open water",
        "weed line",
    ]
    assert placed(report, "cover") == ["weed line", "open water", "open water", "dock", "weed line"]


def test_type_of_day_is_the_weather_and_never_the_call(write_log: WriteLog, tmp_path: Path) -> None:
    # The front of these hours passed on the afternoon of 17 April 2026 in Chicago.
    dates = ("2026-04-15", "2026-04-17", "2026-04-18", "2026-04-19", "2026-07-04")
    trips = [[f"T-{day}", day, "Lake Arden", "06:00", "12:00", 2, "second day"] for day in dates]
    changes: dict[str, Change] = {
        "Trips": [[*TRIPS, "Front call"], *trips],
        "Effort": [EFFORT, *(stint(f"T-{day}") for day in dates)],
        "Catch": [CATCH],
    }
    assert placed(report_of(write_log, changes), "day_type") == ["not recorded"] * 5
    weather = write_hours(tmp_path / "hours.csv", front_hours())
    assert placed(report_of(write_log, changes, [weather]), "day_type") == [
        "ordinary",
        "ahead of a front",  # over by noon, four hours before it
        "day 1 behind a front",
        "day 2 behind a front",
        "not recorded",
    ]


def test_trips_whose_log_is_not_finished_are_in_no_band(write_log: WriteLog) -> None:
    trips = [[*row, status] for row, status in zip(TWO_TRIPS[1:], ("log not finished", None), strict=True)]
    changes = changed_sky([stint("T-001", landed=4), stint("T-002", landed=1)], [])
    report = report_of(write_log, changes | {"Trips": [[*TRIPS, "Status"], *trips]})
    assert hours_and_fish(report, "month") == {"April": (1, 1)}


def test_table_has_the_columns_and_conditions_of_the_design(tables: dict[str, list[Row]]) -> None:
    assert list(tables["conditions"][0]) == [
        *("condition", "band", "band_low", "band_high", "unit", "of", "group"),
        *("trips", "rod_hours", "fish", "fish_per_rod_hour", "low", "high"),
    ]
    there = list(dict.fromkeys(row["condition"] for row in tables["conditions"]))
    assert [key for key in there if key != "guide"] == [
        *("water_temperature", "clarity", "sky", "wind_speed", "wind_from", "light", "first_two_hours"),
        *("moon", "month", "cover", "depth", "water_level", "day_type", "skill"),
    ]
    assert {row["of"] for row in tables["conditions"]} == {"all", "style", "technique"}
    for row in tables["conditions"]:
        assert float(row["fish_per_rod_hour"]) == pytest.approx(
            float(row["fish"]) / float(row["rod_hours"]), rel=1e-9
        )
        if row["band"] == "not recorded":
            assert (row["band_low"], row["band_high"], row["unit"]) == ("", "", "")


def test_water_temperature_of_the_demo_counts_again_from_its_rows(tables: dict[str, list[Row]]) -> None:
    spans = [
        (row["band"], float(row["band_low"] or "-inf"), float(row["band_high"] or "inf"))
        for row in tables["conditions"]
        if row["condition"] == "water_temperature" and row["of"] == "all" and row["band"] != "not recorded"
    ]
    assert {row["unit"] for row in tables["conditions"] if row["band"] in {span[0] for span in spans}} == {
        "°F"
    }
    again = recount(tables, spans)
    found = {
        (row["band"], row["group"]): (float(row["rod_hours"]), float(row["fish"]))
        for row in tables["conditions"]
        if row["condition"] == "water_temperature" and row["of"] != "style"
    }
    assert len(found) > 20
    assert set(again) == set(found)
    for key, both in found.items():
        assert both == pytest.approx(again[key], rel=1e-9), key


def recount(
    tables: dict[str, list[Row]], spans: Sequence[tuple[str, float, float]]
) -> dict[tuple[str, str], list[float]]:
    """Add up rod-hours and fish by band and technique from stints.csv and the log, by the rule alone."""
    rated = {
        (row["trip"], row["technique"]): float(row["fish"])
        for row in tables["trip_techniques"]
        if row["in_rates"] == "true"
    }
    readings = demo_temperatures()
    by_pair: dict[tuple[str, str], list[tuple[str, Row]]] = defaultdict(list)
    for row in tables["stints"]:
        if (row["trip"], row["technique"]) in rated:
            value = at_stint(readings.get(row["trip"], []), row)
            band = next(
                (name for name, low, high in spans if value is not None and low <= value < high), None
            )
            by_pair[row["trip"], row["technique"]].append((band or "not recorded", row))
    sums: dict[tuple[str, str], list[float]] = defaultdict(lambda: [0.0, 0.0])
    for pair, stints in by_pair.items():
        told = all(row["fish"] != "" for _, row in stints)
        where = {band for band, _ in stints}
        if not told and len(where) > 1:
            continue
        for band, row in stints:
            for group in ("all", pair[1]):
                sums[band, group][0] += float(row["rod_hours"])
                sums[band, group][1] += float(row["fish"]) if told else 0.0
        if not told:
            for group in ("all", pair[1]):
                sums[where.copy().pop(), group][1] += rated[pair]
    return sums


def at_stint(readings: Sequence[tuple[float, float]], row: Row) -> float | None:
    """The temperature of a stint from (minute, °F) of its trip; first on a trip comes its start."""
    if not readings:
        return None
    if row["start"] and row["end"]:
        begin, end = minute(row["start"]), minute(row["end"])
        middle = (begin + (end if end > begin else end + 1440)) / 2
        near = [(abs(at - middle), value) for at, value in readings if abs(at - middle) <= 180]
        if near:
            return min(near)[1]
    return sum(value for _, value in readings) / len(readings)


def minute(clock: str) -> float:
    hour, part, *_ = clock.split(":")
    return int(hour) * 60 + int(part)


def demo_temperatures() -> dict[str, list[tuple[float, float]]]:
    """Water temperatures in °F with their minutes, by trip, as typed in the demo season."""
    book = openpyxl.load_workbook(make.SAMPLES / make.CLEAN)
    trips, extra = sheet(book, "Trips"), sheet(book, "Conditions")
    by_trip: dict[str, list[tuple[float, float]]] = defaultdict(list)
    starts: dict[str, float] = {}
    for row in trips:
        start = row["Start"] or dt.time(6, 30)  # Usual start on Season
        assert isinstance(start, dt.time)
        starts[str(row["Trip"])] = start.hour * 60 + start.minute
        if row["Water temp (°F)"] is not None:
            by_trip[str(row["Trip"])].append((starts[str(row["Trip"])], float(str(row["Water temp (°F)"]))))
    dated = defaultdict(list)
    for row in extra:
        value, time, trip = row["Water temp (°F)"], row["Time"], row["Trip"]
        if value is None:
            continue
        at = time.hour * 60 + time.minute if isinstance(time, dt.time) else None
        if trip is None:
            dated[row["Date"]].append((at, float(str(value))))
        else:
            by_trip[str(trip)].append((starts[str(trip)] if at is None else at, float(str(value))))
    for row in trips:
        trip = str(row["Trip"])
        if trip not in by_trip and row["Date"] in dated:
            by_trip[trip] = [(starts[trip] if at is None else at, value) for at, value in dated[row["Date"]]]
    return by_trip


def sheet(book: openpyxl.Workbook, name: str) -> list[dict[str, object]]:
    heads, *rows = book[name].iter_rows(values_only=True)
    return [
        dict(zip(map(str, heads), row, strict=True)) for row in rows if any(cell is not None for cell in row)
    ]
