"""The tables of the paperwork that leave as CSV."""

import pandas as pd

from reporter.compute.paperwork.harvest import KIND_NOT_WRITTEN
from reporter.compute.paperwork.log_numbers import numbering_table
from reporter.compute.paperwork.paperwork import Paperwork


def paperwork_outputs(made: Paperwork) -> dict[str, pd.DataFrame]:
    """Return the tables of `reporter.schema.paperwork_tables`, with more columns than are written."""
    harvest = made.harvest.rename(columns={"unknown": "fate_unknown", "unfinished": "trips_unfinished"})
    no_code = harvest["species"] == KIND_NOT_WRITTEN
    return {
        "use": _use(made),
        "harvest": harvest.assign(species_code=harvest["species_code"].where(~no_code, "")),
        "documents": made.documents.rename(columns={"trip": "first_trip", "day": "first_day"}),
        "nil_months": made.owed.table.rename(
            columns={"document": "permit", "name": "period", "first": "first_day", "last": "last_day"}
        ),
        "numbering": numbering_table(made.numbering),
    }


def _use(made: Paperwork) -> pd.DataFrame:
    season = made.allowance
    return season.assign(
        permit=season["document"],
        report=season["name"].where(season["sheet"] == "Reports", ""),
        season_count=season["used"],
        count=[use.count.count for use in made.uses],
        trips=pd.Series([use.count.trips for use in made.uses], dtype="int64"),
    )
