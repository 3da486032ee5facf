"""What a check found, and the words in which it says so."""

import datetime as dt
from collections.abc import Iterable, Iterator
from typing import Any, NamedTuple

import numpy as np
import pandas as pd

from reporter.compute.keep_rules.fish import ANY_KIND
from reporter.compute.records import records
from reporter.schema.species import BY_CODE
from reporter.schema.species_groups import OPEN_KINDS
from reporter.schema.units import System, usual_unit

_ENTERED = {"kept": "entered as kept", "released": "entered as released", "unknown": "entered without a fate"}
_DECIMALS = 3


class Found(NamedTuple):
    """A result about fish of some kinds on a day.

    fish: trip_no and house code of every kind on every trip; "" for no kind. result: one of
    `reporter.schema.keep_tables.RESULTS`. rules: names of those that it rests on. said: what is said.
    """

    fish: tuple[tuple[int, str], ...]
    day: dt.date
    result: str
    rules: tuple[str, ...]
    said: str

    @property
    def trip(self) -> int:
        """The trip that shows it: the last."""
        return max(trip for trip, _ in self.fish)

    @property
    def species(self) -> list[str]:
        """House codes, each once."""
        return sorted({code for _, code in self.fish})


def gathered(fish: pd.DataFrame, mask: np.ndarray, *more: str) -> Iterator[dict[str, Any]]:
    """Yield the fish of a mask by trip, day, species and further columns: those, and how many fish."""
    if mask.any():
        keys = ["trip_no", "day", "species", *more]
        yield from records(fish[mask].groupby(keys, sort=False)["fish"].sum().reset_index())


def of_row(row: dict[str, Any], result: str, rules: Iterable[str], said: str) -> Found:
    """Return what was found about one row of `gathered`."""
    return Found(((row["trip_no"], row["species"]),), row["day"].date(), result, tuple(rules), said)


def of_rows(fish: pd.DataFrame, result: str, rule: str, said: str) -> Found:
    """Return what was found about fish of one day (rows as from `fish_to_check`)."""
    kinds = fish[["trip_no", "species"]].drop_duplicates()
    pairs = tuple(zip(kinds["trip_no"].tolist(), kinds["species"].tolist(), strict=True))
    return Found(pairs, fish["day"].iloc[0].date(), result, (rule,), said)


def kinds_said(codes: Iterable[str]) -> str:
    """Return kinds of fish as messages name them: house codes, words for kinds not told apart."""
    names = [_kind(code) for code in sorted(codes)]
    return f"{', '.join(names[:-1])} and {names[-1]}" if len(names) > 1 else names[0]


def _kind(code: str) -> str:
    if code == ANY_KIND:
        return "fish of the tally"
    return BY_CODE[code].name.partition(",")[0] if code in OPEN_KINDS else code


def fish_said(count: float, codes: Iterable[str], what: str = "") -> str:
    """Return "LMB 14.0 in was", or "3 LMB and SMB were"."""
    number = "" if count == 1 else f"{count:g} "
    return f"{number}{kinds_said(codes)}{what} {'was' if count == 1 else 'were'}"


def entered(fate: str) -> str:
    """Return how a fate was entered, in words that accuse nobody."""
    return _ENTERED[fate]


def length_said(length_mm: float, system: System) -> str:
    """Return a fish's length in the log's unit, with the decimals that a comparison needs."""
    unit = usual_unit("fish length", system)
    text = f"{unit.shown(length_mm):.{_DECIMALS}f}".rstrip("0")
    return f"{text}0 {unit.label}" if text.endswith(".") else f"{text} {unit.label}"


def limit_said(limit_mm: float, system: System, to_mm: float | None = None) -> str:
    """Return a rule's length, or from one to another, in the log's unit."""
    unit = usual_unit("fish length", system)
    ends = [limit_mm] if to_mm is None else [limit_mm, to_mm]
    return f"{'-'.join(f'{round(unit.shown(end), _DECIMALS):g}' for end in ends)} {unit.label}"
