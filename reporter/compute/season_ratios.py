"""Season against season: ratios of rates within strata, the cells on which they stand, and what they bear."""

from collections.abc import Sequence
from itertools import product

import numpy as np
import pandas as pd

from reporter.compute.claims import bonferroni_level, claim_of_seasons
from reporter.compute.condition_classes import ConditionClasses
from reporter.compute.paired import NUMBERS, RatioRange, within_strata
from reporter.compute.season import Season
from reporter.schema.bands import MONTHS
from reporter.schema.thresholds import LEVEL

METHODS = ("same_condition", "same_month")
"""The two ways: the same technique on the same kind of day; the same technique in the same month."""

_ALIKE = 1000  # above every kind of day and month


def season_ratios(cells: pd.DataFrame, labels: Sequence[str]) -> pd.DataFrame:
    """Return each season against the one before, a row a method: see `reporter.compute.seasons.Seasons`."""
    rows = [
        row
        for this in range(1, len(labels))
        for row in _compared(cells, this, labels, bonferroni_level(len(labels) - 1))
    ]
    return pd.DataFrame(rows, columns=list(_COLUMNS))


def season_cells(season: Season, classes: ConditionClasses) -> pd.DataFrame:
    """Return the cells of the comparisons, one a technique on a trip in the rates.

    log, trip_no, technique, landed, rod_hours; same_condition and same_month: the stratum of each as an
    integer, technique x _ALIKE + kind of day or month of the year, -1 where that is not known.
    """
    rated = season.pairs[season.pairs["in_rates"] & (season.pairs["rod_hours"] > 0)]
    trips = season.trips
    kinds = pd.Series(classes.of_trip, trips["trip_no"].to_numpy())
    months = pd.Series(trips["date"].dt.month.to_numpy(), trips["trip_no"].to_numpy())
    technique = pd.factorize(rated["technique"])[0]
    strata = {
        method: np.where(of.isna(), -1, technique * _ALIKE + of.fillna(0)).astype(np.int64)
        for method, of in zip(METHODS, (rated["trip_no"].map(by) for by in (kinds, months)), strict=True)
    }
    return rated[["log", "trip_no", "technique", "landed", "rod_hours"]].assign(**strata)


def season_rows(cells: pd.DataFrame, seasons: int, classes: ConditionClasses) -> pd.DataFrame:
    """Return the cells on which the ratios stand: those in strata that both seasons have.

    cells: as from `season_cells`, of so many seasons. One row a ratio and cell: line (the ratio: from 1, by
    comparison, then method), this_no (the later season, from 1), method, stratum (from 1), alike (the kind
    of day or month that its days share, in words) and the columns of the cells but those of the methods.
    """
    rows = pd.concat(
        [
            _in_both(cells, this, method).assign(line=line)
            for line, (this, method) in enumerate(product(range(1, seasons), METHODS), start=1)
        ],
        ignore_index=True,
    )
    words = {"same_condition": classes.labels, "same_month": ("", *MONTHS)}
    places = (rows["key"] % _ALIKE).tolist()
    return rows.assign(
        stratum=rows.groupby(["line", "key"], sort=False).ngroup() + 1,
        alike=pd.Series(
            [words[method][place] for method, place in zip(rows["method"], places, strict=True)],
            dtype=object,
        ),
    ).drop(columns="key")


def _in_both(cells: pd.DataFrame, this: int, method: str) -> pd.DataFrame:
    """Return the cells of a season and the one before in the strata that both have, with their key."""
    two = cells[cells["log"].isin([this, this - 1]) & (cells[method] >= 0)]
    shared = two.groupby(method)["log"].transform("nunique") == 2
    return (
        two[shared]
        .rename(columns={method: "key"})
        .drop(columns=[other for other in METHODS if other != method])
        .assign(method=method, this_no=this + 1)
    )


def season_ratio(cells: pd.DataFrame, this: int, method: str, level: float = LEVEL) -> RatioRange:
    """Return the ratio of a season's rate to that of the season before it, within the strata of a method.

    Mantel-Haenszel over strata, with trips, which cross them, as the clusters of the error: see
    `reporter.compute.paired.within_strata`.
    """
    two = cells[cells["log"].isin([this, this - 1])]
    own, fish, hours = (two[key].to_numpy() for key in ("log", "landed", "rod_hours"))
    return within_strata(
        np.where(own == this, fish, 0.0),
        np.where(own == this, hours, 0.0),
        np.where(own < this, fish, 0.0),
        np.where(own < this, hours, 0.0),
        two[method].to_numpy(),
        two["trip_no"].to_numpy(),
        level,
    )


def _compared(cells: pd.DataFrame, this: int, labels: Sequence[str], level: float) -> list[dict[str, object]]:
    """Return the rows of one comparison; the claim has its own level, what is printed 95 %."""
    said = str(claim_of_seasons(*(season_ratio(cells, this, method, level) for method in METHODS)))
    return [
        _row(method, labels[this], labels[this - 1], season_ratio(cells, this, method), said)
        for method in METHODS
    ]


def _row(method: str, this: str, against: str, found: RatioRange, said: str) -> dict[str, object]:
    numbers = {key: float(getattr(found, key)) for key in NUMBERS}
    if said == "no_overlap":
        numbers |= dict.fromkeys(("ratio", "low", "high"), np.nan)
    trips = {"trips_this": int(found.trips_this), "trips_against": int(found.trips_against)}
    return {"method": method, "this": this, "against": against, **numbers, **trips, "claim": said}


_COLUMNS = ("method", "this", "against", *NUMBERS, "trips_this", "trips_against", "claim")
