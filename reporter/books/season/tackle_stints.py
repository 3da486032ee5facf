"""The columns of the sheet Stints on which Tackle adds up."""

import pandas as pd

from reporter.books.blocks import Field
from reporter.compute.tackle.tackle import Tackle

TACKLE_FIELDS = (
    Field("counted", "In the rates", "plain", help="1: counts in the rates. 0: does not."),
    Field("cover_no", "Cover no.", "plain"),
    Field("variant_no", "Variant no.", "plain"),
    Field("size_no", "Size no.", "plain", help="Line of the table by size on Tackle; 0: in none."),
    Field("colour_no", "Colour no.", "plain", help="Line of the table by colour; 0: in none."),
    Field(
        "counted_fish",
        "Fish in the rates",
        "one",
        help="Where the stint's own are not known, its technique's of the trip stand on the first.",
    ),
    Field("told_bites", "Bites count", "plain", help="1: says what was missed, and its fish are known."),
    Field("cover_bites", "Bites count by cover", "plain"),
    Field("variant_bites", "Bites count by variant", "plain"),
    Field("size_fish", "Fish count by size", "plain", help="1: its fish are known to be of its size."),
    Field("colour_fish", "Fish count by colour", "plain"),
)


def tackle_columns(tackle: Tackle, stints: pd.Index) -> dict[str, pd.Series]:
    """Return the numbers and flags on which Tackle adds up; 0, and no fish, for stints in no rate."""
    table = tackle.stints.reindex(stints)
    fish = table.pop("counted_fish")
    return {"counted_fish": fish, **{str(key): flags.fillna(0.0) for key, flags in table.items()}}
