"""What is said of a hunch, in plain words."""

import math
from collections.abc import Mapping

from reporter.books.words import counted, number
from reporter.compute.hunches.read import Hunch
from reporter.compute.hunches.verdict import Result, Why
from reporter.schema.sheets.hunches import ATTRIBUTES
from reporter.schema.thresholds import (
    HALF_DAY_HOURS,
    HALF_DAY_RODS,
    MIN_MEASURED_SHARE,
    MIN_OVERLAP_SHARE,
    MIN_SHARED_FISH,
    MIN_SHARED_TRIPS,
    SETTLE_SEASONS,
)

_MEASURES = {
    "landed": "fish per rod-hour",
    "big fish": "big fish per rod-hour",
    "kept": "fish kept per rod-hour",
    "bites": "bites per rod-hour",
    "hang-ups": "hang-ups per rod-hour",
    "lures lost": "lures lost per rod-hour",
    "share landed": "share of bites landed",
    "mean length": "average length",
}
_COUNTED = {
    "landed": ("fish", "fish"),
    "big fish": ("big fish", "big fish"),
    "kept": ("kept", "kept"),
    "bites": ("bite", "bites"),
    "hang-ups": ("hang-up", "hang-ups"),
    "lures lost": ("lure lost", "lures lost"),
    "share landed": ("landed", "landed"),
}
_SHARE, _MEASURED = round(100 * MIN_OVERLAP_SHARE), round(100 * MIN_MEASURED_SHARE)
_WHY: Mapping[Why, str] = {
    "never_fished": "one of the two was never fished so, as far as the log says",
    "not_told": "the log does not say what is counted here, on one side or both",
    "not_measured": f"fewer than {_MEASURED} % of these fish were measured",
    "few_events": f"it takes {MIN_SHARED_FISH} counted on each side",
    "no_overlap": f"less than {_SHARE} % of their rod-hours were on kinds of day that both were fished on",
    "no_ratio": "nothing was counted on one side",
    "disagree": "same trips and days of the same kind disagree, often from switching when it goes slow",
    "range": "the range takes in no difference",
}


def compared(hunch: Hunch) -> str:
    """Return what is compared, as colour: dark against light, with Jerkbait, when muddy."""
    words = hunch.words
    sides = f"{words['this']} against {words['against'] or 'all else'}"
    parts = [f"{_MEASURES[hunch.measure]}, {hunch.compare}: {sides}"]
    if hunch.technique:
        parts.append(f"with {hunch.technique}")
    parts += [words[key] for key in ("when", "and") if words[key]]
    text = ", ".join(parts)
    return text[:1].upper() + text[1:]


def side_words(result: Result, side: str) -> str:
    """Return what one side rests on, as 12 fish in 30.5 rod-hours."""
    part, whole = (getattr(result, f"{name}_{side}") for name in ("part", "whole"))
    if not whole > 0:
        return "nothing to compare"
    if result.hunch.measure == "mean length":
        return f"{counted(whole, 'fish', 'fish')} measured"
    counts = counted(part, *_COUNTED[result.hunch.measure])
    if result.hunch.measure == "share landed":
        return f"{counts} of {counted(whole, 'bite')}"
    return f"{counts} in {number(whole, 1)} rod-hours"


def verdict_words(result: Result) -> str:
    """Return the verdict in a sentence, with what was left out of it."""
    out = ""
    if result.left_out:
        pairs = counted(result.left_out, "technique on a trip", "techniques on trips")
        out = f" Left out: {pairs} whose fish cannot be told apart."
    if result.verdict == "cannot_tell":
        why = _WHY.get(result.why, "")
        if result.why == "few_trips":
            why = _few_trips(result)
        elif result.why == "no_overlap" and result.evidence == "over_days":
            why = f"less than {_SHARE} % of the rod-hours were on techniques that were fished on both"
        if result.why == "range" and (result.low > 1 or result.high < 1):
            why = "days of the same kind do not bear it out"
        return f"Your record cannot tell: {why}.{out}"
    weak = " Weaker evidence: different days." if result.evidence == "over_days" else ""
    said = "Holds in your record." if result.verdict == "holds" else "Goes the other way in your record."
    return f"{said}{weak}{out}"


def _few_trips(result: Result) -> str:
    if result.evidence == "over_days":
        return f"it takes {MIN_SHARED_TRIPS} trips with each"
    where = " on one technique" if result.hunch.compare in ATTRIBUTES else ""
    return f"it takes {MIN_SHARED_TRIPS} trips with both{where}"


def settle_words(rod_hours: float, season_hours: float) -> str:
    """Return how many more half days would settle it, nothing where it is settled or cannot be said."""
    if math.isnan(rod_hours):
        return ""
    if rod_hours > SETTLE_SEASONS * season_hours:
        return "more than ten seasons"
    half_days = math.ceil(rod_hours / (HALF_DAY_HOURS * HALF_DAY_RODS))
    return counted(half_days, "more half day", "more half days")
