"""The tables of the store of finished logs, and the questions put to it."""

LAYOUT_NUMBER = 1
"""Of the tables; a store with another one is made anew."""

APPLICATION = 0x53525255
"""Stands in the store's header and says that it is ours."""

_EFFORT = (
    "trips INTEGER NOT NULL, trips_unfinished INTEGER NOT NULL, anglers REAL NOT NULL, "
    "angler_hours REAL NOT NULL, rod_hours REAL NOT NULL"
)
_FATES = "kept REAL NOT NULL, released REAL NOT NULL, unknown REAL NOT NULL"
_PLACE = "name TEXT NOT NULL, water TEXT NOT NULL, month TEXT NOT NULL, permit TEXT NOT NULL"

TABLES = (
    "CREATE TABLE log (name TEXT PRIMARY KEY, read_as TEXT NOT NULL, guide_key TEXT NOT NULL, "
    "code TEXT NOT NULL, guide_name TEXT NOT NULL, system TEXT NOT NULL, first TEXT NOT NULL, "
    "last TEXT NOT NULL, rows_read INTEGER NOT NULL, rows_used INTEGER NOT NULL, "
    "rows_set_aside INTEGER NOT NULL, trips_set_aside INTEGER NOT NULL) WITHOUT ROWID",
    f"CREATE TABLE effort ({_PLACE}, {_EFFORT}, PRIMARY KEY (name, water, month, permit)) WITHOUT ROWID",
    f"CREATE TABLE fish ({_PLACE}, species TEXT NOT NULL, {_FATES}, "
    "PRIMARY KEY (name, water, month, permit, species)) WITHOUT ROWID",
    "CREATE TABLE month (name TEXT NOT NULL, month TEXT NOT NULL, state TEXT NOT NULL, "
    "PRIMARY KEY (name, month, state)) WITHOUT ROWID",
    "CREATE TABLE problem (name TEXT NOT NULL, code TEXT NOT NULL, found INTEGER NOT NULL, "
    "PRIMARY KEY (name, code)) WITHOUT ROWID",
)
PARTS = ("log", "effort", "fish", "month", "problem")

NUMBERED = "CREATE TEMP TABLE guide (name TEXT PRIMARY KEY, guide INTEGER NOT NULL) WITHOUT ROWID"
"""Log -> number of its guide: looked up by its key, once for each row of the others."""

_EFFORT_SUMS = (
    "SUM(trips) AS trips, SUM(trips_unfinished) AS trips_unfinished, SUM(anglers) AS anglers, "
    "SUM(angler_hours) AS angler_hours, SUM(rod_hours) AS rod_hours"
)
_FISH_SUMS = "SUM(kept) AS kept, SUM(released) AS released, SUM(unknown) AS unknown"


def _sums(table: str, sums: str, *by: str) -> str:
    keys = ", ".join(("guide", *by))
    return f"SELECT {keys}, {sums} FROM {table} JOIN guide USING (name) GROUP BY {keys} ORDER BY {keys}"  # noqa: S608 - names of ours


QUESTIONS = {
    "logs": "SELECT name AS file, guide, code, guide_name, system, first, last, rows_read, rows_used, "
    "rows_set_aside, trips_set_aside FROM log JOIN guide USING (name) ORDER BY name",
    "effort_places": _sums("effort", _EFFORT_SUMS, "water", "permit"),
    "effort_months": _sums("effort", _EFFORT_SUMS, "month"),
    "fish_places": _sums("fish", _FISH_SUMS, "water", "permit", "species"),
    "fish_months": _sums("fish", _FISH_SUMS, "month", "species"),
    "months": "SELECT DISTINCT guide, month, state FROM month JOIN guide USING (name) "
    "ORDER BY guide, month, state",
    "problems": "SELECT name AS file, code, found FROM problem ORDER BY name, code",
}
"""Table of `Kept` -> how it is asked for."""
