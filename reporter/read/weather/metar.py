"""Reports as they were sent (METAR and SPECI), one a line, as the same columns that a table gives."""

import math
import re
import warnings
from pathlib import Path
from typing import TYPE_CHECKING

from reporter.read.weather.raw import LeftOut, RawWeather
from reporter.read.weather.report_lines import Report, report_times, split_reports
from reporter.schema.units import Unit, find_unit
from reporter.schema.weather_files.airports import METAR
from reporter.schema.weather_files.form import Key

if TYPE_CHECKING:
    from metar.Metar import Metar

_HECTOPASCALS = re.compile(r"\sQ(?:NH)?\s?\d{4}")
_FIRST_SHOWN = 60  # letters of a line that was left out
_ANY_MONTH = (2000, 1)  # has every day that a report can name

_HEADINGS: dict[Key, str] = {
    "temperature": "temperature",
    "dew_point": "dew point",
    "wind_from": "wind direction",
    "wind_speed": "wind speed",
    "altimeter": "altimeter",
    "sea_level": "sea level pressure",
    "cloud": "cloud",
}
"""What is decoded from a report, and what a problem calls it."""


def read_metar(path: Path, sha256: str, lines: list[str]) -> RawWeather:
    """Read report lines; those that are no report are left out."""
    reports, left = split_reports(lines)
    columns: dict[Key, list[str]] = {key: [] for key in _HEADINGS}
    kept = []
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # of groups that the decoder does not know
        for report in reports:
            values = _decoded(report)
            if values is None:
                left.append((report.number, report.text))
                continue
            kept.append(report)
            for key, text in values.items():
                columns[key].append(text)
    columns |= _identity(kept) | report_times(kept, path.name)
    return RawWeather(
        path=path,
        name=path.name,
        sha256=sha256,
        format=METAR,
        columns=columns,
        headings={key: _HEADINGS.get(key, "") for key in columns},
        units={},
        lines=[report.number for report in kept],
        station="",
        elevation_m=math.nan,
        zone="",
        left_out=_left_out(sorted(left)),
    )


def _left_out(left: list[tuple[int, str]]) -> tuple[LeftOut, ...]:
    if not left:
        return ()
    numbers = [number for number, _ in left]
    return (LeftOut("that I cannot read as a report", numbers, left[0][1][:_FIRST_SHOWN]),)


def _identity(reports: list[Report]) -> dict[Key, list[str]]:
    return {
        "station": [report.station for report in reports],
        "report_type": [report.type for report in reports],
        "report": [report.text for report in reports],
    }


def _decoded(report: Report) -> dict[Key, str] | None:
    """Decode a report into text by column, "" where missing; None where it is none."""
    from metar.Metar import Metar

    year, month = _ANY_MONTH
    try:
        return _values(Metar(report.text, month=month, year=year, strict=False), report.text)
    except Exception:  # the decoder can fail at any depth on what is no report
        return None


def _values(report: "Metar", text: str) -> dict[Key, str]:
    wind = report.wind_speed is not None
    return {
        "temperature": "" if report.temp is None else f"{report.temp.value('C'):.1f}",
        "dew_point": "" if report.dewpt is None else f"{report.dewpt.value('C'):.1f}",
        "wind_from": f"{report.wind_dir.value():.0f}" if report.wind_dir else "VRB" if wind else "",
        "wind_speed": f"{report.wind_speed.value('KT'):.3f}" if report.wind_speed else "",
        "altimeter": _altimeter(report, text),
        "sea_level": "" if report.press_sea_level is None else f"{report.press_sea_level.value('MB'):.1f}",
        "cloud": " ".join(layer[0] for layer in report.sky),
    }


def _altimeter(report: "Metar", text: str) -> str:
    """Return the altimeter setting in hPa, in which some countries send it; others send inHg."""
    if report.press is None:
        return ""
    if _HECTOPASCALS.search(text):
        return f"{report.press.value('MB'):.1f}"
    return f"{_inches().inside(report.press.value('IN')):.3f}"


def _inches() -> Unit:
    unit = find_unit("pressure", "inHg")
    assert unit is not None  # noqa: S101 - a unit of the catalogue
    return unit
