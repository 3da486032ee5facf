"""The tool, end to end, against a second implementation that was written from the rules alone."""

import csv
from collections import Counter
from pathlib import Path

import pytest
from click.testing import CliRunner

from reporter.cli.main import cli
from tests.reference.account import Account
from tests.reference.cases import CASES
from tests.reference.compare import Table, differences
from tests.reference.intervals import Spread, pooled_spread, rate_range
from tests.reference.log import Log
from tests.reference.random_log import random_log
from tests.reference.workbook import load_log, write_log

SAMPLE = Path(__file__).parent.parent / "sample_workbooks" / "demo season.xlsx"
SEEDS = range(40)

D1 = [(5, 4), (0, 4), (7, 6), (4, 6), (0, 3.5), (9, 6), (2, 4), (5, 7.5)]
SHORT = [(0, 3), (4, 2.5), (1, 2)]
SPREAD = 0.1960825, 12
RULES = {
    *("blank line", "line that is no row", "four trips or fewer", "one technique", "nothing caught"),
    *("own_trips", "borrowed", "assumed", "none_caught"),
    *("blank as above", "date as trip", "trip set aside", "trip written twice", "required_blank"),
    *("trip_not_given", "trip_unknown", "trip_date_shared", "trip_set_aside"),
    *("status done", "status cut short", "status log not finished", "status cancelled", "status void"),
    *("timed by minutes", "timed by clock", "timed by parts", "parts_mixed", "no_effort"),
    *("effort_above", "effort_below", "effort_over", "pair half usable", "pair excluded with its fish"),
    *("tally_less", "tally more than rows", "no_fish_written", "fish without effort", "only technique"),
    *("loose fish on tallies", "loose fish beyond tallies", "loose fish without tallies"),
    *("species not counted", "bass as black bass", "fish of unknown kind"),
}
"""Everything that the reference can note of a log."""


def _build(log: Path, folder: Path) -> dict[str, Table]:
    arguments = ["build", str(log), "--out", str(folder), "--tables", str(folder / "tables"), "--quiet"]
    result = CliRunner().invoke(cli, arguments, catch_exceptions=False)
    assert result.exit_code == 0, result.output
    tables = {}
    for path in (folder / "tables").glob("*.csv"):
        with path.open(encoding="utf-8-sig", newline="") as file:
            tables[path.stem] = [*csv.DictReader(file)]
    return tables


def _compare(log: Log, path: Path, folder: Path) -> None:
    found = differences(Account(log), _build(path, folder))
    assert not found, "\n".join(found)


def _write_and_compare(log: Log, folder: Path) -> None:
    path = folder / "log.xlsx"
    write_log(log, path)
    _compare(log, path, folder)


def test_the_demo_season_comes_out_as_the_reference_says(tmp_path: Path) -> None:
    _compare(load_log(SAMPLE), SAMPLE, tmp_path)


@pytest.mark.parametrize("seed", SEEDS)
def test_a_random_log_comes_out_as_the_reference_says(seed: int, tmp_path: Path) -> None:
    _write_and_compare(random_log(seed), tmp_path)


@pytest.mark.parametrize("case", CASES)
def test_a_rule_holds_at_its_edge(case: str, tmp_path: Path) -> None:
    _write_and_compare(CASES[case], tmp_path)


def test_the_random_logs_make_use_of_every_rule() -> None:
    used: Counter[str] = Counter()
    for seed in SEEDS:
        account = Account(random_log(seed))
        used += account.notes.rules + account.notes.found
        techniques = account.groups(lambda pair: pair.technique)
        used.update(group.range("fish").rule for group in techniques.values())
        used["one technique"] += len(techniques) == 1
        used["nothing caught"] += bool(account.pairs) and not any(pair.fish for pair in account.pairs)
        used["four trips or fewer"] += len(account.catches) <= 4
        for count in account.counts.values():
            used["blank line"] += count.blank
            used["line that is no row"] += count.not_rows
    assert {rule for rule, times in used.items() if times >= 2} == RULES


# Computed with R 4.2.2: survey::svyratio for the variance of D1, qgamma for the limits.
@pytest.mark.parametrize(
    ("trips", "rate", "low", "high", "rule"),
    [
        (D1, 0.7804878, 0.4160777, 1.333509, "own_trips"),
        (SHORT, 0.6666667, 0.1389532, 1.939056, "borrowed"),
    ],
)
def test_the_reference_gives_the_ranges_of_another_program(
    trips: list[tuple[float, float]], rate: float, low: float, high: float, rule: str
) -> None:
    found = rate_range(trips, Spread(*SPREAD))
    assert (found.rate, found.low, found.high) == pytest.approx((rate, low, high), rel=5e-7)
    assert found.rule == rule


# Computed with R 4.2.2.
@pytest.mark.parametrize(("kappa", "high"), [(0.4, 0.5053445), (0.0, 0.3883031)])
def test_the_reference_gives_the_bound_of_a_blank_record(kappa: float, high: float) -> None:
    found = rate_range([(0, 3), (0, 4), (0, 2.5)], Spread(kappa, 12))
    assert (found.rate, found.low, found.rule) == (0, 0, "none_caught")
    assert found.high == pytest.approx(high, rel=5e-7)


def test_the_reference_pools_the_spread_of_techniques_as_another_program_does() -> None:
    other = [(1, 2), (3, 2), (0, 1.5), (2, 3)]
    spread = pooled_spread([D1, other, SHORT])
    assert spread.kappa == pytest.approx(SPREAD[0], rel=5e-7)
    assert spread.df == SPREAD[1]
