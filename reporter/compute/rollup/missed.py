"""A log that is in no total of a roll-up, and why."""

from typing import NamedTuple

STOPS, CANNOT_BE_READ, COUNTED = "stops", "cannot be read", "counted"
TOO_SLOW = "too slow"
SHARES = "has trips of another"
"""A trip of it stands in an earlier log of the same guide: others may stand in it alone."""
TWICE = "there twice"
"""The same content, or its mended copy, is another log: nothing is missing from the totals."""


class Missed(NamedTuple):
    """A log that is not counted.

    log: its number in the order of file names. state: STOPS, CANNOT_BE_READ, TOO_SLOW, SHARES or TWICE.
    sentences: why; they name files and may quote what was typed. codes: the findings that stop it, each as
    often as found.
    """

    log: int
    file: str
    state: str
    sentences: tuple[str, ...]
    codes: tuple[str, ...] = ()

    @property
    def lacking(self) -> bool:
        """Whether what it holds is missing from the totals."""
        return self.state != TWICE
