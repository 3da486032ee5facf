"""The long run of the fuzz: `python -m tests.fuzz [CASES] [FIRST]`; prints what became of the cases."""

import resource
import sys
import tempfile
import traceback
from collections import Counter
from pathlib import Path

from tests.fuzz.cases import clean_log, run_case


def main(cases: int = 20_000, first: int = 1_000_000) -> int:
    """Run cases from a first seed on a clean log; return how many failed."""
    source = clean_log()
    outcomes: Counter[str] = Counter()
    with tempfile.TemporaryDirectory() as folder:
        for seed in range(first, first + cases):
            try:
                outcomes[run_case(seed, source, Path(folder))] += 1
            except Exception:  # every failure is wanted, and named
                outcomes["failed"] += 1
                sys.stdout.write(f"case {seed}:\n{traceback.format_exc()}\n")
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss // 1024
    sys.stdout.write(f"{cases} cases: {dict(outcomes)}; peak memory {peak} MiB\n")
    return outcomes["failed"]


if __name__ == "__main__":
    sys.exit(min(1, main(*map(int, sys.argv[1:3]))))
