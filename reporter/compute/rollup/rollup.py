"""A roll-up: every total of many guides' logs, worked out once for its pages and its tables."""

from dataclasses import replace
from typing import NamedTuple

import pandas as pd

from reporter.compute.rollup.effort import effort_table, hidden_effort
from reporter.compute.rollup.fish import fish_table
from reporter.compute.rollup.guides import guide_effort, guide_labels, log_table, problem_table
from reporter.compute.rollup.kept import Kept, one_spelling, summed
from reporter.compute.rollup.missed import Missed
from reporter.compute.rollup.missing import missing_months
from reporter.compute.rollup.species import named_species
from reporter.schema.rollup import MIN_GUIDES, PERMIT, WATER
from reporter.schema.units import System


class Rollup(NamedTuple):
    """A roll-up.

    names: whether guides are named, and small lines shown. guides: how many there are. effort, fish: see
    `effort_table` and `fish_table`, species by their names. guide_effort, guide_fish, missing, logs,
    problems: guide as it is called here. system: us or metric, of most logs. last: the last month with a
    trip, "" without any.
    """

    names: bool
    guides: int
    effort: pd.DataFrame
    fish: pd.DataFrame
    guide_effort: pd.DataFrame
    guide_fish: pd.DataFrame
    missing: pd.DataFrame
    logs: pd.DataFrame
    problems: pd.DataFrame
    missed: tuple[Missed, ...]
    system: System
    last: str

    @property
    def told(self) -> bool:
        """Whether there are guides enough for totals by water, month and permit."""
        return not self.effort.empty


def make_rollup(kept: Kept, missed: tuple[Missed, ...], *, names: bool) -> Rollup:
    """Return the roll-up of what was kept. missed: logs that are not counted. names: for those entitled."""
    least = 1 if names else MIN_GUIDES
    kept = _spelled(kept)
    hidden = hidden_effort(kept, least)
    called = guide_labels(kept.logs)
    of_guides = summed(kept.fish_places, ["guide", "species"])
    by_guide = of_guides.rename(columns={"guide": "number"})
    missing = missing_months(kept)
    metric = int((kept.logs["system"] == "metric").sum())
    return Rollup(
        names=names,
        guides=len(called),
        effort=effort_table(kept, hidden, least),
        fish=named_species(fish_table(kept, hidden, least)),
        guide_effort=guide_effort(kept, called, names=names),
        guide_fish=named_species(by_guide.assign(guide=by_guide["number"].map(called))),
        missing=missing.assign(guide=missing["guide"].map(called)),
        logs=log_table(kept.logs, missed, called, names=names),
        problems=problem_table(kept, missed, called),
        missed=missed,
        system="metric" if 2 * metric > len(kept.logs) else "us",
        last=str(kept.effort_months["month"].max()) if len(kept.effort_months) else "",
    )


def _spelled(kept: Kept) -> Kept:
    """Return the same with waters and permits under one spelling each, over all logs."""
    tables = {}
    for name in ("effort_places", "fish_places"):
        table: pd.DataFrame = getattr(kept, name)
        spelled = table.assign(water=one_spelling(table["water"]), permit=one_spelling(table["permit"]))
        by = [column for column in ("guide", WATER, PERMIT, "species") if column in table]
        tables[name] = summed(spelled, by)
    return replace(kept, **tables)
