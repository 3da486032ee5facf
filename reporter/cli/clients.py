"""`reporter clients`."""

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from reporter.cli import say
from reporter.cli.clients_told import say_refused, say_written
from reporter.cli.progress import at_work
from reporter.cli.quiet import quiet_option
from reporter.cli.stopped import say_stopped
from reporter.cli.weather import open_weather, weather_option

if TYPE_CHECKING:
    from reporter.run.clients import Copies


@click.command(epilog='Example: reporter clients "season 2026.xlsx" --out copies')
@click.argument("logs", nargs=-1, required=True, metavar="LOG...", type=click.Path(path_type=Path))
@click.option(
    "--out", required=True, type=click.Path(path_type=Path), metavar="DIR", help="Folder for the copies."
)
@click.option(
    "--client", "asked", multiple=True, metavar="CODE", help="Only this client; may be given several times."
)
@weather_option
@quiet_option
def clients(
    logs: tuple[Path, ...], out: Path, asked: tuple[str, ...], weather: tuple[Path, ...], quiet: bool
) -> None:
    """Write each client a workbook of his own days.

    Writes "CODE your days.xlsx" a client into DIR, and clients.csv, their list for a mail merge.

    A copy holds what one client may read and nothing of anybody else: no other client's fish, no place that
    Share name on Waters does not allow, no rates, nothing private. Several LOGs give copies over several
    seasons; one code must be one client in all of them.
    """
    from reporter.files.errors import CannotWrite
    from reporter.read.errors import Unreadable
    from reporter.run.clients import plan_copies, read_logs, write_copies
    from reporter.run.logs import find_logs, left_out

    found, sentences = find_logs(logs)
    say.left_out(left_out(logs), quiet=quiet)
    hours = open_weather(weather, quiet=quiet)
    for sentence in sentences:
        say.failure(sentence)
    if sentences:
        raise SystemExit(1)
    try:
        with at_work("clients", quiet=quiet):
            readings = read_logs(found, hours)
            copies = plan_copies(readings, out)
        if copies is None:
            for reading in readings:
                if reading.stops:
                    say_stopped(reading, "No copies from")
            raise SystemExit(1)
        codes = _chosen(asked, copies) if asked else list(copies.joined.known)
        written = [code for code in codes if code in copies.files]
        if written:
            with at_work("clients", quiet=quiet) as tell:
                write_copies(copies, written, [*found, *weather], out, whole=not asked, tell=tell)
    except (Unreadable, CannotWrite) as refused:
        say.failure(str(refused))
        raise SystemExit(1) from refused
    if not quiet:
        say_written(readings, copies, written, out)
    say_refused(copies, codes)
    raise SystemExit(int(not written or any(code in copies.joined.refused for code in codes)))


def _chosen(asked: Sequence[str], copies: "Copies") -> list[str]:
    """Return the codes that are asked for; a command line that names no client of the logs is wrong."""
    from reporter.schema.log import folded_code
    from reporter.tidy.near import nearest

    known = {folded_code(code): code for code in copies.joined.known}
    for client in asked:
        if folded_code(client) not in known:
            near = nearest(client, list(known.values())) if client.strip() else None
            hint = f" Did you mean {near}?" if near else ""
            raise click.BadParameter(f"no log has a client '{client}'.{hint}", param_hint="'--client'")
    return list(dict.fromkeys(known[folded_code(client)] for client in asked))
