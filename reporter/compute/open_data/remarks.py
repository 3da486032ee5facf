"""What must be said of a trip beside its figures: what is incomplete, and what the effort holds."""

import numpy as np
import pandas as pd

from reporter.compute.open_data.absences import none_caught
from reporter.compute.season import Season
from reporter.tidy.season import TidyLog

NOT_FINISHED = "The log of this trip is not finished: its fish are incomplete."
GUIDE_FISHED = "The guide fished too and counts as an angler."


def remarks_of(season: Season, log: TidyLog, trips: pd.DataFrame) -> list[str]:
    """Return the remarks on each trip, "" where there is nothing to say."""
    aside = _aside(log, trips)
    surplus = surplus_by_trip(season, trips)
    none = none_caught(season, log, trips)
    which = "fish" if season.settings.counted is None else "fish of the species counted"
    parts = (
        np.where(trips["in_rates"], "", NOT_FINISHED),
        [
            f"{rows} of its rows of catch could not be read: its fish are incomplete." if rows else ""
            for rows in aside
        ],
        [_surplus(fish) if fish else "" for fish in surplus],
        np.where(none, f"The log says that no {which} was caught.", ""),
        np.where(trips["guide_fished"], GUIDE_FISHED, ""),
    )
    return [" ".join(part for part in row if part) for row in zip(*parts, strict=True)]


def surplus_by_trip(season: Season, trips: pd.DataFrame) -> pd.Series:
    """Return trip_no -> fish that were tallied and stand on no row of Catch, species unknown."""
    counted = season.fish[season.fish["counted"]].groupby("trip_no")["fish"].sum()
    on_rows = trips["trip_no"].map(counted).fillna(0.0)
    surplus = (trips["fish"] - on_rows).clip(lower=0.0).round().astype(int)
    return surplus.set_axis(trips["trip_no"])


def _surplus(fish: int) -> str:
    more = f"{fish} more fish were landed than are" if fish > 1 else "1 more fish was landed than is"
    return f"{more} listed here, species not written down."


def _aside(log: TidyLog, trips: pd.DataFrame) -> list[int]:
    catch = log.tables["catch"]
    rows = catch[~catch["used"]].groupby("trip_no").size()
    return [int(rows.get(number, 0)) for number in trips["trip_no"]]
