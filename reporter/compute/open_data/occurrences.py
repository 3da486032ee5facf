"""Occurrences: one a row of Catch with fish, and one a species of which the log says that none was caught."""

import pandas as pd

from reporter.compute.open_data.absences import absences
from reporter.compute.open_data.identifiers import Key, identifier, orders_on_trip
from reporter.compute.open_data.species import common_name
from reporter.compute.season import Season
from reporter.schema.darwin_core_tables import OCCURRENCES
from reporter.schema.taxa import taxon_of
from reporter.tidy.season import TidyLog

_COLUMNS = [field.name for field in OCCURRENCES.fields]


def caught_rows(season: Season, log: TidyLog, keys: dict[int, Key]) -> pd.DataFrame:
    """Return the season's rows with fish on the trips of `keys`, with their occurrenceID."""
    fish = season.fish.assign(order=orders_on_trip(season, log))
    told = fish[fish["trip_no"].isin(keys) & (fish["fish"] > 0)].sort_values("trip_no", kind="stable")
    rows = zip(told["trip_no"], told["order"], strict=True)
    return told.assign(
        occurrenceID=[identifier("occurrence", *keys[number], str(order)) for number, order in rows]
    ).reset_index(drop=True)


def make_occurrences(
    season: Season, log: TidyLog, trips: pd.DataFrame, keys: dict[int, Key], caught: pd.DataFrame
) -> pd.DataFrame:
    """Return the occurrences, columns as OCCURRENCES: fish, then what was not caught."""
    none = absences(season, log, trips)
    missing = zip(none["trip_no"], none["species"], strict=True)
    none = none.assign(
        occurrenceID=[identifier("none", *keys[number], species) for number, species in missing],
        fish=0.0,
        occurrenceStatus="notDetected",
    )
    table = pd.concat([caught.assign(occurrenceStatus="detected"), none], ignore_index=True)
    made = table.join(_names(table["species"])).assign(
        eventID=[identifier("event", *keys[number]) for number in table["trip_no"]],
        basisOfRecord="HumanObservation",
        individualCount=table["fish"],
        recordedBy="",
    )
    return made[_COLUMNS]


def _names(species: pd.Series) -> pd.DataFrame:
    """Return what each species is called; its index."""
    named = {code: _named(code) for code in species.unique()}
    columns = ["scientificName", "scientificNameID", "taxonRank", "taxonRemarks", "vernacularName"]
    return pd.DataFrame([named[code] for code in species], columns=columns, dtype=object).set_axis(
        species.index
    )


def _named(code: str) -> tuple[str, ...]:
    taxon = taxon_of(code)
    return taxon.name, taxon.identifier, taxon.rank if taxon.name else "", taxon.disputed, common_name(code)
