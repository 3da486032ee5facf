"""Hours from dock to dock."""

import numpy as np
import pandas as pd

from reporter.schema.thresholds import LONGEST_WRAP_HOURS
from reporter.tidy.moments import MINUTES_A_DAY


def dock_hours(trips: pd.DataFrame) -> pd.Series:
    """Return the hours from Left dock to Back at dock; NaN where one is blank or does not fit the trip.

    trips: left_dock, back_at_dock (minutes of a clock), begin_min, end_min (lines in and out, minutes after
    the first midnight). Left dock is the last such clock time before lines went in, back at dock the first
    after they came out. A clock time between the two, or more than 12 hours at both ends together, is a slip.
    """
    begin, end = trips["begin_min"], trips["end_min"]
    before = (begin - trips["left_dock"]) % MINUTES_A_DAY
    after = (trips["back_at_dock"] - end) % MINUTES_A_DAY
    fits = before + after <= LONGEST_WRAP_HOURS * 60
    if len(trips):
        fits &= ~_inside(trips["left_dock"], begin, end) & ~_inside(trips["back_at_dock"], begin, end)
    return ((before + end - begin + after) / 60).where(fits)


def _inside(clock: pd.Series, begin: pd.Series, end: pd.Series) -> np.ndarray:
    """Whether a clock time lies between lines in and out of a trip of less than a day."""
    later = clock + MINUTES_A_DAY
    within = ((begin < clock) & (clock < end)) | ((begin < later) & (later < end))
    return (within & (end - begin < MINUTES_A_DAY)).to_numpy()
