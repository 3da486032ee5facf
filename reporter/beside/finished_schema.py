"""The tables of the store of finished logs, and the questions put to it."""

LAYOUT_NUMBER = 2
"""Of the tables; a store with another one is made anew."""

APPLICATION = 0x53525255
"""Stands in the store's header and says that it is ours."""

FIGURE_COLUMNS = ["figure", "species", "water", "month", "permit", "value"]
"""Of the table `figure`, behind the log's name."""

TABLES = (
    "CREATE TABLE log (name TEXT PRIMARY KEY, read_as TEXT NOT NULL, "
    "code TEXT NOT NULL, guide_name TEXT NOT NULL, system TEXT NOT NULL, first TEXT NOT NULL, "
    "last TEXT NOT NULL, rows_read INTEGER NOT NULL, rows_used INTEGER NOT NULL, "
    "rows_set_aside INTEGER NOT NULL, trips_set_aside INTEGER NOT NULL) WITHOUT ROWID",
    "CREATE TABLE figure (name TEXT NOT NULL, figure TEXT NOT NULL, species TEXT NOT NULL, "
    "water TEXT NOT NULL, month TEXT NOT NULL, permit TEXT NOT NULL, value REAL NOT NULL, "
    "PRIMARY KEY (name, figure, species, water, month, permit)) WITHOUT ROWID",
    "CREATE TABLE month (name TEXT NOT NULL, month TEXT NOT NULL, state TEXT NOT NULL, "
    "PRIMARY KEY (name, month, state)) WITHOUT ROWID",
    "CREATE TABLE problem (name TEXT NOT NULL, code TEXT NOT NULL, found INTEGER NOT NULL, "
    "PRIMARY KEY (name, code)) WITHOUT ROWID",
    "CREATE TABLE trip (name TEXT NOT NULL, mark TEXT NOT NULL, PRIMARY KEY (name, mark)) WITHOUT ROWID",
    "CREATE TABLE proof (name TEXT PRIMARY KEY, sha256 TEXT NOT NULL) WITHOUT ROWID",
)
PARTS = ("log", "figure", "month", "problem", "trip")
"""What a log consists of; its proof is the SHA-256 of its rows in these."""

NUMBERED = (
    "CREATE TEMP TABLE guide (name TEXT PRIMARY KEY, guide INTEGER NOT NULL, known INTEGER) WITHOUT ROWID"
)
"""Log that is counted -> number of its guide, looked up once for each row of the others; known: the same,
nothing where it is not known whose log it is, so that it counts as no guide."""

KEYED = (
    "CREATE TEMP TABLE whose (guide_key TEXT NOT NULL, name TEXT NOT NULL, PRIMARY KEY (guide_key, name)) "
    "WITHOUT ROWID"
)
"""What makes a log its guide's, "" where that is not known."""

SHARING = (
    "SELECT later.name, earlier.name FROM temp.whose AS later "
    "CROSS JOIN temp.whose AS earlier ON earlier.guide_key = later.guide_key AND earlier.name < later.name "
    "WHERE later.guide_key <> '' AND EXISTS (SELECT 1 FROM trip AS one CROSS JOIN trip AS other "
    "ON other.name = earlier.name AND other.mark = one.mark WHERE one.name = later.name) "
    "UNION SELECT MAX(one.name, other.name), MIN(one.name, other.name) FROM temp.whose AS nobody "
    "CROSS JOIN trip AS one ON one.name = nobody.name "
    "CROSS JOIN trip AS other ON other.mark = one.mark AND other.name <> one.name "
    "WHERE nobody.guide_key = '' ORDER BY 1, 2"
)
"""Logs that share a trip with an earlier one that is or may be the same guide's, and that one. Logs of one
guide are put against each other, never all logs: guides of one region write much the same of many a day."""

_FIGURES = "FROM figure JOIN guide USING (name)"
_WAYS = {"all": "''", "water": "as_water(water)", "month": "month", "permit": "as_permit(permit)"}

QUESTIONS = {
    "logs": "SELECT name AS file, guide, known IS NOT NULL AS known, code, guide_name, system, first, "
    "last, rows_read, rows_used, rows_set_aside, trips_set_aside FROM log JOIN guide USING (name) "
    "ORDER BY name",
    "cells": "SELECT figure, species, as_water(water) AS water, month, as_permit(permit) AS permit, "
    "SUM(value) AS value, COUNT(DISTINCT known) AS guides, MIN(known) AS one, MAX(known) AS other "
    f"{_FIGURES} GROUP BY 1, 2, 3, 4, 5 ORDER BY 1, 2, 3, 4, 5",
    "by_guide": f"SELECT guide, species, figure, SUM(value) AS value {_FIGURES} GROUP BY 1, 2, 3 "
    "ORDER BY 1, 2, 3",
    "lines": " UNION ALL ".join(
        f"SELECT '{way}' AS \"by\", {line} AS name, COUNT(DISTINCT known) AS guides {_FIGURES} "
        "WHERE figure = 'trips' GROUP BY 2"
        for way, line in _WAYS.items()
    ),
    "months": "SELECT DISTINCT guide, month, state FROM month JOIN guide USING (name) "
    "ORDER BY guide, month, state",
    "problems": "SELECT name AS file, code, found FROM problem JOIN guide USING (name) ORDER BY name, code",
}
"""Table of `Kept` -> how it is asked for. as_water, as_permit: a name in one spelling."""
