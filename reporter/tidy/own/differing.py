"""Cells that are repeated from row to row and do not agree: the first counts, and the others are said."""

from dataclasses import dataclass

from reporter.read.raw import CellValue
from reporter.schema.a1 import address
from reporter.schema.log import BY_KEY
from reporter.schema.problems import Problem, problem
from reporter.schema.row_codes import row_in_sheet
from reporter.tidy.rows import Spot
from reporter.tidy.words import shown


@dataclass(slots=True)
class _Difference:
    first: Spot
    again: Spot
    value: CellValue
    other: CellValue
    count: int = 1


class Differing:
    """Gathers differences, one a column: the first of them, and how many there are."""

    def __init__(self, key: str) -> None:
        self._sheet = BY_KEY[key].name
        self._found: dict[str, _Difference] = {}

    def add(self, name: str, first: Spot, again: Spot, value: CellValue, other: CellValue) -> None:
        """Note that a cell (`again`, `other`) does not agree with the one that counts (`first`, `value`)."""
        known = self._found.get(name)
        if known is None:
            self._found[name] = _Difference(first, again, value, other)
        else:
            known.count += 1

    def problems(self) -> list[Problem]:
        """Return a note a column."""
        return [
            problem(
                "own_repeat_differs",
                self._sheet,
                row=found.again.number,
                cell=address(row_in_sheet(found.again.number), found.again.placed.position + 1),
                heading=found.again.placed.heading,
                value=shown(found.other),
                first=shown(found.value),
                first_row=row_in_sheet(found.first.number),
                count=found.count,
            )
            for found in self._found.values()
        ]
