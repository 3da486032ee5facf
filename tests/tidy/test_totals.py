import pytest

from reporter.schema.problems import listed_rows
from tests.tidy.finding_cases import row
from tests.tidy.shared import Read


@pytest.mark.parametrize(
    ("landed", "says"),
    [
        (6, None),
        (4, None),  # it counts the rows above
        (None, None),
        ("many", None),
        (9, "My total of Landed is 6, yours says 9."),
    ],
)
def test_totals_line_is_held_against_the_rows_above(landed: object, says: str | None, read: Read) -> None:
    (problem,) = read({"Effort": row(6, "TOTAL", None, None, None, landed)}).problems
    assert (problem.code, problem.row) == ("totals_row", 6)
    assert ("My total" in problem.text) == (says is not None)
    assert (says or "") in problem.text


@pytest.mark.parametrize(("second", "differs"), [(3, False), (6, False), (5, True)])
def test_further_totals_line_may_add_up_from_the_one_before_or_from_the_top(
    second: int, differs: bool, read: Read
) -> None:
    """The first two stints landed 3, the last two 3 more."""
    effort = [
        ["Trip", "Technique", "Minutes", "Anglers on it", "Landed"],
        ["T-001", "Drop shot", 120, 2, 3],
        ["T-001", "Jerkbait", 120, 2, 0],
        ["Subtotal", None, None, None, 3],
        ["T-002", "Drop shot", 240, 2, 1],
        ["T-003", "Jerkbait", 240, 2, 2],
        ["Total", None, None, None, second],
    ]
    first, last = read({"Effort": effort}).problems
    assert "My total" not in first.text
    assert ("My total" in last.text) == differs


def test_blank_count_is_one_fish_in_the_total_of_catch(read: Read) -> None:
    catch = {"F1": "Count", "F2": 2, **row(5, "TOTAL", None, None, None, None, 4)}
    (problem,) = read({"Catch": catch}).problems
    assert "My total" not in problem.text


@pytest.mark.parametrize(
    ("rows", "words"),
    [
        ([5], "row 5"),
        ([5, 6, 7], "rows 5-7"),
        ([2, 5, 6, 9], "rows 2, 5-6 and 9"),
        ([1, 3, 5, 7, 9, 11, 13, 15, 17], "rows 1, 3, 5, 7, 9, 11, 13, 15 ..."),
    ],
)
def test_rows_are_listed_in_runs(rows: list[int], words: str) -> None:
    assert listed_rows(rows) == words
