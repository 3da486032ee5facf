"""What one station saw, hour by hour."""

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal, NamedTuple

from reporter.schema.problems import Problem

if TYPE_CHECKING:
    import pandas as pd

PressureKind = Literal["altimeter", "station", "sea level", ""]
"""Which pressure a station's numbers are: never mixed, as they differ by more than a front. "": none."""


@dataclass(frozen=True, slots=True)
class StationHours:
    """The observations of one station, from one or several files of one kind of pressure.

    source: name of the file (the first one), format: of what kind it is, in words; zone_from: what said in
    which zone its times are, in words. elevation_m is NaN where the file does not say.
    table: one row an hour that has an observation, ascending, no hour twice: `hour` (datetime64[s], UTC, the
    nearest whole hour), `temp_c`, `dew_point_c`, `wind_u_ms`, `wind_v_ms` (components of where the wind blows
    to: u = -s sin d, v = -s cos d; calm is 0, 0; both NaN where direction or speed is unknown),
    `pressure_hpa` (of the one kind), `cloud_oktas` (greatest layer, 0 to 8); float, NaN where not known.
    fropa: times (datetime64[s], UTC, ascending) at which an observer wrote that a front had passed.
    """

    source: str
    station: str
    format: str
    zone_from: str
    pressure_kind: PressureKind
    elevation_m: float
    table: "pd.DataFrame"
    fropa: "pd.Series"


@dataclass(frozen=True, slots=True)
class WeatherFile:
    """What became of a file: its stations, the one with most hours first, its problems and its lines.

    lines = hours + same_hour (in an hour that has a better line) + empty (without a value) + summaries (of
    days or months) + set_aside. Where no line could be used all are set aside.
    """

    name: str
    sha256: str
    stations: "tuple[StationHours, ...]"
    problems: tuple[Problem, ...]
    lines: int
    hours: int = 0
    same_hour: int = 0
    empty: int = 0
    summaries: int = 0

    @property
    def set_aside(self) -> int:
        """Lines that a problem names."""
        return self.lines - self.hours - self.same_hour - self.empty - self.summaries


class HourlyFiles(NamedTuple):
    """Hourly weather of a run for one log: the files one by one, and their stations joined."""

    files: tuple[WeatherFile, ...] = ()
    stations: tuple[StationHours, ...] = ()

    @property
    def problems(self) -> tuple[Problem, ...]:
        """What was found wrong with them."""
        return tuple(found for file in self.files for found in file.problems)
