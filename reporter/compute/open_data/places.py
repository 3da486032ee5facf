"""Where a trip was, as far as it may be told: waters not shared by name keep their county and state."""

import re
from typing import Final

import pandas as pd

from reporter.compute.clients.context import Context
from reporter.compute.records import records
from reporter.schema.log import folded
from reporter.tidy.season import TidyLog

PLACE_COLUMNS: Final = (
    "countryCode",
    "stateProvince",
    "county",
    "waterBody",
    "locationID",
    "dataGeneralizations",
    "informationWithheld",
)

_SUBDIVISION = re.compile(r"[A-Z]{2}-[A-Z0-9]{1,3}")  # ISO 3166-2: the form, not whether it exists
PUBLIC = "\x00"  # the code of no client: what it may not read is nobody's to read
_WITHHELD = "Names of people, and where on the water."
_WATER_WITHHELD = "Name of the water, names of people, and where on the water."


def water_places(context: Context, log: TidyLog, waters: pd.Series) -> pd.DataFrame:
    """Return PLACE_COLUMNS, all text, of each water of a column; its index.

    Only a water with a yes under Share name is named. A region that has not the form of ISO 3166-2 is left
    out, and so is a county in whose words a client or a water that is not shared would be told.
    """
    listed: dict[str, dict[str, str]] = {}
    for row in _listed(log):
        listed.setdefault(folded(row["water"]), row)
    made = {}
    for water in waters.unique():
        row = listed.get(folded(water), {})
        county = row.get("county", "")
        if not context.guard.allows(county, PUBLIC):
            county = ""
        named = water not in context.waters.secret
        made[water] = _place(
            row.get("region", ""), county, water if named else "", row.get("agency_code", "")
        )
    table = pd.DataFrame([made[water] for water in waters], columns=list(PLACE_COLUMNS), dtype=object)
    return table.set_axis(waters.index)


def _listed(log: TidyLog) -> list[dict[str, str]]:
    table = log.tables.get("waters")
    if table is None:
        return []
    return records(table.loc[table["used"], ["water", "region", "county", "agency_code"]])


def _place(region: str, county: str, water: str, agency_code: str) -> tuple[str, ...]:
    state = region.strip().upper()
    if not _SUBDIVISION.fullmatch(state):
        state = ""
    return (
        state.partition("-")[0],
        state,
        county,
        water,
        agency_code if water else "",
        "" if water else _generalised(county, state),
        _WITHHELD if water else _WATER_WITHHELD,
    )


def _generalised(county: str, state: str) -> str:
    known = [word for word, value in (("county", county), ("state", state)) if value]
    return f"Place given by {' and '.join(known)} only." if known else "Place not given."
