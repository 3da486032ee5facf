"""How far the guide's calls and the tool's verdicts agree."""

import math
from collections.abc import Mapping
from statistics import NormalDist
from typing import NamedTuple

import pandas as pd

from reporter.schema.fronts import (
    CALL_NO,
    CALL_YES,
    FLAGGED,
    MIN_KAPPA_DATES,
    MIN_KAPPA_MARGIN,
)
from reporter.schema.thresholds import LEVEL

LEFT_OUT: dict[str, str] = {
    "no_call": "no call written",
    "cannot_say": "call: can't say",
    "front_today": "call: front today",
    "calls_differ": "trips of one date with different calls",
    "not_enough_data": "tool: not enough data",
    "possible": "tool: possible",
    "passing": "tool: front passed that day",
}
"""Why a fished date is left out of the comparison, in the order in which a date is asked."""


class Kappa(NamedTuple):
    """Cohen's kappa with its 95 % interval."""

    kappa: float
    low: float
    high: float


class Agreement(NamedTuple):
    """Dates on which call and verdict both say yes or no. left_out: reason (see LEFT_OUT) -> dates.

    both_yes, call_only (call yes, tool no), tool_only, both_no: numbers of dates.
    """

    both_yes: int
    call_only: int
    tool_only: int
    both_no: int
    left_out: Mapping[str, int]

    @property
    def dates(self) -> int:
        """Dates compared."""
        return self.both_yes + self.call_only + self.tool_only + self.both_no

    @property
    def share(self) -> float:
        """Share of dates that agree, NaN without dates."""
        return (self.both_yes + self.both_no) / self.dates if self.dates else math.nan

    @property
    def positive(self) -> float:
        """Positive agreement 2a / (2a + b + c): of the yes of either, how far the other says yes too."""
        yes = 2 * self.both_yes + self.call_only + self.tool_only
        return 2 * self.both_yes / yes if yes else math.nan

    @property
    def enough(self) -> bool:
        """Whether there are dates enough, in all and on every side, for kappa to mean something."""
        sides = (
            self.both_yes + self.call_only,
            self.tool_only + self.both_no,
            self.both_yes + self.tool_only,
            self.call_only + self.both_no,
        )
        return self.dates >= MIN_KAPPA_DATES and min(sides) >= MIN_KAPPA_MARGIN


def cohen_kappa(both_yes: int, first_only: int, second_only: int, both_no: int) -> Kappa:
    """Return kappa of two raters who say yes or no, with its large-sample 95 % interval.

    Source: Cohen 1960, Educ. Psychol. Meas. 20:37-46; variance: Fleiss, Cohen & Everitt 1969, Psychol. Bull.
    72:323-327 (both from memory). NaN where all answers are alike.
    """
    dates = both_yes + first_only + second_only + both_no
    a, b, c, d = (count / dates for count in (both_yes, first_only, second_only, both_no))
    yes_1, yes_2 = a + b, a + c
    agree, chance = a + d, yes_1 * yes_2 + (1 - yes_1) * (1 - yes_2)
    if chance == 1.0:
        return Kappa(math.nan, math.nan, math.nan)
    kappa = (agree - chance) / (1 - chance)
    straight = a * (1 - (yes_1 + yes_2) * (1 - kappa)) ** 2 + d * (1 - (2 - yes_1 - yes_2) * (1 - kappa)) ** 2
    crossed = (1 - kappa) ** 2 * (b * (yes_2 + 1 - yes_1) ** 2 + c * (yes_1 + 1 - yes_2) ** 2)
    variance = (straight + crossed - (kappa - chance * (1 - kappa)) ** 2) / (dates * (1 - chance) ** 2)
    reach = NormalDist().inv_cdf((1 + LEVEL) / 2) * math.sqrt(max(variance, 0.0))
    return Kappa(kappa, kappa - reach, kappa + reach)


def agreement(days: pd.DataFrame) -> Agreement:
    """Compare the fished dates of a table with call, calls_differ, verdict and day_type."""
    fished = days[days["fished"]]
    why = _left_out(fished)
    kept = fished[why == ""]
    call, tool = kept["call"].isin(CALL_YES), kept["verdict"].isin(FLAGGED)
    counts = why[why != ""].value_counts()
    return Agreement(
        both_yes=int((call & tool).sum()),
        call_only=int((call & ~tool).sum()),
        tool_only=int((~call & tool).sum()),
        both_no=int((~call & ~tool).sum()),
        left_out={reason: int(counts[reason]) for reason in LEFT_OUT if reason in counts.index},
    )


def _left_out(days: pd.DataFrame) -> pd.Series:
    """Return why each date is left out, "" where it is not."""
    call, verdict = days["call"], days["verdict"]
    why = pd.Series("", index=days.index)
    asked = {
        "calls_differ": days["calls_differ"],
        "no_call": (call == "") & ~days["calls_differ"],
        "front_today": call == "front today",
        "cannot_say": ~call.isin([*CALL_YES, *CALL_NO, "front today", ""]),
        "passing": days["day_type"] == "passing",
        "not_enough_data": verdict == "not_enough_data",
        "possible": verdict == "possible",
    }
    for reason, holds in asked.items():
        why = why.mask((why == "") & holds, reason)
    return why
