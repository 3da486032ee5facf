"""How often Python looks for objects that hold each other."""

import gc

_OBJECTS_BETWEEN_LOOKS = 1_000_000


def look_seldom_for_cycles() -> None:
    """Look seldom: a run makes many small objects and few cycles, and the usual looks take a tenth of it."""
    gc.set_threshold(_OBJECTS_BETWEEN_LOOKS, 20, 20)
