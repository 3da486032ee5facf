"""Fish: how many of each kind, the best of them, lengths, weights and what they tell."""

from reporter.books.blocks import Line, Sheet, Text
from reporter.books.season.fish_big import big_fish_blocks
from reporter.books.season.fish_lengths import length_blocks, length_table
from reporter.books.season.fish_species import best_blocks, species_block
from reporter.books.season.fish_structure import structure_blocks
from reporter.books.season.fish_weights import weight_blocks
from reporter.compute.report import Report

_TITLE = Line("Fish", "title")
_LEAD = Line("What you caught, how long and how heavy, as far as it is written down.", "lead")


def fish(report: Report) -> Sheet:
    """Return the sheet Fish."""
    if report.fish.species.empty and not report.season.surplus:
        return Sheet("Fish", (Text((_TITLE, Line("No fish is written."))),), group="me", landscape=True)
    if report.fish.species.empty:
        none = Line("No fish has a row on Catch, so nothing is known of species, lengths and weights.")
        return Sheet("Fish", (Text((_TITLE, _LEAD, none)), species_block(report)), group="me", landscape=True)
    blocks = (
        Text((_TITLE, _LEAD)),
        species_block(report),
        *best_blocks(report),
        *big_fish_blocks(report),
        *length_blocks(report),
        *structure_blocks(report),
        *weight_blocks(report),
        *length_table(report),
    )
    return Sheet("Fish", blocks, group="me", landscape=True, private=True)
