"""What was used how much, and what to have next season: live, by technique, size and colour."""

from reporter.books.blocks import Block, Line, Text
from reporter.books.season.tackle_ahead import ahead_blocks
from reporter.books.season.tackle_restock import technique_table
from reporter.books.season.tackle_within import within_table
from reporter.compute.report import Report
from reporter.compute.tackle.tackle import WITHIN

_USED = Line("What was used how much", "title")
_AND_TO_HAVE = Line("What was used how much, and what to have next season", "title")
_ASSUMES = Line(
    "Assumed: next season you fish these in the same shares and lose them as often per rod-hour as this "
    "season. It counts what you lost; it forecasts nothing.",
)


def used_blocks(report: Report) -> tuple[Block, ...]:
    """Return the blocks of what was used, which print on pages of their own.

    What to have, and the cells to type in, only where any stint says what was lost.
    """
    used = report.tackle.used
    losses = report.tackle.written["lures_lost"].on > 0
    head = (_AND_TO_HAVE, _ASSUMES) if losses else (_USED,)
    named = [by for by in WITHIN if len(used[by].table)]
    nothing = [
        Line(f"No {by} is written on Effort, so there is nothing by {by}.")
        for by in WITHIN
        if by not in named
    ]
    return (
        Text((*head, *nothing), new_area=True),
        *(ahead_blocks(float(used["technique"].table["rod_hours"].sum())) if losses else ()),
        technique_table(report, losses=losses),
        *(within_table(report, by, losses=losses) for by in named),
    )
