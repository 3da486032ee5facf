from collections.abc import Callable

import pytest

from reporter.read.door import open_log
from reporter.tidy.layout import find_layout, wanted_sheet
from reporter.tidy.season import TidyLog, tidy_log
from tests.conftest import Change, WriteLog

Logged = Callable[[dict[str, Change]], TidyLog]


@pytest.fixture(scope="session")
def logged(write_log: WriteLog) -> Logged:
    """Writes the clean log with changes, in metric units, and makes it typed."""

    def tidied(changes: dict[str, Change]) -> TidyLog:
        book = open_log(write_log({"Season": {"B2": "metric"}, **changes}), wanted_sheet)
        return tidy_log(book, *find_layout(book))

    return tidied
