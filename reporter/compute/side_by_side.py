"""Fair comparisons: moving against slow, and each technique against the one most used."""

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
import pandas as pd

from reporter.compute.claims import bonferroni_level, claim
from reporter.compute.condition_classes import ConditionClasses
from reporter.compute.fair_rows import Compared, FairRows, fair_rows
from reporter.compute.paired import NUMBERS, RatioRange, same_condition, same_trip, same_window
from reporter.compute.rates import by_group_and_trip
from reporter.compute.ratio import FloatArray, IntArray
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
    share of all rod-hours. reference: the technique most used. rows: what the comparisons stand on, in the
    order of `table`. mix: what the standardised rates stand on, one row a technique and class: technique,
    kind, trips, rod_hours, fish, rate (of that class). kinds: kind, label, rod_hours of all techniques,
    shared (whether the rates rest on it). classes: of the trips.
    """

    table: pd.DataFrame
    standardised: pd.DataFrame
    strata: tuple[str, ...]
    share: float
    reference: str
    rows: FairRows
    mix: pd.DataFrame
    kinds: pd.DataFrame
    classes: ConditionClasses


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
    held = []
    if len(styles.names) == len(STYLES):
        held.append((styles, "style", _held(styles, STYLES[:1], STYLES[1])))
    if names:
        others = [name for name in names if name != reference]
        held.append((techniques, "technique", _held(techniques, others, reference)))
    rows = [row for record, of, compared in held for row in _against(record, of, compared)]
    standard = _standardised(techniques, spread)
    return SideBySide(
        table=pd.DataFrame(rows, columns=list(_COLUMNS)),
        standardised=standard.table,
        strata=tuple(standard.kinds.loc[standard.kinds["shared"], "label"]),
        share=standard.share,
        reference=reference,
        rows=fair_rows((compared for *_, compared in held), trips, classes),
        mix=standard.mix,
        kinds=standard.kinds,
        classes=classes,
    )


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


def _held(record: _Record, names: Sequence[str], against: str) -> Compared:
    """Hold names against one of the record's."""
    windows = shared_windows(record.stints, against)
    return Compared(
        record.catch,
        record.effort,
        [record.names.index(name) for name in names],
        record.names.index(against),
        [windows[windows["name"] == name] for name in names],
    )


def _against(record: _Record, of: str, held: Compared) -> list[dict[str, object]]:
    level = bonferroni_level(len(held.this))
    return [
        row
        for place, windows in zip(held.this, held.windows, strict=True)
        for row in _compared(record, of, place, held.against, windows, level)
    ]


def _compared(
    record: _Record, of: str, one: int, other: int, windows: pd.DataFrame, level: float
) -> list[dict[str, object]]:
    """Return the rows of one comparison; the claim has its own level, what is printed 95 %."""
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
    sides = record.names[one], record.names[other]
    return [_row(of, method, sides, found, said, only) for method, found in made.items()]


def _row(
    of: str,
    method: str,
    sides: tuple[str, str],
    found: RatioRange,
    said: str,
    only: tuple[tuple[str, ...], tuple[str, ...]],
) -> dict[str, object]:
    numbers = {key: float(getattr(found, key)) for key in NUMBERS}
    if said == "no_overlap":
        numbers |= dict.fromkeys(("ratio", "low", "high"), np.nan)
    words = {"of": of, "method": method, "this": sides[0], "against": sides[1], "claim": said}
    return {**words, **numbers, "trips": int(found.trips), "only_this": only[0], "only_against": only[1]}


def _only(record: _Record, one: int, other: int) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Return the labels of the classes in which only the one, or only the other, was fished."""
    labels, of_trip = record.classes.labels, record.classes.of_trip
    fished = [
        {int(number) for number in np.unique(of_trip[record.effort[place] > 0])} for place in (one, other)
    ]
    this, against = (sorted(fished[a] - fished[b]) for a, b in ((0, 1), (1, 0)))
    return tuple(labels[number] for number in this), tuple(labels[number] for number in against)


class _Standardised(NamedTuple):
    """Standardised rates, the classes and the cells on which they stand, the classes' share of rod-hours."""

    table: pd.DataFrame
    kinds: pd.DataFrame
    mix: pd.DataFrame
    share: float


def _standardised(record: _Record, spread: Spread) -> _Standardised:
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
    season = (members * record.effort.sum(axis=0)).sum(axis=-1)
    weights, shared = shared_weights(effort.sum(axis=-1), season)
    shared = shared & bool(len(compared))
    kinds = pd.DataFrame(
        {
            "kind": numbers,
            "label": [record.classes.labels[number] for number in numbers],
            "rod_hours": season,
            "shared": shared,
        }
    )
    table = pd.DataFrame({"technique": record.names, "trips": 0, "rod_hours": 0.0})
    table = table.assign(rate=np.nan, low=np.nan, high=np.nan)
    mix = _mix(
        [record.names[place] for place in compared], numbers[shared], catch[:, shared], effort[:, shared]
    )
    if not shared.any():
        return _Standardised(table, kinds, mix, 0.0)
    made = standardised(catch, effort, weights, spread=spread, borrow=True)
    for key in ("rate", "low", "high"):
        table.loc[compared, key] = getattr(made, key)
    on_shared = effort[:, shared, :].sum(axis=1)
    table.loc[compared, "trips"] = (on_shared > 0).sum(axis=-1)
    table.loc[compared, "rod_hours"] = on_shared.sum(axis=-1)
    return _Standardised(table, kinds, mix, float(season[shared].sum() / record.effort.sum()))


def _mix(names: Sequence[str], kinds: IntArray, catch: FloatArray, effort: FloatArray) -> pd.DataFrame:
    """Return one row a technique and class, from (techniques, classes, trips)."""
    fish, hours = catch.sum(axis=-1).ravel(), effort.sum(axis=-1).ravel()
    return pd.DataFrame(
        {
            "technique": np.repeat(np.array(names, dtype=object), len(kinds)),
            "kind": np.tile(kinds, len(names)),
            "trips": (effort > 0).sum(axis=-1).ravel(),
            "rod_hours": hours,
            "fish": fish,
            "rate": fish / hours,
        }
    )
