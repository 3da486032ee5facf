"""The columns file of `reporter filing`: what a guide's own agency asks, in its order, words and codes.

A small TOML file: `name`, `rows` ("trip" or "species"), then a `[[column]]` each with a heading and either a
field of FIELDS or a fixed text; codes replace values; `date` is a pattern, `hours` how durations are written.
"""

from collections.abc import Mapping
from typing import Literal, NamedTuple, get_args

RowIs = Literal["trip", "species"]
HoursAs = Literal["decimal", "h:mm"]
Holds = Literal["text", "number", "date", "time", "hours"]

ROWS: tuple[str, ...] = get_args(RowIs)
HOURS: tuple[str, ...] = get_args(HoursAs)


class AskedField(NamedTuple):
    """What a column may hold: its key, what it is, of what kind; of_species: only where rows are species."""

    key: str
    what: str
    holds: Holds = "text"
    of_species: bool = False


FIELDS: tuple[AskedField, ...] = (
    AskedField("trip", "The trip's number as you typed it."),
    AskedField("status", "VOID, CANCELLED, or nothing."),
    AskedField("date", "The day it started.", "date"),
    AskedField("water", "The water, as on your sheet Waters."),
    AskedField("agency_code", "The water's Agency code."),
    AskedField("county", "The water's County."),
    AskedField("region", "The water's Region."),
    AskedField("site", "Site."),
    AskedField("guide", "Who guided."),
    AskedField("boat", "Which boat."),
    AskedField("permit", "The permit that the trip counts on."),
    AskedField("anglers", "Clients fishing.", "number"),
    AskedField("clients", "Their codes, with ; between."),
    AskedField("licences", "Their licence numbers, with ; between."),
    AskedField("lines", "Most lines in the water.", "number"),
    AskedField("passengers", "Everyone aboard but guide and crew.", "number"),
    AskedField("left_dock", "Left dock.", "time"),
    AskedField("back_at_dock", "Back at dock.", "time"),
    AskedField("start", "Lines in.", "time"),
    AskedField("end", "Lines out.", "time"),
    AskedField("dock_hours", "Dock to dock.", "hours"),
    AskedField("fishing_hours", "Lines in to lines out, less hours off.", "hours"),
    AskedField("angler_hours", "Anglers x hours fished.", "number"),
    AskedField("line_hours", "Lines x hours fished.", "number"),
    AskedField("caught", "Fish landed.", "number"),
    AskedField("kept", "Of them kept.", "number"),
    AskedField("released", "Of them released.", "number"),
    AskedField("species", "The species' common name.", of_species=True),
    AskedField("species_code", "Our code of the species.", of_species=True),
)
BY_FIELD: Mapping[str, AskedField] = {asked.key: asked for asked in FIELDS}


class AskedColumn(NamedTuple):
    """A column: its heading; a key of FIELDS, or a fixed text where it is ""; codes by value."""

    heading: str
    key: str
    text: str
    codes: Mapping[str, str]
    decimals: int | None


class AskedColumns(NamedTuple):
    """A columns file: the name of what is asked, what one row is, how days and durations are written."""

    name: str
    rows: RowIs
    columns: tuple[AskedColumn, ...]
    date: str = "YYYY-MM-DD"
    hours: HoursAs = "decimal"
    decimal_mark: str = "."
