"""How often Python looks for objects that hold each other."""

import gc

_OBJECTS_BETWEEN_LOOKS = 1_000_000


def look_seldom_for_cycles() -> None:
    """Look seldom: a run makes many small objects and few cycles, and the usual looks take a tenth of it."""
    gc.set_threshold(_OBJECTS_BETWEEN_LOOKS, 20, 20)


def drop_cycles() -> None:
    """Drop what a log has left, so that a process does not grow with its logs.

    Only what was made since the last time is looked at, in some 8 ms; modules are older from the second on.
    """
    gc.collect(1)
