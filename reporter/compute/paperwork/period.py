"""The days that a page of the paperwork is about."""

import datetime as dt
from typing import NamedTuple

import pandas as pd


class Period(NamedTuple):
    """A first and a last day, both included; None is open."""

    first: dt.date | None = None
    last: dt.date | None = None

    def holds(self, days: pd.Series) -> pd.Series:
        """Return which days (datetime64) lie in it; a day that is not known lies in none."""
        inside = days.notna()
        if self.first is not None:
            inside &= days >= pd.Timestamp(self.first)
        if self.last is not None:
            inside &= days <= pd.Timestamp(self.last)
        return inside


OPEN = Period()
