"""Trips and numbers in a sentence."""

from collections.abc import Iterable

_MOST = 5


def trips_said(numbers: Iterable[str]) -> str:
    """Return numbers of trips, each once: "trip T-001", "trips T-001, T-002 and 3 more"."""
    names = list(dict.fromkeys(numbers))
    if len(names) == 1:
        return f"trip {names[0]}"
    if len(names) > _MOST + 1:
        return f"trips {', '.join(names[:_MOST])} and {len(names) - _MOST} more"
    return f"trips {', '.join(names[:-1])} and {names[-1]}"


def counted(number: float, one: str, several: str = "") -> str:
    """Return "1 trip", "2 trips"; several: the word for more than one, where an s does not make it."""
    return f"{figure(number)} {one if number == 1 else several or one + 's'}"


def figure(number: float) -> str:
    """Return a number with as many of two decimals as it needs."""
    return f"{round(number, 2):.12g}"
