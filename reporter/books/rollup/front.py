"""The first page of a roll-up: logs that are not counted, all totals, what they are."""

from reporter.books.blocks import Block, Figure, Figures, Line, Sheet, Text
from reporter.books.rollup.pages import FISH_FIELDS, TOO_FEW, Front, page
from reporter.books.rollup.totals import fish_block
from reporter.books.words import counted
from reporter.compute.records import records
from reporter.compute.rollup.missed import CANNOT_BE_READ, Missed
from reporter.schema.problems import CATALOGUE
from reporter.schema.rollup import ALL

_WORDS = (
    "Trips are guided trips that were fished; one belongs to its first day. Anglers do not count the guide.",
    "Angler-hours are anglers times hours from lines in to lines out; rod-hours are the usable effort of "
    "the guides' own reports.",
    "Fish are those of all rows of Catch that are used, and what tallies have beyond them; landed = kept "
    "+ released + fate not written.",
    "A water has its name where the guide's log shares it, its masked name where the log masks it; all "
    "others are one line. Clients, sites and reaches are not in this book.",
    "Where Season has no Guide code, a guide is called by the number of the log in the order of file names. "
    "One code is one guide, however many logs.",
)


def front_page(front: Front) -> Sheet:
    """Return the first page."""
    blocks = [*_missed(front), *_totals(front), _set_aside(front), Text(_about())]
    return page("Roll-up", front, *blocks)


def _missed(front: Front) -> list[Block]:
    missed = front.made.missed
    if not missed:
        return []
    what = f"{counted(len(missed), 'log is', 'logs are')} in no total of this book"
    lines = [Line(f"{what}: what they hold is missing here.", "caution")]
    for log in missed:
        lines += [Line(sentence) for sentence in _why(log, names=front.made.names)]
    return [Text((Line("Not counted", "heading"), *lines))]


def _why(log: Missed, *, names: bool) -> list[str]:
    """Return why a log is not counted; file names and what was typed only where guides are named."""
    if names:
        return [f"Log {log.log}, {log.file}: {sentence}" for sentence in log.sentences]
    if log.state == CANNOT_BE_READ:
        return [f"Log {log.log} in the order of file names cannot be read; the run says why."]
    titles = "; ".join(dict.fromkeys(CATALOGUE[code].title for code in log.codes))
    return [f"Log {log.log} in the order of file names stops: {titles}. reporter check says where."]


def _totals(front: Front) -> list[Block]:
    made = front.made
    if not made.told:
        return [Text((Line("All together", "heading"), Line(TOO_FEW)))]
    (effort,) = records(made.effort[made.effort["by"] == ALL])
    items = (
        Figure("guides", "Guides", made.guides, "whole"),
        Figure("trips", "Trips", effort["trips"], "whole"),
        Figure("anglers", "Anglers", effort["anglers"], "whole"),
        Figure("angler_hours", "Angler-hours", effort["angler_hours"], "one"),
        Figure("rod_hours", "Rod-hours", effort["rod_hours"], "one"),
    )
    fish = made.fish[made.fish["by"] == ALL]
    return [Figures("all", items, title="All together"), fish_block("fish_all", FISH_FIELDS, fish)]


def _set_aside(front: Front) -> Block:
    logs = front.made.logs
    aside = int(logs["trips_set_aside"].sum())
    are = "is" if aside == 1 else "are"
    said = f"{counted(aside, 'row')} of Trips cannot be used and {are} in no total: see Logs."
    if not aside:
        said = "Every row of Trips in these logs is used."
    return Text((Line("Rows", "heading"), Line(said)))


def _about() -> tuple[Line, ...]:
    return (Line("What is counted", "heading"), *(Line(words) for words in _WORDS))
