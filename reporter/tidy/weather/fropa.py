"""Times at which an observer wrote that a front had passed: WSHFT and FROPA in a report's remarks."""

import re

import numpy as np
import pandas as pd

from reporter.tidy.weather.said import Times

_SHIFT = re.compile(r"\bWSHFT\s+([01]\d|2[0-3])?([0-5]\d)\s+FROPA\b")
_DAY, _HOUR = 1440, 60


def fronts_in(reports: list[str], utc: Times) -> pd.Series:
    """Return the times of fronts in some reports (datetime64[s], UTC, ascending, each once).

    The remark gives hour and minute, or the minute alone; both are the last such time before the report. Wind
    shift group: FMH-1 (1995), 12.7.1.e.
    """
    found = [
        _moment(shift, moment)
        for report, moment in zip(reports, utc, strict=True)
        if "FROPA" in report and not np.isnat(moment) and (shift := _SHIFT.search(report))
    ]
    return pd.Series(np.unique(np.array(found, dtype="datetime64[s]")), name="fropa")


def _moment(shift: re.Match[str], report: np.datetime64) -> np.datetime64:
    minute = int(report.astype("datetime64[m]").astype(int))
    written = int(shift[1] or 0) * _HOUR + int(shift[2])
    before = (minute - written) % (_DAY if shift[1] else _HOUR)
    return np.datetime64((minute - before) * 60, "s")
