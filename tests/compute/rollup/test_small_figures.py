"""What is merged: by hand, and against an attacker who puts all that is told together."""

import datetime as dt
from collections import defaultdict
from collections.abc import Iterator, Mapping
from random import Random

import pandas as pd
import pytest

from reporter.compute.rollup.behind import guides_behind
from reporter.compute.rollup.hidden import hidden_lines, small_lines
from reporter.compute.rollup.rollup import Rollup, make_rollup
from tests.compute.rollup.attack import Cell, Row, learned, pinned, small_sums
from tests.compute.rollup.plain import FATES, kept_of, rows_of
from tests.rollup_logs import WATERS, Day, GuideLog, random_association

SEEDS = 8
NOBODY = float("nan")
FIGURES = ("trips", "trips_unfinished", "rod_hours", "kept", "released", "unknown")
AT = {"water": 2, "month": 3, "permit": 4}
"""Way -> where a cell says which line of it it is in; its figure and species stand first."""


def cells(*crossings: tuple[str, str, str, str]) -> pd.DataFrame:
    """One figure: water, month, permit, letters of the guides, none where it is not known who they are."""
    rows = [
        (water, month, permit, len(guides), *(ord(f(guides)) if guides else NOBODY for f in (min, max)))
        for water, month, permit, guides in crossings
    ]
    return pd.DataFrame(rows, columns=["water", "month", "permit", "guides", "one", "other"])


def small(**guides: str) -> set[str]:
    return set(small_lines(cells(*((water, "June", "P", those) for water, those in guides.items())), "water"))


def test_line_of_three_guides_is_shown_and_of_two_is_not() -> None:
    assert small(arden="abc", bell="ab", elm="cd") == {"bell", "elm"}  # others: a, b, c, d


def test_one_small_line_takes_the_next_smallest_with_it() -> None:
    """All less Arden and Elm would be Bell alone: Elm, with the fewest guides, joins it."""
    assert small(arden="abcde", bell="ab", elm="cde") == {"bell", "elm"}


def test_small_lines_of_the_same_two_guides_take_a_third_with_them() -> None:
    assert small(arden="abcd", bell="a", elm="b", otter="abc") == {"bell", "elm", "otter"}


def test_nothing_is_merged_where_every_line_has_guides_enough() -> None:
    assert small(arden="abc", bell="abd") == set()


def test_figure_of_two_guides_is_withheld_altogether() -> None:
    assert hidden_lines(cells(("Arden", "June", "P", "ab"), ("Bell", "June", "P", "b"))) is None
    assert hidden_lines(cells().astype({"guides": int})) is None


def test_guides_of_cells_are_told_apart_up_to_two() -> None:
    """ab and b are two guides, ab and bc are three, and with abcd there are three at least."""
    table = cells(*(("Arden", "June", "P", those) for those in ("ab", "b", "ab", "bc", "abcd", "b")))
    counted = guides_behind(table, pd.Series([0, 0, 1, 1, 2, 3]).to_numpy()).tolist()
    assert counted[:2] == [2, 3]
    assert counted[2] >= 3
    assert counted[3] == 1


def test_permit_less_its_one_water_does_not_give_the_other_water() -> None:
    """North is Arden (a, b, c) and Bell (d alone); South is Elm (a, b, c) and Otter (e, f).

    Waters alone are safe: Bell and Otter together are d, e, f. Yet North less Arden would be d alone.
    """
    hidden = hidden_lines(
        cells(
            ("Arden", "June", "North", "abc"),
            ("Bell", "June", "North", "d"),
            ("Elm", "June", "South", "abc"),
            ("Otter", "June", "South", "ef"),
        )
    )
    assert hidden == {
        "water": {"Bell", "Otter"},
        "month": frozenset(),
        "permit": {"North", "South"},
    }


def test_month_less_a_water_does_not_give_another_month() -> None:
    """Arden was fished in June alone (a, b, c), Bell in June (d) and July (d, e, f).

    Each water and each month has three guides, yet June less Arden would be what d did on Bell in June.
    """
    hidden = hidden_lines(
        cells(("Arden", "June", "P", "abc"), ("Bell", "June", "P", "d"), ("Bell", "July", "P", "def"))
    )
    assert hidden == {"water": frozenset(), "month": {"June", "July"}, "permit": frozenset()}


def test_month_less_a_water_does_not_give_a_log_of_a_guide_not_known() -> None:
    """Nobody is known to have fished Bell in June, so that June less Arden would be one log's alone."""
    hidden = hidden_lines(
        cells(("Arden", "June", "P", "abc"), ("Bell", "June", "P", ""), ("Bell", "July", "P", "def"))
    )
    assert hidden == {"water": frozenset(), "month": {"June", "July"}, "permit": frozenset()}


def test_month_less_a_water_does_not_give_a_guide_with_one_not_known() -> None:
    """June less Arden would be d on Bell and a log on Elm that may be d's, or a second guide's."""
    crossings = [("Arden", "June", "P", "abc"), ("Bell", "June", "P", "d"), ("Bell", "July", "P", "def")]
    elm = ("Elm", "July", "P", "ghi")
    hidden = hidden_lines(cells(*crossings, ("Elm", "June", "P", ""), elm))
    assert hidden == {"water": frozenset(), "month": {"June", "July"}, "permit": frozenset()}
    bound = hidden_lines(cells(*crossings, ("Elm", "June", "P", "gh"), elm))
    assert bound == {"water": frozenset(), "month": frozenset(), "permit": frozenset()}


def test_line_of_two_guides_and_one_not_known_is_not_shown() -> None:
    rows = [("Arden", "June", "P", "abc"), ("Bell", "June", "P", "ab"), ("Bell", "June", "P", "")]
    assert "Bell" in small_lines(cells(*rows), "water")


def test_months_bound_by_other_waters_are_told_though_one_guide_was_alone_on_a_water() -> None:
    """On Elm three guides fished in June and in July: no sum leaves d on Bell in June without them."""
    hidden = hidden_lines(
        cells(
            *(("Elm", month, "P", "abc") for month in ("June", "July")),
            ("Bell", "June", "P", "d"),
            ("Bell", "July", "P", "def"),
        )
    )
    assert hidden == {"water": frozenset(), "month": frozenset(), "permit": frozenset()}


class Account:
    """What was typed of one figure: the guides of each cell, and its sum. whose: whose a log is in truth."""

    def __init__(self, logs: list[GuideLog], figure: str, whose: Mapping[int, int] | None = None) -> None:
        self.guides: dict[Cell, set[int]] = defaultdict(set)
        self.sums: dict[Cell, float] = defaultdict(float)
        for cell, guide, value in rows_of(logs):
            if cell[0] == figure:
                self.guides[cell].add((whose or {}).get(guide, guide))
                self.sums[cell] += value


def association(seed: int, guides: int, trips: tuple[int, int] = (2, 6)) -> list[GuideLog]:
    """Logs of which some trips are not finished."""
    chance = Random(seed)  # noqa: S311 - a season, no secret
    logs = random_association(seed, guides, trips)
    for log in logs:
        for day in log.days:
            day.status = "log not finished" if chance.random() < 0.2 else None
    return logs


def told(made: Rollup, figure: str, known: Account) -> list[Row]:
    """The cells of every number of a figure that is told; each number is the sum of its cells."""
    effort = made.effort.assign(species="")
    table = effort if figure in effort else made.fish.assign(species=made.fish["species_code"])
    shown = table[table[figure].notna()]
    named = set(shown.loc[shown["by"] == "all", "species"]) - {""}
    rows = []
    for line in shown.to_dict("records"):
        by, species = line["by"], line["species"]
        inside = {
            cell
            for cell in known.guides
            if (cell[1] == species if species in named else cell[1] not in named)
        }
        if line["others"]:
            same = shown[(shown["by"] == by) & (shown["species"] == species) & ~shown["others"]]
            inside = {cell for cell in inside if cell[AT[by]] not in set(same["name"])}
        elif by != "all":
            inside = {cell for cell in inside if cell[AT[by]] == line["name"]}
        assert line[figure] == pytest.approx(sum(known.sums[cell] for cell in inside)), (figure, line)
        rows += [frozenset(inside)] if inside else []
    return rows


def attacked(guides: int, trips: tuple[int, int]) -> Iterator[tuple[list[Row], Account]]:
    for seed in range(SEEDS):
        logs = association(seed, guides, trips)
        made = make_rollup(kept_of(logs), (), names=False)
        for figure in FIGURES:
            known = Account(logs, figure)
            yield told(made, figure, known), known


@pytest.mark.parametrize("trips", [(2, 6), (6, 12)])
@pytest.mark.parametrize("guides", [4, 6, 8, 12])
def test_attacker_who_adds_and_takes_away_learns_nothing_of_fewer_than_three_guides(
    guides: int, trips: tuple[int, int]
) -> None:
    shown = 0
    for rows, known in attacked(guides, trips):
        assert learned(rows, known.guides) == []
        shown += len(rows)
    assert shown > 8 * SEEDS


@pytest.mark.parametrize("guides", [6, 9])
def test_attacker_learns_nothing_whoever_wrote_the_logs_of_guides_not_known(guides: int) -> None:
    """Logs 0 and 1 do not say whose they are: of one more guide or two, or of any of the others."""
    shown = 0
    for seed in range(SEEDS):
        logs = association(seed, guides, (3, 7))
        for log in logs[:2]:
            log.code = None
        made = make_rollup(kept_of(logs), (), names=False)
        assert (made.guides, made.unknown) == (guides - 2, 2)
        for figure in FIGURES:
            rows = told(made, figure, Account(logs, figure))
            shown += len(rows)
            for whose in ({}, {1: 0}, {0: 2, 1: 3}, {0: 3, 1: 3}, {0: 4}):
                assert learned(rows, Account(logs, figure, whose).guides) == [], (seed, figure, whose)
    assert shown > 8 * SEEDS


def test_two_guides_and_a_log_of_a_guide_not_known_have_no_totals() -> None:
    day = Day(dt.date(2026, 6, 1), "Lake Arden")
    logs = [GuideLog(code, [day], WATERS) for code in ("A", "B", None)]
    assert not make_rollup(kept_of(logs), (), names=False).told
    assert make_rollup(kept_of([*logs, GuideLog("C", [day], WATERS)]), (), names=False).told


@pytest.mark.parametrize("guides", [5, 8])
def test_attacker_who_solves_all_that_is_told_at_once_knows_no_small_sum(guides: int) -> None:
    sought = 0
    for rows, known in attacked(guides, (4, 8)):
        small = small_sums(known.guides)
        assert pinned(rows, known.sums, small) == []
        sought += len(small)
    assert sought > 20 * SEEDS


def test_attackers_find_what_is_not_merged() -> None:
    """Were they never to find anything, the search would prove nothing: with names nothing is merged."""
    logs = association(3, 6)
    made = make_rollup(kept_of(logs), (), names=True)
    for figure in FIGURES:
        known = Account(logs, figure)
        rows = told(made, figure, known)
        assert learned(rows, known.guides), figure
        assert pinned(rows, known.sums, small_sums(known.guides)), figure


def test_attackers_find_what_hiding_each_way_alone_would_leave() -> None:
    """Waters, months and permits each hold by themselves; together they give something away."""
    found = 0
    for seed in range(SEEDS):
        logs = association(seed, 7)
        known, kept = Account(logs, "trips"), kept_of(logs)
        trips = kept.cells[kept.cells["figure"] == "trips"]
        rows = []
        for way, at in AT.items():
            hidden = small_lines(trips, way)
            lines: dict[str, set[Cell]] = defaultdict(set)
            for cell in known.guides:
                lines["" if cell[at] in hidden else cell[at]].add(cell)
            rows += [frozenset(inside) for inside in lines.values()]
            assert learned([frozenset(inside) for inside in lines.values()], known.guides) == []
        found += bool(learned(rows, known.guides))
        assert bool(pinned(rows, known.sums, small_sums(known.guides))) <= bool(learned(rows, known.guides))
    assert found > SEEDS // 4


def test_few_lines_are_merged_that_could_be_told() -> None:
    """With a month or permit told that was merged against sums, the attacker mostly learns something."""
    needed, merged = 0, 0
    for seed in range(SEEDS):
        logs = association(seed, 8, (4, 8))
        known, kept = Account(logs, "trips"), kept_of(logs)
        trips = kept.cells[kept.cells["figure"] == "trips"]
        hidden = hidden_lines(trips)
        assert hidden is not None
        for way in ("month", "permit"):
            more = hidden[way] - small_lines(trips, way)
            for line in more:
                rows = rows_with(known, {**hidden, way: hidden[way] - {line}})
                needed += bool(learned(rows, known.guides))
                merged += 1
    assert needed > 0.7 * merged > 0


def rows_with(known: Account, hidden: dict[str, frozenset[str]]) -> list[Row]:
    rows = []
    for way, at in AT.items():
        lines: dict[str, set[Cell]] = defaultdict(set)
        for cell in known.guides:
            lines["" if cell[at] in hidden[way] else cell[at]].add(cell)
        rows += [frozenset(inside) for inside in lines.values()]
    return rows


def test_three_guides_or_more_stand_behind_each_line_of_effort() -> None:
    for seed in range(SEEDS):
        effort = make_rollup(kept_of(random_association(seed, 5 + seed % 5)), (), names=False).effort
        assert (effort.loc[~effort["others"], "guides"] >= 3).all()


def test_two_guides_have_no_totals_but_with_names() -> None:
    day = Day(dt.date(2026, 6, 1), "Lake Arden", fish=(("walleye", 2, "kept"),))
    kept = kept_of([GuideLog("A", [day], WATERS), GuideLog("B", [day], WATERS)])
    assert not make_rollup(kept, (), names=False).told
    (row,) = (made := make_rollup(kept, (), names=True)).effort.query("by == 'water'").to_dict("records")
    assert (row["name"], row["trips"], row["anglers"], row["angler_hours"]) == ("Lake Arden", 2, 4, 16)
    assert made.fish.query("by == 'all'")["kept"].tolist() == [4]


def test_totals_with_every_line_are_those_of_a_plain_count() -> None:
    """Lines of each way, others among them, add up to what was typed, but for fish withheld."""
    for seed in range(SEEDS):
        logs = random_association(seed, 9)
        made = make_rollup(kept_of(logs), (), names=False)
        days = [day for log in logs for day in log.days]
        for way in ("all", "water", "month", "permit"):
            effort = made.effort[made.effort["by"] == way]
            assert effort["trips"].sum() == len(days)
            assert effort["anglers"].sum() == sum(day.anglers for day in days)
            assert effort["angler_hours"].sum() == sum(day.anglers * day.hours for day in days)
            for typed, fate in FATES.items():
                behind = {
                    log.code for log in logs for day in log.days for fish in day.fish if fish[2] == typed
                }
                every = sum(fish[1] for day in days for fish in day.fish if fish[2] == typed)
                expected = every if len(behind) >= 3 else 0
                assert made.fish.loc[made.fish["by"] == way, fate].sum() == expected, (seed, way, fate)
