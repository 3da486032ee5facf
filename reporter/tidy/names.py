"""Names of techniques, waters, clients and documents: one spelling each, others merged only as told."""

from dataclasses import dataclass, field

from reporter.schema.log import folded
from reporter.tidy.near import nearest
from reporter.tidy.sheet import TidySheet


@dataclass(slots=True)
class Names:
    """The names of one sheet: folded spelling -> name. Unknown names join under their first spelling.

    listed: whether the log lists such names at all; where it does not, no name is unknown.
    """

    sheet_name: str
    listed: bool = False
    spellings: dict[str, str] = field(default_factory=dict)
    unknown: set[str] = field(default_factory=set)

    def find(self, typed: str) -> tuple[str, bool]:
        """Return the name that a spelling means, and whether it is an unknown one met for the first time."""
        key = folded(typed) or typed
        if key in self.spellings:
            return self.spellings[key], False
        self.spellings[key] = typed
        if self.listed:
            self.unknown.add(typed)
        return typed, self.listed

    def near(self, typed: str) -> str:
        """Return a hint at the nearest listed name, or nothing."""
        listed = [name for name in dict.fromkeys(self.spellings.values()) if name not in self.unknown]
        found = nearest(typed, listed)
        return f" The closest there is '{found}'." if found else ""


def read_names(tidy: TidySheet | None, key: str, sheet_name: str) -> Names:
    """Take the names of a sheet and their other spellings; what is doubled is said and not merged."""
    names = Names(sheet_name)
    if tidy is None:
        return names
    rows: dict[str, int] = {}
    for index, name in enumerate(tidy.columns[key]):
        if name is None or not tidy.used[index]:
            continue
        spelling = folded(name) or name
        if spelling in rows:
            tidy.set_aside("name_twice", index, key, other=tidy.rows.said(rows[spelling]))
            continue
        rows[spelling] = index
        names.spellings[spelling] = name
    names.listed = bool(rows)
    if "also_called" in tidy.columns:
        _merge_also_called(tidy, key, names)
    return names


def _merge_also_called(tidy: TidySheet, key: str, names: Names) -> None:
    meant: dict[str, str] = {}
    shared: set[str] = set()
    for index, others in enumerate(tidy.columns["also_called"]):
        name = tidy.columns[key][index]
        if name is None or others is None or not tidy.used[index]:
            continue
        for other in others:
            spelling = folded(other) or other
            taken = names.spellings.get(spelling) or meant.get(spelling)
            if taken is not None and taken != name:
                shared.add(spelling)
                tidy.say("name_shared", index, "also_called", value=other, first=taken, second=name)
            else:
                meant[spelling] = name
    names.spellings |= {spelling: name for spelling, name in meant.items() if spelling not in shared}


def resolve(tidy: TidySheet, key: str, names: Names) -> None:
    """Turn a column of names into their one spelling; a name that is not listed is noted once.

    Rows that are set aside get the one spelling too, without a note: a stint without its time still says
    which technique it takes out of the rates.
    """
    values = tidy.columns[key]
    for index in sorted(range(len(values)), key=lambda index: not tidy.used[index]):
        typed = values[index]
        if isinstance(typed, tuple):
            values[index] = tuple(dict.fromkeys(_resolved(tidy, index, key, one, names) for one in typed))
        elif typed is not None:
            values[index] = _resolved(tidy, index, key, typed, names)


def _resolved(tidy: TidySheet, index: int, key: str, typed: str, names: Names) -> str:
    name, new = names.find(typed)
    if new and tidy.used[index]:
        tidy.say("name_unknown", index, key, value=typed, on=names.sheet_name, hint=names.near(typed))
    return name
