"""The first page of a roll-up: logs that are not counted, all totals, what they are."""

from reporter.books.blocks import Block, Figure, Figures, Line, Sheet, Text
from reporter.books.rollup.pages import EFFORT_FIELDS, FISH_FIELDS, Front, cells, page
from reporter.books.rollup.totals import fish_block
from reporter.books.words import counted
from reporter.compute.records import records
from reporter.schema.rollup import ALL

_WORDS = (
    "Trips are guided trips that were fished; one belongs to its first day. Anglers do not count the guide.",
    "Angler-hours are anglers times hours from lines in to lines out; rod-hours are the usable effort of "
    "the guides' own reports.",
    "Fish are those of all rows of Catch that are used, and what tallies have beyond them; landed = kept "
    "+ released + fate not written.",
    "A water has its name where the guide's log shares it, its masked name where the log masks it; all "
    "others are one line. Guides, clients, sites and reaches are not in this book.",
)


def front_page(front: Front) -> Sheet:
    """Return the first page."""
    about = (Line("What is counted", "heading"), *(Line(words) for words in _WORDS))
    return page("Roll-up", front, *_missed(front), *_totals(front), _set_aside(front), Text(about))


def _missed(front: Front) -> list[Block]:
    lacking = sum(log.lacking for log in front.made.missed)
    if not lacking:
        return []
    what = (
        f"{counted(lacking, 'log is', 'logs are')} in no total of this book: what they hold is missing here."
    )
    where = "Why is on the sheet Logs of the book with the guides, and the run says it."
    return [Text((Line("Not counted", "heading"), Line(what, "caution"), Line(where)))]


def _totals(front: Front) -> list[Block]:
    made = front.made
    if not made.told:
        return [Text((Line("All together", "heading"), Line(front.untold)))]
    effort, fish = (table[table["by"] == ALL] for table in (made.effort, made.fish))
    (whole,) = records(effort)
    items = [Figure("guides", "Guides", made.guides, "whole")]
    items += [
        Figure(field.key, field.heading, cells([whole[field.key]])[0], field.look) for field in EFFORT_FIELDS
    ]
    return [Figures("all", tuple(items), title="All together"), fish_block("fish_all", FISH_FIELDS, fish)]


def _set_aside(front: Front) -> Block:
    aside = front.made.aside
    if aside is None:
        said = "Rows of Trips that cannot be used are in no total: of too few guides to say how many."
    elif aside:
        are = "is" if aside == 1 else "are"
        said = f"{counted(aside, 'row')} of Trips cannot be used and {are} in no total."
    else:
        said = "Every row of Trips in these logs is used."
    return Text((Line("Rows", "heading"), Line(said)))
