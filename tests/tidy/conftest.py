from collections.abc import Callable
from pathlib import Path

import pytest

from reporter.run.season import Reading, read_season
from tests.tidy.shared import Find, Read, triples


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
