"""The columns of the sheet Stints on which Tackle adds up."""

import pandas as pd

from reporter.books.blocks import Field
from reporter.books.season.tackle_groups import named
from reporter.compute.tackle.tackle import BY, WITHIN, Tackle

_WIDTH = 9.5  # of so many columns: the longest word of their headings


def _field(key: str, heading: str, said: str = "") -> Field:
    return Field(key, heading, "plain", _WIDTH, help=said)


_FIELDS = (
    _field("counted", "In the rates", "1: counts in the rates. 0: does not."),
    _field("cover_no", "Cover no."),
    _field("variant_no", "Variant no."),
    _field("size_no", "Size no.", "Line of the table by size on Tackle; 0: in none."),
    _field("colour_no", "Colour no.", "Line of the table by colour; 0: in none."),
    Field(
        "counted_fish",
        "Fish in the rates",
        "one",
        _WIDTH,
        help="Where the stint's own are not known, its technique's of the trip stand on the first.",
    ),
    _field("told_bites", "Bites count", "1: says what was missed, and its fish are known."),
    _field("cover_bites", "Bites count by cover"),
    _field("variant_bites", "Bites count by variant"),
    _field("size_fish", "Fish count by size", "1: its fish are known to be of its size."),
    _field("colour_fish", "Fish count by colour"),
)

_SAYS = {"trips": "", "hang_up_trips": ": hang-ups", "lost_trips": ": lures lost", "bite_trips": ": bites"}
"""Column of trips of the rates -> of what its stints say, for a heading."""


def tackle_fields(tackle: Tackle) -> tuple[Field, ...]:
    """Return the columns on which Tackle adds up; of those that stand for trips only what it uses."""
    first = [_first(by, key) for by in BY if named(tackle, by) for key in _told(tackle, by)]
    within = [_first(by, "trips") for by in WITHIN if len(tackle.used[by].table)]
    return (*_FIELDS, *first, *within)


def _told(tackle: Tackle, by: str) -> list[str]:
    """Return of which trips the tables by a grouping tell."""
    flags = tackle.stints
    snags = [key for key in ("hang_up_trips", "lost_trips") if flags[f"{by}_{key}"].any()]
    everywhere = ["trips"] if snags and by != "technique" else []
    return [*everywhere, *snags, *(["bite_trips"] if flags[f"{by}_bite_trips"].any() else [])]


def _first(by: str, key: str) -> Field:
    says = " that says" if _SAYS[key] else ""
    said = f"2: first of its trip{says}. 1: first of it only in its line of the table by {by}."
    return _field(f"{by}_{key}", f"Trip by {by}{_SAYS[key]}", said)


def tackle_columns(tackle: Tackle, stints: pd.Index) -> dict[str, pd.Series]:
    """Return the numbers and flags on which Tackle adds up.

    Stints in no rate: 0, and no fish. Those that are no first of a trip: blank.
    """
    table = tackle.stints.reindex(stints)
    firsts = table.filter(regex="_trips$").replace(0, float("nan"))
    fish = table["counted_fish"]
    flags = table.drop(columns=["counted_fish", *firsts]).fillna(0.0)
    return {"counted_fish": fish, **{str(key): made for key, made in (*flags.items(), *firsts.items())}}
