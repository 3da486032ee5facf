"""Behind Techniques: how the rates of the season's techniques are steadied, live."""

from reporter.books.blocks import Block, Line, Sheet, Table, Text
from reporter.books.season.steadied import STEADIED_FIELDS, Steadied, moments, steadied_columns
from reporter.compute.report import Report

NAME = "Behind Techniques"

_TITLE = Line(NAME, "title")
_LEAD = Line(
    "How the rates of techniques with little record are drawn towards the rate of all, before one is called "
    "your best. Where their rates differ no more than by chance, all are drawn there.",
    "lead",
)
_NOTHING = Line("There is nothing to steady yet: it takes techniques with usable effort.")


def techniques_behind(report: Report) -> Sheet:
    """Return the sheet Behind Techniques."""
    ranking = report.ranking
    if ranking.table.empty:
        return Sheet(NAME, (Text((_TITLE, _NOTHING)),), group="behind", landscape=True)
    of = Steadied(
        *("steadying", "steadied", "rod_hours", "landed"),
        ranking.table,
        ranking.mean,
        ranking.variance,
        float(report.season.spread.kappa_used),
    )
    techniques = Table("steadied", STEADIED_FIELDS, steadied_columns(of), title="Every technique")
    blocks: tuple[Block, ...] = (Text((_TITLE, _LEAD)), moments(of), techniques)
    return Sheet(NAME, blocks, group="behind", landscape=True)
