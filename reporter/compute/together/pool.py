"""Several seasons of one guide as one record, of which everything is computed as of a single season.

Each log is read, checked and computed by itself, with its own settings. What must be one for the whole record
is the last season's: units, length of a big fish, guide, hunches, names where they differ, papers and rules.
"""

from collections.abc import Sequence
from dataclasses import replace

import numpy as np
import pandas as pd

from reporter.compute.fish.big import with_big_fish
from reporter.compute.rates import season_spread
from reporter.compute.season import Season
from reporter.compute.spread import Spread
from reporter.compute.together.fronts import front_days_together
from reporter.compute.together.names import Names, technique_names, water_names
from reporter.compute.together.order import record_title
from reporter.compute.together.problems import said_once
from reporter.compute.together.stacked import stacked
from reporter.schema.log import BY_KEY
from reporter.tidy.rows import RowCount
from reporter.tidy.settings import Settings

_BY = {"trips": "trips", "stints": "effort", "fish": "catch"}
"""Table of a season -> key of the sheet whose rows it holds."""


def pooled(seasons: Sequence[Season]) -> Season:
    """Return the record of seasons in order, each with its label (see `reporter.compute.together.order`).

    Trips, stints and techniques are numbered anew; the column log is the place in `several`. Big fish are
    counted anew by the length of the last season, so that one word means one thing.
    """
    each = said_once(seasons)
    last = each[-1]
    names, waters = technique_names(each), water_names(each)
    techniques = _techniques(each, names)
    tables = _tables(each, names, waters)
    settings = _settings(each)
    styles = techniques.set_index("technique")["style"]
    pairs = tables["pairs"].drop(columns=["sized", "big"])
    pairs = pairs.assign(style=pairs["technique"].map(styles).astype(object).fillna(""))
    pairs = with_big_fish(pairs, tables["fish"], settings["big_fish_mm"])
    return last._replace(
        settings=settings,
        layout_file=next((season.layout_file for season in each if season.layout_file), ""),
        trips=tables["trips"],
        stints=tables["stints"],
        pairs=pairs,
        fish=tables["fish"],
        readings=tables["readings"],
        techniques=techniques,
        waters=list(dict.fromkeys(own[name] for own in reversed(waters) for name in own)),
        spread=_spread(pairs),
        fronts=front_days_together(each),
        weather_files=tuple({file.sha256: file for season in each for file in season.weather_files}.values()),
        identity=_identity(each),
        surplus=sum(season.surplus for season in each),
        counts=_counts(each),
        problems=[found for season in each for found in season.problems],
        fixes=[fix for season in each for fix in season.fixes],
        from_above=sum(season.from_above for season in each),
        label="",
        several=each,
    )


def _spread(pairs: pd.DataFrame) -> Spread:
    """Return how far trips of one season differ: a technique of another season is a group of its own."""
    return season_spread(pairs.assign(technique=pairs["technique"] + "\n" + pairs["log"].astype(str)))


def _techniques(seasons: Sequence[Season], names: Sequence[Names]) -> pd.DataFrame:
    """Return the techniques, those of the last season first; a style is the latest that is given."""
    styles: dict[str, str] = {}
    for season, own in zip(reversed(seasons), reversed(names), strict=True):
        for name, style in zip(season.techniques["technique"], season.techniques["style"], strict=True):
            styles[own[name]] = styles.get(own[name], "") or style
    return pd.DataFrame(
        {
            "technique_no": np.arange(1, len(styles) + 1),
            "technique": pd.Series(list(styles), dtype=object),
            "style": pd.Series(list(styles.values()), dtype=object),
        }
    )


def _tables(
    seasons: Sequence[Season], names: Sequence[Names], waters: Sequence[Names]
) -> dict[str, pd.DataFrame]:
    made: dict[str, list[pd.DataFrame]] = {
        key: [] for key in ("trips", "stints", "pairs", "fish", "readings")
    }
    trips = stints = 0
    for log, (season, techniques, own_waters) in enumerate(zip(seasons, names, waters, strict=True)):
        for key, tables in made.items():
            table = _with_worksheet(getattr(season, key), key, seasons).assign(log=log)
            tables.append(_renumbered(table, trips, stints, techniques, own_waters))
        trips += int(season.trips["trip_no"].max()) if len(season.trips) else 0
        stints += int(season.stints["stint_no"].max()) if len(season.stints) else 0
    return {key: stacked(tables) for key, tables in made.items()}


def _renumbered(
    table: pd.DataFrame, trips: int, stints: int, techniques: Names, waters: Names
) -> pd.DataFrame:
    """Return a table with its trips and stints numbered after those before; trip 0, of a date, stays."""
    numbers = table["trip_no"]
    columns = {"trip_no": numbers.where(numbers == 0, numbers + trips)}
    if "stint_no" in table:
        columns["stint_no"] = table["stint_no"] + stints
    for key, names in (("technique", techniques), ("water", waters)):
        if key in table:
            columns[key] = pd.Series(
                [names.get(name, name) for name in table[key].tolist()], table.index, dtype=object
            )
    return table.assign(**columns)


def _with_worksheet(table: pd.DataFrame, key: str, seasons: Sequence[Season]) -> pd.DataFrame:
    """Return a table of rows with their worksheet, where the log of any season has a layout of its own."""
    if key not in _BY or "worksheet" in table or not any(season.layout_file for season in seasons):
        return table
    return table.assign(worksheet=BY_KEY[_BY[key]].name)


def _settings(seasons: Sequence[Season]) -> Settings:
    """Return the settings of the whole record: the last season's, but for its name and its first day."""
    last = seasons[-1].settings
    firsts = [season.settings["first_day"] for season in seasons]
    given = {
        **last.given,
        "season_name": record_title(seasons),
        "all_measured": "yes" if all(s.settings["all_measured"] == "yes" for s in seasons) else "no",
    }
    if all(firsts):
        given["first_day"] = min(firsts)
    return replace(last, given=given)


def _counts(seasons: Sequence[Season]) -> dict[str, RowCount]:
    made: dict[str, RowCount] = {}
    for season in seasons:
        for name, count in season.counts.items():
            before = made.get(name, RowCount(0, 0, 0, 0, 0))
            made[name] = RowCount(*map(sum, zip(before, count, strict=True)))
    return made


def _identity(seasons: Sequence[Season]) -> pd.DataFrame:
    """Return where all fish went: reason and fish."""
    went = stacked([season.identity for season in seasons]).groupby("reason")["fish"].sum()
    return went.reset_index()
