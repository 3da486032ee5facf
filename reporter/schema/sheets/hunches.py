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
            "What is compared: Technique, Style, Colour ...",
            required=True,
            example="Colour",
        ),
        Column("this", "This", "text", "One side.", required=True, example="dark"),
        Column("against", "Against", "text", "The other side. Blank: everything else."),
        Column(
            "with_technique",
            "With technique",
            "ref",
            "Only with this technique. Blank: any.",
            refers="techniques",
        ),
        Column("when", "When", "text", "Only then, as: muddy."),
        Column("and", "And", "text", "And only then."),
        Column(
            "measure",
            "Measure",
            "choice",
            "What is counted. Blank: landed.",
            allowed=MEASURES,
            example="landed",
        ),
    ),
)
