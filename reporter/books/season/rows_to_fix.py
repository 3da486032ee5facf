"""Rows to fix: every problem of the log, in the order of what mending wins back."""

from collections.abc import Sequence

from reporter.books.blocks import Block, Cell, Field, Line, Sheet, Table, Text
from reporter.compute.fix_order import fix_place
from reporter.compute.season import Season
from reporter.schema.problems import CATALOGUE, Problem

_FIELDS: tuple[Field, ...] = (
    Field("effect", "Effect"),
    Field("won", "Rows won back", "whole", help="Rows of the log that count again once it is mended."),
    Field("sheet", "Sheet"),
    Field("row", "Row", "plain"),
    Field("cell", "Cell"),
    Field("title", "What it is", "wrapped", width=26),
    Field("value", "Found", "wrapped", width=18),
    Field("text", "What was found and done, and how to mend it", "wrapped", width=72),
)


_LOG = Field("log", "Log", "wrapped", width=20)


def rows_to_fix(season: Season) -> Sheet:
    """Return the sheet Rows to fix: problems in order with the rows that each wins back."""
    fixes = sorted(
        ((fix, one.name) for one in season.each for fix in one.fixes), key=lambda found: fix_place(found[0])
    )
    problems = [fix for fix, _ in fixes]
    lead = (
        "Mend these in your log, or in the file that is named, from the top: the first win back most. "
        "'set aside' is not used and is in no total; 'note' is used as it stands."
        if problems
        else "Nothing to mend: every row was read and used."
    )
    blocks: list[Block] = [Text((Line("Rows to fix", "title"), Line(lead, "lead")))]
    if problems:
        columns = _columns(problems)
        if season.several:
            from reporter.compute.together.problems import of_weather_file

            logs = [None if of_weather_file(found) else name for (found, _), name in fixes]
            columns = {"log": logs, **columns}
        fields = (_LOG, *_FIELDS) if season.several else _FIELDS
        blocks.append(Table("fix", fields, columns, filtered=True))
    return Sheet("Rows to fix", tuple(blocks), group="books", landscape=True, private=True)


def _columns(problems: Sequence[tuple[Problem, int]]) -> dict[str, Sequence[Cell]]:
    found = [problem for problem, _ in problems]
    return {
        "effect": [problem.effect for problem in found],
        "won": [won or None for _, won in problems],
        "sheet": [problem.place for problem in found],
        "row": [problem.row or None for problem in found],
        "cell": [problem.cell or None for problem in found],
        "title": [CATALOGUE[problem.code].title for problem in found],
        "value": [problem.value or None for problem in found],
        "text": [problem.text for problem in found],
    }
