"""Three hours of pressure as the characteristic of surface weather reports.

Codes: WMO-306 Manual on Codes, volume I.1, part A, code table 0200, regulation 12.2.3.5.3. The cases were
sorted by hand, by its wording. That the hours are two halves of an hour and a half, and that a tenth of a
hectopascal is steady, is this project's choice: the table leaves both open.
"""

import numpy as np
import pytest

from reporter.compute.fronts.tendency import UNKNOWN, WORDS, tendency


@pytest.mark.parametrize(
    ("hours", "code", "change"),
    [
        ((1010, 1011, 1012, 1013), 2, 3.0),  # table 0200: increasing, steadily
        ((1010, 1012, 1013, 1013), 1, 3.0),  # increasing, then steady or more slowly
        ((1010, 1012.5, 1012.5, 1011), 0, 1.0),  # increasing, then decreasing; now the same or higher
        ((1010, 1009, 1009.5, 1011.5), 3, 1.5),  # decreasing, then increasing; now higher
        ((1010, 1010, 1010.2, 1012), 3, 2.0),  # steady, then increasing
        ((1010, 1010, 1010, 1010), 4, 0.0),  # steady
        ((1010, 1008, 1008, 1010), 5, 0.0),  # decreasing, then increasing; now the same
        ((1010, 1012, 1012, 1010), 0, 0.0),  # increasing, then decreasing; now the same
        ((1010, 1008, 1008, 1009), 5, -1.0),  # decreasing, then increasing; now lower
        ((1010, 1008, 1007, 1007), 6, -3.0),  # decreasing, then steady or more slowly
        ((1010, 1009, 1008, 1007), 7, -3.0),  # decreasing, steadily
        ((1010, 1010, 1009.8, 1008), 8, -2.0),  # steady, then decreasing
        ((1010, 1011, 1010.8, 1009), 8, -1.0),  # increasing, then decreasing; now lower
        ((1010, 1010.5, 1011.5, 1013), 3, 3.0),  # increasing, then more rapidly
        ((1010, 1009.5, 1008.5, 1007), 8, -3.0),  # decreasing, then more rapidly
        ((1010, 1012, 1012, 1012), 1, 2.0),  # increasing, then steady
        ((1010, 1008, 1008, 1008), 6, -2.0),  # decreasing, then steady
        ((1010, 1010, 1010, 1012), 3, 2.0),  # steady, then increasing
        ((1010, 1010, 1010, 1008), 8, -2.0),  # steady, then decreasing
    ],
)
def test_characteristic_and_change_of_three_hours(hours: tuple[float, ...], code: int, change: float) -> None:
    found = tendency(hours)
    assert (int(found.code), float(found.change_hpa)) == (code, pytest.approx(change, abs=1e-9))


def test_change_coded_52032_is_a_steady_rise_of_3_2() -> None:
    # Published: FMH-1, group 5appp: 52032 is a steady rise of 3.2 hPa.
    found = tendency([1016.8, 1017.8667, 1018.9333, 1020.0])
    assert (int(found.code), float(found.change_hpa)) == (2, pytest.approx(3.2, abs=1e-4))


def test_tenth_of_a_hectopascal_is_steady_and_more_is_not() -> None:
    # By hand: halves of +0.1 and +0.1; of +0.2 and +0.2.
    assert int(tendency([1010.0, 1010.1, 1010.1, 1010.2]).code) == 4
    assert int(tendency([1010.0, 1010.2, 1010.2, 1010.4]).code) == 2


def test_halves_that_differ_by_a_tenth_are_one_steady_change() -> None:
    # By hand: the middle is 1011 or 1009; halves of 1.0 and 1.1, of 1.0 and 1.2, and the same downwards.
    assert int(tendency([1010, 1011, 1011, 1012.1]).code) == 2
    assert int(tendency([1010, 1011, 1011, 1012.2]).code) == 3
    assert int(tendency([1010, 1009, 1009, 1007.9]).code) == 7
    assert int(tendency([1010, 1009, 1009, 1007.8]).code) == 8


def test_missing_hour_leaves_the_characteristic_unknown() -> None:
    for place in range(4):
        hours = np.array([1010.0, 1011.0, 1012.0, 1013.0])
        hours[place] = np.nan
        assert int(tendency(hours).code) == UNKNOWN


def test_every_code_of_the_table_has_words() -> None:
    # Table 0200 has the codes 0 to 8.
    assert sorted(WORDS) == list(range(9))
    assert len(set(WORDS.values())) == 9


def test_many_barometers_are_read_at_once() -> None:
    found = tendency([[1010, 1011, 1012, 1013], [1010, 1009, 1008, 1007]])
    assert found.code.tolist() == [2, 7]
    assert found.change_hpa.tolist() == [3.0, -3.0]
