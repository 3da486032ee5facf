"""The SQLite file of finished logs: opened, made, and refused where it is not ours or damaged."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from tempfile import TemporaryFile

from reporter.beside.finished_schema import APPLICATION, LAYOUT_NUMBER, TABLES
from reporter.files.errors import CannotWrite, refusal, refusal_for

_WAIT_S = 5.0  # for another run on the same roll-up


@contextmanager
def open_store(path: Path) -> Iterator[sqlite3.Connection]:
    """Open a store, made anew where there is none or one of another reporter; closed in any case.

    CannotWrite where the file is not ours, is damaged, or cannot be written.
    """
    connection: sqlite3.Connection | None = None
    try:
        connection = sqlite3.connect(path, timeout=_WAIT_S, isolation_level=None)
        connection.text_factory = _text
        make_tables(path, connection)
        yield connection
    except sqlite3.OperationalError as error:
        raise _refused(path, error) from error
    except sqlite3.DatabaseError as error:
        raise (_damaged(path) if _begins_as_ours(path) else _not_ours(path)) from error
    finally:
        if connection is not None:
            connection.close()


def make_tables(path: Path, store: sqlite3.Connection) -> None:
    """Make the tables, unless they are there; what is there of another reporter's is taken away."""
    ((application,),) = store.execute("PRAGMA application_id")
    ((number,),) = store.execute("PRAGMA user_version")
    try:
        tables = [name for (name,) in store.execute("SELECT name FROM sqlite_master WHERE type = 'table'")]
    except UnicodeDecodeError as error:  # of SQLite's own words, which quote what is damaged
        raise _damaged(path) from error
    if tables and application != APPLICATION:
        raise _not_ours(path)
    if store.execute("PRAGMA quick_check").fetchall() != [("ok",)]:
        raise _damaged(path)
    if tables and number == LAYOUT_NUMBER:
        return
    store.execute("BEGIN IMMEDIATE")
    for name in tables:
        store.execute(f'DROP TABLE "{name}"')
    for table in TABLES:
        store.execute(table)
    store.execute(f"PRAGMA application_id = {APPLICATION}")
    store.execute(f"PRAGMA user_version = {LAYOUT_NUMBER}")
    store.execute("COMMIT")


def _refused(path: Path, said: sqlite3.OperationalError) -> CannotWrite:
    """Return why SQLite gave up; it does not say itself that someone may not write there."""
    try:
        TemporaryFile(dir=path.parent).close()
        if path.exists():
            path.open("r+b").close()
    except OSError as error:
        return refusal_for(path, error)
    return refusal(path, f"the computer says “{said}”; see whether another run is at work on it")


def _text(stored: bytes) -> str:
    """Return text, damaged text too: no log has such a name, and no proof holds for it."""
    return stored.decode("utf-8", "replace")


def _begins_as_ours(path: Path) -> bool:
    with suppress(OSError), path.open("rb") as file:
        return file.read(100)[68:72] == APPLICATION.to_bytes(4, "big")  # where SQLite's header has it
    return False


def _not_ours(path: Path) -> CannotWrite:
    return refusal(path, "it is there and is no store of finished logs that reporter wrote; move it away")


def _damaged(path: Path) -> CannotWrite:
    return refusal(path, "it is damaged; delete it, and the next run reads all logs again")
