"""Which dates the call and the verdict are compared on, and why the others are left out."""

import pandas as pd
import pytest

from reporter.compute.fronts.agreement import LEFT_OUT, Agreement, agreement

TOOL_YES, TOOL_NO = ("yes_clear", "day_1"), ("no", "ordinary")


def compared(*dates: tuple[str, tuple[str, str]], differ: bool = False, fished: bool = True) -> Agreement:
    """Compare dates of (call, (verdict, day type))."""
    table = pd.DataFrame(
        [(call, verdict, day_type) for call, (verdict, day_type) in dates],
        columns=["call", "verdict", "day_type"],
    )
    return agreement(table.assign(calls_differ=differ, fished=fished))


def cells(found: Agreement) -> tuple[int, int, int, int]:
    return found.both_yes, found.call_only, found.tool_only, found.both_no


@pytest.mark.parametrize("call", ["day after", "second day"])
def test_day_after_and_second_day_are_yes(call: str) -> None:
    assert cells(compared((call, TOOL_YES), (call, TOOL_NO))) == (1, 1, 0, 0)


@pytest.mark.parametrize("call", ["ahead", "no front"])
def test_ahead_and_no_front_are_no(call: str) -> None:
    assert cells(compared((call, TOOL_YES), (call, TOOL_NO))) == (0, 0, 1, 1)


@pytest.mark.parametrize("day_type", ["day_1", "day_2"])
@pytest.mark.parametrize("verdict", ["yes_clear", "yes_weak"])
def test_day_1_and_day_2_of_clear_and_weak_fronts_are_yes_of_the_tool(verdict: str, day_type: str) -> None:
    assert cells(compared(("day after", (verdict, day_type)))) == (1, 0, 0, 0)


@pytest.mark.parametrize("day_type", ["ordinary", "ahead", "day_3"])
def test_other_decided_days_are_no_of_the_tool(day_type: str) -> None:
    assert cells(compared(("no front", ("no", day_type)))) == (0, 0, 0, 1)


@pytest.mark.parametrize(
    ("call", "tool", "why"),
    [
        ("", TOOL_YES, "no_call"),
        ("can't say", TOOL_YES, "cannot_say"),
        ("front today", TOOL_YES, "front_today"),
        ("day after", ("not_enough_data", "not_known"), "not_enough_data"),
        ("day after", ("possible", "possible"), "possible"),
        ("day after", ("possible", "behind_low"), "possible"),
        ("day after", ("no", "passing"), "passing"),
        ("day after", ("yes_clear", "passing"), "passing"),  # the second day of the front before it
    ],
)
def test_date_that_is_not_yes_or_no_on_both_sides_is_left_out_and_counted(
    call: str, tool: tuple[str, str], why: str
) -> None:
    found = compared((call, tool))
    assert found.dates == 0
    assert found.left_out == {why: 1}


def test_date_on_which_the_calls_differ_is_left_out_and_counted() -> None:
    found = compared(("", TOOL_YES), ("", TOOL_NO), differ=True)
    assert found.dates == 0
    assert found.left_out == {"calls_differ": 2}


def test_date_with_two_reasons_is_counted_once() -> None:
    found = compared(("", ("not_enough_data", "not_known")), ("front today", ("no", "passing")))
    assert sum(found.left_out.values()) == 2


def test_dates_that_were_not_fished_are_not_compared() -> None:
    found = compared(("day after", TOOL_YES), ("", TOOL_NO), fished=False)
    assert found.dates == 0
    assert found.left_out == {}


def test_every_fished_date_is_compared_or_left_out() -> None:
    # 3 + 2 + 1 + 4 compared, 2 without a call, 1 possible.
    found = compared(
        *[("day after", TOOL_YES)] * 3,
        *[("second day", TOOL_NO)] * 2,
        *[("ahead", TOOL_YES)],
        *[("no front", TOOL_NO)] * 4,
        *[("", TOOL_NO)] * 2,
        *[("no front", ("possible", "possible"))],
    )
    assert cells(found) == (3, 2, 1, 4)
    assert found.dates == 10
    assert found.share == 0.7
    # 2 x 3 / (2 x 3 + 2 + 1).
    assert found.positive == pytest.approx(6 / 9)
    assert found.left_out == {"no_call": 2, "possible": 1}


def test_every_reason_has_words_of_its_own() -> None:
    assert {*LEFT_OUT} == {
        "no_call",
        "cannot_say",
        "front_today",
        "calls_differ",
        "not_enough_data",
        "possible",
        "passing",
    }
    assert len({*LEFT_OUT.values()}) == len(LEFT_OUT)
