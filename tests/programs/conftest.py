"""Every kind of workbook, written once a run."""

from collections.abc import Callable
from functools import cache
from pathlib import Path

import pytest

from tests.conftest import WriteLog
from tests.programs.books import ONE, ONE_TRIP, OTHERS, REPORTS, build
from tests.recalculate import recalculated

Workbook = Callable[[str], Path]
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


@pytest.fixture(scope="session")
def again(workbook: Workbook, tmp_path_factory: pytest.TempPathFactory) -> Workbook:
    """The workbook of a kind as LibreOffice recalculates it."""

    @cache
    def recalculate(kind: str) -> Path:
        return recalculated(workbook(kind), tmp_path_factory.mktemp("again"))

    return recalculate
