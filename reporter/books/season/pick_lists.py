"""The labels that What worked offers, with their numbers."""

from collections.abc import Mapping, Sequence
from itertools import zip_longest

from reporter.books.blocks import Cell, Field, Table
from reporter.schema.choices import ANY, CHOICES

KEY = "pick_list"


def pick_lists(labels: Mapping[str, Sequence[str]]) -> Table:
    """Return a column of labels for each choice, Any first; a label's number stands at the left."""
    offered = [(ANY, *labels[choice.key]) for choice in CHOICES]
    rows = list(zip_longest(*offered))
    columns: dict[str, Sequence[Cell]] = {"no": list(range(len(rows)))}
    for choice, cells in zip(CHOICES, zip(*rows, strict=True), strict=True):
        columns[choice.key] = cells
    fields = (
        Field("no", "No.", "plain"),
        *(Field(choice.key, choice.words, "typed") for choice in CHOICES),
    )
    return Table(KEY, fields, columns, title="What the drop-downs offer")
