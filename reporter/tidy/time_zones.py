"""Time zones by their names; none is ever guessed."""

from zoneinfo import ZoneInfo


def known_zone(name: str | None) -> ZoneInfo | None:
    """Return the zone of a name such as America/Chicago; None for a name that is none."""
    try:
        return ZoneInfo(name.strip()) if name and name.strip() else None
    except (KeyError, ValueError, OSError):
        return None
