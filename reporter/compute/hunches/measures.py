"""What a hunch counts, stint by stint: something caught or lost, over what it is held against."""

from typing import NamedTuple

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from reporter.compute.conditions.record import StintRecord
from reporter.compute.fish.big import is_big
from reporter.compute.season import Season

_KEYS = ["trip_no", "technique"]
_OF_ROWS = frozenset({"big fish", "kept", "mean length"})


class Measured(NamedTuple):
    """A measure of each counted stint, index as in the record's stints.

    part over whole is the measure; both NaN where the log does not say. placed: whether they are the stint's
    own; where not, the first stint of its technique and trip stands for them all. counted: whether parts are
    counts.
    """

    part: pd.Series
    whole: pd.Series
    placed: NDArray[np.bool_]
    counted: bool = True


def measured(measure: str, season: Season, record: StintRecord) -> Measured:
    """Return a measure (one of MEASURES) of each stint."""
    stints = record.stints
    hours, fish, placed = stints["rod_hours"], stints["counted_fish"], stints["placed"].to_numpy(dtype=bool)
    everywhere = np.ones(len(stints), dtype=bool)
    if measure in ("bites", "share landed"):
        missed = told_missed(stints)
        bites = fish + missed
        if measure == "bites":
            return Measured(bites, hours.where(missed.notna()), placed)
        return Measured(fish.where(missed.notna()), bites, placed)
    if measure in ("hang-ups", "lures lost"):
        told = stints["hang_ups" if measure == "hang-ups" else "lures_lost"]
        return Measured(told, hours.where(told.notna()), everywhere)
    if measure in _OF_ROWS:
        return _of_rows(measure, season, record)
    return Measured(fish, hours, placed)


def told_missed(stints: pd.DataFrame) -> pd.Series:
    """Return the missed bites of each counted stint, NaN where it does not say.

    Where the first stint's fish stand for all of their technique's on a trip, only if all of those say.
    """
    whole = stints["missed"].notna().groupby(stints["pair"]).transform("all")
    return stints["missed"].where(stints["placed"] | whole)


def _of_rows(measure: str, season: Season, record: StintRecord) -> Measured:
    """Return a measure that rows of Catch tell: big fish, fish kept, lengths."""
    stints = record.stints
    fish = season.fish[season.fish["counted"] & (season.fish["technique"] != "")]
    at = fish["stint_no"]
    measured_length = fish["length_mm"].notna() & (fish["measured"] != "estimated")
    big = season.settings["big_fish_mm"]
    part, whole = {
        "big fish": (fish["fish"].where(is_big(fish["length_mm"], big), 0.0), None),
        "kept": (fish["fish"].where(fish["fate"] == "kept", 0.0), None),
        "mean length": (
            (fish["fish"] * fish["length_mm"]).where(measured_length, 0.0),
            fish["fish"].where(measured_length, 0.0),
        ),
    }[measure]
    lost = fish.loc[at.isna(), _KEYS].drop_duplicates().assign(lost=True)
    placed = stints[_KEYS].merge(lost, on=_KEYS, how="left")["lost"].isna().to_numpy(dtype=bool)
    parts = _by_stint(part, fish, at, stints, placed)
    if whole is None:
        return Measured(parts, stints["rod_hours"], placed)
    lengths = _by_stint(whole, fish, at, stints, placed)
    return Measured(parts, lengths, placed, counted=False)


def _by_stint(
    values: pd.Series, fish: pd.DataFrame, at: pd.Series, stints: pd.DataFrame, placed: NDArray[np.bool_]
) -> pd.Series:
    """Add up values of rows to stints; to the first where some of a technique on a trip have no stint."""
    own = values.groupby(at).sum().reindex(stints["stint_no"], fill_value=0.0).to_numpy()
    pairs = values.groupby([fish[key] for key in _KEYS]).sum()
    whole = pairs.reindex(pd.MultiIndex.from_frame(stints[_KEYS]), fill_value=0.0).to_numpy()
    first = ~stints.duplicated(_KEYS).to_numpy()
    return pd.Series(np.where(placed, own, np.where(first, whole, 0.0)), index=stints.index)
