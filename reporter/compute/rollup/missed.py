"""A log that is in no total of a roll-up, and why."""

from typing import NamedTuple

STOPS, CANNOT_BE_READ, COUNTED = "stops", "cannot be read", "counted"


class Missed(NamedTuple):
    """A log that is not counted.

    log: its number in the order of file names. state: STOPS or CANNOT_BE_READ. sentences: why; they name the
    file and may quote what was typed. codes: the findings that stop it, each as often as it was found.
    """

    log: int
    file: str
    state: str
    sentences: tuple[str, ...]
    codes: tuple[str, ...] = ()
