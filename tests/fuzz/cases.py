"""One case of the fuzz: a mutated log goes through the reader, the checks and, now and then, the report."""

import datetime as dt
import os
import random
import re
import shutil
import time
from pathlib import Path

from reporter.compute.paperwork.period import OPEN
from reporter.files.errors import CannotWrite
from reporter.read.errors import Unreadable
from reporter.run.adopt import adopt
from reporter.run.build import build
from reporter.run.clients import plan_copies, read_logs, write_copies
from reporter.run.filing import FilingJob, file_pages
from reporter.run.jobs import plan
from reporter.run.season import read_season
from tests.fuzz.mutate import mutate
from tests.fuzz.mutate_others import mutate_csv, mutate_ods, mutate_xls
from tests.fuzz.sources import LAYOUT, Files

SLOWEST_S = 5.0  # of a processor, for a computer may be busy with other things
FILED_ON = dt.date(2026, 12, 1)
HANGS_S = 30.0  # by the clock
MOST_MIB = 1024
_BUILT_SHARE = 0.1
_LAYOUT_SHARE = 0.4  # of the logs in another layout, those of which the layout is mutated
_MUTATIONS = {"log.xlsx": mutate, "log.ods": mutate_ods, "log.xls": mutate_xls}
_PEAK, _FORGET = Path("/proc/self/status"), Path("/proc/self/clear_refs")


def run_case(seed: int, source: Files, folder: Path) -> str:
    """Return what became of a case: refused, stopped, read, built or adopted; anything else is raised."""
    rng = random.Random(seed)  # noqa: S311 - guards nothing
    log = _saved(rng, source, folder)
    _forget_peak()
    begun, worked = time.perf_counter(), _worked()
    chance = rng.random()
    if LAYOUT in source and chance > 1 - _BUILT_SHARE:
        outcome = _adopted(log)
    else:
        outcome = _outcome(log, built=chance < _BUILT_SHARE)
    assert _worked() - worked < SLOWEST_S, f"case {seed} took too long"
    assert time.perf_counter() - begun < HANGS_S, f"case {seed} hung"
    assert peak_mib() < MOST_MIB, f"case {seed} took too much memory"
    return outcome


def _saved(rng: random.Random, source: Files, folder: Path) -> Path:
    if LAYOUT in source:
        return _saved_with_layout(rng, source, folder)
    for name, data in source.items():
        if name in _MUTATIONS:
            (folder / name).write_bytes(_MUTATIONS[name](rng, data))
            return folder / name
    log = folder / "log"
    shutil.rmtree(log, ignore_errors=True)
    log.mkdir()
    for name, data in mutate_csv(rng, source).items():
        (log / name).write_bytes(data)
    return log


def _saved_with_layout(rng: random.Random, source: Files, folder: Path) -> Path:
    """Save a log in another layout and the layout beside it, one of them mutated."""
    mutated = LAYOUT if rng.random() < _LAYOUT_SHARE else "log.xlsx"
    for name, data in source.items():
        (folder / name).write_bytes(mutate(rng, data) if name == mutated else data)
    return folder / "log.xlsx"


def _worked() -> float:
    """Seconds of a processor that this process and its ended children have used."""
    return sum(os.times()[:4])


def _forget_peak() -> None:
    """Let the system measure the most memory anew, where it can."""
    if _FORGET.exists():
        _FORGET.write_text("5", encoding="ascii")


def peak_mib() -> int:
    """Return the most memory held since it was last forgotten, 0 where the system does not say."""
    found = re.search(r"VmHWM:\s*(\d+)", _PEAK.read_text(encoding="ascii")) if _PEAK.exists() else None
    return int(found[1]) // 1024 if found else 0


def _outcome(log: Path, built: bool) -> str:
    try:
        reading = read_season(log)
    except Unreadable as refused:
        return "refused" if _is_a_sentence(str(refused), log) else f"refused without a sentence: {refused}"
    for count in reading.counts.values():
        assert count.read == count.used + count.set_aside + count.blank + count.not_rows
        assert min(count.read, count.used, count.set_aside, count.blank, count.not_rows) >= 0
    if reading.season is None:
        assert any(problem.effect == "stop" for problem in reading.problems)
        return "stopped"
    if not built:
        return "read"
    (job,) = plan([log], None, None)
    build(job, [log])
    copies = plan_copies(read_logs([log]), log.parent / "copies")
    assert copies is not None
    write_copies(copies, list(copies.files), [log], log.parent / "copies", whole=True)
    _file(log)
    return "built"


def _file(log: Path) -> None:
    """File the whole log with all that goes with it; what was filed of the case before is there to differ."""
    beside = log.parent
    file_pages(
        FilingJob(
            log,
            beside / "filing.xlsx",
            OPEN,
            None,
            beside / "tables",
            beside / "archive",
            dt.date(2026, 12, 1),
        )
    )


def _adopted(log: Path) -> str:
    """Adopt a log as if it had no layout yet."""
    (log.parent / LAYOUT).unlink()
    try:
        adopt(log)
    except (Unreadable, CannotWrite) as refused:
        return "refused" if _is_a_sentence(str(refused), log) else f"refused without a sentence: {refused}"
    return "adopted"


def _is_a_sentence(said: str, log: Path) -> bool:
    begins = tuple(f"I cannot {verb} {name}: " for verb in ("read", "adopt") for name in (log.name, LAYOUT))
    begins += (f"I cannot find trips in {log.name}: ", f"{log.name} is a season log as it stands: ")
    return said.startswith(begins) and said.endswith(".") and "\n" not in said
