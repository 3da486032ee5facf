"""What a finding is."""

from dataclasses import dataclass
from typing import Literal

Effect = Literal["stop", "set aside", "note"]

EFFECTS: tuple[Effect, ...] = ("stop", "set aside", "note")


@dataclass(frozen=True, slots=True)
class Finding:
    """A kind of problem: code (permanent), effect, title, text with places to fill in, remedy."""

    code: str
    effect: Effect
    title: str
    text: str
    remedy: str
