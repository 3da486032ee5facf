"""Standard weights in grams of a length in millimetres, for relative weight: 100 is a plump fish.

The metric lines: the English ones are printed with too few decimals and differ by up to .4 %. Source: the
open data of a fisheries textbook's companion package (Ogle 2016), two stored versions of which agree, with
the papers it names. Those of smallmouth bass, walleye, muskellunge and rainbow trout of rivers were found in
a second public source; the others stand in this single compilation. Each is a 75th percentile of populations.
"""

import math
from typing import NamedTuple


class MetricLine(NamedTuple):
    """log10 of grams = a + b x log10 of mm of total length, from a shortest length on; and its paper."""

    a: float
    b: float
    shortest_mm: float
    source: str

    def grams(self, mm: float) -> float:
        """Return the standard weight at a length."""
        return math.pow(10.0, self.a + self.b * math.log10(mm))


METRIC_LINES: dict[str, MetricLine] = {
    "LMB": MetricLine(-5.528, 3.273, 150, "Henson 1991"),
    "SMB": MetricLine(-5.329, 3.200, 150, "Kolander et al. 1993"),
    "SPB": MetricLine(-5.392, 3.215, 100, "Wiens et al. 1996"),
    "BLG": MetricLine(-5.374, 3.316, 80, "Hillman 1982"),
    "BLC": MetricLine(-5.618, 3.345, 100, "Neumann & Murphy 1991"),
    "WHC": MetricLine(-5.642, 3.332, 100, "Neumann & Murphy 1991"),
    "WAE": MetricLine(-5.453, 3.180, 150, "Murphy et al. 1990"),
    "NOP": MetricLine(-5.437, 3.096, 100, "Anderson & Neumann 1996"),
    "CCF": MetricLine(-5.800, 3.294, 70, "Brown et al. 1995"),
    "RBT": MetricLine(-5.023, 3.024, 120, "Simpkins & Hubert 1996, rivers"),
    "STB": MetricLine(-4.924, 3.007, 150, "Brown & Murphy 1991"),
    "MUE": MetricLine(-6.066, 3.325, 380, "Neumann & Willis 1994"),
}
"""House code of a species -> its line; all have length categories too."""
