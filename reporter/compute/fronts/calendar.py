"""A calendar of dates: what each was by one source, filled by precedence."""

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from reporter.schema.fronts import LEGS, DayType, Verdict

DateArray = NDArray[np.datetime64]

PRECEDENCE: tuple[DayType, ...] = (
    "passing",
    "day_1",
    "day_2",
    "ahead",
    "behind_low",
    "possible",
    "day_3",
    "ordinary",
    "not_known",
)
"""Which word stands where a date could have several: a new front restarts the count, and what the weather
shows goes before mere counting."""

CHANGES = ("pressure_change_hpa", "wind_before_deg", "wind_after_deg", "air_change_c", "dew_point_change_c")
POINTS = tuple(f"{leg}_points" for leg in LEGS)
EVIDENCE = (*POINTS, "points", *CHANGES)
"""Columns of the evidence: points by sign and in all, measured changes; NaN where not known."""

TAKEN = ("passage", *EVIDENCE)
"""What stands beside a date's word: passage is datetime64[s], UTC, NaT where not known. Each calendar has a
column remark (a Remark) too."""

ONE_DAY = np.timedelta64(1, "D")


class Label(NamedTuple):
    """A word for a date, where it comes from: which front (its place in a list; -1 none), how sure."""

    date: np.datetime64
    day_type: DayType
    front: int = -1
    verdict: str = ""


def spell(day_1: np.datetime64, front: int, verdict: str, *, recovered: bool) -> list[Label]:
    """Return the days behind a front: day 1, and day 2 and 3 unless the weather had recovered by day 2."""
    labels = [Label(day_1, "day_1", front, verdict)]
    if not recovered:
        labels.append(Label(day_1 + ONE_DAY, "day_2", front, verdict))
        labels.append(Label(day_1 + 2 * ONE_DAY, "day_3", front))
    return labels


def calendar(dates: DateArray, own: Sequence[str], labels: Sequence[Label]) -> pd.DataFrame:
    """Return one row a date: date, verdict, day_type, front (place of the front that the word is about; -1).

    own: each date's verdict without any front near: no or not_enough_data (or possible). A front's days 1
    and 2 have its verdict, even where the next front passes on one of them and gives the date its word. What
    is behind a low or possible is possible; any other word leaves the date's own verdict.
    """
    rank = {day_type: place for place, day_type in enumerate(PRECEDENCE)}
    place_of = {date: place for place, date in enumerate(dates)}
    words: list[Label | None] = [None] * len(dates)
    verdicts = list(own)
    # Of two fronts with the same word for a date the later one is the nearer.
    for label in sorted(labels, key=lambda label: (-rank[label.day_type], label.front)):
        place = place_of.get(label.date)
        if place is not None:
            words[place] = label
            verdicts[place] = label.verdict or _VERDICT_OF.get(label.day_type, verdicts[place])
    types = [
        word.day_type if word else _TYPE_OF.get(verdict, "not_known")
        for word, verdict in zip(words, own, strict=True)
    ]
    fronts = [word.front if word else -1 for word in words]
    return pd.DataFrame({"date": dates, "verdict": verdicts, "day_type": types, "front": fronts})


_TYPE_OF: dict[str, DayType] = {"no": "ordinary", "possible": "possible"}
_VERDICT_OF: dict[DayType, Verdict] = {"behind_low": "possible", "possible": "possible"}
