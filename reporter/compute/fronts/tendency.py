"""What the barometer did over three hours, by the code of surface weather reports."""

from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike, NDArray

from reporter.compute.ratio import FloatArray

STEADY_HPA = 0.1
"""A change of an hour and a half no larger than this is steady; this limit and the halves are ours."""

UNKNOWN = -1

WORDS: dict[int, str] = {
    0: "rose, then fell",
    1: "rising, slower at the end",
    2: "rising",
    3: "turned to rising",
    4: "steady",
    5: "fell, then rose",
    6: "falling, slower at the end",
    7: "falling",
    8: "turned to falling",
}
"""The characteristic of code table 0200, in plain words."""


class Tendency(NamedTuple):
    """code: characteristic 0 to 8 (UNKNOWN without pressure); change_hpa: over the three hours."""

    code: NDArray[np.int64]
    change_hpa: FloatArray


def tendency(pressure_hpa: ArrayLike) -> Tendency:
    """Return characteristic and change of pressures an hour apart, oldest first, shaped (..., 4).

    Source: WMO-306 Manual on Codes, volume I.1, part A, code table 0200 (regulation 12.2.3.5.3).
    """
    hours = np.asarray(pressure_hpa, dtype=np.float64)
    middle = (hours[..., 1] + hours[..., 2]) / 2
    first, second = np.round(middle - hours[..., 0], 6), np.round(hours[..., 3] - middle, 6)
    change = np.round(hours[..., 3] - hours[..., 0], 6)
    was, then = _side(first), _side(second)
    same = np.abs(np.round(second - first, 6)) <= STEADY_HPA
    cases: list[tuple[NDArray[np.bool_], int]] = [
        (~np.isfinite(change) | ~np.isfinite(middle), UNKNOWN),
        ((was > 0) & (then < 0) & (change >= 0), 0),
        ((was == 0) & (then == 0), 4),
        ((was > 0) & (then > 0) & same, 2),
        ((was > 0) & (then >= 0) & (second < first), 1),
        ((was >= 0) & (then > 0), 3),
        ((was < 0) & (then > 0) & (change > 0), 3),
        ((was < 0) & (then > 0), 5),
        ((was < 0) & (then < 0) & same, 7),
        ((was < 0) & (then <= 0) & (second > first), 6),
    ]
    code = np.select([case for case, _ in cases], [value for _, value in cases], default=8)
    return Tendency(code.astype(np.int64), change)


def _side(change: FloatArray) -> NDArray[np.int64]:
    moved = np.nan_to_num(change)
    return np.sign(np.where(np.abs(moved) <= STEADY_HPA, 0.0, moved)).astype(np.int64)
