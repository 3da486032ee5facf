"""What every page of a roll-up carries: its days, who is in it, how far it may be told and trusted."""

from collections.abc import Sequence
from typing import NamedTuple

from reporter.books.blocks import Block, Cell, Field, Group, Line, Sheet, Text
from reporter.books.filing.pages import period_words
from reporter.books.words import counted
from reporter.compute.paperwork.period import Period
from reporter.compute.rollup.missed import COUNTED
from reporter.compute.rollup.rollup import Rollup
from reporter.schema.rollup import MIN_GUIDES

CAUTION = (
    "Added up from the guides' own logs; it is nothing official and no agency's form. The agency's current "
    "form and text, and what it counts itself, come first."
)
NAMED = "With guides by name and every small figure: only for those who are entitled to know them."
ANONYMOUS = (
    f"Guides by code only. By water, month, permit and species every figure has {MIN_GUIDES} guides or more "
    "behind it: what has fewer stands under others, with a further line or species where it would be given "
    "away alone. A blank is in others too, or nowhere where even all together are fewer."
)
TOO_FEW = (
    f"Fewer than {MIN_GUIDES} guides: totals would tell each of them what the other did. They are not shown. "
    "With --names they are, for those who are entitled to know them."
)

EFFORT_FIELDS = (
    Field("trips", "Trips", "whole"),
    Field("trips_unfinished", "Of them log not finished", "whole", width=12.0),
    Field("anglers", "Anglers", "whole"),
    Field("angler_hours", "Angler-hours", "one"),
    Field("rod_hours", "Rod-hours", "one"),
)
FISH_FIELDS = (
    Field("species", "Species"),
    Field("kept", "Kept", "whole"),
    Field("released", "Released", "whole"),
    Field("unknown", "Fate not written", "whole"),
)


class Front(NamedTuple):
    """What all pages share."""

    made: Rollup
    period: Period

    @property
    def days(self) -> str:
        """The days that it is about, in words."""
        words = period_words(self.period, self.made.system)
        return "all days of the logs" if words == "the whole log" else words


def page(name: str, front: Front, *blocks: Block, lead: str = "", behind: bool = False) -> Sheet:
    """Return a page with what every page carries above its blocks. behind: it stands behind the numbers."""
    made = front.made
    total, counted_logs = len(made.logs), int((made.logs["state"] == COUNTED).sum())
    logs = f"{counted_logs} of {total} logs" if counted_logs < total else counted(total, "log")
    lines = [
        Line(name, "title"),
        Line(f"{counted(made.guides, 'guide')}, {logs}; {front.days}.", "lead"),
        *([Line(lead)] if lead else []),
        Line(NAMED if made.names else ANONYMOUS, "caution" if made.names else "note"),
        Line(CAUTION, "caution"),
    ]
    group: Group = "behind" if behind else "books"
    return Sheet(name, (Text(tuple(lines)), *blocks), group, private=made.names)


def cells(values: Sequence[object]) -> list[Cell]:
    """Return values as cells: None where there is none."""
    return [value if value == value else None for value in values]  # type: ignore[misc]
