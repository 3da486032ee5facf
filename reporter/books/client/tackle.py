"""What was tied on for him: a line a technique, with its rigging and what to buy."""

from collections.abc import Sequence

from reporter.books.blocks import Cell, Field, Line, Sheet, Table, Text
from reporter.compute.clients.model import Client, TiedOn

_NAME = "What was tied on"
_RULES = (
    "Some waters limit hooks and lures, or the number of rods: check the local rules before you fish them "
    "yourself."
)
_FIELDS = (
    Field("technique", "Technique", "wrapped", width=18.0),
    Field("as_fished", "As we fished it", "wrapped", width=24.0),
    Field("size", "Size", "wrapped", width=12.0),
    Field("colour", "Colour", "wrapped", width=14.0),
    Field("rigging", "Rigging", "wrapped", width=28.0),
    Field("tackle_list", "To buy", "wrapped", width=24.0),
)


def tackle(client: Client) -> Sheet | None:
    """Return the sheet, None where nothing was written of what was tied on."""
    rows: dict[str, list[TiedOn]] = {}
    for day in client.days:
        for tied in day.tied_on:
            rows.setdefault(tied.technique, []).append(tied)
    if not rows:
        return None
    every = list(rows.values())
    columns: dict[str, Sequence[Cell]] = {
        "technique": list(rows),
        "as_fished": [_each(tied, "variant", "retrieve") for tied in every],
        **{key: [_each(tied, key) for tied in every] for key in ("size", "colour")},
        **{key: [_latest(tied, key) for tied in every] for key in ("rigging", "tackle_list")},
    }
    there = tuple(field for field in _FIELDS if any(columns[field.key]))
    table = Table("tied", there, {field.key: columns[field.key] for field in there}, note=_RULES)
    head = Text((Line(_NAME, "title"), Line("Everything that was on a line for you.", "lead")))
    return Sheet(_NAME, (head, table), group="me")


def _each(tied: Sequence[TiedOn], *keys: str) -> str | None:
    """Return what was written of some attributes, each once."""
    found = dict.fromkeys(getattr(one, key) for key in keys for one in tied)
    return ", ".join(value for value in found if value) or None


def _latest(tied: Sequence[TiedOn], key: str) -> str | None:
    return next((getattr(one, key) for one in reversed(tied) if getattr(one, key)), None)
