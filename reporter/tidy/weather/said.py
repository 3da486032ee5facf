"""Problems of one weather file, gathered while it is made typed."""

from dataclasses import dataclass, field
from typing import Any

import numpy as np
from numpy.typing import NDArray

from reporter.read.weather.raw import RawWeather
from reporter.schema.problems import Problem, problem
from reporter.schema.weather_files.form import Key

Bools = NDArray[np.bool_]
Floats = NDArray[np.float64]
Times = NDArray[np.datetime64]


@dataclass(slots=True)
class Said:
    """A weather file and what was said of it; the sheet of every problem is the file's name."""

    raw: RawWeather
    problems: list[Problem] = field(default_factory=list)

    def of_file(self, code: str, **places: Any) -> None:
        """Say something of the whole file."""
        self.problems.append(problem(code, self.raw.name, **places))

    def of_rows(self, code: str, keys: tuple[Key, ...], rows: Bools, **places: Any) -> None:
        """Say something of columns in some rows: how many, the first and its line; of no row, nothing."""
        count = int(rows.sum())
        if not count:
            return
        first = int(np.argmax(rows))
        columns = self.raw.columns
        found = " ".join(columns[key][first] for key in keys if key in columns).strip()
        line = " ".join(texts[first] for texts in columns.values() if texts[first])
        self.problems.append(
            problem(
                code,
                self.raw.name,
                row=self.raw.lines[first],
                heading=self.raw.headings.get(keys[0], ""),
                value=found or line,
                values="1 value is" if count == 1 else f"{count:,} values are",
                lines=counted(count, "line"),
                **places,
            )
        )


def counted(count: int, word: str) -> str:
    """Return a number of things in words: "1 line", "2,300 lines"."""
    return f"{count:,} {word}{'' if count == 1 else 's'}"
