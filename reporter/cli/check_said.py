"""What `reporter check` prints of a log: what to mend, by what it does to the report, and the rows read."""

from collections.abc import Iterator, Sequence
from itertools import groupby
from typing import TYPE_CHECKING

from reporter.cli import say
from reporter.schema.problems import EFFECTS, Problem, listed_rows

if TYPE_CHECKING:
    from reporter.run.season import Reading

_EFFECT_HEADINGS = {
    "stop": "Stop: no report until these are mended",
    "set aside": "Set aside: not used, in no total",
    "note": "Note: used as it stands",
}


def say_found(reading: "Reading") -> None:
    """Print everything found in a log, then how many rows were read, used and set aside."""
    say.result(reading.path.name)
    if reading.log.layout_file:
        say.result(f"Read through {reading.log.layout_file}.", indent=2)
    if not reading.problems:
        say.result("Nothing to mend: every row was read and used.", indent=2)
    for effect in EFFECTS:
        found = [problem for problem in reading.problems if problem.effect == effect]
        if found:
            say.result()
            say.result(f"{_EFFECT_HEADINGS[effect]} ({len(found):,})")
        for line in _lines(found):
            say.result(line, indent=2)
    say.result()
    _say_rows(reading)


def _lines(found: Sequence[Problem]) -> Iterator[str]:
    """Yield a line a problem; rows one after another about which the same is said share one."""
    for _, alike in groupby(found, lambda problem: (problem.place, problem.heading, problem.text)):
        first, *others = alike
        if others and first.row:
            heading = f", {first.heading}" if first.heading else ""
            rows = listed_rows([problem.row for problem in (first, *others)])
            yield f"{first.place} {rows}{heading}: {first.text}"
            continue
        for problem in (first, *others):
            cell = f" ({problem.cell})" if problem.cell else ""
            yield f"{problem.where}{cell}: {problem.text}"


def _say_rows(reading: "Reading") -> None:
    rows = [
        (
            name,
            *(
                f"{number:,}"
                for number in (count.read, count.used, count.set_aside, count.blank, count.not_rows)
            ),
        )
        for name, count in reading.counts.items()
    ]
    if rows:
        say.table(("Rows", "read", "used", "set aside", "blank", "not rows"), rows)
        say.result("read = used + set aside + blank + not rows", indent=2)
    if reading.season is not None and reading.season.from_above:
        above = reading.season.from_above
        rows_were = "1 row without a trip was" if above == 1 else f"{above:,} rows without a trip were"
        say.result(
            f"{rows_were} read as the trip of the row above: never sort Effort or Catch while Trip is blank "
            "anywhere.",
            indent=2,
        )
