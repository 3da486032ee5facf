"""The sheet Front days, held against front_days.csv of the same build."""

import datetime as dt
import re
import zipfile
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

import openpyxl
import pytest
from openpyxl.workbook import Workbook

from tests.demo import make
from tests.run.test_weather_by_hand import INCH_HPA, ZONE, Row, built_with, read_rows

WORDS = {
    "ordinary": "",
    "ahead": "ahead",
    "passing": "front",
    "day_1": "day 1",
    "day_2": "day 2",
    "day_3": "day 3",
    "behind_low": "low",
    "possible": "possible",
    "not_known": "?",
}
VERDICTS = {
    "yes_clear": "YES, clear",
    "yes_weak": "YES, weak",
    "possible": "POSSIBLE",
    "no": "NO",
    "not_enough_data": "NOT ENOUGH DATA",
}
POINTS = ["N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW"]
SAYS_YES, SAYS_NO = {"day after", "second day"}, {"ahead", "no front"}


class Made:
    """A log built with the hourly file of the demo season: its report and its tables."""

    def __init__(self, log: Path, folder: Path) -> None:
        copy = folder / "season.xlsx"
        copy.write_bytes(log.read_bytes())
        built, self.tables = built_with(copy, [make.SAMPLES / make.HOURLY])
        self.path = built.job.report
        self.book: Workbook = openpyxl.load_workbook(self.path, data_only=True)

    def csv(self, name: str) -> list[Row]:
        return read_rows(self.tables / f"{name}.csv")

    def below(self, sheet: str, heading: str) -> Iterator[dict[str, object]]:
        """Yield the rows under the first row that holds a heading, down to a blank line or a note."""
        rows = list(self.book[sheet].iter_rows(values_only=True))
        top = next(place for place, row in enumerate(rows) if heading in row)
        for row in rows[top + 1 :]:
            if row[0] is None or not any(row[1:]):
                return
            yield {str(name): cell for name, cell in zip(rows[top], row, strict=True) if name is not None}

    def text(self, sheet: str) -> str:
        rows = self.book[sheet].iter_rows(values_only=True)
        return " ".join(str(cell) for row in rows for cell in row if cell is not None)


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Made:
    return Made(make.SAMPLES / make.CLEAN, tmp_path_factory.mktemp("us"))


@pytest.fixture(scope="module")
def metric(tmp_path_factory: pytest.TempPathFactory) -> Made:
    return Made(make.SAMPLES / make.METRIC, tmp_path_factory.mktemp("metric"))


def number(text: str) -> float | None:
    return float(text) if text else None


def shown(page: object, text: str, factor: float) -> bool:
    """Whether a cell shows a number of the table in its own unit: blank where the table is."""
    if not text:
        return page is None
    return isinstance(page, int | float) and page == pytest.approx(float(text) * factor, abs=2e-6)


def day_rows(made: Made) -> Iterator[tuple[dict[str, object], Row]]:
    page = list(made.below("Front days by date", "Tool's verdict"))
    table = {row["date"]: row for row in made.csv("front_days")}
    assert len(page) > 50
    for line in page:
        assert isinstance(line["Date"], dt.datetime)
        yield line, table.pop(f"{line['Date']:%Y-%m-%d}")
    # A date without a source, a call or a trip is not worth a row.
    assert {(row["source"], row["call"], row["fished"]) for row in table.values()} <= {("", "", "false")}


def test_calendar_has_the_word_the_flag_and_the_trip_of_every_date(made: Made) -> None:
    sheet = made.book["Front days"]
    top = next(row[0].row for row in sheet.iter_rows() if row[0].value == "Week of")
    days = {dt.date.fromisoformat(row["date"]): row for row in made.csv("front_days")}
    seen = set()
    for week in sheet.iter_rows(min_row=top + 1, max_col=8):
        monday = week[0].value
        if not isinstance(monday, dt.datetime):
            break
        assert monday.weekday() == 0
        for place, cell in enumerate(week[1:]):
            date = monday.date() + dt.timedelta(days=place)
            if date not in days:
                assert cell.value is None
                continue
            row = days[date]
            weak = " w" if row["verdict"] == "yes_weak" else ""
            words = [str(date.day), WORDS[row["day_type"]] + weak, "•" if row["fished"] == "true" else ""]
            assert str(cell.value).split("  ") == [word for word in words if word]
            assert bool(cell.font.b) is row["verdict"].startswith("yes")
            seen.add(date)
    assert seen == set(days)


def test_calendar_says_what_its_signs_mean(made: Made) -> None:
    text = made.text("Front days")
    for sign in ("fished", "Dark", "weak", "?: not enough data"):
        assert sign in text


def test_row_a_day_says_what_the_table_says(made: Made) -> None:
    letters = {"P": "pressure", "W": "wind", "T": "air", "D": "dew", "S": "sky"}
    for line, row in day_rows(made):
        assert line["Fished"] == ("yes" if row["fished"] == "true" else None)
        assert line["Tool's verdict"] == VERDICTS[row["verdict"]]
        assert line["Final word"] == VERDICTS.get(row["final"], row["final"])
        assert WORDS[row["day_type"]] in str(line["Day"])
        assert [line[letter] for letter in letters] == [
            number(row[f"{leg}_points"]) for leg in letters.values()
        ]
        assert line["All"] == number(row["points"])


def test_changes_are_in_the_units_of_the_log_without_an_offset(made: Made) -> None:
    for line, row in day_rows(made):
        assert shown(line["Air change (°F)"], row["air_change_c"], 1.8)
        assert shown(line["Dew point change (°F)"], row["dew_point_change_c"], 1.8)
        assert shown(line["Pressure change (inHg)"], row["pressure_change_hpa"], 1 / INCH_HPA)
        assert shown(line["Pressure (inHg)"], row["pressure_hpa"], 1 / INCH_HPA)
        assert shown(line["Your water change (°F)"], row["water_temp_change_c"], 1.8)


def test_metric_log_shows_hectopascals_and_celsius(metric: Made) -> None:
    for line, row in day_rows(metric):
        assert shown(line["Air change (°C)"], row["air_change_c"], 1)
        assert shown(line["Pressure change (hPa)"], row["pressure_change_hpa"], 1)
        assert not [heading for heading in line if "inHg" in heading or "°F" in heading]
    tendencies = [str(line["Barometer, 3 h before the start"]) for line in metric.below("Trips", "Rod-hours")]
    assert [text for text in tendencies if text.endswith(" hPa")]
    assert "inHg" not in " ".join(tendencies)


def compass(text: str) -> str:
    return POINTS[round(float(text) / 22.5) % 16] if text else "–"


def test_wind_is_a_turn_from_one_compass_point_to_another(made: Made) -> None:
    turns = set()
    for line, row in day_rows(made):
        before, after = row["wind_before_deg"], row["wind_after_deg"]
        assert line["Wind, before → after"] == (
            f"{compass(before)} → {compass(after)}" if before or after else None
        )
        turns.add(line["Wind, before → after"])
    assert "SW → NW" in turns


def test_passage_is_about_an_hour_of_the_local_clock(made: Made) -> None:
    told = 0
    for line, row in day_rows(made):
        if not row["passage_time_utc"]:
            assert line["Front passed"] is None
            continue
        local = dt.datetime.fromisoformat(row["passage_time_utc"]).astimezone(ZONE)
        assert line["Front passed"] == f"{local:%b} {local.day}, about {local:%H:%M}"
        told += 1
    assert told > 50


def test_agreement_is_a_recount_of_fished_dates(made: Made) -> None:
    calls: dict[str, set[str]] = {}
    for trip in made.csv("trips"):
        if trip["status"] not in ("cancelled", "void"):
            calls.setdefault(trip["date"], set()).add(trip["front_call"])
    counts: Counter[tuple[bool, bool]] = Counter()
    left: Counter[str] = Counter()
    for row in made.csv("front_days"):
        if row["fished"] == "true":
            count_date(calls[row["date"]] - {""}, row, counts, left)
    yes, no = list(made.below("Front days", "Tool: yes"))[:2]
    assert (yes["Tool: yes"], yes["Tool: no"]) == (counts[True, True], counts[True, False])
    assert (no["Tool: yes"], no["Tool: no"]) == (counts[False, True], counts[False, False])
    text = made.text("Front days")
    assert f"{sum(counts.values())} dates compared" in text
    said = re.search(r"Fished dates left out: ([^.]*)\.", text)
    assert said is not None
    assert {part.split(" ", 1)[1]: int(part.split()[0]) for part in said[1].split("; ")} == left


def count_date(call: set[str], row: Row, counts: Counter[tuple[bool, bool]], left: Counter[str]) -> None:
    """Put a fished date into the two by two, or say why it is left out."""
    if len(call) > 1:
        left["trips of one date with different calls"] += 1
    elif not call:
        left["no call written"] += 1
    elif not call <= SAYS_YES | SAYS_NO:
        left[f"call: {min(call)}"] += 1
    elif row["day_type"] == "passing":
        left["tool: front passed that day"] += 1
    elif row["verdict"] in ("not_enough_data", "possible"):
        left[f"tool: {row['verdict'].replace('_', ' ')}"] += 1
    else:
        counts[call <= SAYS_YES, row["verdict"].startswith("yes")] += 1


def test_agreement_on_yes_is_twice_both_over_all_that_either_says(made: Made) -> None:
    yes, no = list(made.below("Front days", "Tool: yes"))[:2]
    both, call_only, tool_only = (int(str(n)) for n in (yes["Tool: yes"], yes["Tool: no"], no["Tool: yes"]))
    positive = round(100 * 2 * both / (2 * both + call_only + tool_only))
    assert f"agreement on yes {positive} %" in made.text("Front days")


def test_pressure_through_the_season_is_a_chart_with_a_title_over_both_columns(made: Made) -> None:
    with zipfile.ZipFile(made.path) as archive:
        charts = [archive.read(name).decode() for name in archive.namelist() if "charts/chart" in name]
    (chart,) = [text for text in charts if "'Front days by date'!" in text]
    assert "Pressure through the season" in chart
    (head,) = [row for row in made.book["Front days by date"].iter_rows() if row[3].value == "Tool's verdict"]
    columns = {str(cell.value): cell.column_letter for cell in head}
    first, last = head[0].row + 1, head[0].row + len(list(day_rows(made)))
    for heading in ("Date", "Pressure (inHg)", "Of flagged days"):
        assert f"'Front days by date'!${columns[heading]}${first}:${columns[heading]}${last}" in chart


def test_marks_of_the_chart_stand_on_flagged_days_alone(made: Made) -> None:
    for line, row in day_rows(made):
        flagged = row["verdict"].startswith("yes")
        assert line["Of flagged days"] == (line["Pressure (inHg)"] if flagged else None)


def test_sheet_says_what_it_rests_on(made: Made) -> None:
    days = made.csv("front_days")
    rows = (
        [cell for cell in row if cell is not None]
        for row in made.book["Front days"].iter_rows(max_row=12, values_only=True)
    )
    figures = {row[0]: row[1] for row in rows if len(row) > 1}
    assert figures["Dates flagged: day 1 or 2 behind a front"] == sum(
        row["verdict"].startswith("yes") for row in days
    )
    assert figures["Dates by hourly weather"] == sum(row["source"] == "hourly" for row in days)
    assert figures["Dates by a line a day"] == sum(row["source"] == "daily" for row in days)
    assert make.HOURLY in made.text("Front days")


def test_caution_stands_on_the_sheet_and_defers_to_the_local_authority(made: Made) -> None:
    text = made.text("Front days")
    for words in ("Caution:", "not a forecast", "local", "authority", "come first", "Thunder", "life jacket"):
        assert words in text
    assert "No published standard" in text
