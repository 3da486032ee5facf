"""Names of techniques, waters, clients and documents: one spelling each, others merged only as told."""

import re
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass, field

from reporter.schema.column import Sheet
from reporter.schema.log import folded, folded_code
from reporter.tidy.near import looks_like, nearest, of_initials
from reporter.tidy.sheet import TidySheet

GUIDE = "guide"
"""What the columns Angler call the guide himself; no client."""

_OTHER_SIGNS = re.compile(r"\s*[,/&+|]\s*|\s+and\s+", re.IGNORECASE)
_BLANKS_TOO = re.compile(r"(?:[,/&+|\s]|\band\b)+", re.IGNORECASE)
_MOST_COMPARED = 400  # names met; more of them are no list that a person keeps in his head


@dataclass(slots=True)
class Names:
    """The names of one sheet: folded spelling -> name. Unknown names join under their first spelling.

    listed: whether the log lists such names at all; where it does not, no name is unknown. met: names that
    the log does not list, as they came. fold: how spellings are compared.
    """

    sheet: Sheet
    fold: Callable[[str], str] = folded
    listed: bool = False
    spellings: dict[str, str] = field(default_factory=dict)
    met: list[str] = field(default_factory=list)

    def find(self, typed: str) -> tuple[str, bool]:
        """Return the name that a spelling means, and whether it is one not listed, met for the first time."""
        key = self.fold(typed) or typed
        if key in self.spellings:
            return self.spellings[key], False
        self.spellings[key] = typed
        self.met.append(typed)
        return typed, True

    def several(self, typed: str) -> tuple[str, ...]:
        """Return the names that a cell lists with other signs between than ;, all of them known; else ()."""
        met = set(self.met)
        for signs in (_OTHER_SIGNS, _BLANKS_TOO):
            parts = [part for part in signs.split(typed) if part]
            names = [self.spellings.get(self.fold(part), "") for part in parts]
            if len(names) > 1 and all(names) and met.isdisjoint(names):
                return tuple(names)
        return ()

    def near(self, typed: str) -> str:
        """Return a hint at the nearest listed name, or nothing."""
        met = set(self.met)
        listed = [name for name in dict.fromkeys(self.spellings.values()) if name not in met]
        found = nearest(typed, listed) or of_initials(typed, listed)
        return f" The closest there is '{found}'." if found else ""

    def alike(self, typed: str) -> str | None:
        """Return a name met before that this one may be a slip of."""
        if len(self.met) > _MOST_COMPARED:
            return None
        return next((name for name in self.met if looks_like(typed, name)), None)

    @property
    def places(self) -> dict[str, str]:
        """What a message says of the sheet: its name, where other spellings go, what becomes of two."""
        also = any(column.key == "also_called" for column in self.sheet.columns)
        return {
            "on": self.sheet.name,
            "or_also": ", or to Also called there" if also else "",
            "own": ", with pages of its own" if self.sheet.key == "clients" else "",
        }


def read_names(tidy: TidySheet | None, key: str, sheet: Sheet) -> Names:
    """Take the names of a sheet and their other spellings; what is doubled is said and not merged."""
    names = Names(sheet, folded_code if sheet.key == "clients" else folded)
    if tidy is None:
        return names
    rows: dict[str, int] = {}
    for index, name in enumerate(tidy.columns[key]):
        if name is None or not tidy.used[index]:
            continue
        spelling = names.fold(name) or name
        if spelling in rows:
            tidy.set_aside("name_twice", index, key, other=tidy.rows.said(rows[spelling]))
            continue
        rows[spelling] = index
        names.spellings[spelling] = name
    names.listed = bool(rows)
    if "also_called" in tidy.columns:
        _merge_also_called(tidy, key, names)
    if "name_on_summary" in tidy.columns:
        _add_names_on_summary(tidy, key, names)
    return names


def _add_names_on_summary(tidy: TidySheet, key: str, names: Names) -> None:
    """Let a client's own name stand for the code, unless it is another's too, or a code."""
    rows = zip(tidy.columns[key], tidy.columns["name_on_summary"], tidy.used, strict=True)
    own = [(names.fold(name), code) for code, name, used in rows if used and code is not None and name]
    shared = Counter(spelling for spelling, _ in own)
    for spelling, code in own:
        if spelling and shared[spelling] == 1:
            names.spellings.setdefault(spelling, code)


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
            found = [name for one in typed for name in _several(tidy, index, key, one, names)]
            values[index] = tuple(dict.fromkeys(found))
        elif typed is not None:
            values[index] = _resolved(tidy, index, key, typed, names)


def _several(tidy: TidySheet, index: int, key: str, typed: str, names: Names) -> tuple[str, ...]:
    """Return the name that is meant, or the names, where other signs stand between clients than ;."""
    apart = names.several(typed) if names.sheet.key == "clients" else ()
    if not apart or names.fold(typed) in names.spellings:
        return (_resolved(tidy, index, key, typed, names),)
    if tidy.used[index]:
        tidy.say("clients_read_apart", index, key, value=typed, clients=" and ".join(apart))
    return apart


def _resolved(tidy: TidySheet, index: int, key: str, typed: str, names: Names) -> str:
    name, new = names.find(typed)
    if not new or not tidy.used[index]:
        return name
    if names.listed:
        tidy.say("name_unknown", index, key, value=typed, hint=names.near(typed), **names.places)
    elif other := names.alike(typed):
        tidy.say("names_alike", index, key, value=typed, other=other, **names.places)
    return name
