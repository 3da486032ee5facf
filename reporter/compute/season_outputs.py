"""What leaves of several logs put together: season against season, and of which season a trip or row is."""

from collections.abc import Mapping

import numpy as np
import pandas as pd

from reporter.compute.log_outputs import of_log
from reporter.compute.season import Season
from reporter.compute.seasons import Seasons
from reporter.compute.together.stacked import stacked


def season_outputs(
    season: Season, seasons: Seasons, made: Mapping[str, pd.DataFrame]
) -> dict[str, pd.DataFrame]:
    """Return the tables of seasons, those of the logs one below the other, and others with their season.

    made: the other tables, of which those with a column log get the season's label.
    """
    labels = np.array([one.label for one in season.several], dtype=object)
    own = [
        {name: table.assign(season=one.label) for name, table in of_log(one).items()}
        for one in season.several
    ]
    return {
        **{
            name: table.assign(season=labels[table["log"].to_numpy(dtype=np.int64)])
            for name, table in made.items()
            if "log" in table
        },
        **{name: stacked([tables[name] for tables in own]) for name in own[0]},
        "seasons": seasons.table,
        "season_techniques": seasons.techniques,
        "season_ratios": seasons.ratios,
    }
