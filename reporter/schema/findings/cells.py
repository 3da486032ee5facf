"""Findings that set one cell aside; its row is used."""

from reporter.schema.finding import Finding

CELLS: tuple[Finding, ...] = (
    Finding(
        "cell_unread",
        "set aside",
        "A cell that cannot be read",
        "'{value}' {why}. Cell not used{instead}; the row is.",
        "{remedy}",
    ),
    Finding(
        "cell_impossible",
        "set aside",
        "An impossible value",
        "{value} {why}. Cell not used{instead}; the row is.",
        "{remedy}",
    ),
    Finding(
        "length_impossible",
        "set aside",
        "A length impossible for the species",
        "{value} {why} ({species}). Length not used; the fish is.",
        "{remedy}",
    ),
    Finding(
        "weight_impossible",
        "set aside",
        "A weight impossible for the length",
        "{value} on a fish of {length} is {share} % of the standard weight. Weight not used; the fish is.",
        "Mend the weight or the length.",
    ),
    Finding(
        "hours_off_too_long",
        "set aside",
        "Hours off longer than the trip",
        "{value} hours off a trip of {length}. Cell not used: no hours were taken off.",
        "Mend the hours off or the times.",
    ),
)
