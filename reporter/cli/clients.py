"""`reporter clients`."""

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from reporter.cli import say
from reporter.cli.weather import open_weather, weather_option

if TYPE_CHECKING:
    from reporter.run.clients import Copies, Read

_LABEL = 14


@click.command(epilog="Example: reporter clients 'season 2026.xlsx' --out copies")
@click.argument("logs", nargs=-1, required=True, metavar="LOG...", type=click.Path(path_type=Path))
@click.option(
    "--out", required=True, type=click.Path(path_type=Path), metavar="DIR", help="Folder for the copies."
)
@click.option("--client", default="", metavar="CODE", help="Only the copy of this client.")
@weather_option
@click.option("--quiet", is_flag=True, help="Print nothing but failures.")
def clients(logs: tuple[Path, ...], out: Path, client: str, weather: tuple[Path, ...], quiet: bool) -> None:
    """Write each client a workbook of his own days, and clients.csv for a mail merge.

    A copy holds what one client may read and nothing of anybody else: no other client's fish, no place that
    Share name on Waters does not allow, no rates, nothing private. Several LOGs give copies over several
    seasons; one code must be one client in all of them.
    """
    from reporter.files.errors import CannotWrite
    from reporter.read.errors import Unreadable
    from reporter.run.clients import plan_copies, read_logs, write_copies
    from reporter.run.logs import find_logs

    found, sentences = find_logs(logs)
    hours = open_weather(weather)
    for sentence in sentences:
        say.failure(sentence)
    if sentences:
        raise SystemExit(1)
    try:
        read = read_logs(found, hours)
        if read.stopped:
            _say_stopped(read)
            raise SystemExit(1)
        copies = plan_copies(read, out)
        codes = _asked(client, copies) if client else list(copies.files)
        if codes:
            write_copies(copies, codes, [*found, *weather], out, whole=not client)
    except (Unreadable, CannotWrite) as refused:
        say.failure(str(refused))
        raise SystemExit(1) from refused
    if not quiet:
        _say_written(read, copies, codes, out)
    _say_refused(copies)
    if not copies.joined.known:
        say.failure("No copy: no client stands in the column Client of Trips, nor on Clients.")
    raise SystemExit(int(not codes or bool(copies.joined.refused)))


def _asked(client: str, copies: "Copies") -> list[str]:
    """Return the code that is asked for; a command line that names no client of the logs is wrong."""
    from reporter.schema.log import folded
    from reporter.tidy.near import nearest

    joined = copies.joined
    wanted = folded(client) or client
    code = next((code for code in joined.known if (folded(code) or code) == wanted), None)
    if code is None:
        near = nearest(client, joined.known)
        hint = f" Did you mean {near}?" if near else ""
        raise click.BadParameter(f"no log has a client '{client}'.{hint}", param_hint="'--client'")
    return [code] if code in joined.copies else []


def _say_stopped(read: "Read") -> None:
    for reading in read.stopped:
        say.failure(f"No copies from {reading.path.name}: {len(reading.stops)} to mend first.")
        for stop in reading.stops:
            say.failure(f"  {stop.message}")
        say.failure(f"Everything found: reporter check '{reading.path}'")


def _say_written(read: "Read", copies: "Copies", codes: Sequence[str], out: Path) -> None:
    from reporter.write.clients_list import LIST

    for reading in read.readings:
        counts = reading.counts.values()
        aside = sum(count.set_aside for count in counts)
        say.result(f"{reading.path.name}: {aside:,} rows set aside" if aside else reading.path.name)
    if codes:
        what = str(copies.files[codes[0]]) if len(codes) == 1 else f"{len(codes):,} in {out}"
        say.labelled("copies", f"{what}; {LIST} lists them" if len(codes) > 1 else what, _LABEL)
    for label, text in _left_out(read, copies):
        say.labelled(label, text, _LABEL)


def _left_out(read: "Read", copies: "Copies") -> list[tuple[str, str]]:
    """Return what is in no copy, and why."""
    said = [("no trip", f"{', '.join(copies.joined.no_trip)}: no copy")] if copies.joined.no_trip else []
    for log in read.clients:
        if log.unfinished:
            every = ", ".join(f"{code} ({trips})" for code, trips in log.unfinished.items())
            said.append(("not finished", f"trips whose log is not finished are in no copy: {every}"))
        if log.unnamed:
            said.append(("not named", f"{', '.join(log.unnamed)}: Share name on Waters does not allow it"))
        if log.kept_back:
            every = ", ".join(log.kept_back)
            said.append(
                ("kept back", f"For the client of {every}: it names another client or a water not shared")
            )
    if copies.joined.by_code_alone:
        every = ", ".join(copies.joined.by_code_alone)
        said.append(("by code", f"{every}: one client by the code alone; write Name on summary in every log"))
    return said


def _say_refused(copies: "Copies") -> None:
    for code, names in copies.joined.two_names.items():
        both = " and ".join(f"'{name}'" for name in names)
        say.failure(
            f"No copy for {code}: the logs call it {both}. If it is one client, write the name alike."
        )
    for code, day in copies.joined.same_day.items():
        say.failure(
            f"No copy for {code}: two logs have a trip of that client on {day.date} at the same hour. "
            "If one log is a copy of the other, give only one."
        )
