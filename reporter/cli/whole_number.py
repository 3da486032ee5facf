"""A whole number as typed on a command line."""

_MOST_DIGITS = 9  # more are no number of anything that is asked for


def whole_number(typed: str) -> int | None:
    """Return the number that a text is, 0 or more, None where it is none."""
    text = typed.strip()
    return int(text) if text.isdecimal() and len(text) <= _MOST_DIGITS else None
