"""A row of Hunches, read: what is compared, under which conditions, by which measure."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any, NamedTuple

from reporter.compute.hunches.side import Side, overlap, read_side
from reporter.compute.records import records
from reporter.compute.spellings import spellings
from reporter.schema.log import BY_KEY, folded
from reporter.schema.phrases import Phrase, phrases, read_phrase
from reporter.schema.problems import Problem, problem
from reporter.schema.sheets.hunches import COMPARES, MEASURES
from reporter.schema.units import System
from reporter.tidy.near import nearest
from reporter.tidy.season import TidyLog
from reporter.tidy.words import NotRead

_SHEET = BY_KEY["hunches"]
_OTHER_COMPARES = {
    "color": "colour",
    "technique": "technique",
    "method": "technique",
    "water temp": "water temperature",
    "temperature": "water temperature",
    "wind speed": "wind",
    "wind direction": "wind from",
    "water level": "level",
    "type of day": "day type",
    "water clarity": "clarity",
    "light": "time of day",
    "clients": "skill",
}
_NOT_A_COMPARE = "is nothing that I can compare"
_COMPARE_REMEDY = "Write a word of the list, as colour, cover, technique, style, wind, sky."
_NOT_A_PHRASE = "is no condition that I know"
_PHRASE_REMEDY = "Write it as the list offers: {first}, stained, on docks, at: a water's name."


class Hunch(NamedTuple):
    """A rule of thumb as it was typed and as it is tested.

    words: the cells as typed. against: None for everything else. when: what both sides must lie in.
    technique: "" for any. measure: one of MEASURES.
    """

    row: int
    name: str
    compare: str
    this: Side
    against: Side | None
    technique: str
    when: tuple[Phrase, ...]
    measure: str
    words: Mapping[str, str]


class ReadHunches(NamedTuple):
    """The hunches of a log that can be read, and what was found about the others (rows set aside)."""

    hunches: tuple[Hunch, ...]
    problems: list[Problem]


class _Known(NamedTuple):
    """What a hunch may speak of.

    waters, techniques: every spelling, folded -> name. big_fish: whether Season says what a big fish is.
    """

    system: System
    waters: Mapping[str, str]
    techniques: Mapping[str, str]
    big_fish: bool


def read_hunches(
    log: TidyLog, system: System, waters: Sequence[str], techniques: Sequence[str]
) -> ReadHunches:
    """Read the used rows of Hunches; waters and techniques: all that the log knows by name."""
    table = log.tables.get("hunches")
    if table is None:
        return ReadHunches((), [])
    known = _Known(
        system,
        spellings(log, "waters", "water", waters),
        spellings(log, "techniques", "technique", techniques),
        log.settings["big_fish_mm"] is not None,
    )
    made = [_read(row, known) for row in records(table[table["used"]])]
    return ReadHunches(
        tuple(hunch for hunch in made if isinstance(hunch, Hunch)),
        [found for found in made if isinstance(found, Problem)],
    )


def _read(row: dict[str, Any], known: _Known) -> Hunch | Problem:
    compare = _compare(row["compare"])
    if isinstance(compare, NotRead):
        return _problem(row, "compare", compare)
    read: dict[str, Any] = {key: _side(row[key], compare, known) for key in ("this", "against")}
    read |= {key: _phrase(row[key], known) for key in ("when", "and")}
    read["measure"] = _measure(row["measure"], known)
    for key, value in read.items():
        if isinstance(value, NotRead):
            return _problem(row, key, value)
    this, against = read["this"], read["against"]
    if against is not None and against.condition != this.condition:
        return _problem(row, "against", NotRead("is of another kind than This", "Write both in one way."))
    if against is not None and overlap(this, against):
        return _problem(row, "against", NotRead("overlaps This", "Write two sides that share nothing."))
    if folded(row["with_technique"]) not in {"", *known.techniques}:
        near = nearest(row["with_technique"], list(known.techniques.values()))
        remedy = f"Did you mean '{near[:30]}'?" if near else "Write it as on Techniques."
        return _problem(row, "with_technique", NotRead("is no technique of this log", remedy))
    return Hunch(
        row=row["row"],
        name=row["hunch"],
        compare=compare,
        this=this,
        against=against,
        technique=row["with_technique"],
        when=tuple(read[key] for key in ("when", "and") if read[key] is not None),
        measure=read["measure"],
        words={key: row[key] for key in _WORDS},
    )


_WORDS = ("compare", "this", "against", "with_technique", "when", "and", "measure")


def _side(typed: str, compare: str, known: _Known) -> Side | NotRead | None:
    if not typed:
        return None
    spellings = {"technique": known.techniques, "water": known.waters}.get(compare, {})
    text = ";".join(spellings.get(folded(part), part) for part in typed.split(";"))
    names = [list(dict.fromkeys(spelled.values())) for spelled in (known.waters, known.techniques)]
    return read_side(text, compare, known.system, *names)


def _phrase(typed: str, known: _Known) -> Phrase | NotRead | None:
    if not typed:
        return None
    found = read_phrase(typed, known.system, list(known.waters))
    if found is None:
        first = phrases(known.system)[0].text
        return NotRead(_NOT_A_PHRASE, _PHRASE_REMEDY.format(first=first))
    if found.condition == "water":
        return replace(found, labels=(known.waters[found.labels[0]],))
    return found


def _measure(typed: str, known: _Known) -> str | NotRead:
    wanted = {folded(measure): measure for measure in MEASURES}.get(folded(typed or MEASURES[0]))
    if wanted is None:
        return NotRead("is no measure that I know", f"Write one of {', '.join(MEASURES)}.")
    if wanted == "big fish" and not known.big_fish:
        return NotRead("needs to know from which length", "Set Big fish from on Season.")
    return wanted


def _compare(typed: str) -> str | NotRead:
    words = {folded(other): word for other, word in _OTHER_COMPARES.items()}
    found = (words | {folded(word): word for word in COMPARES}).get(folded(typed))
    if found is not None:
        return found
    near = nearest(typed, list(COMPARES))
    return NotRead(_NOT_A_COMPARE, f"Did you mean '{near}'?" if near else _COMPARE_REMEDY)


def _problem(row: dict[str, Any], key: str, why: NotRead) -> Problem:
    heading = _SHEET.column(key).heading
    return problem(
        "hunch_unread",
        _SHEET.name,
        row=row["row"],
        heading=heading,
        value=row[key],
        column=key,
        why=why.why,
        remedy=why.remedy,
    )
