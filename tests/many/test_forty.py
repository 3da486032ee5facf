"""Forty logs, four of which cannot be done: each of these is told with its reason, and the rest are built."""

import os
from pathlib import Path

import pytest

from reporter.run.batch import build_batch, make_orders
from reporter.run.crews import crew_of_processes
from reporter.run.jobs import plan
from reporter.run.logs import find_logs
from reporter.run.many import Crew
from reporter.run.outcome import Outcome
from tests.many.logs import spoil, write_seasons

pytestmark = pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="needs pipes")

LOGS = 40
SECONDS = 5.0  # a log of these takes half a second, and with all that is imported two


def build(folder: Path, out: Path, crew: Crew) -> tuple[list[Path], list[Outcome], list[int]]:
    """The logs of a folder, what became of each, and the places in the order in which they were told."""
    logs, sentences = find_logs([folder])
    assert sentences == []
    orders = make_orders(plan(logs, out, None), [], ends_process=crew.elsewhere)
    told: list[int] = []
    outcomes = list(
        build_batch(
            [order._replace(seconds=SECONDS) for order in orders], crew, lambda index, _: told.append(index)
        )
    )
    return logs, outcomes, told


def test_what_cannot_be_done_is_told_and_the_rest_is_built(tmp_path: Path) -> None:
    spoiled = spoil(write_seasons(tmp_path / "logs", LOGS, trips=10))
    logs, outcomes, told = build(tmp_path / "logs", tmp_path / "out", crew_of_processes(2))
    assert sorted(told) == list(range(len(logs)))
    assert len(logs) == LOGS + 1  # the pipe in the place of a layout is none either
    states = {log.name: outcome.state for log, outcome in zip(logs, outcomes, strict=True)}
    assert {name: state for name, state in states.items() if state != "done"} == spoiled
    for log, outcome in zip(logs, outcomes, strict=True):
        assert (log.name in " ".join(outcome.why)) == (outcome.state != "done")
        assert (tmp_path / "out" / f"{log.stem} report.xlsx").exists() == (outcome.state == "done")
    sentences = " ".join(sentence for outcome in outcomes for sentence in outcome.why)
    for reason in (
        "only part of it is here",
        "locked with a password",
        "a pipe, not a file",
        "after 5 seconds",
    ):
        assert reason in sentences
