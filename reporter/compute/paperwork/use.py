"""Use against what a paper allows, and what a use review makes of it."""

from typing import Any

import numpy as np
import pandas as pd

from reporter.compute.paperwork.counting import Use
from reporter.compute.paperwork.said import figure
from reporter.compute.paperwork.typed import sheet_rows
from reporter.schema.paperwork import AVERAGE_HOURS, NEXT_SHARE, RETURNED_SHARE
from reporter.tidy.season import TidyLog

_LIMITS = ["allowed", "returned", "returned_beyond_control"]


def reviewed_use(used: Any, returned: Any, beyond_control: Any) -> Any:
    """Return use as a review counts it: a returned day is a half, one beyond the holder's control a whole.

    Numbers or columns of them; beyond_control is part of returned. Source: see
    `reporter.schema.paperwork.RETURNED_SHARE`.
    """
    beyond = np.minimum(beyond_control, returned)
    return used + beyond + RETURNED_SHARE * (returned - beyond)


def next_allocation(reviewed: Any, allowed: Any) -> Any:
    """Return 125 % of the reviewed use, at most the allocation of before; numbers or columns of them."""
    return np.minimum(NEXT_SHARE * reviewed, allowed)


def use_table(log: TidyLog, uses: tuple[Use, ...]) -> pd.DataFrame:
    """Return one row a count: use against what its paper allows.

    sheet, row, name, document, rule, counted_as, used, allowed, returned, beyond_control (NaN where the paper
    is counted in another way), left (below 0: over), reviewed and next_allowed (NaN unless use was given
    back), words ("used 148 of 200, 52 left"). uses: of the whole season, as an allowance is.
    """
    documents = sheet_rows(log, "documents").set_index("document")
    of_paper = documents.reindex([use.document for use in uses])
    table = pd.DataFrame(
        {
            "sheet": [use.sheet for use in uses],
            "row": [use.row for use in uses],
            "name": [use.name for use in uses],
            "document": [use.document for use in uses],
            "rule": [use.count.rule for use in uses],
            "counted_as": [use.count.counted_as for use in uses],
            "used": np.array([use.count.count for use in uses], dtype=np.float64),
        }
    )
    same_rule = (of_paper["counting_rule"].to_numpy() == table["rule"]) & (table["rule"] != AVERAGE_HOURS)
    limits = of_paper[_LIMITS].astype(np.float64).set_axis(table.index).where(same_rule, np.nan)
    table[["allowed", "returned", "beyond_control"]] = limits.to_numpy()
    table["left"] = table["allowed"] - table["used"]
    given_back = table["returned"].where(table["returned"] > 0)
    table["reviewed"] = reviewed_use(table["used"], given_back, table["beyond_control"].fillna(0.0))
    table["next_allowed"] = next_allocation(table["reviewed"], table["allowed"])
    columns = (table["used"], table["allowed"], given_back)
    table["words"] = [_words(*row) for row in zip(*columns, strict=True)]
    return table


def _words(used: float, allowed: float, given_back: float) -> str:
    if np.isnan(used):
        return "not known"
    if np.isnan(allowed):
        return f"used {figure(used)}"
    left = allowed - used
    rest = f"{figure(left)} left" if left >= 0 else f"{figure(-left)} more than allowed"
    back = "" if np.isnan(given_back) else f"; {figure(given_back)} given back are not taken off"
    return f"used {figure(used)} of {figure(allowed)}, {rest}{back}"
