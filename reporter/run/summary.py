"""What became of several logs, as the rows of a summary and in all."""

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from reporter.run.jobs import Job
from reporter.run.outcome import Outcome, Rows
from reporter.write.summary import Value


class Total(NamedTuple):
    """How many logs are done, how many are not, and the rows of all that could be read."""

    done: int
    failed: int
    rows: Rows


def total(outcomes: Iterable[Outcome]) -> Total:
    """Add up what became of the logs."""
    found = list(outcomes)
    done = sum(outcome.state == "done" for outcome in found)
    rows = [outcome.rows for outcome in found]
    return Total(
        done,
        len(found) - done,
        Rows(
            sum(count.read for count in rows),
            sum(count.used for count in rows),
            sum(count.set_aside for count in rows),
        ),
    )


def summary_rows(jobs: Sequence[Job], outcomes: Sequence[Outcome]) -> list[dict[str, Value]]:
    """Return a row a log, by the columns of `reporter.schema.summary_table`."""
    return [_row(job, outcome) for job, outcome in zip(jobs, outcomes, strict=True)]


def _row(job: Job, outcome: Outcome) -> dict[str, Value]:
    row: dict[str, Value] = {
        "log": str(job.log),
        "state": outcome.state,
        "why": " ".join(outcome.why),
    }
    if outcome.read:
        rows, effects = outcome.rows, outcome.effects
        row |= {"rows_read": rows.read, "rows_used": rows.used, "rows_set_aside": rows.set_aside}
        row |= {
            "stops": effects.get("stop", 0),
            "set_aside": effects.get("set aside", 0),
            "notes": effects.get("note", 0),
        }
    if outcome.state == "done":
        row |= {**outcome.whole, "report": str(job.report)}
    return row
