"""Pages of a roll-up with a line a guide: totals, and months without a trip."""

from reporter.books.blocks import Field, Sheet
from reporter.books.rollup.pages import EFFORT_FIELDS, FISH_FIELDS, Front, guides_only
from reporter.books.rollup.totals import effort_block, fish_block, table_or_words

_WORDS = (
    "One Guide code is one guide, however many logs. Without a code, one Guide or outfit is one guide, that "
    "of the code where a log has both; without any code he is called by the number of his first log in the "
    "order of file names. A log with neither, or without a code under a name that several codes have, may be "
    "any guide's: it is in the totals and counts as no guide. What is written differently is two guides."
)


def guides_page(front: Front) -> Sheet:
    """Return the page with totals of each guide."""
    made = front.made
    name = [Field("guide_name", "Name")] if made.names else []
    fields = (Field("guide", "Guide"), *name, Field("logs", "Logs", "whole"), *EFFORT_FIELDS)
    return guides_only(
        "Guides",
        front,
        effort_block("effort_guide", fields, made.guide_effort),
        fish_block("fish_guide", (Field("guide", "Guide"), *FISH_FIELDS), made.guide_fish),
        lead=_WORDS,
    )


def missing_page(front: Front) -> Sheet:
    """Return the page with guides who have no trip in a month in which others have one."""
    fields = (Field("guide", "Guide"), Field("month", "Month"), Field("said", "What the log says"))
    nobody = "Every guide has a row of Trips in each month in which others have a trip."
    lead = (
        "Months in which others have a trip and this guide has none, cancelled ones included. That a log has "
        "no trip does not say that there was none, nor that anything is owed; a log that is not counted may "
        "have one."
    )
    missing = table_or_words("missing", fields, front.made.missing, nobody)
    return guides_only("Missing months", front, missing, lead=lead)
