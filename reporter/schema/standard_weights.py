"""Standard weights: what a plump fish of a length weighs, to tell a slip of the pen from a fish.

The published lines in inches and pounds, as compiled after Neumann et al. 2012 in the open data of a
fisheries textbook's companion package. Trout are the lines of rivers. The bands are a judgement.
"""

import math
from typing import NamedTuple


class WeightLine(NamedTuple):
    """log10 of pounds = a + b x log10 of inches, from a shortest length (inches) on."""

    a: float
    b: float
    shortest_in: float

    def pounds(self, inches: float) -> float:
        """Return the standard weight at a length."""
        return math.pow(10.0, self.a + self.b * math.log10(inches))


USUAL_SHARE = (0.6, 1.6)
"""Shares of the standard weight that are taken in silence."""

POSSIBLE_SHARE = (0.4, 2.2)
"""Shares beyond which the weight is not used; the fish is."""

WEIGHT_LINES: dict[str, WeightLine] = {
    "LMB": WeightLine(-3.587, 3.273, 6),
    "SMB": WeightLine(-3.491, 3.200, 6),
    "SPB": WeightLine(-3.533, 3.215, 4),
    "BLG": WeightLine(-3.371, 3.316, 3),
    "BLC": WeightLine(-3.576, 3.345, 4),
    "WHC": WeightLine(-3.618, 3.332, 4),
    "WAE": WeightLine(-3.642, 3.180, 6),
    "SAR": WeightLine(-3.671, 3.187, 2.75),
    "NOP": WeightLine(-3.745, 3.096, 4),
    "MUE": WeightLine(-4.052, 3.325, 15),
    "CCF": WeightLine(-3.829, 3.294, 2.75),
    "BCF": WeightLine(-3.950, 3.400, 6.25),
    "FCF": WeightLine(-3.661, 3.230, 5),
    "RBT": WeightLine(-3.432, 3.024, 4.75),
    "BNT": WeightLine(-3.366, 2.960, 5.5),
    "BKT": WeightLine(-3.483, 3.103, 4.75),
    "CUT": WeightLine(-3.492, 3.099, 5),
    "LKT": WeightLine(-3.778, 3.246, 11),
    "STB": WeightLine(-3.358, 3.007, 6),
    "WHB": WeightLine(-3.394, 3.081, 4.5),
    "YEP": WeightLine(-3.506, 3.230, 4),
    "CAP": WeightLine(-3.194, 2.920, 8),
}
"""House code of a species -> its line. A species without one is not checked."""
