from collections.abc import Callable
from pathlib import Path

import pytest

from reporter.read.door import open_log
from reporter.run.season import Reading, read_season
from reporter.tidy.layout import find_layout, wanted_sheet
from reporter.tidy.season import TidyLog, tidy_log
from tests.tidy.shared import Find, Read, Tidy, triples


@pytest.fixture(scope="session")
def read(write_log: Callable[..., Path]) -> Read:
    """Writes a log with changes and reads it."""

    def read_changed(changes: object = None, **options: object) -> Reading:
        return read_season(write_log(changes, **options))

    return read_changed


@pytest.fixture(scope="session")
def found(read: Read) -> Find:
    """What is found in a log with changes: sheet, row and code, sorted."""
    return lambda changes=None, **options: triples(read(changes, **options))


@pytest.fixture(scope="session")
def tidied(write_log: Callable[..., Path]) -> Tidy:
    """Writes a log with changes and makes it typed, no more."""

    def tidy_changed(changes: object = None, **options: object) -> TidyLog:
        book = open_log(write_log(changes, **options), wanted_sheet)
        return tidy_log(book, *find_layout(book))

    return tidy_changed
