"""Time zones by their names; none is ever guessed."""

from zoneinfo import ZoneInfo

_OF_THE_COMPUTER = ("localtime", "posix", "right/", "factory")


def known_zone(name: str | None) -> ZoneInfo | None:
    """Return the zone of a name such as America/Chicago; None for a name that is none.

    Names that mean the computer's own zone are none: the same log must read the same everywhere.
    """
    wanted = (name or "").strip()
    if not wanted or wanted.casefold().startswith(_OF_THE_COMPUTER):
        return None
    try:
        return ZoneInfo(wanted)
    except (KeyError, ValueError, OSError):
        return None
