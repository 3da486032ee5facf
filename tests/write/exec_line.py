"""Reads the Exec line of a desktop entry as a desktop does."""


def unescaped(value: str) -> str:
    """Read a string value, then one quoted argument, as the Desktop Entry Specification says."""
    once = value.replace("\\\\", "\\")
    assert once[0] == once[-1] == '"'
    out, rest = "", once[1:-1]
    while rest:
        step = 2 if rest[0] == "\\" else 1
        out += rest[step - 1]
        rest = rest[step:]
    return out.replace("%%", "%")
