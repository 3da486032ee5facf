"""Logs of an association, and a note of which logs are read."""

from pathlib import Path

import pytest

from reporter.run import rollup_read
from tests.rollup_logs import random_association, save_all


@pytest.fixture
def association(tmp_path: Path) -> Path:
    save_all(random_association(5, 6), tmp_path / "logs")
    return tmp_path / "logs"


@pytest.fixture
def reads(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Names of the logs that are read, as they are."""
    found: list[str] = []
    read_season = rollup_read.read_season

    def noted(path: Path) -> object:
        found.append(path.name)
        return read_season(path)

    monkeypatch.setattr(rollup_read, "read_season", noted)
    return found
