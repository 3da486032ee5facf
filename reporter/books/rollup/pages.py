"""What every page of a roll-up carries: its days, who is in it, how far it may be told and trusted."""

from collections.abc import Sequence
from typing import NamedTuple

from reporter.books.blocks import Block, Cell, Field, Line, Sheet, Text
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
MERGED = (
    f"Every figure has {MIN_GUIDES} guides or more behind it. What has fewer stands under others or other "
    "species, and so do further lines, so that nobody has it by taking away one figure from another. A blank "
    "is in one of these too, or nowhere where even all together are fewer. Of a set of logs hand on one "
    "roll-up only: a later one of other logs or days tells by subtraction what the added ones did."
)
BY_GUIDE = (
    "A line is one guide's own, so this book is for whoever keeps the logs: do not hand it on. Together with "
    "the other book it gives small figures away."
)
_TOO_FEW = (
    f"Fewer than {MIN_GUIDES} guides: totals would tell each of them what the other did. They are not shown. "
    "With --names they are, for those who are entitled to know them."
)
_NO_TRIP = "There is no guided trip that was fished."

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

    @property
    def guides(self) -> str:
        """How many guides there are, in words."""
        return counted(self.made.guides, "guide")

    @property
    def untold(self) -> str:
        """Why there are no totals."""
        return _TOO_FEW if self.made.guide_effort["trips"].any() else _NO_TRIP


def page(name: str, front: Front, *blocks: Block, lead: str = "") -> Sheet:
    """Return a page that may be handed on, unless guides are named."""
    names = front.made.names
    note = Line(NAMED, "caution") if names else Line(MERGED, "note")
    return Sheet(name, (_head(name, front, lead, note), *blocks), "books", private=names)


def guides_only(name: str, front: Front, *blocks: Block, lead: str) -> Sheet:
    """Return a page with a line a guide or a log."""
    note = Line(NAMED if front.made.names else BY_GUIDE, "caution")
    return Sheet(name, (_head(name, front, lead, note), *blocks), "books", private=True)


def _head(name: str, front: Front, lead: str, note: Line) -> Text:
    made = front.made
    total, counted_logs = len(made.logs), int((made.logs["state"] == COUNTED).sum())
    logs = f"{counted_logs} of {total} logs" if counted_logs < total else counted(total, "log")
    whose = f", {made.unknown} of them of a guide not known" if made.unknown else ""
    title, days = Line(name, "title"), Line(f"{front.guides}, {logs}{whose}; {front.days}.", "lead")
    return Text((title, days, *([Line(lead)] if lead else []), note, Line(CAUTION, "caution")))


def cells(values: Sequence[object]) -> list[Cell]:
    """Return values as cells: None where there is none."""
    return [value if value == value else None for value in values]  # type: ignore[misc]
