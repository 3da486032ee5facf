"""How a flow says what it is doing while it lasts: it calls a function with a word or two."""

from collections.abc import Callable

Tell = Callable[[str], None]


def silent(_doing: str) -> None:
    """Say nothing: there is nobody to see it."""
