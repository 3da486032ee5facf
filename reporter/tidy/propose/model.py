"""What is proposed: for every worksheet and column what it may mean, how sure that is, and why."""

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal, NamedTuple

from reporter.read.raw import CellValue
from reporter.schema.own_layout import NAMED_BY_GROUP
from reporter.tidy.own.headings import Headings

Sure = Literal["sure", "likely", "a guess", "no idea"]

SURE_FROM, LIKELY_FROM, GUESS_FROM = 90.0, 72.0, 55.0
"""Scores of 100 from which a proposal is called so: an exact heading whose values fit is over 90, a near one
under it; below the last nothing is proposed."""


def how_sure(score: float) -> Sure:
    """Return a score in words."""
    if score >= SURE_FROM:
        return "sure"
    return "likely" if score >= LIKELY_FROM else "a guess" if score >= GUESS_FROM else "no idea"


class SeenColumn(NamedTuple):
    """A column of a worksheet as it stands: position from 0, heading, its parts, the cells below it.

    cells: one for each of the first rows, None where blank; totals lines are left out.
    """

    position: int
    heading: str
    parts: tuple[str, ...]
    cells: tuple[CellValue, ...]

    @property
    def values(self) -> tuple[CellValue, ...]:
        """The cells that hold something."""
        return tuple(cell for cell in self.cells if cell is not None)


class SeenSheet(NamedTuple):
    """A worksheet as it stands, with its headings; beyond: how many columns further right were left out."""

    name: str
    headings: Headings
    columns: tuple[SeenColumn, ...]
    rows: int
    beyond: int = 0


@dataclass(frozen=True, slots=True)
class Meaning:
    """What a column may mean: sheet and column of the log (empty: not read), group, unit, score, why."""

    target: str
    key: str
    score: float
    why: str
    group: str = ""
    unit: str = ""


NOT_KNOWN = Meaning("", "", 0.0, "")
BOTH = "columns headed by a fish and a technique cannot be read"
"""Why a column of both is not read."""


@dataclass(frozen=True, slots=True)
class ProposedSheet:
    """A worksheet, what one of its rows is (key of a sheet, empty: not read), and its columns' meanings."""

    seen: SeenSheet
    row_is: str
    score: float
    why: str
    columns: tuple[tuple[SeenColumn, Meaning], ...]

    def has(self, target: str, key: str) -> bool:
        """Whether a column means that column of a sheet, or a group is named for it."""
        named = NAMED_BY_GROUP.get(target) == key
        return any(
            meant.target == target
            and (meant.key == key or (named and bool(meant.group) and not meant.group.isdigit()))
            for _, meant in self.columns
        )

    def has_any(self, target: str) -> bool:
        """Whether a column means one of a sheet."""
        return any(meant.target == target for _, meant in self.columns)


class ProposedName(NamedTuple):
    """A name found in the log: of a technique with its style where that is known, and the name it is near."""

    name: str
    style: str
    near: str


class Proposal(NamedTuple):
    """A layout as proposed: worksheets, settings that the log itself answers, the names of its techniques.

    answers: key of a question that no column answers -> the likely answer, or nothing. unread: worksheets
    without headings.
    """

    sheets: tuple[ProposedSheet, ...]
    settings: Mapping[str, str | dt.date]
    techniques: tuple[ProposedName, ...]
    answers: Mapping[str, str]
    unread: tuple[str, ...]
