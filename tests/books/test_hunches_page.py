"""The pages Hunches and Water cards, and the blank log's sheet Hunches, as they are read and typed on."""

import calendar
import csv
import math
import re
import zipfile
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path

import openpyxl
import pytest
from openpyxl.worksheet.worksheet import Worksheet

from reporter.books.blank import blank_book
from reporter.run.build import build
from reporter.run.jobs import plan
from reporter.run.season import read_season
from reporter.schema.phrases import AT_A_WATER, phrases
from reporter.schema.units import System
from reporter.write.workbook import write_book
from tests.conftest import Change, WriteLog
from tests.demo import make
from tests.recalculate import disagreements

SHEET, CARDS = "Hunches", "Water cards"
TEMPLATES = make.SAMPLES.parent / "templates"
HUNCH = ["Hunch", "Compare", "This", "Against", "With technique", "When", "And", "Measure"]
EFFORT = ["Trip", "Technique", "Minutes", "Anglers on it", "Landed", "Colour", "Missed"]
TRIPS = ["Trip", "Date", "Water", "Start", "End", "Anglers", "Sky", "Water temp (°F)"]
NO_CATCH = ["Trip", "Technique", "Species", "Length (in)", "Fate"]
Row = dict[str, str]


@dataclass(frozen=True)
class Page:
    """The sheet Hunches of a report: the lines above its table, the rows of the table, those of the CSV."""

    lines: tuple[str, ...]
    rows: tuple[dict[str, object], ...]
    csv: tuple[Row, ...]
    season: Row


def built(log: Path, folder: Path) -> Path:
    (job,) = plan([log], folder, folder / "tables")
    assert build(job, [job.log]).reading.season is not None
    return job.report


def table(folder: Path, name: str) -> list[Row]:
    with (folder / "tables" / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def page_of(report: Path) -> Page:
    cells = list(openpyxl.load_workbook(report, data_only=True)[SHEET].iter_rows(values_only=True))
    heading = next((n for n, row in enumerate(cells) if row[1] == "Hunch"), len(cells))
    names = [str(name) for name in cells[heading]] if heading < len(cells) else []
    rows = [dict(zip(names, row, strict=True)) for row in cells[heading + 1 :] if row[-2] is not None]
    lines = [str(row[0]) for row in (*cells[:heading], *cells[heading + 1 + len(rows) :]) if row[0]]
    (season,) = table(report.parent, "season")
    return Page(tuple(lines), tuple(rows), tuple(table(report.parent, "hunches")), season)


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return built(make.SAMPLES / make.CLEAN, tmp_path_factory.mktemp("demo"))


@pytest.fixture(scope="module")
def demo_page(demo: Path) -> Page:
    return page_of(demo)


def hunch(compare: str, this: str, against: str = "", measure: str = "", when: str = "") -> list[object]:
    name = f"{compare} {this} {against} {measure} {when}".strip()
    return [name, compare, this, against or None, None, when or None, None, measure or None]


# Twelve trips, the first six in rain. On each an hour of jerkbait in dark and one in light, an hour of drop
# shot without a colour; misses are written nowhere. On trips 9 to 12 also drop shot in two colours, whose
# fish the log does not tell apart. Casting jig is fished on its own, on warm days.
def little_log() -> dict[str, Change]:
    trips: list[list[object]] = [list(TRIPS)]
    effort: list[list[object]] = [list(EFFORT)]
    for number in range(1, 13):
        sky = "rain" if number <= 6 else "clear"
        trips.append([f"T-{number}", f"2026-05-{number:02d}", "Lake Arden", "06:00", "12:00", 2, sky, 55])
        best = 12 if number <= 6 else 3
        effort.append([f"T-{number}", "Jerkbait", 60, 1, best + number % 2, "dark", None])
        effort.append([f"T-{number}", "Jerkbait", 60, 1, 1, "light", None])
        if number <= 8:
            effort.append([f"T-{number}", "Drop shot", 60, 1, 1, None, None])
        else:
            effort += [
                [f"T-{number}", "Drop shot", 30, 1, None, colour, None] for colour in ("dark", "light")
            ]
    for number in range(13, 19):
        trips.append([f"T-{number}", f"2026-06-{number:02d}", "Lake Arden", "06:00", "12:00", 2, "fog", 75])
        effort.append([f"T-{number}", "Casting jig", 240, 2, 3, "green", None])
    catch = [[f"T-{number}", "Drop shot", "largemouth bass", None, None] for number in range(9, 13)]
    rows = [
        hunch("colour", "dark", "light"),
        hunch("colour", "light", "dark"),
        hunch("technique", "Drop shot", "Casting jig"),
        hunch("colour", "green", "purple"),
        hunch("colour", "dark", "light", "mean length"),
        hunch("colour", "dark", "light", "kept"),
        hunch("sky", "rain", "clear"),
        hunch("sky", "clear", "rain"),
        hunch("sky", "rain"),
        hunch("sky", "rain", "fog"),
        hunch("colour", "dark", "light", when="water over 60 °F"),
        hunch("style", "slow", "moving"),
    ]
    return {"Trips": trips, "Effort": effort, "Catch": [NO_CATCH, *catch], SHEET: [HUNCH, *rows]}


@pytest.fixture(scope="module")
def little(write_log: WriteLog, tmp_path_factory: pytest.TempPathFactory) -> Page:
    styles = [["Technique", "Style"], ["Jerkbait", "moving"], ["Drop shot", "slow"], ["Casting jig", "slow"]]
    folder = tmp_path_factory.mktemp("little")
    return page_of(built(write_log({**little_log(), "Techniques": styles}), folder))


def said(page: Page, name: str) -> str:
    (row,) = (row for row in page.rows if row["Hunch"] == name)
    return str(row["What your record says"])


OUT = " Left out: 4 techniques on trips whose fish cannot be told apart."


NO_OVERLAP = "less than 50 % of the rod-hours were on techniques that were fished on both"


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("colour dark light", "Holds in your record." + OUT),
        ("colour light dark", "Goes the other way in your record." + OUT),
        ("technique Drop shot Casting jig", "Your record cannot tell: it takes 5 trips with both."),
        (
            "colour green purple",
            "Your record cannot tell: one of the two was never fished so, as far as the log says.",
        ),
        (
            "colour dark light mean length",
            "Your record cannot tell: fewer than 70 % of these fish were measured." + OUT,
        ),
        ("colour dark light kept", "Your record cannot tell: nothing was counted on one side." + OUT),
        ("sky rain clear", "Holds in your record. Weaker evidence: different days."),
        ("sky clear rain", "Goes the other way in your record. Weaker evidence: different days."),
        ("sky rain fog", f"Your record cannot tell: {NO_OVERLAP}."),
    ],
)
def test_every_verdict_has_its_words(name: str, words: str, little: Page) -> None:
    assert said(little, name) == words


def test_days_on_which_one_side_had_other_techniques_have_no_ratio(little: Page) -> None:
    # Rain: 18 rod-hours; the rest: 18 of the same techniques and 48 of casting jig.
    assert said(little, "sky rain") == f"Your record cannot tell: {NO_OVERLAP}."
    (row,) = (row for row in little.csv if row["hunch"] == "sky rain")
    assert (row["why"], row["ratio"], row["low"], row["high"]) == ("no_overlap", "", "", "")


def test_tally_counts_the_verdicts(little: Page, demo_page: Page) -> None:
    for page in (little, demo_page):
        verdicts = [row["verdict"] for row in page.csv]
        holds, other, open_ = (verdicts.count(word) for word in ("holds", "other_way", "cannot_tell"))
        assert holds + other + open_ == len(page.rows)
        assert (
            f"{len(verdicts)} hunches tested: {holds} in line with your record, {other} the other way, "
            f"{open_} that it cannot tell."
        ) in page.lines


def test_page_says_what_luck_does(little: Page, demo_page: Page) -> None:
    luck = "Of a dozen hunches that are not so, one may look true by luck"
    for page in (little, demo_page):
        assert any(line.startswith(luck) for line in page.lines)


def test_evidence_from_different_days_is_called_weaker(little: Page, demo_page: Page) -> None:
    for page in (little, demo_page):
        assert any("Different days" in line and "weaker evidence" in line for line in page.lines)
        for shown, row in zip(page.rows, page.csv, strict=True):
            over_days = row["compare"] in ("sky", "day type", "wind")
            assert row["evidence"] == ("over_days" if over_days else "same_trip")
            assert shown["Evidence"] == ("different days" if over_days else "same trips")
            weak = "Weaker evidence: different days." in str(shown["What your record says"])
            assert weak == (over_days and row["verdict"] != "cannot_tell")


def number_in(cell: object) -> str:
    return "" if cell is None else str(cell)


def test_page_and_csv_agree(little: Page, demo_page: Page) -> None:
    for page in (little, demo_page):
        for shown, row in zip(page.rows, page.csv, strict=True):
            assert shown["Hunch"] == row["hunch"]
            for heading, key in (("Ratio", "ratio"), ("From", "low"), ("To", "high"), ("Trips", "trips")):
                cell = shown[heading]
                assert (cell is None) == (row[key] == ""), (row["hunch"], key)
                if row[key]:
                    assert float(str(cell)) == pytest.approx(float(row[key]), rel=1e-9)
            opening = {"holds": "Holds in", "other_way": "Goes the other way", "cannot_tell": "Your record"}
            assert str(shown["What your record says"]).startswith(opening[row["verdict"]])
            assert (row["why"] != "") == (row["verdict"] == "cannot_tell")
            for side, heading in (("this", "This side"), ("against", "The other")):
                part, whole = float(row[f"part_{side}"]), float(row[f"whole_{side}"])
                words = str(shown[heading])
                assert (words == "nothing to compare") == (whole == 0)
                if whole and row["measure"] == "landed":
                    assert words == f"{part:,.0f} fish in {whole:,.1f} rod-hours"


def test_verdict_follows_from_the_range(little: Page, demo_page: Page) -> None:
    for row in (*little.csv, *demo_page.csv):
        if row["verdict"] == "holds":
            assert float(row["low"]) > 1
        elif row["verdict"] == "other_way":
            assert float(row["high"]) < 1
        if row["verdict"] != "cannot_tell":
            assert row["rod_hours_to_settle"] == ""
            assert int(row["trips"]) >= 5


def settle_of(row: Row, season: Row) -> str:
    if row["rod_hours_to_settle"] == "":
        return ""
    more = float(row["rod_hours_to_settle"])
    if more > 10 * float(season["rod_hours"]):
        return "more than ten seasons"
    half_days = math.ceil(more / 8)
    return f"{half_days:,} more half day" + ("s" if half_days > 1 else "")


def test_what_would_settle_it_is_told_in_half_days_or_as_more_than_ten_seasons(
    demo_page: Page, little: Page
) -> None:
    for page in (demo_page, little):
        for shown, row in zip(page.rows, page.csv, strict=True):
            assert number_in(shown["To settle it, about"]) == settle_of(row, page.season), row["hunch"]
    told = [number_in(row["To settle it, about"]) for row in demo_page.rows]
    assert "more than ten seasons" in told
    assert any(text.endswith("more half days") for text in told)


def dark_and_light(per_trip: Sequence[tuple[int, int]]) -> dict[str, Change]:
    trips: list[list[object]] = [list(TRIPS)]
    effort: list[list[object]] = [list(EFFORT)]
    for number, fish in enumerate(per_trip, start=1):
        trips.append([f"T-{number}", f"2026-05-{number:02d}", "Lake Arden", "06:00", "08:00", 1, None, None])
        effort += [
            [f"T-{number}", "Jerkbait", 60, 1, landed, colour, None]
            for colour, landed in zip(("dark", "light"), fish, strict=True)
        ]
    rows = [hunch("colour", "dark", "light")]
    return {"Trips": trips, "Effort": effort, "Catch": [NO_CATCH], SHEET: [HUNCH, *rows]}


@pytest.mark.parametrize(
    ("per_trip", "words"),
    [
        # 12 fish against 6 in six trips alike: ln 2 against 1.959964 x sqrt(1 / 12 + 1 / 6), 12 rod-hours x
        # ((0.979982 / 0.693147)^2 - 1) = 11.99 rod-hours.
        ([(2, 1)] * 6, "2 more half days"),
        # 14 against 6: ln (7 / 3) = 0.847298 against 1.959964 x sqrt(1 / 14 + 1 / 6) = 0.956355, and trips
        # that differ less than that: 14 rod-hours x ((0.956355 / 0.847298)^2 - 1) = 3.84 or so.
        ([(2, 1)] * 6 + [(2, 0)], "1 more half day"),
        ([(2, 2)] * 6, "more than ten seasons"),
        ([(10, 10)] * 5 + [(11, 10)], "more than ten seasons"),
    ],
)
def test_half_days_of_small_records(
    per_trip: list[tuple[int, int]], words: str, write_log: WriteLog, tmp_path: Path
) -> None:
    page = page_of(built(write_log(dark_and_light(per_trip)), tmp_path))
    (row,) = page.rows
    assert row["What your record says"] == "Your record cannot tell: the range takes in no difference."
    assert row["To settle it, about"] == words


def test_ratio_of_one_leaves_no_number_in_the_csv_that_is_none(write_log: WriteLog, tmp_path: Path) -> None:
    page = page_of(built(write_log(dark_and_light([(2, 2)] * 6)), tmp_path))
    (row,) = page.csv
    assert float(row["ratio"]) == 1
    assert row["rod_hours_to_settle"] in ("", "INF")


@pytest.mark.parametrize("sheet", [None, [HUNCH]])
def test_log_without_a_hunch_gets_a_sentence(sheet: Change, write_log: WriteLog, tmp_path: Path) -> None:
    page = page_of(built(write_log({SHEET: sheet}), tmp_path))
    assert not page.rows
    assert not page.csv
    assert any(line.startswith("None to test: write one a row on the sheet Hunches") for line in page.lines)


def test_csv_has_its_columns_and_a_row_a_hunch(demo: Path, demo_page: Page) -> None:
    with (demo.parent / "tables" / "hunches.csv").open(encoding="utf-8", newline="") as file:
        columns = next(csv.reader(file))
    for column in ("hunch", "ratio", "low", "high", "verdict", "rod_hours_to_settle"):
        assert column in columns
    typed = openpyxl.load_workbook(make.SAMPLES / make.CLEAN)[SHEET].iter_rows(min_row=2, values_only=True)
    rows = [[cell or "" for cell in row] for row in typed if row[0]]
    keys = ("hunch", "compare", "this", "against", "with_technique", "when", "and")
    assert [[row[key] for key in keys] for row in demo_page.csv] == [row[:7] for row in rows]
    assert [row["measure"] for row in demo_page.csv] == [row[7] or "landed" for row in rows]


def test_every_word_of_a_hunch_stands_in_what_is_compared(demo_page: Page) -> None:
    for shown, row in zip(demo_page.rows, demo_page.csv, strict=True):
        words = str(shown["What is compared"])
        for key in ("compare", "this", "against", "with_technique", "when", "and"):
            assert row[key] in words
        assert row["against"] or "all else" in words


SYSTEMS: tuple[System, ...] = ("us", "metric")


def offered(book: openpyxl.Workbook, column: str) -> list[str]:
    """What the drop-down of a column of the sheet Hunches offers, in its first row and in its last."""
    sheet: Worksheet = book[SHEET]
    (rule,) = (
        rule
        for rule in sheet.data_validations.dataValidation
        if str(rule.sqref).startswith(f"{column}2:") and rule.type == "list"
    )
    text = str(rule.formula1)
    if text.startswith('"'):
        return text.strip('"').split(",")
    found = re.fullmatch(r"'?([^'!]+)'?!\$([A-Z]+)\$(\d+):\$([A-Z]+)\$(\d+)", text)
    assert found is not None, text
    name, first, top, last, bottom = found.groups()
    cells = book[name][f"{first}{top}:{last}{bottom}"]
    return [str(cell.value) for (cell,) in cells if cell.value is not None]


@pytest.mark.parametrize("system", SYSTEMS)
def test_blank_log_offers_what_a_hunch_can_say(system: System, tmp_path: Path) -> None:
    write_book(blank_book(system, 2026), tmp_path / "log.xlsx")
    book = openpyxl.load_workbook(tmp_path / "log.xlsx")
    words = (
        "variant retrieve size colour cover depth technique style clarity sky level month water moon skill"
    )
    words += " wind;day type;water temperature;wind from;time of day"
    several = words.partition(" wind;")
    assert set(offered(book, "B")) == {*several[0].split(), "wind", *several[2].split(";")}
    said = [phrase.text for phrase in phrases(system)]
    for column in ("F", "G"):
        assert sorted(offered(book, column)) == sorted([*said, AT_A_WATER])
    measures = "landed;big fish;kept;bites;hang-ups;lures lost;share landed;mean length"
    assert offered(book, "H") == measures.split(";")
    for example in (
        "water under 50 °F" if system == "us" else "water under 10 °C",
        "stained",
        "level falling",
    ):
        assert example in offered(book, "F")


@pytest.mark.parametrize("system", SYSTEMS)
def test_ready_examples_are_readable_and_say_that_they_have_no_source(
    system: System, write_log: WriteLog
) -> None:
    blank = openpyxl.load_workbook(TEMPLATES / f"season log {system}.xlsx")
    ready = [list(row) for row in blank[SHEET].iter_rows(min_row=2, values_only=True) if row[0]]
    assert len(ready) >= 5
    assert all("common practice, no source" in str(row[0]) for row in ready)
    changes: dict[str, Change] = {
        SHEET: [HUNCH, *ready],
        "Season": [["Setting", "Value"], ["Units", system]],
        "Techniques": [list(row) for row in blank["Techniques"].iter_rows(values_only=True) if row[0]],
    }
    for log in (write_log(changes), write_log({**changes, "Waters": None})):
        reading = read_season(log)
        assert not [found for found in reading.problems if found.sheet == SHEET]
        assert reading.season is not None
        assert [found.name for found in reading.season.hunches] == [row[0] for row in ready]


def cards(report: Path) -> dict[str, list[dict[str, object]]]:
    """Water -> the rows of its card."""
    cells = list(openpyxl.load_workbook(report, data_only=True)[CARDS].iter_rows(values_only=True))
    filled = [row for row in cells if row[0] is not None]
    names = [str(name) for name in next(row for row in filled if row[0] == "Month")]
    found: dict[str, list[dict[str, object]]] = {}
    for place, row in enumerate(filled):
        if str(row[0]).startswith("What paid, month by month"):
            found[str(filled[place - 1][0])] = []
        elif isinstance(row[-1], int):
            found[list(found)[-1]].append(dict(zip(names, row, strict=True)))
    return found


def waters_fished(folder: Path) -> list[str]:
    return list(dict.fromkeys(row["water"] for row in table(folder, "trips") if row["in_rates"] == "true"))


def test_each_water_has_a_print_area_of_its_own(demo: Path) -> None:
    with zipfile.ZipFile(demo) as parts:
        text = parts.read("xl/workbook.xml").decode()
    names = re.findall(r'<sheet name="([^"]+)"', text)
    areas = re.findall(r'<definedName name="_xlnm.Print_Area" localSheetId="(\d+)"[^>]*>([^<]+)<', text)
    (own,) = (area for place, area in areas if names[int(place)] == CARDS)
    spans = [
        (int(first), int(last))
        for first, last in re.findall(r"'Water cards'!\$A\$(\d+):\$[A-Z]+\$(\d+)", own)
    ]
    page = openpyxl.load_workbook(demo, data_only=True)[CARDS]
    waters = waters_fished(demo.parent)
    assert len(spans) == len(own.split(",")) == len(waters) == 4
    assert sorted(str(page.cell(first, 1).value) for first, _ in spans) == sorted(waters)
    filled = [row[0].row for row in page.iter_rows() if any(cell.value is not None for cell in row)]
    held = [[row for row in filled if first <= row <= last] for first, last in spans]
    assert [row for rows in held for row in rows] == filled
    for (_, last), (following, _) in pairwise(spans):
        assert last < following
    assert spans[0][0] == 1


def test_one_water_is_one_print_area(write_log: WriteLog, tmp_path: Path) -> None:
    report = built(write_log(dark_and_light([(2, 1)])), tmp_path)
    with zipfile.ZipFile(report) as parts:
        text = parts.read("xl/workbook.xml").decode()
    place = re.findall(r'<sheet name="([^"]+)"', text).index(CARDS)
    areas = re.findall(rf'Print_Area" localSheetId="{place}"[^>]*>([^<]+)<', text)
    assert len(areas) == 1
    assert "," not in areas[0]


@pytest.mark.parametrize("name", ["O'Brien, the Pond", "=Lake & Co <1>"])
def test_any_name_of_a_water_heads_its_card(name: str, write_log: WriteLog, tmp_path: Path) -> None:
    log = write_log(dark_and_light([(2, 1), (1, 1)]))
    book = openpyxl.load_workbook(log)
    book["Trips"]["C2"].value = name
    book["Trips"]["C2"].data_type = "s"
    book.save(log)
    report = built(log, tmp_path)
    assert set(cards(report)) == {name, "Lake Arden"}
    page = openpyxl.load_workbook(report)[CARDS]
    assert [cell.data_type for row in page.iter_rows() for cell in row if cell.value == name] == ["s"]


def best_of(folder: Path, key: str, water: str, month: str) -> str:
    """The label with the highest rate among those with 8 rod-hours and a fish, from the tables of stints."""
    trips = {row["trip"]: row for row in table(folder, "trips")}
    sums: dict[str, list[float]] = defaultdict(lambda: [0.0, 0.0])
    for row in table(folder, "stints"):
        trip = trips[row["trip"]]
        if (trip["water"], trip["date"][:7]) == (water, month) and not row["reason"]:
            label = depth_of(row["depth_m"]) if key == "depth" else row[key]
            sums[label][0] += float(row["fish"])
            sums[label][1] += float(row["rod_hours"])
    enough = {
        label: fish / hours for label, (fish, hours) in sums.items() if label and hours >= 8 and fish > 0
    }
    return max(enough, key=lambda label: enough[label]) if enough else "–"


def depth_of(metres: str) -> str:
    """The band of a depth in feet; an edge lies in the band above it."""
    if not metres:
        return ""
    feet = round(float(metres) / 0.3048, 6)
    spans = [(5, "under 5 ft"), (10, "5 to 10 ft"), (15, "10 to 15 ft"), (25, "15 to 25 ft")]
    return next((label for edge, label in spans if feet < edge), "25 ft and over")


def test_what_paid_is_the_best_rate_with_enough_record(demo: Path) -> None:
    folder = demo.parent
    found = cards(demo)
    assert set(found) == set(waters_fished(folder))
    months = {month: f"2026-{number:02d}" for number, month in enumerate(calendar.month_name)}
    told = 0
    for water, rows in found.items():
        for row in rows:
            month = months[str(row["Month"]).removesuffix(" 2026")]
            for heading, key in (("What paid", "technique"), ("Cover", "cover"), ("Depth", "depth")):
                assert row[heading] == best_of(folder, key, water, month), (water, month, key)
                told += row[heading] != "–"
    assert told > 20
    # One of them by name, as a guide would read it.
    (may,) = (row for row in found["Lake Arden"] if row["Month"] == "May 2026")
    assert (may["What paid"], may["Cover"], may["Depth"]) == ("Drop shot", "laydown", "5 to 10 ft")


def test_numbers_of_a_card_are_those_of_its_trips(demo: Path) -> None:
    sums: dict[tuple[str, str], list[float]] = defaultdict(lambda: [0.0, 0.0, 0.0])
    for trip in table(demo.parent, "trips"):
        if trip["in_rates"] == "true":
            three = sums[trip["water"], trip["date"][:7]]
            for place, part in enumerate((1.0, float(trip["rod_hours"]), float(trip["fish_in_rates"]))):
                three[place] += part
    shown = [
        (water, row["Trips"], row["Rod-hours"], row["Fish per rod-hour"])
        for water, rows in cards(demo).items()
        for row in rows
    ]
    assert len(shown) == len(sums)
    expected = [(key[0], n, hours, fish / hours) for key, (n, hours, fish) in sums.items()]
    near = {(water, n, round(hours, 6), round(rate, 6)) for water, n, hours, rate in expected}
    assert {
        (water, n, round(float(str(hours)), 6), round(float(str(rate)), 6)) for water, n, hours, rate in shown
    } == near


@pytest.mark.libreoffice
def test_live_cells_of_the_cards_recalculate(demo: Path, tmp_path: Path) -> None:
    page = openpyxl.load_workbook(demo)[CARDS]
    live = [cell for row in page.iter_rows() for cell in row if cell.data_type == "f"]
    assert len(live) == 3 * sum(len(rows) for rows in cards(demo).values())
    assert not [text for text in disagreements(demo, tmp_path) if text.startswith((CARDS, SHEET))]


@pytest.mark.parametrize("hunches", [None, [HUNCH, hunch("wind", "over 10 mph"), hunch("colour", "dark")]])
def test_log_without_effort_gets_a_sentence_on_each_page(
    hunches: Change, write_log: WriteLog, tmp_path: Path
) -> None:
    log = write_log({"Effort": [EFFORT], "Catch": [NO_CATCH], SHEET: hunches})
    report = built(log, tmp_path)
    book = openpyxl.load_workbook(report, data_only=True)
    for name in (CARDS, "Conditions", "What worked"):
        texts = [str(cell) for row in book[name].iter_rows(values_only=True) for cell in row if cell]
        assert any("no stint has usable effort" in text.lower() for text in texts), name
    page = page_of(report)
    assert len(page.rows) == (2 if hunches else 0)
    assert hunches or any(line.startswith("None to test") for line in page.lines)
    for row in page.rows:
        assert "was never fished so" in str(row["What your record says"])
        assert row["This side"] == row["The other"] == "nothing to compare"
