"""Proportional size distribution (PSD): of the fish of stock length, how many are of quality length and more.

Caught on a hook: an angling PSD, which is not that of fish taken by electrofishing.
"""

import math
from typing import Literal

import numpy as np
import pandas as pd

from reporter.compute.ratio import FloatArray
from reporter.compute.shares import share_interval, simultaneous
from reporter.schema.length_categories import LENGTH_CATEGORIES, LENGTH_CLASSES
from reporter.schema.species import BLACK_BASS, BY_CODE
from reporter.schema.thresholds import MIN_MEASURED_SHARE, MIN_STOCK_FISH

WhyNot = Literal["", "few_stock", "few_measured"]
"""Why there is no PSD: too few measured fish of stock length; too few of the fish caught were measured."""


def size_structure(
    sizes: pd.DataFrame, species: pd.DataFrame, surplus: float, *, all_measured: bool
) -> tuple[pd.DataFrame, pd.DataFrame]:
    """Return PSD by species and by length class; sizes and species as from their own modules.

    surplus: fish of the species counted that were tallied beyond rows of Catch, on trips that were fished.
    The first table has a row a species with published categories: species, name, caught, may_be_more (fish
    that may have been of it: the surplus, and black basses without a kind), measured, stock_fish, trips (with
    stock-length fish), why. The second has a row for each of those with a PSD and each class: species, name,
    class_no (1 from stock length on ... 5), fish and share in it, low, high (for all classes together);
    fish_from, psd (per 100), psd_low, psd_high of all fish from its lower bound on, NaN for class 1.
    """
    listed = species[species["species"].isin(LENGTH_CATEGORIES) & (species["caught"] > 0)]
    codes = listed["species"].tolist()
    by_class = _by_class(sizes, codes)
    table = pd.DataFrame(
        {
            "species": pd.Series(codes, dtype=object),
            "name": listed["name"].tolist(),
            "caught": listed["caught"].tolist(),
            "may_be_more": _may_be_more(listed, species, surplus),
            "measured": listed["measured_fished"].tolist(),
            "weighed": listed["weighed_fished"].tolist(),
            "stock_fish": by_class.sum(axis=(0, 2)),
            "trips": (by_class.sum(axis=0) > 0).sum(axis=1),
        }
    )
    table["why"] = _why(table, all_measured=all_measured)
    told = (table["why"] == "").to_numpy()
    return table, _class_table(table[told], by_class[:, told])


def _by_class(sizes: pd.DataFrame, codes: list[str]) -> FloatArray:
    """Return measured fish by class from stock length on, species and trip."""
    class_no = sizes["class_no"].to_numpy()
    place = pd.Index(codes).get_indexer(pd.Index(sizes["species"]))
    used = (place >= 0) & (class_no >= 1)
    trips, at = np.unique(sizes["trip_no"].to_numpy()[used], return_inverse=True)
    shape = len(LENGTH_CLASSES), len(codes), len(trips)
    cells = ((class_no[used] - 1) * len(codes) + place[used]) * len(trips) + at
    fish = np.bincount(cells, sizes["measured_fish"].to_numpy()[used], math.prod(shape))
    return np.asarray(fish, dtype=np.float64).reshape(shape)


def _may_be_more(listed: pd.DataFrame, species: pd.DataFrame, surplus: float) -> FloatArray:
    """Return the fish without a kind, or without a row, that may have been of each species."""
    no_kind = species.loc[species["species"] == BLACK_BASS.code, "caught"].sum()
    black = np.array([BY_CODE[code].black_bass for code in listed["species"]], dtype=bool)
    return np.where(listed["counted"].to_numpy(dtype=bool), surplus, 0.0) + np.where(black, no_kind, 0.0)


def _why(table: pd.DataFrame, *, all_measured: bool) -> list[WhyNot]:
    enough = table["measured"] >= MIN_MEASURED_SHARE * (table["caught"] + table["may_be_more"])
    cases = zip(table["stock_fish"] < MIN_STOCK_FISH, enough | all_measured, strict=True)
    return ["few_stock" if few else "" if measured else "few_measured" for few, measured in cases]


def _class_table(told: pd.DataFrame, by_class: FloatArray) -> pd.DataFrame:
    """Return the shares of classes, and of all fish from each on; by_class (classes, species, trips)."""
    stock = by_class.sum(axis=0)
    own = share_interval(by_class, stock)
    from_class = share_interval(by_class[::-1].cumsum(axis=0)[::-1], stock)
    low, high = simultaneous(own.share, own.effective, len(LENGTH_CLASSES))
    beyond = np.where(np.equal(LENGTH_CLASSES, 1), np.nan, 1.0)[:, None]  # of itself stock is always 100
    # One species after the other, each from stock length on.
    columns = {
        "fish": own.part,
        "share": own.share,
        "low": low,
        "high": high,
        "fish_from": from_class.part,
        "psd": 100.0 * beyond * from_class.share,
        "psd_low": 100.0 * beyond * from_class.low,
        "psd_high": 100.0 * beyond * from_class.high,
    }
    names = ["species", "name", "caught", "measured", "weighed", "stock_fish", "trips"]
    table = told[names].loc[told.index.repeat(len(LENGTH_CLASSES))].reset_index(drop=True)
    table["class_no"] = np.tile(LENGTH_CLASSES, len(told))
    return table.assign(**{name: values.T.ravel() for name, values in columns.items()})
