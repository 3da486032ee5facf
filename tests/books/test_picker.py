"""What worked: its live formulas, recalculated over many choices, against the record picked from by hand.

The log is made up so that every stint's conditions are known as it is written; a plain count over those
stints stands beside the tool's own answer, and both beside what a spreadsheet program makes of the sheet.
"""

import datetime as dt
import math
import random
from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from reporter.books.blocks import Book, Sheet, Table
from reporter.books.season.data_sheets import trip_techniques
from reporter.books.season.stint_conditions import stint_conditions
from reporter.books.season.what_worked import what_worked
from reporter.compute.report import Report, make_report
from reporter.run import pick as asking
from reporter.run.pick import Answer, ask
from reporter.run.season import Reading, read_season
from reporter.run.weather import open_all
from reporter.write.workbook import write_book
from tests.conftest import Change, WriteLog, clean_sheets
from tests.recalculate import recalculated_all
from tests.run.test_weather_by_hand import front_hours, write_hours

Rows = list[tuple[Any, ...]]
"""The cells of a sheet."""

ANY = "Any"
KEYS = ("time_of_year", "water_temperature", "day_type", "clarity", "water", "sky", "wind_speed")
ENOUGH, BEST_ENOUGH, FEWEST_STEADIED = 20.0, 8.0, 3

LABELS: dict[str, tuple[str, ...]] = {
    "time_of_year": (
        *("January and February", "March and April", "May and June"),
        *("July and August", "September and October", "November and December"),
    ),
    "water_temperature": ("under 50 °F", "50 to 60 °F", "60 to 70 °F", "70 °F and over"),
    "day_type": (
        *("ordinary", "ahead of a front", "front passing", "day 1 behind a front", "day 2 behind a front"),
        *("day 3", "behind a low", "possible"),
    ),
    "clarity": ("clear", "lightly stained", "stained", "muddy"),
    "water": ("Lake *", "=sum", "007", "Any (the water)", "Lake X"),
    "sky": ("clear", "partly cloudy", "mostly cloudy", "overcast", "rain", "snow", "fog"),
    "wind_speed": ("under 5 mph", "5 to 10 mph", "10 to 15 mph", "15 mph and over"),
}
"""What can be chosen, in the order of the page: the bands of the design, the waters of the log."""

WATERS = ("Lake *", "=sum", "007", "Any", "Lake X")
TECHNIQUES = ("Casting jig", "Drop shot", "Jerkbait", "Topwater", "Stick worm")
EFFORT = [
    *("Trip", "Technique", "Start", "End", "Minutes", "Anglers on it", "Landed"),
    *("Variant", "Retrieve", "Cover", "Depth (ft)"),
]
TRIPS = [
    *("Trip", "Date", "Water", "Start", "End", "Anglers"),
    *("Water temp (°F)", "Clarity", "Sky", "Wind speed (mph)"),
]
CATCH = ["Trip", "Technique", "Species"]

FIRST, LATER = ("06:00", "08:20"), ("09:00", "12:00")
"""Clock stints of 140 and 180 minutes: 07:10 is nearest to the reading of 06:00, 10:30 to that of 11:00."""


def span(value: float | None, edges: Sequence[float]) -> int:
    """Number of the band of a value, from 1; past the last where it is not recorded."""
    return len(edges) + 2 if value is None else 1 + sum(value >= edge for edge in edges)


def word(value: str | None, labels: Sequence[str]) -> int:
    return len(labels) + 1 if value is None else labels.index(value) + 1


@dataclass(frozen=True)
class Stint:
    """One stint as it was written, with the number of its label in every choice but the type of day.

    told: whether the log says which of its technique's fish on that trip are its own.
    """

    trip: str
    technique: str
    hours: float
    fish: float
    told: bool
    numbers: Mapping[str, int]
    did: Mapping[str, str]


@dataclass
class Made:
    """Rows of a made-up log, and its stints."""

    trips: list[list[object]] = field(default_factory=list)
    readings: list[list[object]] = field(default_factory=list)
    effort: list[list[object]] = field(default_factory=list)
    catch: list[list[object]] = field(default_factory=list)
    stints: list[Stint] = field(default_factory=list)

    def changes(self) -> dict[str, Change]:
        season = [row for row in clean_sheets()["Season"] if row[0] != "First day"]
        return {
            "Season": [*season, ["First day", dt.date(2026, 1, 1)], ["Species counted", "black bass"]],
            "Trips": [TRIPS, *self.trips],
            "Conditions": [["Trip", "Time", "Water temp (°F)"], *self.readings],
            "Effort": [EFFORT, *self.effort],
            "Catch": [CATCH, *self.catch],
            "Techniques": [
                ["Technique", "Style"],
                *([name, style] for name, style in zip(TECHNIQUES, ["slow", "moving"] * 3, strict=False)),
            ],
            "Waters": [["Water", "Region"], *([water, "US-MI"] for water in WATERS)],
        }


def made_up(trips: int = 40, seed: int = 5) -> Made:
    """Forty trips: a third about the front of April 2026, so that types of day differ, the rest all year."""
    draw, made = random.Random(seed), Made()  # noqa: S311 - no secret
    for number in range(trips):
        about_front = number % 3 == 0
        day = (
            dt.date(2026, 4, 12 + number % 12)
            if about_front
            else dt.date(2026, 1, 5) + dt.timedelta(number * 8)
        )
        _add_trip(made, draw, f"T-{number:02d}", day)
    return made


def _add_trip(made: Made, draw: random.Random, trip: str, day: dt.date) -> None:
    water = draw.choice(WATERS)
    first = draw.choice([45, 49.5, 50, 55, 58, 60, 63, 70, 74, None])
    second = None if first is None or draw.random() < 0.6 else first + draw.choice([2, 6, 12])
    clarity = draw.choice([*LABELS["clarity"], "clear", "stained", None])
    sky = draw.choice(["clear", "overcast", "rain", "partly cloudy", None])
    wind = draw.choice([2, 5, 8, 10, 15, None])
    made.trips.append([trip, day, water, "06:00", "12:00", 2, first, clarity, sky, wind])
    if second is not None:
        made.readings.append([trip, "11:00", second])
    clocked = draw.random() < 0.6
    names = draw.choices(TECHNIQUES, weights=(5, 4, 3, 2, 1), k=2)
    names = [names[0]] * 2 if draw.random() < 0.2 else names
    caught = [draw.choice([0, 0, 1, 1, 2, 3, 5]) for _ in names]
    tallied = names[0] != names[1] or draw.random() < 0.2
    mean = first if first is None or second is None else (first + second) / 2
    for place, name in enumerate(names):
        near = second if place and second is not None else first
        minutes = (140, 180)[place] if clocked else draw.choice([70, 100, 130])
        fish = caught[place]
        did = {
            "cover": draw.choice(["dock", "grass", "weed line", ""]),
            "depth": draw.choice([3, 5, 12, 30, None]),
            "variant": draw.choice(["rattling", "flat", ""]),
            "retrieve": draw.choice(["dragged", "burned", ""]),
        }
        numbers = {
            "time_of_year": (day.month + 1) // 2,
            "water_temperature": span(near if clocked else mean, (50, 60, 70)),
            "clarity": word(clarity, LABELS["clarity"]),
            "water": WATERS.index(water) + 1,
            "sky": word(sky, LABELS["sky"]),
            "wind_speed": span(wind, (5, 10, 15)),
        }
        clock = (FIRST, LATER)[place] if clocked else (None, None)
        made.effort.append(
            [
                *(trip, name, *clock, None if clocked else minutes, 2, fish if tallied else None),
                *(did["variant"] or None, did["retrieve"] or None, did["cover"] or None, did["depth"]),
            ]
        )
        if not tallied:
            made.catch += [[trip, name, "largemouth bass"]] * fish
        words = {
            "cover": str(did["cover"]),
            "depth": depth_label(did["depth"]),
            **{key: f"{name}: {did[key]}" if did[key] else "" for key in ("variant", "retrieve")},
        }
        made.stints.append(
            Stint(trip, name, minutes / 60 * 2, fish, tallied or not sum(caught), numbers, words)
        )


def depth_label(feet: Any) -> str:
    labels = ("under 5 ft", "5 to 10 ft", "10 to 15 ft", "15 to 25 ft", "25 ft and over", "")
    return labels[span(feet, (5, 10, 15, 25)) - 1]


@dataclass(frozen=True)
class Line:
    """A technique in the list; steadied is None where rates are not steadied."""

    technique: str
    trips: int
    hours: float
    fish: float
    rate: float
    steadied: float | None


@dataclass(frozen=True)
class Plain:
    """What a plain count gives. best: attribute -> its best labels, all that tie, and their rate."""

    kept: int
    lines: list[Line]
    best: dict[str, tuple[set[str], float]]


def stints_with_day(made: Made, report: Report) -> list[Stint]:
    """Add the type of day, the only thing here that is not typed: as the season has it for the trip."""
    words = {
        "ordinary": 1,
        "ahead": 2,
        "passing": 3,
        "day_1": 4,
        "day_2": 5,
        "day_3": 6,
        "behind_low": 7,
        "possible": 8,
        "not_known": 9,
    }
    trips = report.season.trips
    days = {trip: words[day] for trip, day in zip(trips["trip"], trips["day_type"], strict=True)}
    return [replace(one, numbers={**one.numbers, "day_type": days[one.trip]}) for one in made.stints]


def counted(stints: Sequence[Stint]) -> list[Stint]:
    """Take out techniques whose fish cannot be told apart between kinds of day."""
    kinds = defaultdict(set)
    for one in stints:
        kinds[one.trip, one.technique].add(tuple(sorted(one.numbers.items())))
    return [one for one in stints if one.told or len(kinds[one.trip, one.technique]) == 1]


def steps_fitted(numbers: Mapping[str, int], chosen: Mapping[str, int]) -> int:
    own, wanted = numbers["water_temperature"], chosen.get("water_temperature", 0)
    beside = not wanted or (own <= 4 and abs(own - wanted) <= 1)

    def same(key: str) -> bool:
        return not chosen.get(key) or numbers[key] == chosen[key]

    order = (same("time_of_year"), beside, same("water_temperature"), *(same(key) for key in KEYS[2:]))
    return next((place for place, fits in enumerate(order) if not fits), len(order))


def by_hand(stints: Sequence[Stint], chosen: Mapping[str, int], kappa: float) -> Plain:
    kept_of = [steps_fitted(one.numbers, chosen) for one in stints]

    def hours_at(step: int) -> float:
        return sum(one.hours for one, fits in zip(stints, kept_of, strict=True) if fits >= step)

    kept = max((step for step in range(9) if hours_at(step) >= ENOUGH - 1e-6), default=0)
    there = [one for one, fits in zip(stints, kept_of, strict=True) if fits >= kept]
    by_trip: dict[str, dict[str, float]] = defaultdict(lambda: defaultdict(float))
    fish: dict[str, float] = defaultdict(float)
    for one in there:
        by_trip[one.technique][one.trip] += one.hours
        fish[one.technique] += one.fish
    hours = {name: sum(trips.values()) for name, trips in by_trip.items()}
    rates = {name: fish[name] / hours[name] for name in hours}
    steadied = steadied_rates(by_trip, fish, kappa) if len(hours) >= FEWEST_STEADIED else {}
    score = steadied or rates
    order = sorted(hours, key=lambda name: (-round(score[name], 9), TECHNIQUES.index(name)))
    lines = [
        Line(name, len(by_trip[name]), hours[name], fish[name], rates[name], steadied.get(name))
        for name in order
    ]
    told = told_apart(there, stints)
    return Plain(
        kept, lines, {key: best_of(told[key], key) for key in ("cover", "depth", "variant", "retrieve")}
    )


def told_apart(there: Sequence[Stint], stints: Sequence[Stint]) -> dict[str, list[Stint]]:
    """For each attribute the stints whose fish are known to be its own."""
    found = {}
    for key in ("cover", "depth", "variant", "retrieve"):
        labels = defaultdict(set)
        for one in stints:
            labels[one.trip, one.technique].add(one.did[key])
        found[key] = [one for one in there if one.told or len(labels[one.trip, one.technique]) == 1]
    return found


def best_of(stints: Sequence[Stint], key: str) -> tuple[set[str], float]:
    hours: dict[str, float] = defaultdict(float)
    fish: dict[str, float] = defaultdict(float)
    for one in stints:
        if one.did[key]:
            hours[one.did[key]] += one.hours
            fish[one.did[key]] += one.fish
    rates = {
        name: fish[name] / hours[name] for name in hours if hours[name] >= BEST_ENOUGH - 1e-6 and fish[name]
    }
    top = max(rates.values(), default=0.0)
    return {name for name, rate in rates.items() if math.isclose(rate, top, rel_tol=1e-9)}, top


def steadied_rates(
    by_trip: Mapping[str, Mapping[str, float]], fish: Mapping[str, float], kappa: float
) -> dict[str, float]:
    """Marshall's moments with each technique's variance scaled by phi."""
    effort = {name: sum(trips.values()) for name, trips in by_trip.items()}
    total = sum(effort.values())
    mean = sum(fish[name] for name in effort) / total
    phi = {
        name: 1 + kappa * mean * sum(part**2 for part in trips.values()) / effort[name]
        for name, trips in by_trip.items()
    }
    observed = sum(effort[name] * (fish[name] / effort[name] - mean) ** 2 for name in effort) / total
    excess = observed - mean * sum(phi.values()) / total
    if excess <= 1e-12 * observed:
        return dict.fromkeys(effort, mean)
    return {
        name: mean + excess / (excess + mean * phi[name] / effort[name]) * (fish[name] / effort[name] - mean)
        for name in effort
    }


def random_choices(stints: Sequence[Stint], count: int = 50, seed: int = 24) -> list[dict[str, int]]:
    """Half are labels at random, half those of a stint of the record; each choice is often left at Any."""
    draw = random.Random(seed)  # noqa: S311 - no secret
    made = []
    for place in range(count):
        own = draw.choice(stints).numbers if place % 2 else {}
        chosen = {}
        for key, labels in LABELS.items():
            number = own.get(key, draw.randint(1, len(labels)))
            leave = draw.random() < (0.45 if own else 0.6) or number > len(labels)
            chosen[key] = 0 if leave else number
        made.append(chosen)
    return made


def as_typed(chosen: Mapping[str, int]) -> list[str | None]:
    return [(ANY, *LABELS[key])[chosen.get(key, 0)] for key in KEYS]


HOTTEST = {"time_of_year": 4, "water_temperature": 4}
"""The highest band, beside whose number stands that of not recorded, which must not be let in with it."""

OTHERWISE: dict[str, list[str | None]] = {
    "blank": [None] * 7,
    "unknown water": [ANY, ANY, ANY, ANY, "Lake Nowhere", ANY, ANY],
    "wildcard": [ANY, ANY, ANY, ANY, "Lake ?", ANY, ANY],
    "a part of a label": [ANY, "50 to 60", ANY, ANY, ANY, ANY, ANY],
    "another case": ["may AND june", ANY, ANY, "STAINED", ANY, ANY, "any"],
}
"""Cells as a person may type them, against the drop-down's advice."""


def written(write_log: WriteLog, made: Made) -> Path:
    """Write a log whose `=sum` is a text, as an apostrophe before it makes it."""
    path = write_log(made.changes())
    book = openpyxl.load_workbook(path)
    for cell in (cell for sheet in book.worksheets for row in sheet.iter_rows() for cell in row):
        if cell.data_type == "f":
            cell.data_type = "s"
    book.save(path)
    return path


@dataclass(frozen=True)
class Case:
    """The made-up season, its stints with all that they were fished under, and the choices."""

    log: Path
    made: Made
    report: Report
    reading: Reading
    stints: list[Stint]
    choices: list[dict[str, int]]

    def plain(self, chosen: Mapping[str, int]) -> Plain:
        """Count by hand; kappa is the season's own, which other tests hold to account."""
        return by_hand(self.stints, chosen, float(self.report.season.spread.kappa_used))


@pytest.fixture(scope="module")
def case(write_log: WriteLog) -> Case:
    made = made_up()
    log = written(write_log, made)
    weather = write_hours(log.parent / "hours.csv", front_hours())
    reading = read_season(log, open_all([weather]))
    assert reading.season is not None
    report = make_report(reading.season)
    stints = counted(stints_with_day(made, report))
    return Case(log, made, report, reading, stints, [*random_choices(stints), HOTTEST])


def what_worked_of(path: Path) -> Rows:
    book = openpyxl.load_workbook(path, read_only=True, data_only=True)
    rows = list(book["What worked"].iter_rows(values_only=True))
    book.close()
    return rows


def write_books(report: Report, typed: Mapping[str, Sequence[str | None]], folder: Path) -> None:
    """Write a book a choice with only the sheets that answer it.

    The cells to choose in hold the choice; every other value is stored as for Any, so that it is wrong until
    a spreadsheet program has worked it out.
    """
    sheet, behind = what_worked(report)
    others = (behind, stint_conditions(report), trip_techniques(report))
    for name, cells in typed.items():
        book = Book(name, "report", (chosen_on(sheet, cells), *others), "letter", dt.date(2026, 11, 30))
        write_book(book, folder / f"{name}.xlsx")


def chosen_on(sheet: Sheet, cells: Sequence[str | None]) -> Sheet:
    def patched(block: Any) -> Any:
        if not (isinstance(block, Table) and block.key == "choice"):
            return block
        return replace(block, columns={**block.columns, "pick": list(cells)})

    return replace(sheet, blocks=tuple(patched(block) for block in sheet.blocks))


def recalculated(report: Report, typed: Mapping[str, Sequence[str | None]], folder: Path) -> dict[str, Rows]:
    """Have LibreOffice recalculate a book a choice in one run, a canary among them: name -> What worked."""
    write_books(report, typed, folder)
    made = recalculated_all(sorted(folder.glob("*.xlsx")), folder.parent)
    return {path.stem: what_worked_of(path) for path in made}


def below(sheet: Rows, heading: str) -> list[dict[str, Any]]:
    """Return the rows under the heading row that begins with a heading, down to the first blank row."""
    top = next(place for place, row in enumerate(sheet) if row[0] == heading)
    names = [str(cell) for cell in sheet[top] if cell is not None]
    found = []
    for row in sheet[top + 1 :]:
        if all(cell in (None, "") for cell in row):
            break
        found.append(dict(zip(names, row, strict=False)))
    return found


def ranked(sheet: Rows) -> list[dict[str, Any]]:
    return [row for row in below(sheet, "Technique") if row["Technique"] not in (None, "")]


def figure(sheet: Rows, label: str) -> Any:
    for row in sheet:
        if str(row[0]).startswith(label):
            return next(cell for cell in row[1:] if cell is not None)
    raise AssertionError(label)


def answers(case: Case, monkeypatch: pytest.MonkeyPatch) -> list[Answer]:
    """Ask the tool every choice by its labels, the log being read once."""
    monkeypatch.setattr(asking, "read_season", lambda *_: case.reading)
    typed = [dict(zip(KEYS, map(str, as_typed(chosen)), strict=True)) for chosen in case.choices]
    return [ask(case.log, asked) for asked in typed]


def close(found: Any, expected: float | None) -> bool:
    if expected is None:
        return found in (None, "")
    return isinstance(found, int | float) and math.isclose(found, expected, rel_tol=1e-9, abs_tol=1e-9)


def record_words(trips: int) -> str:
    if trips < 5:
        return "thin: under 5 trips"
    return "some: 5 to 9 trips" if trips < 10 else "good: 10 trips and over"


def test_record_holds_what_a_choice_can_go_wrong_by(case: Case) -> None:
    stints = stints_with_day(case.made, case.report)
    assert len(stints) == 80
    left = {(one.trip, one.technique) for one in stints} - {(one.trip, one.technique) for one in case.stints}
    assert case.report.picks.left_out == len(left) > 0
    assert len({one.numbers["day_type"] for one in stints}) >= 4
    assert {key: case.report.picks.labels[key] for key in KEYS} == LABELS


def test_choices_reach_every_part_of_the_answer(case: Case) -> None:
    plain = [case.plain(chosen) for chosen in case.choices]
    assert len(plain) == 51
    assert {one.kept for one in plain} == set(range(9))
    assert len({tuple(line.technique for line in one.lines) for one in plain}) >= 15
    assert len({order_words(one) for one in plain}) == 3
    assert {
        word for one, chosen in zip(plain, case.choices, strict=True) for word in kept_words(one, chosen)
    } == {*("any", "kept", "bands beside it too", "let go")}
    of_any = case.plain({})
    # What is stored in the books is the answer to Any: were it kept, most of them would be wrong.
    assert sum(one.lines != of_any.lines for one in plain) >= 35


def test_answer_of_the_tool_is_that_of_a_plain_count(case: Case, monkeypatch: pytest.MonkeyPatch) -> None:
    for chosen, answer in zip(case.choices, answers(case, monkeypatch), strict=True):
        expected = case.plain(chosen)
        assert answer.picked is not None
        assert answer.numbers == {key: chosen.get(key, 0) for key in KEYS}
        assert answer.picked.kept == expected.kept, chosen
        table = answer.picked.table
        rows = table[table["place"] > 0].sort_values("place").to_dict("records")
        assert [row["technique"] for row in rows] == [line.technique for line in expected.lines], chosen
        for row, line in zip(rows, expected.lines, strict=True):
            assert row["trips"] == line.trips
            assert close(row["rod_hours"], line.hours)
            assert close(row["fish"], line.fish)
            assert close(row["fish_per_rod_hour"], line.rate)
            assert math.isnan(row["shrunken_rate"]) or close(row["shrunken_rate"], line.steadied)
            assert math.isnan(row["shrunken_rate"]) == (line.steadied is None)
        for key, (labels, rate) in expected.best.items():
            first = answer.picked.best[key].query("place == 1")
            assert set(first["label"]) <= labels
            assert len(first) == bool(labels)
            assert all(close(value, rate) for value in first["fish_per_rod_hour"])


@pytest.mark.libreoffice
def test_sheet_recalculates_to_the_answer_of_the_tool_for_every_choice(
    case: Case, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    typed = {f"choice {place}": as_typed(chosen) for place, chosen in enumerate(case.choices)}
    sheets = recalculated(case.report, typed, tmp_path)
    for place, answer in enumerate(answers(case, monkeypatch)):
        sheet, chosen = sheets[f"choice {place}"], case.choices[place]
        assert_list(sheet, answer)
        assert_best(sheet, answer)
        assert figure(sheet, "The order") == order_words(case.plain(chosen))
        assert said_of(sheet) == kept_words(case.plain(chosen), chosen)


def assert_list(sheet: Rows, answer: Answer) -> None:
    picked = answer.picked
    assert picked is not None
    assert figure(sheet, "Steps of fit kept") == picked.kept
    assert close(figure(sheet, "Rod-hours that fit"), float(picked.hours[picked.kept]))
    rows = ranked(sheet)
    table = picked.table[picked.table["place"] > 0].sort_values("place").to_dict("records")
    assert [row["Technique"] for row in rows] == [line["technique"] for line in table]
    for row, line in zip(rows, table, strict=True):
        steadied = line["shrunken_rate"]
        assert (row["Trips"], row["Place"]) == (line["trips"], line["place"])
        assert row["Your record behind it"] == record_words(line["trips"])
        assert close(row["Rod-hours"], line["rod_hours"])
        assert close(row["Landed"], line["fish"])
        assert close(row["Fish per rod-hour"], line["fish_per_rod_hour"])
        assert close(row["Steadied for small samples"], None if math.isnan(steadied) else steadied)


def assert_best(sheet: Rows, answer: Answer) -> None:
    assert answer.picked is not None
    rows = {row["Of what"].casefold(): row for row in below(sheet, "Of what")[:4]}
    assert list(rows) == ["cover", "depth", "variant", "retrieve"]
    for key, table in answer.picked.best.items():
        first = table[table["place"] == 1]
        row = rows[key]
        if first.empty:
            assert row["Did best"] == "too little record"
            assert {row["Rod-hours"], row["Landed"], row["Fish per rod-hour"]} <= {None, ""}
        else:
            (line,) = first.to_dict("records")
            assert row["Did best"] == line["label"]
            assert close(row["Rod-hours"], line["rod_hours"])
            assert close(row["Landed"], line["fish"])
            assert close(row["Fish per rod-hour"], line["fish_per_rod_hour"])


def kept_words(plain: Plain, chosen: Mapping[str, int]) -> list[str]:
    last_step = dict(zip(KEYS, (1, 3, 4, 5, 6, 7, 8), strict=True))
    words = []
    for key in KEYS:
        if not chosen.get(key):
            words.append("any")
        elif plain.kept >= last_step[key]:
            words.append("kept")
        else:
            near = key == "water_temperature" and plain.kept == 2
            words.append("bands beside it too" if near else "let go")
    return words


def order_words(plain: Plain) -> str:
    steadied = {line.steadied for line in plain.lines}
    if steadied == {None}:
        return "Fewer than 3 techniques fit: in the order of their plain rates."
    if len(steadied) == 1:
        return "No detectable difference between these techniques: their order says nothing."
    return "In the order of steadied rates."


def said_of(sheet: Rows) -> list[Any]:
    """What stands beside each cell to choose in."""
    top = next(place for place, row in enumerate(sheet) if "Your choice" in row)
    column = sheet[top].index("Kept or let go")
    return [row[column] for row in sheet[top + 1 : top + 8]]


@pytest.mark.libreoffice
def test_cell_that_is_blank_or_not_in_the_list_counts_as_any_and_case_does_not_matter(
    case: Case, tmp_path: Path
) -> None:
    sheets = recalculated(case.report, OTHERWISE, tmp_path)
    chosen = {"time_of_year": 3, "clarity": 3}
    for name, typed in OTHERWISE.items():
        plain = case.plain(chosen if name == "another case" else {})
        rows = ranked(sheets[name])
        assert [row["Technique"] for row in rows] == [line.technique for line in plain.lines], name
        for row, line in zip(rows, plain.lines, strict=True):
            assert close(row["Rod-hours"], line.hours)
            assert close(row["Steadied for small samples"], line.steadied)
        if name == "another case":
            assert said_of(sheets[name]) == kept_words(plain, chosen)
        else:
            expected = ["any" if cell in (ANY, None) else "not in the list: any" for cell in typed]
            assert said_of(sheets[name]) == expected, name


def test_drop_downs_offer_any_and_every_label(case: Case, tmp_path: Path) -> None:
    write_books(case.report, {"book": as_typed({})}, tmp_path)
    book = openpyxl.load_workbook(tmp_path / "book.xlsx")
    sheet = book["What worked"]
    top = next(row for row in range(1, 20) if sheet.cell(row, 2).value == "Your choice")
    offered = {}
    for rule in sheet.data_validations.dataValidation:
        assert rule.type == "list"
        name, _, cells = rule.formula1.lstrip("=").rpartition("!")
        source = book[name.strip("'")][cells.replace("$", "")]
        for cell in str(rule.sqref).split():
            offered[cell] = [row[0].value for row in source]
    # Cells of text, so that 007 and =sum stay what they are when they are chosen.
    assert {sheet[cell].number_format for cell in offered} == {"@"}
    assert offered == {f"B{top + 1 + place}": [ANY, *LABELS[key]] for place, key in enumerate(KEYS)}
    waters = [cell for row in book["Behind What worked"].iter_rows() for cell in row if cell.value in WATERS]
    assert {cell.data_type for cell in waters} == {"s"}


SAME_DAY = dt.date(2026, 4, 18)
"""Day 1 behind the front of the hourly file."""

ASKED = {
    "time_of_year": "April",
    "water_temperature": "55F",
    "day_type": "day_1",
    "clarity": "stained",
    "water": "Lake X",
    "sky": "rain",
    "wind_speed": "12mph",
}
FITTING = {"day": SAME_DAY, "temp": 55, "clarity": "stained", "water": "Lake X", "sky": "rain", "wind": 12}


@pytest.mark.parametrize(
    ("other", "kept"),
    [
        ({}, 8),
        ({"wind": 3}, 7),
        ({"sky": "clear"}, 6),
        ({"water": "007"}, 5),
        ({"clarity": "muddy"}, 4),
        ({"day": dt.date(2026, 4, 15)}, 3),
        ({"temp": 65}, 2),
        ({"temp": 45}, 2),
        ({"temp": 75}, 1),
        ({"day": dt.date(2026, 5, 18)}, 0),
        ({"temp": None}, 1),
        ({"sky": None}, 6),
        ({"sky": "clear", "clarity": "muddy"}, 4),
    ],
)
def test_too_little_record_lets_go_of_the_last_choice_first(
    other: dict[str, object], kept: int, write_log: WriteLog
) -> None:
    # 19 rod-hours fit all seven choices, one more trip of 10 fits all but one: together they are enough.
    log = written(write_log, two_trips({**FITTING, **other}))
    weather = write_hours(log.parent / "hours.csv", front_hours())
    picked = ask(log, ASKED, open_all([weather])).picked
    assert picked is not None
    assert picked.kept == kept
    assert picked.hours[kept] == pytest.approx(29)
    assert list(picked.hours[kept + 1 :]) == pytest.approx([19] * (8 - kept))


def test_temperature_that_is_not_recorded_lies_beside_no_band(write_log: WriteLog) -> None:
    made = two_trips({**FITTING, "temp": None})
    made.trips[0][6] = 74
    log = written(write_log, made)
    weather = write_hours(log.parent / "hours.csv", front_hours())
    picked = ask(log, {**ASKED, "water_temperature": "74F"}, open_all([weather])).picked
    assert picked is not None
    assert picked.kept == 1


@pytest.mark.parametrize(("minutes", "kept"), [(600, 8), (597, 7)])
def test_twenty_rod_hours_are_enough_and_less_is_not(minutes: int, kept: int, write_log: WriteLog) -> None:
    made = two_trips({**FITTING, "wind": 3})
    made.effort[0][4] = minutes
    log = written(write_log, made)
    weather = write_hours(log.parent / "hours.csv", front_hours())
    picked = ask(log, ASKED, open_all([weather])).picked
    assert picked is not None
    assert picked.kept == kept


def two_trips(other: Mapping[str, Any]) -> Made:
    """A trip of 19 rod-hours that fits, and one of 10 under other conditions; each by two anglers."""
    made = Made()
    for trip, minutes, day in (("T-1", 570, FITTING), ("T-2", 300, other)):
        seen = [day["temp"], day["clarity"], day["sky"], day["wind"]]
        made.trips.append([trip, day["day"], day["water"], "06:00", "16:30", 2, *seen])
        made.effort.append([trip, "Drop shot", None, None, minutes, 2, 1, None, None, None, None])
    return made
