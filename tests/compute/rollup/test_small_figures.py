"""What is merged: by hand, and against an attacker who subtracts."""

import datetime as dt
from collections import defaultdict
from collections.abc import Callable

import pandas as pd
import pytest

from reporter.compute.rollup.crossed import hidden_places
from reporter.compute.rollup.hidden import hidden_lines, hidden_of
from reporter.compute.rollup.rollup import Rollup, make_rollup
from tests.compute.rollup.attack import Cell, learned
from tests.compute.rollup.plain import CODES, FATES, PERMITS, kept_of
from tests.rollup_logs import WATERS, Day, GuideLog, random_association

SEEDS = 24


def cells(**guides: str) -> pd.DataFrame:
    """One figure; line -> letters of its guides."""
    rows = [("f", line, guide) for line, several in guides.items() for guide in several]
    return pd.DataFrame(rows, columns=["figure", "line", "guide"])


def hidden(**guides: str) -> set[str]:
    return set(hidden_of(hidden_lines(cells(**guides), 3), "f"))


def test_line_of_three_guides_is_shown_and_of_two_is_not() -> None:
    assert hidden(arden="abc", bell="ab", elm="cd") == {"bell", "elm"}  # others: a, b, c, d


def test_one_small_line_takes_the_next_smallest_with_it() -> None:
    """All less Arden and Elm would be Bell alone: Elm, with the fewest guides, joins it."""
    assert hidden(arden="abcde", bell="ab", elm="cde") == {"bell", "elm"}


def test_small_lines_of_the_same_two_guides_take_a_third_with_them() -> None:
    assert hidden(arden="abcd", bell="a", elm="b", otter="abc") == {"bell", "elm", "otter"}


def test_nothing_is_merged_where_every_line_has_guides_enough() -> None:
    assert hidden(arden="abc", bell="abd") == set()


def test_figure_of_two_guides_is_withheld_altogether() -> None:
    lines = hidden_lines(cells(arden="ab", bell="b"), 3)
    assert lines["withheld"].all()
    assert lines["hidden"].all()


def test_permit_less_its_one_water_does_not_give_the_other_water() -> None:
    """North is Arden (a, b, c) and Bell (d alone); South is Elm (a, b, c) and Otter (e, f).

    Waters alone are safe: Bell and Otter together are d, e, f. Yet North less Arden would be d alone.
    """
    rows = [
        ("Arden", "North", "abc"),
        ("Bell", "North", "d"),
        ("Elm", "South", "abc"),
        ("Otter", "South", "ef"),
    ]
    table = pd.DataFrame(
        [("f", water, permit, guide) for water, permit, several in rows for guide in several],
        columns=["figure", "water", "permit", "guide"],
    )
    waters, permits = hidden_places(table, 3)
    assert hidden_of(waters, "f") == {"Bell", "Otter"}
    assert hidden_of(permits, "f") == {"North", "South"}
    guides = {(water, permit): set(several) for water, permit, several in rows}
    arden, elm, both = {("Arden", "North")}, {("Elm", "South")}, {("Bell", "North"), ("Otter", "South")}
    north, south = arden | {("Bell", "North")}, elm | {("Otter", "South")}
    assert {("d",), ("e", "f")} <= set(learned([arden, elm, both, north, south], guides))
    assert learned([arden, elm, both, arden | elm | both], guides) == []


Where = Callable[[Day], tuple[str, ...]]

PLACES, MONTHS = {"water": 1, "permit": 2}, {"month": 1}
"""Ways, and where a cell says which line of them it is in; its species stands first."""


def place(day: Day) -> tuple[str, ...]:
    return day.water, day.permit or PERMITS[day.water]


def month(day: Day) -> tuple[str, ...]:
    return (f"{day.date:%Y-%m}",)


def account(logs: list[GuideLog], where: Where) -> dict[str, dict[Cell, set[str]]]:
    """Figure ("trips" or a fate) -> cell -> guides who add to it, by the typed rows."""
    made: dict[str, dict[Cell, set[str]]] = defaultdict(lambda: defaultdict(set))
    for log in logs:
        for day in log.days:
            made["trips"]["", *where(day)].add(str(log.code))
            for species, _, fate in day.fish:
                made[FATES[fate]][CODES[species], *where(day)].add(str(log.code))
    return made


def published(
    made: Rollup, figure: str, known: dict[Cell, set[str]], ways: dict[str, int]
) -> list[set[Cell]]:
    """The cells of every figure of a kind (trips, or a fate) that is shown, in all and by some ways."""
    effort = made.effort.assign(species="")
    table = effort if figure == "trips" else made.fish.assign(species=made.fish["species_code"])
    shown = table[table[figure].notna() & (table[figure] > 0) & table["by"].isin(["all", *ways])]
    named = set(shown.loc[shown["by"] == "all", "species"]) - {""}
    rows = []
    for line in shown.to_dict("records"):
        by, species = line["by"], line["species"]
        same = shown[(shown["by"] == by) & (shown["species"] == species) & ~shown["others"]]
        kinds = {species} if species in named else {cell[0] for cell in known} - named
        inside = {cell for cell in known if cell[0] in kinds}
        if by != "all" and line["others"]:
            inside = {cell for cell in inside if cell[ways[by]] not in set(same["name"])}
        elif by != "all":
            inside = {cell for cell in inside if cell[ways[by]] == line["name"]}
        rows.append(inside)
    return rows


@pytest.mark.parametrize(("where", "ways"), [(place, PLACES), (month, MONTHS)])
@pytest.mark.parametrize("guides", [4, 6, 8, 12])
def test_attacker_who_subtracts_learns_nothing_of_fewer_than_three_guides(
    guides: int, where: Where, ways: dict[str, int]
) -> None:
    shown = 0
    for seed in range(SEEDS):
        logs = random_association(seed, guides)
        made = make_rollup(kept_of(logs), (), names=False)
        for figure, known in account(logs, where).items():
            rows = published(made, figure, known, ways)
            assert learned(rows, known) == [], (seed, figure)
            shown += len(rows)
    assert shown > 5 * SEEDS


def test_attacker_finds_what_is_not_merged() -> None:
    """Were he never to find anything, the search would prove nothing: with names nothing is merged."""
    logs = random_association(3)
    made = make_rollup(kept_of(logs), (), names=True)
    for where, ways in ((place, PLACES), (month, MONTHS)):
        for figure, known in account(logs, where).items():
            assert learned(published(made, figure, known, ways), known), (figure, ways)


def test_attacker_finds_what_small_lines_alone_would_leave() -> None:
    """Merged are only the lines with fewer than three guides: what stands against subtraction is left out."""
    found = 0
    for seed in range(SEEDS):
        known = account(random_association(seed, 6), place)["trips"]
        rows = [set(known)]
        for at in (1, 2):
            lines: dict[str, set[Cell]] = defaultdict(set)
            for cell in known:
                lines[cell[at]].add(cell)
            small = [each for each in lines.values() if len(set().union(*map(known.__getitem__, each))) < 3]
            rows += [each for each in lines.values() if each not in small]
            rows += [set().union(*small)] if small else []
        found += bool(learned(rows, known))
    assert found > SEEDS // 4


def test_three_guides_or_more_stand_behind_each_line_of_effort() -> None:
    for seed in range(SEEDS):
        made = make_rollup(kept_of(random_association(seed, 5 + seed % 5)), (), names=False)
        assert (made.effort["guides"] >= 3).all()


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
