"""Columns that several sheets share."""

from reporter.schema.column import Column

TRIP_ABOVE = Column(
    "trip",
    "Trip",
    "ref",
    "The trip's number. Blank: the trip of the row above.",
    required=True,
    refers="trips",
    example="T-001",
    also=("Trip no", "Trip number", "Trip ID", "Trip #"),
    blank_is_above=True,
)
"""Which trip a stint or a fish belongs to."""

NOTES = Column("notes", "Notes", "text", "Private: only you read it.", also=("Note", "Comments", "Remarks"))
