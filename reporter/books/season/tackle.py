"""Tackle: what hung up and was lost, what was used how much, and what to have for next season."""

from collections.abc import Mapping

from reporter.books.blocks import Block, Line, Sheet, Text
from reporter.books.season.tackle_bites import bite_table
from reporter.books.season.tackle_groups import named
from reporter.books.season.tackle_snags import MEASURES, snag_chart, snag_table
from reporter.books.season.tackle_used import used_blocks
from reporter.books.words import counted, number
from reporter.compute.report import Report
from reporter.compute.tackle.tackle import BY, Tackle
from reporter.compute.tackle.told import Written
from reporter.schema.thresholds import MIN_OWN_TRIPS

NAME = "Tackle"

_TITLE = Line(NAME, "title")
_LEAD = Line(
    "What hung up and what was lost, which bites were missed, what was used how much, and what to have for "
    "next season.",
    "lead",
)
_SAYS = Line(
    "A rate stands on the stints that say: blank is not recorded, 0 is none. What was tied on in the thick "
    f"of it hangs up more for that reason alone. Grey: fewer than {MIN_OWN_TRIPS} trips that say, too little "
    "to go by.",
    "note",
)
_NONE = Line("No stint has usable effort yet, so there is nothing to say of tackle.")
_NOTHING_WRITTEN: Mapping[str, str] = {
    "hang_ups": "Nothing is written of hang-ups, so there are no rates of them: write in Hang-ups on Effort "
    "how often each stint hung up, 0 where never.",
    "lures_lost": "Nothing is written of lures lost, so there are no rates of them and nothing to have: "
    "write in Lures lost on Effort how many each stint lost, 0 where none was.",
    "missed": "Nothing is written of missed bites, so they are not held against fish landed: write in Missed "
    "on Effort how many each stint missed, 0 where none was.",
}
_COUNTED: Mapping[str, tuple[str, str]] = {
    "hang_ups": ("hang-up", "hang-ups"),
    "lures_lost": ("lure lost", "lures lost"),
}


def tackle(report: Report) -> Sheet:
    """Return the sheet Tackle."""
    made = report.tackle
    if made.used["technique"].table.empty:
        return Sheet(NAME, (Text((_TITLE, _NONE, *_outside(made))),), group="me", landscape=True)
    blocks: tuple[Block, ...] = (
        Text((_TITLE, _LEAD, _SAYS, *_outside(made), *_written(made), *_not_named(made))),
        *_rates(report),
        *used_blocks(report),
    )
    return Sheet(NAME, blocks, group="me", landscape=True)


def _outside(made: Tackle) -> tuple[Line, ...]:
    """Say what was counted on stints that are in no rate."""
    said = [
        counted(how.outside, *_COUNTED[measure]) for measure, how in made.written.items() if how.outside > 0
    ]
    if not said:
        return ()
    return (Line(f"Outside all this, on stints that count in no rate: {' and '.join(said)}."),)


def _written(made: Tackle) -> tuple[Line, ...]:
    """Say what is not written, and what is written only where there was one."""
    nothing = [_NOTHING_WRITTEN[measure] for measure, how in made.written.items() if not how.on]
    if not _bites_told(made):
        nothing.append(_NOTHING_WRITTEN["missed"])
    only = [_only_losses(measure, how) for measure, how in made.written.items() if how.only_losses]
    return (*(Line(text) for text in nothing), *(Line(text, "caution") for text in only))


def _only_losses(measure: str, how: Written) -> str:
    heading = MEASURES[measure][0]
    return (
        f"{heading} is written on {counted(how.on, 'stint')}, never as 0, and blank on {number(how.blank)}. "
        "If you write it only where there was one, these rates are too high: write 0 where there was none."
    )


def _not_named(made: Tackle) -> tuple[Line, ...]:
    told = [(by, named(made, by)) for by in BY]
    nothing = [f"No {by} is written on Effort, so there is nothing by {by}." for by, is_ in told if not is_]
    apart = [
        f"Bites by {by}: no fish can be told apart between them."
        for by, is_ in told
        if is_ and _bites_told(made) and not made.rates[by].bites.any()
    ]
    return tuple(map(Line, (*nothing, *apart)))


def _bites_told(made: Tackle) -> bool:
    return bool(made.rates["technique"].bites.any())


def _rates(report: Report) -> tuple[Block, ...]:
    """Return the tables by technique, cover and variant of all that is told."""
    made = report.tackle
    told_by = [by for by in BY if named(made, by)]
    measures = [measure for measure, how in made.written.items() if how.on]
    blocks: list[Block] = []
    for by in told_by if measures else ():
        blocks.append(snag_table(report, by, measures))
        blocks += snag_chart(report) if by == "technique" else ()
    if _bites_told(made):
        blocks += [bite_table(report, by) for by in told_by if made.rates[by].bites.any()]
    return tuple(blocks)
