"""Trips of which another layout knows the hours, not the end."""

from reporter.schema.own_layout import HOURS_FISHED
from reporter.tidy.moments import MINUTES_A_DAY
from reporter.tidy.settings import Settings
from reporter.tidy.sheet import TidySheet


def fill_ends(tidy: TidySheet, settings: Settings) -> None:
    """Put the end where a trip has none: its start, or the usual one, and the hours fished."""
    hours = tidy.columns.get(HOURS_FISHED.key)
    if hours is None:
        return
    starts, ends = tidy.columns["start"], tidy.columns["end"]
    for index, fished in enumerate(hours):
        start = settings["usual_start"] if starts[index] is None else starts[index]
        if ends[index] is None and start is not None and fished:
            ends[index] = (start + fished * 60) % MINUTES_A_DAY
