"""A careless guide with a seed, who spells, slips and leaves lines between his rows."""

from dataclasses import dataclass, field
from random import Random

from tests.reference.log import Cell, Line, Row, Unread

TECHNIQUES: tuple[tuple[str, str, str | None], ...] = (
    ("Drop shot", "slow", "DS; finesse drop"),
    ("Jerkbait", "moving", "suspending jerkbait"),
    ("Casting jig", "slow", "skirted jig; flipping"),
    ("Bladed jig", "moving", "flipping; vibrating jig"),
    ("Topwater", "moving", None),
)
UNLISTED = ("Hair jig", "Float and fly")
WATERS = (("Lake Arden", "Arden; the big lake"), ("Otter Mere", None))


@dataclass
class Writer:
    """A careless guide with a seed: what he is like this season, and what he has written so far."""

    rng: Random
    techniques: list[str]
    care: float
    trips: list[Row | Line] = field(default_factory=list)
    effort: list[Row | Line] = field(default_factory=list)
    catch: list[Row | Line] = field(default_factory=list)

    def chance(self, share: float) -> bool:
        return self.rng.random() < share

    def slip(self, share: float) -> bool:
        """Whether a slip of that share in a careless season happens in this one."""
        return self.chance(share * (1 - self.care))

    def spelled(self, name: str) -> str:
        """A name as it may be typed: case, spaces and hyphens differ, another name serves."""
        others = [
            other for known, *_, also in (*TECHNIQUES, *WATERS) if known == name for other in _split(also)
        ]
        others = [other for other in others if other != "flipping"]
        spellings = [
            name,
            name,
            name.lower(),
            name.upper(),
            name.replace(" ", "-"),
            name.replace(" ", ""),
            *others,
        ]
        return self.rng.choice(spellings)

    def spoiled(self, value: Cell, *unread: str | float, share: float = 0.05) -> Cell:
        return Unread(self.rng.choice(unread)) if self.slip(share) else value

    def lines(self, rows: list[Row | Line]) -> None:
        """A blank row, a totals line or a second heading, now and then."""
        if rows and self.slip(0.06):
            rows.append(self.rng.choice([Line.BLANK, Line.BLANK, Line.TOTALS, Line.HEADING]))


def _split(also: str | None) -> list[str]:
    return [part.strip() for part in (also or "").split(";") if part.strip()]
