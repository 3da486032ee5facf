"""Guides without a trip in a month in which others have one: what the logs say, not who owes what."""

import numpy as np
import pandas as pd

from reporter.compute.rollup.kept import Kept
from reporter.compute.rollup.log_sums import HAS_TRIP, MAY_HAVE
from reporter.schema.rollup import NO_TRIP, NOT_READ


def missing_months(kept: Kept) -> pd.DataFrame:
    """Return one row a guide and month: guide, month, said (NO_TRIP or NOT_READ), by guide, then month.

    A month counts where some guide has a guided trip that was fished. A guide who has any row of Trips in it,
    a cancelled one too, is not missing, nor is one of whom no log is about that month by Season's First day,
    Last day and As-of date.
    """
    fished = sorted(kept.cells["month"].unique())
    guides = np.unique(kept.logs["guide"])
    every = pd.MultiIndex.from_product([guides, fished], names=["guide", "month"]).to_frame(index=False)
    asked = every[_about(every, kept.logs)]
    there = _pairs(kept.months[kept.months["state"] == HAS_TRIP])
    without = asked[~_pairs(asked).isin(there)]
    aside = kept.months[kept.months["state"] == MAY_HAVE]
    anywhere = set(aside.loc[aside["month"] == "", "guide"])
    perhaps = _pairs(without).isin(_pairs(aside)) | without["guide"].isin(anywhere).to_numpy()
    return without.assign(said=np.where(perhaps, NOT_READ, NO_TRIP)).reset_index(drop=True)


def _pairs(table: pd.DataFrame) -> pd.MultiIndex:
    return pd.MultiIndex.from_frame(table[["guide", "month"]])


def _about(every: pd.DataFrame, logs: pd.DataFrame) -> np.ndarray:
    """Return which pairs of guide and month a log of the guide is about; one without days is about all."""
    spans = every.reset_index().merge(logs[["guide", "first", "last"]], on="guide")
    begun = (spans["first"] == "") | (spans["first"].str[:7] <= spans["month"])
    not_over = (spans["last"] == "") | (spans["last"].str[:7] >= spans["month"])
    return every.index.isin(spans.loc[begun & not_over, "index"])
