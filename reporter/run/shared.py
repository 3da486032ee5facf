"""Whether workers on other machines have the folders of whoever asks.

A worker that has not would read another log of the same name, or write a report where nobody looks for it.
"""

from collections.abc import Iterator, Sequence
from contextlib import ExitStack, contextmanager, suppress
from pathlib import Path
from tempfile import NamedTemporaryFile

from reporter.files.errors import CannotWrite
from reporter.files.folders import make_folder
from reporter.files.temporary import clear_abandoned, owner
from reporter.run.jobs import Job

Seen = tuple[Path, ...]


@contextmanager
def seen_here(jobs: Sequence[Job]) -> Iterator[dict[Path, Seen]]:
    """Give, for each log, files that a worker must see too: its log, and a hidden one where results go.

    The hidden ones are gone when the block ends; those of a run that was killed go when the next one begins.
    Where there can be none, the job says so itself.
    """
    with ExitStack() as stack:
        signs: dict[Path, Path] = {}
        for folder in dict.fromkeys(folder for job in jobs for folder in _folders(job)):
            with suppress(CannotWrite, OSError):
                make_folder(folder)
                clear_abandoned(folder)
                # A new name each time: one that is left on a worker's machine shows nothing.
                sign = stack.enter_context(NamedTemporaryFile(prefix=f".seen.{owner()}.", dir=folder))
                signs[folder] = Path(sign.name)
        yield {job.log: _of(job, signs) for job in jobs}


def unseen(seen: Seen) -> Path | None:
    """Return the first folder of which a file is not to be seen from here, None where all are."""
    return next((path.parent for path in seen if not _there(path)), None)


def _there(path: Path) -> bool:
    try:
        return path.exists()
    except OSError:  # it may not even be looked for
        return False


def _of(job: Job, signs: dict[Path, Path]) -> Seen:
    found = (signs[folder] for folder in _folders(job) if folder in signs)
    return tuple(path.absolute() for path in (job.log, *found) if _there(path))


def _folders(job: Job) -> Iterator[Path]:
    """Yield the folders that results go into, but that of the log, which shows itself."""
    for target in (job.report, job.tables):
        if target and target.parent != job.log.parent:
            yield target.parent
