"""Mutated logs end in a report or in problems, never in a traceback. The long run: `python -m tests.fuzz`."""

import time
from collections import Counter
from pathlib import Path

from tests.fuzz.cases import clean_log, run_case

CASES, SECONDS = 1500, 60.0


def test_mutated_log_is_refused_stopped_or_read(tmp_path: Path) -> None:
    source = clean_log()
    end = time.monotonic() + SECONDS
    outcomes: Counter[str] = Counter()
    for seed in range(CASES):
        outcomes[run_case(seed, source, tmp_path)] += 1
        if time.monotonic() > end:
            break
    assert set(outcomes) == {"refused", "stopped", "read", "built"}
