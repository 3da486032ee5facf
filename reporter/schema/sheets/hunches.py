"""Hunches: one row is a rule of thumb to be tested against the record."""

from reporter.schema.column import Column, Sheet

MEASURES = (
    "landed",
    "big fish",
    "kept",
    "bites",
    "hang-ups",
    "lures lost",
    "share landed",
    "mean length",
)

ATTRIBUTES = ("variant", "retrieve", "size", "colour", "cover", "depth")

DAY_QUALITIES = (
    "day type",
    "water temperature",
    "wind",
    "wind from",
    "sky",
    "clarity",
    "level",
    "time of day",
    "month",
    "water",
    "moon",
    "skill",
)

COMPARES = (*ATTRIBUTES, "technique", "style", *DAY_QUALITIES)
"""What a hunch can compare."""

HUNCHES = Sheet(
    "hunches",
    "Hunches",
    "a rule of thumb",
    "a fair test of it on your own record",
    columns=(
        Column(
            "hunch",
            "Hunch",
            "key",
            "Your words for it.",
            required=True,
            example="Dark colours in muddy water",
        ),
        Column(
            "compare",
            "Compare",
            "text",
            "What is compared: colour, technique, style, wind, sky ...",
            required=True,
            example="colour",
        ),
        Column(
            "this",
            "This",
            "text",
            "The side that you think has more, as: dark. Several with ; between.",
            required=True,
            example="dark",
        ),
        Column("against", "Against", "text", "The other side. Blank: everything else.", example="light"),
        Column(
            "with_technique",
            "With technique",
            "ref",
            "Only with this technique. Blank: any.",
            refers="techniques",
        ),
        Column("when", "When", "text", "Only then, as the list offers: muddy, wind over 10 mph ..."),
        Column("and", "And", "text", "And only then too, from the same list."),
        Column(
            "measure",
            "Measure",
            "text",
            "What is counted. Blank: landed.",
            allowed=MEASURES,
            example="landed",
        ),
    ),
)
