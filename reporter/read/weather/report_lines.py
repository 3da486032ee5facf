"""Report lines taken apart: what stands before a report, when it was made, its text."""

import datetime as dt
import re
from collections.abc import Iterator
from dataclasses import dataclass

from reporter.read.weather.months import nearest_month, roll_months
from reporter.schema.weather_files.form import Key

_DAY_TIME = r"(?:0[1-9]|[12]\d|3[01])(?:[01]\d|2[0-3])[0-5]\d"
_DATE = (
    r"(?P<year>\d{4})[-/]?(?P<month>\d\d)[-/]?(?P<day>\d\d)[T ]?(?P<hour>\d\d):?(?P<minute>\d\d)"
    r"(?::\d\d(?:\.\d+)?)?\s*(?:Z|UTC|[+-]\d\d:?\d\d)?"
)
_DATE_ALONE = re.compile(rf"\s*{_DATE}\s*")
_REPORT = re.compile(
    rf"\s*(?:{_DATE}[\s,;]\s*)?(?:(?P<type>METAR|SPECI)\s+)?(?P<cor>COR\s+)?"
    rf"(?P<station>[A-Z][A-Z0-9]{{3}})\s+(?P<day_time>{_DAY_TIME})Z\s+(?P<rest>.*\S)\s*"
)
_IN_NAME = re.compile(r"(?<!\d)((?:19|20)\d\d)[-_]?(0[1-9]|1[0-2])(?:[-_]?[0-3]\d)?(?!\d)")


@dataclass(slots=True)
class Report:
    """A report: number of its line, type if it says one, station, DDHHMM, the date before it, its text."""

    number: int
    type: str
    station: str
    day_time: str
    date: dt.datetime | None
    text: str


def split_reports(lines: list[str]) -> tuple[list[Report], list[tuple[int, str]]]:
    """Return the reports, with the indented lines that go on, and the numbered lines that are none."""
    reports: list[Report] = []
    left: list[tuple[int, str]] = []
    date: dt.datetime | None = None
    for number, line in enumerate(lines, start=1):
        if not line.strip() or line.startswith("#"):
            continue
        if alone := _DATE_ALONE.fullmatch(line):
            date = _date_of(alone)
        elif found := _REPORT.fullmatch(line):
            reports.append(_report(number, found, date))
            date = None
        elif line[0].isspace() and reports and not reports[-1].text.endswith("="):
            reports[-1].text += f" {line.strip()}"
        else:
            left.append((number, line.strip()))
    return reports, left


def _report(number: int, found: re.Match[str], date: dt.datetime | None) -> Report:
    kind, station, day_time = found["type"] or "", found["station"], found["day_time"]
    text = f"{kind or 'METAR'} {found['cor'] or ''}{station} {day_time}Z {found['rest']}"
    return Report(number, kind, station, day_time, _date_of(found) or date, text)


def _date_of(found: re.Match[str]) -> dt.datetime | None:
    if not found["year"]:
        return None
    year, month, day, hour, minute = (int(found[part]) for part in ("year", "month", "day", "hour", "minute"))
    try:
        return dt.datetime(year, month, day, hour, minute)
    except ValueError:
        return None


def report_times(reports: list[Report], name: str) -> dict[Key, list[str]]:
    """Return ISO times if a date before the lines or the file's name gives their month, else DDHHMM."""
    day_times = [report.day_time for report in reports]
    dates = list(_nearest_dates(reports))
    if any(dates):
        pairs = zip(day_times, dates, strict=True)
        return {"time": [nearest_month(day_time, date) if date else "" for day_time, date in pairs]}
    if in_name := _IN_NAME.search(name):
        stations = [report.station for report in reports]
        return {"time": roll_months(stations, day_times, int(in_name[1]), int(in_name[2]))}
    return {"day_time": day_times}


def _nearest_dates(reports: list[Report]) -> Iterator[dt.datetime | None]:
    """Yield each line's date; for one without, that of the last line before it, or of the first dated one."""
    latest = next((report.date for report in reports if report.date), None)
    for report in reports:
        latest = report.date or latest
        yield latest
