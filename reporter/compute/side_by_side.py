"""Fair comparisons: moving against slow, and each technique against the one most used."""

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
import pandas as pd

from reporter.compute.claims import bonferroni_level, claim
from reporter.compute.condition_classes import ConditionClasses
from reporter.compute.paired import NUMBERS, RatioRange, same_condition, same_trip, same_window
from reporter.compute.rates import by_group_and_trip
from reporter.compute.ratio import FloatArray
from reporter.compute.spread import Spread
from reporter.compute.standardise import shared_weights, standardised
from reporter.compute.windows import shared_windows
from reporter.schema.sheets.names import STYLES
from reporter.schema.thresholds import MIN_OWN_TRIPS, MIN_SHARED_TRIPS


class SideBySide(NamedTuple):
    """Fair comparisons of a season.

    table: one row a comparison and method: of (style or technique), method (same_trip, same_condition,
    same_window), this, against, ratio, low, high (95 %; NaN where the two cannot be compared fairly), trips,
    fish_this, fish_against, hours_this, hours_against (rod-hours), overlap_share, claim (see
    `reporter.compute.claims`; the same on every row of a comparison), only_this and only_against (labels of
    condition classes in which only one of the two was fished).
    standardised: technique, rate, low, high as if fished on the same mix of days, NaN where that cannot be
    told, and trips and rod_hours on these days; strata: labels of the condition classes it rests on, with
    share of all rod-hours. reference: the technique most used.
    """

    table: pd.DataFrame
    standardised: pd.DataFrame
    strata: tuple[str, ...]
    share: float
    reference: str


class _Record(NamedTuple):
    """What is compared: catch and effort (names, trips) by name, classes of the trips, named stints."""

    names: list[str]
    catch: FloatArray
    effort: FloatArray
    classes: ConditionClasses
    stints: pd.DataFrame


def side_by_side(
    pairs: pd.DataFrame, stints: pd.DataFrame, trips: Sequence[int], classes: ConditionClasses, spread: Spread
) -> SideBySide:
    """Compare techniques on the trips of a season.

    pairs: trip-techniques with technique and style; trips: their numbers, in the order of `classes`.
    """
    rated = pairs[pairs["in_rates"] & (pairs["rod_hours"] > 0)]
    style_of = rated.drop_duplicates("technique").set_index("technique")["style"]
    named = {"style": stints["technique"].map(style_of), "technique": stints["technique"]}
    present = [style for style in STYLES if style in set(rated["style"])]
    names = sorted(set(rated["technique"]))
    styles, techniques = (
        _record(rated, key, labels, trips, classes, stints.assign(name=named[key]))
        for key, labels in (("style", present), ("technique", names))
    )
    hours = techniques.effort.sum(axis=-1)
    reference = names[int(np.argmax(hours))] if names else ""
    rows = []
    if len(styles.names) == len(STYLES):
        rows += _against(styles, "style", STYLES[:1], STYLES[1])
    rows += _against(techniques, "technique", [name for name in names if name != reference], reference)
    table = pd.DataFrame(rows, columns=list(_COLUMNS))
    standard, strata, share = _standardised(techniques, spread)
    return SideBySide(table, standard, strata, share, reference)


_COLUMNS = ("of", "method", "this", "against", *NUMBERS, "trips", "claim", "only_this", "only_against")


def _record(
    pairs: pd.DataFrame,
    key: str,
    names: list[str],
    trips: Sequence[int],
    classes: ConditionClasses,
    stints: pd.DataFrame,
) -> _Record:
    kept = pairs[pairs[key].isin(names)]
    catch, effort = (by_group_and_trip(kept, key, names, trips, value) for value in ("landed", "rod_hours"))
    return _Record(names, catch, effort, classes, stints)


def _against(record: _Record, of: str, names: Sequence[str], against: str) -> list[dict[str, object]]:
    windows = shared_windows(record.stints, against)
    level = bonferroni_level(len(names))
    return [
        row
        for this in names
        for row in _compared(record, of, this, against, windows[windows["name"] == this], level)
    ]


def _compared(
    record: _Record, of: str, this: str, against: str, windows: pd.DataFrame, level: float
) -> list[dict[str, object]]:
    """Return the rows of one comparison; the claim has its own level, what is printed 95 %."""
    one, other = record.names.index(this), record.names.index(against)
    four = (record.catch[one], record.effort[one], record.catch[other], record.effort[other])
    strata = record.classes.of_trip
    said = str(claim(same_trip(*four, level), same_condition(*four, strata, level)))
    made = {"same_trip": same_trip(*four), "same_condition": same_condition(*four, strata)}
    if windows["trip_no"].nunique() >= MIN_SHARED_TRIPS:
        made["same_window"] = same_window(
            windows["catch_this"],
            windows["effort_this"],
            windows["catch_against"],
            windows["effort_against"],
            windows["trip_no"],
        )
    only = _only(record, one, other)
    return [_row(of, method, this, against, found, said, only) for method, found in made.items()]


def _row(
    of: str,
    method: str,
    this: str,
    against: str,
    found: RatioRange,
    said: str,
    only: tuple[tuple[str, ...], tuple[str, ...]],
) -> dict[str, object]:
    numbers = {key: float(getattr(found, key)) for key in NUMBERS}
    if said == "no_overlap":
        numbers |= dict.fromkeys(("ratio", "low", "high"), np.nan)
    words = {"of": of, "method": method, "this": this, "against": against, "claim": said}
    return {**words, **numbers, "trips": int(found.trips), "only_this": only[0], "only_against": only[1]}


def _only(record: _Record, one: int, other: int) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Return the labels of the classes in which only the one, or only the other, was fished."""
    labels, of_trip = record.classes.labels, record.classes.of_trip
    fished = [
        {int(number) for number in np.unique(of_trip[record.effort[place] > 0])} for place in (one, other)
    ]
    this, against = (sorted(fished[a] - fished[b]) for a, b in ((0, 1), (1, 0)))
    return tuple(labels[number] for number in this), tuple(labels[number] for number in against)


def _standardised(record: _Record, spread: Spread) -> tuple[pd.DataFrame, tuple[str, ...], float]:
    """Return every technique's rate as if fished on the same mix of days.

    Only techniques of five trips and more are compared: one that was tried once or twice would leave hardly
    a class of days that all were fished on.
    """
    trips = (record.effort > 0).sum(axis=-1)
    compared = np.flatnonzero(trips >= MIN_OWN_TRIPS)
    numbers = np.unique(record.classes.of_trip)
    members = record.classes.of_trip[None, :] == numbers[:, None]
    catch, effort = (
        np.where(members[None, :, :], part[compared][:, None, :], 0.0)
        for part in (record.catch, record.effort)
    )
    table = pd.DataFrame(
        {
            "technique": record.names,
            "trips": 0,
            "rod_hours": 0.0,
            "rate": np.nan,
            "low": np.nan,
            "high": np.nan,
        }
    )
    if not len(compared) or not len(numbers):
        return table, (), 0.0
    season = (members * record.effort.sum(axis=0)).sum(axis=-1)
    weights, shared = shared_weights(effort.sum(axis=-1), season)
    if not shared.any():
        return table, (), 0.0
    made = standardised(catch, effort, weights, spread=spread, borrow=True)
    for key in ("rate", "low", "high"):
        table.loc[compared, key] = getattr(made, key)
    on_shared = effort[:, shared, :].sum(axis=1)
    table.loc[compared, "trips"] = (on_shared > 0).sum(axis=-1)
    table.loc[compared, "rod_hours"] = on_shared.sum(axis=-1)
    labels = tuple(record.classes.labels[number] for number in numbers[shared])
    return table, labels, float(season[shared].sum() / record.effort.sum())
