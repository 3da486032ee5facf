"""The crew that is a Dask cluster: its scheduler hands the logs to workers on other machines."""

import shlex
import sys
from collections.abc import Iterator
from contextlib import contextmanager

from reporter.run.many import Crew

_SECONDS_TO_ANSWER = 5
_EXTRA = "dask[distributed]"


class NoCluster(Exception):  # noqa: N818 - named as it reads in an except clause
    """There is no cluster to work on; ``str()`` is one sentence that says what to do."""


@contextmanager
def cluster_crew(address: str, logs: int) -> Iterator[Crew]:
    """Give the crew of the cluster whose scheduler is at an address, for so many logs; NoCluster.

    The scheduler gets all logs at once and shares them out: workers may come and go. Where one ends under a
    log, it gives the log to another, and gives it up after as many as it is set to.
    """
    try:
        from distributed import Client
        from distributed.scheduler import KilledWorker
    except ImportError as error:
        command = f"{shlex.quote(sys.executable)} -m pip install '{_EXTRA}'"
        raise NoCluster(
            f"--cluster needs Dask, which is not installed here; install it with: {command}"
        ) from error
    try:
        client = Client(address, timeout=_SECONDS_TO_ANSWER, set_as_default=False)
    except (OSError, ValueError, TimeoutError) as error:
        raise NoCluster(
            f"I cannot reach a cluster at {address}; give the address that its scheduler printed when it was "
            "started, such as tcp://host:8786."
        ) from error
    with client:
        if not client.nthreads():
            raise NoCluster(
                f"The cluster at {address} has no workers; start one: dask worker {address} --nthreads 1"
            )
        # pure: the same order is another one once the log has changed.
        yield Crew(lambda _: client.get_executor(pure=False), workers=1, at_once=logs, ended=(KilledWorker,))
