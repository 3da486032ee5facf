"""The columns that say on which row of which log a line stands."""

import pandas as pd

from reporter.books.blocks import Field
from reporter.compute.season import Season


def row_fields(season: Season, sheet: str) -> tuple[Field, ...]:
    """Return them for a table of rows of a sheet (by name); of another layout the worksheet is named too."""
    if season.layout_file:
        return Field("worksheet", "Worksheet"), Field("row", "Row on it", "plain"), *season_fields(season)
    return Field("row", f"Row on {sheet}", "plain"), *season_fields(season)


def season_fields(season: Season) -> tuple[Field, ...]:
    """Return the columns of the season, where there are several: a trip's number may be in each of them."""
    if not season.several:
        return ()
    return Field("season_no", "Season no.", "plain"), Field("of_season", "Season")


def with_season(season: Season, table: pd.DataFrame) -> pd.DataFrame:
    """Return a table of rows with the columns of `season_fields`; log: the place of its season."""
    if not season.several:
        return table
    names = [season.several[log].label for log in table["log"].tolist()]
    return table.assign(season_no=table["log"] + 1, of_season=pd.Series(names, table.index, dtype=object))


def trip_fields(season: Season) -> tuple[Field, ...]:
    """Return the columns that say which trip a line is of, as `with_trip` fills them."""
    return Field("trip_no", "Trip no.", "plain"), *season_fields(season), Field("trip", "Trip")


def with_trip(season: Season, table: pd.DataFrame) -> pd.DataFrame:
    """Return a table of rows with the trip that their trip_no means, and the columns of `season_fields`."""
    trips = with_season(season, season.trips[["log", "trip_no", "trip"]])
    at = pd.Index(trips["trip_no"]).get_indexer(pd.Index(table["trip_no"]))
    keys = ("trip", *(field.key for field in season_fields(season)))
    return table.assign(**{key: trips[key].to_numpy()[at] for key in keys})
