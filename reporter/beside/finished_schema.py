"""The tables of the store of finished logs, and the questions put to it."""

LAYOUT_NUMBER = 1
"""Of the tables; a store with another one is made anew."""

APPLICATION = 0x53525255
"""Stands in the store's header and says that it is ours."""

FIGURE_COLUMNS = ["figure", "species", "water", "month", "permit", "value"]
"""Of the table `figure`, behind the log's name."""

TABLES = (
    "CREATE TABLE log (name TEXT PRIMARY KEY, read_as TEXT NOT NULL, guide_key TEXT NOT NULL, "
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
    "CREATE TABLE proof (name TEXT PRIMARY KEY, sha256 TEXT NOT NULL) WITHOUT ROWID",
)
PARTS = ("log", "figure", "month", "problem")
"""What a log consists of; its proof is the SHA-256 of its rows in these."""

NUMBERED = "CREATE TEMP TABLE guide (name TEXT PRIMARY KEY, guide INTEGER NOT NULL) WITHOUT ROWID"
"""Log -> number of its guide: looked up by its key, once for each row of the others."""

_FIGURES = "FROM figure JOIN guide USING (name)"
_WAYS = {"all": "''", "water": "as_water(water)", "month": "month", "permit": "as_permit(permit)"}

QUESTIONS = {
    "logs": "SELECT name AS file, guide, code, guide_name, system, first, last, rows_read, rows_used, "
    "rows_set_aside, trips_set_aside FROM log JOIN guide USING (name) ORDER BY name",
    "cells": "SELECT figure, species, as_water(water) AS water, month, as_permit(permit) AS permit, "
    "SUM(value) AS value, COUNT(DISTINCT guide) AS guides, MIN(guide) AS one, MAX(guide) AS other "
    f"{_FIGURES} GROUP BY 1, 2, 3, 4, 5 ORDER BY 1, 2, 3, 4, 5",
    "by_guide": f"SELECT guide, species, figure, SUM(value) AS value {_FIGURES} GROUP BY 1, 2, 3 "
    "ORDER BY 1, 2, 3",
    "lines": " UNION ALL ".join(
        f"SELECT '{way}' AS \"by\", {line} AS name, COUNT(DISTINCT guide) AS guides {_FIGURES} "
        "WHERE figure = 'trips' GROUP BY 2"
        for way, line in _WAYS.items()
    ),
    "months": "SELECT DISTINCT guide, month, state FROM month JOIN guide USING (name) "
    "ORDER BY guide, month, state",
    "problems": "SELECT name AS file, code, found FROM problem ORDER BY name, code",
}
"""Table of `Kept` -> how it is asked for. as_water, as_permit: a name in one spelling."""
