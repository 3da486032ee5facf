"""The record that What worked chooses from: stints with a number for each choice and each attribute."""

from dataclasses import replace
from typing import NamedTuple

import numpy as np
import pandas as pd

from reporter.compute.conditions.classes import Condition, named_bands
from reporter.compute.conditions.counted import one_band
from reporter.compute.conditions.record import StintRecord
from reporter.compute.ratio import IntArray
from reporter.compute.season import Season
from reporter.schema.bands import TIMES_OF_YEAR, named, time_of_year
from reporter.schema.choices import ANY, CHOICES

ATTRIBUTES = ("cover", "depth", "variant", "retrieve")


class PickRecord(NamedTuple):
    """Stints that can be chosen from.

    stints: index as in the season's counted stints: pair_no (row of the season's trip-techniques, from 1),
    technique_no, rod_hours and fish (both 0 for stints whose fish cannot be told apart between kinds of
    day), then for every choice and attribute its number: from 1; past the last where it is not recorded; 0
    where the fish cannot be told apart. labels: choice or attribute -> labels, whose numbers start at 1.
    left_out: trip-techniques whose fish cannot be told apart.
    """

    stints: pd.DataFrame
    labels: dict[str, tuple[str, ...]]
    left_out: int


def pick_record(season: Season, record: StintRecord) -> PickRecord:
    """Return the record behind What worked."""
    stints = record.stints
    choices = {choice.key: _condition(choice.key, season, record) for choice in CHOICES}
    attributes = {
        "cover": record.condition("cover"),
        "depth": _if_any(record.condition("depth")),
        "variant": named_bands(stints, "variant", _of_technique(stints, "variant")),
        "retrieve": named_bands(stints, "retrieve", _of_technique(stints, "retrieve")),
    }
    uniform = [one_band(stints["pair"], condition.of_stint) for condition in choices.values()]
    alike = stints["placed"].to_numpy(dtype=bool) | np.logical_and.reduce(uniform)
    numbers = season.techniques.set_index("technique")["technique_no"]
    table = pd.DataFrame(
        {
            "pair_no": _pair_numbers(season, stints),
            "technique_no": stints["technique"].map(numbers).astype(np.int64),
            "rod_hours": stints["rod_hours"].where(alike, 0.0),
            "fish": stints["counted_fish"].where(alike, 0.0),
            **{key: condition.numbers for key, condition in (choices | attributes).items()},
        },
        index=stints.index,
    )
    out = np.unique(stints["pair"].to_numpy()[~alike])
    labels = {
        key: tuple(band.label for band in condition.bands)
        for key, condition in (choices | attributes).items()
    }
    return PickRecord(table, labels, len(out))


def _if_any(condition: Condition) -> Condition:
    """Return a condition without its bands where none is recorded."""
    return condition if (condition.of_stint >= 0).any() else replace(condition, bands=())


def _condition(key: str, season: Season, record: StintRecord) -> Condition:
    stints = record.stints
    if key == "time_of_year":
        months = stints["date"].dt.month
        places = [-1 if np.isnan(month) else time_of_year(int(month)) for month in months]
        return Condition(key, "", named(TIMES_OF_YEAR), np.array(places, dtype=np.int64))
    if key == "water":
        waters = [_not_any(water) for water in season.waters]
        place = {water: number for number, water in enumerate(season.waters)}
        return Condition(key, "", named(waters), np.asarray(stints["water"].map(place), dtype=np.int64))
    return record.condition(key)


def _not_any(water: str) -> str:
    """Return a water's name, told apart from the word for any of them."""
    return f"{water} (the water)" if water.casefold() == ANY.casefold() else water


def _of_technique(stints: pd.DataFrame, key: str) -> pd.Series:
    """Return a variant or retrieve with its technique: it means nothing without."""
    return (stints["technique"] + ": " + stints[key]).where(stints[key] != "", "")


def _pair_numbers(season: Season, stints: pd.DataFrame) -> IntArray:
    keys = ["trip_no", "technique"]
    places = pd.MultiIndex.from_frame(season.pairs[keys])
    found = places.get_indexer(pd.MultiIndex.from_frame(stints[keys]))
    return np.asarray(found, dtype=np.int64) + 1
