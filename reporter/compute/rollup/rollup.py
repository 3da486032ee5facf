"""A roll-up: every total of many guides' logs, worked out once for its pages and its tables."""

from typing import NamedTuple

import pandas as pd

from reporter.compute.rollup.guides import (
    guide_effort,
    guide_fish,
    guide_labels,
    log_table,
    problem_table,
    rows_aside,
)
from reporter.compute.rollup.kept import Kept
from reporter.compute.rollup.missed import Missed
from reporter.compute.rollup.missing import missing_months
from reporter.compute.rollup.species import named_species
from reporter.compute.rollup.totals import make_totals
from reporter.schema.units import System


class Rollup(NamedTuple):
    """A roll-up.

    names: whether guides are named, and small lines shown. guides: how many are known. unknown: logs that
    are counted and do not say whose they are. effort, fish: see `Totals`, species by their names.
    guide_effort, guide_fish, missing, logs, problems: guide as it is called here. aside: rows of Trips set
    aside, None where that is not to be told. system: us or metric, of most logs. last: the last month with a
    trip, "" without any.
    """

    names: bool
    guides: int
    unknown: int
    effort: pd.DataFrame
    fish: pd.DataFrame
    guide_effort: pd.DataFrame
    guide_fish: pd.DataFrame
    missing: pd.DataFrame
    logs: pd.DataFrame
    problems: pd.DataFrame
    missed: tuple[Missed, ...]
    aside: int | None
    system: System
    last: str

    @property
    def told(self) -> bool:
        """Whether there are guides enough for totals by water, month and permit."""
        return not self.effort.empty


def make_rollup(kept: Kept, missed: tuple[Missed, ...], *, names: bool) -> Rollup:
    """Return the roll-up of what was kept. missed: logs that are not counted. names: for those entitled."""
    called = guide_labels(kept.logs)
    totals = make_totals(kept, names=names)
    missing = missing_months(kept)
    metric = int((kept.logs["system"] == "metric").sum())
    return Rollup(
        names=names,
        guides=kept.logs.loc[kept.logs["known"], "guide"].nunique(),
        unknown=int((~kept.logs["known"]).sum()),
        effort=totals.effort,
        fish=named_species(totals.fish),
        guide_effort=guide_effort(kept, called, names=names),
        guide_fish=named_species(guide_fish(kept, called)),
        missing=missing.assign(guide=missing["guide"].map(called)),
        logs=log_table(kept.logs, missed, called, names=names),
        problems=problem_table(kept, missed, called),
        missed=missed,
        aside=rows_aside(kept.logs, names=names),
        system="metric" if 2 * metric > len(kept.logs) else "us",
        last=str(kept.cells["month"].max()) if len(kept.cells) else "",
    )
