"""What was kept of all logs, as it comes from the store."""

from typing import NamedTuple

import pandas as pd

DIGITS = 9  # below a thousandth of a second of effort: sums do not hang on the order of their parts


class Kept(NamedTuple):
    """What was kept of the logs that are counted.

    logs: log (number in the order of file names), guide (number from 0), known (whether it is known whose it
    is; else the number is of that log alone), code, guide_name, system, first, last, rows_read, rows_used,
    rows_set_aside, trips_set_aside, and file. cells: figure (of EFFORT or FATES), species ("" for effort),
    water, month, permit, value (above 0), guides (how many are known), one, other (the lowest and the highest
    of their numbers, NaN where none is). by_guide: guide, species, figure, value. lines: by, name, guides
    (known ones) with trips in the line. months: guide, month, state. problems: log, code, found. Waters and
    permits have one spelling each.
    """

    logs: pd.DataFrame
    cells: pd.DataFrame
    by_guide: pd.DataFrame
    lines: pd.DataFrame
    months: pd.DataFrame
    problems: pd.DataFrame
