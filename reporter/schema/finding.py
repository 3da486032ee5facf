"""What a finding is."""

from typing import Literal, NamedTuple

Effect = Literal["stop", "set aside", "note"]

EFFECTS: tuple[Effect, ...] = ("stop", "set aside", "note")


class Finding(NamedTuple):
    """A kind of problem: code (permanent), effect, title, text with places to fill in, remedy."""

    code: str
    effect: Effect
    title: str
    text: str
    remedy: str
