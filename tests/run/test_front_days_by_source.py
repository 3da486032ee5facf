"""The demo season by one source at a time, and turned round into the other hemisphere."""

import datetime as dt
from collections import Counter
from collections.abc import Callable, Sequence
from pathlib import Path

import openpyxl
import pytest
from openpyxl.workbook import Workbook

from reporter.run.build import Built
from tests.conftest import WriteLog, clean_sheets
from tests.demo import make
from tests.demo.log import demo_log
from tests.demo.weather import FIRST_DAY
from tests.run.test_weather_by_hand import Row, built_with, front_hours, read_rows, verdicts, write_hours

HOURLY = make.SAMPLES / make.HOURLY
Change = Callable[[Workbook], None]
Made = tuple[Built, list[Row], Path]


def unchanged(_book: Workbook) -> None:
    pass


def without_weather(book: Workbook) -> None:
    del book["Weather"]


def mirrored(degrees: float) -> float:
    return (180 - degrees) % 360


def southern(book: Workbook) -> None:
    """Put the log as far south, with north and south of every wind changed round."""
    for sheet in ("Trips", "Conditions", "Weather"):
        (column,) = [cell.column for cell in book[sheet][1] if cell.value == "Wind from"]
        for (cell,) in book[sheet].iter_rows(min_row=2, min_col=column, max_col=column):
            if cell.value in ("light", "calm", "variable", None):
                continue
            cell.value = str(cell.value).translate(str.maketrans("NS", "SN"))
    for name, value in book["Season"].iter_rows(min_row=2, max_col=2):
        if name.value == "Latitude":
            value.value = -value.value


def southern_hours(path: Path) -> Path:
    rows = read_rows(HOURLY)
    for row in rows:
        if row["drct"] != "M" and row["sknt"] != "0":
            row["drct"] = str(int(mirrored(int(row["drct"]))) or 360)
    return write_hours(path, rows)


def made(folder: Path, change: Change, weather: Sequence[Path] = ()) -> Made:
    book = openpyxl.load_workbook(make.SAMPLES / make.CLEAN)
    change(book)
    log = folder / "season.xlsx"
    book.save(log)
    built, tables = built_with(log, weather)
    return built, read_rows(tables / "front_days.csv"), tables


@pytest.fixture(scope="module")
def northern_days(tmp_path_factory: pytest.TempPathFactory) -> Made:
    return made(tmp_path_factory.mktemp("north"), unchanged, [HOURLY])


@pytest.fixture(scope="module")
def sheet_alone(tmp_path_factory: pytest.TempPathFactory) -> Made:
    return made(tmp_path_factory.mktemp("sheet"), unchanged)


@pytest.fixture(scope="module")
def neither(tmp_path_factory: pytest.TempPathFactory) -> Made:
    return made(tmp_path_factory.mktemp("neither"), without_weather)


def test_sheet_weather_alone_decides_every_date_without_an_hour_of_passage(sheet_alone: Made) -> None:
    _, days, _ = sheet_alone
    assert {row["source"] for row in days} == {"daily"}
    assert {row["passage_time_utc"] for row in days} == {""}
    assert "passing" not in {row["day_type"] for row in days}
    assert {row["hourly_verdict"] for row in days} == {""}


def test_sheet_weather_alone_flags_most_days_behind_a_front_that_was_made(sheet_alone: Made) -> None:
    _, days, _ = sheet_alone
    since = demo_log().season.weather.since
    dates = [FIRST_DAY + dt.timedelta(days=place) for place in range(len(since))]
    behind = {f"{date}" for date, count in zip(dates, since, strict=True) if count in (1, 2)}
    flagged = {row["date"] for row in days if row["verdict"].startswith("yes")}
    assert len(flagged & behind) / len(flagged) > 0.9
    assert len(flagged & behind) / len(behind) > 0.8


def test_without_weather_and_hours_nearly_no_date_is_known(neither: Made) -> None:
    _, days, _ = neither
    unknown = Counter(row["verdict"] for row in days)["not_enough_data"]
    assert unknown / len(days) > 0.9
    assert {row["source"] for row in days} <= {"trip", ""}
    assert {row["daily_verdict"] for row in days} == {""}


def test_report_without_weather_says_what_would_tell(neither: Made, northern_days: Made) -> None:
    built, _, _ = neither
    assert "Weather" in built.fronts
    assert "hourly weather" in built.fronts
    assert "would tell" in built.fronts
    assert "would tell" not in northern_days[0].fronts


def test_southern_mirror_of_a_season_has_the_same_days(northern_days: Made, tmp_path: Path) -> None:
    _, south, _ = made(tmp_path, southern, [southern_hours(tmp_path / HOURLY.name)])
    turned = {"wind_before_deg", "wind_after_deg"}
    for here, there in zip(northern_days[1], south, strict=True):
        assert {k: v for k, v in there.items() if k not in turned} == {
            k: v for k, v in here.items() if k not in turned
        }
        for column in turned:
            assert bool(here[column]) == bool(there[column])
            if here[column]:
                apart = (float(there[column]) - mirrored(float(here[column])) + 180) % 360 - 180
                assert apart == pytest.approx(0, abs=1e-5)


@pytest.mark.parametrize(("latitude", "fronts"), [(36, 2), (-36, 0)])
def test_northern_front_is_none_in_a_southern_log(latitude: int, fronts: int, write_log: WriteLog) -> None:
    log = write_log({"Season": [*clean_sheets()["Season"][:-1], ["Latitude", latitude]]})
    _, tables = built_with(log, [write_hours(log.parent / "hours.csv", front_hours())])
    hourly = verdicts(tables, "hourly_verdict").values()
    assert sum(verdict.startswith("yes") for verdict in hourly) == fronts


@pytest.mark.parametrize(("latitude", "said"), [(22, True), (-22, True), (24, False)])
def test_log_from_the_tropics_is_told_that_the_rules_are_not_for_there(
    latitude: int, said: bool, write_log: WriteLog
) -> None:
    log = write_log({"Season": [*clean_sheets()["Season"][:-1], ["Latitude", latitude]]})
    built, _ = built_with(log, [])
    page = openpyxl.load_workbook(built.job.report)["Front days"]
    text = " ".join(str(cell) for row in page.iter_rows(values_only=True) for cell in row if cell)
    assert ("tropics" in text) is said
