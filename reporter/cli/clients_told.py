"""What `reporter clients` says: what was written, what is in no copy and why, who gets none."""

from collections import Counter
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from reporter.cli import say
from reporter.cli.lines import quoted

if TYPE_CHECKING:
    from reporter.run.clients import Copies
    from reporter.run.season import Reading

_LABEL = 14
_MOST_NAMED = 4


def say_written(readings: "Sequence[Reading]", copies: "Copies", written: Sequence[str], out: Path) -> None:
    """Say what was written, and what is in no copy."""
    from reporter.write.clients_list import LIST

    for reading in readings:
        say.result(reading.path.name)
    if len(written) == 1:
        say.labelled("copies", str(copies.files[written[0]]), _LABEL)
    elif written:
        say.labelled("copies", f"{len(written):,} in {out}; {LIST} lists them", _LABEL)
    for label, text in _left_out(readings, copies):
        say.labelled(label, text, _LABEL)


def _left_out(readings: "Sequence[Reading]", copies: "Copies") -> Iterator[tuple[str, str]]:
    joined = copies.joined
    if joined.no_trip:
        yield "no trip", f"{', '.join(joined.no_trip)}: no copy"
    for log in copies.logs:
        if log.unfinished:
            every = ", ".join(f"{code} ({trips})" for code, trips in log.unfinished.items())
            yield "not finished", f"trips whose log is not finished are in no copy: {every}"
        if log.unnamed:
            yield "not named", f"{', '.join(log.unnamed)}: Share name on Waters does not allow it"
        if log.kept_back:
            yield "kept back", f"{_texts(log.kept_back)}: names someone else, or a place not shared"
    for reading in readings:
        yield from _to_mend(reading)
    if joined.by_code_alone:
        every = ", ".join(joined.by_code_alone)
        yield "by code", f"{every}: one client by the code alone; write Name on summary in every log"


def _to_mend(reading: "Reading") -> Iterator[tuple[str, str]]:
    """Say what copies lack because of the log's own rows."""
    found = Counter(problem.code for problem in reading.problems)
    aside = sum(count.set_aside for count in reading.counts.values())
    check = f"reporter check {quoted(reading.path)}"
    if found["angler_not_listed"]:
        yield "in no copy", f"fish or stints of anglers whom their trips do not list: {check}"
    if aside:
        yield "set aside", f"{aside:,} {'row' if aside == 1 else 'rows'} in no copy: {check}"


def _texts(kept_back: Sequence[tuple[str, str]]) -> str:
    """Return the headings and texts of what was kept back, the first few of them."""
    shown = [f"{heading} “{text}”" for heading, text in kept_back[:_MOST_NAMED]]
    more = len(kept_back) - len(shown)
    return "; ".join([*shown, *([f"and {more} more"] if more else [])])


def say_refused(copies: "Copies", codes: Sequence[str]) -> None:
    """Say which of some clients have trips and get no copy, and where there is no client at all."""
    joined = copies.joined
    for code in codes:
        if code in joined.two_names:
            names = " and ".join(f"'{name}'" for name in joined.two_names[code])
            mend = "If it is one client, write the name alike."
            say.failure(f"No copy for {code}: the logs call it {names}. {mend}")
        elif code in joined.same_day:
            day = joined.same_day[code].date
            alike = f"two logs have one trip of that client on {day}, alike in hour, water and fish"
            say.failure(f"No copy for {code}: {alike}. If one log is a copy of the other, give only one.")
    if not joined.known:
        say.failure("No copy: no client stands in the column Client of Trips, nor on Clients.")
