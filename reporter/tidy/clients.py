"""Clients who may be one, or who share a name: they are never merged, and each such pair is said."""

from reporter.schema.log import folded
from reporter.tidy.near import looks_like, slip_key
from reporter.tidy.sheet import TidySheet


def check_clients(tidy: TidySheet) -> None:
    """Note a client whose name on the summary is, or looks like, that of a client above."""
    alike: dict[tuple[str, ...], list[int]] = {}
    names = tidy.columns["name_on_summary"]
    for index, name in enumerate(names):
        if name is None or not tidy.used[index]:
            continue
        above = alike.setdefault(slip_key(name), [])
        other = next(
            (i for i in above if folded(names[i]) == folded(name) or looks_like(name, names[i])), None
        )
        if other is not None:
            tidy.say(
                "clients_alike",
                index,
                "client",
                other=tidy.columns["client"][other],
                other_row=tidy.rows.said(other),
                name=name,
                other_name=names[other],
            )
        above.append(index)
