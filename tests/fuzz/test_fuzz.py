"""Mutated logs end in a report or in problems, never in a traceback. The long run: `python -m tests.fuzz`."""

import os
import time
from collections import Counter
from pathlib import Path

import pytest

from tests.fuzz.cases import run_case
from tests.fuzz.sources import source

CASES = 1500
SECONDS = {"xlsx": 30.0, "ods": 7.0, "xls": 7.0, "csv": 5.0, "own": 11.0}


@pytest.mark.libreoffice
@pytest.mark.parametrize("kind", SECONDS)
def test_mutated_log_is_refused_stopped_or_read(kind: str, tmp_path: Path) -> None:
    clean = source(kind)
    if clean is None:
        (pytest.fail if os.environ.get("CI") else pytest.skip)("LibreOffice is not installed (no soffice)")
    end = time.monotonic() + SECONDS[kind]
    outcomes: Counter[str] = Counter()
    for seed in range(CASES):
        outcomes[run_case(seed, clean, tmp_path)] += 1
        if time.monotonic() > end:
            break
    assert set(outcomes) <= {"refused", "stopped", "read", "built", "adopted"}
    assert set(outcomes) >= {"refused", "read"}
