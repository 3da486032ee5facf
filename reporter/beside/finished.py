"""Finished logs of a roll-up: kept beside it, so that a further run reads only what has changed.

An SQLite file with a handful of sums a log; each log goes in whole or not at all, so that a run that is
killed at any moment leaves only finished logs behind.
"""

import sqlite3
from collections.abc import Iterator, Mapping
from contextlib import closing, contextmanager
from pathlib import Path

import pandas as pd

from reporter.beside.finished_file import make_tables, open_store
from reporter.beside.finished_guides import held_back_logs, number_guides
from reporter.beside.finished_schema import FIGURE_COLUMNS, PARTS, QUESTIONS
from reporter.compute.rollup.kept import Kept
from reporter.compute.rollup.log_sums import LogSums
from reporter.compute.rollup.spelling import one_spelling
from reporter.files.atomic import replace_file
from reporter.files.fingerprint import sha256_of_text


def finished_path(out: Path) -> Path:
    """Return where the finished logs of a roll-up are kept."""
    return out.parent / f"{out.stem} rollup.sqlite"


class Finished:
    """The store of finished logs, open: what goes wrong becomes CannotWrite in `open_finished`."""

    def __init__(self, path: Path, connection: sqlite3.Connection) -> None:
        self._path = path
        self._store = connection

    def states(self) -> dict[str, str]:
        """Return log name -> what it was read as (see `put`), of logs that stand as they were put there."""
        proofs = dict(self._store.execute("SELECT name, sha256 FROM proof"))
        return {name: state for name, state in self._read_as() if proofs.get(name) == self._proof(name)}

    def _read_as(self) -> list[tuple[str, str]]:
        return self._store.execute("SELECT name, read_as FROM log").fetchall()

    def put(self, name: str, state: str, sums: LogSums) -> None:
        """Keep a log in the place of what was kept of it. state: of its content, and how it was read."""
        with self._store as store:
            store.execute("BEGIN IMMEDIATE")
            self._drop(name)
            row = (name, state, sums.code, sums.guide, sums.system, sums.first, sums.last, *sums.rows)
            _insert(store, "log", [row])
            _insert(store, "figure", [(name, *row) for row in _rows(sums.figures[FIGURE_COLUMNS])])
            _insert(store, "month", [(name, *row) for row in sorted(sums.months)])
            _insert(store, "problem", [(name, *row) for row in sums.problems.items()])
            _insert(store, "trip", [(name, mark) for mark in sorted(sums.trips)])
            _insert(store, "proof", [(name, self._proof(name))])

    def keep_only(self, states: Mapping[str, str]) -> None:
        """Drop every log that is not among these, or not as it is there."""
        with self._store as store:
            store.execute("BEGIN IMMEDIATE")
            kept: list[tuple[object, ...]] = [
                (name,) for name, state in self._read_as() if states.get(name) == state
            ]
            store.execute("CREATE TEMP TABLE keep (name TEXT PRIMARY KEY)")
            _insert(store, "keep", kept)
            for part in (*PARTS, "proof"):
                store.execute(f"DELETE FROM {part} WHERE name NOT IN (SELECT name FROM keep)")  # noqa: S608 - a name of ours
            store.execute("DROP TABLE temp.keep")

    def held_back(self) -> dict[str, str]:
        """Return log -> the earlier one that has a trip of it, of the logs that are not counted for that."""
        return held_back_logs(self._store)

    def marks(self, name: str) -> frozenset[str]:
        """Return the marks of a log's trips."""
        return frozenset(
            mark for (mark,) in self._store.execute("SELECT mark FROM trip WHERE name = ?", (name,))
        )

    def kept(self, numbers: Mapping[str, int]) -> Kept:
        """Return what is kept of logs. numbers: name of each that is counted -> its number in their order."""
        number_guides(self._store, numbers)
        self._spell("water")
        self._spell("permit")
        tables = {name: self._table(question) for name, question in QUESTIONS.items()}
        for name in ("logs", "problems"):
            tables[name]["log"] = tables[name]["file"].map(dict(numbers)).astype("int64")
        tables["logs"]["known"] = tables["logs"]["known"].astype(bool)
        return Kept(**{**tables, "problems": tables["problems"][["log", "code", "found"]]})

    def _spell(self, column: str) -> None:
        """Let the questions have a column under one spelling of each name, over all logs."""
        names = self._store.execute(f"SELECT DISTINCT {column} FROM figure JOIN guide USING (name)")  # noqa: S608 - a name of ours
        spelling = one_spelling(name for (name,) in names)
        self._store.create_function(f"as_{column}", 1, spelling.__getitem__, deterministic=True)

    def settle(self) -> None:
        """Write the store anew without gaps, and close it: the same logs give the same bytes."""
        replace_file(self._path, self._write)

    def _write(self, target: Path) -> None:
        self._store.close()  # its file is replaced, which some systems refuse while it is open
        with closing(sqlite3.connect(target, isolation_level=None)) as anew:
            make_tables(target, anew)
            anew.execute("ATTACH ? AS before", (str(self._path),))
            anew.execute("BEGIN")
            for part in (*PARTS, "proof"):
                anew.execute(f"INSERT INTO {part} SELECT * FROM before.{part}")  # noqa: S608 - a name of ours
            anew.execute("COMMIT")

    def _proof(self, name: str) -> str:
        rows = (
            self._store.execute(f"SELECT * FROM {part} WHERE name = ? ORDER BY 1, 2", (name,))  # noqa: S608 - a name of ours
            for part in PARTS
        )
        return sha256_of_text(*(repr(row) for part in rows for row in part))

    def _drop(self, name: str) -> None:
        for part in (*PARTS, "proof"):
            self._store.execute(f"DELETE FROM {part} WHERE name = ?", (name,))  # noqa: S608 - a name of ours

    def _table(self, question: str) -> pd.DataFrame:
        cursor = self._store.execute(question)
        columns = [column for column, *_ in cursor.description]
        return pd.DataFrame(cursor.fetchall(), columns=columns)


@contextmanager
def open_finished(path: Path) -> Iterator[Finished]:
    """Open the store, made anew where there is none; closed in any case. CannotWrite: see `open_store`."""
    with open_store(path) as connection:
        yield Finished(path, connection)


def _insert(store: sqlite3.Connection, table: str, rows: list[tuple[object, ...]]) -> None:
    if rows:
        marks = ", ".join("?" * len(rows[0]))
        store.executemany(f"INSERT INTO {table} VALUES ({marks})", rows)  # noqa: S608 - a name of ours


def _rows(table: pd.DataFrame) -> list[tuple[object, ...]]:
    """Return rows as plain Python values, which the store takes."""
    return list(zip(*(values.tolist() for _, values in table.items()), strict=True))
