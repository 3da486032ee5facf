"""Whose each finished log is, and which of them hold a trip of another: asked of the store as a whole."""

import sqlite3
from collections.abc import Container

from reporter.beside.finished_schema import KEYED, NUMBERED, SHARING
from reporter.compute.rollup.identity import Said, guide_keys
from reporter.compute.same_trips import held_back


def held_back_logs(store: sqlite3.Connection) -> dict[str, str]:
    """Return log -> the earlier one that has a trip of it, of the logs that are not counted for that."""
    store.execute("DROP TABLE IF EXISTS temp.whose")
    store.execute(KEYED)
    store.executemany("INSERT INTO temp.whose (name, guide_key) VALUES (?, ?)", _whose(store).items())
    return held_back(store.execute(SHARING))


def number_guides(store: sqlite3.Connection, counted: Container[str]) -> None:
    """Give each guide of the logs that are counted a number from 0 on, in the order of the first log's name.

    A log of which it is not known whose it is has a number of its own, by which it counts as no guide.
    """
    numbers: dict[str, int] = {}
    rows: list[tuple[str, int, int | None]] = []
    for name, key in _whose(store).items():
        if name in counted:
            number = numbers.setdefault(key or f"log {name}", len(numbers))
            rows.append((name, number, number if key else None))
    store.execute("DROP TABLE IF EXISTS temp.guide")
    store.execute(NUMBERED)
    store.executemany("INSERT INTO temp.guide VALUES (?, ?, ?)", rows)


def _whose(store: sqlite3.Connection) -> dict[str, str]:
    """Return log -> what makes it its guide's, by name: of all logs, as one may say whose another is."""
    said = store.execute("SELECT name, code, guide_name FROM log ORDER BY name")
    return guide_keys([Said(*row) for row in said])
