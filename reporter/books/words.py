"""Numbers in plain words, the same on every page and in the terminal."""

import datetime as dt
import math

from reporter.schema.units import System

RESTS_ON: dict[str, str] = {
    "own_trips": "own trips",
    "borrowed": "borrowed spread",
    "assumed": "assumed spread",
    "none_caught": "none caught",
    "": "no effort",
}
"""What a range rests on, by its rule."""

RESTS_ON_HELP = (
    "own trips: how far its own trips differ. borrowed spread: few trips, so how far those of your other "
    "techniques differ. assumed spread: few trips in all, so how far trips usually differ. none caught: it "
    "could still be as high as the upper end."
)
"""What these words mean; fits a note."""

OF_TWENTY = "Ranges at 95 %: of 20 such ranges about 19 take in what is really so."
"""What a range at 95 % is, under a table that has some."""


_TENTHS_BELOW = 100  # rod-hours


def span(hours: float) -> str:
    """Return hours as 1 h 25, or 40 min below an hour."""
    minutes = round(hours * 60)
    if minutes < 60:
        return f"{minutes} min"
    return f"{minutes // 60} h {minutes % 60:02d}"


def one_fish_every(rate: float) -> str:
    """Return the rod-hours that a fish takes, as 1 h 25; nothing without a rate above 0."""
    return span(1 / rate) if rate > 0 else ""


def number(value: float, decimals: int = 0) -> str:
    """Return a number with thousands separated, or a dash where there is none."""
    return f"{value:,.{decimals}f}" if math.isfinite(value) else "-"


def counted(count: float, singular: str, plural: str = "") -> str:
    """Return "1 trip", "1,204 trips"."""
    return f"{number(count)} {singular if round(count) == 1 else plural or singular + 's'}"


def rod_hours_words(hours: float) -> str:
    """Return "1 rod-hour", "4.5 rod-hours", "1,204 rod-hours": to a tenth while that is of any weight."""
    shown = round(hours, 1 if hours < _TENTHS_BELOW else 0)
    return f"{number(shown, int(shown % 1 > 0))} {'rod-hour' if shown == 1 else 'rod-hours'}"


def share(part: float, whole: float) -> str:
    """Return part of whole as a whole percentage, a dash where there is no whole."""
    return f"{round(100 * part / whole)} %" if whole > 0 else "-"


def day_words(day: dt.date, system: System) -> str:
    """Return a day as people of these units write it."""
    if system == "us":
        return f"{day:%a %b} {day.day}, {day.year}"
    return f"{day:%a} {day.day} {day:%b %Y}"
