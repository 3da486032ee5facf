"""Which stints a side or a phrase means."""

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from reporter.compute.conditions.record import StintRecord
from reporter.compute.hunches.side import Side
from reporter.schema.log import folded
from reporter.schema.phrases import Phrase
from reporter.schema.sheets.names import SKILLS

BoolArray = NDArray[np.bool_]

_VALUES = {"water_temperature": "water_temp_c", "wind_speed": "wind_speed_ms", "depth": "depth_m"}
_TYPED = frozenset({"variant", "retrieve", "size", "colour", "cover", "technique", "style", "water"})
_DECIMALS = 9  # a mean of readings that should be on an edge is on it


def meant(side: Side, record: StintRecord) -> BoolArray:
    """Whether each stint is one that the side means."""
    if side.names:
        return np.array([folded(value) in side.names for value in record.stints[side.condition]], dtype=bool)
    found = [fits(phrase, record) for phrase in side.phrases]
    return np.logical_or.reduce(found) if found else np.zeros(len(record.stints), dtype=bool)


def known(side: Side, record: StintRecord) -> BoolArray:
    """Whether the log says for each stint on which side it lies."""
    if side.condition in _VALUES:
        return record.stints[_VALUES[side.condition]].notna().to_numpy(dtype=bool)
    if side.condition in _TYPED:
        return np.array([bool(folded(value)) for value in record.stints[side.condition]], dtype=bool)
    places = _places(side.condition, record)
    if side.condition == "skill":  # of mixed parties nobody knows who fished it
        return np.asarray((places >= 0) & (places < len(SKILLS)))
    return np.asarray(places >= 0)


def fits(phrase: Phrase, record: StintRecord) -> BoolArray:
    """Whether each stint lies in what a phrase asks; what is not recorded does not."""
    if not phrase.labels:
        return _in_span(record.stints[_VALUES[phrase.condition]], phrase)
    wanted = {folded(label) for label in phrase.labels}
    if phrase.condition in _TYPED:
        return np.array([folded(value) in wanted for value in record.stints[phrase.condition]], dtype=bool)
    labels = record.condition(phrase.condition).bands
    numbers = [place for place, band in enumerate(labels) if folded(band.label) in wanted]
    return np.isin(_places(phrase.condition, record), numbers)


def _places(condition: str, record: StintRecord) -> NDArray[np.int64]:
    return record.condition(condition).of_stint


def _in_span(values: pd.Series, phrase: Phrase) -> BoolArray:
    inside = values.round(_DECIMALS)
    above = inside >= round(phrase.low, _DECIMALS) if phrase.low is not None else inside.notna()
    below = inside < round(phrase.high, _DECIMALS) if phrase.high is not None else inside.notna()
    return (above & below).to_numpy(dtype=bool)
