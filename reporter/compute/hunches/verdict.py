"""What a record says of a hunch: a fair ratio with its range, a verdict, how much more would settle it."""

from typing import Literal, NamedTuple

import numpy as np

from reporter.compute.claims import claim
from reporter.compute.condition_classes import ConditionClasses
from reporter.compute.conditions.record import StintRecord
from reporter.compute.hunches.cells import Cells, make_cells
from reporter.compute.hunches.measures import measured
from reporter.compute.hunches.read import Hunch
from reporter.compute.paired import RatioRange, same_condition, same_trip, within_strata
from reporter.compute.season import Season
from reporter.schema.sheets.hunches import DAY_QUALITIES
from reporter.schema.thresholds import (
    MIN_MEASURED_SHARE,
    MIN_OVERLAP_SHARE,
    MIN_SHARED_FISH,
    MIN_SHARED_TRIPS,
)

Verdict = Literal["holds", "other_way", "cannot_tell"]

Why = Literal[
    "",
    "never_fished",
    "not_told",
    "not_measured",
    "few_trips",
    "few_events",
    "no_overlap",
    "no_ratio",
    "disagree",
    "range",
]
"""Why a record cannot tell: one side was never fished so; the log does not say what is counted on a side; too
few fish were measured; too few trips, or too
little counted; hardly fished with the same techniques, or on the same kind of day; nothing counted on a
side; the two fair comparisons disagree; a range takes in 1."""

Evidence = Literal["same_trip", "over_days"]


class Result(NamedTuple):
    """A tested hunch.

    evidence: same trips, or different days (weaker). ratio, low, high: this over against, NaN where it cannot
    be told. part_, whole_: sums behind it. rod_hours_to_settle: NaN where it is settled or cannot be said.
    cells: the strata and trips on which it stands.
    """

    hunch: Hunch
    evidence: Evidence
    ratio: float
    low: float
    high: float
    trips: int
    part_this: float
    whole_this: float
    part_against: float
    whole_against: float
    verdict: Verdict
    why: Why
    rod_hours_to_settle: float
    left_out: int
    cells: Cells


def tried(hunch: Hunch, season: Season, record: StintRecord, classes: ConditionClasses) -> Result:
    """Hold a hunch against the record; classes: of the season's trips, in their order."""
    numbers = measured(hunch.measure, season, record)
    cells = make_cells(hunch, record, numbers)
    by_trip = hunch.compare in ("technique", "style")
    found = _ratio(cells, by_trip=by_trip, counted=numbers.counted)
    why = _why_not(hunch, season, cells, found, counted=numbers.counted)
    if not why and by_trip and numbers.counted:
        why = _CLAIMS[str(claim(found, _by_condition(cells, season, classes)))]
    if not why and not (found.low > 1 or found.high < 1):
        why = "range"
    told = why not in ("never_fished", "not_told", "not_measured", "no_overlap")
    ratio, low, high = (float(getattr(found, key)) if told else np.nan for key in ("ratio", "low", "high"))
    verdict: Verdict = "cannot_tell" if why else "holds" if ratio > 1 else "other_way"
    return Result(
        hunch=hunch,
        evidence="over_days" if hunch.compare in DAY_QUALITIES else "same_trip",
        ratio=ratio,
        low=low,
        high=high,
        trips=int(found.trips),
        part_this=float(found.fish_this),
        whole_this=float(found.hours_this),
        part_against=float(found.fish_against),
        whole_against=float(found.hours_against),
        verdict=verdict,
        why=why,
        rod_hours_to_settle=_to_settle(ratio, low, high, cells.compared_hours) if why == "range" else np.nan,
        left_out=cells.left_out,
        cells=cells,
    )


_CLAIMS: dict[str, Why] = {
    "this": "",
    "against": "",
    "disagree": "disagree",
    "no_overlap": "no_overlap",
    "cannot_tell": "range",
    "not_enough": "few_trips",
    "no_ratio": "no_ratio",
}


def _ratio(cells: Cells, *, by_trip: bool, counted: bool) -> RatioRange:
    four = (cells.part_this, cells.whole_this, cells.part_against, cells.whole_against)
    if by_trip and counted:
        return same_trip(*four)
    return within_strata(*four, cells.stratum, cells.trip, counted=counted)


def _by_condition(cells: Cells, season: Season, classes: ConditionClasses) -> RatioRange:
    of_trip = dict(zip(season.trips["trip_no"], classes.of_trip, strict=True))
    strata = [of_trip[trip] for trip in cells.trip]
    return same_condition(cells.part_this, cells.whole_this, cells.part_against, cells.whole_against, strata)


def _why_not(hunch: Hunch, season: Season, cells: Cells, found: RatioRange, *, counted: bool) -> Why:
    """Return why nothing can be said before the range is looked at; "" where something can."""
    if not all(cells.fished):
        return "never_fished"
    if hunch.measure == "mean length" and season.settings["all_measured"] != "yes":
        measured_fish = cells.whole_this.sum() + cells.whole_against.sum()
        if measured_fish < MIN_MEASURED_SHARE * cells.fish:
            return "not_measured"
    if not cells.whole_this.sum() > 0 or not cells.whole_against.sum() > 0:
        return "not_told"
    if hunch.compare in DAY_QUALITIES and not cells.overlap_share >= MIN_OVERLAP_SHARE:
        return "no_overlap"
    if min(cells.trips_of_sides) < MIN_SHARED_TRIPS:
        return "few_trips"
    if np.isnan(found.ratio):
        return "no_ratio"
    counts = (found.fish_this, found.fish_against) if counted else (found.hours_this, found.hours_against)
    return "few_events" if min(counts) < MIN_SHARED_FISH else ""


def _to_settle(ratio: float, low: float, high: float, hours: float) -> float:
    """Return the rod-hours of the same kind that would bring the range off 1 if the ratio stayed as it is.

    E x ((half-width / |ln ratio|)^2 - 1), E the rod-hours compared: the half-width of the log of the ratio
    shrinks as the root of the record (our step). NaN where no range is known, infinite at a ratio of 1.
    """
    if not np.isfinite(low) or not np.isfinite(high) or not low > 0:
        return np.nan
    half, away = (np.log(high) - np.log(low)) / 2, abs(np.log(ratio))
    more = hours * ((half / away) ** 2 - 1) if away > 0 else np.inf
    return float(more) if more > 0 else np.nan
