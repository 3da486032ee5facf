"""Numbers as cells."""

import math
from collections.abc import Sequence

import numpy as np
import pandas as pd

from reporter.books.blocks import Value


def numbers(values: pd.Series | Sequence[float], blank: Value = None) -> list[Value]:
    """Return numbers as cells; what is not a finite number is blank."""
    return [value if math.isfinite(value) else blank for value in np.asarray(values, dtype=float).tolist()]
