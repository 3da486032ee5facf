"""What a number in a format stands for, against the library that reads the other sheets."""

import datetime as dt

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from openpyxl.styles.numbers import BUILTIN_FORMATS, is_date_format, is_timedelta_format
from openpyxl.utils.datetime import from_excel

from reporter.read.moments import BUILT_IN, LAST_DAY, LONGEST_SPAN, format_kind, moment_of

many = settings(derandomize=True, deadline=None, max_examples=1500)
PARTS = [*"dmyhsDMYHS0#.,;:/-_", *'\\"[]*@? $', "[h]", "[mm]", "[ss]", "[Red]", "[$-409]", "AM/PM", '"d"']


def _kind(code: str) -> str | None:
    if not is_date_format(code):
        return None
    return "span" if is_timedelta_format(code) else "date"


def test_formats_that_every_program_has_are_told_alike() -> None:
    assert {number: kind for number, code in BUILTIN_FORMATS.items() if (kind := _kind(code))} == BUILT_IN


@many
@given(st.lists(st.sampled_from(PARTS), max_size=8).map("".join))
@example("[h]:mm")
@example('0.0" days"')
@example("[Red]0;[h]")
@example(r"\d0")
@example("_d0")
def test_formats_are_told_alike(code: str) -> None:
    assert format_kind(code) == _kind(code)


_INSIDE = {"date": LAST_DAY, "span": LONGEST_SPAN}
_NUMBERS = (
    st.integers(0, LAST_DAY - 1)
    | st.floats(0, 2)
    | st.floats(0, LAST_DAY, exclude_max=True)
    | st.integers(0, 200_000_000).map(lambda minute: minute / 1440)
    | st.integers(40_000 * 86_400, 60_000 * 86_400).map(lambda second: second / 86_400)
    | st.integers(0, 20 * 86_400_000).map(lambda milli: milli / 86_400_000)
)


@many
@given(_NUMBERS, st.sampled_from(["date", "span"]))
@example(0, "date")
@example(0.0, "span")
@example(59.5, "date")
@example(60, "date")
@example(0.999999999, "date")
@example(0.5921801678240741, "date")  # half a millisecond, which rounds by the order of the steps
@example(1 / 86_400_000_000, "span")
def test_moments_are_told_alike(serial: float, kind: str) -> None:
    if serial < _INSIDE[kind]:
        ours, theirs = moment_of(serial, kind), from_excel(serial, timedelta=kind == "span")
        assert (type(ours), ours) == (type(theirs), theirs)


@pytest.mark.parametrize(
    ("serial", "kind", "moment"),
    [
        (46_143, "date", dt.datetime(2026, 5, 1)),
        (46_143.25, "date", dt.datetime(2026, 5, 1, 6)),
        (0.3125, "date", dt.time(7, 30)),
        (1, "date", dt.datetime(1900, 1, 1)),
        (1.25, "span", dt.timedelta(hours=30)),
    ],
)
def test_moments_of_serial_numbers(serial: float, kind: str, moment: object) -> None:
    assert moment_of(serial, kind) == moment


@pytest.mark.parametrize(
    ("serial", "kind"), [(-1, "date"), (-0.5, "span"), (LAST_DAY, "date"), (LONGEST_SPAN, "span")]
)
def test_number_that_is_no_moment_of_a_log_is_refused(serial: float, kind: str) -> None:
    with pytest.raises(ValueError, match="no moment"):
        moment_of(serial, kind)
