"""Columns of a layout that stand together: those of one technique, of one species, of the second fish."""

from reporter.read.raw import CellValue
from reporter.schema.log import folded
from reporter.schema.own_layout import NAMED_BY_GROUP
from reporter.tidy.own.model import OwnColumn
from reporter.tidy.places import Group, Placed

Columns = dict[str, Placed]

_FATES = ("kept", "released")


def shared_and_groups(
    target: str, columns: list[tuple[OwnColumn, Placed]]
) -> tuple[Columns, tuple[Group, ...]]:
    """Return the columns that every row has, and the groups; of two for one thing the first counts."""
    named: dict[str, Columns] = {}
    names: dict[str, str] = {}
    for column, placed in columns:
        name = names.setdefault(folded(column.group) or column.group, column.group)
        named.setdefault(name, {}).setdefault(column.key, placed)
    shared = named.pop("", {})
    if target == "catch" and not named and any(fate in shared for fate in _FATES):
        counted = {key: shared.pop(key) for key in (*_FATES, "total") if key in shared}
        return shared, tuple(_by_fate(counted, {}))
    groups: list[Group] = []
    for name, own in named.items():
        fixed = _fixed(target, name, {**shared, **own})
        split = target == "catch" and any(fate in own for fate in _FATES)
        groups += _by_fate(own, fixed) if split else [Group(own, fixed, tuple(own.values()))]
    return shared, tuple(groups)


def _fixed(target: str, name: str, columns: Columns) -> dict[str, CellValue]:
    """Return what a group's name stands for, unless a column gives that; a number stands for nothing."""
    key = NAMED_BY_GROUP.get(target, "")
    return {key: name} if key and key not in columns and not name.isdigit() else {}


def _by_fate(own: Columns, fixed: dict[str, CellValue]) -> list[Group]:
    """Part the counts of a group by fate: a row for the kept, one for the released.

    Where neither is filled but the total is, the total's row stands for them, of unknown fate; where only
    one of them has a column, it stands for the rest of the total.
    """
    counts = [(fate, own[fate]) for fate in _FATES if fate in own]
    rest = {key: placed for key, placed in own.items() if key not in _FATES}
    groups = [Group({**rest, "count": placed}, {**fixed, "fate": fate}, (placed,)) for fate, placed in counts]
    if "total" in own:
        bare = {key: placed for key, placed in rest.items() if key != "total"}
        both = tuple(placed for _, placed in counts) if len(counts) == len(_FATES) else ()
        groups.append(Group({**bare, "count": own["total"]}, fixed, (own["total"],), both))
    return groups
