"""The crew that is a Dask cluster: its scheduler hands the logs to workers on other machines."""

import logging
import sys
from collections.abc import Iterator
from contextlib import contextmanager

from reporter.run.many import Crew, NoCrew

_SECONDS_TO_ANSWER = 5
_EXTRA = "dask[distributed]"


@contextmanager
def cluster_crew(address: str, logs: int) -> Iterator[Crew]:
    """Give the crew of the cluster whose scheduler is at an address, for so many logs; NoCrew.

    The scheduler gets all logs at once and shares them out: workers may come and go. Where one ends under a
    log, it gives the log to another, and gives it up after as many as it is set to.
    """
    try:
        from distributed import Client
        from distributed.scheduler import KilledWorker
    except ImportError as error:
        raise NoCrew(
            "--cluster needs Dask, which is not installed here; install it with: "
            f'"{sys.executable}" -m pip install "{_EXTRA}"'
        ) from error
    # What they would log comes back with each log's future.
    for name in ("distributed", "distributed.client", "tornado.application"):
        logging.getLogger(name).setLevel(logging.CRITICAL)
    try:
        client = Client(address, timeout=_SECONDS_TO_ANSWER, set_as_default=False)
    except (OSError, ValueError, TimeoutError) as error:
        raise NoCrew(
            f"I cannot reach a cluster at {address}; give the address that its scheduler printed when it was "
            "started, such as tcp://host:8786."
        ) from error
    with client:
        if not client.nthreads():
            raise NoCrew(
                f"The cluster at {address} has no workers; start one: dask worker {address} --nthreads 1"
            )
        # pure: the same order is another one once the log has changed.
        yield Crew(
            lambda _: client.get_executor(pure=False),
            workers=1,
            at_once=logs,
            ended=(KilledWorker,),
            # It is closed where its scheduler is lost, and may leave futures undone then.
            gone=lambda: client.status in ("closing", "closed"),
        )
