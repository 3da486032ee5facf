"""Numbers as cells."""

import math
from collections.abc import Sequence

import numpy as np
import pandas as pd

from reporter.books.blocks import Cell, Live, Value


def numbers(values: pd.Series | Sequence[float], blank: Value = None) -> list[Value]:
    """Return numbers as cells; what is not a finite number is blank."""
    return [value if math.isfinite(value) else blank for value in np.asarray(values, dtype=float).tolist()]


def live(formula: str, values: pd.Series | Sequence[float]) -> list[Cell]:
    """Return a formula with each of its values; what is not a finite number is blank."""
    return [Live(formula, value) for value in numbers(values, blank="")]


def live_where_known(formula: str, values: pd.Series | Sequence[float]) -> list[Cell]:
    """Return the same, but no formula where there is no number."""
    return [None if value is None else Live(formula, value) for value in numbers(values)]
