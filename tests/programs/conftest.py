"""Every kind of workbook, written once a run."""

from collections.abc import Callable
from functools import cache
from pathlib import Path

import pytest

from tests.conftest import WriteLog
from tests.programs.books import ONE_TRIP, OTHERS, REPORTS, build

Workbook = Callable[[str], Path]
ONE = "report of one trip"
KINDS = [*REPORTS, ONE, *OTHERS]


@pytest.fixture(scope="session")
def workbook(tmp_path_factory: pytest.TempPathFactory, write_log: WriteLog) -> Workbook:
    """The workbook of a kind; it is not to be changed."""

    @cache
    def write(kind: str) -> Path:
        folder = tmp_path_factory.mktemp("written")
        if kind == ONE:
            return build(write_log(ONE_TRIP, folder=folder), folder)
        return (REPORTS | OTHERS)[kind](folder)

    return write
