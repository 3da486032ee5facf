"""What was kept of all logs, as it comes from the store, and its figures added up."""

from dataclasses import dataclass

import pandas as pd

from reporter.compute.catch import FATES
from reporter.compute.rollup.log_sums import EFFORT
from reporter.schema.log import folded

DIGITS = 9  # below a thousandth of a second of effort: sums do not hang on the order of their parts


@dataclass(frozen=True, slots=True)
class Kept:
    """What was kept of the logs that are counted.

    logs: log (number in the order of file names), guide (number from 0), code, guide_name, system, first,
    last, rows_read, rows_used, rows_set_aside, trips_set_aside, and file. effort_places: guide, water,
    permit, EFFORT; effort_months: guide, month, EFFORT; fish_places, fish_months: the same by species, with
    FATES. months: guide, month, state. problems: log, code, found.
    """

    logs: pd.DataFrame
    effort_places: pd.DataFrame
    effort_months: pd.DataFrame
    fish_places: pd.DataFrame
    fish_months: pd.DataFrame
    months: pd.DataFrame
    problems: pd.DataFrame


def one_spelling(names: pd.Series) -> pd.Series:
    """Return names that differ in case, blanks and signs alone under one of their spellings."""
    spelled = sorted(names.unique())
    first: dict[str, str] = {}
    for name in spelled:
        first.setdefault(folded(name) or name, name)
    return names.map({name: first[folded(name) or name] for name in spelled}).astype(object)


def summed(table: pd.DataFrame, by: list[str]) -> pd.DataFrame:
    """Return the figures of a table (EFFORT or FATES) added up by some of its columns, rounded."""
    figures = [name for name in (*EFFORT, *FATES) if name in table]
    return table.groupby(by, sort=True)[figures].sum().round(DIGITS).reset_index()


def fates_apart(fish: pd.DataFrame) -> pd.DataFrame:
    """Return one row a fate with any fish: `fate` and `fish` for the FATES of a table."""
    apart = fish.melt(
        id_vars=[name for name in fish.columns if name not in FATES],
        value_vars=list(FATES),
        var_name="fate",
        value_name="fish",
    )
    return apart[apart["fish"].abs() > 0].reset_index(drop=True)
