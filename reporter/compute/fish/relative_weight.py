"""Relative weight: how plump fish are for their length, by length class; 100 is a plump fish."""

import numpy as np
import pandas as pd

from reporter.compute.fish.sizes import NO_CLASS
from reporter.compute.rates import sums_by_group_and_trip
from reporter.compute.ratio import ratio_of_means
from reporter.compute.spread import t_over_z_squared
from reporter.schema.length_categories import LENGTH_CATEGORIES, LENGTH_CLASSES
from reporter.schema.relative_weight import METRIC_LINES
from reporter.schema.thresholds import LEVEL, MIN_WEIGHED_FISH
from reporter.schema.units import System, usual_unit

_STEPS: dict[System, tuple[float, ...]] = {
    "us": (1.0, 0.5, 0.25, 0.1, 1 / 16, 0.05, 0.01),
    "metric": (1.0, 0.5, 0.25, 0.1, 0.05, 0.01),
}
"""Steps of a scale in lb or kg, the coarsest first; 1/16 lb is an ounce."""

_ROUNDING = 1e-6  # of a step: what a weight may lie off a multiple of it
_ALL_CLASSES = 1 + len(LENGTH_CLASSES)


def relative_weights(sizes: pd.DataFrame, species: pd.DataFrame) -> pd.DataFrame:
    """Return mean relative weight by species and length class, from MIN_WEIGHED_FISH fish on.

    species (code), name, class_no (0: below stock length), fish, trips, mean, low, high: the mean is over
    fish, its range a t interval with trips as clusters, NaN on a single trip. Ratio of sums over trips:
    Cochran 1977, Sampling Techniques, section 2.11 (from memory).
    """
    used = sizes[sizes["relative_weight"].notna() & (sizes["class_no"] != NO_CLASS)]
    order = {code: index for index, code in enumerate(species["species"])}
    group = used["species"].map(order).astype(int) * _ALL_CLASSES + used["class_no"]
    counts = group.value_counts()
    groups = sorted(counts[counts >= MIN_WEIGHED_FISH].index)
    used = used.assign(group=group, one=1.0)[group.isin(groups)]
    trips = sorted(used["trip_no"].unique())
    sums = sums_by_group_and_trip(used, "group", groups, trips, ("relative_weight", "one"))
    mean = ratio_of_means(sums["relative_weight"], sums["one"])
    half = _normal() * np.sqrt(mean.variance * t_over_z_squared(mean.df))
    at = [number // _ALL_CLASSES for number in groups]
    return pd.DataFrame(
        {
            "species": species["species"].iloc[at].tolist(),
            "name": species["name"].iloc[at].tolist(),
            "class_no": [number % _ALL_CLASSES for number in groups],
            "fish": mean.effort,
            "trips": mean.trips,
            "mean": mean.rate,
            "low": mean.rate - half,
            "high": mean.rate + half,
        }
    )


def _normal() -> float:
    from scipy.special import ndtri

    return float(ndtri((1.0 + LEVEL) / 2.0))


def scale_step(sizes: pd.DataFrame, system: System) -> float | None:
    """Return the coarsest step, in lb or kg, of which all weights are multiples; None where none fits."""
    weights = sizes.loc[sizes["weighed"], "weight_g"].to_numpy() / usual_unit("weight", system).scale
    for step in _STEPS[system] if len(weights) else ():
        multiples = weights / step
        if (np.abs(multiples - np.round(multiples)) < _ROUNDING).all():
            return step
    return None


def step_worth(code: str, class_no: int, step: float, system: System) -> float:
    """Return what a step of the scale (lb or kg) is worth in relative weight where a class begins."""
    line = METRIC_LINES[code]
    scale = usual_unit("fish length", system).scale
    mm = LENGTH_CATEGORIES[code].bounds(system)[class_no - 1] * scale if class_no else line.shortest_mm
    return 100.0 * step * usual_unit("weight", system).scale / line.grams(max(mm, line.shortest_mm))
