"""The columns of the sheet Stints on which Tackle adds up."""

import pandas as pd

from reporter.books.blocks import Field
from reporter.compute.tackle.tackle import Tackle

TACKLE_FIELDS = (
    Field("line_no", "Line of Tackle", "plain", help="In What was used how much. 0: counts in no rate."),
    Field("cover_no", "Cover no.", "plain"),
    Field("variant_no", "Variant no.", "plain"),
    Field(
        "counted_fish",
        "Fish in the rates",
        "one",
        help="Where the stint's own are not known, its technique's of the trip stand on the first.",
    ),
    Field("told_bites", "Bites count", "plain", help="1: says what was missed, and its fish are known."),
    Field("cover_bites", "Bites count by cover", "plain"),
    Field("variant_bites", "Bites count by variant", "plain"),
    Field("line_fish", "Fish count by line", "plain"),
)


def tackle_columns(tackle: Tackle, stints: pd.Index) -> dict[str, pd.Series]:
    """Return the numbers and flags on which Tackle adds up; 0, and no fish, for stints in no rate."""
    table = tackle.stints.reindex(stints)
    fish = table.pop("counted_fish")
    return {"counted_fish": fish, **{str(key): flags.fillna(0.0) for key, flags in table.items()}}
