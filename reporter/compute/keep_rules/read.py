"""The rows of Keep rules: rules, rows that cannot be read, and rules that contradict each other."""

import math
from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple

from reporter.compute.keep_rules.clash import Clash, find_clashes
from reporter.compute.keep_rules.rule import EVERYWHERE, KeepRule, Scope
from reporter.compute.keep_rules.unreadable import why_unread
from reporter.compute.records import records
from reporter.compute.spellings import spellings
from reporter.schema.log import BY_KEY, folded
from reporter.schema.problems import Problem, problem
from reporter.schema.species_groups import with_members
from reporter.tidy.near import nearest
from reporter.tidy.season import TidyLog
from reporter.tidy.species import find_species
from reporter.tidy.words import NotRead

_SHEET = BY_KEY["keep_rules"]
Row = dict[str, Any]


class ReadKeepRules(NamedTuple):
    """The keep rules of a log.

    rules: those that can be read. unread: of what the others speak, as far as that can be read. clashes:
    pairs of rules that contradict each other. problems: what was found. noted: rule -> its Notes, which
    nothing checks. culls: rules that speak of culling.
    """

    rules: tuple[KeepRule, ...]
    unread: tuple[Scope, ...]
    clashes: tuple[Clash, ...]
    problems: list[Problem]
    noted: tuple[tuple[str, str], ...]
    culls: tuple[tuple[str, str], ...]

    @property
    def set_aside(self) -> list[int]:
        """Rows that are set aside because they cannot be read."""
        return [found.row for found in self.problems if found.effect == "set aside"]


def read_keep_rules(log: TidyLog, waters: Sequence[str]) -> ReadKeepRules:
    """Read the sheet Keep rules; waters: all that the log knows by name."""
    table = log.tables.get("keep_rules")
    if table is None or table.empty:
        return ReadKeepRules((), (), (), [], (), ())
    names, bass = spellings(log, "waters", "water", waters), log.settings.bare_bass
    rules, unread, problems = [], [], []
    rows = records(table)
    for row in rows:
        water, species = _water(row["water"], names), _species(row["species"], bass)
        scope = _scope(row, water, species)
        bad = why_unread(row, water, species) if row["used"] else None
        if bad:
            problems.append(_problem(row, *bad))
        if bad or not row["used"]:
            unread.append(scope)
        else:
            rules.append(_rule(row, scope))
    clashes = find_clashes(rules)
    used = [row for row in rows if row["used"]]
    return ReadKeepRules(
        tuple(rules),
        tuple(unread),
        clashes,
        [*problems, *(clash.problem for clash in clashes)],
        tuple((row["rule"], row["notes"]) for row in used if row["notes"]),
        tuple((row["rule"], row["cull_allowed"]) for row in used if row["cull_allowed"]),
    )


def _water(typed: str, names: Mapping[str, str]) -> str | NotRead:
    if typed.strip() == EVERYWHERE:
        return EVERYWHERE
    if not typed:
        return NotRead("has no Water", "Write * for everywhere, or a water's name.")
    found = names.get(folded(typed))
    if found is not None:
        return found
    near = nearest(typed, list(dict.fromkeys(names.values())))
    remedy = f"Did you mean '{near[:30]}'?" if near else "Write it as on Waters, or * for everywhere."
    return NotRead("is no water of this log", remedy)


def _species(typed: str, bare_bass: str | None) -> frozenset[str] | NotRead:
    words = [word for word in typed.split(";") if word.strip()]
    if not words:
        return NotRead("has no Species", "Write them with ; between, as LMB;SMB.")
    codes: set[str] = set()
    for word in words:
        found = find_species(word, bare_bass)
        if isinstance(found, NotRead):
            return found
        codes |= with_members(found.code)
    return frozenset(codes)


def _scope(row: Row, water: str | NotRead, species: frozenset[str] | NotRead) -> Scope:
    return Scope(
        row=row["row"],
        name=row["rule"],
        edition=None if math.isnan(row["edition"]) else int(row["edition"]),
        jurisdiction=folded(row["jurisdiction"]),
        water=None if isinstance(water, NotRead) else water,
        species=None if isinstance(species, NotRead) else species,
        dates=(row["from"], row["to"]) if row["from"] and row["to"] else None,
    )


def _rule(row: Row, scope: Scope) -> KeepRule:
    return KeepRule(
        scope=scope,
        action=row["action"],
        min_mm=row["min_mm"],
        max_mm=row["max_mm"],
        slot_mm=(row["slot_from_mm"], row["slot_to_mm"]),
        slot_ends=row["slot_ends"],
        daily_limit=row["daily_limit"],
        over_mm=row["over_length_mm"],
        over_count=row["over_count"],
        possession=row["possession"],
        everywhere=row["everywhere"] == "Y",
        who=row["who"],
        fork_length=row["measure"] == "FL",
        guides_fish_count=row["guides_fish_count"] == "Y",
    )


def _problem(row: Row, key: str, why: NotRead) -> Problem:
    """Return the finding; a cell that holds words is named by them, any other lack by the rule."""
    typed = row[key] if key in ("water", "species") else ""
    return problem(
        "keep_rule_unread",
        _SHEET.name,
        row=row["row"],
        heading=_SHEET.column(key).heading,
        value=typed or row["rule"],
        column=key,
        why=why.why,
        remedy=why.remedy,
    )
