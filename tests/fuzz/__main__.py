"""The long run of the fuzz: `python -m tests.fuzz [CASES] [FIRST] [KIND]`; prints what became of the cases.

KIND is xlsx, ods, xls, csv or own (another layout); ods and xls need LibreOffice to make the log that they
start from.
"""

import sys
import tempfile
import traceback
from collections import Counter
from pathlib import Path

from tests.fuzz.cases import peak_mib, run_case
from tests.fuzz.sources import source


def main(cases: int = 20_000, first: int = 1_000_000, kind: str = "xlsx") -> int:
    """Run cases from a first seed on a clean log; return how many failed."""
    clean = source(kind)
    if clean is None:
        sys.stdout.write("LibreOffice is not installed (no soffice)\n")
        return 1
    outcomes: Counter[str] = Counter()
    most = 0
    with tempfile.TemporaryDirectory() as folder:
        for seed in range(first, first + cases):
            try:
                outcomes[run_case(seed, clean, Path(folder))] += 1
            except Exception:  # every failure is wanted, and named
                outcomes["failed"] += 1
                sys.stdout.write(f"case {seed}:\n{traceback.format_exc()}\n")
            most = max(most, peak_mib())
    sys.stdout.write(f"{cases} cases of {kind}: {dict(outcomes)}; peak memory {most} MiB\n")
    return outcomes["failed"]


if __name__ == "__main__":
    given = sys.argv[1:4]
    sys.exit(min(1, main(*map(int, given[:2]), **({"kind": given[2]} if given[2:] else {}))))
